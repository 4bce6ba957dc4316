package procedure_test

import (
	"encoding/json"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/boat"
	"example.org/driveline/marinecalc/internal/testboat"
)

// A job ended leaves an event, and can be done anew.
func TestCloseWork(t *testing.T) {
	j := newJob(t, `{"name": "Tern"}`, "tighten-coupling-bolts")
	if _, err := j.engine.CloseWork(j.boat, j.work, "2026-05-09"); err == nil {
		t.Error("nothing is ticked off, and it ended")
	}
	j.tick(marinecalc.TickRequest{Step: "make-safe", Done: &yes, Day: "2026-05-02"})
	j.tick(marinecalc.TickRequest{Step: "trial-run", Done: &yes, Day: "2026-05-03"})
	b, err := j.engine.CloseWork(j.boat, j.work, "2026-05-09")
	if err != nil {
		t.Fatal(err)
	}
	if text, _ := json.Marshal(b); !strings.Contains(string(text), `"events":[{"date":"2026-05-03","what":"Tighten the coupling bolts: 2 of 5 steps ticked off"}]`) {
		t.Errorf("the boat is now %s", text)
	}
	if p := made(t, b, j.o, j.work...); p.Ticked != 0 || p.LastTick != nil {
		t.Errorf("%d still ticked", p.Ticked)
	}
}

// A joint that the ended job closed again has no play any more of the day before: that
// is told, and read anew; what no step of it closed stands.
func TestEndedWorkPutsAnEndToOldPlay(t *testing.T) {
	for _, c := range []struct{ step, day, gone, stands string }{
		{"torque-output-nut", "2026-05-03", "backlashFlange backlashShaft backlashPropeller", "backlashOutputShaft"},
		{"torque-output-nut", "2026-05-01", "", "backlashFlange backlashShaft backlashPropeller"}, // read after it
		{"make-safe", "2026-05-03", "", "backlashFlange backlashShaft backlashPropeller backlashOutputShaft"},
	} {
		j := newJob(t, `{"name": "Tern", "readings": [{"date": "2026-05-01", "backlashFlange": "2.8°", "backlashShaft": "2.9°", "backlashPropeller": "3°", "backlashOutputShaft": "0.3°"}]}`, "tighten-output-nut")
		j.tick(marinecalc.TickRequest{Step: c.step, Done: &yes, Day: c.day})
		b, err := j.engine.CloseWork(j.boat, j.work, "2026-05-09")
		if err != nil {
			t.Fatal(err)
		}
		told := b.Outdated()
		if len(told) != len(strings.Fields(c.gone)) {
			t.Errorf("%s on %s: %v", c.step, c.day, told)
		}
		for _, name := range strings.Fields(c.gone) {
			if _, _, _, ok := b.Find(boat.LatestReading + name); ok {
				t.Errorf("%s on %s: %s still counts", c.step, c.day, name)
			}
		}
		for _, name := range strings.Fields(c.stands) {
			if _, _, _, ok := b.Find(boat.LatestReading + name); !ok {
				t.Errorf("%s on %s: %s counts no more", c.step, c.day, name)
			}
		}
	}
}

// What an ended job was of care stands under service with day and hours, starts
// its readings afresh, and what is to be looked at again stays on the schedule
// until it is ticked off.
func TestEndedWorkIsCareDone(t *testing.T) {
	b := testboat.Read(t, `{"name": "Tern", "service": {"done": [{"item": "gland-packing", "date": "2020-04-01"}]}, "readings": [{"date": "2026-05-03", "engineHours": "1200 h"}, {"date": "2026-05-10", "engineHours": "1206 h"}]}`)
	engine, err := marinecalc.New()
	if err != nil {
		t.Fatal(err)
	}
	work := []string{"repack-gland"}
	tick := func(step, day string) {
		t.Helper()
		var err error
		if b, err = engine.Tick(b, marinecalc.TickRequest{Remedies: work, Step: step, Done: &yes, Day: day}); err != nil {
			t.Fatal(err)
		}
	}
	end := func(day string) string {
		t.Helper()
		var err error
		if b, err = engine.CloseWork(b, work, day); err != nil {
			t.Fatal(err)
		}
		text, _ := json.Marshal(b)
		return string(text)
	}
	due := func(today string) string {
		t.Helper()
		s := testboat.Run(t, "service-schedule", `{"today": "`+today+`"}`, marinecalc.Options{Boat: b, NoRanges: true})
		return testboat.Column(t, s, "schedule", "what", "due")["Read the gland again"]
	}
	for _, step := range []string{"make-safe", "draw-old-packing", "pack-gland"} {
		tick(step, "2026-05-02")
	}
	if got := due("2026-05-11"); got != "" {
		t.Errorf("before the trial it is due on %q", got)
	}
	for _, step := range []string{"launch-check", "first-start", "set-drips", "trial-run"} {
		tick(step, "2026-05-03")
	}
	if got := due("2026-05-11"); got != "2026-05-17" {
		t.Errorf("work in hand: due on %q", got)
	}
	text := end("2026-05-04")
	for _, want := range []string{`{"date":"2020-04-01","item":"gland-packing"}`, `"item":"gland-packing","date":"2026-05-02"}`, `"item":"gland-read","date":"2026-05-03","engineHours":"1200 h"}`,
		`"rechecks":[{"step":"read-gland-again","remedies":["repack-gland"],"after":"2026-05-03","engineHours":"1200 h"}`, `{"date":"2026-05-02","what":"Gland packing: renewed","renews":"dripRate"}`} {
		if !strings.Contains(text, want) {
			t.Errorf("%s is not in %s", want, text)
		}
	}
	if got := due("2026-05-11"); got != "2026-05-17" {
		t.Errorf("work ended: due on %q", got)
	}
	tick("read-gland-again", "2026-05-12")
	if got := due("2026-05-13"); got != "" {
		t.Errorf("ticked off: due on %q", got)
	}
	if text = end("2026-05-13"); strings.Contains(text, `"step":"read-gland-again"`) || !strings.Contains(text, `"step":"start-the-watch"`) {
		t.Errorf("ended again: %s", text)
	}
	if got := due("2026-05-13"); got != "" {
		t.Errorf("ended again: due on %q", got)
	}
}

// Ended work puts an end to what was answered before it, once what cures is ticked off:
// on its day to looks alone, since what was noticed may have been noticed after it.
func TestEndedWorkPutsAnEndToAnswers(t *testing.T) {
	for _, c := range []struct{ step, day, left string }{
		{"pack-gland", "2026-05-03", ""},
		{"pack-gland", "2026-05-02", "gland-hot"},
		{"pack-gland", "2026-05-01", "packing-hard gland-hot"}, // answered after it
		{"make-safe", "2026-05-03", "packing-hard gland-hot"},
	} {
		j := newJob(t, `{"name": "Tern", "gland": {"packing": "flax"}, "readings": [{"date": "2026-05-02", "symptoms": [{"evidence": "packing-hard", "answer": "yes"}, {"evidence": "gland-hot", "answer": "yes"}, {"evidence": "drip-returns", "answer": "no"}]}]}`, "repack-gland")
		j.tick(marinecalc.TickRequest{Step: c.step, Done: &yes, Day: c.day})
		b, err := j.engine.CloseWork(j.boat, j.work, "2026-05-09")
		if err != nil {
			t.Fatal(err)
		}
		var left []string
		list, _, _, _ := b.Find("/symptoms")
		for a := range boat.Answers(list) {
			left = append(left, a.Question)
		}
		if want := strings.TrimSpace(c.left + " drip-returns"); strings.Join(left, " ") != want {
			t.Errorf("%s on %s: left are %v, not %s", c.step, c.day, left, want)
		}
		if before, _, _, _ := b.AsOf("2026-05-02").Find("/symptoms"); len(before.([]any)) != 3 {
			t.Errorf("%s on %s: of the day before the work %v is left", c.step, c.day, before)
		}
	}
}
