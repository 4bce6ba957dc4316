package calc

import (
	"slices"
	"strings"

	"example.org/driveline/marinecalc/internal/binding"
	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/rules"
	"example.org/driveline/marinecalc/sheet"
)

// Withheld says why the sheet that gives an input gives none although it was
// worked out: how things are there, which no reading here mends. It is ""
// where the sheet gives it, or lacks inputs itself.
func (s *Session) Withheld(p *contract.Property) string {
	title, state := s.stateBehind(p, func(v *sheet.Verdict) bool { return v.Moot })
	if state == "" {
		return ""
	}
	return title + ": " + state
}

// noneBecause says likewise what stands in the way there, be it to put right or to
// tell; "" where that sheet itself only lacks readings.
func (s *Session) noneBecause(p *contract.Property) string {
	title, state := s.stateBehind(p, func(*sheet.Verdict) bool { return true })
	if state == "" {
		return ""
	}
	return title + ": " + state
}

// stateBehind is the title of the sheet that should give an input and gives none, and
// the state of a verdict there that rests on the same. A limit of several states tells
// of a result only where it rests on all that the result does.
func (s *Session) stateBehind(p *contract.Property, counts func(*sheet.Verdict) bool) (title, state string) {
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
		for _, l := range s.Book.Limits(id).All() {
			if v := out.Sheet.Verdict(l.ID); v != nil && v.State != "" && counts(v) && tells(form, &l, result) {
				return out.Sheet.Title, v.State
			}
		}
	}
	return "", ""
}

// tells tells whether the state of a limit is that of a result.
func tells(form *binding.Form, l *rules.Limit, result string) bool {
	rests := form.Formulas.Rests(result)
	on := form.Formulas.Rests(l.On)
	shared := func(name string) bool { return form.Input.Child(name) != nil && slices.Contains(on, name) }
	if l.StatesAlike() {
		return slices.ContainsFunc(rests, shared)
	}
	return !slices.ContainsFunc(rests, func(name string) bool { return form.Input.Child(name) != nil && !slices.Contains(on, name) })
}
