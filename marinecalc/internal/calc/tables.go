package calc

import (
	"reflect"

	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/sheet"
)

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
				column.Kind = m.property.Kind.Name
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
