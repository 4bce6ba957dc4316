// In which order what is wrong is cured: as the work goes, and where that does
// not matter what brings on another trouble before it.

package diagnosis

import (
	"slices"

	"example.org/driveline/marinecalc/rules"
)

// ordering knows which cures of a list the work puts before which.
type ordering struct {
	steps map[string]rules.Step
	own   [][]string // by number in the list: the steps that make the cure
	last  []bool     // it comes when all else is back
}

// workOrder takes the first cure of each cause. What makes it are the
// steps of work and of closing up that no other cure has; where all are shared, as with an alignment
// that other work ends in, the last of them.
func (f *finder) workOrder(list []int) *ordering {
	o := &ordering{steps: map[string]rules.Step{}}
	for _, s := range f.book.Steps().All() {
		o.steps[s.ID] = s
	}
	work, remedy := make([][]string, len(list)), make([]string, len(list))
	o.last = make([]bool, len(list))
	of := map[string]map[string]bool{} // by step: the remedies that have it
	for i, c := range list {
		cures := f.cures(f.causes.At(c))
		if len(cures) == 0 {
			continue
		}
		remedy[i], o.last[i] = cures[0].ID, cures[0].Last
		for _, id := range cures[0].Steps.All() {
			if phase := o.steps[id].Phase; phase != "work" && phase != "close" {
				continue
			}
			work[i] = append(work[i], id)
			if of[id] == nil {
				of[id] = map[string]bool{}
			}
			of[id][remedy[i]] = true
		}
	}
	for _, all := range work {
		own := slices.DeleteFunc(slices.Clone(all), func(id string) bool { return len(of[id]) > 1 })
		if n := len(all); len(own) == 0 && n > 0 {
			own = all[n-1:]
		}
		o.own = append(o.own, own)
	}
	return o
}

// before tells whether the work of cure i comes before that of cure j.
func (o *ordering) before(i, j int) bool {
	if o.last[i] != o.last[j] {
		return o.last[j]
	}
	if len(o.own[i]) == 0 || len(o.own[j]) == 0 {
		return false
	}
	for _, id := range o.own[j] {
		if slices.Contains(o.own[i], id) {
			return false // the same work
		}
	}
	for _, id := range o.own[j] {
		if o.follows(id, o.own[i], map[string]bool{}) {
			return true
		}
	}
	return false
}

// follows tells whether a step comes after any of others.
func (o *ordering) follows(id string, others []string, seen map[string]bool) bool {
	for _, earlier := range o.steps[id].After.All() {
		if slices.Contains(others, earlier) {
			return true
		}
		if !seen[earlier] {
			seen[earlier] = true
			if o.follows(earlier, others, seen) {
				return true
			}
		}
	}
	return false
}

// chained puts each cause after those whose work comes before its own, and
// where the work leaves it open before those that it brings on; in a ring the
// more probable one comes first.
func (f *finder) chained(list []int) []int {
	work := f.workOrder(list)
	left := make([]int, len(list)) // numbers in the list
	for i := range left {
		left[i] = i
	}
	above := func(p, c int) bool {
		first, then := work.before(p, c), work.before(c, p)
		if first != then {
			return first
		}
		return f.makes(list[p], list[c])
	}
	var ordered []int
	for len(left) > 0 {
		next, fewest := 0, len(left)+1
		for at, c := range left {
			n := 0
			for _, p := range left {
				if p != c && above(p, c) {
					n++
				}
			}
			if n < fewest || n == fewest && f.belief.Cause[list[c]] > f.belief.Cause[list[left[next]]] {
				next, fewest = at, n
			}
		}
		ordered = append(ordered, list[left[next]])
		left = slices.Delete(left, next, next+1)
	}
	return ordered
}
