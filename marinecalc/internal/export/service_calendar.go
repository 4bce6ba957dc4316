package export

import (
	"fmt"
	"hash/fnv"
	"strings"

	"example.org/driveline/marinecalc/internal/calc"
	"example.org/driveline/marinecalc/internal/day"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/sheet"
)

// serviceCalendar writes what a service schedule has a day for: all-day events,
// each with an alarm at nine in the morning. What is overdue, and what nobody
// has looked at, stands on the schedule's own day.
func serviceCalendar(s *sheet.Sheet) ([]byte, error) {
	today, schedule := s.Input("today"), s.Table("schedule")
	if today == nil || schedule == nil {
		return nil, problem.List{{Where: "/calculation", What: s.Title + " holds no dates"}}.Err()
	}
	c := calendarText{stamp: icalDay(today.Word) + "T000000Z"}
	c.line("BEGIN", "VCALENDAR")
	c.line("VERSION", "2.0")
	c.line("PRODID", "-//driveline.example.org//marinecalc "+calc.Version+"//EN")
	c.line("CALSCALE", "GREGORIAN")
	for _, r := range schedule.Rows {
		at := schedule.Reader(r)
		on := max(at("due"), today.Word)
		words := at("what") + " (" + at("kind") + ", " + at("state") + ")"
		id := fnv.New64a()
		fmt.Fprintf(id, "service|%s", at("what")) // the same from schedule to schedule, so that a newer one replaces it
		c.line("BEGIN", "VEVENT")
		c.line("UID", fmt.Sprintf("%016x@driveline.example.org", id.Sum64()))
		c.line("DTSTAMP", c.stamp)
		end, _ := day.Parse(on) // written by the schedule
		c.line("DTSTART;VALUE=DATE", icalDay(on))
		c.line("DTEND;VALUE=DATE", icalDay(day.Text(end+1)))
		c.line("SUMMARY", icalText(words))
		c.line("DESCRIPTION", icalText(strings.TrimSpace(fmt.Sprintf("%s\nLast: %s. Every %s. Hours left: %s.", at("how"), at("lastDone"), at("every"), orNone(at("hoursLeft"))))))
		c.line("TRANSP", "TRANSPARENT")
		c.line("BEGIN", "VALARM")
		c.line("ACTION", "DISPLAY")
		c.line("DESCRIPTION", icalText(words))
		c.line("TRIGGER", "PT9H")
		c.line("END", "VALARM")
		c.line("END", "VEVENT")
	}
	c.line("END", "VCALENDAR")
	return []byte(c.b.String()), nil
}

func orNone(text string) string {
	if text == "" {
		return "not by hours"
	}
	return text
}
