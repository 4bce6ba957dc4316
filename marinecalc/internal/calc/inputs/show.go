package inputs

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/quantity"
)

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

// IsMoney tells whether a property is an amount of money.
func IsMoney(p *contract.Property) bool { return p.Kind != nil && p.Kind.Name == "money" }

// Show prints a value of the run in the unit system in force.
func (in *Inputs) Show(p *contract.Property, si float64) string {
	return in.ShowIn(p, si, in.Request.Units)
}

// ShowIn prints a value of the run in a unit system, money in its currency.
func (in *Inputs) ShowIn(p *contract.Property, si float64, units quantity.System) string {
	return in.ShowToIn(p, si, 0, units)
}

// ShowBare prints a result without a range: a probability in whole per cent,
// what comes of loads and strengths to three digits, since nobody knows them
// better, and a length as far as a gauge reads. What is set or paid keeps its digits.
func (in *Inputs) ShowBare(p *contract.Property, si float64) string {
	switch {
	case p.Probability && si != 0:
		return Percent(si)
	case p.Kind != nil && p.Kind.Name == "length" && (p.Setting || math.Abs(si) >= leastSet):
		half := leastSet
		if p.Setting {
			half *= 20
		}
		return in.ShowTo(p, si, half)
	case p.Kind != nil && threeDigits[p.Kind.Name]:
		var buf [96]byte
		return in.Texts.Keep(p.Shown.AppendFigures(buf[:0], si, 3, in.Request.Units))
	}
	return in.Show(p, si)
}

// leastSet is the least length that a gauge reads and a hand sets, to which what is
// to be set is shown: a hundredth of a millimetre on a dial.
const leastSet = 1e-5 // m

// threeDigits are the kinds of what comes of loads and strengths.
var threeDigits = map[string]bool{"ratio": true, "mass": true, "force": true, "torque": true, "energy": true, "power": true, "pressure": true,
	"stress": true, "stiffness": true, "angular-stiffness": true, "inertia": true, "frequency": true, "volume-flow": true, "velocity": true, "time": true, "area": true}

// ShowTo prints a value of the run to the digits that an accuracy of ± half
// leaves it.
func (in *Inputs) ShowTo(p *contract.Property, si, half float64) string {
	return in.ShowToIn(p, si, half, in.Request.Units)
}

func (in *Inputs) ShowToIn(p *contract.Property, si, half float64, units quantity.System) string {
	switch {
	case p.Kind == nil:
		return Show(p, si, units)
	case IsMoney(p):
		return p.Kind.In(in.Currency, in.Currency).PrintTo(si, half, units)
	}
	var buf [96]byte
	return in.Texts.Keep(p.Shown.AppendTo(buf[:0], si, half, units))
}

// ShowSpan prints a range of the run in the unit system in force. One that
// reaches to what does not occur has no upper end.
func (in *Inputs) ShowSpan(p *contract.Property, low, high float64) string {
	return in.showSpanOf(p, max(math.Abs(low), math.Abs(high)), low, high)
}

// ShowBracket prints a bracket: where its ends are so far apart that the digits
// of the greater leave nothing of the less, each by itself.
func (in *Inputs) ShowBracket(p *contract.Property, low, high float64) string {
	const apart = 10
	if low > 0 && high > apart*low && !OpenFrom(p, high) && !IsMoney(p) {
		return in.ShowTo(p, low, low/9) + " to " + in.ShowTo(p, high, high/9)
	}
	return in.ShowSpan(p, low, high)
}

func (in *Inputs) showSpanOf(p *contract.Property, size, low, high float64) string {
	if OpenFrom(p, high) {
		return in.ShowTo(p, low, math.Abs(low)/2) + " or more"
	}
	if IsMoney(p) {
		return p.Kind.In(in.Currency, in.Currency).PrintSpan(low, high, in.Request.Units)
	}
	if p.Kind == nil {
		return showSpan(p, size, low, high, in.Request.Units)
	}
	var buf [128]byte
	return in.Texts.Keep(p.Shown.AppendSpanOf(buf[:0], size, low, high, in.Request.Units))
}

// ShowBeside prints a range beside its value, or nothing where both of its
// ends print as the value does or differ from it by less than a thousandth.
func (in *Inputs) ShowBeside(p *contract.Property, si, low, high float64) string {
	if high-low < 1e-3*math.Abs(si) {
		return ""
	}
	text := in.showSpanOf(p, si, low, high)
	if text == in.ShowSpan(p, si, si) {
		return ""
	}
	return text
}

// texts keeps the texts of a sheet one behind the other in a few pieces of
// memory: a sheet has some 150 of them, each a few letters long.
type texts struct{ strings.Builder }

// Keep gives what is written in b a place that stays.
func (t *texts) Keep(b []byte) string {
	const piece = 1024
	if t.Cap()-t.Len() < len(b) {
		*t = texts{}
		t.Grow(max(piece, len(b)))
	}
	from := t.Len()
	t.Write(b)
	return t.String()[from:]
}

// Percent writes a probability, with a decimal where it is near a certainty,
// and none as one.
func Percent(p float64) string {
	switch {
	case p < 0.01:
		return "less than 1 %"
	case p > 0.99:
		return "more than 99 %"
	case p < 0.1 || p > 0.9:
		return fmt.Sprintf("%.1f %%", 100*p)
	}
	return fmt.Sprintf("%.0f %%", 100*p)
}

// NeverComes tells whether a result stands for what does not come.
func NeverComes(p *contract.Property, si float64) bool {
	return p.InfiniteFrom != nil && si >= *p.InfiniteFrom
}

// OpenFrom tells whether a result is not followed that far, or stands for what
// does not come: a range that reaches there has no end.
func OpenFrom(p *contract.Property, si float64) bool {
	return p.FollowedTo != nil && si >= *p.FollowedTo || NeverComes(p, si)
}
