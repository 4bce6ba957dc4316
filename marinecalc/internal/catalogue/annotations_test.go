package catalogue

import (
	"slices"
	"strings"
	"testing"

	"example.org/driveline/marinecalc/internal/binding"
	"example.org/driveline/marinecalc/internal/boat"
	"example.org/driveline/marinecalc/internal/calc/verdict"
	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/rules"
)

// What an annotation points to is there: tables, usual values, places in the
// boat file, earlier results, gauges, needs.
func TestAnnotationsPointSomewhere(t *testing.T) {
	file, err := boat.Contract()
	if err != nil {
		t.Fatal(err)
	}
	book := rules.Standard()
	all := openAll(t)
	for _, k := range all {
		for _, name := range k.Input.Needs {
			if k.Input.Child(name) == nil {
				t.Errorf("%s needs %s, which is no input", k.ID, name)
			}
		}
		for _, p := range k.Input.Properties {
			pointsSomewhere(t, k, p, all, file, book)
		}
		for _, p := range k.Result.Properties {
			for _, name := range p.DependsOn {
				if k.Input.Child(name) == nil && k.Result.Child(name) == nil {
					t.Errorf("%s: %s rests on %s, which is not there", k.ID, p.Name, name)
				}
			}
		}
	}
}

func pointsSomewhere(t *testing.T, k *binding.Form, p *contract.Property, all []*binding.Form, file *contract.Document, book *rules.Book) {
	t.Helper()
	where := k.ID + "/" + p.Name
	if p.Rows != "" && book.Table(p.Rows) == nil {
		t.Errorf("%s: there is no table %s", where, p.Rows)
	}
	if word, ok := p.Default.(string); ok && p.Rows != "" {
		if picks, _ := book.Table(p.Rows).Picks(); !slices.Contains(picks, word) {
			t.Errorf("%s: its default %q is not in table %s", where, word, p.Rows)
		}
	}
	if p.Default != nil && p == k.Input.Child(p.Name) {
		// What stands in for an input that nobody gave is not checked in a run.
		if faults := k.CheckInput(map[string]any{p.Name: p.Default}); len(faults) > 0 {
			t.Errorf("%s: its default is refused: %v", where, faults)
		}
	}
	if p.Typical != "" {
		found, table, pick := false, book.Usual(k.ID), p.Typical
		if name, row, elsewhere := strings.Cut(p.Typical, "/"); elsewhere && book.Table(name) != nil {
			table, pick = book.Table(name), row
		}
		for _, r := range table.Rows.All() {
			_, has := r.Values.Find(p.Name)
			found = found || r.Pick == pick && has
		}
		if !found {
			t.Errorf("%s: the usual value %s is not there or does not fill it", where, p.Typical)
		}
	}
	if p.ReadBy != "" {
		if g := k.Input.Child(p.ReadBy); g == nil || g.Rows != "gauges" {
			t.Errorf("%s: its gauge %s is not an input picked from the gauges", where, p.ReadBy)
		}
	}
	if p.Boat != "" {
		at, whole := file.Root.At(contract.Tokens(boat.SchemaPointer(p.Boat)))
		switch {
		case !whole:
			t.Errorf("%s: the boat file has no %s", where, p.Boat)
		case !at.Kind.Is(p.Kind) || at.Rows != p.Rows || !slices.Equal(at.Enum, p.Enum):
			t.Errorf("%s: the boat's %s is of another kind, table or choice", where, p.Boat)
		}
	}
	for after := range strings.SplitSeq(p.After, "|") {
		if after == "" {
			continue
		}
		id, result, _ := strings.Cut(after, "/")
		i := slices.IndexFunc(all, func(c *binding.Form) bool { return c.ID == id })
		if i < 0 || all[i].Result.Child(result) == nil || !all[i].Result.Child(result).Kind.Is(p.Kind) {
			t.Errorf("%s: the earlier result %s is not there or of another kind", where, p.After)
		}
	}
	if p.Items != nil {
		for _, part := range p.Items.Properties {
			pointsSomewhere(t, k, part, all, file, book)
		}
	}
}

// Rule data speaks of calculations, inputs and results that are there.
func TestRuleDataPointsSomewhere(t *testing.T) {
	all := map[string]*binding.Form{}
	kinds := map[string]string{}
	for _, k := range openAll(t) {
		all[k.ID] = k
		for _, side := range []*contract.Property{k.Input, k.Result} {
			for _, p := range side.Properties {
				if p.Kind == nil {
					continue
				}
				if old, has := kinds[p.Name]; has && old != p.Kind.Name {
					t.Errorf("%s is a %s here and a %s elsewhere", p.Name, p.Kind.Name, old)
				}
				kinds[p.Name] = p.Kind.Name
			}
		}
	}
	there := func(where, id string, names ...string) {
		k := all[id]
		if k == nil {
			t.Errorf("%s: there is no calculation %s", where, id)
			return
		}
		for _, n := range names {
			if k.Input.Child(n) == nil && k.Result.Child(n) == nil {
				t.Errorf("%s: %s has neither input nor result %s", where, id, n)
			}
		}
	}
	book := rules.Standard()
	limits := map[string]bool{}
	for id, k := range all {
		for _, p := range k.Input.Properties {
			limits[verdict.OwnOf(p)], limits[id+"/"+verdict.OwnOf(p)] = true, true
		}
	}
	for _, l := range book.AllLimits().All() {
		limits[l.ID], limits[l.Calculation+"/"+l.ID] = true, true
		names := []string{l.On}
		for _, b := range []rules.Bound{l.Max, l.Min, l.Scale} {
			if b.Of != "" {
				names = append(names, b.Of)
			}
		}
		for name := range l.Valid.Names() {
			names = append(names, name)
		}
		there("limit "+l.ID, l.Calculation, names...)
	}
	for _, s := range book.AllShared().All() {
		for of, on := range s.On() {
			there("shared limits of "+s.LimitsOf, s.LimitsOf, of)
			there("shared limits of "+s.LimitsOf, s.Calculation, on)
		}
		for _, l := range book.Limits(s.Calculation).All() {
			limits[s.Calculation+"/"+l.ID] = true
			for name := range l.Valid.Names() {
				there("shared limit "+l.ID, s.Calculation, name)
			}
		}
	}
	for _, c := range book.AllCautions().All() {
		for _, id := range c.Calculations.All() {
			there("caution "+c.ID, id)
		}
	}
	for _, a := range book.AllAdvice().All() {
		there("advice "+a.ID, a.Calculation)
		for name := range a.Valid.Names() {
			there("advice "+a.ID, a.Calculation, name)
		}
		for limit := range a.OtherVerdicts.Limits() {
			if !limits[limit] {
				t.Errorf("advice %s: there is no limit %s", a.ID, limit)
			}
		}
		if a.Limit != "" && !limits[a.Limit] {
			t.Errorf("advice %s: there is no limit %s", a.ID, a.Limit)
		}
	}
	for _, name := range book.Tables() {
		for _, r := range book.Table(name).Rows.All() {
			for _, v := range r.Values.All() {
				column := v.Column
				is, _ := book.Table(name).Kind(column)
				if kind, has := kinds[column]; has && kind != is {
					t.Errorf("table %s: column %s is a %s, the input a %s", name, column, is, kind)
				}
			}
		}
	}
}
