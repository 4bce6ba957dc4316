package verdict

import (
	"math"
	"slices"

	"example.org/driveline/marinecalc/internal/calc/inputs"
	"example.org/driveline/marinecalc/internal/calc/results"
	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/internal/spread"
)

// handTrials are run at each end of the bracket of a result that is handed on.
const handTrials = 256

// handed is a result that is handed on: where in the brackets of the figures
// behind it it is least and most, and what it is there.
type handed struct {
	of       *results.Measure
	ends     [2][]float64 // the figures where it is least, and where it is most
	at, half [2]float64   // at the ends of the first of the list: the result, and half of the 95 % interval that nature leaves; NaN where that cannot be said
}

// Brackets gives where a result lies over the whole brackets of the unverified
// figures behind it, and what nature leaves at either end. The next sheet holds
// its own limits over that, so that it tells no more than this one. It has none
// where the result has none, and beside it those of other results that are
// handed on and have the same ends, since one run of trials tells of all.
func (r *Judgement) Brackets(result string) map[string]*inputs.Bracket {
	first := r.Result(result)
	if first == nil || first.Number == nil || len(first.Unverified) == 0 {
		return nil
	}
	figures, all := r.brackets(first.Unverified)
	if !all {
		return nil
	}
	defer func() {
		for i := range figures {
			*figures[i].to = figures[i].estimate
		}
		r.Again()
	}()
	list := r.alike(first, figures)
	if len(list) == 0 {
		return nil
	}
	ends := list[0].ends
	for n := range ends {
		for i := range figures {
			*figures[i].to = ends[n][i]
		}
		r.here(list, figures, n)
	}
	out := map[string]*inputs.Bracket{}
	for i := range list {
		h, low, high := &list[i], 0, 1
		if !slices.Equal(h.ends[0], ends[0]) { // it is most where the first is least
			low, high = 1, 0
		}
		if !math.IsNaN(h.half[low] + h.half[high]) {
			out[h.of.Property.Name] = &inputs.Bracket{Low: min(h.at[low], h.of.Si), High: max(h.at[high], h.of.Si), AtLow: h.half[low], AtHigh: h.half[high]}
		}
	}
	return out
}

// alike lists a result, and the others handed on that rest on the same figures
// and have the same ends; none where those of the result cannot be found.
func (r *Judgement) alike(first *results.Measure, figures []figure) []handed {
	list := []handed{{of: first}}
	for i := range r.Measures {
		if m := &r.Measures[i]; m != first && m.Number != nil && slices.Equal(m.Unverified, first.Unverified) && contract.HandedOn(m.Property.Path) {
			list = append(list, handed{of: m})
		}
	}
	for i := range figures {
		f := &figures[i]
		for n := range list {
			h := &list[n]
			h.ends[0], h.ends[1] = append(h.ends[0], f.estimate), append(h.ends[1], f.estimate)
			h.at = [2]float64{h.of.Si, h.of.Si}
		}
		for _, end := range [...]float64{f.low, f.high} {
			*f.to = end
			failed := r.In.Call.Run() != nil
			for n := range list {
				switch h, v := &list[n], *list[n].of.Number; {
				case failed || math.IsNaN(v):
					h.of = nil
				case v < h.at[0]:
					h.ends[0][i], h.at[0] = end, v
				case v > h.at[1]:
					h.ends[1][i], h.at[1] = end, v
				}
			}
			if list = slices.DeleteFunc(list, func(h handed) bool { return h.of == nil }); len(list) == 0 || list[0].of != first {
				return nil
			}
		}
		*f.to = f.estimate
	}
	ends := list[0].ends
	return slices.DeleteFunc(list, func(h handed) bool {
		same := slices.Equal(h.ends[0], ends[0]) && slices.Equal(h.ends[1], ends[1])
		return !same && !(slices.Equal(h.ends[0], ends[1]) && slices.Equal(h.ends[1], ends[0]))
	})
}

// here is what results are with the figures as they stand, at end n.
func (r *Judgement) here(list []handed, figures []figure, n int) {
	for i := range list {
		list[i].half[n] = math.NaN()
	}
	if r.In.Call.Run() != nil {
		return
	}
	factors, places := r.nature(figures)
	untried := r.In.Request.Trials == 0 || len(factors) == 0
	of, names := make([]*float64, len(list)), make([]string, len(list))
	for i := range list {
		of[i], names[i] = list[i].of.Number, list[i].of.Property.Name
		if list[i].at[n] = *of[i]; untried && !math.IsNaN(*of[i]) {
			list[i].half[n] = 0
		}
	}
	if untried {
		return
	}
	defer func() {
		for i, to := range places {
			*to = factors[i].Estimate
		}
	}()
	space := spread.Borrow()
	defer space.Return()
	run := r.In.Request.UntilCancelled(r.In.Call.For(names))
	out, err := space.Run(factors, spread.Plan{Trials: min(r.In.Request.Trials, handTrials), Seed: r.In.Request.Seed, Stopped: r.In.Request.Stopped, Shares: spread.NoShares},
		spread.Model{Factors: places, Results: of, Run: func() bool { return run() == nil }})
	if err != nil {
		return
	}
	for i := range list {
		if span := &out.Results[i]; span.Usable && !math.IsNaN(list[i].at[n]) {
			list[i].half[n] = (span.High - span.Low) / 2
		}
	}
}
