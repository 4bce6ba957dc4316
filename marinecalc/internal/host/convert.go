package host

import (
	"cmp"
	"fmt"
	"math"
	"strings"

	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/quantity"
)

// Converted is a quantity in another unit.
type Converted struct {
	Quantity string   `json:"quantity"`           // its kind
	Text     string   `json:"text"`               // to four figures, with the unit
	Value    float64  `json:"value"`              // to all figures
	Unit     string   `json:"unit"`               // of that
	Accuracy *float64 `json:"accuracy,omitempty"` // half width of what stood behind ±, in that unit
	SI       float64  `json:"si"`
}

// Convert reads a quantity as people write it and gives it in another unit.
// The kind may be left out where the two units tell it; a difference of
// temperatures has to be named, since it is written like a temperature. A
// bare number is in the unit, where one is named.
func Convert(kind, text, unit, to string) (*Converted, error) {
	k, r, err := readAs(kind, strings.TrimSpace(text), unit, to)
	if err != nil {
		return nil, err
	}
	value, is := k.Convert(r.SI, to)
	if !is || k.Name == quantity.KindMoney && r.Unit != to {
		p := problem.Problem{Where: "/to", What: fmt.Sprintf("%q is no unit of %s", to, strings.ReplaceAll(k.Name, "-", " ")), Allowed: strings.Join(k.Units(), ", "), Hint: problem.DidYouMean(to, k.Units()), Kind: problem.Unknown}
		if k.Name == quantity.KindMoney {
			p.What, p.Allowed = "amounts of money are not converted", r.Unit
		}
		return nil, problem.List{p}.Err()
	}
	if math.IsInf(value, 0) {
		return nil, problem.List{{Where: "/text", What: "it is too large for that unit", Allowed: "numbers up to 1.8e308"}}.Err()
	}
	out := &Converted{Quantity: k.Name, Text: k.Format(r.SI, to), Value: value, Unit: to, SI: r.SI}
	if r.Accuracy > 0 {
		of := k
		if k.Name == quantity.KindTemperature {
			of, _ = quantity.Lookup(quantity.KindTemperatureDifference) // a width has no zero of its own
		}
		half, _ := of.Convert(r.Accuracy, to)
		out.Accuracy = &half
		out.Text += " ± " + of.Format(r.Accuracy, to)
	}
	return out, nil
}

// readAs reads a text as a quantity of the kind, or where none is named of the
// first one that has both units.
func readAs(kind, text, unit, to string) (*quantity.Kind, quantity.Reading, error) {
	kinds := quantity.Kinds()
	if kind != "" {
		k, ok := quantity.Lookup(kind)
		if !ok {
			var names []string
			for _, k := range kinds {
				names = append(names, k.Name)
			}
			return nil, quantity.Reading{}, problem.List{{Where: "/quantity", What: fmt.Sprintf("%q is not a kind of quantity", kind), Allowed: strings.Join(names, ", "), Hint: problem.DidYouMean(kind, names), Kind: problem.Unknown}}.Err()
		}
		kinds = []*quantity.Kind{k}
	}
	var first *quantity.Kind
	var reading quantity.Reading
	var failed error
	for _, k := range kinds {
		if kind == "" && k.Name == quantity.KindMoney {
			continue // any three capitals are a currency
		}
		_, r, err := Read(k, text, unit)
		if err != nil {
			failed = cmp.Or(failed, err)
			continue
		}
		if _, has := k.Convert(r.SI, to); has {
			return k, r, nil
		}
		if first == nil {
			first, reading = k, r
		}
	}
	if first != nil {
		return first, reading, nil // Convert says which units it has
	}
	if kind == "" {
		_, _, failed = quantity.Infer(text)
	}
	p := problem.Of(failed)
	for i := range p {
		p[i].Where = "/text"
	}
	return nil, reading, p.Err()
}

// Read reads what a person typed. A bare number is taken to be in the unit, and
// gets it written behind, so that it stays what was meant.
func Read(k *quantity.Kind, text, unit string) (string, quantity.Reading, error) {
	read, err := k.Parse(text)
	if read.Unit == "" && unit != "" {
		if k.Name == quantity.KindLength && quantity.Fraction(text) {
			unit = "in" // whatever the field is in, a fraction is one of an inch
		}
		full := quantity.WithUnit(text, unit)
		if with, e := k.Parse(full); e == nil {
			return full, with, nil
		}
	}
	return text, read, err
}
