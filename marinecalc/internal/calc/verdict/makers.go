package verdict

import (
	"encoding/json"
	"fmt"
	"math"
	"slices"

	"example.org/driveline/marinecalc/internal/boat"
	"example.org/driveline/marinecalc/internal/calc/inputs"
	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/rules"
	"example.org/driveline/marinecalc/sheet"
)

// What takes the place of a limit: an overlay's row, and the maker's figure of
// the boat file, which always wins. Neither is lost in silence, and both say
// what they take the place of.

// applying is a limit where its conditions are met, else the one whose place it
// took where those of that one are, or nil.
func (r *Judgement) applying(l *rules.Limit) *rules.Limit {
	for ; l != nil; l = l.Replaced() {
		if l.Valid.Meets(r.LookupAny) {
			return l
		}
	}
	return nil
}

// takeFigure puts a limit into h, with the maker's figure of the boat file
// where there is one.
func (r *Judgement) takeFigure(h *held, l *rules.Limit) {
	h.Limit = l
	if was := l.Replaced(); was != nil {
		h.was = r.applying(was)
	}
	fig, ok := r.In.Request.Boat.FigureOf(l.ID)
	if !ok {
		return
	}
	si, fault := FigureFor(l, r.Property(l.On), fig)
	if fault != nil {
		h.unread = "the maker's figure for it cannot be read: " + fault.What
		return
	}
	own := *l
	if l.Max.Given() {
		own.Max = rules.BoundAt(si)
	} else {
		own.Min = rules.BoundAt(si)
	}
	own.Provenance = rules.Provenance{Source: rules.NewSource(fig.Source, "", ""), Basis: rules.ByMaker}
	h.Limit, h.was = &own, l
}

// FigureFor reads a maker's figure for a limit in SI, or says what is wrong
// with it.
func FigureFor(l *rules.Limit, p *contract.Property, fig boat.Figure) (si float64, fault *problem.Problem) {
	switch {
	case p == nil:
		return 0, &problem.Problem{What: fmt.Sprintf("the limit is on %s, which is not there", l.On)}
	case l.Chance:
		return 0, &problem.Problem{What: "the limit is a probability, for which no maker has a figure"}
	}
	return ReadFigure(p, fig)
}

// ReadFigure reads a maker's figure for an input or a result in SI.
func ReadFigure(p *contract.Property, fig boat.Figure) (si float64, fault *problem.Problem) {
	switch value := fig.Value.(type) {
	case string, json.Number:
		if text, is := value.(string); is && quantity.HasAccuracy(text) {
			return 0, &problem.Problem{What: fmt.Sprintf("%q has a ±, and a limit is one figure", text), Hint: "write the end of it that is the stricter"}
		}
		si, _, err := inputs.Numeric(p, fig.Value)
		if err != nil {
			told := problem.Of(err)[0]
			return 0, &told
		}
		if math.IsNaN(si) || math.IsInf(si, 0) {
			break
		}
		return si, nil
	}
	return 0, &problem.Problem{What: fmt.Sprintf("%v is no figure", fig.Value)}
}

// tellReplaced says in a verdict which limit its own takes the place of.
func (r *Judgement) tellReplaced(h *held, v *sheet.Verdict) {
	if h.was == nil {
		return
	}
	limit, _, ok := r.limit(h.was, h.on)
	text := r.boundText(&held{Limit: h.was, on: h.on}, limit, ok)
	v.Replaced = &sheet.Replaced{Bound: text, Authority: h.was.Basis.Authority(), Source: h.was.Source.String()}
	if ok {
		si := limit.Max
		if SideOf(h.was) == sheet.AtLeast {
			si = limit.Min
		}
		v.Replaced.BoundSI = r.Keep(si)
	}
	backing := sheet.Verdict{Authority: v.Replaced.Authority, Source: v.Replaced.Source}
	v.Sentence += " It takes the place of " + text + " (" + backing.Backing() + ")."
}

// IdleFigures tells of the maker's figures for limits of this calculation that
// do not apply here.
func (r *Judgement) IdleFigures() {
	for i := range r.Ruled.limits {
		l := &r.Ruled.limits[i]
		fig, ok := r.In.Request.Boat.FigureOf(l.ID)
		if !ok || slices.ContainsFunc(r.limits, func(h held) bool { return h.ID == l.ID }) {
			continue
		}
		r.Conflicts = append(r.Conflicts, sheet.Conflict{Code: sheet.FigureIdle, On: l.ID, Title: l.Title,
			Text: fmt.Sprintf("The maker's figure for %s (%v, %s) is not used: that limit does not apply to what is given here.", problem.MidSentence(l.Title), fig.Value, fig.Source)})
	}
}
