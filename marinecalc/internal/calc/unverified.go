package calc

import (
	"math"
	"slices"

	"example.org/driveline/marinecalc/internal/binding"
	"example.org/driveline/marinecalc/problem"
)

// traceUnverified finds, for every result, the unverified figures that it
// rests on: each such figure is moved by a hundredth, and what moves with it
// by more than a ten-thousandth rests on it.
// The problem, when there is one, is a fault of the calculation itself.
func (r *run) traceUnverified() problem.List {
	r.reserveUnverified()
	moved := false
	for i, p := range r.in.form.Input.Properties {
		if k := &r.in.values[i]; !k.known || k.confirmed {
			continue
		}
		to, ok := r.in.form.Inputs.Field(r.in.call.Input, p)
		if !ok || binding.Number(to) == nil {
			continue
		}
		n := binding.Number(to)
		was := *n
		if *n *= 1.01; was == 0 {
			*n = 1e-3
		}
		failed := r.in.call.Run() != nil
		moved = true
		for j := range r.measures {
			m := &r.measures[j]
			if m.number != nil && (failed || math.Abs(*m.number-m.si) > 1e-4*math.Abs(m.si)) {
				m.unverified = append(m.unverified, p)
			}
		}
		*n = was
	}
	if moved && r.in.call.Run() != nil { // it ran on these very numbers before
		return problem.List{{What: r.in.form.Title + " gives another answer the second time: this is a fault of the calculation itself", Hint: "please report it with the input"}}
	}
	return nil
}

// reserveUnverified gives every result a place for all figures it may rest on.
func (r *run) reserveUnverified() {
	unsure := 0
	for i := range r.in.values {
		if r.in.values[i].known && !r.in.values[i].confirmed {
			unsure++
		}
	}
	list := slices.Grow(r.buf.unverified[:0], unsure*len(r.measures))[:unsure*len(r.measures)]
	r.buf.unverified = list
	for j := range r.measures {
		r.measures[j].unverified = list[j*unsure : j*unsure : (j+1)*unsure]
	}
}
