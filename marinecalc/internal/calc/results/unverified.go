package results

import (
	"math"
	"slices"

	"example.org/driveline/marinecalc/internal/binding"
	"example.org/driveline/marinecalc/problem"
)

// TraceUnverified finds, for every result, the unverified figures that it
// rests on: each such figure is moved by a hundredth, and what moves with it
// by more than a ten-thousandth rests on it.
// The problem, when there is one, is a fault of the calculation itself.
func (r *Run) TraceUnverified() problem.List {
	r.reserveUnverified()
	moved := false
	for i, p := range r.In.Form.Input.Properties {
		if k := &r.In.Values[i]; !k.Known || k.Confirmed {
			continue
		}
		to, ok := r.In.Form.Inputs.Field(r.In.Call.Input, p)
		if !ok || binding.Number(to) == nil {
			continue
		}
		n := binding.Number(to)
		was := *n
		if *n *= 1.01; was == 0 {
			*n = 1e-3
		}
		failed := r.In.Call.Run() != nil
		moved = true
		for j := range r.Measures {
			m := &r.Measures[j]
			if m.Number != nil && (failed || math.Abs(*m.Number-m.Si) > 1e-4*math.Abs(m.Si)) {
				m.Unverified = append(m.Unverified, p)
			}
		}
		*n = was
	}
	if moved && r.In.Call.Run() != nil { // it ran on these very numbers before
		return problem.List{{What: r.In.Form.Title + " gives another answer the second time: this is a fault of the calculation itself", Hint: "please report it with the input"}}
	}
	return nil
}

// reserveUnverified gives every result a place for all figures it may rest on.
func (r *Run) reserveUnverified() {
	unsure := 0
	for i := range r.In.Values {
		if r.In.Values[i].Known && !r.In.Values[i].Confirmed {
			unsure++
		}
	}
	list := slices.Grow(r.Buf.unverified[:0], unsure*len(r.Measures))[:unsure*len(r.Measures)]
	r.Buf.unverified = list
	for j := range r.Measures {
		r.Measures[j].Unverified = list[j*unsure : j*unsure : (j+1)*unsure]
	}
}
