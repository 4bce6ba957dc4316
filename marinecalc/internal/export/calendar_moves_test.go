package export_test

import (
	"strconv"
	"strings"
	"testing"

	ics "github.com/arran4/golang-ical"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
)

// entries are the events of a calendar by their ids.
func entries(t *testing.T, calculation, boat, input string) map[string]*ics.VEvent {
	t.Helper()
	s := testboat.Run(t, calculation, input, marinecalc.Options{Boat: testboat.Read(t, boat), NoRanges: true})
	text, err := marinecalc.Calendar(s)
	if err != nil {
		t.Fatal(err)
	}
	cal, err := ics.ParseCalendar(strings.NewReader(string(text)))
	if err != nil {
		t.Fatal(err)
	}
	out := map[string]*ics.VEvent{}
	for _, e := range cal.Events() {
		out[e.Id()] = e
	}
	if len(out) != len(cal.Events()) {
		t.Errorf("%d events, %d ids", len(cal.Events()), len(out))
	}
	return out
}

func textOf(e *ics.VEvent, p ics.ComponentProperty) string {
	if got := e.GetProperty(p); got != nil {
		return got.Value
	}
	return ""
}

func sequence(t *testing.T, e *ics.VEvent) int {
	n, err := strconv.Atoi(textOf(e, ics.ComponentPropertySequence))
	if err != nil || n < 0 || n > 1<<31-1 { // RFC 5545, 3.3.8
		t.Errorf("SEQUENCE %q: %v", textOf(e, ics.ComponentPropertySequence), err)
	}
	return n
}

// RFC 5545, 3.8.4.7 and 3.8.7.4, and RFC 5546, 2.1.5: an entry of a plan made
// again has the UID it had and a higher SEQUENCE, so that importing it moves the
// entry; a piece of work more or a day more doubles none; another boat's are
// others. 2026-03-02 is 20 514 days after 1970-01-01 (date -d 2026-03-02 +%s).
func TestPlanMadeAgainMovesItsEntries(t *testing.T) {
	const work = `, "windows": [{"from": "2026-05-04", "to": "2026-05-20", "kind": "booked"}], "remedies": [{"remedy": "replace-output-seal"}, {"remedy": "repack-gland"}]}`
	const tern, plover = `{"name": "Tern"}`, `{"name": "Plover"}`
	before := entries(t, "work-plan", tern, `{"today": "2026-03-02"`+work)
	after := entries(t, "work-plan", tern, `{"today": "2026-03-11"`+strings.Replace(work, "05-04", "05-11", 1))
	later := entries(t, "work-plan", tern, `{"today": "2026-03-12"`+strings.Replace(strings.Replace(work, "05-04", "05-11", 1), `"repack-gland"}`, `"repack-gland"}, {"remedy": "clean-propeller"}`, 1))
	moved := 0
	for id, e := range after {
		was := before[id]
		if was == nil {
			t.Errorf("%s is new", textOf(e, ics.ComponentPropertySummary))
			continue
		}
		if name := func(e *ics.VEvent) string {
			n, _, _ := strings.Cut(textOf(e, ics.ComponentPropertySummary), " (")
			return n
		}; name(e) != name(was) {
			t.Errorf("%s was %s", name(e), name(was))
		}
		if got := sequence(t, was); got != 20514 || sequence(t, e) != got+9 {
			t.Errorf("SEQUENCE %d, then %d", got, sequence(t, e))
		}
		if textOf(e, ics.ComponentPropertyDtStart) != textOf(was, ics.ComponentPropertyDtStart) {
			moved++
		}
	}
	if moved == 0 {
		t.Error("a later time ashore moves no entry")
	}
	kept := 0
	for id := range before {
		if later[id] != nil {
			kept++
		}
	}
	if kept != len(before) {
		t.Errorf("with other days ashore and a piece of work more %d of %d entries are moved, the others doubled", kept, len(before))
	}
	for id, e := range entries(t, "work-plan", plover, `{"today": "2026-03-02"`+work) {
		if before[id] != nil {
			t.Errorf("two boats share %s", textOf(e, ics.ComponentPropertySummary))
		}
	}
}

// The same of a service schedule: what is due later moves.
func TestScheduleMadeAgainMovesItsEntries(t *testing.T) {
	const tern = `{"name": "Tern", "engine": {"hoursPerSeason": "100 h"}, "readings": [{"date": "2026-03-01", "engineHours": "500 h", "dripRate": "6 drips/min"}]}`
	before, after := entries(t, "service-schedule", tern, `{"today": "2026-03-02"}`), entries(t, "service-schedule", tern, `{"today": "2026-03-12"}`)
	for id, e := range after {
		if was := before[id]; was == nil || sequence(t, e) != sequence(t, was)+10 {
			t.Errorf("%s: %v", textOf(e, ics.ComponentPropertySummary), was)
		}
	}
	for id := range entries(t, "service-schedule", strings.Replace(tern, "Tern", "Plover", 1), `{"today": "2026-03-02"}`) {
		if before[id] != nil {
			t.Error("two boats share an entry")
		}
	}
}
