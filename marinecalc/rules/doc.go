// Package rules holds judgement as data: what is picked from tables, what
// results are held against, what can hurt, and what to do next. The rest of
// marinecalc is arithmetic.
//
// # A row
//
// Rule data is rows: a row of a [Table], a [Limit], a [Caution], an [Advice],
// and, for the job around the arithmetic, a [Cause], [Evidence], a [Sign], a
// [Chain], a [Remedy], a [Step] or a [Part]. Every row has an id, which is
// never used for another, and its [Provenance]: the document that the figure
// was taken from, and how good that source is. A row without them does not
// load. Memory and common practice decide nothing: a limit of theirs is a guide,
// and a figure of theirs a bracket. [Valid] says where a row applies; a row without it applies everywhere.
//
// # Where a row lies
//
// A rule file is JSON and may hold rows of any kind. Those that marinecalc
// brings lie in data/:
//
//	data/<calculation>.json  limits, cautions, advice and usual values of one calculation
//	data/common.json         cautions and usual values that several have
//	data/tables/<table>.json what people pick from: threads, gauges, alloys
//	data/job/*.json          causes, questions, remedies, steps, parts
//
// Each file is read when its rows are first asked for.
//
// # A book and its overlays
//
// [Standard] is the [Book] of all these rows. [Book.Overlay] returns a book
// with the rows of one more file, a yard's or a maker's: a row whose id is
// there already replaces that row, any other is added and found first. The
// columns of a table need not be said again. The book below stays as it was,
// and nothing that a book hands out leads back into it, so that books can be
// used by many at once.
package rules
