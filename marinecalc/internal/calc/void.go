package calc

import (
	"context"
	"slices"
	"strings"

	"example.org/driveline/marinecalc/internal/boat"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/sheet"
)

// Void says why the newest reading of a name tells nothing: on the sheet that
// takes it, it contradicts another figure, or it cannot be. It is "" where it
// stands, or no sheet takes it.
func (s *Session) Void(reading string) string {
	if s.Boat == nil {
		return ""
	}
	at := boat.LatestReading + reading
	for _, c := range s.Calculations {
		form, err := c.Form()
		if err != nil {
			continue
		}
		for _, p := range form.Input.Properties {
			if p.Boat != at {
				continue
			}
			if out := s.Earlier(c.ID); out != nil && out.Sheet != nil {
				if why := s.voidOn(out.Sheet, p.Name, form.Formulas.Rests); why != "" {
					return why + " See " + problem.MidSentence(out.Sheet.Title) + "."
				}
			}
		}
	}
	return ""
}

// voidOn says why an input of a sheet tells nothing: it is one side of a
// contradiction, or a limit is passed that takes verdicts back which rest on it.
func (s *Session) voidOn(on *sheet.Sheet, input string, rests func(string) []string) string {
	for _, c := range on.Conflicts {
		if slices.ContainsFunc(c.Values, func(v sheet.ConflictValue) bool { return v.Input == input && v.Origin == sheet.FromBoat }) {
			return c.Text
		}
	}
	for _, l := range s.Book.Limits(on.Calculation).All() {
		for _, at := range l.Void.All() {
			id, limit, _ := strings.Cut(at, "/")
			v := on.Verdict(limit)
			if id == on.Calculation && v != nil && v.Word.Plain() == sheet.Beyond && (v.On == input || slices.Contains(rests(v.On), input)) {
				return v.Sentence
			}
		}
	}
	return ""
}

// AsOf is a session on the boat as she was known on a day.
func (s *Session) AsOf(day string) (*Session, error) {
	o := Options{Boat: s.Boat.AsOf(day), Units: s.Units.String(), Trials: s.Trials, NoRanges: s.Trials == 0, Seed: s.Seed, Rules: s.Book, Brief: true}
	then, err := o.Session(context.WithoutCancel(s.Ctx), s.Calculations)
	if err == nil {
		then.Few = s.Few
	}
	return then, err
}
