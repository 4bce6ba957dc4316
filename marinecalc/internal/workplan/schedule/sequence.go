// The order in which one person does the tasks.

package schedule

import (
	"slices"

	"example.org/driveline/marinecalc/problem"
)

// Sequence gives the tasks in an order for one person: each after what comes
// before it, and of several that can be next the one of the lowest rank, then
// one for which she is not moved, then the one that stands first. under is the rank that each is done under: its
// own, or that of what comes before it where that is higher, so that ranks
// never go backward. The error is a *problem.Error: a task that comes before
// itself.
func Sequence(tasks []Task, ranks []int) (order, under []int, err error) {
	if ring := cycle(tasks); ring != nil {
		var bad problem.List
		inACircle(&bad, ring)
		return nil, nil, bad.Err()
	}
	under = slices.Clone(ranks)
	for changed := true; changed; {
		changed = false
		for i := range tasks {
			for _, before := range tasks[i].After {
				if under[before] > under[i] {
					under[i], changed = under[before], true
				}
			}
		}
	}
	done := make([]bool, len(tasks))
	lies := Anywhere
	canBegin := func(i int) bool {
		return !done[i] && !slices.ContainsFunc(tasks[i].After, func(before int) bool { return !done[before] })
	}
	moved := func(i int) bool { return lies != Anywhere && tasks[i].Place != Anywhere && tasks[i].Place != lies }
	for range tasks {
		best := -1
		for i := range tasks {
			if canBegin(i) && (best < 0 || under[i] < under[best] || under[i] == under[best] && moved(best) && !moved(i)) {
				best = i
			}
		}
		done[best] = true
		order = append(order, best)
		if tasks[best].Place != Anywhere {
			lies = tasks[best].Place
		}
	}
	return order, under, nil
}
