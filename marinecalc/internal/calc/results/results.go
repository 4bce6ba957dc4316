// Package results is what came out of a typed function: results.go reads it,
// unverified.go finds the results that rest on unverified figures, trials.go
// gives every number its range.
package results

import (
	"fmt"
	"math"
	"reflect"
	"strconv"

	"example.org/driveline/marinecalc/internal/binding"
	"example.org/driveline/marinecalc/internal/calc/inputs"
	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/internal/spread"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/sheet"
)

// Run is one use of a calculation: its inputs, and what came out.
type Run struct {
	In       *inputs.Inputs
	Buf      *Buffer
	Measures []Measure
	Tables   []table
	Trials   int  // 0 where none were run
	Untried  bool // trials were asked for, and too few of them could be used
	Notes    []string
	widened  []string  // the results whose range was carried on to the estimate
	figures  []float64 // those that the sheet's lines point to
	Judged   int       // how many limits there are
}

// Buffer is the memory for the results of a run.
type Buffer struct {
	measures   []Measure
	ByProperty []*Measure           // by the property's index
	unverified []*contract.Property // of the results, one after the other
}

// Empty makes the memory ready for the next run.
func (b *Buffer) Empty() { b.measures, b.ByProperty = b.measures[:0], b.ByProperty[:0] }

// Measure is one result of a run.
type Measure struct {
	Property   *contract.Property
	Number     *float64 // nil for words
	Si         float64
	Word       string
	Text       string
	Sequence   []int         // of an order
	Span       *spread.Range // nil when it has no range
	Low        float64       // of its 95 % interval, extended to the estimate where that lies outside
	High       float64
	Unverified []*contract.Property // unverified figures that it rests on
}

// Half is half the width of its range, as far as that ends.
func (m *Measure) Half() float64 {
	if inputs.OpenFrom(m.Property, m.High) {
		return m.Si - m.Low
	}
	return (m.High - m.Low) / 2
}

// Read reads the typed output. A number that is not a number was not asked
// for, and what does not occur is no figure; an infinite one is a fault.
func (r *Run) Read() problem.List {
	var problems problem.List
	r.Measures = r.Buf.measures
	for _, p := range r.In.Form.Result.Properties {
		from, ok := r.In.Form.Results.Field(r.In.Call.Output, p)
		if !ok {
			continue
		}
		if p.Items != nil {
			r.readTable(p, from, &problems)
			continue
		}
		if m := r.measured(p, from, &problems); m.Text != "" {
			r.Measures = append(r.Measures, m)
		}
	}
	r.Buf.measures = r.Measures
	r.index()
	return problems
}

// index notes which result of the run is which property's.
func (r *Run) index() {
	r.Buf.ByProperty = append(r.Buf.ByProperty[:0], make([]*Measure, len(r.In.Form.Result.Properties))...)
	for i := range r.Measures {
		r.Buf.ByProperty[r.Measures[i].Property.Index] = &r.Measures[i]
	}
}

// measured reads one field of the typed output; its text stays empty where
// it was not asked for.
func (r *Run) measured(p *contract.Property, from reflect.Value, problems *problem.List) Measure {
	m := Measure{Property: p}
	if n := binding.Number(from); n != nil {
		m.Number, m.Si = n, *n
		if math.IsInf(m.Si, 0) {
			problems.Add("", p.Title+" grows without bound", "", "look for a zero or a slip of the unit among the inputs")
		}
		switch {
		case math.IsNaN(m.Si), inputs.NeverComes(p, m.Si):
		case inputs.OpenFrom(p, m.Si):
			m.Text = r.In.Show(p, *p.FollowedTo) + " or more"
		default:
			m.Text = r.In.ShowBare(p, m.Si)
		}
	} else if of, ok := orderOf(from); ok {
		m.Word, m.Sequence = of.String(), of.Sequence()
		m.Text = m.Word
	} else if from.CanInt() {
		m.Si = float64(from.Int())
		m.Text = strconv.Itoa(int(from.Int()))
	} else {
		m.Word = wordOf(from)
		m.Text = p.Words(m.Word)
	}
	return m
}

// ordered is an order of things that are numbered, such as bolts.
type ordered interface {
	Sequence() []int
	String() string
}

func orderOf(from reflect.Value) (of ordered, ok bool) {
	if from.CanInt() {
		of, ok = from.Interface().(ordered)
	}
	return of, ok
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
	Property *contract.Property
	Rows     [][]Measure // one for each column; a number that is NaN was not asked for
}

// readTable reads one list of the typed output.
func (r *Run) readTable(p *contract.Property, list reflect.Value, problems *problem.List) {
	t := table{Property: p}
	shape := r.In.Form.Results.Places[p.Index].Entry
	for n := range list.Len() {
		var row []Measure
		for _, column := range p.Items.Properties {
			from, ok := shape.Field(list.Index(n), column)
			if !ok {
				continue // a test holds that every column has its field
			}
			m := r.measured(column, from, problems)
			if row == nil {
				if m.Word == "" {
					break // of lists with room for fifty most entries are not there
				}
				row = make([]Measure, 0, len(p.Items.Properties))
			}
			row = append(row, m)
		}
		if row != nil {
			t.Rows = append(t.Rows, row)
		}
	}
	r.Tables = append(r.Tables, t)
}

// Keep gives a number a place that stays.
func (r *Run) Keep(v float64) *float64 {
	if len(r.figures) == cap(r.figures) {
		numbers := len(r.Measures)
		for _, t := range r.Tables {
			for _, row := range t.Rows {
				numbers += len(row)
			}
		}
		if r.Trials > 0 {
			numbers *= 3 // with both ends of a range
		}
		r.figures = make([]float64, 0, len(r.In.Values)+numbers+3*r.Judged)
	}
	r.figures = append(r.figures, v)
	return &r.figures[len(r.figures)-1]
}

// Result is what came out under that name, or nil.
func (r *Run) Result(name string) *Measure {
	_, p := r.In.Form.Named(name)
	return r.Of(p)
}

// Of is what came out for a property, or nil.
func (r *Run) Of(result *contract.Property) *Measure {
	if result == nil {
		return nil
	}
	return r.Buf.ByProperty[result.Index]
}

// LookupAny gives the number or word of a known input or result.
func (r *Run) LookupAny(name string) (si float64, word string, ok bool) {
	input, result := r.In.Form.Named(name)
	if m := r.Of(result); m != nil {
		return m.Si, m.Word, true
	}
	if input != nil {
		if k := &r.In.Values[input.Index]; k.Known {
			return k.Si, k.Word, true
		}
	}
	return 0, "", false
}

// Property is the input or result of that name.
func (r *Run) Property(name string) *contract.Property {
	input, result := r.In.Form.Named(name)
	if result != nil {
		return result
	}
	return input
}

// Place is where trials leave the input or result of that name, or nil.
func (r *Run) Place(name string) *float64 {
	input, result := r.In.Form.Named(name)
	if m := r.Of(result); m != nil {
		return m.Number
	}
	if input != nil && r.In.Values[input.Index].Known {
		return r.Field(input)
	}
	return nil
}

// Field is where the typed struct has an input that is a number, or nil. One
// that limits alone go by has its place in what is known of it.
func (r *Run) Field(p *contract.Property) *float64 {
	if p.JudgedOnly && p.Kind != nil {
		return &r.In.Values[p.Index].Si
	}
	if to, ok := r.In.Form.Inputs.Field(r.In.Call.Input, p); ok {
		return binding.Number(to)
	}
	return nil
}

// Again runs on the estimates, so that every place holds what the sheet says.
func (r *Run) Again() { _ = r.In.Call.Run() } // it ran on these very numbers before
