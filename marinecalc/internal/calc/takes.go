package calc

import (
	"strings"

	"example.org/driveline/marinecalc/rules"
)

// Takes tells whether the boat takes a part at all, by her choices: what is
// bought for one kind of coupling or gland is none for another.
func (s *Session) Takes(part rules.Part) bool {
	return s.allows(part.Only, part.Unless)
}

// StepOn is a step as it stands on this boat, with what its cases say of her
// choices; has is false where it is none of hers.
func (s *Session) StepOn(step rules.Step) (on rules.Step, has bool) {
	var cases []rules.StepCase
	for _, c := range step.Cases.All() {
		if s.allows(c.Only, c.Unless) {
			cases = append(cases, c)
		}
	}
	return step.On(cases), s.allows(rules.OtherThan{}, step.Unless)
}

// NoWork says why a piece of work is none of this boat, by her choices; "" where it
// may be.
func (s *Session) NoWork(r rules.Remedy) string {
	why := CannotBe(s.Book, s.Boat, r)
	if !s.allows(rules.OtherThan{}, r.Unless) {
		why = r.Absent
	}
	if why == "" {
		return ""
	}
	return "“" + r.Title + "” is no work of this boat: " + why
}

// allows tells whether the boat's choices allow what is only for one and not
// for another.
func (s *Session) allows(only, unless rules.OtherThan) bool {
	return (only.Of == "" || s.isOther(only)) && (unless.Of == "" || !s.isOther(unless))
}

// isOther tells whether a choice of the boat is known and is none of the words
// that a row names.
func (s *Session) isOther(w rules.OtherThan) bool {
	id, name, _ := strings.Cut(w.Of, "/")
	word := ""
	if id == faultFinding {
		word = Told(s.Book, s.Boat, name)
	} else if out := s.Earlier(id); out != nil {
		if i := out.Sheet.Input(name); i != nil {
			word = i.Word
		}
	} else if p := s.Property(w.Of); p != nil {
		raw, _, _, _ := s.Boat.Find(p.Boat)
		word, _ = raw.(string)
	}
	return word != "" && !rules.Contains(w.Not, word)
}
