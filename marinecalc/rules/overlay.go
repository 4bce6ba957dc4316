package rules

import (
	"fmt"
	"hash/fnv"
	"maps"
	"slices"
	"sync"

	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/sheet"
)

// Overlay returns a book in which the rows of a rule file replace those of
// the same id and the others are added. Every row must bring its own source.
// The book itself stays as it was. The error is a *problem.Error. What its rows
// name is not held against the calculations here, which are not known: programs
// use marinecalc.Overlay, which does, and says how long a file may be.
func (b *Book) Overlay(text []byte) (*Book, error) {
	b = b.filled()
	s, faults := b.read(text, "")
	if len(faults) > 0 {
		return nil, faults.Err()
	}
	next := b.with(s)
	before := b.DanglingIDs()
	faults = slices.DeleteFunc(next.DanglingIDs(), func(p problem.Problem) bool { return slices.Contains(before, p) })
	if len(faults) > 0 {
		return nil, faults.Err()
	}
	title := s.Title
	if title == "" {
		title = "overlay without a title"
	}
	next.overlays = append(slices.Clone(b.overlays), sheet.Overlay{Title: title, Fingerprint: fingerprint(text)})
	return next, nil
}

// RowFaults lists what is wrong with the rows of a rule file by themselves.
func (b *Book) RowFaults(text []byte) problem.List {
	_, faults := b.filled().read(text, "")
	return faults
}

// with merges what a rule file brings into a copy of the book.
func (b *Book) with(s *ruleFile) *Book {
	next := &Book{tables: maps.Clone(b.tables), job: b.job}
	var rows section
	rows.add(s)
	next.all = sync.OnceValue(func() *section { return rows.over(b.all()) })
	if s.Name != "" {
		next.tables[s.Name] = sync.OnceValue(func() *Table {
			if b.tables[s.Name] == nil {
				return s.table()
			}
			t := b.Table(s.Name)
			t.columns = maps.Clone(t.columns)
			maps.Copy(t.columns, s.Columns)
			t.Rows.items = replace(t.Rows.items, s.Rows, func(r Row) string { return r.ID })
			return t
		})
	}
	if s.job.any() {
		next.job = sync.OnceValue(func() *job { return b.job().over(&s.job) })
	}
	next.index(maps.Keys(b.known), func(calculation string) *section { return rows.over(b.rows(calculation)).only(calculation) })
	return next
}

// fingerprint tells one text of a rule file from another (FNV-1a, 64 bits).
func fingerprint(text []byte) string {
	h := fnv.New64a()
	_, _ = h.Write(text) // writing to a hash does not fail
	return fmt.Sprintf("%016x", h.Sum64())
}
