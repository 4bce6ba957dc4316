package rules

import (
	"encoding/json"
	"fmt"
	"maps"
	"slices"
	"sync"

	"example.org/driveline/marinecalc/problem"
)

// Book is all rule data in force: what marinecalc brings, and what was laid
// over it. A Book is never changed after it is made.
type Book struct {
	tables   map[string]func() *Table          // each read when first asked for
	all      func() *section                   // the rows of all calculations, read when first asked for
	rows     func(calculation string) *section // the rows of one as the files have them
	of       func(calculation string) *ready   // the same, as a run takes them; found once
	overlays []string                          // titles of what was laid over, in order

	work  func() *job     // read when first asked for: most calculations do without
	picks func() []*Table // the tables of the job, as jobTables names them
}

// ready is the rows of one calculation, as a run takes them.
type ready struct {
	limits   []Limit   // and those it shares
	cautions []Caution // gravest first
	advice   []Advice
	usual    Table
}

// index readies what is looked up in the rows of each calculation, each when
// first asked for.
func (b *Book) index(rows func(calculation string) *section) {
	b.picks = sync.OnceValue(func() []*Table { return b.work().tables() })
	b.rows = rows
	var known sync.Map // calculation -> *ready
	b.of = func(calculation string) *ready {
		if r, ok := known.Load(calculation); ok {
			return r.(*ready)
		}
		s := rows(calculation)
		r := &ready{limits: s.limits, cautions: s.cautions, advice: s.advice, usual: Table{Name: usualValues, Rows: s.usual}}
		for i := range s.shared {
			r.limits = append(r.limits, s.shared[i].taken(rows(s.shared[i].LimitsOf).limits)...)
		}
		slices.SortStableFunc(r.cautions, func(x, y Caution) int { return x.Signal.Gravity() - y.Signal.Gravity() })
		known.Store(calculation, r)
		return r
	}
}

// Table returns the table of that name, or nil.
func (b *Book) Table(name string) *Table {
	if read := b.tables[name]; read != nil {
		return read()
	}
	if slices.Contains(jobTables, name) {
		return b.picks()[slices.Index(jobTables, name)]
	}
	return nil
}

// Tables lists the names of all tables, in alphabetical order.
func (b *Book) Tables() []string {
	names := slices.AppendSeq(slices.Clone(jobTables), maps.Keys(b.tables))
	slices.Sort(names)
	return names
}

// Limits returns the limits of one calculation.
func (b *Book) Limits(calculation string) []Limit { return b.of(calculation).limits }

// Cautions returns the cautions of one calculation, gravest first.
func (b *Book) Cautions(calculation string) []Caution { return b.of(calculation).cautions }

// Advice returns the advice of one calculation.
func (b *Book) Advice(calculation string) []Advice { return b.of(calculation).advice }

// Usual returns the usual values that one calculation may take.
func (b *Book) Usual(calculation string) *Table { return &b.of(calculation).usual }

// AllLimits returns every limit.
func (b *Book) AllLimits() []Limit { return b.all().limits }

// AllShared returns which calculations share the limits of another.
func (b *Book) AllShared() []Shared { return b.all().shared }

// AllCautions returns every caution.
func (b *Book) AllCautions() []Caution { return b.all().cautions }

// AllAdvice returns every piece of advice.
func (b *Book) AllAdvice() []Advice { return b.all().advice }

// Overlays names what was laid over the standard rules, in order.
func (b *Book) Overlays() []string { return b.overlays }

// Overlay returns a book in which the rows of a rule file replace those of
// the same id and the others are added. Every row must bring its own source.
// The book itself stays as it was.
func (b *Book) Overlay(text []byte) (*Book, problem.List) {
	s, faults := b.read(text, "")
	if len(faults) > 0 {
		return nil, faults
	}
	next := b.with(s)
	before := b.Loose()
	faults = slices.DeleteFunc(next.Loose(), func(p problem.Problem) bool { return slices.Contains(before, p) })
	if len(faults) > 0 {
		return nil, faults
	}
	title := s.Title
	if title == "" {
		title = "rows laid over"
	}
	next.overlays = append(slices.Clone(b.overlays), title)
	return next, nil
}

// read reads one rule file for a book. Its problems lie under where. Rows
// without columns of their own have those of the book's table.
func (b *Book) read(text []byte, where string) (*sheaf, problem.List) {
	var s sheaf
	if err := json.Unmarshal(text, &s); err != nil {
		return nil, problem.List{{Where: where, What: "this rule file cannot be read: " + err.Error(),
			Allowed: "the form of schemas/rules-*.schema.json", Hint: "compare it with a file of marinecalc/rules/data"}}
	}
	s.takeWritten()
	switch {
	case s.Name == "" && len(s.Rows) > 0:
		return nil, problem.List{{Where: where + "/table", What: "the rows name no table",
			Allowed: fmt.Sprint(b.Tables()), Hint: `write "table": "…"`}}
	case slices.Contains(jobTables, s.Name):
		return nil, problem.List{{Where: where + "/table", What: "the table of " + s.Name + " is made of the rows of that kind",
			Allowed: `{"` + s.Name + `": […]}`, Hint: `write the rows under "` + s.Name + `"`}}
	case s.Columns == nil && b.tables[s.Name] != nil:
		s.Columns = b.Table(s.Name).Columns
	}
	if faults := s.faults(where); len(faults) > 0 {
		return nil, faults
	}
	return &s, nil
}

// with merges what a rule file brings into a copy of the book.
func (b *Book) with(s *sheaf) *Book {
	next := &Book{tables: maps.Clone(b.tables), work: b.work}
	var rows section
	rows.add(s)
	next.all = sync.OnceValue(func() *section { return rows.over(b.all()) })
	if s.Name != "" {
		next.tables[s.Name] = sync.OnceValue(func() *Table {
			if b.tables[s.Name] == nil {
				return &s.Table
			}
			t := *b.Table(s.Name)
			t.Columns = maps.Clone(t.Columns)
			maps.Copy(t.Columns, s.Columns)
			t.Rows = replace(t.Rows, s.Rows, func(r Row) string { return r.ID })
			return &t
		})
	}
	if s.job.any() {
		next.work = sync.OnceValue(func() *job { return b.work().over(&s.job) })
	}
	next.index(func(calculation string) *section { return rows.over(b.rows(calculation)).only(calculation) })
	return next
}

// replace returns old with the rows of the same id replaced, and the other
// new rows put first, so that a row laid over is found before a general one.
func replace[T any](old, rows []T, id func(T) string) []T {
	if len(rows) == 0 {
		return old
	}
	out := slices.Clone(old)
	var added []T
	for _, r := range rows {
		if i := slices.IndexFunc(out, func(o T) bool { return id(o) == id(r) }); i >= 0 {
			out[i] = r
		} else {
			added = append(added, r)
		}
	}
	return append(added, out...)
}
