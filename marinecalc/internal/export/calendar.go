package export

import (
	"fmt"
	"hash/fnv"
	"slices"
	"strings"
	"unicode/utf8"

	"example.org/driveline/marinecalc/internal/calc"
	"example.org/driveline/marinecalc/internal/day"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/sheet"
)

// Calendar writes the dated steps and the last days for ordering of a work
// plan's sheet as an iCalendar object (RFC 5545), for the person's own
// calendar: all-day events in UTF-8, lines folded at 75 octets, CRLF. The
// time stamp is the plan's own day, so that the same plan gives the same text.
// The error is Problems: another sheet, or a plan without a date.
func Calendar(s *sheet.Sheet) ([]byte, error) {
	if s.Calculation == "service-schedule" {
		return serviceCalendar(s)
	}
	today := s.Input("today")
	schedule := s.Table("schedule")
	if s.Calculation != "work-plan" || today == nil || schedule == nil {
		return nil, problem.List{{Where: "/calculation", What: s.Title + " holds no dates", Allowed: "work-plan, service-schedule", Hint: "ask for the calendar of a work plan or of a service schedule"}}.Err()
	}
	c := calendarText{stamp: icalDay(today.Word) + "T000000Z"}
	c.line("BEGIN", "VCALENDAR")
	c.line("VERSION", "2.0")
	c.line("PRODID", "-//driveline.example.org//marinecalc "+calc.Version+"//EN")
	c.line("CALSCALE", "GREGORIAN")
	events := 0
	for _, r := range schedule.Rows {
		at := schedule.Reader(r)
		if at("start") == "" {
			continue
		}
		events++
		critical := ""
		if at("critical") == "yes" {
			critical = "Critical: a delay puts off the end.\n"
		}
		c.event(at("step"), at("start"), at("end"), fmt.Sprintf("%s, %s.\n%s%s%s", at("hours"), at("place"), critical, dangersOf(s, at("step")), at("how")))
	}
	if shopping := s.Table("shopping"); shopping != nil {
		for _, r := range shopping.Rows {
			at := shopping.Reader(r)
			if _, err := day.Parse(at("orderBy")); err != nil {
				continue // on board, or without a date
			}
			events++
			c.event("Order: "+at("part"), at("orderBy"), at("orderBy"), fmt.Sprintf("%s. %s\nNeeded on %s.", at("amount"), at("size"), at("neededOn")))
		}
	}
	if events == 0 {
		return nil, problem.List{{Where: "/windows", What: "no step of this plan has a date", Allowed: "windows in which the work can be done", Hint: "see what stands in the way on the sheet"}}.Err()
	}
	c.line("END", "VCALENDAR")
	return []byte(c.b.String()), nil
}

// dangersOf writes what can hurt in a step, a line each.
func dangersOf(s *sheet.Sheet, step string) string {
	dangers := s.Table("dangers")
	if dangers == nil {
		return ""
	}
	words := ""
	for _, r := range dangers.Rows {
		at := dangers.Reader(r)
		if slices.Contains(strings.Split(at("atSteps"), "; "), step) {
			words += at("signal") + ": " + at("text") + "\n"
		}
	}
	return words
}

// calendarText is an iCalendar object under way.
type calendarText struct {
	b     strings.Builder
	stamp string
	count int
}

// event writes one all-day event; its end is the day after the last one
// (RFC 5545, 3.6.1: DTEND is not itself included).
func (c *calendarText) event(summary, first, last, description string) {
	c.count++
	end, _ := day.Parse(last) // written by the plan
	id := fnv.New64a()
	fmt.Fprintf(id, "%s|%s|%s|%d", c.stamp, summary, first, c.count)
	c.line("BEGIN", "VEVENT")
	c.line("UID", fmt.Sprintf("%016x@driveline.example.org", id.Sum64()))
	c.line("DTSTAMP", c.stamp)
	c.line("DTSTART;VALUE=DATE", icalDay(first))
	c.line("DTEND;VALUE=DATE", icalDay(day.Text(end+1)))
	c.line("SUMMARY", icalText(summary))
	c.line("DESCRIPTION", icalText(strings.TrimSpace(description)))
	c.line("TRANSP", "TRANSPARENT")
	c.line("END", "VEVENT")
}

// icalDay writes a date as a DATE (RFC 5545, 3.3.4).
func icalDay(date string) string { return strings.ReplaceAll(date, "-", "") }

// icalText escapes a TEXT (RFC 5545, 3.3.11).
func icalText(s string) string {
	return strings.NewReplacer(`\`, `\\`, ";", `\;`, ",", `\,`, "\r\n", `\n`, "\n", `\n`, "\r", `\n`).Replace(s)
}

// line writes a content line, folded so that no line is longer than 75 octets
// and no letter is cut in two (RFC 5545, 3.1).
func (c *calendarText) line(name, value string) {
	const most = 75
	text := name + ":" + value
	room := most
	for len(text) > room {
		cut := room
		for !utf8.RuneStart(text[cut]) {
			cut--
		}
		c.b.WriteString(text[:cut] + "\r\n ")
		text, room = text[cut:], most-1
	}
	c.b.WriteString(text + "\r\n")
}
