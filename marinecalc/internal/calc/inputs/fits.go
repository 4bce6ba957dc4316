package inputs

import (
	"slices"
	"strings"

	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/rules"
)

// Fit tells which picks of a table go with what is known of the inputs that its rows
// ask for.
type Fit struct {
	Picks []string `json:"picks"`          // that go with it, in the order of the table
	With  string   `json:"with,omitempty"` // what the others do not go with: "3/8-24 UNF"; "" where all do
}

// Fits tells it of every input whose rows ask for another input of the form, by its
// name; of none before the inputs were read.
func (in *Inputs) Fits() map[string]Fit {
	fits := map[string]Fit{}
	for _, p := range in.Form.Input.Properties {
		table := in.Request.Book.Table(p.Rows)
		if in.isRead && table != nil && in.isTied(p, table) {
			fits[p.Name] = in.fit(p, table)
		}
	}
	return fits
}

// isTied tells whether rows of a pick's table ask for another input of the form.
func (in *Inputs) isTied(p *contract.Property, table *rules.Table) bool {
	for _, row := range table.Rows.All() {
		for name := range row.Valid.Names() {
			if in.Form.Input.Child(p.Here(name)) != nil {
				return true
			}
		}
	}
	return false
}

// fit counts a pick in unless what is known misses each of its rows. A row without
// values only says that no other is for this size; it counts where all are so.
func (in *Inputs) fit(p *contract.Property, table *rules.Table) Fit {
	picks, _ := table.Picks()
	known := in.lookupOf(p)
	goes, filling, names := map[string]bool{}, map[string]bool{}, map[string][]string{}
	for _, row := range table.Rows.All() {
		filling[row.Pick] = filling[row.Pick] || row.Values.Len() > 0
	}
	for _, row := range table.Rows.All() {
		if filling[row.Pick] && row.Values.Len() == 0 {
			continue
		}
		var missed []string
		for name := range row.Valid.Misses(known) {
			missed = append(missed, p.Here(name))
		}
		goes[row.Pick] = goes[row.Pick] || missed == nil
		names[row.Pick] = append(names[row.Pick], missed...)
	}
	var with []string
	for _, pick := range picks {
		for _, name := range names[pick] {
			if said := in.chosen(name); !goes[pick] && !slices.Contains(with, said) {
				with = append(with, said)
			}
		}
	}
	return Fit{slices.DeleteFunc(picks, func(pick string) bool { return !goes[pick] }), strings.Join(with, " and ")}
}

// chosen is what is known of an input as people chose it: the row that gave it, or
// its title and what stands there.
func (in *Inputs) chosen(name string) string {
	if row, ok := strings.CutPrefix(in.ofPick(name), " of "); ok {
		return row
	}
	p, k := in.Form.Input.Child(name), in.At(name)
	if p.Kind != nil {
		return problem.MidSentence(p.Title) + " " + in.Show(p, k.Si)
	}
	return problem.MidSentence(p.Title) + ": " + k.Text
}
