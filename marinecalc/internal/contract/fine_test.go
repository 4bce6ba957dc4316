package contract

import (
	"encoding/json"
	"strings"
	"testing"

	"example.org/driveline/schemas"
)

// What passes without the validator is what the validator would let pass: for
// every input of every calculation, its examples and values of every odd kind.
func TestFineAgreesWithTheValidator(t *testing.T) {
	odd := []any{nil, true, false, "", " ", "x", "yes", "5 kg", "12 mm", "3 o'clock", "1-11/16 in ± 5 %", "-1 mm", "1e300 m", "1e400 m", "nan", strings.Repeat("9", 400) + " mm",
		json.Number("0"), json.Number("3"), json.Number("0.03"), json.Number("-2"), json.Number("1e300"), json.Number("2.5"),
		[]any{}, []any{nil}, []any{"x"}, []any{map[string]any{}}, map[string]any{}, map[string]any{"x": "y"}}
	let, refused := 0, 0
	agree := func(c *Calculation, input any) {
		want := c.check.Validate(input) == nil
		if fine(c.check, input) != want {
			text, _ := json.Marshal(input)
			t.Errorf("%s: the validator says %v of %s", c.ID, want, text)
		}
		if want {
			let++
		} else {
			refused++
		}
	}
	for _, id := range schemas.Names() {
		c, err := OpenCalculation(id)
		if err != nil {
			continue // a schema of another kind
		}
		for _, v := range odd {
			agree(c, v)
			agree(c, map[string]any{"noSuchName": v})
		}
		for _, p := range c.Input.Properties {
			values := append(p.Examples, odd...)
			for _, word := range p.Enum {
				values = append(values, word, word+" ", strings.ToUpper(word))
			}
			for _, v := range values {
				agree(c, map[string]any{p.Name: v})
			}
			if p.Items == nil {
				continue
			}
			whole := map[string]any{}
			for _, part := range p.Items.Properties {
				if len(part.Examples) > 0 {
					whole[part.Name] = part.Examples[0]
				}
			}
			for _, part := range p.Items.Properties {
				for _, v := range append(part.Examples, odd...) {
					entry := map[string]any{}
					for name, good := range whole {
						entry[name] = good
					}
					entry[part.Name] = v
					agree(c, map[string]any{p.Name: []any{entry}})
					agree(c, map[string]any{p.Name: []any{whole, whole, whole, whole, entry}})
				}
			}
		}
	}
	if let < 500 || refused < 500 {
		t.Errorf("%d values were let through and %d refused: too few to tell", let, refused)
	}
}
