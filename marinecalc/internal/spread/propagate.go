// The trials: draws, runs of the model, and what they give.

package spread

import (
	"errors"
	"fmt"
	"math"
)

// The number of trials: when none is given, and the bounds of what is allowed.
const (
	DefaultTrials = 1024
	MinTrials     = 100
	MaxTrials     = 1 << 20
)

// Plan says how many trials to run, from which seed, and what to find out. The
// zero value means 1024 trials, seed 1 and the shares of every result; a Seed
// of 0 is always taken as 1.
type Plan struct {
	Trials  int // 100 … 1 048 576, or 0 for 1024
	Seed    uint64
	Stopped func() bool // whether the work is to be given up, asked between its steps; nil for never
	Shares  int         // how many results, the first ones, get their Shares; 0 for all of them, NoShares for none
}

var errStopped = errors.New("spread: stopped")

// NoShares spares the shares where only the interval is wanted.
const NoShares = -1

// Outcome is the answer of a propagation.
type Outcome struct {
	Trials  int     // trials run; 1 when no factor varies
	Failed  int     // of these, how many the model refused; see Range for what becomes of them
	Usable  bool    // false when fewer than a tenth are left: the ranges are then not given
	Results []Range // one for each result, in the order of y
}

// Propagate draws values for the factors, runs the model on them again and
// again, and says how the results spread (JCGM 101:2008, clause 7).
//
// The model fills all of y, of length results, from x, the value of each
// factor in order. It must not change x nor keep either slice. A trial fails
// when the model returns false, and for one result when that is not finite.
//
// An error means that a factor, the number of results or the plan is not
// usable; no trial has then been run.
func Propagate(f []Factor, results int, p Plan, model func(x, y []float64) bool) (Outcome, error) {
	return new(Workspace).Propagate(f, results, p, model)
}

// Model is what the trials run, wired to where its numbers lie. A trial
// writes a value to each place in Factors, calls Run and reads the places in
// Results. It fails when Run returns false, and for one result when that is
// not finite.
type Model struct {
	Factors []*float64 // one for each factor, in order
	Results []*float64
	Run     func() bool
}

// Propagate does what the function of the same name does, with the memory of
// the workspace. The Outcome lies there and holds until its next use.
func (w *Workspace) Propagate(f []Factor, results int, p Plan, model func(x, y []float64) bool) (Outcome, error) {
	w.x, w.y = resize(w.x, len(f)), resize(w.y, max(results, 0))
	w.places = resize(w.places, len(w.x)+len(w.y))
	for i := range w.x {
		w.places[i] = &w.x[i]
	}
	for i := range w.y {
		w.places[len(f)+i] = &w.y[i]
	}
	return w.Run(f, p, Model{Factors: w.places[:len(f)], Results: w.places[len(f):], Run: func() bool {
		for i := range w.y {
			w.y[i] = math.NaN() // what the model leaves out shall not pass for a result
		}
		return model(w.x, w.y)
	}})
}

// Run does what Propagate does, for a model that has its numbers at places of
// its own, which spares every trial the copying. What the model holds
// afterwards is its last trial.
func (w *Workspace) Run(f []Factor, p Plan, m Model) (Outcome, error) {
	if p.Trials == 0 {
		p.Trials = DefaultTrials
	}
	if p.Seed == 0 {
		p.Seed = 1
	}
	if p.Trials < MinTrials || p.Trials > MaxTrials {
		return Outcome{}, fmt.Errorf("spread: %d trials; allowed are %d to %d", p.Trials, MinTrials, MaxTrials)
	}
	if len(m.Results) < 1 {
		return Outcome{}, fmt.Errorf("spread: %d results; at least one is needed", len(m.Results))
	}
	if len(m.Factors) != len(f) {
		return Outcome{}, fmt.Errorf("spread: %d factors for a model of %d", len(f), len(m.Factors))
	}
	for i := range f {
		if err := f[i].check(i); err != nil {
			return Outcome{}, err
		}
	}
	if p.Shares < NoShares {
		return Outcome{}, fmt.Errorf("spread: shares of %d results; at least 1, 0 for all, or -1 for none", p.Shares)
	}
	stopped := func() bool { return p.Stopped != nil && p.Stopped() }
	w.draw(f, len(m.Results), &p)
	out := Outcome{Trials: p.Trials, Usable: true, Results: w.ranges}
	if !stopped() {
		w.runTrials(f, p.Trials, &m)
	}
	if stopped() { // before all of them are summed and sorted
		return Outcome{}, errStopped
	}
	whole := w.summarise(p.Trials) // no trial failed, and no square overflows
	if !whole {
		out.Failed = len(w.refused)
		out.Usable = !scarce(p.Trials-out.Failed, p.Trials)
		if out.Usable {
			w.project(f, &m)
		}
	}
	for i := range w.ranges {
		r := &w.ranges[i]
		*r = Range{
			Mean: math.NaN(), StdDev: math.NaN(), Low: math.NaN(), High: math.NaN(),
			Shares: w.shares[i*len(f) : (i+1)*len(f) : (i+1)*len(f)],
		}
		shares := p.Shares == 0 || i < p.Shares
		switch {
		case whole:
			w.describe(r, w.results.column(i, p.Trials), w.summaries[i], shares)
		case out.Usable:
			w.describeKept(r, i, p.Trials, shares)
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
	w.draws.ready(n, len(w.varying))
	w.results.ready(n, results)
	w.groups = resize(w.groups, len(w.varying))
	w.counts = resize(w.counts, len(w.varying))
	w.inArray = 0
	w.scratch = resize(w.scratch, n)
	w.shares = resize(w.shares, results*len(f))
	clear(w.shares)
	w.summaries = resize(w.summaries, results)
	w.ranges = resize(w.ranges, results)
	dealer := dealerFor(p.Seed, n)
	even := evenly(n, dealer.groups)
	for k, i := range w.varying {
		if p.Stopped != nil && p.Stopped() {
			return
		}
		w.counts[k] = even
		deck := dealer.deck(i)
		w.groups[k] = deck.group
		if deck.even {
			w.inArray = k + 1
		}
		deck.place(&f[i], w.draws.column(k, n), dealer.edges)
	}
}

// runTrials runs the model on every trial, and notes those that it refuses.
func (w *Workspace) runTrials(f []Factor, n int, m *Model) {
	for i, to := range m.Factors {
		*to = f[i].Estimate
	}
	w.drawn = w.drawn[:0]
	for _, i := range w.varying {
		w.drawn = append(w.drawn, m.Factors[i])
	}
	w.refused = w.refused[:0]
	for t := range n {
		w.draws.scatter(t, w.drawn)
		if m.Run() {
			w.results.gather(t, m.Results)
		} else {
			w.results.cells[t] = math.NaN()
			w.refused = append(w.refused, t)
		}
	}
}

// summarise summarises the results of the first n trials. It is false when
// any of them, or of their squares, is not finite.
func (w *Workspace) summarise(n int) (all bool) {
	all = true
	for i := range w.summaries {
		s := &w.summaries[i]
		s.mean, s.squares = summarise(w.results.column(i, n))
		all = all && finite(s.mean) && finite(s.squares)
	}
	return all
}

// summary of a result.
type summary struct {
	mean    float64
	squares float64 // sum of the squares about the mean
}

// describe fills r from the results of the trials kept, v.
func (w *Workspace) describe(r *Range, v []float64, s summary, shares bool) {
	mean, squares := s.mean, s.squares
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
		w.share(r, v, squares, w.groups, w.counts)
	}
	r.Low, r.High = symmetricInterval(v, w.scratch, mean, sd)
	r.trials = v
}

// share fills in the shares of r, whose results are v in the order of the
// trials; total is the sum of their squares about the mean.
func (w *Workspace) share(r *Range, v []float64, total float64, group [][]uint8, counts []tally) {
	if len(w.varying) == 1 {
		r.Shares[w.varying[0]] = 1 // there is nothing else it could come from
		return
	}
	list, last := w.analysed[:0], len(w.varying)-1
	for k := 0; k <= last; k += lanes {
		var groups [lanes][]uint8
		for lane := range groups {
			groups[lane] = group[min(k+lane, last)][:len(v)] // the last one again where there are no more
		}
		var s sums
		s.add(groups, v, r.Mean)
		for lane := range min(lanes, last+1-k) {
			list = append(list, analyse(&s[lane], &counts[k+lane], len(v)))
		}
	}
	w.analysed = list
	inArray := list[:w.inArray]
	chance := chances(inArray, len(v), len(w.scratch)-len(v), total)
	for k, i := range w.varying {
		inside := list[k].inside(len(v), total)
		if k < len(inArray) {
			inside = chance(inside)
		}
		r.Shares[i] = list[k].share(len(v), total, inside)
	}
}
