// Readings kept with the boat that no sheet takes, held against what limits there are
// for them.

package survey

import (
	"strings"

	"example.org/driveline/marinecalc/internal/boat"
	"example.org/driveline/marinecalc/internal/calc"
	"example.org/driveline/marinecalc/rules"
	"example.org/driveline/marinecalc/sheet"
)

// untaken judges those of a part of the line, or with nil all: as the sea trial does where
// none is as new, and by the limits of sheets that lack other figures, of which those with a
// bound of their own rest on none.
func (s *Survey) untaken(session *calc.Session, part *rules.Row) {
	const trial = "sea-trial"
	if session.Boat == nil {
		return
	}
	ids := []string{trial}
	for i := range s.Missing {
		if id := s.Missing[i].Calculation; id != trial {
			ids = append(ids, id)
		}
	}
	for _, id := range ids {
		limits := session.Book.Limits(id)
		for i := range limits.Len() {
			l := limits.At(i)
			name, is := l.On, id == trial
			if p := session.Property(id + "/" + name); p != nil && !is {
				name, is = strings.CutPrefix(p.Boat, boat.LatestReading)
			}
			raw, _, date, has := session.Boat.Find(boat.LatestReading + name)
			if !is || !has || l.Max.Of != "" || l.Min.Of != "" || id == trial && session.Earlier(id) != nil && session.Boat.TrialRead([]string{name}) >= date {
				continue
			}
			typed := map[string]any{}
			if id == trial {
				typed["runs"] = []any{map[string]any{"stage": "cruise", name: raw}}
			}
			if v := run(session, id, typed).Verdict(l.ID); v != nil && v.Word != sheet.NotMeasured && (part == nil || readOf(part, name)) {
				s.Findings = append(s.Findings, Finding{id, "Read on " + date, *v, name})
			}
		}
	}
	s.mostUrgentFirst()
}

// run runs a calculation with examples for what it lacks.
func run(session *calc.Session, id string, typed map[string]any) *sheet.Sheet {
	c, err := session.Find(id)
	for rounds := 4; err == nil && rounds > 0; rounds-- { // what it lacks may come to light by and by
		out, missing, _ := session.Run(c, typed)
		if out != nil {
			return out.Sheet
		}
		for _, p := range missing {
			typed[p.Name], _ = example(p)
		}
	}
	return nil
}

// readOf tells whether a reading is one of a part.
func readOf(part *rules.Row, reading string) bool {
	head, _, _ := strings.Cut(reading, "/")
	return head != "" && strings.Contains(" "+part.Values.Of("readings").Text+" ", " "+head+" ")
}
