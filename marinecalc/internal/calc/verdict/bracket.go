package verdict

import (
	"math"
	"slices"
	"sort"

	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/internal/spread"
	"example.org/driveline/marinecalc/sheet"
)

// An unverified figure does not silence a verdict: the limit is held over the
// whole bracket in which the figure lies. A word that stands at the worst of
// it stands; where none does, the sheet says at which value it turns.

// The trials at one end of a bracket, and at one step of the search for where
// a verdict turns.
const (
	bracketTrials = 1024
	turnTrials    = 128
)

// Fewer trials do where they leave no doubt: with the mean of the margin so many
// standard deviations off nothing, at most one in 50 lies on the other side of
// it however they are spread (Cantelli's inequality: 1/(1+k²)), and the word is
// the same. Of 256 trials the farthest says more than the deviation.
const (
	clearTrials = 128
	plainTrials = 256
	farOff      = 7
)

// likelyOpen tells whether so many of fewer trials lie on either side that all of
// them leave it open: of 128 one in ten, where one in forty is what words ask, is
// off by chance less than once in 10 000 times.
func likelyOpen(met float64) bool { return 0.1 < met && met < 0.9 }

// sureSide tells whether as few trials as were run leave no doubt of a margin.
func sureSide(estimate float64, trials, failed int, margin *spread.Range) bool {
	switch {
	case failed > 0 || !margin.Usable:
		return false
	case trials < plainTrials:
		return math.Abs(margin.Mean) > farOff*margin.StdDev
	}
	return spread.AmplyMet(estimate, margin, spread.AtLeast(0)) || spread.AmplyMet(estimate, margin, spread.AtMost(0))
}

// brackets are the unverified figures behind a verdict; all is false where one
// of them has no bracket, or no place in the arithmetic.
func (r *Judgement) brackets(behind []*contract.Property) (list []figure, all bool) {
	list = r.room.figures[:0]
	defer func() { r.room.figures = list }()
	for _, p := range behind {
		k := &r.In.Values[p.Index]
		f := figure{input: p, to: r.Field(p), estimate: k.Si, handed: k.Bracket}
		f.low, f.high = k.Ends()
		if f.to == nil || k.Bracket == nil && k.Factor.Shape == spread.Exact || !(f.low < f.high) {
			return list, false
		}
		list = append(list, f)
	}
	return list, true
}

// overBracket judges a limit over the brackets of the figures behind it. The
// word is CannotTell where it is not the same over all of them; turn then says
// where it turns, if that can be found.
func (r *Judgement) overBracket(h *held, limit spread.Limit, figures []figure) (j spread.Judgement, turn *sheet.Turn) {
	defer func() {
		for i := range figures {
			*figures[i].to = figures[i].estimate
		}
		r.Again()
	}()
	silent := false // somewhere in the brackets nothing is known of the value
	margin := func() float64 {
		if r.In.Call.Run() != nil {
			return math.Inf(-1)
		}
		if m := h.move(limit); !math.IsNaN(m) {
			return m
		}
		silent = true
		return math.Inf(-1)
	}
	between := margin() // all of them as estimated
	for i := range figures {
		f := &figures[i]
		*f.to = f.low
		low := margin()
		*f.to = f.high
		high := margin()
		*f.to = f.estimate
		if f.worst, f.best = f.low, f.high; high < low {
			f.worst, f.best = f.high, f.low
		}
		if between > max(low, high) { // what goes either way of nothing leaves most in between
			f.best = f.estimate
		}
		if between < min(low, high) {
			f.worst = f.estimate
		}
		f.swing = max(low, high, between) - min(low, high, between)
		if math.IsNaN(f.swing) { // both refused
			f.swing = 0
		}
	}
	sort.SliceStable(figures, func(i, j int) bool { return figures[i].swing > figures[j].swing })
	at := func(end func(f *figure) float64) float64 {
		for i := range figures {
			*figures[i].to = end(&figures[i])
		}
		return margin()
	}
	if at(func(f *figure) float64 { return f.worst }) >= 0 {
		near := limit
		if h.bound != nil {
			near = boundAt(limit, *h.bound)
		}
		value := *h.value
		if j, _ = r.judgeHere(h, limit, figures, bracketTrials); j.Word == sheet.Within {
			j.Word = spread.Judge(value, nil, near).Word // close or not, at the worst
			return j, nil
		}
	}
	if at(func(f *figure) float64 { return f.best }) < 0 && !silent {
		if j, _ = r.judgeHere(h, limit, figures, bracketTrials); j.Word == sheet.Beyond {
			return j, nil
		}
	}
	return untold, r.turn(h, limit, figures)
}

// judgeHere judges with the figures as they stand, and nature varying round
// them; ends are those of the 95 % interval of what is left of the
// limit. Where fewer trials are likely to leave it open it is, and without ends.
func (r *Judgement) judgeHere(h *held, limit spread.Limit, figures []figure, trials int) (j spread.Judgement, ends [2]float64) {
	ends = [2]float64{math.NaN(), math.NaN()}
	if r.In.Call.Run() != nil {
		return untold, ends
	}
	estimate := h.move(limit)
	if math.IsNaN(estimate) {
		return untold, ends
	}
	factors, places := r.nature(figures)
	if r.In.Request.Trials == 0 || len(factors) == 0 {
		return spread.Judge(estimate, nil, spread.AtLeast(0)), [2]float64{estimate, estimate}
	}
	if trials = min(trials, r.In.Request.Trials); trials <= turnTrials {
		space := spread.Borrow()
		defer space.Return()
		out, err := r.tryHere(space, factors, places, trials, []*held{h}, []spread.Limit{limit})
		if err != nil {
			return untold, ends
		}
		left := &out.Results[0]
		return spread.Judge(estimate, left, spread.AtLeast(0)), [2]float64{left.Low, left.High}
	}
	split := false // some of the fewest trials lie on either side, so that they are not amply on one
	for _, n := range [...]int{clearTrials, plainTrials, bracketTrials} {
		if split && n == plainTrials {
			continue
		}
		n = min(n, trials)
		left, failed, err := r.cornered(h, limit, figures, n)
		if err != nil {
			return untold, ends
		}
		if n == trials || sureSide(estimate, n, failed, left) {
			return spread.Judge(estimate, left, spread.AtLeast(0)), [2]float64{left.Low, left.High}
		}
		met := left.ProbabilityAbove(0)
		if likelyOpen(met) {
			break
		}
		split = 0 < met && met < 1
	}
	return untold, ends
}

// nature is what trials vary beside the figures, and where; of earlier results
// what nature leaves round the value at which they stand.
func (r *Judgement) nature(figures []figure) ([]spread.Factor, []*float64) {
	b := r.room
	b.factors, b.places = b.factors[:0], b.places[:0]
	for _, v := range r.In.Variates {
		if !slices.Contains(r.absent, v.To) && !slices.ContainsFunc(figures, func(f figure) bool { return f.to == v.To }) {
			b.factors, b.places = append(b.factors, v.Factor), append(b.places, v.To)
		}
	}
	for i := range figures {
		if f := &figures[i]; f.handed != nil && max(f.handed.AtLow, f.handed.AtHigh) > 0 {
			b.factors, b.places = append(b.factors, f.handed.Around(*f.to)), append(b.places, f.to)
		}
	}
	return b.factors, b.places
}

// turn looks for the value of the figure that matters most at which the word
// turns: the farthest at which the limit is surely met whatever the others are,
// or else the first at which it surely is not.
func (r *Judgement) turn(h *held, limit spread.Limit, figures []figure) *sheet.Turn {
	lead := &figures[0]
	for _, side := range []sheet.Word{sheet.Within, sheet.Beyond} {
		from, to := lead.best, lead.worst
		for i := range figures {
			*figures[i].to = figures[i].worst
		}
		if side == sheet.Beyond {
			from, to = to, from
			for i := range figures {
				*figures[i].to = figures[i].best
			}
		}
		told := func(v float64) (bool, float64) {
			*lead.to = v
			j, ends := r.judgeHere(h, limit, figures, turnTrials)
			if side == sheet.Beyond {
				return j.Word == side, -ends[1]
			}
			return j.Word == side, ends[0]
		}
		s := search{out: point{at: to}}
		if r.In.Request.Trials > 0 {
			s.left = func(v float64) float64 {
				*lead.to = v
				if r.In.Call.Run() != nil {
					return math.NaN()
				}
				left := h.move(limit)
				if side == sheet.Beyond {
					left = -left
				}
				return left
			}
		}
		found := false
		for _, far := range []float64{0, 0.5, 1, 2, 4} { // the bracket itself first, then past its end
			at := r.possible(lead, from+far*(from-to))
			if far > 0 && at == s.in.at {
				break
			}
			s.in.at = at
			if found, s.in.spare = told(s.in.at); found {
				break
			}
		}
		if !found {
			continue
		}
		in := s.edge(told)
		p := lead.input
		turn := &sheet.Turn{Figure: p.Path, Title: p.Title, Word: side, SI: in, Side: sheet.AtMost,
			Text: r.In.ShowTo(p, in, math.Abs(in)/9), Usual: r.In.ShowBracket(p, lead.low, lead.high), Past: in < lead.low || in > lead.high}
		if from > to {
			turn.Side = sheet.AtLeast
		}
		for _, end := range [...]float64{lead.low, lead.high} { // a value beside an end of the bracket is told by that end
			if in != end && math.Abs(in-end) < atEnd*math.Abs(end) {
				turn.Text = r.In.ShowTo(p, end, math.Abs(end)/9)
				turn.Strict = (in > end) == (turn.Side == sheet.AtLeast)
			}
		}
		return turn
	}
	return nil
}

// atEnd is by what share a figure may differ from an end of its bracket, which nobody
// knows as well, and still be told as that end.
const atEnd = 0.01

// possible keeps a figure that is looked for outside its bracket to what its
// schema allows, and off nothing.
func (r *Judgement) possible(f *figure, v float64) float64 {
	if f.low > 0 {
		v = max(v, f.low/10)
	}
	if p := f.input; p.Minimum != nil {
		v = max(v, *p.Minimum)
	}
	if p := f.input; p.Maximum != nil {
		v = min(v, *p.Maximum)
	}
	return v
}

// boundAt is the limit with another bound.
func boundAt(l spread.Limit, bound float64) spread.Limit {
	if math.IsNaN(l.Min) {
		l.Max = bound
	} else {
		l.Min = bound
	}
	return l
}
