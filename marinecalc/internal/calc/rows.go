package calc

import (
	"strings"

	"example.org/driveline/marinecalc/internal/spread"
	"example.org/driveline/marinecalc/rules"
	"example.org/driveline/marinecalc/sheet"
)

// pickRows looks up every picked row, in the order of the schema, and lets
// its values stand in for inputs that nobody gave.
func (in *inputs) pickRows() {
	for i, p := range in.form.Input.Properties {
		k := &in.values[i]
		if p.Rows == "" || !k.known {
			continue
		}
		table := in.session.Book.Table(p.Rows)
		if table == nil {
			in.problems.Add(k.blameAt, "there is no table "+p.Rows, strings.Join(in.session.Book.Tables(), ", "), "")
			continue
		}
		row := table.Find(k.word, in.lookup)
		if row == nil {
			in.noRow(p, k, table)
			continue
		}
		k.text = row.Name
		if k.source == "" {
			k.source, k.authority = row.Source.String(), row.Basis.Authority()
		}
		for _, v := range row.Values.All() {
			if name, ok := p.FilledBy(v.Column); ok {
				in.standIn(name, v.Value, row, sheet.HandbookRow)
			}
		}
	}
}

// standIn lets a row's value stand for an input that is not known yet.
func (in *inputs) standIn(name string, v rules.Value, row *rules.Row, origin sheet.Origin) {
	p := in.form.Input.Child(name)
	if p == nil || in.values[p.Index].known {
		return
	}
	k := known{known: true, origin: origin, source: row.Source.String(), authority: row.Basis.Authority(), blameAt: p.Pointer, confirmed: row.Decides}
	if v.IsText {
		k.word, k.text = v.Text, v.Text
	} else {
		k.si = v.SI
		k.factor = spread.Factor{Estimate: v.SI, Low: v.SI, High: v.SI}
		if v.Ranged() {
			k.factor.Low, k.factor.High, k.factor.Shape = v.Low, v.High, shapes[v.Shape]
		}
	}
	in.values[p.Index] = k
}

// takeUsual takes usual values and number defaults for what is still open.
func (in *inputs) takeUsual() {
	usual := in.session.Book.Usual(in.form.ID)
	for i, p := range in.form.Input.Properties {
		if in.values[i].known {
			continue
		}
		if p.Typical != "" {
			if row := usual.Find(p.Typical, in.lookup); row != nil {
				if v, ok := row.Values.Find(p.Name); ok {
					in.standIn(p.Name, v, row, sheet.UsualValue)
					continue
				}
			}
		}
		if p.Default != nil {
			k := &in.values[i]
			*k = known{known: true, raw: p.Default, origin: sheet.Default, blameAt: p.Pointer, confirmed: true}
			in.readValue(p, k)
		}
	}
}
