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
	"example.org/driveline/marinecalc/sheet"
)

// run is one use of a calculation: its inputs, and what came out.
type run struct {
	in       *inputs
	buf      *ResultBuffer
	measures []measure
	tables   []table
	trials   int  // 0 where none were run
	untried  bool // trials were asked for, and too few of them could be used
	notes    []string
	widened  []string  // the results whose range was carried on to the estimate
	figures  []float64 // those that the sheet's lines point to
	judged   int       // how many limits there are
}

// ResultBuffer is the memory for the results of a run.
type ResultBuffer struct {
	measures   []measure
	byProperty []*measure           // by the property's index
	unverified []*contract.Property // of the results, one after the other
}

// Empty makes the memory ready for the next run.
func (b *ResultBuffer) Empty() { b.measures, b.byProperty = b.measures[:0], b.byProperty[:0] }

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
	unverified []*contract.Property // unverified figures that it rests on
}

// half is half the width of its range, as far as that ends.
func (m *measure) half() float64 {
	if openFrom(m.property, m.high) {
		return m.si - m.low
	}
	return (m.high - m.low) / 2
}

// results reads the typed output. A number that is not a number was not asked
// for, and what does not occur is no figure; an infinite one is a fault.
func (r *run) results() problem.List {
	var problems problem.List
	r.measures = r.buf.measures
	for _, p := range r.in.form.Result.Properties {
		from, ok := r.in.form.Results.Field(r.in.call.Output, p)
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
	r.buf.measures = r.measures
	r.index()
	return problems
}

// index notes which result of the run is which property's.
func (r *run) index() {
	r.buf.byProperty = append(r.buf.byProperty[:0], make([]*measure, len(r.in.form.Result.Properties))...)
	for i := range r.measures {
		r.buf.byProperty[r.measures[i].property.Index] = &r.measures[i]
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
		switch {
		case math.IsNaN(m.si), neverComes(p, m.si):
		case openFrom(p, m.si):
			m.text = r.in.show(p, *p.FollowedTo) + " or more"
		default:
			m.text = r.in.showBare(p, m.si)
		}
	} else if from.CanInt() {
		m.si = float64(from.Int())
		m.text = strconv.Itoa(int(from.Int()))
	} else {
		m.word = wordOf(from)
		m.text = p.Words(m.word)
	}
	return m
}

// wordOf is the code that a field of the typed output holds.
func wordOf(from reflect.Value) string {
	if from.Kind() == reflect.String {
		return from.String()
	}
	return fmt.Sprint(from.Interface())
}

// Table is a result that is a list.
type Table = sheet.Table

// table is a result that is a list: a fixed-size array of structs in Go, so
// that trials find each number in its place. An entry whose first property,
// its name, is empty is not there.
type table struct {
	property *contract.Property
	rows     [][]measure // one for each column; a number that is NaN was not asked for
}

// readTable reads one list of the typed output.
func (r *run) readTable(p *contract.Property, list reflect.Value, problems *problem.List) {
	t := table{property: p}
	shape := r.in.form.Results.Places[p.Index].Entry
	for n := range list.Len() {
		var row []measure
		for _, column := range p.Items.Properties {
			from, ok := shape.Field(list.Index(n), column)
			if !ok {
				continue // a test holds that every column has its field
			}
			row = append(row, r.measured(column, from, problems))
		}
		if len(row) > 0 && row[0].word != "" {
			t.rows = append(t.rows, row)
		}
	}
	r.tables = append(r.tables, t)
}

// keep gives a number a place that stays.
func (r *run) keep(v float64) *float64 {
	if len(r.figures) == cap(r.figures) {
		numbers := len(r.measures)
		for _, t := range r.tables {
			for _, row := range t.rows {
				numbers += len(row)
			}
		}
		if r.trials > 0 {
			numbers *= 3 // with both ends of a range
		}
		r.figures = make([]float64, 0, len(r.in.values)+numbers+3*r.judged)
	}
	r.figures = append(r.figures, v)
	return &r.figures[len(r.figures)-1]
}

// result is what came out under that name, or nil.
func (r *run) result(name string) *measure {
	_, p := r.in.form.Named(name)
	return r.of(p)
}

// of is what came out for a property, or nil.
func (r *run) of(result *contract.Property) *measure {
	if result == nil {
		return nil
	}
	return r.buf.byProperty[result.Index]
}

// lookupAny gives the number or word of a known input or result.
func (r *run) lookupAny(name string) (si float64, word string, ok bool) {
	input, result := r.in.form.Named(name)
	if m := r.of(result); m != nil {
		return m.si, m.word, true
	}
	if input != nil {
		if k := &r.in.values[input.Index]; k.known {
			return k.si, k.word, true
		}
	}
	return 0, "", false
}

// property is the input or result of that name.
func (r *run) property(name string) *contract.Property {
	input, result := r.in.form.Named(name)
	if result != nil {
		return result
	}
	return input
}

// place is where trials leave the input or result of that name, or nil.
func (r *run) place(name string) *float64 {
	input, result := r.in.form.Named(name)
	if m := r.of(result); m != nil {
		return m.number
	}
	if input != nil && r.in.values[input.Index].known {
		return r.field(input)
	}
	return nil
}

// field is where the typed struct has an input that is a number, or nil. One
// that limits alone go by has its place in what is known of it.
func (r *run) field(p *contract.Property) *float64 {
	if p.JudgedOnly && p.Kind != nil {
		return &r.in.values[p.Index].si
	}
	if to, ok := r.in.form.Inputs.Field(r.in.call.Input, p); ok {
		return binding.Number(to)
	}
	return nil
}

// again runs on the estimates, so that every place holds what the sheet says.
func (r *run) again() { _ = r.in.call.Run() } // it ran on these very numbers before
