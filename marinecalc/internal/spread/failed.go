// Trials that failed.

package spread

import "math"

// halvings is how often the way back from a trial that was refused is halved:
// its value is then known to a thousandth of that way.
const halvings = 10

// scarce tells whether too few trials are left to say anything.
func scarce(kept, trials int) bool { return kept*10 < trials }

// project gives every trial that the model refused the results at the edge of
// where it applies: on the straight way from the draws to the estimates, which
// it takes, as far out as it goes. Without that a reading with a coarse gauge
// would be judged by the trials on one side of it alone, and the coarser the
// gauge, the surer the verdict.
func (w *Workspace) project(f []Factor, m *Model) {
	for _, t := range w.refused {
		in, out := 0.0, 1.0
		took := w.tryAt(0, t, f, m)
		for range halvings {
			middle := (in + out) / 2
			if w.tryAt(middle, t, f, m) {
				in, took = middle, true
			} else {
				out = middle
			}
		}
		if !took {
			for i := range w.ranges {
				w.results.column(i, t+1)[t] = math.NaN()
			}
		}
	}
}

// tryAt runs a trial at a part of the way from the estimates to its draws, and
// keeps the results when the model takes it.
func (w *Workspace) tryAt(part float64, t int, f []Factor, m *Model) bool {
	for k, i := range w.varying {
		estimate := f[i].Estimate
		*m.Factors[i] = estimate + part*(w.draws.column(k, t+1)[t]-estimate)
	}
	if !m.Run() {
		return false
	}
	w.results.gather(t, m.Results)
	return true
}

// describeKept fills r from result i of n trials, some of which failed: from
// those that did not, with the edges of where the model applies beside them.
func (w *Workspace) describeKept(r *Range, i, n int, shares bool) {
	column, refused := w.results.column(i, n), w.refused
	kept, edge := w.apart[:0], []float64(nil)
	groups, counts := resize(w.keptGroups, len(w.varying)*n), resize(w.keptCounts, len(w.varying))
	clear(counts)
	for t, v := range column {
		isEdge := len(refused) > 0 && refused[0] == t
		if isEdge {
			refused = refused[1:]
		}
		switch {
		case !finite(v):
			r.lost++
		case isEdge:
			edge = append(edge, v)
		default:
			for k := range w.varying {
				g := w.groups[k*n+t]
				groups[k*n+len(kept)] = g
				counts[k][g]++
			}
			kept = append(kept, v)
		}
	}
	w.apart, w.keptGroups, w.keptCounts = kept, groups, counts
	if len(kept) < 2 || scarce(len(kept), n) {
		return
	}
	v := column[:copy(column, kept)]
	var s summary
	s.mean, s.squares = summarise(v)
	w.describe(r, v, s, false)
	if shares && r.Usable && r.StdDev > 0 {
		w.share(r, v, s.squares, groups, counts)
	}
	r.edge = edge
}
