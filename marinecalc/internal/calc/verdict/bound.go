package verdict

import (
	"math"
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
// figure that is not known.
func (r *Judgement) boundText(h *held, limit spread.Limit, known bool) string {
	if h.shown != "" {
		return h.shown
	}
	l, p := h.Limit, h.on
	side := string(SideOf(l)) + " "
	bound, si := boundOf(l), limit.Max
	if SideOf(l) == sheet.AtLeast {
		si = limit.Min
	}
	switch {
	case !known:
		return side + "a figure that is not known"
	case p == nil:
		return side + bound.Text
	}
	if low, high, about := r.about(h); about {
		return side + p.Shown.PrintFigures(low, mostConverted, r.In.Request.Units) + " to " + p.Shown.PrintFigures(high, mostConverted, r.In.Request.Units)
	}
	return side + r.showBound(p, bound, si)
}

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
// another unit converted to three, 4 thou as 0.102 mm and not as 0.1016 mm.
func (r *Judgement) showBound(p *contract.Property, bound *rules.Bound, si float64) string {
	written, byRow := bound.Text, false
	if bound.Of != "" {
		if m := r.Result(bound.Of); m != nil {
			if m.Half() > 0 {
				return r.In.ShowTo(p, si, m.Half())
			}
			return r.In.ShowTo(p, si, math.Abs(si)/10)
		}
		if k := r.In.At(bound.Of); k != nil {
			written, _ = k.Raw.(string)
			byRow = k.Raw == nil
		}
	}
	text := r.In.Show(p, si)
	if !tooFine(text) || inputs.IsMoney(p) || asWritten(p, text, written) && !byRow {
		return text
	}
	return p.Shown.PrintFigures(si, mostConverted, r.In.Request.Units)
}

// mostConverted is how many figures a bound has at most that was converted: it
// is no surer than it was written.
const mostConverted = 3

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
	if _, other, both := strings.Cut(unit, "("); both && figuresIn(other) > mostConverted {
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
		text := inputs.Show(p, bound.SI, units)
		if tooFine(text) && !asWritten(p, text, bound.Text) {
			text = p.Shown.PrintFigures(bound.SI, mostConverted, units)
		}
		shown[units] = string(SideOf(l)) + " " + text
	}
	return shown
}
