package calc

import (
	"strings"

	"example.org/driveline/marinecalc/rules"
)

// Takes tells whether the boat takes a part at all, by her choices: what is
// bought for one kind of coupling or gland is none for another.
func (s *Session) Takes(part rules.Part) bool {
	return (part.Only.Of == "" || s.isOther(part.Only)) && (part.Unless.Of == "" || !s.isOther(part.Unless))
}

// isOther tells whether a choice of the boat is known and is none of the words
// that a row names.
func (s *Session) isOther(w rules.OtherThan) bool {
	id, name, _ := strings.Cut(w.Of, "/")
	word := ""
	if out := s.Earlier(id); out != nil {
		if i := out.Sheet.Input(name); i != nil {
			word = i.Word
		}
	} else if p := s.Property(w.Of); p != nil {
		raw, _, _, _ := s.Boat.Find(p.Boat)
		word, _ = raw.(string)
	}
	return word != "" && !rules.Contains(w.Not, word)
}
