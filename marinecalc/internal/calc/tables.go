package calc

import (
	"example.org/driveline/marinecalc/internal/calc/results"
	"example.org/driveline/marinecalc/sheet"
)

// tableLines writes the lists of results.
func (r *writing) tableLines() []sheet.Table {
	var lines []sheet.Table
	for _, t := range r.Tables {
		if len(t.Rows) == 0 {
			continue
		}
		line := sheet.Table{Name: t.Property.Name, Title: t.Property.Title, Help: t.Property.Description, Level: t.Property.Level}
		for _, m := range t.Rows[0] {
			column := sheet.Column{Name: m.Property.Name, Title: m.Property.Title, Help: m.Property.Description, Level: m.Property.Level}
			if m.Property.Kind != nil {
				column.Kind = sheet.Kind(m.Property.Kind.Name)
			}
			line.Columns = append(line.Columns, column)
		}
		for _, cells := range t.Rows {
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

func (r *writing) cell(m *results.Measure) sheet.Cell {
	c := sheet.Cell{Text: m.Text, Word: codeOf(m)}
	if m.Text == "" || m.Word != "" {
		return c
	}
	c.SI = r.Keep(m.Si)
	if m.Span != nil && m.Span.StdDev > 0 {
		c.Spread = r.spreadOf(m)
	}
	return c
}

// tableWork says how the lists of results were found.
func (r *writing) tableWork(lines []sheet.Work) []sheet.Work {
	for _, t := range r.Tables {
		if p := t.Property; len(t.Rows) > 0 {
			lines = append(lines, sheet.Work{Way: r.In.Form.Results.Places[p.Index].Way, Answer: "in the table"})
		}
	}
	return lines
}
