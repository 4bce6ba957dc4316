package calc

import "example.org/driveline/marinecalc/sheet"

// tableLines writes the lists of results.
func (r *writing) tableLines() []sheet.Table {
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

func (r *writing) cell(m *measure) sheet.Cell {
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
func (r *writing) tableWork(lines []sheet.Work) []sheet.Work {
	for _, t := range r.tables {
		if p := t.property; len(t.rows) > 0 {
			lines = append(lines, sheet.Work{Way: r.in.form.Results.Places[p.Index].Way, Answer: "in the table"})
		}
	}
	return lines
}
