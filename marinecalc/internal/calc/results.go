package calc

import (
	"fmt"
	"math"
	"reflect"
	"strconv"

	"example.org/driveline/marinecalc/internal/binding"
	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/internal/spread"
	"example.org/driveline/marinecalc/problem"
)

// measure is one result of a run.
type measure struct {
	property   *contract.Property
	number     *float64 // nil for words
	si         float64
	word       string
	text       string
	span       *spread.Range // nil when it has no range
	low        float64       // of its 95 % interval, extended to the estimate where that lies outside
	high       float64
	unverified []*contract.Property // figures of the least sure kind that it rests on
}

// results reads the typed output. A number that is not a number was not asked
// for, and what never comes is no figure; an infinite one is a fault.
func (r *run) results() problem.List {
	var problems problem.List
	r.measures = r.in.buf.measures
	for _, p := range r.in.form.Result.Properties {
		from, ok := r.in.form.Results.Field(r.in.call.output, p)
		if !ok {
			continue
		}
		if p.Items != nil {
			r.readTable(p, from, &problems)
			continue
		}
		if m := r.measured(p, from, &problems); m.text != "" {
			r.measures = append(r.measures, m)
		}
	}
	r.in.buf.measures = r.measures
	r.index()
	return problems
}

// index notes which result of the run is which property's.
func (r *run) index() {
	r.in.buf.results = append(r.in.buf.results[:0], make([]*measure, len(r.in.form.Result.Properties))...)
	for i := range r.measures {
		r.in.buf.results[r.measures[i].property.Index] = &r.measures[i]
	}
}

// measured reads one field of the typed output; its text stays empty where
// it was not asked for.
func (r *run) measured(p *contract.Property, from reflect.Value, problems *problem.List) measure {
	m := measure{property: p}
	if n := binding.Number(from); n != nil {
		m.number, m.si = n, *n
		if math.IsInf(m.si, 0) {
			problems.Add("", p.Title+" grows without bound", "", "look for a zero or a slip of the unit among the inputs")
		}
		if !math.IsNaN(m.si) && !neverComes(p, m.si) {
			m.text = r.in.show(p, m.si)
		}
	} else if from.CanInt() {
		m.si = float64(from.Int())
		m.text = strconv.Itoa(int(from.Int()))
	} else {
		m.word = fmt.Sprint(from.Interface())
		m.text = p.Words(m.word)
	}
	return m
}

// neverComes tells whether a result stands for what does not come.
func neverComes(p *contract.Property, si float64) bool {
	return p.InfiniteFrom != nil && si >= *p.InfiniteFrom
}
