// Package sample makes random inputs that keep to a calculation's schema, so
// that the tests of every host (Go, WASM, page) can be run on the same ones.
package sample

import (
	"encoding/json"
	"maps"
	"math/rand/v2"
	"slices"

	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/rules"
	"example.org/driveline/marinecalc/sheet"
)

// Source makes inputs from a seed. What a person would type together stays
// together: the schema's examples are moved by up to a fifth, a picked row is
// not contradicted, gauges stay as the schema has them, and what is folded
// away on the form is seldom given.
type Source struct {
	calculation *contract.Calculation
	r           *rand.Rand
}

// New makes a source of inputs for the calculation of that id. The error says
// that there is none.
func New(id string, seed uint64) (*Source, error) {
	k, err := contract.OpenCalculation(id)
	if err != nil {
		return nil, err
	}
	return &Source{k, rand.New(rand.NewPCG(seed, 1))}, nil
}

// Next makes the next input. It keeps to the schema; whether the calculation
// takes it (a hole larger than its head does not exist) is not said.
func (g *Source) Next() map[string]any {
	input := map[string]any{}
	filled := map[string]rules.Value{} // by picked rows
	for _, p := range g.calculation.Input.Properties {
		if p.Rows == "" || p.Rows == "gauges" || !g.gives(p) {
			continue
		}
		if len(p.Examples) > 0 && g.r.IntN(3) == 0 {
			input[p.Name] = p.Examples[0]
			continue
		}
		if row := g.row(rules.Standard().Table(p.Rows), filled); row != nil {
			input[p.Name] = row.Pick
			for _, v := range row.Values.All() {
				filled[v.Column] = v.Value
			}
		}
	}
	for _, p := range g.calculation.Input.Properties {
		if _, is := filled[p.Name]; is || p.Rows != "" || !g.gives(p) {
			continue
		}
		if v, ok := g.value(p); ok {
			input[p.Name] = v
		}
	}
	return input
}

// Typed is an input as a person types it: the schema's own first examples of
// what stands in the open on the form. The error says that there is no
// calculation of that id.
func Typed(id string) (map[string]any, error) {
	return examples(id, func(p *contract.Property) bool { return p.Level == sheet.Main })
}

// Every is an input with the schema's first example of each property. Not
// every calculation takes it: some inputs are two ways to say one thing.
func Every(id string) (map[string]any, error) {
	return examples(id, func(*contract.Property) bool { return true })
}

func examples(id string, wanted func(*contract.Property) bool) (map[string]any, error) {
	k, err := contract.OpenCalculation(id)
	if err != nil {
		return nil, err
	}
	input := map[string]any{}
	for _, p := range k.Input.Properties {
		if wanted(p) && len(p.Examples) > 0 {
			input[p.Name] = p.Examples[0]
		}
	}
	return input, nil
}

// row picks a row that goes with those picked before, or none.
func (g *Source) row(t *rules.Table, filled map[string]rules.Value) *rules.Row {
	known := func(name string) (float64, string, bool) {
		v, ok := filled[name]
		return v.SI, v.Text, ok
	}
	for range 40 {
		if row := t.Rows.At(g.r.IntN(t.Rows.Len())); row.Valid.Meets(known) {
			return &row
		}
	}
	return nil
}

// gives decides whether an input is given this time.
func (g *Source) gives(p *contract.Property) bool {
	switch {
	case slices.Contains(g.calculation.Input.Needs, p.Name):
		return true
	case p.Level == sheet.Detail:
		return g.r.IntN(8) == 0
	default:
		return g.r.IntN(3) > 0
	}
}

func (g *Source) value(p *contract.Property) (any, bool) {
	switch {
	case len(p.Enum) > 0:
		return p.Enum[g.r.IntN(len(p.Enum))], true
	case p.Items != nil:
		return g.list(p), len(p.Examples) > 0
	case slices.Contains(p.Types, "boolean"):
		return g.r.IntN(2) == 0, true
	case slices.Contains(p.Types, "integer") && len(p.Examples) > 0 && g.r.IntN(4) > 0:
		return p.Examples[0], true
	case slices.Contains(p.Types, "integer") && p.Minimum != nil && p.Maximum != nil:
		return int(*p.Minimum) + g.r.IntN(int(*p.Maximum-*p.Minimum)+1), true
	case p.Kind == nil && slices.Contains(p.Types, "string") && len(p.Examples) > 0:
		return p.Examples[0], true // a day, a text
	case p.Kind != nil && len(p.Examples) > 0:
		return g.near(p, p.Examples[0]), true
	}
	return nil, false
}

// near moves an example's value by up to a fifth, inside the range.
func (g *Source) near(p *contract.Property, example any) any {
	si, ok := number(p, example)
	if !ok {
		return example
	}
	v := si * (0.8 + 0.4*g.r.Float64())
	if p.Kind.Name == "temperature" {
		v = si + 10*(g.r.Float64()-0.5)
	}
	if p.Minimum != nil {
		v = max(v, *p.Minimum)
	}
	if p.Maximum != nil {
		v = min(v, *p.Maximum)
	}
	return v
}

// list takes the example list and moves the numbers of its entries a little.
func (g *Source) list(p *contract.Property) any {
	if len(p.Examples) == 0 {
		return nil
	}
	example, _ := p.Examples[0].([]any)
	out := make([]any, len(example))
	for i, item := range example {
		entry := map[string]any{}
		fields, _ := item.(map[string]any)
		for _, name := range slices.Sorted(maps.Keys(fields)) { // in one order, so that a seed gives the same input each time
			v := fields[name]
			entry[name] = v
			if part := p.Items.Child(name); part != nil && part.Kind != nil {
				if si, ok := number(part, v); ok {
					moved := si * (0.95 + 0.1*g.r.Float64())
					if part.Maximum != nil {
						moved = min(moved, *part.Maximum)
					}
					entry[name] = moved
				}
			}
		}
		out[i] = entry
	}
	return out
}

// number reads an example as a number in SI.
func number(p *contract.Property, example any) (float64, bool) {
	switch v := example.(type) {
	case json.Number:
		f, err := v.Float64()
		return f, err == nil
	case string:
		r, err := p.Kind.Parse(v)
		return r.SI, err == nil
	}
	return 0, false
}
