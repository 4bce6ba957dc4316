package contract

import (
	"fmt"
	"strconv"
	"strings"

	"example.org/driveline/marinecalc/problem"
)

// Alike gathers warnings. What is alike in many entries of a list is one
// warning, at the first of them, and of more than mostProblems only the number
// is told.
type Alike struct {
	list  problem.List
	times []int
	at    map[string]int
	more  int
}

// Add takes the warning of a place; warn is called where there is no like it
// yet, and need not fill in the place.
func (a *Alike) Add(where []string, warn func() problem.Problem) {
	like := likeness(where)
	if i, known := a.at[like]; known {
		a.times[i]++
		return
	}
	if len(a.list) == mostProblems {
		a.more++
		return
	}
	if a.at == nil {
		a.at = map[string]int{}
	}
	a.at[like] = len(a.list)
	p := warn()
	p.Where = Pointer(where)
	a.list, a.times = append(a.list, p), append(a.times, 1)
}

// List is what was gathered, in the order of the file's names.
func (a *Alike) List() problem.List {
	for i, n := range a.times {
		if n > 1 {
			a.list[i].What += fmt.Sprintf(" (and %d more like it)", n-1)
		}
	}
	a.times = nil
	if a.more > 0 {
		a.list, a.more = append(a.list, problem.Problem{What: fmt.Sprintf("%d more members are not used", a.more)}), 0
	}
	return a.list
}

// likeness is a place without its numbers in lists.
func likeness(where []string) string {
	var b strings.Builder
	for _, t := range where {
		b.WriteByte('/')
		if _, err := strconv.Atoi(t); err == nil {
			t = "*"
		}
		b.WriteString(Shorten(t))
	}
	return b.String()
}
