package calc

import (
	"encoding/json"
	"fmt"
	"math"
	"strconv"
	"strings"

	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/internal/spread"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/sheet"
)

// known is what one run knows of one input: its value, where it came from,
// and how far it can be trusted.
type known struct {
	known     bool
	raw       any     // as decoded; nil when it came from a row
	si        float64 // numbers
	word      string  // picks, enumerations and other texts
	factor    spread.Factor
	text      string // as shown
	rangeText string // the range as shown
	origin    sheet.Origin
	source    string
	authority string   // of the row it came from
	date      string   // of the reading in the boat file
	blameAt   string   // the place to blame when something is wrong with it
	confirmed bool     // false for an unverified figure: a verdict must hold over its whole bracket
	roots     []string // of an earlier result that is unverified, the titles of the figures it rests on
}

// variate is a number inside the typed input that trials change.
type variate struct {
	to     *float64
	factor spread.Factor
	input  int // index of the input it belongs to
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

// Show prints a value in a unit system. Money needs the run's currency: see
// filling.show.
func Show(p *contract.Property, si float64, units quantity.System) string {
	if p.Kind == nil {
		return strconv.FormatFloat(si, 'g', -1, 64)
	}
	return p.Shown.Print(si, units)
}

// showSpan prints a range in a unit system, in the unit for a value of that
// size.
func showSpan(p *contract.Property, size, low, high float64, units quantity.System) string {
	if p.Kind == nil {
		return strconv.FormatFloat(low, 'g', 3, 64) + " to " + strconv.FormatFloat(high, 'g', 3, 64)
	}
	return p.Shown.PrintSpanOf(size, low, high, units)
}

// All money of one run is in one currency: amounts are never converted, so
// that two currencies cannot be added up. A bare number is taken to
// be in the currency of the others.

// isMoney tells whether a property is an amount of money.
func isMoney(p *contract.Property) bool { return p.Kind != nil && p.Kind.Name == "money" }

// sameCurrency notes the currency of an amount, and refuses a second one.
func (in *inputs) sameCurrency(p *contract.Property, k *known) {
	text, written := k.raw.(string)
	if !isMoney(p) || !written {
		return
	}
	r, err := p.Kind.Parse(text)
	switch {
	case err != nil: // said where the number was read
	case in.currency == "":
		in.currency = r.Unit
	case in.currency != r.Unit:
		in.problems.Add(k.blameAt, fmt.Sprintf("%s is in %s, other amounts are in %s", p.Title, r.Unit, in.currency),
			"one currency for all amounts; nothing is converted", "write it in "+in.currency)
	}
}

// show prints a value of the run in the unit system in force.
func (in *inputs) show(p *contract.Property, si float64) string {
	return in.showIn(p, si, in.session.Units)
}

// showIn prints a value of the run in a unit system, money in its currency.
func (in *inputs) showIn(p *contract.Property, si float64, units quantity.System) string {
	return in.showToIn(p, si, 0, units)
}

// showBare prints a result without a range: a probability in whole per cent,
// and what comes of loads and strengths to three digits, since nobody knows
// them better. What is measured, set or paid keeps its digits.
func (in *inputs) showBare(p *contract.Property, si float64) string {
	switch {
	case p.Probability && si != 0:
		return percent(si)
	case p.Kind != nil && threeDigits[p.Kind.Name]:
		var buf [96]byte
		return in.texts.keep(p.Shown.AppendFigures(buf[:0], si, 3, in.session.Units))
	}
	return in.show(p, si)
}

// threeDigits are the kinds of what comes of loads and strengths.
var threeDigits = map[string]bool{"ratio": true, "mass": true, "force": true, "torque": true, "energy": true, "power": true, "pressure": true,
	"stress": true, "stiffness": true, "angular-stiffness": true, "inertia": true, "frequency": true, "volume-flow": true, "velocity": true, "time": true, "area": true}

// showTo prints a value of the run to the digits that an accuracy of ± half
// leaves it.
func (in *inputs) showTo(p *contract.Property, si, half float64) string {
	return in.showToIn(p, si, half, in.session.Units)
}

func (in *inputs) showToIn(p *contract.Property, si, half float64, units quantity.System) string {
	switch {
	case p.Kind == nil:
		return Show(p, si, units)
	case isMoney(p):
		return p.Kind.In(in.currency, in.currency).PrintTo(si, half, units)
	}
	var buf [96]byte
	return in.texts.keep(p.Shown.AppendTo(buf[:0], si, half, units))
}

// showSpan prints a range of the run in the unit system in force. One that
// reaches to what does not occur has no upper end.
func (in *inputs) showSpan(p *contract.Property, low, high float64) string {
	return in.showSpanOf(p, max(math.Abs(low), math.Abs(high)), low, high)
}

func (in *inputs) showSpanOf(p *contract.Property, size, low, high float64) string {
	if openFrom(p, high) {
		return in.showTo(p, low, math.Abs(low)/2) + " or more"
	}
	if isMoney(p) {
		return p.Kind.In(in.currency, in.currency).PrintSpan(low, high, in.session.Units)
	}
	if p.Kind == nil {
		return showSpan(p, size, low, high, in.session.Units)
	}
	var buf [128]byte
	return in.texts.keep(p.Shown.AppendSpanOf(buf[:0], size, low, high, in.session.Units))
}

// showBeside prints a range beside its value, or nothing where both of its
// ends print as the value does or differ from it by less than a thousandth.
func (in *inputs) showBeside(p *contract.Property, si, low, high float64) string {
	if high-low < 1e-3*math.Abs(si) {
		return ""
	}
	text := in.showSpanOf(p, si, low, high)
	if text == in.showSpan(p, si, si) {
		return ""
	}
	return text
}

// texts keeps the texts of a sheet one behind the other in a few pieces of
// memory: a sheet has some 150 of them, each a few letters long.
type texts struct{ strings.Builder }

// keep gives what is written in b a place that stays.
func (t *texts) keep(b []byte) string {
	const piece = 1024
	if t.Cap()-t.Len() < len(b) {
		*t = texts{}
		t.Grow(max(piece, len(b)))
	}
	from := t.Len()
	t.Write(b)
	return t.String()[from:]
}

// Money writes an amount in the currency of the run in hand.
func (s *Session) Money(amount float64) string {
	kind, _ := quantity.Lookup("money")
	currency := ""
	if s.inHand != nil {
		currency = s.inHand.currency
	}
	return kind.Print(amount, s.Units, currency, currency)
}
