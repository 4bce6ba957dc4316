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

// neverComes tells whether a result stands for what does not come.
func neverComes(p *contract.Property, si float64) bool {
	return p.InfiniteFrom != nil && si >= *p.InfiniteFrom
}

// openFrom tells whether a result is not followed that far, or stands for what
// does not come: a range that reaches there has no end.
func openFrom(p *contract.Property, si float64) bool {
	return p.FollowedTo != nil && si >= *p.FollowedTo || neverComes(p, si)
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

// tableLines writes the lists of results.
func (r *run) tableLines() []sheet.Table {
	var lines []sheet.Table
	for _, t := range r.tables {
		if len(t.rows) == 0 {
			continue
		}
		line := sheet.Table{Name: t.property.Name, Title: t.property.Title, Help: t.property.Description, Level: t.property.Level}
		for _, m := range t.rows[0] {
			column := sheet.Column{Name: m.property.Name, Title: m.property.Title, Help: m.property.Description, Level: m.property.Level}
			if m.property.Kind != nil {
				column.Kind = sheet.Kind(m.property.Kind.Name)
			}
			line.Columns = append(line.Columns, column)
		}
		for _, cells := range t.rows {
			row := sheet.Row{Cells: make([]sheet.Cell, len(cells))}
			for i := range cells {
				row.Cells[i] = r.cell(&cells[i])
			}
			line.Rows = append(line.Rows, row)
		}
		lines = append(lines, line)
	}
	return lines
}

func (r *run) cell(m *measure) sheet.Cell {
	c := sheet.Cell{Text: m.text}
	if m.text == "" || m.word != "" {
		return c
	}
	c.SI = r.keep(m.si)
	if m.span != nil && m.span.StdDev > 0 {
		c.Spread = r.spreadOf(m)
	}
	return c
}

// tableWork says how the lists of results were found.
func (r *run) tableWork(lines []sheet.Work) []sheet.Work {
	for _, t := range r.tables {
		if p := t.property; len(t.rows) > 0 {
			lines = append(lines, sheet.Work{Way: r.in.form.Results.Places[p.Index].Way, Answer: "in the table"})
		}
	}
	return lines
}
