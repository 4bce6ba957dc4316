// Package verdict holds inputs and results against limits. held.go finds the
// limits that apply, makers.go what took the place of which; judge.go judges,
// bracket.go over the whole of what nobody confirmed, each_way.go by each of two ways
// that disagree; settle.go says what would settle a doubt, sentence.go and bound.go
// what people read.
package verdict

import (
	"math"
	"slices"

	"example.org/driveline/marinecalc/internal/calc/inputs"
	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/internal/spread"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/rules"
	"example.org/driveline/marinecalc/sheet"
)

// Verdicts holds the results and readings against every limit that applies.
func (r *Judgement) Verdicts() []sheet.Verdict {
	out := make([]sheet.Verdict, len(r.limits))
	for i := range r.limits {
		if h := &r.limits[i]; h.told != nil {
			out[i] = *h.told
		} else {
			r.judge(h, &out[i])
			h.told = &out[i]
		}
	}
	mostUrgentFirst(out)
	return out
}

// mostUrgentFirst sorts verdicts by their words, and what is past a limit that keeps the
// shaft still before what is past another, so that its advice leads; those alike stay in
// their order.
func mostUrgentFirst(list []sheet.Verdict) {
	rank := func(v *sheet.Verdict) int {
		if v.Stops && v.Word == sheet.Beyond {
			return 2*v.Word.Rank() - 1
		}
		return 2 * v.Word.Rank()
	}
	for i := range list {
		at, own := i, rank(&list[i])
		for at > 0 && rank(&list[at-1]) > own {
			at--
		}
		if at < i {
			v := list[i]
			copy(list[at+1:i+1], list[at:i])
			list[at] = v
		}
	}
}

// judged is the value that a limit is on, as it is judged.
type judged struct {
	si, low, high float64 // low and high are its 95 % interval
	text          string
	span          *spread.Range
	unverified    []*contract.Property
	number        bool // a number of the typed function, which trials may move
	open          bool // what it is held against is unverified itself
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
		j := judged{si: k.Si, low: k.Factor.Low, high: k.Factor.High, text: k.Text, span: r.ownRange(k)}
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

// ownRange is the range of an input that is judged as it was read.
func (r *Judgement) ownRange(k *inputs.Known) *spread.Range {
	if k.Factor.Shape == spread.Exact || r.In.Request.Trials == 0 {
		return nil
	}
	out, err := new(spread.Workspace).Propagate([]spread.Factor{k.Factor}, 1,
		spread.Plan{Trials: r.In.Request.Trials, Seed: r.In.Request.Seed},
		func(x, y []float64) bool { y[0] = x[0]; return true })
	if err != nil {
		return &spread.Range{} // not usable
	}
	return &out.Results[0]
}

// judge holds what a limit is on against it.
func (r *Judgement) judge(h *held, v *sheet.Verdict) {
	l, p := h.Limit, h.on
	v.Limit, v.Title, v.On, v.Authority, v.Source, v.Guide = l.ID, l.Title, l.On, l.Basis.Authority(), l.Source.String(), r.guides(h)
	v.Stops = l.Stops.Len() > 0 && !v.Guide
	limit, behind, ok := r.limit(l, p)
	v.Bound, v.Side = r.boundText(h, limit, ok), SideOf(l)
	if p != nil && p.Kind != nil {
		v.Kind, v.Unit = sheet.Kind(p.Kind.Name), p.Kind.SIUnit()
	}
	if ok {
		v.BoundSI = r.Keep(limit.Max)
		if v.Side == sheet.AtLeast {
			*v.BoundSI = limit.Min
		}
	}
	j, measured := r.value(l.On)
	measured = measured && !r.onlyUsual(l.On)
	if measured && p != nil && len(p.Enum) == 0 {
		v.SI = r.Keep(j.si)
	}
	if measured {
		v.Value = j.text
	}
	if !ok || !measured {
		r.nothing(h, v)
		return
	}
	j.open = len(behind) > 0
	for _, p := range behind {
		if !slices.Contains(j.unverified, p) {
			j.unverified = append(slices.Clip(j.unverified), p)
		}
	}
	judgement, doubt, remedy := r.weigh(h, &j, limit, v)
	if h.Past != nil && h.unread == "" && r.contested(h) == nil && h.Past.Meets(r.LookupAny) {
		judgement.Word, doubt, remedy, v.Awaits, v.Turns = sheet.Beyond, "", "", nil, nil
	}
	if judgement.Word == sheet.Within || judgement.Word == sheet.NearLimit {
		if hangs := r.passedElsewhere(h, h.While); hangs != "" {
			judgement, doubt, v.Over, v.Hangs = untold, "OK "+hangs, "", true
		}
	}
	if judgement.Word != sheet.Beyond && h.Each.Len() > 0 {
		if silent := r.unreadEntries(h.Each); silent != "" {
			judgement, doubt, remedy = untold, silent, h.How
			v.Over, v.Awaits, v.Turns = "", nil, nil
		}
	}
	if judgement.Word == sheet.Within || judgement.Word == sheet.NearLimit {
		if part := r.leftOut(h); part != nil {
			judgement, doubt, remedy, v.Over = untold, part.Part, part.Text, ""
		}
	}
	if h.Void.Len() > 0 {
		if void := r.passedElsewhere(h, h.Void); void != "" {
			judgement, doubt, v.Over = untold, "told "+void, ""
		}
	}
	if v.Word = judgement.Word; v.Guide {
		v.Word = v.Word.ByGuide()
	}
	v.Reads = v.Word.Reads(v.Side)
	if l.Chance && v.Word.Plain() == sheet.Beyond { // the least is of the chance, not of what was read
		v.Reads = "past the limit"
		if judgement.Probability >= evens { // by its gauge it may be either side
			v.Reads = atTheLimit
		}
	}
	if v.Word == sheet.CannotTell && doubt == "" && limit.At(j.si) {
		v.Reads = atTheLimit
	}
	if !math.IsNaN(judgement.Probability) {
		v.Probability = r.Keep(judgement.Probability)
	}
	v.Sentence = r.sentence(h, j, v, limit, doubt, remedy)
	if t := r.contested(h); t != nil && judgement.Word == sheet.Beyond {
		v.Sentence += " " + byEach(t, v)
	}
	r.tellReplaced(h, v)
	if judgement.Word == sheet.CannotTell && doubt == "" && !l.Chance {
		if v.Settle = r.settle(h, j, limit, v); v.Settle != "" && v.SettleBy == nil && l.Finer != "" {
			v.Settle = "To settle it, " + l.Finer
		}
	}
}

// atTheLimit is what people read of a value that stands at its limit, where its
// gauge leaves open on which side.
const atTheLimit = "at the limit"

// evens is the chance from which on a reading that has reached its limit is as
// good as at it: that of the rate behind a count at the limit is a little under a
// half.
const evens = 0.4

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

// Chances words the results that limits on a probability are on.
func (r *Judgement) Chances() {
	for i := range r.limits {
		if m := r.Result(r.limits[i].On); m != nil && r.limits[i].Chance {
			m.Text = inputs.Percent(m.Si)
			if m.Si == unweighed {
				m.Text = "not known"
			}
		}
	}
}
