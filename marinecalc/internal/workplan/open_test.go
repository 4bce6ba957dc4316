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
)

func date(t *testing.T, text string) int {
	t.Helper()
	n, err := day.Parse(text)
	if err != nil {
		t.Fatal(err)
	}
	return n
}

// A gearbox that takes five weeks to come is waited for with the line closed:
// nothing is parted before it is on board, and she lies open for as many days
// as the work takes.
func TestNothingIsOpenedBeforeItsParts(t *testing.T) {
	for _, work := range []string{
		`{"remedy": "replace-gearbox"}, {"remedy": "flush-gearbox-fluid"}, {"remedy": "replace-coupling-bolts"}, {"remedy": "replace-damper-plate"}`,
		`{"remedy": "replace-gearbox"}, {"remedy": "replace-mounts"}`,
	} {
		s := planned(t, `{"today": "2026-03-02", "remedies": [`+work+`]}`)
		arrives := date(t, "2026-03-02") + 35 // days, by the row of the part
		from, to := date(t, s.Result("openFrom").Text), date(t, s.Result("openTo").Text)
		if from < arrives {
			t.Errorf("opened %d days before the gearbox is there", arrives-from)
		}
		hours := 0.0
		for n, r := range s.Table("schedule").Rows {
			at := s.Table("schedule").Reader(r)
			if at("start") != "" && at("waits") == "" && at("phase") != "as found" && date(t, at("start")) < from {
				t.Errorf("%s (%s) on %s, she is opened on %s", at("step"), at("phase"), at("start"), day.Text(from))
			}
			hours += *s.Cell("schedule", n, "hours").SI / 3600
		}
		if most := int(hours/5) + 7; to-from > most {
			t.Errorf("open for %d days for %g hours of work at 5 a day", to-from+1, hours)
		}
		if !strings.Contains(s.Result("open").Text, " days, ") || !strings.Contains(s.Result("open").Text, " 2026") {
			t.Errorf("open: %q", s.Result("open").Text)
		}
	}
}

// What can be done where she lies now has its date in the schedule: a step
// that waits there is not offered as one to begin with.
func TestNothingIsOfferedNowThatTheScheduleHasWaiting(t *testing.T) {
	for _, work := range []string{"replace-stern-bearing", "repack-gland", "replace-mounts", "align-coupling"} {
		for _, windows := range []string{
			`[{"from": "2026-11-02", "to": "2026-11-28", "kind": "ashore"}]`,
			`[{"from": "2026-11-02", "to": "2027-02-28", "kind": "ashore"}]`,
			`[{"from": "2026-11-02", "to": "2028-11-28", "kind": "not"}]`,
			`[]`,
		} {
			s := planned(t, `{"today": "2026-11-27", "remedies": [{"remedy": "`+work+`"}], "windows": `+windows+`}`)
			now := strings.Split(s.Result("now").Text, "; ")
			for _, r := range s.Table("schedule").Rows {
				at := s.Table("schedule").Reader(r)
				if at("waits") != "" && slices.Contains(now, at("step")) {
					t.Errorf("%s, windows %s: %q can be done now, and waits %q", work, windows, at("step"), at("waits"))
				}
			}
		}
	}
}

// The windows in words: what each does to the plan, and what is said where
// there is no plan.
func TestWindowsOfTheOpenLine(t *testing.T) {
	const mounts = `{"today": "2026-06-01", "remedies": [{"remedy": "replace-mounts"}], "windows": [%s]}`
	for _, c := range []struct{ name, window, from, says string }{
		{"storm season", `{"from": "2026-06-01", "to": "2026-11-30", "kind": "ready"}`, "2026-12-01", ""},
		{"storm season, a week allowed", `{"from": "2026-06-01", "to": "2026-11-30", "kind": "ready", "mostDays": 7}`, "2026-06-15", ""},
		{"no lift before a day", `{"from": "2026-06-01", "to": "2026-07-31", "kind": "no-lift"}`, "2026-07-31", ""}, // the engine hangs from 1 August on,
		{"holidays", `{"from": "2026-06-16", "to": "2026-06-30", "kind": "not"}`, "2026-07-01", ""},
		{"never without drive", `{"from": "2026-06-01", "to": "2031-01-01", "kind": "ready", "mostDays": 1}`, "", "longer than days to be ready allow, 2026-06-01 to 2031-01-01"},
	} {
		s := planned(t, fmt.Sprintf(mounts, c.window))
		if c.says != "" {
			for _, result := range []string{"trouble", "finish", "finishLong"} {
				if text := s.Result(result).Text; !strings.Contains(text, c.says) {
					t.Errorf("%s: %s says %q", c.name, result, text)
				}
			}
			continue
		}
		from := s.Result("openFrom")
		if from == nil || from.Text < c.from || date(t, from.Text) > date(t, c.from)+2 {
			t.Errorf("%s: open from %v, want %s: %v", c.name, from, c.from, s.Result("trouble"))
		}
	}
	s := planned(t, `{"today": "2026-06-01", "remedies": [{"remedy": "clean-propeller"}], "windows": [{"from": "2026-07-06", "to": "2026-07-31", "kind": "booked"}]}`)
	if run := s.Result("haulOut").Text; !strings.Contains(run, "6 July 2026 under her own power, before “Make safe to work”") {
		t.Errorf("the run to the lift: %q", run)
	}
	if at := testboat.Column(t, s, "schedule", "step", "start")["Leak check at launch"]; at != "2026-07-07" {
		t.Errorf("launched on %s, a day's work after she was lifted", at)
	}
}

// A lift that is too short says so, and does not open her.
func TestShutForAReason(t *testing.T) {
	s := planned(t, `{"today": "2026-03-02", "hoursPerDay": "2 h", "remedies": [{"remedy": "replace-shaft"}], "windows": [{"from": "2026-04-13", "to": "2026-04-15", "kind": "haul-out"}]}`)
	for _, result := range []string{"finish", "finishLong", "trouble"} {
		if text := s.Result(result).Text; !strings.Contains(text, "No ") && !strings.Contains(text, "She would") {
			t.Errorf("%s gives no reason: %q", result, text)
		}
	}
	if s.Result("open") != nil || s.Result("openFrom") != nil {
		t.Error("she is opened all the same")
	}
}

// A wait that keeps her open is named; one that does not is not.
func TestWaitsThatKeepHerOpen(t *testing.T) {
	const ashore = `{"today": "2026-03-02", "lies": "ashore", "remedies": [{"remedy": %q}], "windows": [{"from": "2026-06-01", "to": "2026-10-01", "kind": "afloat"}]}`
	if got := planned(t, fmt.Sprintf(ashore, "straighten-shaft")).Result("openWaits"); got == nil || !strings.Contains(got.Text, "14 days after “Shaft to the machinist”") {
		t.Errorf("with the shaft at the machinist: %+v", got)
	}
	for _, work := range []string{"replace-shaft", "support-shaft"} { // a designer is asked before she is opened
		if got := planned(t, fmt.Sprintf(ashore, work)).Result("openWaits"); got != nil {
			t.Errorf("%s: %q", work, got.Text)
		}
	}
}

// Each step says in words what can hurt in it, and none is a number to look up.
func TestHazardsAreWords(t *testing.T) {
	s := planned(t, testboat.SpringWork)
	hazards := testboat.Column(t, s, "schedule", "step", "hazards")
	if text := hazards["Part the coupling"]; !strings.Contains(text, "DANGER: Nobody may start the engine while hands are at the shaft") || !strings.Contains(text, "WARNING: With the coupling parted") {
		t.Errorf("parting the coupling: %q", text)
	}
	dangers := testboat.Column(t, s, "dangers", "text", "atSteps")
	for text, steps := range dangers {
		for _, step := range strings.Split(steps, "; ") {
			at := false
			for _, hazard := range strings.Split(hazards[step], "; ") {
				_, short, _ := strings.Cut(hazard, ": ")
				at = at || short != "" && strings.HasPrefix(text, short)
			}
			if !at {
				t.Errorf("%s: %q says nothing of %q", step, hazards[step], text)
			}
		}
	}
	if len(dangers) < 8 {
		t.Errorf("only %d dangers", len(dangers))
	}
}

// Days of work end by midnight.
func TestDaysEndByMidnight(t *testing.T) {
	const input = `{"today": "2026-03-02", "remedies": [{"remedy": "adjust-gland"}], "hoursPerDay": "4 h", "dayBegins": %q}`
	if s := planned(t, fmt.Sprintf(input, "20:00")); s.Table("dayByDay").Rows[0].Cells[1].Text != "20:00" {
		t.Errorf("%+v", s.Table("dayByDay").Rows[0])
	}
	for begins, where := range map[string]string{"20:01": "/dayBegins", "24:00": "/dayBegins", "eight": "/dayBegins"} {
		_, err := marinecalc.Run("work-plan", []byte(fmt.Sprintf(input, begins)), marinecalc.Options{})
		if list := problem.Of(err); len(list) != 1 || list[0].Where != where {
			t.Errorf("%s: %v", begins, err)
		}
	}
}

// Re-checks are due by days or by engine hours, whichever comes first, counted
// from the trial; without engine hours a season they say so in words alone.
func TestRechecksAreDated(t *testing.T) {
	rules := testboat.Overlay(t, `{"title": "Yard", "steps": [
		{"id": "by-days", "title": "By days", "text": "-", "phase": "afterwards", "dueDays": 14, "hours": 1, "place": "afloat", "safe": "test", "source": {"document": "Test"}, "basis": "maker"},
		{"id": "by-hours", "title": "By hours", "text": "-", "phase": "afterwards", "dueHours": 50, "hours": 1, "place": "afloat", "safe": "test", "source": {"document": "Test"}, "basis": "maker"},
		{"id": "by-both", "title": "By both", "text": "-", "phase": "afterwards", "dueHours": 5, "dueDays": 300, "hours": 1, "place": "afloat", "safe": "test", "source": {"document": "Test"}, "basis": "maker"}],
		"remedies": [{"id": "adjust-gland", "title": "Set the gland", "kind": "adjust", "text": "-", "cures": ["gland-tight"], "steps": ["make-safe", "ease-gland", "set-drips", "by-days", "by-hours", "by-both"], "source": {"document": "Test"}, "basis": "maker"}]}`)
	o := marinecalc.Options{NoRanges: true, Rules: rules}
	const input = `{"today": "2026-05-04", "remedies": [{"remedy": "adjust-gland"}]%s}`
	s := testboat.Run(t, "work-plan", fmt.Sprintf(input, `, "hoursPerSeason": "100 h"`), o)
	start, waits := testboat.Column(t, s, "schedule", "step", "start"), testboat.Column(t, s, "schedule", "step", "waits")
	end := date(t, s.Result("finish").Text)
	for step, days := range map[string]int{"By days": 14, "By hours": 183, "By both": 19} { // 365·50/100 and 365·5/100, rounded up
		if start[step] != day.Text(end+days) {
			t.Errorf("%s is due on %s, want %s", step, start[step], day.Text(end+days))
		}
	}
	if waits["By both"] != "due 5 engine hours or 300 days after the trial, whichever comes first" {
		t.Errorf("%q", waits["By both"])
	}
	s = testboat.Run(t, "work-plan", fmt.Sprintf(input, ""), o)
	if at := testboat.Column(t, s, "schedule", "step", "start")["By hours"]; at != "" || s.Result("trouble") != nil {
		t.Errorf("without engine hours a season it is due on %q", at)
	}
}

// What lies bare and is not planned is offered, with what it takes besides.
func TestWhatLiesBareIsOffered(t *testing.T) {
	rules := testboat.Overlay(t, `{"title": "Yard", "steps": [
		{"id": "draw-old-packing", "title": "Draw the old packing", "text": "-", "phase": "open", "after": ["make-safe"], "hours": 1, "laysUp": true, "place": "ashore", "bares": ["polish-shaft-at-gland", "repack-gland"], "safe": "test", "source": {"document": "Test"}, "basis": "maker"}]}`)
	s := testboat.Run(t, "work-plan", `{"today": "2026-03-02", "lies": "ashore", "remedies": [{"remedy": "repack-gland"}], "windows": [{"from": "2026-05-01", "to": "2026-09-01", "kind": "afloat"}]}`,
		marinecalc.Options{NoRanges: true, Rules: rules})
	table := s.Table("whileOpen")
	if table == nil || len(table.Rows) != 1 {
		t.Fatalf("%+v", table)
	}
	at := table.Reader(table.Rows[0])
	if at("work") != "Dress the shaft at the gland and repack" || at("atStep") != "Draw the old packing" || at("more") != "1 h" || !strings.Contains(at("parts"), "Abrasive cloth") {
		t.Errorf("%q at %q, %q more, %q", at("work"), at("atStep"), at("more"), at("parts"))
	}
}
