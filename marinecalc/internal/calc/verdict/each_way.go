package verdict

import (
	"slices"

	"example.org/driveline/marinecalc/internal/calc/conflict"
	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/internal/spread"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/sheet"
)

// One more figure that does not agree makes nothing milder: a limit that is
// missed by each of the ways that disagree is missed.

// concerns tells whether the value of a limit, or the figure that it is, is
// another by the other way.
func (r *Judgement) concerns(t *conflict.Twice, h *held) bool {
	of := h.boundOf()
	return slices.Contains(t.Moved, h.on) || of != "" && slices.Contains(t.Moved, r.Property(of))
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

// missedByEach tells whether a limit that is contested is missed by each of the
// ways by itself: by the one that the results go by, with its own trials, and by
// every other with trials of its own and over the brackets of all that nobody
// confirmed. Of ways that cannot be taken one by one, such as a figure that is
// less than it can be, it tells nothing.
func (r *Judgement) missedByEach(h *held, j *judged, limit spread.Limit) (spread.Judgement, bool) {
	if h.value == nil || h.Chance || h.unread != "" {
		return untold, false
	}
	if spread.Judge(j.si, nil, limit).Word != sheet.Beyond { // nor is it then by any trials
		return untold, false
	}
	var aside sheet.Verdict // what it awaits by the first way is not asked
	own, doubt, _ := r.weighAgreed(h, j, limit, &aside)
	if own.Word != sheet.Beyond || doubt != "" {
		return untold, false
	}
	for i := range r.Twice {
		if t := &r.Twice[i]; r.concerns(t, h) && (len(t.Before) == 0 || !r.missedWithout(h, limit, t.Before)) {
			return untold, false
		}
	}
	return own, true
}

// missedWithout tells whether a limit is missed by the way that is left when
// others are taken as not given.
func (r *Judgement) missedWithout(h *held, limit spread.Limit, before []*contract.Property) bool {
	putBack := r.TakenAway(before)
	for _, p := range before {
		r.absent = append(r.absent, r.Field(p))
	}
	defer func() {
		putBack()
		r.absent = r.absent[:0]
		r.Again()
	}()
	var open []*contract.Property
	for i, p := range r.In.Form.Input.Properties {
		k := &r.In.Values[i]
		if low, high := k.Ends(); k.Known && !k.Confirmed && r.Field(p) != nil && low < high {
			open = append(open, p)
		}
	}
	figures, all := r.brackets(open)
	if !all {
		return false
	}
	if len(figures) == 0 {
		told, _ := r.judgeHere(h, limit, nil, bracketTrials)
		return told.Word == sheet.Beyond
	}
	told, _ := r.overBracket(h, limit, figures)
	return told.Word == sheet.Beyond
}

// byEach says of a verdict that it is one although the ways disagree.
func byEach(t *conflict.Twice, v *sheet.Verdict) string {
	return problem.Capital(t.Doubt) + "; by each of them it is " + v.Reads + "."
}
