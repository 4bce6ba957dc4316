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

// Calendar writes a work plan's sheet as an iCalendar object (RFC 5545), for
// the person's own calendar: each step with its hours by the clock, wherever
// the boat lies; the run to the haul-out, the last days for ordering, the day by
// which an old unit goes back and re-checks as all-day events; each with an
// alarm. UTF-8, lines folded at 75 octets, CRLF. The time stamp is the plan's
// own day, so that the same plan gives the same text. The error is Problems:
// another sheet, or a plan without a date.
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
	c.steps(s, schedule)
	if run := s.Result("liftedOn"); run != nil {
		c.allDay("Run to the haul-out, before anything is opened", run.Text, s.Result("haulOut").Text, "-P1D")
	}
	if shopping := s.Table("shopping"); shopping != nil {
		c.orders(shopping)
	}
	if c.count == 0 {
		return nil, problem.List{{Where: "/windows", What: "no step of this plan has a date", Allowed: "windows in which the work can be done", Hint: "see what stands in the way on the sheet"}}.Err()
	}
	c.line("END", "VCALENDAR")
	return []byte(c.b.String()), nil
}

// steps writes each step on each of its days, and each re-check on the day by
// which it is due.
func (c *calendarText) steps(s *sheet.Sheet, schedule *sheet.Table) {
	words := map[string]string{}
	for _, r := range schedule.Rows {
		at := schedule.Reader(r)
		critical := ""
		if at("critical") == "yes" {
			critical = "Critical: a delay puts off the end.\n"
		}
		words[at("step")] = fmt.Sprintf("%s, %s, %s.\n%s%s%s", at("phase"), at("hours"), at("place"), critical, dangersOf(s, at("step")), at("how"))
	}
	opened := ""
	if from := s.Result("openFrom"); from != nil {
		opened = from.Text
	}
	if days := s.Table("dayByDay"); days != nil {
		parts := map[string]int{}
		for _, r := range days.Rows {
			parts[days.Reader(r)("step")]++
		}
		done, day := map[string]int{}, ""
		for _, r := range days.Rows {
			at := days.Reader(r)
			step := at("step")
			done[step]++
			summary := step
			if parts[step] > 1 {
				summary += fmt.Sprintf(" (%d of %d)", done[step], parts[step])
			}
			var alarms []string
			if at("date") != day { // the first of its day
				if day = at("date"); day == opened {
					alarms = append(alarms, "-P1D")
				}
				alarms = append(alarms, "-PT1H")
			}
			c.timed(summary, at("date"), at("from"), at("to"), words[step], alarms)
		}
	}
	for _, r := range schedule.Rows {
		if at := schedule.Reader(r); at("start") != "" && at("waits") != "" { // a re-check
			c.allDay("Due: "+at("step"), at("start"), at("waits")+"\n"+words[at("step")], "PT9H")
		}
	}
}

func (c *calendarText) orders(shopping *sheet.Table) {
	for _, r := range shopping.Rows {
		at := shopping.Reader(r)
		if day.Valid(at("orderBy")) { // not on board, nor without a date
			c.allDay("Order: "+at("part"), at("orderBy"), fmt.Sprintf("%s. %s\nNeeded on %s.", at("amount"), at("size"), at("neededOn")), "PT9H")
		}
		if by := at("returnBy"); by != "" {
			c.allDay("Old unit back: "+at("part"), by, "The deposit is paid back when it comes in.", "-P3D")
		}
	}
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

// allDay writes an event of one day; its end is the day after (RFC 5545,
// 3.6.1: DTEND is not itself included). Its alarm counts from its midnight.
func (c *calendarText) allDay(summary, date, description, alarm string) {
	end, _ := day.Parse(date) // written by the plan
	c.begin(summary, date)
	c.line("DTSTART;VALUE=DATE", icalDay(date))
	c.line("DTEND;VALUE=DATE", icalDay(day.Text(end+1)))
	c.finish(summary, description, []string{alarm})
}

// timed writes an event of some hours of a day, by the clock where the boat
// lies (RFC 5545, 3.3.5, form 1: local time).
func (c *calendarText) timed(summary, date, from, to, description string, alarms []string) {
	end := icalDay(date)
	if to == "24:00" {
		next, _ := day.Parse(date) // written by the plan
		end, to = icalDay(day.Text(next+1)), "00:00"
	}
	c.begin(summary, date+from)
	c.line("DTSTART", icalDay(date)+icalTime(from))
	c.line("DTEND", end+icalTime(to))
	c.finish(summary, description, alarms)
}

func (c *calendarText) begin(summary, at string) {
	c.count++
	id := fnv.New64a()
	fmt.Fprintf(id, "%s|%s|%s|%d", c.stamp, summary, at, c.count)
	c.line("BEGIN", "VEVENT")
	c.line("UID", fmt.Sprintf("%016x@driveline.example.org", id.Sum64()))
	c.line("DTSTAMP", c.stamp)
}

// finish writes what an event is and its alarms (RFC 5545, 3.6.6).
func (c *calendarText) finish(summary, description string, alarms []string) {
	c.line("SUMMARY", icalText(summary))
	c.line("DESCRIPTION", icalText(strings.TrimSpace(description)))
	c.line("TRANSP", "TRANSPARENT")
	for _, before := range alarms {
		c.line("BEGIN", "VALARM")
		c.line("ACTION", "DISPLAY")
		c.line("DESCRIPTION", icalText(summary))
		c.line("TRIGGER", before)
		c.line("END", "VALARM")
	}
	c.line("END", "VEVENT")
}

// icalTime writes hours and minutes as the time of a DATE-TIME.
func icalTime(clock string) string { return "T" + strings.ReplaceAll(clock, ":", "") + "00" }

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
