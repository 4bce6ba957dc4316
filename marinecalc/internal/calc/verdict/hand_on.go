package verdict

import (
	"math"

	"example.org/driveline/marinecalc/internal/calc/inputs"
	"example.org/driveline/marinecalc/internal/spread"
)

// handTrials are run at each end of the bracket of a result that is handed on.
const handTrials = 256

// Bracket is where a result lies over the whole brackets of the unverified
// figures behind it, and what nature leaves at either end. The next sheet holds
// its own limits over that, so that it tells no more than this one. It is nil
// where the result has none.
func (r *Judgement) Bracket(result string) *inputs.Bracket {
	m := r.Result(result)
	if m == nil || m.Number == nil || len(m.Unverified) == 0 {
		return nil
	}
	figures, all := r.brackets(m.Unverified)
	if !all {
		return nil
	}
	defer func() {
		for i := range figures {
			*figures[i].to = figures[i].estimate
		}
		r.Again()
	}()
	at := func(f *figure, v float64) float64 {
		*f.to = v
		if r.In.Call.Run() != nil {
			return math.NaN()
		}
		return *m.Number
	}
	for i := range figures { // worst is where it is least, best where it is most
		f := &figures[i]
		f.worst, f.best = f.estimate, f.estimate
		least, most := m.Si, m.Si
		for _, end := range [...]float64{f.low, f.high} {
			switch v := at(f, end); {
			case math.IsNaN(v):
				return nil
			case v < least:
				f.worst, least = end, v
			case v > most:
				f.best, most = end, v
			}
		}
		*f.to = f.estimate
	}
	here := func(end func(*figure) float64) (v, half float64, ok bool) {
		for i := range figures {
			*figures[i].to = end(&figures[i])
		}
		return r.here(m.Number, figures)
	}
	low, atLow, okLow := here(func(f *figure) float64 { return f.worst })
	high, atHigh, okHigh := here(func(f *figure) float64 { return f.best })
	if !okLow || !okHigh {
		return nil
	}
	return &inputs.Bracket{Low: min(low, m.Si), High: max(high, m.Si), AtLow: atLow, AtHigh: atHigh}
}

// here is a result with the figures as they stand, and half of the 95 % interval
// that nature leaves round it.
func (r *Judgement) here(of *float64, figures []figure) (v, half float64, ok bool) {
	if r.In.Call.Run() != nil || math.IsNaN(*of) {
		return 0, 0, false
	}
	v = *of
	factors, places := r.nature(figures)
	if r.In.Request.Trials == 0 || len(factors) == 0 {
		return v, 0, true
	}
	defer func() {
		for i, to := range places {
			*to = factors[i].Estimate
		}
	}()
	space := spread.Borrow()
	defer space.Return()
	run := r.In.Request.UntilCancelled(r.In.Call.Run)
	out, err := space.Run(factors, spread.Plan{Trials: min(r.In.Request.Trials, handTrials), Seed: r.In.Request.Seed},
		spread.Model{Factors: places, Results: []*float64{of}, Run: func() bool { return run() == nil }})
	if err != nil || !out.Results[0].Usable {
		return 0, 0, false
	}
	return v, (out.Results[0].High - out.Results[0].Low) / 2, true
}
