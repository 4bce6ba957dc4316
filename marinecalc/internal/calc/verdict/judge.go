// Package verdict holds inputs and results against limits. held.go is a limit and what it
// is on, against.go finds those that apply, makers.go what took the place of which;
// judge.go judges, weigh.go says how a value stands, while.go on what else it hangs,
// bracket.go over the whole of what nobody confirmed (corner.go runs the trials at its
// ends), each_way.go by each of two ways
// that disagree; settle.go says what would settle a doubt, sentence.go and bound.go
// what people read.
package verdict

import (
	"math"
	"strings"

	"example.org/driveline/marinecalc/internal/calc/inputs"
	"example.org/driveline/marinecalc/internal/spread"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/rules"
	"example.org/driveline/marinecalc/sheet"
)

// Verdicts holds the results and readings against every limit that applies.
func (r *Judgement) Verdicts() []sheet.Verdict {
	defer r.leaveCorners()
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

// judge holds what a limit is on against it.
func (r *Judgement) judge(h *held, v *sheet.Verdict) {
	l, p := h.Limit, h.on
	v.Limit, v.Title, v.On, v.Authority, v.Source, v.Guide = l.ID, l.Title, l.On, l.Basis.Authority(), l.Source.String(), r.guides(h)
	v.Stops = l.Stops.Len() > 0 && !v.Guide
	limit, behind, ok := r.limit(l, p)
	j, measured := r.value(l.On)
	v.Bound, v.Side = r.boundText(h, limit, ok, j.si, j.low, j.high), SideOf(l)
	if p != nil && p.Kind != nil {
		v.Kind, v.Unit = sheet.Kind(p.Kind.Name), p.Kind.SIUnit()
	}
	if ok {
		v.BoundSI = r.Keep(limit.Max)
		if v.Side == sheet.AtLeast {
			*v.BoundSI = limit.Min
		}
	}
	measured = measured && !r.onlyUsual(l.On)
	if measured && p != nil && len(p.Enum) == 0 && !(l.Chance && j.si == unweighed) { // nobody can mark a chance that is not known
		v.SI = r.Keep(j.si)
	}
	if measured {
		v.Value = j.text
	}
	if !ok || !measured {
		r.nothing(h, v)
		return
	}
	if j.read != nil {
		space := spread.Borrow()
		defer space.Return()
		j.span = r.ownRange(space, j.read)
	}
	j.open = len(behind) > 0
	j.unverified = j.restsOn(behind)
	judgement, doubt, remedy := r.weigh(h, &j, limit, v)
	past := h.Past != nil && h.Past.Meets(r.LookupAny) || h.asRead && spread.Judge(j.si, nil, limit).Word == sheet.Beyond
	if past && h.unread == "" && r.contested(h) == nil {
		judgement.Word, doubt, remedy, v.Awaits, v.Turns = sheet.Beyond, "", "", nil, nil
	}
	met := false // the value, which hangs on a limit that is passed
	if judgement.Word == sheet.Within || judgement.Word == sheet.NearLimit {
		if hangs, passed := r.passedElsewhere(h, h.While); hangs != "" {
			judgement, doubt, v.Over, v.Hangs, met = untold, "OK "+hangs, "", true, passed
		}
	}
	if judgement.Word != sheet.Beyond && h.Each.Len() > 0 {
		if silent := r.unreadEntries(h.Each); silent != "" {
			judgement, doubt, remedy = untold, silent, h.How
			v.Over, v.Awaits, v.Turns, met = "", nil, nil, false
		}
	}
	if judgement.Word == sheet.Within || judgement.Word == sheet.NearLimit {
		if part := r.leftOut(h); part != nil {
			judgement, doubt, remedy, v.Over = untold, part.Part, part.Text, ""
		}
	}
	if h.Void.Len() > 0 {
		if void, _ := r.passedElsewhere(h, h.Void); void != "" {
			judgement, doubt, v.Over, met = untold, "told "+void, "", false
		}
	}
	if v.Word = judgement.Word; v.Guide {
		v.Word = v.Word.ByGuide()
	}
	v.Reads = v.Word.Reads(v.Side)
	if met {
		v.Reads = metItself
	}
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

// metItself is what people read of a value that meets its limit and hangs on
// another that is passed: enough is known of it, and it is no OK yet.
const metItself = "met in itself"

// atTheLimit is what people read of a value that stands at its limit, where its
// gauge leaves open on which side.
const atTheLimit = "at the limit"

// evens is the chance from which on a reading that has reached its limit is as
// good as at it: that of the rate behind a count at the limit is a little under a
// half.
const evens = 0.4

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

// passedElsewhere says on which limit, itself passed, a value hangs that would
// be OK: of another sheet of the boat, as a clamp that the thread does not bear
// holds no coupling, or of this sheet, as a reading that cannot be shows
// nothing. It is "" where there is none. A reading that is none tells nothing of
// being past a limit either. Passed is false where two readings of what that
// limit is on disagree.
func (r *Judgement) passedElsewhere(h *held, limits rules.While) (doubt string, passed bool) {
	for _, at := range limits.All() {
		id, limit, _ := strings.Cut(at, "/")
		if id == r.In.Form.ID {
			if doubt, passed := r.passedHere(limit); doubt != "" {
				return doubt, passed
			}
			continue
		}
		if r.In.Request.Boat == nil {
			continue
		}
		other := r.In.Request.OtherSheet(id)
		if other == nil {
			continue
		}
		if v := other.Sheet.Verdict(limit); v != nil && (v.Word == sheet.Beyond || v.Word == sheet.Beyond.ByGuide()) {
			return putRight(v) + ". See " + problem.MidSentence(other.Sheet.Title), true
		}
	}
	return "", false
}
