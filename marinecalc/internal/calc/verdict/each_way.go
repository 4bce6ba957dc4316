package verdict

import (
	"example.org/driveline/marinecalc/internal/calc/conflict"
	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/internal/spread"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/sheet"
)

// One more figure that does not agree makes nothing milder: a limit that is
// missed by each of the ways that disagree is missed.

// missedWithout tells whether a limit is missed by the way that is left when
// others are taken as not given.
func (r *Judgement) missedWithout(h *held, limit spread.Limit, before []*contract.Property) bool {
	r.leaveCorners() // they tell of what is given
	putBack := r.TakenAway(before)
	for _, p := range before {
		r.absent = append(r.absent, r.Field(p))
	}
	defer func() {
		putBack()
		r.absent = r.absent[:0]
		r.leaveCorners()
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
