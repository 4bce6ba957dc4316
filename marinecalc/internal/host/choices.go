package host

import (
	"slices"

	"example.org/driveline/marinecalc/internal/calc/inputs"

	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/rules"
)

// Choice is one thing that can be picked.
type Choice struct {
	Pick string `json:"pick"`
	Name string `json:"name"`
}

// Required tells whether nothing stands in for an input that is needed: no
// default, no usual value, and no row of a table that is picked by default. Of
// an input that a row fills the pick is asked for in its place.
func Required(p, in *contract.Property, book *rules.Book) bool {
	fills := func(pick *contract.Property, name string) bool {
		table := book.Table(pick.Rows)
		if table == nil {
			return false
		}
		_, has := table.Kind(name)
		return has
	}
	open := func(name string) bool { // needed, and nothing usual stands in
		q := in.Child(name)
		return q != nil && q.Default == nil && q.Typical == "" && slices.Contains(in.Needs, name)
	}
	if p.Rows != "" && p.Default == nil {
		return slices.Contains(in.Needs, p.Name) || slices.ContainsFunc(in.Needs, func(name string) bool { return open(name) && fills(p, name) })
	}
	return open(p.Name) && !slices.ContainsFunc(in.Properties, func(pick *contract.Property) bool { return pick.Rows != "" && fills(pick, p.Name) })
}

// Choices lists what can be picked for an input: its words, or the rows of
// its table; of the gauges those that fit, where in says what is read with p.
func Choices(p, in *contract.Property, book *rules.Book) []Choice {
	if p.Rows == inputs.Gauges {
		if fit := gaugesFor(p, in, book); len(fit) > 0 {
			return fit
		}
	}
	var list []Choice
	for i, word := range p.Enum {
		name := word
		if i < len(p.EnumTitles) {
			name = p.EnumTitles[i]
		}
		list = append(list, Choice{word, name})
	}
	if t := book.Table(p.Rows); t != nil {
		picks, names := t.Picks()
		for i := range picks {
			list = append(list, Choice{picks[i], names[i]})
		}
	}
	return list
}

// gaugesFor lists the gauges that read the kinds of quantity for which in names
// p as their gauge; none where it names it for none.
func gaugesFor(p, in *contract.Property, book *rules.Book) []Choice {
	var kinds []*quantity.Kind
	var look func(*contract.Property)
	look = func(reading *contract.Property) {
		if reading == nil {
			return
		}
		if reading.ReadBy == p.Name && reading.Kind != nil {
			kinds = append(kinds, reading.Kind)
		}
		look(reading.Items)
		for _, child := range reading.Properties {
			look(child)
		}
	}
	look(in)
	var list []Choice
	gauges := book.Table(inputs.Gauges)
	usual, _ := p.Default.(string)
	alike := gauges.Find(usual, nil)
	for _, row := range gauges.Rows.All() {
		if alike != nil && !inputs.ReadsAlike(&row, alike) {
			continue
		}
		if slices.ContainsFunc(kinds, func(k *quantity.Kind) bool { return inputs.ReadsKind(row, k) }) {
			list = append(list, Choice{row.Pick, row.Name})
		}
	}
	return list
}
