// Lists of problems.

package problem

import (
	"cmp"
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
// It sorts places in the list, as others do: sorting code for the struct itself
// would take some 20 kB of the WebAssembly module.
func (l List) Sorted() List {
	order := make([]int, len(l))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int {
		return cmp.Or(strings.Compare(l[a].Where, l[b].Where), strings.Compare(l[a].What, l[b].What))
	})
	out := make(List, 0, len(l))
	for i, at := range order {
		if i == 0 || l[at] != l[order[i-1]] {
			out = append(out, l[at])
		}
	}
	return out
}
