package verdict

import (
	"math"
	"slices"

	"example.org/driveline/marinecalc/internal/calc/conflict"
	"example.org/driveline/marinecalc/internal/calc/inputs"
	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/internal/spread"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/rules"
	"example.org/driveline/marinecalc/sheet"
)

// Judgement is a run held against its limits.
type Judgement struct {
	conflict.Finder
	Ruled    *ruled
	room     *Buffer
	limits   []held
	absent   []*float64        // what trials leave as it is, see missedWithout
	measured []spread.Measured // see measurables
	gauges   [][]string
}

// Buffer is the memory for the verdicts of a run.
type Buffer struct {
	limits  []held
	figures []figure        // behind a verdict
	factors []spread.Factor // of the trials at one end of a bracket
	places  []*float64
	corners []*corner // at which trials were run
}

// Clear makes the memory ready for the next run.
func (b *Buffer) Clear() { b.limits = b.limits[:0] }

// held is a limit that applies, with what the run holds against it.
type held struct {
	*rules.Limit
	on     *contract.Property // what it is on; nil where the rules name what there is not
	value  *float64           // where the trials leave its value; nil for what they do not move
	bound  *float64           // the same of a limit that is another input or result
	margin float64            // how far the value is from it, below nothing where it is not met
	span   *spread.Range      // of the margin, where the bound moves with the value
	was    *rules.Limit       // the one that this takes the place of, or nil
	unread string             // why the maker's figure for it cannot be read
	asRead bool               // a reading past it is past it, wide as its gauge may be
	shown  string             // what the limit is, where its row alone says so
	told   *sheet.Verdict     // once it was judged, which may be for one that hangs on it
}

// boundOf is the input or result that the limit is, or "".
func (h *held) boundOf() string { return boundOf(h.Limit).Of }

// boundOf is the side on which a limit's row has its bound.
func boundOf(l *rules.Limit) *rules.Bound {
	if l.Min.Given() {
		return &l.Min
	}
	return &l.Max
}

// move works the margin out anew, from what the run has left in its places. A
// bound that is met to the last digit is met (see spread.Judge).
func (h *held) move(limit spread.Limit) float64 {
	value, low, high := *h.value, limit.Min, limit.Max
	if h.bound != nil && math.IsNaN(low) {
		high = *h.bound
	} else if h.bound != nil {
		low = *h.bound
	}
	h.margin = high - value
	if math.IsNaN(high) {
		h.margin = value - low
		high = low
	}
	h.margin += 1e-9 * math.Abs(high)
	return h.margin
}

// SideOf is the side on which a limit's row bounds its value.
func SideOf(l *rules.Limit) sheet.Side {
	if l.Min.Given() {
		return sheet.AtLeast
	}
	return sheet.AtMost
}

// guides tells whether nothing is over the limit: by its authority, or because
// the figure that it holds a value against is nobody's own but only usual.
func (r *Judgement) guides(h *held) bool {
	if h.Basis.Guides() {
		return true
	}
	if h.Basis != rules.AsEntered || h.boundOf() == "" {
		return false
	}
	k := r.In.At(h.boundOf())
	return k != nil && k.OnlyUsual()
}

// judged is the value that a limit is on, as it is judged.
type judged struct {
	si, low, high float64 // low and high are its 95 % interval
	text          string
	span          *spread.Range
	read          *inputs.Known // an input, whose trials are run where it is judged
	unverified    []*contract.Property
	number        bool // a number of the typed function, which trials may move
	open          bool // what it is held against is unverified itself
}

// restsOn are the unverified figures behind a value, and those behind its limit.
func (j *judged) restsOn(behind []*contract.Property) []*contract.Property {
	list := j.unverified
	for _, p := range behind {
		if !slices.Contains(list, p) {
			list = append(slices.Clip(list), p)
		}
	}
	return list
}

// value finds what a limit is on: a result, or an input with its own accuracy.
func (r *Judgement) value(on string) (judged, bool) {
	input, result := r.In.Form.Named(on)
	if m := r.Of(result); m != nil {
		j := judged{si: m.Si, low: m.Si, high: m.Si, text: m.Text, span: m.Span, unverified: m.Unverified, number: m.Number != nil}
		if m.Span != nil && m.Span.Usable {
			j.low, j.high = m.Low, m.High
		}
		return j, true
	}
	if input == nil {
		return judged{}, false
	}
	if k := &r.In.Values[input.Index]; k.Known {
		j := judged{si: k.Si, low: k.Factor.Low, high: k.Factor.High, text: k.Text, read: k}
		if half := (j.high - j.low) / 2; half > 0 && input.Kind != nil && !math.IsInf(half, 0) { // converted from what was typed it has no more digits
			if text := r.In.ShowTo(input, k.Si, half); len(text) < len(j.text) {
				j.text = text
			}
		}
		if !k.Confirmed {
			j.unverified = []*contract.Property{input}
		}
		return j, true
	}
	return judged{}, false
}

// onlyUsual tells whether a limit is on an input that nobody read on this boat:
// what is usual of others is a bracket for what follows from it, and no reading.
func (r *Judgement) onlyUsual(on string) bool {
	input, result := r.In.Form.Named(on)
	return r.Of(result) == nil && input != nil && r.In.Values[input.Index].OnlyUsual()
}

// ownRange is the range of an input that is judged as it was read, in a workspace.
func (r *Judgement) ownRange(space *spread.Workspace, k *inputs.Known) *spread.Range {
	if k.Factor.Shape == spread.Exact || r.In.Request.Trials == 0 {
		return nil
	}
	out, err := space.Propagate([]spread.Factor{k.Factor}, 1,
		spread.Plan{Trials: r.In.Request.Trials, Seed: r.In.Request.Seed},
		func(x, y []float64) bool { y[0] = x[0]; return true })
	if err != nil {
		return &spread.Range{} // not usable
	}
	return &out.Results[0]
}

// usualSea is what the share of a temperature's limit is counted from where the
// sea's is not known: 15 °C (common practice, no source).
const usualSea = 288.15

// limit turns a limit's row into numbers. behind are the unverified figures that
// the limit itself rests on.
func (r *Judgement) limit(l *rules.Limit, p *contract.Property) (limit spread.Limit, behind []*contract.Property, ok bool) {
	limit = spread.Limit{Max: math.NaN(), Min: math.NaN(), Near: l.Near}
	bound := boundOf(l)
	si := bound.SI
	if p != nil && p.Kind != nil && bound.Kind != nil && !bound.Kind.Is(p.Kind) {
		if r, err := p.Kind.Parse(bound.Text); err == nil {
			si = r.SI // the unit alone would take 20 °C for a temperature where a difference is meant
		}
	}
	if bound.Of != "" {
		of, known := r.value(bound.Of)
		if !known || math.IsNaN(of.si) {
			return limit, nil, false
		}
		si, behind = of.si, of.unverified
	}
	if l.Min.Given() {
		limit.Min = si
	} else {
		limit.Max = si
	}
	if p != nil && p.Kind != nil && p.Kind.Name == quantity.KindTemperature {
		limit.Zero = usualSea
		if sea, known := r.value("waterTemperature"); known && !math.IsNaN(sea.si) {
			limit.Zero = sea.si
		}
	}
	if limit.Scale = l.Scale.SI; l.Scale.Of != "" {
		if of, known := r.value(l.Scale.Of); known {
			limit.Scale = of.si
		}
	}
	return limit, behind, true
}

// contested is what stands between a limit and its verdict: its value, or the
// figure that it is, is another by another way.
func (r *Judgement) contested(h *held) *conflict.Twice {
	for i := range r.Twice {
		if t := &r.Twice[i]; r.concerns(t, h) {
			return t
		}
	}
	return nil
}

// untold is of a value that may be right and shows nothing.
var untold = spread.Judgement{Word: sheet.CannotTell, Probability: math.NaN()}

// figure is an unverified number behind a verdict.
type figure struct {
	input     *contract.Property
	to        *float64
	low, high float64
	estimate  float64
	worst     float64 // where in the bracket least of the limit is left, at an end or at the estimate
	best      float64
	swing     float64         // of the margin between the two
	handed    *inputs.Bracket // of an earlier result
}

// concerns tells whether the value of a limit, or the figure that it is, is
// another by the other way.
func (r *Judgement) concerns(t *conflict.Twice, h *held) bool {
	of := h.boundOf()
	return slices.Contains(t.Moved, h.on) || of != "" && slices.Contains(t.Moved, r.Property(of))
}

// ruled is what a book says of one calculation, taken out of it once, so that a
// run need not copy row after row. Nobody changes it.
type ruled struct {
	limits   []ruledLimit
	Advice   []rules.Advice
	Cautions []caution
}

// ruledLimit is a limit, and what it is in each system of units; that is empty
// where the run must say it.
type ruledLimit struct {
	rules.Limit
	shown [3]string
}

// caution is one as it stands on a sheet, and when.
type caution struct {
	sheet.Caution
	Valid rules.Valid
}
