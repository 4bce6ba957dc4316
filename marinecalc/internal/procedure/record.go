package procedure

import (
	"encoding/json"
	"fmt"
	"slices"
	"strings"

	"example.org/driveline/marinecalc/internal/boat"
	"example.org/driveline/marinecalc/internal/calc/inputs"
	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/rules"
	"example.org/driveline/marinecalc/sheet"
)

// Record is something to read or to look at, and to write down.
type Record struct {
	Title   string `json:"title"`
	Reading string `json:"reading,omitempty"` // the boat's reading of that name, where there is one
	Name    string `json:"name,omitempty"`    // of the reading, as people read it
	How     string `json:"how,omitempty"`
	Unit    string `json:"unit,omitempty"`
	Last    string `json:"last,omitempty"` // its newest value
	Date    string `json:"date,omitempty"` // of that
	Limits  []Held `json:"limits"`
	Noted   string `json:"noted,omitempty"` // what was written down at this step
	NotedOn string `json:"notedOn,omitempty"`
}

// Held is a limit that a reading is held against.
type Held struct {
	Title       string `json:"title"`
	Bound       string `json:"bound"`
	Guide       bool   `json:"guide,omitempty"` // it compares, and nothing is over it
	Calculation string `json:"calculation"`     // "" where the boat file sets it
	Sheet       string `json:"sheet"`
}

// readingOf is what the schema of the boat file says of a reading, or nil.
func readingOf(name string) *contract.Property {
	c, err := boat.Contract()
	if err != nil || name == "" {
		return nil
	}
	entry, _ := c.Root.At([]string{"readings", "0"})
	return entry.Child(name)
}

// record fills what one step asks to write down.
func (m *maker) record(step string, row rules.Record) Record {
	out := Record{Title: row.Title, Limits: []Held{}}
	if t := m.ticked(step); t != nil {
		if n := t.noted(row.Title); n != nil {
			out.NotedOn = n.Date
			if out.Noted = "kept with the readings"; n.Value != nil {
				out.Noted = fmt.Sprint(n.Value)
			}
		}
	}
	p := readingOf(row.Reading)
	if p == nil {
		return out
	}
	out.Reading, out.Name, out.How = row.Reading, p.Title, p.Description
	if p.Kind != nil {
		out.Unit = p.Units[0]
		if m.session.Units == quantity.US && p.Units[1] != "" {
			out.Unit = p.Units[1]
		}
	}
	if raw, _, date, ok := m.session.Boat.Find(boat.LatestReading + row.Reading); ok {
		out.Last, out.Date = m.valueText(p, raw), date
		if n := out.NotedOn; n != "" && out.Noted == "kept with the readings" && n == date {
			out.Noted = out.Last
		}
	}
	m.hold(&out)
	return out
}

// mostEntries is how many entries of a list are written out.
const mostEntries = 8

// valueText writes a value of the boat file as people read it.
func (m *maker) valueText(p *contract.Property, raw any) string {
	switch v := raw.(type) {
	case []any:
		if len(v) > mostEntries || p.Items == nil {
			return fmt.Sprintf("%d entries", len(v))
		}
		var items []string
		for _, item := range v {
			items = append(items, m.valueText(p.Items, item))
		}
		return strings.Join(items, "; ")
	case map[string]any:
		var parts []string
		for _, inner := range p.Properties {
			if value, has := v[inner.Name]; has {
				parts = append(parts, m.valueText(inner, value))
			}
		}
		return strings.Join(parts, " ")
	case bool:
		if v {
			return "yes"
		}
		return "no"
	case json.Number, string:
		if p.Kind != nil {
			if si, _, err := inputs.Numeric(p, raw); err == nil {
				return inputs.Show(p, si, m.session.Units)
			}
		}
		return p.Words(fmt.Sprint(v))
	}
	return fmt.Sprint(raw)
}

// hold lists the limits that a reading is held against: those on the reading
// itself, or else those on the results that rest on it and little else, or on a
// list, and the one that the boat file sets.
func (m *maker) hold(r *Record) {
	pointer := boat.LatestReading + r.Reading
	for _, c := range m.session.Calculations {
		form, err := c.Form()
		if err != nil {
			continue
		}
		for _, p := range form.Input.Properties {
			if p.Boat != pointer {
				continue
			}
			limits := m.limitsOn(c.ID, func(on string) bool { return on == p.Name })
			if len(limits) == 0 {
				limits = m.limitsOn(c.ID, func(on string) bool {
					behind := form.Formulas.Rests(on)
					return slices.Contains(behind, p.Name) && (p.Items != nil || len(behind) <= mostBehind)
				})
			}
			r.Limits = append(r.Limits, limits...)
		}
	}
	for _, f := range m.session.Boat.Follows() {
		if f.Reading == r.Reading && f.Limit != "" {
			r.Limits = append(r.Limits, Held{Title: "Limit set in the boat file", Bound: f.Limit})
			return
		}
	}
}

// mostBehind is on how many inputs a result may rest for its limit to be told
// at a reading that is one of them.
const mostBehind = 3

// limitsOn lists the limits of a calculation on what is asked for: as its
// sheet has them, or by their rows where there is no sheet and they apply
// everywhere.
func (m *maker) limitsOn(id string, on func(string) bool) (list []Held) {
	w := m.work(id)
	if w.sheet != nil {
		for _, v := range w.sheet.Verdicts {
			if on(v.On) && v.BoundSI != nil && !rules.IsOwn(v.Limit) { // one that rests on a figure not known says nothing here
				list = append(list, Held{Title: v.Title, Bound: v.Bound, Guide: v.Guide, Calculation: id, Sheet: w.title})
			}
		}
		return list
	}
	for _, l := range m.session.Book.Limits(id).All() {
		bound, side := l.Max, sheet.AtMost
		if l.Min.Given() {
			bound, side = l.Min, sheet.AtLeast
		}
		conditional := false
		for range l.Valid.Names() {
			conditional = true
		}
		if on(l.On) && bound.Of == "" && bound.Text != "" && !conditional {
			list = append(list, Held{Title: l.Title, Bound: string(side) + " " + bound.Text, Guide: l.Basis.Guides(), Calculation: id, Sheet: w.title})
		}
	}
	return list
}
