package export_test

import (
	"strings"
	"testing"
	"time"

	ics "github.com/arran4/golang-ical"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
)

// The schedule of a boat is read back by another's reader: a day for each line,
// none before today.
func TestServiceCalendarReadsBack(t *testing.T) {
	s := testboat.Run(t, "service-schedule", `{}`, marinecalc.Options{Boat: testboat.Demo(t, "kittiwake"), NoRanges: true})
	text, err := marinecalc.Calendar(s)
	if err != nil {
		t.Fatal(err)
	}
	cal, err := ics.ParseCalendar(strings.NewReader(string(text)))
	if err != nil {
		t.Fatal(err)
	}
	due, today, ids := testboat.Column(t, s, "schedule", "what", "due"), s.Input("today").Word, map[string]bool{}
	for _, e := range cal.Events() {
		boat, what, _ := strings.Cut(e.GetProperty(ics.ComponentPropertySummary).Value, ": ")
		if what, _, _ = strings.Cut(what, " ("); boat != "Kittiwake" { // a calendar may have the work of two boats
			t.Errorf("%s of %q", what, boat)
		}
		first, err := e.GetAllDayStartAt()
		if want := max(due[what], today); err != nil || first.Format(time.DateOnly) != want {
			t.Errorf("%s on %v, due %s (%v)", what, first, want, err)
		}
		if len(e.Alarms()) != 1 || ids[e.Id()] {
			t.Errorf("%s: %d alarms", what, len(e.Alarms()))
		}
		ids[e.Id()] = true
		delete(due, what)
	}
	if len(due) > 0 || len(ids) < 15 {
		t.Errorf("%d lines are not in the calendar, %d are", len(due), len(ids))
	}
}
