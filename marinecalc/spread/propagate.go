package spread

import (
	"fmt"
	"math"
	"math/rand/v2"
)

// The number of trials: when none is given, and the bounds of what is allowed.
const (
	DefaultTrials = 4096
	MinTrials     = 100
	MaxTrials     = 1 << 20
)

// Plan says how many trials to run and from which seed. The zero value means
// 4096 trials and seed 1; a Seed of 0 is always taken as 1.
type Plan struct {
	Trials int // 100 … 1 048 576, or 0 for 4096
	Seed   uint64
}

// Outcome is the answer of a propagation.
type Outcome struct {
	Trials  int     // trials run; 1 when no factor varies
	Failed  int     // of these, how many gave no result; they are left out
	Usable  bool    // false when more than 1 % failed: the ranges are then not given
	Results []Range // one for each result, in the order of y
}

// Propagate draws values for the factors, runs the model on them again and
// again, and says how the results spread (JCGM 101:2008, clause 7).
//
// The model fills all of y, of length results, from x, the value of each
// factor in order. It must not change x nor keep either slice. A trial fails
// when the model returns false or leaves anything not finite in y.
//
// An error means that a factor, the number of results or the plan is not
// usable; no trial has then been run.
func Propagate(f []Factor, results int, p Plan, model func(x, y []float64) bool) (Outcome, error) {
	return new(Workspace).Propagate(f, results, p, model)
}

// Workspace keeps the memory of a propagation for the next one. The zero value
// is ready. It serves one caller at a time.
type Workspace struct {
	pcg     rand.PCG
	varying []int     // indexes of the factors that are drawn
	x, y    []float64 // one trial
	draws   []float64 // by varying factor, then trial
	groups  []uint8   // the group of strata of each draw
	counts  []tally   // by varying factor, how many of the trials kept are in each group
	columns []float64 // by result, then trial
	shares  []float64 // by result, then factor
	ranges  []Range
}

// Propagate does what the function of the same name does, without allocating
// once the workspace has grown to size. The Outcome lies in the workspace and
// holds until its next use.
func (w *Workspace) Propagate(f []Factor, results int, p Plan, model func(x, y []float64) bool) (Outcome, error) {
	if p.Trials == 0 {
		p.Trials = DefaultTrials
	}
	if p.Seed == 0 {
		p.Seed = 1
	}
	if p.Trials < MinTrials || p.Trials > MaxTrials {
		return Outcome{}, fmt.Errorf("spread: %d trials; allowed are %d to %d", p.Trials, MinTrials, MaxTrials)
	}
	if results < 1 {
		return Outcome{}, fmt.Errorf("spread: %d results; at least one is needed", results)
	}
	for i := range f {
		if err := f[i].check(i); err != nil {
			return Outcome{}, err
		}
	}
	w.draw(f, results, &p)
	kept := w.run(p.Trials, results, model)
	out := Outcome{Trials: p.Trials, Failed: p.Trials - kept}
	out.Usable = out.Failed*100 <= out.Trials
	for r := range w.ranges {
		w.ranges[r] = Range{
			Mean: math.NaN(), StdDev: math.NaN(), Low: math.NaN(), High: math.NaN(),
			Shares: w.shares[r*len(f) : (r+1)*len(f) : (r+1)*len(f)],
		}
		if out.Usable {
			w.describe(&w.ranges[r], w.columns[r*p.Trials:][:kept], p.Trials)
		}
	}
	out.Results = w.ranges
	return out, nil
}

// draw readies the workspace and makes the draws. With nothing to draw one
// trial tells all.
func (w *Workspace) draw(f []Factor, results int, p *Plan) {
	w.varying = w.varying[:0]
	w.x = resize(w.x, len(f))
	for i := range f {
		w.x[i] = f[i].Estimate
		if f[i].varies() {
			w.varying = append(w.varying, i)
		}
	}
	if len(w.varying) == 0 {
		p.Trials = 1
	}
	n := p.Trials
	w.y = resize(w.y, results)
	w.draws = resize(w.draws, len(w.varying)*n)
	w.groups = resize(w.groups, len(w.varying)*n)
	w.counts = resize(w.counts, len(w.varying))
	w.columns = resize(w.columns, results*n)
	w.shares = resize(w.shares, results*len(f))
	clear(w.shares)
	w.ranges = resize(w.ranges, results)
	groups := groupsFor(n)
	for k, i := range w.varying {
		stream(&w.pcg, p.Seed, i)
		drawFactor(&f[i], &w.pcg, w.draws[k*n:][:n], w.groups[k*n:][:n], groups)
	}
}

// run runs the model on every trial and keeps the results of those that did
// not fail, close together; their number is returned.
func (w *Workspace) run(n, results int, model func(x, y []float64) bool) int {
	kept := 0
	for t := range n {
		for k, i := range w.varying {
			w.x[i] = w.draws[k*n+t]
		}
		for r := range w.y {
			w.y[r] = math.NaN() // what the model leaves out shall not pass for a result
		}
		if !model(w.x, w.y) || !allFinite(w.y) {
			continue
		}
		for r, v := range w.y {
			w.columns[r*n+kept] = v
		}
		if kept < t {
			for k := range w.varying {
				w.groups[k*n+kept] = w.groups[k*n+t]
			}
		}
		kept++
	}
	for k := range w.varying {
		w.counts[k] = tally{}
		for _, g := range w.groups[k*n:][:kept] {
			w.counts[k][g%maxGroups]++
		}
	}
	return kept
}

// describe fills r from the results of the trials kept, v; n is the number of
// trials run.
func (w *Workspace) describe(r *Range, v []float64, n int) {
	mean, squares, constant := summarise(v)
	if constant {
		*r = Range{Usable: true, Mean: mean, Low: mean, High: mean, Shares: r.Shares, trials: v[:1]}
		return
	}
	if !finite(mean) || !finite(squares) {
		return // so large that squares overflow
	}
	r.Usable = true
	r.Mean = mean
	r.StdDev = math.Sqrt(squares / float64(len(v)-1))
	for k, i := range w.varying {
		if len(w.varying) == 1 {
			r.Shares[i] = 1 // there is nothing else it could come from
			break
		}
		var sums [maxGroups]float64
		for t, g := range w.groups[k*n:][:len(v)] {
			sums[g%maxGroups] += v[t] - mean
		}
		r.Shares[i] = share(&sums, &w.counts[k], len(v), squares)
	}
	r.Low, r.High = symmetricInterval(v)
	r.trials = v
}

func allFinite(y []float64) bool {
	for _, v := range y {
		if !finite(v) {
			return false
		}
	}
	return true
}

// resize gives a slice of length n, the old one where it is large enough.
func resize[T any](s []T, n int) []T {
	if cap(s) < n {
		return make([]T, n)
	}
	return s[:n]
}
