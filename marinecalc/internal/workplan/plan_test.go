package workplan_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/day"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/rules"
)

// planned is the plan of that input, without a boat.
func planned(t *testing.T, input string) *marinecalc.Sheet {
	t.Helper()
	return testboat.Run(t, "work-plan", input, marinecalc.Options{NoRanges: true})
}

func TestStepsKeepTheirWindows(t *testing.T) {
	s := planned(t, testboat.SpringWork)
	start := testboat.Column(t, s, "schedule", "step", "start")
	for step, within := range map[string][2]string{
		"Draw the old packing":     {"2026-03-30", "2026-04-09"},
		"Pack the gland":           {"2026-03-30", "2026-04-09"},
		"Leak check at launch":     {"2026-04-10", "2026-04-10"},
		"Read the coupling afloat": {"2026-04-11", "2026-04-11"}, // a day to settle
	} {
		if at := start[step]; at < within[0] || at > within[1] || at >= "2026-04-03" && at <= "2026-04-06" {
			t.Errorf("%s on %q", step, at)
		}
	}
	if f := s.Result("finish").Text; f < "2026-04-11" || f > "2026-04-14" {
		t.Errorf("finish %s", f)
	}
	if in := s.Result("inTime").Text; !strings.HasPrefix(in, "Yes") {
		t.Errorf("in time: %s", in)
	}
	if w := s.Result("elsewhere").Text; !strings.Contains(w, "Draw the old packing") || !strings.Contains(w, "Trial under way") {
		t.Errorf("waits: %s", w)
	}
	if n := s.Result("now").Text; n != "Read her once more as she runs; Write the torque card" { // nobody parts a coupling a month before it is read
		t.Errorf("now: %s", n)
	}
	s = planned(t, strings.Replace(testboat.SpringWork, `{"remedy": "repack-gland"}`, `{"remedy": "tighten-coupling-bolts"}, {"remedy": "repack-gland"}`, 1))
	if n := s.Result("now").Text; !strings.Contains(n, "Tighten the coupling bolts") || !strings.Contains(n, "Make safe") || strings.Contains(n, "Pack the gland") {
		t.Errorf("now: %s", n)
	}
}

// What could be done where she lies is not said to be nothing while it waits for a date.
func TestWhatCouldBeDoneHereWaitsForADate(t *testing.T) {
	s := planned(t, `{"today": "2026-03-02", "lies": "ashore", "remedies": [{"remedy": "refit-propeller"}]}`)
	if now := s.Result("now").Text; !strings.HasPrefix(now, "nothing yet") {
		t.Errorf("ashore, and no day afloat: %s", now)
	}
}

// A step that several remedies share is done once.
func TestSharedStepsAreDoneOnce(t *testing.T) {
	one := planned(t, `{"today": "2026-03-02", "remedies": [{"remedy": "align-coupling"}]}`)
	both := planned(t, `{"today": "2026-03-02", "remedies": [{"remedy": "align-coupling"}, {"remedy": "tighten-mounts"}, {"remedy": "align-coupling"}]}`)
	seen := map[string]int{}
	for _, r := range both.Table("schedule").Rows {
		seen[r.Cells[0].Text]++
	}
	for step, n := range seen {
		if n > 1 {
			t.Errorf("%s %d times", step, n)
		}
	}
	if a, b := len(one.Table("schedule").Rows), len(seen); b != a+1 {
		t.Errorf("%d steps alone, %d with the mounts' feet", a, b)
	}
}

// A list of work that is there and empty plans nothing, whatever the answers.
func TestAnEmptyListIsNothingToDo(t *testing.T) {
	b := testboat.Read(t, `{"name": "Test", "symptoms": [{"evidence": "knock-into-gear", "answer": "yes"}], "work": {"remedies": []}}`)
	s := testboat.Run(t, "work-plan", `{"today": "2026-03-02"}`, marinecalc.Options{Boat: b, NoRanges: true})
	if got := s.Result("planned").Text; got != "no work is chosen" || len(s.Tables) > 0 || s.Result("finish") != nil {
		t.Errorf("planned is %q, %+v", got, s.Tables)
	}
}

// No order is due after the part is needed, and what opens the line is done
// no more than a few days before what it is opened for, and not before a lift.
func TestOrdersAndOpenLines(t *testing.T) {
	for _, name := range []string{"kittiwake", "juniper"} {
		on := map[string]string{"kittiwake": "2025-10-04", "juniper": "2025-10-11"}[name]
		s := testboat.Page(t, testboat.CheckOn(t, testboat.Demo(t, name), on), "work-plan")
		by, needed := testboat.Column(t, s, "shopping", "part", "orderBy"), testboat.Column(t, s, "shopping", "part", "neededOn")
		for part := range by {
			if by[part] > needed[part] {
				t.Errorf("%s: ordered by %s, needed on %s", part, by[part], needed[part])
			}
		}
		start := testboat.Column(t, s, "schedule", "step", "start")
		parted, err := day.Parse(start["Part the coupling"])
		if err != nil {
			t.Fatal(err)
		}
		drawn, ashore := start["Pull the coupling flange off the shaft"]
		needs := start["Close and bolt up the coupling"]
		if ashore { // the whole winter ashore may lie between, but not the lift
			needs = drawn
		}
		if next, _ := day.Parse(needs); next-parted > 3 || ashore && day.Text(parted) < "2026-02-02" {
			t.Errorf("%s: parted on %s, wanted on %s", name, day.Text(parted), needs)
		}
	}
}

func TestWhatStandsInTheWayIsSaid(t *testing.T) {
	cases := []struct{ name, input, result, says string }{
		{"a window that never opens", `{"today": "2026-03-02", "remedies": [{"remedy": "repack-gland"}]}`, "trouble", "No day ashore"},
		{"a window that is over", `{"today": "2026-03-02", "remedies": [{"remedy": "repack-gland"}], "windows": [{"from": "2026-01-05", "to": "2026-01-09", "kind": "haul-out"}]}`, "trouble", "ended before 2026-03-02"},
		{"a window too short", `{"today": "2026-03-02", "hoursPerDay": "1 h", "remedies": [{"remedy": "repack-gland"}], "windows": [{"from": "2026-03-09", "to": "2026-03-09", "kind": "haul-out"}]}`, "trouble", "long enough"},
		{"a date that has passed", `{"today": "2026-03-02", "readyBy": "2026-02-20", "remedies": [{"remedy": "adjust-gland"}]}`, "inTime", "already passed"},
		{"a date that is too soon", `{"today": "2026-03-02", "readyBy": "2026-03-03", "remedies": [{"remedy": "replace-mounts"}]}`, "inTime", "No: it ends"},
		{"no end when it goes slowly", `{"today": "2026-03-02", "hoursPerDay": "4 h", "remedies": [{"remedy": "repack-gland"}], "windows": [{"from": "2026-03-09", "to": "2026-03-09", "kind": "haul-out"}]}`, "trouble", "When every step takes its long time: "},
		{"no end", `{"today": "2026-03-02", "remedies": [{"remedy": "repack-gland"}]}`, "finish", "cannot be given"},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			if text := planned(t, c.input).Result(c.result).Text; !strings.Contains(text, c.says) {
				t.Errorf("says %q", text)
			}
		})
	}
}

func TestPlansRefuse(t *testing.T) {
	cases := []struct{ name, input, where string }{
		{"no such remedy", `{"today": "2026-03-02", "remedies": [{"remedy": "paint-her-red"}]}`, "/remedies/0/remedy"},
		{"no such part", `{"today": "2026-03-02", "remedies": [{"remedy": "adjust-gland"}], "partsInHand": [{"part": "anchor"}]}`, "/partsInHand/0/part"},
		{"no such day", `{"today": "2026-02-30", "remedies": [{"remedy": "adjust-gland"}]}`, "/today"},
		{"a window from the end to the beginning", `{"today": "2026-03-02", "remedies": [{"remedy": "adjust-gland"}], "windows": [{"from": "2026-04-10", "to": "2026-04-01", "kind": "not"}]}`, "/windows/0/to"},
		{"nothing to do", `{"today": "2026-03-02"}`, "/remedies"},
		{"no day", `{"remedies": [{"remedy": "adjust-gland"}]}`, "/today"},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			_, err := marinecalc.Run("work-plan", []byte(c.input), marinecalc.Options{})
			list := problem.Of(err)
			if len(list) != 1 || list[0].Where != c.where {
				t.Errorf("got %v", err)
			}
		})
	}
	circle := testboat.Overlay(t, `{"title": "Yard", "steps": [
		{"id": "make-safe", "title": "Make safe", "text": "-", "after": ["trial-run"], "hours": 1, "place": "either", "tools": [], "hazards": [], "safe": "test", "source": {"document": "Test"}, "basis": "maker"}]}`)
	_, err := marinecalc.Run("work-plan", []byte(`{"today": "2026-03-02", "remedies": [{"remedy": "align-coupling"}]}`), marinecalc.Options{Rules: circle})
	if err == nil || !strings.Contains(err.Error(), "circle") || !strings.Contains(err.Error(), "Trial under way") {
		t.Errorf("a circle of steps: %v", err)
	}
}

// Every remedy can be planned to its end on an open calendar, keeps the order
// of its rows, and shows every caution of its steps.
func TestEveryRemedyCanBePlanned(t *testing.T) {
	book := rules.Standard()
	steps := map[string]rules.Step{}
	for _, s := range book.Steps().All() {
		steps[s.ID] = s
	}
	for _, r := range book.Remedies().All() {
		s := planned(t, fmt.Sprintf(`{"today": "2026-01-05", "hands": 2, "remedies": [{"remedy": %q}], "windows": [{"from": "2026-04-01", "to": "2026-08-01", "kind": "ashore"}]}`, r.ID))
		if trouble := s.Result("trouble"); trouble != nil {
			t.Errorf("%s: %s", r.ID, trouble.Text)
		}
		end := testboat.Column(t, s, "schedule", "step", "end")
		start := testboat.Column(t, s, "schedule", "step", "start")
		atSteps := map[string]string{}
		if s.Table("dangers") != nil {
			atSteps = testboat.Column(t, s, "dangers", "text", "atSteps")
		}
		for _, id := range r.Steps.All() {
			step := steps[id]
			for _, b := range step.After.All() {
				if rules.Contains(r.Steps, b) && end[steps[b].Title] > start[step.Title] {
					t.Errorf("%s: %s on %s, before %s", r.ID, id, start[step.Title], b)
				}
			}
			for _, c := range book.AllCautions().All() {
				if rules.Contains(step.Hazards, c.ID) && !slices.Contains(strings.Split(atSteps[c.Text], "; "), step.Title) {
					t.Errorf("%s: the caution %s of %s is not shown", r.ID, c.ID, id)
				}
			}
		}
	}
}

// With nothing picked, the plan is for the first remedy of the most probable
// cause of the boat's fault finding, where that is likelier there than not.
func TestTheLeadingCauseIsPlanned(t *testing.T) {
	b := testboat.Read(t, `{"name": "Test", "symptoms": [{"evidence": "knock-into-gear", "answer": "yes"}, {"evidence": "clatter-at-idle", "answer": "yes"}, {"evidence": "bell-dust", "answer": "yes"}, {"evidence": "came-suddenly", "answer": "yes"}, {"evidence": "gone-in-neutral", "answer": "no"}]}`)
	fault := testboat.Run(t, "fault-finding", `{}`, marinecalc.Options{Boat: b, NoRanges: true})
	want := ""
	for _, c := range rules.Standard().Causes().All() {
		if c.ID == fault.Result("cause").Text {
			want = c.Remedies.At(0)
		}
	}
	s := testboat.Run(t, "work-plan", `{"today": "2026-03-02"}`, marinecalc.Options{Boat: b, NoRanges: true})
	for _, r := range rules.Standard().Remedies().All() {
		if r.ID == want && s.Result("planned").Text != r.Title {
			t.Errorf("planned is %q, the cause wants %q", s.Result("planned").Text, r.Title)
		}
	}
}
