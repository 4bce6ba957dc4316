package catalogue_test

import (
	"encoding/json"
	"maps"
	"math"
	"strconv"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/binding"
	"example.org/driveline/marinecalc/internal/catalogue"
	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/sample"
)

// eachInput goes through the inputs of every calculation, and through those of
// the entries of its lists. with makes an input that holds a value there, and
// where is the value's place in it.
func eachInput(t *testing.T, test func(k *binding.Form, p *contract.Property, where string, with func(v any) map[string]any)) {
	t.Helper()
	for _, c := range catalogue.Calculations {
		k, err := c.Form()
		if err != nil {
			t.Fatal(err)
		}
		for _, p := range k.Input.Properties {
			test(k, p, "/"+p.Name, func(v any) map[string]any { return map[string]any{p.Name: v} })
			if p.Items == nil || len(p.Examples) == 0 {
				continue
			}
			for _, part := range p.Items.Properties {
				test(k, part, "/"+p.Name+"/0/"+part.Name, func(v any) map[string]any {
					var list []any
					for _, entry := range p.Examples[0].([]any) {
						list = append(list, maps.Clone(entry.(map[string]any)))
					}
					list[0].(map[string]any)[part.Name] = v
					return map[string]any{p.Name: list}
				})
			}
		}
	}
}

// bare writes a number in SI as JSON does.
func bare(v float64) json.Number { return json.Number(strconv.FormatFloat(v, 'g', -1, 64)) }

// past is a little beyond a bound; for a whole number one more.
func past(p *contract.Property, bound, side float64) float64 {
	if len(p.Types) == 1 && p.Types[0] == "integer" {
		return bound + side
	}
	return bound + side*math.Max(1e-6*math.Abs(bound), 1e-9)
}

// What stands at a bound of the schema is taken by the schema, as a bare
// number and with its unit. What is just past it is refused there, in words
// that say what is allowed.
func TestBoundsOfTheSchemas(t *testing.T) {
	tried := 0
	eachInput(t, func(k *binding.Form, p *contract.Property, where string, with func(any) map[string]any) {
		for side, bound := range map[float64]*float64{-1: p.Minimum, 1: p.Maximum} {
			if bound == nil {
				continue
			}
			tried++
			ways := map[string]func(v float64) any{"bare": func(v float64) any { return bare(v) }}
			if p.Kind != nil && p.Kind.Name != "money" && p.Kind.Units()[0] != "" {
				ways["with its unit"] = func(v float64) any { return string(bare(v)) + " " + p.Kind.Units()[0] }
			}
			for way, write := range ways {
				if faults := k.CheckInput(with(write(*bound))); len(faults) > 0 {
					t.Errorf("%s: %g %s at %s is refused: %v", k.ID, *bound, way, where, faults)
				}
				beyond := past(p, *bound, side)
				_, err := marinecalc.Run(k.ID, []byte(testboat.Text(t, with(write(beyond)))), marinecalc.Options{NoRanges: true})
				list := problem.Of(err)
				if len(list) != 1 || list[0].Where != where || list[0].Allowed == "" || !strings.Contains(list[0].What, p.Title) {
					t.Errorf("%s: %.12g %s at %s is not refused there in words that say what is allowed: %v", k.ID, beyond, way, where, err)
				}
			}
		}
	})
	if tried < 700 {
		t.Errorf("only %d bounds were tried", tried)
	}
}

// A list of the fewest and of the most entries is taken by the schema, one
// entry fewer or more is refused.
func TestLengthsOfLists(t *testing.T) {
	tried := 0
	eachInput(t, func(k *binding.Form, p *contract.Property, where string, with func(any) map[string]any) {
		if p.Items == nil || len(p.Examples) == 0 {
			return
		}
		if p.MaxItems == 0 {
			t.Errorf("%s: %s may be as long as it likes", k.ID, where)
			return
		}
		example := p.Examples[0].([]any)
		of := func(n int) map[string]any {
			list := make([]any, n)
			for i := range list {
				list[i] = example[i%len(example)]
			}
			return with(list)
		}
		for _, n := range []int{p.MinItems, p.MaxItems} {
			tried++
			if faults := k.CheckInput(of(n)); len(faults) > 0 {
				t.Errorf("%s: %d entries at %s are refused: %v", k.ID, n, where, faults)
			}
		}
		for _, n := range []int{p.MinItems - 1, p.MaxItems + 1} {
			if n < 0 {
				continue
			}
			if faults := k.CheckInput(of(n)); len(faults) != 1 || faults[0].Where != where || faults[0].Allowed == "" {
				t.Errorf("%s: %d entries at %s: %v", k.ID, n, where, faults)
			}
		}
	})
	if tried < 20 {
		t.Errorf("only %d lengths were tried", tried)
	}
}

// With one input at the end of its range and the others as in the examples a
// calculation answers in numbers, or says where and what is allowed instead.
func TestCalculationsAtTheBoundsOfOneInput(t *testing.T) {
	answered, refused := 0, 0
	examples := map[string]map[string]any{}
	typed := func(id string) map[string]any {
		if examples[id] == nil {
			input, err := sample.Typed(id)
			if err != nil {
				t.Fatal(err)
			}
			examples[id] = input
		}
		return examples[id]
	}
	eachInput(t, func(k *binding.Form, p *contract.Property, where string, with func(any) map[string]any) {
		for _, bound := range []*float64{p.Minimum, p.Maximum} {
			if bound == nil {
				continue
			}
			input := maps.Clone(typed(k.ID))
			maps.Copy(input, with(bare(*bound)))
			s, err := marinecalc.Run(k.ID, []byte(testboat.Text(t, input)), marinecalc.Options{NoRanges: true})
			if err == nil {
				answered++
				for _, r := range s.Results {
					if r.SI != nil && (math.IsNaN(*r.SI) || math.IsInf(*r.SI, 0)) {
						t.Errorf("%s with %g at %s: %s is %g", k.ID, *bound, where, r.Name, *r.SI)
					}
				}
				continue
			}
			refused++
			list := problem.Of(err)
			if len(list) == 0 {
				t.Errorf("%s with %g at %s: %v", k.ID, *bound, where, err)
			}
			for _, one := range list {
				if at, whole := k.Input.At(contract.Tokens(one.Where)); !whole || at == k.Input || one.What == "" || one.Allowed == "" {
					t.Errorf("%s with %g at %s: %+v", k.ID, *bound, where, one)
				}
			}
		}
	})
	if answered < 400 || refused < 40 {
		t.Errorf("%d answered, %d refused", answered, refused)
	}
}
