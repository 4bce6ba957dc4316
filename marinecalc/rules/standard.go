package rules

import (
	"embed"
	"encoding/json"
	"maps"
	"path"
	"slices"
	"strings"
	"sync"
)

// The rules that marinecalc brings, read from the files of data/ that a
// calculation needs when it first needs them.

//go:embed data
var files embed.FS

// common holds what several calculations share: the cautions that belong to
// more than one, and the usual values that more than one takes. All else that
// a calculation has of its own lies in the file of its id.
const common = "common"

// usualValues names the table whose rows lie with the calculations that take
// them.
const usualValues = "usual-values"

// Standard returns the rule data that marinecalc brings.
func Standard() *Book { return standard() }

var standard = sync.OnceValue(func() *Book {
	b := &Book{tables: map[string]func() *Table{}, job: sync.OnceValue(standardJob)}
	for _, file := range filesIn("data/tables") {
		b.tables[nameOf(file)] = sync.OnceValue(func() *Table { return readOwn(file).table() })
	}
	read, names := map[string]func() *ruleFile{}, []string{common}
	for _, file := range filesIn("data") {
		name := nameOf(file)
		read[name] = sync.OnceValue(func() *ruleFile { return readOwn(file) })
		if name != common {
			names = append(names, name)
		}
	}
	b.tables[usualValues] = sync.OnceValue(func() *Table {
		t := &Table{Name: usualValues, Title: "Usual values", columns: map[string]string{},
			About: "One row for each input that has a usual value; used when nothing better is known, with its whole range."}
		for _, name := range names {
			maps.Copy(t.columns, read[name]().Columns)
			t.Rows.items = append(t.Rows.items, read[name]().Rows...)
		}
		return t
	})
	b.all = sync.OnceValue(func() *section {
		var all section
		for _, name := range names {
			all.add(read[name]())
		}
		return &all
	})
	b.index(slices.Values(names[1:]), func(calculation string) *section {
		var all section
		all.add(read[common]())
		if own := read[calculation]; own != nil && calculation != common {
			all.add(own())
		}
		return all.only(calculation)
	})
	return b
})

// standardJob reads the rows of the job that marinecalc brings.
func standardJob() *job {
	all := &job{}
	for _, file := range filesIn("data/job") {
		all = all.over(&readOwn(file).job)
	}
	return all
}

// readOwn reads a file of our own, which the module of the page has in short.
func readOwn(file string) *ruleFile {
	text, _ := files.ReadFile(file) // embedded
	var s *ruleFile
	if err := json.Unmarshal(text, &s); err != nil {
		panic(err) // as below
	}
	s.inFull()
	s, faults := (&Book{}).settled(s, file)
	if len(faults) > 0 {
		panic(faults) // a fault in our own data; a test loads every file
	}
	return s
}

// inFull puts back what is left out of our own files where they are put into the
// module (cmd/page/assemble): the id of a sign, which is that of its two ends, and
// source and basis of a sign or of advice that is common practice.
func (s *ruleFile) inFull() {
	common := Provenance{NewSource("common practice, no source", "", ""), CommonPractice}
	for i := range s.Signs {
		if r := &s.Signs[i]; r.ID == "" {
			r.ID = r.Cause + "/" + r.Evidence
		}
		s.Signs[i].Provenance.inFull(common)
	}
	for i := range s.Advice {
		s.Advice[i].Provenance.inFull(common)
	}
}

func (p *Provenance) inFull(common Provenance) {
	if p.Source.Document == "" && p.Basis == "" {
		*p = common
	}
}

// filesIn lists the embedded files of a directory, in alphabetical order.
func filesIn(directory string) []string {
	var names []string
	entries, _ := files.ReadDir(directory) // an embedded directory is always there
	for _, e := range entries {
		if !e.IsDir() {
			names = append(names, path.Join(directory, e.Name()))
		}
	}
	return names
}

// nameOf is the name of the calculation or table that a file is for.
func nameOf(file string) string { return strings.TrimSuffix(path.Base(file), ".json") }

// section is the rows of one calculation, or of all of them.
type section struct {
	limits   []Limit
	shared   []Shared
	cautions []Caution
	advice   []Advice
	usual    []Row
}

// add puts the rows of a file behind those that are there.
func (s *section) add(file *ruleFile) {
	s.limits = append(s.limits, file.Limits...)
	s.shared = append(s.shared, file.Shared...)
	s.cautions = append(s.cautions, file.Cautions...)
	s.advice = append(s.advice, file.Advice...)
	if file.Name == usualValues {
		s.usual = append(s.usual, file.Rows...)
	}
}

// over applies rows to those that are there, as Overlay says.
func (s *section) over(below *section) *section {
	return &section{
		limits:   replace(below.limits, replacing(s.limits, below.limits), func(l Limit) string { return l.ID }),
		shared:   slices.Concat(below.shared, s.shared),
		cautions: replace(below.cautions, s.cautions, func(c Caution) string { return c.ID }),
		advice:   replace(below.advice, s.advice, func(a Advice) string { return a.ID }),
		usual:    replace(below.usual, s.usual, func(r Row) string { return r.ID }),
	}
}

// replacing notes in limits which of those below they take the place of.
func replacing(limits, below []Limit) []Limit {
	out := slices.Clone(limits)
	for i := range out {
		if at := slices.IndexFunc(below, func(l Limit) bool { return l.ID == out[i].ID }); at >= 0 {
			was := below[at]
			out[i].replaced = &was
		}
	}
	return out
}

// only keeps the rows of one calculation. Usual values are found by name, so
// that all of them may stay.
func (s *section) only(calculation string) *section {
	return &section{
		limits:   filter(s.limits, func(l *Limit) bool { return l.Calculation == calculation }),
		shared:   filter(s.shared, func(o *Shared) bool { return o.Calculation == calculation }),
		cautions: filter(s.cautions, func(c *Caution) bool { return Contains(c.Calculations, calculation) }),
		advice:   filter(s.advice, func(a *Advice) bool { return a.Calculation == calculation }),
		usual:    s.usual,
	}
}

func filter[T any](all []T, want func(*T) bool) []T {
	var out []T
	for i := range all {
		if want(&all[i]) {
			out = append(out, all[i])
		}
	}
	return out
}
