package rulefile

import (
	"encoding/json"
	"fmt"
	"maps"
	"math"
	"slices"
	"strings"

	"example.org/driveline/marinecalc/internal/calc/inputs"
	"example.org/driveline/marinecalc/internal/catalogue"
	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/rules"
)

// usualValues is the table whose rows inputs take by themselves.
const usualValues = "usual-values"

// table checks the rows of the file's table: that something takes them, that
// what they fill is there and takes the figure, and that none stands behind
// one that always applies.
func (c *checker) table() {
	name := text(c.file, "table")
	if name == "" {
		return // said by the rules, where there are rows
	}
	t := c.book.Table(name)
	if t == nil {
		c.unknown("/table", "table", name, c.book.Tables())
		return
	}
	takers := c.takers(name)
	c.columns(t, takers)
	named := map[string]bool{}
	for _, r := range t.Rows.All() {
		for of := range r.Valid.Names() {
			named[of] = true
		}
	}
	for where, row := range c.rows("rows") {
		if name == usualValues {
			c.usual(where, row, takers)
		}
		c.valid(where, row["valid"], func(at, of string) *contract.Property {
			if list := takers[of]; len(list) > 0 {
				return list[0]
			}
			if !named[of] {
				c.unknown(at, "input", of, slices.Sorted(maps.Keys(takers)))
			}
			return nil
		})
		values, _ := row["values"].(map[string]any)
		for column, raw := range values {
			c.value(where+contract.Pointer([]string{"values", column}), takers[column], raw)
		}
		for _, id := range strings.Fields(text(values, "hazards")) {
			if !c.isCaution(id) {
				c.unknown(where+"/values/hazards", "caution", id, nil)
			}
		}
		c.whole(where, row, values, t)
		if name == inputs.Gauges {
			c.gauge(where, values)
		}
	}
	if len(takers) > 0 { // others are read whole
		c.shadowed(t)
	}
}

// takers are the inputs that stand beside a pick from the table, by name. Of
// the usual values they are all inputs that take one.
func (c *checker) takers(table string) map[string][]*contract.Property {
	all := map[string][]*contract.Property{}
	for _, one := range catalogue.Calculations {
		f, err := one.Form()
		if err != nil {
			continue // a test opens them all
		}
		picks := table == usualValues
		for _, p := range f.Input.Properties {
			picks = picks || p.Rows == table || p.Items != nil && slices.ContainsFunc(p.Items.Properties, func(part *contract.Property) bool { return part.Rows == table })
		}
		if !picks {
			continue
		}
		for _, p := range f.Input.Properties {
			for column, filled := range p.Fills {
				if to := f.Input.Child(filled); p.Rows == table && to != nil {
					all[column] = append(all[column], to)
				}
			}
			all[p.Name] = append(all[p.Name], p)
			if p.Items != nil {
				for _, part := range p.Items.Properties {
					all[part.Name] = append(all[part.Name], part)
				}
			}
		}
	}
	return all
}

// columns checks the file's own columns: what no input is named by is lost.
func (c *checker) columns(t *rules.Table, takers map[string][]*contract.Property) {
	columns, _ := c.file["columns"].(map[string]any)
	for column := range columns {
		where, kind := "/columns"+contract.Pointer([]string{column}), text(columns, column)
		is, has := t.Kind(column)
		if list := takers[column]; !has && len(list) > 0 {
			is, has = "text", true
			if k := list[0].Kind; k != nil {
				is = k.Name
			} else if numeric(list[0]) {
				is = "number"
			}
		}
		switch _, known := quantity.Lookup(kind); {
		case !has:
			names := slices.Sorted(maps.Keys(takers))
			for _, r := range t.Rows.All() {
				for _, v := range r.Values.All() {
					if !slices.Contains(names, v.Column) {
						names = append(names, v.Column)
					}
				}
			}
			c.unknown(where, "input to fill by a column", column, names)
		case kind == "" || is == kind:
		case known || kind == "text" || kind == "number" || kind == "accuracy":
			c.fail(where, fmt.Sprintf("column %s is a %s there", column, strings.ReplaceAll(is, "-", " ")), is, "leave the column out: the table has it")
		default:
			c.fail(where, fmt.Sprintf("%q is not a kind of quantity", kind), is, "")
		}
	}
}

// value checks a figure against the inputs that it fills: none of them would
// take what lies beyond its bounds.
func (c *checker) value(where string, fills []*contract.Property, raw any) {
	if len(fills) == 0 {
		return
	}
	p := fills[0]
	figures := map[string]any{"": raw}
	if of, is := raw.(map[string]any); is {
		figures = map[string]any{"/low": of["low"], "/typical": of["typical"], "/high": of["high"]}
	}
	for at, figure := range figures {
		if word, is := figure.(string); is && p.Kind == nil {
			if len(p.Enum) > 0 && !slices.Contains(p.Enum, word) {
				c.unknown(where, "such choice of "+p.Title+":", word, p.Enum)
			}
			continue
		}
		si, ok := figureOf(p, figure)
		outside := func(p *contract.Property) bool {
			slack := 1e-12 * math.Abs(si) // below a negative bound too
			return p.Maximum != nil && si > *p.Maximum+slack || p.Minimum != nil && si < *p.Minimum-slack
		}
		if ok && !slices.ContainsFunc(fills, func(p *contract.Property) bool { return !outside(p) }) {
			c.fail(where+at, fmt.Sprintf("%s lies where no input takes it", p.Title), contract.AllowedRange(p), "look for a slip of the unit")
		}
	}
}

// figureOf reads a figure of a row; what cannot be read the rules tell.
func figureOf(p *contract.Property, raw any) (si float64, ok bool) {
	switch raw.(type) {
	case json.Number, string:
		si, _, err := inputs.Numeric(p, raw)
		return si, err == nil
	}
	return 0, false
}

// usual checks that an input takes a usual value by the row's pick.
func (c *checker) usual(where string, row map[string]any, takers map[string][]*contract.Property) {
	pick := text(row, "pick")
	if pick == "" {
		pick = text(row, "id")
	}
	var picks []string
	values, _ := row["values"].(map[string]any)
	for _, list := range takers {
		for _, p := range list {
			if _, fills := values[p.Name]; fills && p.Typical == pick {
				return
			}
			if p.Typical != "" && !slices.Contains(picks, p.Typical) {
				picks = append(picks, p.Typical)
			}
		}
	}
	slices.Sort(picks)
	c.unknown(where, "input that takes the usual value", pick, picks)
}

// whole warns of a row that says less than the one it replaces.
func (c *checker) whole(where string, row, values map[string]any, t *rules.Table) {
	for _, old := range t.Rows.All() {
		if old.ID != text(row, "id") {
			continue
		}
		for _, v := range old.Values.All() {
			if _, has := values[v.Column]; !has {
				c.warn(where+"/values", fmt.Sprintf("row %s leaves out %s, which the row in force has", old.ID, v.Column), "", "a row is replaced whole: write that figure too")
			}
		}
	}
}

// gauge checks that a gauge reads some kind of quantity to some accuracy.
func (c *checker) gauge(where string, values map[string]any) {
	reads := 0
	for _, k := range quantity.Kinds() {
		if !strings.Contains(text(values, "reads"), strings.ReplaceAll(k.Name, "-", " ")) {
			continue
		}
		reads++
		if _, err := k.ParseAccuracy(text(values, "accuracy"), 1); err != nil {
			c.fail(where+"/values/accuracy", err.Error(), "such as 0.05 mm, or 2 %", "")
		}
	}
	if reads == 0 {
		c.fail(where+"/values/reads", "the gauge reads no kind of quantity", "such as length, temperature", "")
	}
}

// shadowed tells of rows that are never picked, since one of the same pick
// that applies wherever they do is found first.
func (c *checker) shadowed(t *rules.Table) {
	type place struct{ where, id, pick, valid string }
	var order []place
	at := map[string]place{}
	for where, row := range c.rows("rows") {
		valid, _ := json.Marshal(row["valid"]) // what was decoded can be written
		p := place{where, text(row, "id"), text(row, "pick"), string(valid)}
		if p.pick == "" {
			p.pick = p.id
		}
		at[p.id] = p
	}
	in := map[string]bool{}
	for _, r := range t.Rows.All() {
		in[r.ID] = true
	}
	for _, row := range c.rows("rows") {
		if p := at[text(row, "id")]; !in[p.id] {
			order = append(order, p)
		}
	}
	for _, r := range t.Rows.All() {
		p, own := at[r.ID]
		if !own {
			p = place{id: r.ID, pick: r.Pick, valid: "elsewhere"}
			for range r.Valid.Names() {
				p.valid = "" // not known well enough to say
			}
			if p.valid == "elsewhere" {
				p.valid = "null"
			}
		}
		order = append(order, p)
	}
	for i, p := range order {
		if p.where == "" {
			continue
		}
		for _, before := range order[:i] {
			if before.pick == p.pick && before.id != p.id && (before.valid == "null" || before.valid == p.valid) {
				c.fail(p.where, fmt.Sprintf("row %s never applies: row %s has the same pick, applies wherever it does, and is found first", p.id, before.id),
					"", "part the two by \"valid\", or put this one first")
				break
			}
		}
	}
}
