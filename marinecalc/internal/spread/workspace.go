// The memory of a propagation, kept from one to the next.

package spread

import "sync"

// Workspace keeps the memory of a propagation, some hundred kilobytes, for the next
// one. The zero value is ready. It serves one caller at a time.
type Workspace struct {
	varying   []int      // indexes of the factors that are drawn
	drawn     []*float64 // where their values go
	draws     table      // values of the varying factors, by trial
	results   table      // by trial
	groups    [][]uint8  // of strata that each draw came from, by varying factor, then trial; they are not ours to change
	counts    []tally    // by varying factor, how many of the trials kept are in each group
	inArray   int        // how many of them, the first ones, are columns of an array
	scratch   []float64  // for one result
	refused   []int      // the trials that the model refused, in order
	shares    []float64  // by result, then factor
	summaries []summary  // by result
	ranges    []Range
	analysed  []variance // of one result, by varying factor

	apart      []float64 // of one result, the trials that did not fail
	keptGroups [][]uint8 // as groups, of these
	keptCounts []tally   // as counts, of these

	x, y   []float64 // of a model that takes slices
	places []*float64
}

var workspaces = sync.Pool{New: func() any { return new(Workspace) }}

// Borrow gives a workspace that nobody uses, for one propagation. It may be
// called by several goroutines at once.
func Borrow() *Workspace { return workspaces.Get().(*Workspace) }

// Return gives a borrowed workspace back. The Outcome that lies in it is not
// to be used after.
func (w *Workspace) Return() { workspaces.Put(w) }

// resize gives a slice of length n, the old one where it is large enough.
func resize[T any](s []T, n int) []T {
	if cap(s) < n {
		return make([]T, n)
	}
	return s[:n]
}
