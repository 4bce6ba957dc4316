package marinecalc

import (
	"encoding/json"
	"math/rand/v2"
	"slices"
	"testing"

	"example.org/driveline/marinecalc/contract"
	"example.org/driveline/marinecalc/rules"
)

// randomInputs makes inputs that keep to a calculation's schema, from a seed.
// What a person would type together stays together: an example of the schema
// is taken for each needed input and moved within a factor of two, others are
// sometimes given.
type randomInputs struct {
	calculation *contract.Calculation
	r           *rand.Rand
}

func newRandomInputs(k *contract.Calculation, seed uint64) *randomInputs {
	return &randomInputs{k, rand.New(rand.NewPCG(seed, 1))}
}

func (g *randomInputs) next() map[string]any {
	input := map[string]any{}
	for _, p := range g.calculation.Input.Properties {
		needed := slices.Contains(g.calculation.Input.Needs, p.Name)
		if needed || g.r.IntN(3) > 0 {
			if v, ok := g.value(p); ok {
				input[p.Name] = v
			}
		}
	}
	return input
}

func (g *randomInputs) value(p *contract.Property) (any, bool) {
	switch {
	case len(p.Enum) > 0:
		return p.Enum[g.r.IntN(len(p.Enum))], true
	case p.Rows != "":
		picks, _ := rules.Standard().Table(p.Rows).Picks()
		return picks[g.r.IntN(len(picks))], true
	case p.Items != nil:
		return g.list(p), len(p.Examples) > 0
	case slices.Contains(p.Types, "boolean"):
		return g.r.IntN(2) == 0, true
	case slices.Contains(p.Types, "integer") && p.Minimum != nil && p.Maximum != nil:
		return int(*p.Minimum) + g.r.IntN(int(*p.Maximum-*p.Minimum)+1), true
	case p.Kind != nil && len(p.Examples) > 0:
		return g.near(p, p.Examples[0]), true
	}
	return nil, false
}

// near moves an example's value within a factor of two, inside the range.
func (g *randomInputs) near(p *contract.Property, example any) any {
	si, _, err := numeric(p, example)
	if err != nil {
		return example
	}
	v := si * (0.5 + 1.5*g.r.Float64())
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
func (g *randomInputs) list(p *contract.Property) any {
	if len(p.Examples) == 0 {
		return nil
	}
	example, _ := p.Examples[0].([]any)
	out := make([]any, len(example))
	for i, item := range example {
		entry := map[string]any{}
		fields, _ := item.(map[string]any)
		for name, v := range fields {
			entry[name] = v
			if part := p.Items.Child(name); part != nil && part.Kind != nil {
				if si, _, err := numeric(part, v); err == nil {
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

// decodedInput writes an input as JSON and reads it as the door does.
func decodedInput(t *testing.T, input map[string]any) map[string]any {
	t.Helper()
	text, err := json.Marshal(input)
	if err != nil {
		t.Fatal(err)
	}
	v, problems := contract.Decode(text)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	return v.(map[string]any)
}
