package results

import (
	"math"
	"slices"

	"example.org/driveline/marinecalc/internal/binding"
	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/problem"
)

// TraceUnverified finds, for every result, the unverified figures that it
// rests on: each such figure is moved by a hundredth and to the ends of its bracket,
// and what moves with it by more than a hundredth of that rests on it. The ends find what
// the estimate hides: where the least of several counts, and another is the least there.
// The problem, when there is one, is a fault of the calculation itself.
func (r *Run) TraceUnverified() problem.List {
	r.reserveUnverified()
	moved := false
	for i, p := range r.In.Form.Input.Properties {
		k := &r.In.Values[i]
		if !k.Known || k.Confirmed {
			continue
		}
		to, ok := r.In.Form.Inputs.Field(r.In.Call.Input, p)
		if !ok || binding.Number(to) == nil {
			continue
		}
		n := binding.Number(to)
		was := *n
		near := was * 1.01
		if was == 0 {
			near = 1e-3
		}
		whole := 1.0 // of a figure of 0
		if was != 0 {
			whole = math.Abs(was)
		}
		moved = true
		for j, v := range [...]float64{near, k.Factor.Low, k.Factor.High} {
			end := j > 0
			if end && (v == was || !(k.Factor.High > k.Factor.Low)) {
				continue
			}
			*n = v
			if failed := r.In.Call.Run() != nil; !failed || !end { // an end that cannot be tells nothing
				r.restOn(p, failed, max(1e-4, 0.01*math.Abs(v-was)/whole))
			}
		}
		*n = was
	}
	if moved && r.In.Call.Run() != nil { // it ran on these very numbers before
		return problem.List{{What: r.In.Form.Title + " gives another answer the second time: this is a fault of the calculation itself", Hint: "please report it with the input"}}
	}
	return nil
}

// restOn notes an unverified figure with every result that moved with it by more than a
// share or is not known with it, or with all where the calculation failed.
func (r *Run) restOn(p *contract.Property, failed bool, share float64) {
	for j := range r.Measures {
		m := &r.Measures[j]
		if m.Number == nil || len(m.Unverified) > 0 && m.Unverified[len(m.Unverified)-1] == p {
			continue
		}
		if failed || math.Abs(*m.Number-m.Si) > share*math.Abs(m.Si) || math.IsNaN(*m.Number) != math.IsNaN(m.Si) {
			m.Unverified = append(m.Unverified, p)
		}
	}
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
