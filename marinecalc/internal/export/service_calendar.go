package export

import (
	"fmt"

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
	c := newCalendar(s, today.Word)
	for _, r := range schedule.Rows {
		at := schedule.Reader(r)
		c.allDay("service|"+at("what"), at("what")+" ("+at("kind")+", "+at("state")+")", max(at("due"), today.Word),
			fmt.Sprintf("%s\nLast: %s. Every %s. Hours left: %s.", at("how"), at("lastDone"), at("every"), orNone(at("hoursLeft"))), "PT9H")
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
