// Package problem is the one form in which marinecalc says that something
// given to it cannot be used: where it stands, what is wrong with it, what is
// allowed, and how to mend it.
package problem

import (
	"slices"
	"strings"
)

// Problem is one thing wrong with an input.
type Problem struct {
	Where   string `json:"where"`             // JSON pointer into the input ("/shaftDiameter") or a flag ("--shaft-diameter")
	What    string `json:"what"`              // what is wrong
	Allowed string `json:"allowed,omitempty"` // what would be accepted
	Hint    string `json:"hint,omitempty"`    // how to mend it
}

// String gives the problem as one line for people.
func (p Problem) String() string {
	var b strings.Builder
	if p.Where != "" {
		b.WriteString(p.Where)
		b.WriteString(": ")
	}
	b.WriteString(p.What)
	if p.Allowed != "" {
		b.WriteString("; allowed: ")
		b.WriteString(p.Allowed)
	}
	if p.Hint != "" {
		b.WriteString("; ")
		b.WriteString(p.Hint)
	}
	return b.String()
}

// Error makes a single Problem usable as an error.
func (p Problem) Error() string { return p.String() }

// List is several problems reported together. The nil List means none.
type List []Problem

// Error gives one problem a line.
func (l List) Error() string {
	lines := make([]string, len(l))
	for i, p := range l {
		lines[i] = p.String()
	}
	return strings.Join(lines, "\n")
}

// Add appends a problem. It is kept out of its callers, in which it would
// take more room than all they do.
//
//go:noinline
func (l *List) Add(where, what, allowed, hint string) {
	*l = append(*l, Problem{Where: where, What: what, Allowed: allowed, Hint: hint})
}

// Err returns the list as an error, or nil when it is empty.
func (l List) Err() error {
	if len(l) == 0 {
		return nil
	}
	return l
}

// Sorted returns the problems ordered by place, then text, without repeats.
func (l List) Sorted() List {
	out := slices.Clone(l)
	slices.SortFunc(out, func(a, b Problem) int {
		if c := strings.Compare(a.Where, b.Where); c != 0 {
			return c
		}
		return strings.Compare(a.What, b.What)
	})
	return slices.Compact(out)
}
