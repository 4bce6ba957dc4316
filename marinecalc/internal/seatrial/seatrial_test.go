package seatrial_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/boat"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/rules"
	"example.org/driveline/marinecalc/sheet"
)

const engine = `"idleSpeed":"800 rpm","engineSpeed":"3000 rpm","tachometer":"optical-tachometer"`

// tern is a boat whose healthy readings are known.
func tern(extra string) string {
	return `{"name":"Tern","engine":{"idleSpeed":"800 rpm","speed":"3000 rpm"},"gearbox":{"ratioAhead":2,"ratioAstern":"2.5"},"gland":{"packing":"flax"},` + extra +
		`"readings":[{"date":"2026-04-01","changed":true,"engineSpeed":"2340 rpm","glandTemperature":"25 °C","waterTemperature":"15 °C","vibrationVelocity":"2 mm/s","dripRate":"8 drips/min","dripRateAtRest":"2 drips/min"}]}`
}

// said is the word and the reason of a reading at a stage.
func said(t *testing.T, s *marinecalc.Sheet, stage, reading string) (word, reason string) {
	t.Helper()
	list := s.Table("checks")
	for _, r := range list.Rows {
		at := list.Reader(r)
		if at("stage") == stage && at("reading") == reading {
			return at("word"), at("reason")
		}
	}
	t.Fatalf("there is no %s at %s", reading, stage)
	return "", ""
}

// The speeds by hand: 25, 70 and 30 % of the way from 800 to 3000 rpm, over the
// ratios 2 and 2.5.
func TestProtocolGoesByTheBoatsOwnSpeeds(t *testing.T) {
	s := testboat.RunOn(t, tern(""), "sea-trial", `{}`)
	for stage, want := range map[string]string{
		"Neutral, made fast": "800 rpm, ", "Idle ahead, made fast": "800 rpm, 400 rpm", "Idle astern, made fast": "800 rpm, 320 rpm",
		"Under way, slow": "1350 rpm, 675 rpm", "Under way, cruising": "2340 rpm, 1170 rpm", "Full throttle": "3000 rpm, 1500 rpm", "Under way, astern": "1460 rpm, 584 rpm",
	} {
		got := testboat.Column(t, s, "protocol", "stage", "engineSpeed")[stage] + ", " + testboat.Column(t, s, "protocol", "stage", "shaftSpeed")[stage]
		if got != want {
			t.Errorf("%s: %s, want %s", stage, got, want)
		}
	}
	if !strings.Contains(s.Result("says").Text, "Not run yet") || s.Verdict("trial-passed") != nil {
		t.Errorf("%+v", s.Result("says"))
	}
	for _, r := range s.Table("checks").Rows {
		if w := s.Table("checks").Reader(r)("word"); w != "not read" {
			t.Errorf("nothing was read, and it says %s", w)
		}
	}
}

// Every word, on both sides of what it turns at.
func TestReadingsOnBothSides(t *testing.T) {
	figures := `"makersFigures":[{"of":"gland-rise-measured","value":"18 K","source":{"document":"Gland leaflet (invented)"}},{"of":"trial-gearbox-temperature","value":"80 °C","source":{"document":"Gearbox manual (invented)"}}],`
	for _, c := range []struct {
		name, boat, run, stage, reading, want, reason string
	}{
		{"rise in the guide", tern(""), `{"stage":"full","glandTemperature":"33 °C","waterTemperature":"15 °C"}`, "Full throttle", "Gland above the sea", "pass", ""},
		{"rise over the guide", tern(""), `{"stage":"full","glandTemperature":"38 °C","waterTemperature":"15 °C"}`, "Full throttle", "Gland above the sea", "look again", "guide"},
		{"rise up to twice the guide", tern(""), `{"stage":"full","glandTemperature":"54 °C","waterTemperature":"15 °C"}`, "Full throttle", "Gland above the sea", "look again", "guide"},
		{"rise over twice the guide", tern(""), `{"stage":"full","glandTemperature":"99 °C","waterTemperature":"15 °C"}`, "Full throttle", "Gland above the sea", "fail", "twice"},
		{"shaken less than any class allows", `{"name":"Tern","engine":{"idleSpeed":"800 rpm","speed":"3000 rpm"}}`, `{"stage":"full","vibrationVelocity":"12 mm/s"}`, "Full throttle", "Vibration", "noted", "Nothing to hold it against"},
		{"shaken past any class", `{"name":"Tern","engine":{"idleSpeed":"800 rpm","speed":"3000 rpm"}}`, `{"stage":"full","vibrationVelocity":"25 mm/s"}`, "Full throttle", "Vibration", "look again", "18 mm/s"},
		{"shaken past twice any class", `{"name":"Tern","engine":{"idleSpeed":"800 rpm","speed":"3000 rpm"}}`, `{"stage":"full","vibrationVelocity":"45 mm/s"}`, "Full throttle", "Vibration", "fail", "twice"},
		{"a baseline past a limit", strings.Replace(tern(""), `"2 mm/s"`, `"30 mm/s"`, 1), `{"stage":"cruise","engineSpeed":"2300 rpm","vibrationVelocity":"12 mm/s"}`, "Under way, cruising", "Vibration", "noted", "counts for nothing"},
		{"no drips, packing not named", `{"name":"Tern","engine":{"idleSpeed":"800 rpm","speed":"3000 rpm"}}`, `{"stage":"cruise","dripRate":"0 drips/min"}`, "Under way, cruising", "Drips under way", "look again", "at least 1"},
		{"no drips of a face seal", `{"name":"Tern","engine":{"idleSpeed":"800 rpm","speed":"3000 rpm"},"readings":[{"date":"2026-01-01","symptoms":[{"evidence":"seal-kind","answer":"yes"}]}]}`, `{"stage":"cruise","dripRate":"0 drips/min"}`, "Under way, cruising", "Drips under way", "noted", ""},
		{"drips, packing not named", `{"name":"Tern","engine":{"idleSpeed":"800 rpm","speed":"3000 rpm"}}`, `{"stage":"cruise","dripRate":"6 drips/min"}`, "Under way, cruising", "Drips under way", "pass", ""},
		{"no baseline of a hot gearbox", tern(""), `{"stage":"cruise","gearboxTemperature":"95 °C","waterTemperature":"15 °C"}`, "Under way, cruising", "Gearbox above the sea", "noted", "No baseline"},
		{"rise too near to tell", tern(""), `{"stage":"full","glandTemperature":"35 °C","waterTemperature":"15 °C"}`, "Full throttle", "Gland above the sea", "look again", "cannot tell"},
		{"the maker's rise is a limit", tern(figures), `{"stage":"full","glandTemperature":"38 °C","waterTemperature":"15 °C"}`, "Full throttle", "Gland above the sea", "fail", "maker's figure"},
		{"under the maker's", tern(figures), `{"stage":"full","glandTemperature":"31 °C","waterTemperature":"15 °C"}`, "Full throttle", "Gland above the sea", "pass", ""},
		{"colder than the sea", tern(""), `{"stage":"full","glandTemperature":"11 °C","waterTemperature":"15 °C"}`, "Full throttle", "Gland above the sea", "look again", "Colder"},
		{"no sea", tern(""), `{"stage":"full","glandTemperature":"31 °C"}`, "Full throttle", "Gland above the sea", "not read", ""},
		{"boils", tern(""), `{"stage":"full","glandTemperature":"104 °C","waterTemperature":"15 °C"}`, "Full throttle", "Gland, against boiling", "fail", "at most 100 °C"},
		{"does not boil", tern(""), `{"stage":"full","glandTemperature":"97 °C"}`, "Full throttle", "Gland, against boiling", "pass", ""},
		{"steady", tern(""), `{"stage":"cruise","engineSpeed":"2340 rpm","glandTemperature":"27 °C","glandBefore":"26.5 °C","waterTemperature":"15 °C"}`, "Under way, cruising", "Gland above the sea", "pass", ""},
		{"not settled", tern(""), `{"stage":"cruise","engineSpeed":"2340 rpm","glandTemperature":"27 °C","glandBefore":"25 °C","waterTemperature":"15 °C"}`, "Under way, cruising", "Gland above the sea", "look again", "not settled"},
		{"once only", tern(""), `{"stage":"cruise","engineSpeed":"2340 rpm","glandTemperature":"27 °C","waterTemperature":"15 °C"}`, "Under way, cruising", "Gland above the sea", "look again", "five minutes before"},
		{"over its baseline of 10 K and 5 K", tern(""), `{"stage":"cruise","engineSpeed":"2340 rpm","glandTemperature":"32.5 °C","glandBefore":"32.5 °C","waterTemperature":"15 °C"}`, "Under way, cruising", "Gland above the sea", "look again", "baseline"},
		{"vibration under twice its own", tern(""), `{"stage":"cruise","engineSpeed":"2300 rpm","vibrationVelocity":"3.4 mm/s"}`, "Under way, cruising", "Vibration", "pass", ""},
		{"vibration over twice its own", tern(""), `{"stage":"cruise","engineSpeed":"2300 rpm","vibrationVelocity":"4.8 mm/s"}`, "Under way, cruising", "Vibration", "look again", "baseline"},
		{"too few counted to compare", tern(""), `{"stage":"after","dripRate":"3 drips/min"}`, "Back, stopped, warm", "Drips at rest", "noted", "finely enough"},
		{"drips more than three times her own", tern(""), `{"stage":"after","dripRate":"18 drips/min"}`, "Back, stopped, warm", "Drips at rest", "look again", "baseline"},
		{"at another speed there is no baseline", tern(""), `{"stage":"cruise","engineSpeed":"2000 rpm","vibrationVelocity":"4.8 mm/s"}`, "Under way, cruising", "Vibration", "noted", "Nothing to hold it against"},
		{"gearbox under the guide", tern(""), `{"stage":"cruise","gearboxTemperature":"85 °C"}`, "Under way, cruising", "Gearbox", "pass", ""},
		{"gearbox over the guide", tern(""), `{"stage":"cruise","gearboxTemperature":"95 °C"}`, "Under way, cruising", "Gearbox", "look again", "guide"},
		{"gearbox over the maker's", tern(figures), `{"stage":"cruise","gearboxTemperature":"85 °C"}`, "Under way, cruising", "Gearbox", "fail", "maker's figure"},
		{"engine reaches its speed", tern(""), `{"stage":"full","engineSpeed":"2980 rpm"}`, "Full throttle", "Engine speed reached", "pass", ""},
		{"engine held back", tern(""), `{"stage":"full","engineSpeed":"2800 rpm"}`, "Full throttle", "Engine speed reached", "look again", "at least 97 %"},
		{"engine runs over", tern(""), `{"stage":"full","engineSpeed":"3200 rpm"}`, "Full throttle", "Engine speed reached", "look again", "at most 104 %"},
		{"no leak", tern(""), `{"stage":"after","leaks":"none"}`, "Back, stopped, warm", "Leaks", "pass", ""},
		{"a leak", tern(""), `{"stage":"after","leaks":"some"}`, "Back, stopped, warm", "Leaks", "fail", "none"},
		{"marks in line", tern(""), `{"stage":"cold","marks":"in-line"}`, "Next day, cold", "Paint marks", "pass", ""},
		{"a mark moved", tern(""), `{"stage":"cold","marks":"moved"}`, "Next day, cold", "Paint marks", "fail", "in line"},
		{"fluid over its mark", tern(""), `{"stage":"after","fluidLevel":"high"}`, "Back, stopped, warm", "Gearbox fluid level", "fail", "between"},
		{"takes up late", tern(""), `{"stage":"astern","drive":"late"}`, "Under way, astern", "Takes up drive", "fail", "at once"},
	} {
		s := testboat.RunOn(t, c.boat, "sea-trial", `{"tachometer":"optical-tachometer","runs":[`+c.run+`]}`)
		word, reason := said(t, s, c.stage, c.reading)
		if word != c.want || !strings.Contains(reason, c.reason) {
			t.Errorf("%s: %s, %q", c.name, word, reason)
		}
		if v := s.Verdict("trial-passed"); v == nil || v.Word == "within" || (word == "fail") != (v.Word == "beyond") {
			t.Errorf("%s: one reading of many, and the whole is %+v", c.name, v)
		}
	}
}

// The panel's tachometer, off by 5 %, cannot judge the propeller.
func TestPitchGoesByTheTachometer(t *testing.T) {
	words := map[string]string{"right": "right: the engine reaches its rated speed", "too-few": "too much, or something holds her back: the engine does not reach its rated speed",
		"too-many": "too little, or the drive slips: the engine runs over its rated speed", "not-sure": "not enough to tell with this tachometer"}
	for _, c := range []struct{ speed, gauge, want string }{
		{"2980 rpm", "optical-tachometer", "right"}, {"2980 rpm", "panel-tachometer", "not-sure"},
		{"2800 rpm", "optical-tachometer", "too-few"}, {"3250 rpm", "optical-tachometer", "too-many"},
		{"2600 rpm", "panel-tachometer", "too-few"}, {"2915 rpm", "optical-tachometer", "not-sure"},
	} {
		s := testboat.Run(t, "sea-trial", fmt.Sprintf(`{"idleSpeed":"800 rpm","engineSpeed":"3000 rpm","tachometer":%q,"runs":[{"stage":"full","engineSpeed":%q}]}`, c.gauge, c.speed), marinecalc.Options{})
		if got := s.Result("pitchSays"); got == nil || got.Text != words[c.want] {
			t.Errorf("%s by %s: %+v", c.speed, c.gauge, got)
		}
	}
	// 200 rpm short at 200 rpm an inch is an inch.
	s := testboat.Run(t, "sea-trial", `{`+engine+`,"runs":[{"stage":"full","engineSpeed":"2800 rpm"}]}`, marinecalc.Options{NoRanges: true})
	if got := *s.Result("pitchChange").SI; math.Abs(got-0.0254) > 1e-12 {
		t.Errorf("%g m", got)
	}
}

// A trial that is whole passes; one reading taken out of it, and it has not.
func TestNothingPassesFromSilence(t *testing.T) {
	text, _ := testboat.Demo(t, "kittiwake").MarshalJSON()
	s := testboat.RunOn(t, string(text), "sea-trial", `{}`)
	if v := s.Verdict("trial-passed"); v == nil || v.Word != "within" || s.Result("outcome").Text != "passed" {
		t.Fatalf("%+v, %s", v, s.Result("says").Text)
	}
	without := strings.Replace(string(text), `"stage": "cold", "dripRate": "1 drips/min", "leaks": "none"`, `"stage": "cold", "dripRate": "1 drips/min"`, 1)
	s = testboat.RunOn(t, without, "sea-trial", `{}`)
	if v := s.Verdict("trial-passed"); v == nil || v.Word != "not measured" || !strings.Contains(s.Result("says").Text, "1 of") {
		t.Errorf("%+v, %s", v, s.Result("says").Text)
	}
}

func TestReadingsOfAHealthyBoatAreMarked(t *testing.T) {
	for _, c := range []struct{ name, readings, want string }{
		{"the first after the cure", `{"date":"2026-03-01","dripRateAtRest":"9 drips/min"},{"date":"2026-04-01","changed":true,"dripRateAtRest":"2 drips/min"},{"date":"2026-04-20","dripRateAtRest":"3 drips/min"}`, "2 drips/min on 2026-04-01"},
		{"one marked so", `{"date":"2026-03-01","baseline":true,"dripRateAtRest":"4 drips/min"},{"date":"2026-04-01","changed":true,"dripRateAtRest":"2 drips/min"}`, "4 drips/min on 2026-03-01"},
		{"none where nothing was cured", `{"date":"2026-03-01","dripRateAtRest":"9 drips/min"}`, ""},
		{"none of the day itself", `{"date":"2026-05-01","changed":true,"dripRateAtRest":"9 drips/min"}`, ""},
	} {
		s := testboat.RunOn(t, `{"name":"Tern","engine":{"idleSpeed":"800 rpm","speed":"3000 rpm"},"readings":[`+c.readings+`]}`, "sea-trial", `{"date":"2026-05-01","runs":[{"stage":"rest","dripRate":"2 drips/min"}]}`)
		if got := testboat.Column(t, s, "checks", "reading", "baseline")["Drips at rest"]; got != c.want {
			t.Errorf("%s: %q", c.name, got)
		}
	}
}

func TestTrialsThatCannotBeAreRefused(t *testing.T) {
	for _, c := range []struct{ name, input, where string }{
		{"no such stage", `{` + engine + `,"runs":[{"stage":"crusie"}]}`, "/runs/0/stage"},
		{"twice", `{` + engine + `,"runs":[{"stage":"rest"},{"stage":"rest"}]}`, "/runs/1/stage"},
		{"rated under idle", `{"idleSpeed":"800 rpm","engineSpeed":"700 rpm"}`, "/engineSpeed"},
		{"a word that is none", `{` + engine + `,"runs":[{"stage":"rest","leaks":"few"}]}`, "/runs/0/leaks"},
		{"a length as temperature", `{` + engine + `,"runs":[{"stage":"full","glandTemperature":"3 mm"}]}`, "/runs/0/glandTemperature"},
		{"a gauge for something else", `{` + engine + `,"thermometer":"drip-count","runs":[{"stage":"full","glandTemperature":"30 °C"}]}`, "/thermometer"},
		{"no speeds", `{}`, "/idleSpeed"},
	} {
		_, err := marinecalc.Run("sea-trial", []byte(c.input), marinecalc.Options{})
		if !slices.ContainsFunc(problem.Of(err), func(p problem.Problem) bool { return p.Where == c.where }) {
			t.Errorf("%s: %v", c.name, err)
		}
	}
}

// What the rows of the trial name is there: stages, readings, limits.
func TestRowsOfTheTrialPointSomewhere(t *testing.T) {
	form, err := boat.Contract()
	if err != nil {
		t.Fatal(err)
	}
	run := form.Root.Child("seaTrial").Child("runs").Items
	book, stages := rules.Standard(), map[string]bool{}
	for _, r := range book.Table("trial-stages").Rows.All() {
		stages[r.ID] = false
	}
	limits := map[string]bool{}
	for _, l := range book.AllLimits().All() {
		limits[l.Calculation+"/"+l.ID] = true
	}
	questions := map[string]bool{}
	for _, e := range book.Evidence().All() {
		questions[e.ID] = true
	}
	for _, r := range book.Table("trial-checks").Rows.All() {
		text := func(column string) string { return r.Values.Of(column).Text }
		p := run.Child(text("reading"))
		if p == nil || text("above") != "" && run.Child(text("above")) == nil || text("good") != "" && !slices.Contains(p.Enum, text("good")) {
			t.Errorf("%s reads what there is not", r.ID)
		}
		for _, column := range []string{"baseline", "baselineFrom"} {
			if name := text(column); name != "" && form.Root.Child("readings").Items.Child(name) == nil {
				t.Errorf("%s: the boat has no reading %s", r.ID, name)
			}
		}
		if sign := text("notWith"); sign != "" && !questions[sign] {
			t.Errorf("%s: there is no question %s", r.ID, sign)
		}
		for _, stage := range strings.Fields(text("stages")) {
			if _, has := stages[stage]; !has {
				t.Errorf("%s: there is no stage %s", r.ID, stage)
			}
			stages[stage] = true
		}
		for _, l := range strings.Fields(text("limits")) {
			if !limits[l] {
				t.Errorf("%s: there is no limit %s", r.ID, l)
			}
		}
	}
	for stage, has := range stages {
		if !has {
			t.Errorf("nothing is read at %s", stage)
		}
	}
}

func TestTrialIsDrawn(t *testing.T) {
	s := testboat.Run(t, "sea-trial", `{`+engine+`}`, marinecalc.Options{})
	if len(s.Drawings) != 1 || testboat.WellFormed(s.Drawings[0].SVG) != "" {
		t.Errorf("%v", s.Drawings)
	}
	for _, want := range []sheet.Signal{"DANGER", "WARNING"} {
		if !slices.ContainsFunc(s.Cautions, func(c sheet.Caution) bool { return c.Signal == want }) {
			t.Errorf("no %s", want)
		}
	}
}
