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
	cautions []Caution
	advice   []Advice
	overlays []string // titles of what was laid over, in order
}

// Standard returns the rule data that marinecalc brings.
var Standard = sync.OnceValue(func() *Book {
	b := &Book{tables: map[string]*Table{}}
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
func (b *Book) Limits(calculation string) []Limit {
	return keep(b.limits, func(l Limit) bool { return l.Calculation == calculation })
}

// Cautions returns the cautions of one calculation.
func (b *Book) Cautions(calculation string) []Caution {
	return keep(b.cautions, func(c Caution) bool { return slices.Contains(c.Calculations, calculation) })
}

// Advice returns the advice of one calculation.
func (b *Book) Advice(calculation string) []Advice {
	return keep(b.advice, func(a Advice) bool { return a.Calculation == calculation })
}

// AllLimits returns every limit.
func (b *Book) AllLimits() []Limit { return b.limits }

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
	old := b.tables[s.Name]
	if s.Columns == nil && old != nil {
		s.Columns = old.Columns
	}
	if faults := s.faults(where); len(faults) > 0 {
		return nil, faults
	}
	next := &Book{tables: maps.Clone(b.tables),
		limits:   replace(b.limits, s.Limits, func(l Limit) string { return l.ID }),
		cautions: replace(b.cautions, s.Cautions, func(c Caution) string { return c.ID }),
		advice:   replace(b.advice, s.Advice, func(a Advice) string { return a.ID })}
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
