package rules

import (
	"embed"
	"encoding/json"
	"fmt"
	"maps"
	"slices"
	"sync"

	"example.org/driveline/marinecalc/problem"
)

//go:embed *.json
var files embed.FS

// Book is all rule data in force: what marinecalc brings, and what was laid
// over it. A Book is never changed after it is made.
type Book struct {
	tables   map[string]*Table
	limits   []Limit
	shared   []Shared
	cautions []Caution
	advice   []Advice
	job      job
	overlays []string // titles of what was laid over, in order

	of func(calculation string) *section // the rows of one calculation, found once
}

// section is the rows of one calculation.
type section struct {
	limits   []Limit
	cautions []Caution // gravest first
	advice   []Advice
}

// index readies the look-up of the rows by calculation.
func (b *Book) index() {
	var known sync.Map // calculation -> *section
	b.of = func(calculation string) *section {
		if s, ok := known.Load(calculation); ok {
			return s.(*section)
		}
		s := &section{
			limits:   keep(b.limits, func(l Limit) bool { return l.Calculation == calculation }),
			cautions: keep(b.cautions, func(c Caution) bool { return slices.Contains(c.Calculations, calculation) }),
			advice:   keep(b.advice, func(a Advice) bool { return a.Calculation == calculation }),
		}
		for _, one := range b.shared {
			if one.Calculation == calculation {
				s.limits = append(s.limits, one.taken(b.limits)...)
			}
		}
		slices.SortStableFunc(s.cautions, func(x, y Caution) int { return x.Signal.Gravity() - y.Signal.Gravity() })
		known.Store(calculation, s)
		return s
	}
}

// Standard returns the rule data that marinecalc brings.
var Standard = sync.OnceValue(func() *Book {
	b := &Book{tables: map[string]*Table{}}
	b.index()
	entries, _ := files.ReadDir(".") // the root of an embedded file system is always there
	for _, e := range entries {
		text, _ := files.ReadFile(e.Name())
		next, faults := b.with(text, e.Name())
		if len(faults) > 0 {
			panic(faults) // a fault in our own data; a test loads every file
		}
		b = next
	}
	return b
})

// Table returns the table of that name, or nil.
func (b *Book) Table(name string) *Table { return b.tables[name] }

// Tables lists the names of all tables, in alphabetical order.
func (b *Book) Tables() []string { return slices.Sorted(maps.Keys(b.tables)) }

// Limits returns the limits of one calculation.
func (b *Book) Limits(calculation string) []Limit { return b.of(calculation).limits }

// Cautions returns the cautions of one calculation, gravest first.
func (b *Book) Cautions(calculation string) []Caution { return b.of(calculation).cautions }

// Advice returns the advice of one calculation.
func (b *Book) Advice(calculation string) []Advice { return b.of(calculation).advice }

// AllLimits returns every limit.
func (b *Book) AllLimits() []Limit { return b.limits }

// AllShared returns which calculations share the limits of another.
func (b *Book) AllShared() []Shared { return b.shared }

// AllCautions returns every caution.
func (b *Book) AllCautions() []Caution { return b.cautions }

// AllAdvice returns every piece of advice.
func (b *Book) AllAdvice() []Advice { return b.advice }

// Overlays names what was laid over the standard rules, in order.
func (b *Book) Overlays() []string { return b.overlays }

// Overlay returns a book in which the rows of a rule file replace those of
// the same id and the others are added. Every row must bring its own source.
// The book itself stays as it was.
func (b *Book) Overlay(text []byte) (*Book, problem.List) {
	next, faults := b.with(text, "")
	if len(faults) == 0 {
		before := b.Loose()
		faults = slices.DeleteFunc(next.Loose(), func(p problem.Problem) bool { return slices.Contains(before, p) })
	}
	if len(faults) > 0 {
		return nil, faults
	}
	title := "rows laid over"
	var head struct{ Title string }
	if json.Unmarshal(text, &head) == nil && head.Title != "" {
		title = head.Title
	}
	next.overlays = append(slices.Clone(b.overlays), title)
	return next, nil
}

// with merges one rule file into a copy of the book.
func (b *Book) with(text []byte, where string) (*Book, problem.List) {
	var s sheaf
	if err := json.Unmarshal(text, &s); err != nil {
		return nil, problem.List{{Where: where, What: "this rule file cannot be read: " + err.Error(),
			Allowed: "the form of schemas/rules-*.schema.json", Hint: "compare it with a file of marinecalc/rules"}}
	}
	for i := range s.Written {
		s.Rows = append(s.Rows, s.Written[i].row())
	}
	old := b.tables[s.Name]
	if s.Columns == nil && old != nil {
		s.Columns = old.Columns
	}
	if faults := s.faults(where); len(faults) > 0 {
		return nil, faults
	}
	next := &Book{tables: maps.Clone(b.tables),
		limits:   replace(b.limits, s.Limits, func(l Limit) string { return l.ID }),
		shared:   slices.Concat(b.shared, s.Shared),
		cautions: replace(b.cautions, s.Cautions, func(c Caution) string { return c.ID }),
		advice:   replace(b.advice, s.Advice, func(a Advice) string { return a.ID }),
		job:      b.job.over(s.job)}
	if s.Name != "" {
		table := s.Table
		if old != nil {
			table.Title, table.About = old.Title, old.About
			table.Columns = maps.Clone(old.Columns)
			maps.Copy(table.Columns, s.Columns)
			table.Rows = replace(old.Rows, s.Rows, func(r Row) string { return r.ID })
		}
		next.tables[s.Name] = &table
	} else if len(s.Rows) > 0 {
		return nil, problem.List{{Where: where + "/table", What: "the rows name no table",
			Allowed: fmt.Sprint(b.Tables()), Hint: `write "table": "…"`}}
	}
	if len(s.Evidence) > 0 {
		next.tables["evidence"] = next.job.questions()
	}
	if len(s.Remedies) > 0 {
		next.tables["remedies"] = next.job.cures()
	}
	if len(s.Parts) > 0 {
		next.tables["parts"] = next.job.goods()
	}
	next.index()
	return next, nil
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

func keep[T any](all []T, want func(T) bool) []T {
	var out []T
	for _, v := range all {
		if want(v) {
			out = append(out, v)
		}
	}
	return out
}
