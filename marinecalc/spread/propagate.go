package spread

import (
	"fmt"
	"math"
)

// The number of trials: when none is given, and the bounds of what is allowed.
const (
	DefaultTrials = 4096
	MinTrials     = 100
	MaxTrials     = 1 << 20
)

// Plan says how many trials to run, from which seed, and what to find out. The
// zero value means 4096 trials, seed 1 and the shares of every result; a Seed
// of 0 is always taken as 1.
type Plan struct {
	Trials int // 100 … 1 048 576, or 0 for 4096
	Seed   uint64
	Shares int // how many results, the first ones, get their Shares; 0 for all of them
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
	drawer  drawer
	varying []int     // indexes of the factors that are drawn
	draws   table     // values of the factors, by trial
	results table     // by trial
	groups  []uint8   // of strata that each draw came from, by varying factor, then trial
	counts  []tally   // by varying factor, how many of the trials kept are in each group
	room    []float64 // for one result
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
	if p.Shares < 0 {
		return Outcome{}, fmt.Errorf("spread: shares of %d results; at least 1, or 0 for all", p.Shares)
	}
	w.draw(f, results, &p)
	out := Outcome{Trials: p.Trials, Usable: true, Results: w.ranges}
	kept := p.Trials
	if !w.run(kept, model) {
		kept = w.sift(kept)
		out.Failed = p.Trials - kept
		out.Usable = out.Failed*100 <= out.Trials
	}
	for i := range w.ranges {
		r := &w.ranges[i]
		*r = Range{
			Mean: math.NaN(), StdDev: math.NaN(), Low: math.NaN(), High: math.NaN(),
			Shares: w.shares[i*len(f) : (i+1)*len(f) : (i+1)*len(f)],
		}
		if out.Usable {
			w.describe(r, w.results.column(i, kept), p.Shares == 0 || i < p.Shares)
		}
	}
	return out, nil
}

// draw readies the workspace and makes the draws. With nothing to draw one
// trial tells all.
func (w *Workspace) draw(f []Factor, results int, p *Plan) {
	w.varying = w.varying[:0]
	for i := range f {
		if f[i].varies() {
			w.varying = append(w.varying, i)
		}
	}
	if len(w.varying) == 0 {
		p.Trials = 1
	}
	n := p.Trials
	w.draws.ready(n, len(f))
	w.results.ready(n, results)
	w.groups = resize(w.groups, len(w.varying)*n)
	w.counts = resize(w.counts, len(w.varying))
	w.room = resize(w.room, n)
	w.shares = resize(w.shares, results*len(f))
	clear(w.shares)
	w.ranges = resize(w.ranges, results)
	groups := groupsFor(n)
	for i := range f {
		if !f[i].varies() {
			column := w.draws.column(i, n)
			for t := range column {
				column[t] = f[i].Estimate
			}
		}
	}
	even := evenly(n, groups)
	for k, i := range w.varying {
		w.counts[k] = even
		w.drawer.draw(&f[i], newStream(p.Seed, i), w.draws.column(i, n), w.groups[k*n:][:n], groups)
	}
}

// run runs the model on every trial. It is false when any trial failed; such a
// trial has a result that is not finite.
func (w *Workspace) run(n int, model func(x, y []float64) bool) (all bool) {
	all = true
	in, out := &w.draws, &w.results
	for first := 0; first < n; first += blockRows {
		in.load(first)
		out.clear() // what the model leaves out shall not pass for a result
		rows := min(blockRows, n-first)
		for t := range rows {
			if y := out.row(t); !model(in.row(t), y) {
				y[0] = math.NaN()
			}
		}
		all = all && allFinite(out.block[:rows*out.width])
		out.store(first)
	}
	return all
}

// sift leaves out the trials that failed and puts the others close together;
// their number is returned.
func (w *Workspace) sift(n int) (kept int) {
	out := &w.results
	for t := range n {
		fit := true
		for r := range out.columns {
			fit = fit && finite(out.column(r, n)[t])
		}
		if !fit {
			for k := range w.varying {
				w.counts[k][w.groups[k*n+t]]--
			}
			continue
		}
		for r := range out.columns {
			column := out.column(r, n)
			column[kept] = column[t]
		}
		for at := 0; at < len(w.groups); at += n {
			w.groups[at+kept] = w.groups[at+t]
		}
		kept++
	}
	return kept
}

// describe fills r from the results of the trials kept, v.
func (w *Workspace) describe(r *Range, v []float64, shares bool) {
	mean, squares := summarise(v)
	sd := math.Sqrt(squares / float64(max(len(v)-1, 1)))
	if sd <= still*math.Abs(mean) {
		*r = Range{Usable: true, Mean: mean, Low: mean, High: mean, Shares: r.Shares, trials: v[:1]}
		return
	}
	if !finite(mean) || !finite(squares) {
		return // so large that squares overflow
	}
	r.Usable = true
	r.Mean, r.StdDev = mean, sd
	if shares {
		w.share(r, v, squares)
	}
	r.Low, r.High = symmetricInterval(v, w.room, mean, sd)
	r.trials = v
}

// share fills in the shares of r, whose results are v in the order of the
// trials; total is the sum of their squares about the mean.
func (w *Workspace) share(r *Range, v []float64, total float64) {
	if len(w.varying) == 1 {
		r.Shares[w.varying[0]] = 1 // there is nothing else it could come from
		return
	}
	last := len(w.varying) - 1
	for k := 0; k <= last; k += lanes {
		var groups [lanes][]uint8
		for lane := range groups {
			groups[lane] = w.groups[min(k+lane, last)*len(w.room):][:len(v)] // the last one again where there are no more
		}
		var s sums
		s.add(groups, v, r.Mean)
		for lane, i := range w.varying[k:min(k+lanes, last+1)] {
			r.Shares[i] = share(&s[lane], &w.counts[k+lane], len(v), total)
		}
	}
}

// allFinite looks at eight values a round, which is markedly quicker in
// WebAssembly.
func allFinite(v []float64) bool {
	unfit := 0.0
	i := 0
	for ; i <= len(v)-8; i += 8 {
		y := (*[8]float64)(v[i:]) // less itself, a finite number is 0
		unfit += ((y[0] - y[0]) + (y[1] - y[1])) + ((y[2] - y[2]) + (y[3] - y[3]))
		unfit += ((y[4] - y[4]) + (y[5] - y[5])) + ((y[6] - y[6]) + (y[7] - y[7]))
	}
	for ; i < len(v); i++ {
		unfit += v[i] - v[i]
	}
	return unfit == 0
}

// resize gives a slice of length n, the old one where it is large enough.
func resize[T any](s []T, n int) []T {
	if cap(s) < n {
		return make([]T, n)
	}
	return s[:n]
}
