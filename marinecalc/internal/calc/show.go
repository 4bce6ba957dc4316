package calc

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

// isMoney tells whether a property is an amount of money.
func isMoney(p *contract.Property) bool { return p.Kind != nil && p.Kind.Name == "money" }

// show prints a value of the run in the unit system in force.
func (in *inputs) show(p *contract.Property, si float64) string {
	return in.showIn(p, si, in.request.Units)
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
		return in.texts.keep(p.Shown.AppendFigures(buf[:0], si, 3, in.request.Units))
	}
	return in.show(p, si)
}

// threeDigits are the kinds of what comes of loads and strengths.
var threeDigits = map[string]bool{"ratio": true, "mass": true, "force": true, "torque": true, "energy": true, "power": true, "pressure": true,
	"stress": true, "stiffness": true, "angular-stiffness": true, "inertia": true, "frequency": true, "volume-flow": true, "velocity": true, "time": true, "area": true}

// showTo prints a value of the run to the digits that an accuracy of ± half
// leaves it.
func (in *inputs) showTo(p *contract.Property, si, half float64) string {
	return in.showToIn(p, si, half, in.request.Units)
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
		return p.Kind.In(in.currency, in.currency).PrintSpan(low, high, in.request.Units)
	}
	if p.Kind == nil {
		return showSpan(p, size, low, high, in.request.Units)
	}
	var buf [128]byte
	return in.texts.keep(p.Shown.AppendSpanOf(buf[:0], size, low, high, in.request.Units))
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

// percent writes a probability, with a decimal where it is near a certainty,
// and none as one.
func percent(p float64) string {
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

// neverComes tells whether a result stands for what does not come.
func neverComes(p *contract.Property, si float64) bool {
	return p.InfiniteFrom != nil && si >= *p.InfiniteFrom
}

// openFrom tells whether a result is not followed that far, or stands for what
// does not come: a range that reaches there has no end.
func openFrom(p *contract.Property, si float64) bool {
	return p.FollowedTo != nil && si >= *p.FollowedTo || neverComes(p, si)
}
