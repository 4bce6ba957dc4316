package inputs

import (
	"encoding/json"
	"fmt"
	"math"
	"strconv"

	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/internal/spread"
	"example.org/driveline/marinecalc/sheet"
)

// Known is what one run knows of one input: its value, where it came from,
// and how far it can be trusted.
type Known struct {
	Known     bool
	Raw       any     // as decoded; nil when it came from a row
	Si        float64 // numbers
	Word      string  // picks, enumerations and other texts
	Factor    spread.Factor
	Text      string // as shown
	RangeText string // the range as shown
	Origin    sheet.Origin
	Source    string
	Authority string   // of the row it came from
	Date      string   // of the reading in the boat file
	blameAt   string   // the place to blame when something is wrong with it
	Confirmed bool     // false for an unverified figure: a verdict must hold over its whole bracket
	Bracket   *Bracket // of an earlier result that is unverified: over all that it rests on
	Roots     []string // of an earlier result that is unverified, the titles of the figures it rests on
}

// Bracket is where an earlier result may lie over the brackets of the unverified
// figures behind it, and half of the 95 % interval that nature leaves at either
// end.
type Bracket struct{ Low, High, AtLow, AtHigh float64 }

// Around is what nature leaves of a figure that stands somewhere in its bracket.
func (b *Bracket) Around(v float64) spread.Factor {
	part := min(max((v-b.Low)/(b.High-b.Low), 0), 1)
	half := b.AtLow + part*(b.AtHigh-b.AtLow)
	return spread.Factor{Estimate: v, Low: v - half, High: v + half, Shape: spread.Normal}
}

// OnlyUsual tells whether a value is nobody's reading and nobody's choice: a usual
// one, a default, or what a row that nobody confirmed has of its kind.
func (k *Known) OnlyUsual() bool {
	return k.Origin == sheet.UsualValue || k.Origin == sheet.Default || k.Origin == sheet.HandbookRow && !k.Confirmed
}

// Ends are those of the bracket of an unverified figure.
func (k *Known) Ends() (low, high float64) {
	if k.Bracket != nil {
		return k.Bracket.Low, k.Bracket.High
	}
	return k.Factor.Low, k.Factor.High
}

// Variate is a number inside the typed input that trials change.
type Variate struct {
	To     *float64
	Factor spread.Factor
	Input  int // index of the input it belongs to
}

// Numeric reads a decoded value as a number in SI with its accuracy.
func Numeric(p *contract.Property, raw any) (si, accuracy float64, err error) {
	switch v := raw.(type) {
	case json.Number:
		si, err = v.Float64()
		return si, 0, err
	case string:
		if p.Kind != nil {
			r, err := p.Kind.Parse(v)
			return r.SI, r.Accuracy, err
		}
		si, err = strconv.ParseFloat(v, 64)
		return si, 0, err
	}
	return math.NaN(), 0, nil
}

// plusMinus is the factor of a reading that may be off by no more than its
// accuracy either way (JCGM 101:2008, 6.4.2).
func plusMinus(si, accuracy float64) spread.Factor {
	if accuracy <= 0 {
		return spread.Factor{Estimate: si, Low: si, High: si}
	}
	return spread.Factor{Estimate: si, Low: si - accuracy, High: si + accuracy, Shape: spread.Rectangular}
}

// shapes are the names that rule data gives the distributions.
var shapes = map[string]spread.Shape{"rectangular": spread.Rectangular, "triangular": spread.Triangular, "normal": spread.Normal}

// ShapeNamed is the distribution that rule data calls by that name.
func ShapeNamed(name string) spread.Shape { return shapes[name] }

// All money of one run is in one currency: amounts are never converted, so
// that two currencies cannot be added up. A bare number is taken to
// be in the currency of the others.

// sameCurrency notes the currency of an amount, and refuses a second one.
func (in *Inputs) sameCurrency(p *contract.Property, k *Known) {
	text, written := k.Raw.(string)
	if !IsMoney(p) || !written {
		return
	}
	r, err := p.Kind.Parse(text)
	switch {
	case err != nil: // said where the number was read
	case in.Currency == "":
		in.Currency = r.Unit
	case in.Currency != r.Unit:
		in.Problems.Add(k.blameAt, fmt.Sprintf("%s is in %s, other amounts are in %s", p.Title, r.Unit, in.Currency),
			"one currency for all amounts; nothing is converted", "write it in "+in.Currency)
	}
}
