package marinecalc

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"hash/fnv"
	"slices"
	"strings"
	"unicode/utf8"

	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/sheet"
)

// Calendar writes the dated steps and the last days for ordering of a work
// plan's sheet as an iCalendar object (RFC 5545), for the person's own
// calendar: all-day events in UTF-8, lines folded at 75 octets, CRLF. The
// time stamp is the plan's own day, so that the same plan gives the same text.
// The error is Problems: another sheet, or a plan without a date.
func Calendar(s *Sheet) ([]byte, error) {
	today := s.Input("today")
	schedule := tableOf(s, "schedule")
	if s.Calculation != "work-plan" || today == nil || schedule == nil {
		return nil, Problems{{Where: "/calculation", What: s.Title + " holds no dates", Allowed: "work-plan", Hint: "ask for the calendar of a work plan"}}.Err()
	}
	c := calendarText{stamp: icalDay(today.Word) + "T000000Z"}
	c.line("BEGIN", "VCALENDAR")
	c.line("VERSION", "2.0")
	c.line("PRODID", "-//driveline.example.org//marinecalc "+Version+"//EN")
	c.line("CALSCALE", "GREGORIAN")
	events := 0
	for _, r := range schedule.Rows {
		at := rowReader(schedule, r)
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
	if shopping := tableOf(s, "shopping"); shopping != nil {
		for _, r := range shopping.Rows {
			at := rowReader(shopping, r)
			if _, err := dayNumber(at("orderBy")); err != nil {
				continue // on board, or without a date
			}
			events++
			c.event("Order: "+at("part"), at("orderBy"), at("orderBy"), fmt.Sprintf("%s. %s\nNeeded on %s.", at("amount"), at("size"), at("neededOn")))
		}
	}
	if events == 0 {
		return nil, Problems{{Where: "/windows", What: "no step of this plan has a date", Allowed: "windows in which the work can be done", Hint: "see what stands in the way on the sheet"}}.Err()
	}
	c.line("END", "VCALENDAR")
	return []byte(c.b.String()), nil
}

// dangersOf writes what can hurt in a step, a line each.
func dangersOf(s *Sheet, step string) string {
	dangers := tableOf(s, "dangers")
	if dangers == nil {
		return ""
	}
	words := ""
	for _, r := range dangers.Rows {
		at := rowReader(dangers, r)
		if slices.Contains(strings.Split(at("atSteps"), "; "), step) {
			words += at("signal") + ": " + at("text") + "\n"
		}
	}
	return words
}

// tableOf is the list of results of that name, or nil.
func tableOf(s *Sheet, name string) *Table {
	for i := range s.Tables {
		if s.Tables[i].Name == name {
			return &s.Tables[i]
		}
	}
	return nil
}

// rowReader reads the cells of a row by the names of their columns.
func rowReader(t *Table, r sheet.Row) func(string) string {
	return func(column string) string {
		for i, c := range t.Columns {
			if c.Name == column {
				return r.Cells[i].Text
			}
		}
		return ""
	}
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
	end, _ := dayNumber(last) // written by the plan
	id := fnv.New64a()
	fmt.Fprintf(id, "%s|%s|%s|%d", c.stamp, summary, first, c.count)
	c.line("BEGIN", "VEVENT")
	c.line("UID", fmt.Sprintf("%016x@driveline.example.org", id.Sum64()))
	c.line("DTSTAMP", c.stamp)
	c.line("DTSTART;VALUE=DATE", icalDay(first))
	c.line("DTEND;VALUE=DATE", icalDay(dayText(end+1)))
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

// CSV writes a list of results as comma-separated values with a head line
// (RFC 4180): CRLF, fields quoted where they need it. A text that a
// spreadsheet would take for a formula gets an apostrophe before it.
func CSV(t *Table) []byte {
	var b bytes.Buffer
	w := csv.NewWriter(&b)
	w.UseCRLF = true
	head := make([]string, len(t.Columns))
	for i, c := range t.Columns {
		head[i] = c.Title
	}
	lines := [][]string{head}
	for _, r := range t.Rows {
		fields := make([]string, len(r.Cells))
		for i := range r.Cells {
			fields[i] = noFormula(r.Cells[i].Text)
		}
		lines = append(lines, fields)
	}
	_ = w.WriteAll(lines) // a buffer takes everything
	return b.Bytes()
}

// noFormula sets an apostrophe before what a spreadsheet would reckon.
func noFormula(text string) string {
	if text != "" && strings.ContainsRune("=@", rune(text[0])) {
		return "'" + text
	}
	return text
}

// CSVOf writes the list of results of that name, or the sheet's first one
// where name is empty. The error is Problems: no such list.
func CSVOf(s *Sheet, name string) ([]byte, error) {
	var names []string
	for i := range s.Tables {
		if t := &s.Tables[i]; name == "" || t.Name == name {
			return CSV(t), nil
		}
		names = append(names, s.Tables[i].Name)
	}
	p := problem.Problem{Where: "/table", What: fmt.Sprintf("the sheet %q has no list %q", s.Title, name), Allowed: strings.Join(names, ", ")}
	if len(names) == 0 && len(s.Tables) == 0 {
		p.What, p.Hint = fmt.Sprintf("the sheet %q has no list", s.Title), "ask for a calculation with a list, such as work-plan"
	}
	return nil, Problems{p}.Err()
}
