// Package rulefile holds a rule file against the rules and the calculations
// before it goes over them, so that nothing a yard or a maker wrote is lost in
// silence: check.go goes through the file, names.go asks whether what its rows
// name is there and of the right kind, table.go does so for the rows of
// tables, job.go for those of the job, near.go tells what is replaced and
// what was likely meant to be, lines.go finds the line of each place.
package rulefile

import (
	"bytes"
	"slices"
	"strings"

	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/rules"
)

// Report is what a rule file would do, and what is wrong with it.
type Report struct {
	File     string       `json:"file,omitempty"` // its name, where one was given
	Title    string       `json:"title,omitempty"`
	Problems problem.List `json:"problems,omitempty"` // with any of them it is not applied
	Warnings problem.List `json:"warnings,omitempty"` // it is applied, and this is probably not what was meant
	Replaces []Change     `json:"replaces,omitempty"` // rows in force that give way to its own
	Adds     []Change     `json:"adds,omitempty"`
}

// Change is one row of the file.
type Change struct {
	Kind      string `json:"kind"` // the member of the file that it stands in: "limits", "rows" …
	ID        string `json:"id"`
	Line      int    `json:"line"`
	Title     string `json:"title,omitempty"`
	Now       string `json:"now,omitempty"`       // of a limit: what it asks for
	Was       string `json:"was,omitempty"`       // of a limit that is replaced: what it asked for
	WasTitle  string `json:"wasTitle,omitempty"`  // of the row that gives way
	WasSource string `json:"wasSource,omitempty"` // and where that came from
}

// Check holds a rule file against a book and the calculations, and gives the
// book with the file applied, or nil where something is wrong with it. name is
// the file's, for the problems; it may be empty.
func Check(book *rules.Book, text []byte, name string) (*rules.Book, *Report) {
	c := &checker{book: book, out: &Report{File: name}}
	text = bytes.TrimPrefix(text, []byte("\ufeff"))
	var next *rules.Book
	if value, faults := contract.Decode(text); len(faults) > 0 {
		if worded := book.RowFaults(text); len(bytes.TrimSpace(text)) > 0 && len(worded) > 0 && worded[0].Line > 0 {
			faults = worded // it says the line
		}
		c.out.Problems = faults
	} else {
		c.check(text, value)
		if len(c.out.Problems) == 0 {
			var err error
			next, err = book.Overlay(text)
			c.out.Problems = problem.Of(err)
		}
		c.placeLines(text)
	}
	for _, list := range []problem.List{c.out.Problems, c.out.Warnings} {
		for i := range list {
			list[i].File = name
		}
	}
	if len(c.out.Problems) > 0 {
		return nil, c.out
	}
	return next, c.out
}

// check gathers all that is wrong with a file that is JSON.
func (c *checker) check(text []byte, value any) {
	document, err := contract.OpenDocument("rules")
	if err != nil {
		c.out.Problems = problem.Of(err)
		return
	}
	c.out.Problems = document.CheckStrict(value)
	if slices.ContainsFunc(c.out.Problems, func(p problem.Problem) bool { return p.Kind == problem.TooLarge }) {
		return
	}
	for _, f := range c.book.RowFaults(text) {
		if !c.faulted(f.Where) {
			c.out.Problems = append(c.out.Problems, f)
		}
	}
	file, is := value.(map[string]any)
	if !is {
		return
	}
	c.file = file
	c.out.Title, _ = file["title"].(string)
	c.identify()
	c.limits()
	c.shared()
	c.cautions()
	c.advice()
	c.table()
	c.job()
	c.changes()
	c.out.Problems = c.out.Problems.Sorted().Few()
	c.out.Warnings = c.out.Warnings.Sorted().Few()
}

// placeLines gives problems, warnings and changes their lines.
func (c *checker) placeLines(text []byte) {
	at := lines{}
	for _, list := range []problem.List{c.out.Problems, c.out.Warnings} {
		for i := range list {
			if !strings.HasPrefix(list[i].Where, "/") {
				list[i].Where = ""
			}
			at.want(list[i].Where)
		}
	}
	for _, where := range slices.Concat(c.replacesAt, c.addsAt) {
		at.want(where)
	}
	at.find(text)
	at.place(c.out.Problems)
	at.place(c.out.Warnings)
	for i, where := range c.replacesAt {
		c.out.Replaces[i].Line = at.line(where)
	}
	for i, where := range c.addsAt {
		c.out.Adds[i].Line = at.line(where)
	}
}

// faulted tells whether a problem is known already of a row, or in it.
func (c *checker) faulted(row string) bool {
	for _, p := range c.out.Problems {
		if p.Where == row || strings.HasPrefix(p.Where, row+"/") {
			return true
		}
	}
	return false
}
