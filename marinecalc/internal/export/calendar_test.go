package export_test

import (
	"strings"
	"testing"
	"time"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
	ics "github.com/arran4/golang-ical"
)

// RFC 5545, read by an independent parser: every dated step and every order
// is an all-day event with its own id, and the texts come back whole.
func TestCalendarReadsBack(t *testing.T) {
	s := testboat.Run(t, "work-plan", testboat.SpringWork, marinecalc.Options{NoRanges: true})
	text, err := marinecalc.Calendar(s)
	if err != nil {
		t.Fatal(err)
	}
	lines := strings.Split(string(text), "\r\n")
	for _, l := range lines {
		if len(l) > 75 || strings.ContainsAny(l, "\r\n") {
			t.Errorf("a line of %d octets: %q", len(l), l)
		}
	}
	if lines[len(lines)-1] != "" || strings.Count(string(text), "\n") != strings.Count(string(text), "\r\n") {
		t.Error("not every line ends with CR LF")
	}
	cal, err := ics.ParseCalendar(strings.NewReader(string(text)))
	if err != nil {
		t.Fatal(err)
	}
	start, end := testboat.Column(t, s, "schedule", "step", "start"), testboat.Column(t, s, "schedule", "step", "end")
	how := testboat.Column(t, s, "schedule", "step", "how")
	ids := map[string]bool{}
	orders := 0
	for _, e := range cal.Events() {
		if ids[e.Id()] {
			t.Errorf("the id %s is there twice", e.Id())
		}
		ids[e.Id()] = true
		summary := e.GetProperty(ics.ComponentPropertySummary).Value
		first, err := e.GetAllDayStartAt()
		if err != nil {
			t.Fatal(err)
		}
		after, err := e.GetAllDayEndAt()
		if err != nil {
			t.Fatal(err)
		}
		if stamp, err := e.GetDtStampTime(); err != nil || stamp.Format(time.DateOnly) != "2026-03-02" {
			t.Errorf("stamped %v, %v", stamp, err)
		}
		if strings.HasPrefix(summary, "Order: ") {
			orders++
			continue
		}
		if first.Format(time.DateOnly) != start[summary] || after.AddDate(0, 0, -1).Format(time.DateOnly) != end[summary] {
			t.Errorf("%s from %v to %v, planned %s to %s", summary, first, after, start[summary], end[summary])
		}
		if !strings.HasSuffix(e.GetProperty(ics.ComponentPropertyDescription).Value, how[summary]) {
			t.Errorf("%s: %q does not end with %q", summary, e.GetProperty(ics.ComponentPropertyDescription).Value, how[summary])
		}
		delete(start, summary)
	}
	if len(start) > 0 || orders == 0 {
		t.Errorf("%d steps are not in the calendar, %d orders are", len(start), orders)
	}
	again, err := marinecalc.Calendar(testboat.Run(t, "work-plan", testboat.SpringWork, marinecalc.Options{NoRanges: true}))
	if err != nil || string(again) != string(text) {
		t.Error("the same plan gives another calendar")
	}
}
