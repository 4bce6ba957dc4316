package calc

import (
	"slices"
	"strings"

	"example.org/driveline/marinecalc/internal/contract"
)

// Withheld says why the sheet that gives an input gives none although it was
// worked out: how things are there, which no reading here mends. It is ""
// where the sheet gives it, or lacks inputs itself.
func (s *Session) Withheld(p *contract.Property) string {
	for source := range strings.SplitSeq(p.After, "|") {
		id, result, _ := strings.Cut(source, "/")
		out := s.Earlier(id)
		if out == nil || out.Sheet.Result(result) != nil {
			continue
		}
		c, err := s.Find(id)
		if err != nil {
			continue
		}
		form, err := c.Form()
		if err != nil {
			continue
		}
		rests := form.Formulas.Rests(result)
		shared := func(on string) bool { return form.Input.Child(on) != nil && slices.Contains(rests, on) }
		for _, l := range s.Book.Limits(id).All() {
			v := out.Sheet.Verdict(l.ID)
			if v != nil && v.Moot && l.States.Len() == 1 && slices.ContainsFunc(form.Formulas.Rests(l.On), shared) {
				return out.Sheet.Title + ": " + l.States.At(0).Text
			}
		}
	}
	return ""
}
