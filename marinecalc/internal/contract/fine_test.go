package contract

import (
	"encoding/json"
	"reflect"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v5"

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
		validator, err := c.check()
		if err != nil {
			t.Fatal(err)
		}
		want := validator.Validate(input) == nil
		if fine(validator, input) != want {
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

// Every field of the validator's schema is one that fine looks at, leaves to
// the validator, or need not know. An upgrade that adds one fails here.
func TestFineKnowsEveryFieldOfASchema(t *testing.T) {
	const (
		plain   = "isPlain: an object or a list with it goes to the validator"
		texts   = "isPlainForTexts: a text with it goes to the validator"
		both    = "isPlain and isPlainForTexts: with it all goes to the validator"
		looked  = "looked at by fine itself, in saysNoMore too"
		numbers = "for numbers alone, which go to the validator; saysNoMore"
		beside  = "says nothing without another one that is looked at"
		words   = "says nothing of a value"
	)
	known := map[string]string{
		"Location": words, "Draft": words, "meta": words, "vocab": words,
		"dynamicAnchors": beside, "RecursiveAnchor": beside, "DynamicAnchor": beside, "dynamicRefAnchor": beside, // of RecursiveRef and DynamicRef
		"Format": both, "format": beside, "Always": both, "Ref": looked, "RecursiveRef": both, "DynamicRef": both,
		"Types": looked, "Constant": both, "Enum": looked, "enumError": words,
		"Not": both, "AllOf": both, "AnyOf": both, "OneOf": both, "If": both, "Then": beside, "Else": beside, // of If
		"MinProperties": plain, "MaxProperties": plain, "Required": looked, "Properties": looked, "PropertyNames": plain,
		"RegexProperties": plain, "PatternProperties": plain, "AdditionalProperties": looked,
		"Dependencies": plain, "DependentRequired": plain, "DependentSchemas": plain, "UnevaluatedProperties": plain,
		"MinItems": looked, "MaxItems": looked, "UniqueItems": plain, "Items": plain, "AdditionalItems": plain, "PrefixItems": plain,
		"Items2020": looked, "Contains": plain, "ContainsEval": beside, "MinContains": beside, "MaxContains": beside, // of Contains
		"UnevaluatedItems": plain,
		"MinLength":        looked, "MaxLength": looked, "Pattern": texts,
		"ContentEncoding": texts, "decoder": beside, "ContentMediaType": texts, "mediaType": beside, "ContentSchema": beside,
		"Minimum": numbers, "ExclusiveMinimum": numbers, "Maximum": numbers, "ExclusiveMaximum": numbers, "MultipleOf": numbers,
		"Title": words, "Description": words, "Default": words, "Comment": words, "ReadOnly": words, "WriteOnly": words, "Examples": words, "Deprecated": words,
		"Extensions": looked,
	}
	schema := reflect.TypeFor[jsonschema.Schema]()
	for i := range schema.NumField() {
		name := schema.Field(i).Name
		if known[name] == "" {
			t.Errorf("fine does not know the field %s: look at what it means, then say so here", name)
		}
		delete(known, name)
	}
	for name := range known {
		t.Errorf("there is no field %s any more", name)
	}
}
