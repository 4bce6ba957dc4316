package export_test

import (
	"regexp"
	"strings"
	"testing"
	"time"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
	ics "github.com/arran4/golang-ical"
)

// uuid is the text of a UUID of version 8 (RFC 9562, 4 and 5.8): it asks for no domain.
var uuid = regexp.MustCompile(`^[0-9a-f]{8}-[0-9a-f]{4}-8[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$`)

// RFC 5545, read by an independent parser: every sitting of a step is an event
// with its hours by the clock, every order, run to the lift, old unit and
// re-check one of a whole day; each has its own id, alarms that can be read, and
// texts that come back whole.
func TestCalendarReadsBack(t *testing.T) {
	const input = `{"today": "2026-03-02", "readyBy": "2026-04-20", "dayBegins": "09:30",
		"remedies": [{"remedy": "repack-gland"}, {"remedy": "replace-gearbox"}, {"remedy": "clean-propeller"}],
		"partsInHand": [{"part": "gearbox", "price": "2100 EUR", "deposit": "300 EUR", "returnWithin": "21 days"}],
		"windows": [{"from": "2026-05-04", "to": "2026-05-20", "kind": "booked", "note": "slot; at the yard"}]}`
	again := testboat.Overlay(t, recheck)
	s := testboat.Run(t, "work-plan", input, marinecalc.Options{NoRanges: true, Rules: again})
	text, err := marinecalc.Calendar(s)
	if err != nil {
		t.Fatal(err)
	}
	if strings.Contains(string(text), "example.org") {
		t.Error("it names a domain that nobody owns")
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
	how := testboat.Column(t, s, "schedule", "step", "how")
	wanted := map[string]bool{} // summary without its part, begin and end
	for _, r := range s.Table("dayByDay").Rows {
		at := s.Table("dayByDay").Reader(r)
		wanted[at("step")+"|"+at("date")+"T"+at("from")+"|"+at("to")] = true
	}
	ids, allDay, alarms := map[string]bool{}, map[string]int{}, map[string]int{}
	for _, e := range cal.Events() {
		if ids[e.Id()] {
			t.Errorf("the id %s is there twice", e.Id())
		}
		ids[e.Id()] = true
		if !uuid.MatchString(e.Id()) {
			t.Errorf("the id %s is no UUID", e.Id())
		}
		summary := e.GetProperty(ics.ComponentPropertySummary).Value
		if stamp, err := e.GetDtStampTime(); err != nil || stamp.Format(time.DateOnly) != "2026-03-02" {
			t.Errorf("stamped %v, %v", stamp, err)
		}
		for _, a := range e.Alarms() {
			if a.GetProperty(ics.ComponentPropertyAction).Value != "DISPLAY" || a.GetProperty(ics.ComponentPropertyDescription).Value != summary {
				t.Errorf("%s: an alarm that says nothing: %+v", summary, a)
			}
			alarms[a.GetProperty(ics.ComponentPropertyTrigger).Value]++
		}
		if kind, _, whole := strings.Cut(summary, ": "); whole || strings.HasPrefix(summary, "Run to") {
			allDay[kind]++
			first, err := e.GetAllDayStartAt()
			after, err2 := e.GetAllDayEndAt()
			if err != nil || err2 != nil || after.Sub(first) != 24*time.Hour || len(e.Alarms()) != 1 {
				t.Errorf("%s from %v to %v, %d alarms: %v, %v", summary, first, after, len(e.Alarms()), err, err2)
			}
			continue
		}
		first, err := e.GetStartAt()
		after, err2 := e.GetEndAt()
		if err != nil || err2 != nil {
			t.Fatal(err, err2)
		}
		step, _, _ := strings.Cut(summary, " (")
		key := step + "|" + first.Format("2006-01-02T15:04") + "|" + after.Format("15:04")
		if !wanted[key] {
			t.Errorf("%s is not on the sheet", key)
		}
		delete(wanted, key)
		if !strings.HasSuffix(e.GetProperty(ics.ComponentPropertyDescription).Value, how[step]) {
			t.Errorf("%s: %q does not end with %q", summary, e.GetProperty(ics.ComponentPropertyDescription).Value, how[step])
		}
	}
	if len(wanted) > 0 {
		t.Errorf("not in the calendar: %v", wanted)
	}
	for kind, least := range map[string]int{"Order": 3, "Run to the haul-out, before anything is opened": 1, "Old unit back": 1, "Due": 1} {
		if allDay[kind] < least {
			t.Errorf("%d of %q, want %d: %v", allDay[kind], kind, least, allDay)
		}
	}
	if alarms["-PT1H"] == 0 || alarms["-P1D"] != 2 || alarms["-P3D"] != 1 || alarms["PT9H"] != allDay["Order"]+allDay["Due"] {
		t.Errorf("alarms: %v", alarms)
	}
	if same, err := marinecalc.Calendar(testboat.Run(t, "work-plan", input, marinecalc.Options{NoRanges: true, Rules: again})); err != nil || string(same) != string(text) {
		t.Error("the same plan gives another calendar")
	}
}

// recheck gives a remedy a step that is due after its trial.
const recheck = `{"title": "Yard", "steps": [
	{"id": "read-again", "title": "Read it again", "text": "-", "phase": "afterwards", "dueDays": 14, "hours": 1, "place": "afloat", "safe": "test", "source": {"document": "Test"}, "basis": "maker"}],
	"remedies": [{"id": "clean-propeller", "title": "Clean the propeller", "kind": "adjust", "text": "-", "cures": ["propeller-fouled"], "steps": ["make-safe", "scrape-propeller", "launch-check", "trial-run", "read-again"], "source": {"document": "Test"}, "basis": "maker"}]}`
