// Lists of problems.

package problem

import (
	"slices"
	"strings"
)

// List gathers problems. The nil List means none. A list is no error itself,
// for a list cannot be compared: [List.Err] makes it one.
type List []Problem

// String gives one problem a line.
func (l List) String() string {
	lines := make([]string, len(l))
	for i, p := range l {
		lines[i] = p.String()
	}
	return strings.Join(lines, "\n")
}

// Add appends a problem. It is kept out of its callers, in which it would
// take more code than all they do.
//
//go:noinline
func (l *List) Add(where, what, allowed, hint string) {
	*l = append(*l, Problem{Where: where, What: what, Allowed: allowed, Hint: hint})
}

// Err returns the list as an [*Error], or nil when it is empty.
func (l List) Err() error {
	if len(l) == 0 {
		return nil
	}
	return &Error{Problems: l}
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
