package export

import (
	"fmt"
	"hash/fnv"
	"slices"
	"strconv"
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
// alarm. UTF-8, lines folded at 75 octets, CRLF. The error is Problems: another
// sheet, or a plan without a date.
//
// Nothing is kept from one calendar to the next, and yet importing a newer one
// moves its entries and doubles none. The UID of an entry is made of the boat's
// name, the work and the step (with the number of its sitting), and of no date: as a
// UUID, which needs no domain that somebody would have to own (RFC 7986, 5.3).
// SEQUENCE, the count of revisions that has to rise (RFC 5545, 3.8.7.4), is the
// plan's own day in days since 1970-01-01, and DTSTAMP is that day too: a plan
// made again on a later day is the newer revision, and the same plan gives the
// same text. Of two plans of one day none is newer by its numbers (RFC 5546,
// 2.1.5 goes by SEQUENCE, then DTSTAMP); programs then take the one imported
// last. What a newer plan no longer has stays in the calendar.
func Calendar(s *sheet.Sheet) ([]byte, error) {
	if s.Calculation == "service-schedule" {
		return serviceCalendar(s)
	}
	today := s.Input("today")
	schedule := s.Table("schedule")
	if s.Calculation == "work-plan" && today != nil && schedule == nil {
		return nil, problem.List{{Where: "/schedule", What: "this plan has no dates: no work is chosen, or it lacks windows or hours", Allowed: "work, and windows in which it can be done", Hint: "see on the sheet what it lacks"}}.Err()
	}
	if s.Calculation != "work-plan" || today == nil || schedule == nil {
		return nil, problem.List{{Where: "/calculation", What: s.Title + " holds no dates", Allowed: "work-plan, service-schedule", Hint: "ask for the calendar of a work plan or of a service schedule"}}.Err()
	}
	c := newCalendar(s, today.Word)
	if s.Cell("work", 0, "work") != nil {
		c.work = s.Cell("work", 0, "work").Text
	}
	c.steps(s, schedule)
	if run := s.Result("liftedOn"); run != nil {
		c.allDay("lift|"+c.work, "Run to the haul-out, before anything is opened", run.Text, s.Result("haulOut").Text, "-P1D")
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
	words, work := map[string]string{}, map[string]string{}
	for _, r := range schedule.Rows {
		at := schedule.Reader(r)
		work[at("step")], _, _ = strings.Cut(at("for"), "; ")
		critical := ""
		if at("critical") == "yes" {
			critical = "Critical: a delay puts off the end.\n"
		}
		words[at("step")] = fmt.Sprintf("%s, %s, %s.\n%s%s%s", at("phase"), at("hours"), at("place"), critical, dangersOf(s, at("step")), strings.TrimSpace(at("once")+" "+at("how")))
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
			c.timed(fmt.Sprintf("step|%s|%s|%d", work[step], step, done[step]), summary, at("date"), at("from"), at("to"), words[step], alarms)
		}
	}
	for _, r := range schedule.Rows {
		if at := schedule.Reader(r); at("start") != "" && at("waits") != "" { // a re-check
			c.allDay("due|"+work[at("step")]+"|"+at("step"), "Due: "+at("step"), at("start"), at("waits")+"\n"+words[at("step")], "PT9H")
		}
	}
}

func (c *calendarText) orders(shopping *sheet.Table) {
	for _, r := range shopping.Rows {
		at := shopping.Reader(r)
		if day.Valid(at("orderBy")) { // not on board, nor without a date
			c.allDay("order|"+c.work+"|"+at("part"), "Order: "+at("part"), at("orderBy"), fmt.Sprintf("%s. %s\nNeeded on %s.", at("amount"), at("size"), at("neededOn")), "PT9H")
		}
		if by := at("returnBy"); by != "" {
			c.allDay("back|"+c.work+"|"+at("part"), "Old unit back: "+at("part"), by, "The deposit is paid back when it comes in.", "-P3D")
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
	b        strings.Builder
	boat     string // whose dates they are
	work     string // what the plan as a whole is for: its first piece of work
	stamp    string
	sequence int
	count    int
}

// newCalendar begins the calendar of a sheet that was made on a day.
func newCalendar(s *sheet.Sheet, today string) *calendarText {
	n, _ := day.Parse(today) // read by the sheet
	c := &calendarText{boat: s.Made.Boat, stamp: icalDay(today) + "T000000Z", sequence: max(0, n)}
	c.line("BEGIN", "VCALENDAR")
	c.line("VERSION", "2.0")
	c.line("PRODID", "-//marinecalc//"+calc.Version+"//EN")
	c.line("CALSCALE", "GREGORIAN")
	return c
}

// allDay writes an event of one day; its end is the day after (RFC 5545,
// 3.6.1: DTEND is not itself included). Its alarm counts from its midnight.
func (c *calendarText) allDay(what, summary, date, description, alarm string) {
	end, _ := day.Parse(date) // written by the plan
	c.begin(what)
	c.line("DTSTART;VALUE=DATE", icalDay(date))
	c.line("DTEND;VALUE=DATE", icalDay(day.Text(end+1)))
	c.finish(summary, description, []string{alarm})
}

// timed writes an event of some hours of a day, by the clock where the boat
// lies (RFC 5545, 3.3.5, form 1: local time).
func (c *calendarText) timed(what, summary, date, from, to, description string, alarms []string) {
	end := icalDay(date)
	if to == "24:00" {
		next, _ := day.Parse(date) // written by the plan
		end, to = icalDay(day.Text(next+1)), "00:00"
	}
	c.begin(what)
	c.line("DTSTART", icalDay(date)+icalTime(from))
	c.line("DTEND", end+icalTime(to))
	c.finish(summary, description, alarms)
}

// begin begins an event. what is the same in every calendar of the boat that
// has it, whatever its date.
func (c *calendarText) begin(what string) {
	c.count++
	c.line("BEGIN", "VEVENT")
	c.line("UID", uuidOf("marinecalc|"+c.boat+"|"+what))
	c.line("SEQUENCE", strconv.Itoa(c.sequence))
	c.line("DTSTAMP", c.stamp)
}

// uuidOf is the UUID of a name, of version 8 (RFC 9562, 5.8): the same for the same
// name, wherever and whenever it is made.
func uuidOf(name string) string {
	hash := fnv.New128a()
	hash.Write([]byte(name)) // never fails
	id := hash.Sum(nil)
	id[6] = 8<<4 | id[6]&0x0f
	id[8] = 0b10<<6 | id[8]&0x3f
	return fmt.Sprintf("%x-%x-%x-%x-%x", id[:4], id[4:6], id[6:8], id[8:10], id[10:])
}

// finish writes what an event is and its alarms (RFC 5545, 3.6.6).
func (c *calendarText) finish(summary, description string, alarms []string) {
	if c.boat != "" {
		summary = c.boat + ": " + summary
	}
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
