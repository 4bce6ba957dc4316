// Lists of problems.

package problem

import (
	"cmp"
	"slices"
	"strconv"
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

// Err returns the list as an [*Error], or nil when it is empty. However much is
// wrong, it is no more than one reads: see [List.Few].
func (l List) Err() error {
	if len(l) == 0 {
		return nil
	}
	return &Error{Problems: l.Few()}
}

// Most is how many problems are told at once.
const Most = 50

// What a problem's texts have at most, in bytes. What is allowed may be a list
// of names.
const (
	mostWords   = 800
	mostAllowed = 6000
)

const more = "more is wrong: at least "

// Few cuts a list to its first problems, and says how many are left. Texts that
// quote what is long are cut too.
func (l List) Few() List {
	if len(l) > Most+1 || len(l) == Most+1 && !strings.HasPrefix(l[Most].What, more) {
		l = append(l[:Most:Most], Problem{What: more + strconv.Itoa(len(l)-Most) + " other problems", Hint: "mend these first"})
	}
	for i := range l {
		if p := &l[i]; len(p.What) > mostWords || len(p.Where) > mostWords || len(p.Hint) > mostWords || len(p.Allowed) > mostAllowed {
			l = slices.Clone(l)
			for i := range l {
				p := &l[i]
				p.What, p.Where, p.Hint, p.Allowed = cut(p.What, mostWords), cut(p.Where, mostWords), cut(p.Hint, mostWords), cut(p.Allowed, mostAllowed)
			}
			break
		}
	}
	return l
}

func cut(text string, most int) string {
	if len(text) <= most {
		return text
	}
	return strings.ToValidUTF8(text[:most], "") + "…"
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
