package verdict

import (
	"math"
	"slices"
	"strings"

	"example.org/driveline/marinecalc/internal/binding"
	"example.org/driveline/marinecalc/internal/calc/inputs"
	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/internal/spread"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/rules"
	"example.org/driveline/marinecalc/sheet"
)

// boundText says what a limit is: "at most 20 °C". known is false where it is a
// figure that is not known. beside is what is held against it and where that may lie.
func (r *Judgement) boundText(h *held, limit spread.Limit, known bool, beside ...float64) string {
	l, p := h.Limit, h.on
	side := string(SideOf(l)) + " "
	bound, si := boundOf(l), limit.Max
	if SideOf(l) == sheet.AtLeast {
		si = limit.Min
	}
	close := slices.ContainsFunc(beside, func(x float64) bool { return math.Abs(x-si) <= tooClose*math.Abs(si) })
	if h.shown != "" && !close {
		return h.shown
	}
	switch {
	case !known:
		return side + "a figure that is not known"
	case p == nil:
		return side + bound.Text
	}
	if low, high, about := r.about(h); about {
		return side + ofRow(p, low, r.In.Request.Units) + " to " + ofRow(p, high, r.In.Request.Units)
	}
	return side + r.showBound(p, bound, si, close)
}

// tooClose is within what share of a bound a value, or an end of where it may lie,
// is so close to it that the bound keeps the figures it was converted to: rounded off it could seem to lie on
// the other side. Two figures are off by a twentieth at the most.
const tooClose = 0.05

// about is the bracket of a guide that is itself a figure nobody confirmed: where
// workshops disagree, all of what they hold to.
func (r *Judgement) about(h *held) (low, high float64, about bool) {
	k := r.In.At(h.boundOf())
	if k == nil || !r.guides(h) || k.Raw != nil || k.Confirmed || !(k.Factor.High > k.Factor.Low) {
		return 0, 0, false
	}
	return k.Factor.Low, k.Factor.High, true
}

// showBound prints a bound: a result to its own digits, and what was written in
// another unit as it is said in this one, 3 thou as 0.076 mm and not as 0.0762 mm,
// but where a value lies close to it.
func (r *Judgement) showBound(p *contract.Property, bound *rules.Bound, si float64, close bool) string {
	written := bound.Text
	if bound.Of != "" {
		if m := r.Result(bound.Of); m != nil {
			if m.Half() > 0 {
				return r.In.ShowTo(p, si, m.Half())
			}
			return r.In.ShowTo(p, si, math.Abs(si)/10)
		}
		if k := r.In.At(bound.Of); k != nil {
			if written, _ = k.Raw.(string); k.Raw == nil && !close && !inputs.IsMoney(p) {
				return ofRow(p, si, r.In.Request.Units)
			}
		}
	}
	return converted(p, si, written, r.In.Request.Units, close)
}

// mostConverted is how many figures a bound has at most that was converted: it
// is no surer than it was written.
const mostConverted = 3

// converted prints a figure as it was written, and one that was written in another
// unit as it is said in this one.
func converted(p *contract.Property, si float64, written string, units quantity.System, close bool) string {
	text := inputs.Show(p, si, units)
	switch {
	case inputs.IsMoney(p) || asWritten(p, text, written):
		return text
	case !close && p.Kind != nil && units == quantity.Both:
		return ofRow(p, si, units)
	case !close && p.Kind != nil:
		return p.Shown.PrintConverted(si, units)
	case tooFine(text):
		return p.Shown.PrintFigures(si, mostConverted, units)
	}
	return text
}

// ShowBound prints a limit that no value lies close to, which was written in some unit.
func ShowBound(p *contract.Property, si float64, written string, units quantity.System) string {
	return converted(p, si, written, units, false)
}

// ofRow prints a figure of a row of which it is not known in which unit it was
// written there: in the one in which it has fewer figures.
func ofRow(p *contract.Property, si float64, units quantity.System) string {
	if p.Kind == nil {
		return p.Shown.PrintFigures(si, mostConverted, units)
	}
	if units == quantity.Both {
		text, other := ofRow(p, si, quantity.Metric), ofRow(p, si, quantity.US)
		if text == other {
			return text
		}
		return text + " (" + other + ")"
	}
	m, u := figuresIn(p.Shown.PrintFigures(si, allFigures, quantity.Metric)), figuresIn(p.Shown.PrintFigures(si, allFigures, quantity.US))
	if u < m && units == quantity.Metric || m < u && units == quantity.US {
		return p.Shown.PrintConverted(si, units)
	}
	return p.Shown.PrintFigures(si, mostConverted, units)
}

// allFigures are enough to tell in which unit a figure was written.
const allFigures = 6

// tooFine tells whether a number of a text has more figures than that.
func tooFine(text string) bool {
	_, other, _ := strings.Cut(text, "(")
	return figuresIn(text) > mostConverted || figuresIn(other) > mostConverted
}

// figuresIn is how many significant figures the first number of a text has.
func figuresIn(text string) int {
	number, _, _ := strings.Cut(text, " ")
	number = strings.TrimLeft(number, "-0.")
	return len(number) - strings.Count(number, ".")
}

// asWritten tells whether a bound's text has the number that was written, and
// nothing was converted to more figures than it is worth.
func asWritten(p *contract.Property, text, written string) bool {
	number, unit, _ := strings.Cut(text, " ")
	if _, other, both := strings.Cut(unit, "("); both && figuresIn(other) > min(figuresIn(written), mostConverted) {
		return false
	}
	return p.Kind == nil || unit == "" || written == "" || strings.HasPrefix(written, number)
}

// shownByRow is what a limit is in each system of units, where its row alone
// says so.
func shownByRow(k *binding.Form, l *rules.Limit) (shown [3]string) {
	bound := boundOf(l)
	input, p := k.Named(l.On)
	if p == nil {
		p = input
	}
	if p == nil || bound.Of != "" || inputs.IsMoney(p) || bound.Kind != nil && !bound.Kind.Is(p.Kind) {
		return shown
	}
	for _, units := range []quantity.System{quantity.Metric, quantity.US, quantity.Both} {
		shown[units] = string(SideOf(l)) + " " + converted(p, bound.SI, bound.Text, units, false)
	}
	return shown
}
