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
// gauge, the surer the verdict. Where one factor alone had gone too far, the
// others keep their draws: else they would be spread the less, the coarser that
// one is.
func (w *Workspace) project(f []Factor, m *Model) {
	blamed := 0 // the factor that had gone too far last
	for _, t := range w.refused {
		alone, took := w.blame(blamed, t, f, m)
		if took {
			blamed = alone
		} else {
			took = w.tryAt(every, 0, t, f, m)
		}
		in, out := 0.0, 1.0
		for range halvings {
			middle := (in + out) / 2
			if w.tryAt(alone, middle, t, f, m) {
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

// every stands for all factors of a trial in place of one.
const every = -1

// blame finds the factor, by its place among those that vary, whose draw alone
// makes the model refuse a trial, and tries first; ok is false where there is
// none, and alone is then every.
func (w *Workspace) blame(first, t int, f []Factor, m *Model) (alone int, ok bool) {
	for n := range w.varying {
		if k := (first + n) % len(w.varying); w.tryAt(k, 0, t, f, m) {
			return k, true
		}
	}
	return every, false
}

// tryAt runs a trial with one of its factors, or every, at a part of the way
// from the estimate to its draw, and keeps the results when the model takes it.
func (w *Workspace) tryAt(alone int, part float64, t int, f []Factor, m *Model) bool {
	for k, i := range w.varying {
		estimate, draw := f[i].Estimate, w.draws.column(k, t+1)[t]
		if alone == every || alone == k {
			draw = estimate + part*(draw-estimate)
		}
		*m.Factors[i] = draw
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
	groups, counts := resize(w.keptGroups, len(w.varying)), resize(w.keptCounts, len(w.varying))
	for k := range groups {
		groups[k] = resize(groups[k], n)
	}
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
				g := w.groups[k][t]
				groups[k][len(kept)] = g
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
