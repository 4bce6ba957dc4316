package calc

import (
	"fmt"

	"example.org/driveline/marinecalc/internal/calc/verdict"
	"example.org/driveline/marinecalc/rules"
	"example.org/driveline/marinecalc/sheet"
)

// HeldTo is what a limit holds a value of this boat to.
type HeldTo struct {
	SI        float64
	Side      sheet.Side
	Text      string // "at most 20 K"
	Authority string
	Source    string
	Guide     bool
}

// LimitOf is a limit of a calculation as the boat's own sheet has it, the
// maker's figure first, for a calculation that holds other readings to it. Of
// the calculation in hand, and where there is no sheet, it is the row of the
// rules. ok is false where it is not known, or asks for more than the value
// itself.
func (s *Session) LimitOf(calculation, id string) (held HeldTo, ok bool) {
	if s.inHand == nil || s.inHand.Form.ID != calculation {
		if out := s.Earlier(calculation); out != nil {
			if v := out.Sheet.Verdict(id); v != nil {
				if v.BoundSI == nil {
					return HeldTo{}, false
				}
				return HeldTo{*v.BoundSI, v.Side, v.Bound, v.Authority, v.Source, v.Guide}, true
			}
		}
	}
	for _, l := range s.Book.Limits(calculation).All() {
		if l.ID == id {
			return s.heldByRow(&l)
		}
	}
	return HeldTo{}, false
}

// untold tells whether the boat file says nothing of an input.
func (s *Session) untold(input string) bool {
	p := s.Property(input)
	if p == nil {
		return false
	}
	_, _, _, told := s.Boat.Find(p.Boat)
	return !told
}

// word is what the boat file says of an input in words.
func (s *Session) word(input string) (word string, ok bool) {
	p := s.Property(input)
	if p == nil {
		return "", false
	}
	raw, _, _, _ := s.Boat.Find(p.Boat)
	word, ok = raw.(string)
	return word, ok
}

func (s *Session) heldByRow(l *rules.Limit) (HeldTo, bool) {
	known := func(name string) (float64, string, bool) {
		word, ok := s.word(l.Calculation + "/" + name)
		return 0, word, ok && name != l.On
	}
	for name := range l.Valid.Names() {
		_, _, told := known(name)
		if l.Valid.WantsUnknown(name) {
			told = s.untold(l.Calculation + "/" + name)
		}
		if name != l.On && !told {
			return HeldTo{}, false
		}
	}
	for range l.Valid.Misses(known) {
		return HeldTo{}, false
	}
	p := s.Property(l.Calculation + "/" + l.On)
	bound := &l.Max
	if verdict.SideOf(l) == sheet.AtLeast {
		bound = &l.Min
	}
	if p == nil || bound.Of != "" {
		return HeldTo{}, false
	}
	written := bound.Text
	held := HeldTo{bound.SI, verdict.SideOf(l), "", l.Basis.Authority(), l.Source.String(), l.Basis.Guides()}
	if p.Kind != nil && bound.Kind != nil && !bound.Kind.Is(p.Kind) {
		if r, err := p.Kind.Parse(bound.Text); err == nil {
			held.SI = r.SI
		}
	}
	if fig, has := s.Boat.FigureOf(l.ID); has {
		si, fault := verdict.FigureFor(l, p, fig)
		if fault != nil {
			return HeldTo{}, false
		}
		written = fmt.Sprint(fig.Value)
		held.SI, held.Authority, held.Source, held.Guide = si, rules.ByMaker.Authority(), fig.Source, false
	}
	held.Text = string(held.Side) + " " + verdict.ShowBound(p, held.SI, written, s.Units)
	return held, true
}
