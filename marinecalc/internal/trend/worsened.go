package trend

import (
	"fmt"
	"math"
)

// worsened says of too few readings for a line how far the newest is worse than
// the first of the run, where that is more than the gauge explains of two; "" for
// none, or with readings that were brought to other surroundings.
func (t *follower) worsened() string {
	run := t.found.Run
	if len(run) < 2 || t.series.Accuracy == 0 && t.series.Counted == 0 {
		return ""
	}
	first, newest := &t.series.Points[run[0]], &t.series.Points[run[len(run)-1]]
	went := newest.Value - first.Value
	if !t.series.Rising {
		went = -went
	}
	if !(went > math.Hypot(t.halfOf(first.Value), t.halfOf(newest.Value))) || first.Over != 0 || newest.Over != 0 {
		return ""
	}
	return fmt.Sprintf("From %s to %s in %s, which is more than the gauge explains: look for what changed, and read again soon. ",
		t.show(first.Value), t.show(newest.Value), counted(int(newest.Day-first.Day), "day"))
}

// halfOf is how far a reading may be off with 95 %: its gauge, and of a count its
// root (Poisson).
func (t *follower) halfOf(value float64) float64 {
	const both = 1.96 // standard deviations, normal distribution
	one := t.series.Counted
	return math.Hypot(t.series.Accuracy, both*math.Sqrt(one*max(value, one)))
}
