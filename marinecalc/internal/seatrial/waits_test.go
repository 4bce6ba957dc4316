package seatrial_test

import (
	"strings"
	"testing"

	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/rules"
)

// whole are runs of a trial in which all was read and all was well.
const whole = `[{"stage":"rest","dripRate":"2 drips/min","leaks":"none","fluidLevel":"between"},{"stage":"neutral","exhaustWater":"steady","leaks":"none"},` +
	`{"stage":"ahead-fast","drive":"clean","leaks":"none"},{"stage":"astern-fast","drive":"clean","marks":"in-line"},` +
	`{"stage":"slow","glandTemperature":"21 °C","waterTemperature":"15 °C","vibrationVelocity":"2 mm/s","dripRate":"7 drips/min"},` +
	`{"stage":"cruise","glandTemperature":"23 °C","glandBefore":"23 °C","waterTemperature":"15 °C","gearboxTemperature":"58 °C","vibrationVelocity":"2.6 mm/s","dripRate":"8 drips/min","leaks":"none"},` +
	`{"stage":"full","engineSpeed":"2990 rpm","glandTemperature":"25 °C","glandBefore":"25 °C","waterTemperature":"15 °C","gearboxTemperature":"66 °C","vibrationVelocity":"3 mm/s","exhaustWater":"steady","leaks":"none"},` +
	`{"stage":"astern","drive":"clean"},{"stage":"after","dripRate":"2 drips/min","leaks":"none","marks":"in-line","fluidLevel":"between"},{"stage":"cold","dripRate":"2 drips/min","leaks":"none","marks":"in-line"}]`

// A trial that met everything is passed only while nothing stands against it:
// no reason to keep the shaft still, nothing found and not cured, no work since.
func TestNothingPassesOverAFaultOrLaterWork(t *testing.T) {
	seen := func(evidence, answer string) string {
		return `{"date":"2026-05-01","symptoms":[{"evidence":"` + evidence + `","answer":"` + answer + `"}]}`
	}
	for _, c := range []struct{ name, events, readings, run, unrun string }{
		{"all well", "", seen("coupling-bolt-turns", "no"), "Passed", "Not run yet: this"},
		{"loose bolts", "", seen("coupling-bolt-turns", "yes"), "Not to be run again now: the shaft stands. Loose bolts shear", "Not to be run now: the shaft stands. Loose bolts shear"},
		{"a worn bearing", "", seen("bearing-play", "yes"), "not cured as far as the boat file tells: Stern bearing worn", "first comes the cure. Found: Stern bearing worn"},
		{"work the day before", `{"date":"2026-04-30","what":"mounts changed"}`, "", "Passed", "Not run yet: this"},
		{"work of the day", `{"date":"2026-05-01","what":"mounts changed"}`, "", "Passed", "Not run yet: this"},
		{"work the day after", `{"date":"2026-05-02","what":"mounts changed"}`, "", "After it came “mounts changed” on 2026-05-02", "Not run yet: this"},
		{"readings after work", "", `{"date":"2026-05-03","changed":true,"dripRate":"5 drips/min"}`, "After it came work before the readings of 2026-05-03", "Not run yet: this"},
	} {
		boat := func(trial string) string {
			return `{"name":"Tern","engine":{"idleSpeed":"800 rpm","speed":"3000 rpm"},"gearbox":{"ratioAhead":2,"ratioAstern":"2.5"},"gland":{"packing":"flax"},` + trial +
				`"events":[` + c.events + `],"readings":[` + c.readings + `]}`
		}
		s := testboat.RunOn(t, boat(`"seaTrial":{"date":"2026-05-01","tachometer":"optical-tachometer","runs":`+whole+`},`), "sea-trial", `{}`)
		if is := s.Result("says").Text; !strings.Contains(is, c.run) {
			t.Errorf("%s, run: %q, want %q", c.name, is, c.run)
		}
		passes := c.run == "Passed"
		if v := s.Verdict("trial-passed"); passes != (v != nil && v.Reads == "OK") {
			t.Errorf("%s: %+v", c.name, v)
		}
		if is := testboat.RunOn(t, boat(""), "sea-trial", `{}`).Result("says").Text; !strings.Contains(is, c.unrun) {
			t.Errorf("%s, not run: %q, want %q", c.name, is, c.unrun)
		}
	}
}

// Where bolts, hub or propeller are found loose the shaft stands.
func TestLooseOnTheShaftKeepsItStill(t *testing.T) {
	for _, e := range rules.Standard().Evidence().All() {
		if e.KeepStill == "" {
			continue
		}
		s := testboat.RunOn(t, `{"name":"Tern","readings":[{"date":"2026-05-01","symptoms":[{"evidence":"`+e.ID+`","answer":"yes"}]}]}`, "fault-finding", `{}`)
		if r := s.Result("heldBack"); r == nil || !strings.Contains(r.Text, strings.TrimSuffix(e.KeepStill, ".")+" (“"+e.Title+"” yes)") {
			t.Errorf("%s: %+v", e.ID, r)
		}
	}
}

// In front stand the cautions of the stages still to run: all before the first,
// none once it is passed, and where the shaft stands that alone.
func TestCautionsAreOfWhatIsStillToRun(t *testing.T) {
	rest := `{"stage":"rest","dripRate":"2 drips/min","leaks":"none","fluidLevel":"between"}`
	cold := `{"stage":"cold","dripRate":"2 drips/min","leaks":"none","marks":"in-line"}`
	for _, c := range []struct {
		name, runs, readings string
		want                 []string
	}{
		// The gravest first and, of those alike, as the stages come: the first is
		// read with the engine stopped, so carbon monoxide leads once it is started.
		{"not run", "", "", []string{"Nothing is touched", "nobody in the water", "Carbon monoxide", "Two aboard", "doubled lines"}},
		{"read at rest, to be started", "[" + rest + "]", "", []string{"Carbon monoxide", "Nothing is touched", "nobody in the water", "doubled lines", "Two aboard"}},
		{"passed", whole, "", nil},
		{"the last stage open", strings.Replace(whole, ","+cold, "", 1), "", []string{"Nothing is touched"}},
		{"loose bolts", "", `{"date":"2026-05-01","symptoms":[{"evidence":"coupling-bolt-turns","answer":"yes"}]}`, []string{"The shaft stays still"}},
		{"loose bolts after a trial", whole, `{"date":"2026-05-01","symptoms":[{"evidence":"coupling-bolt-turns","answer":"yes"}]}`, []string{"The shaft stays still"}},
	} {
		trial := ""
		if c.runs != "" {
			trial = `"seaTrial":{"date":"2026-05-01","tachometer":"optical-tachometer","runs":` + c.runs + `},`
		}
		s := testboat.RunOn(t, `{"name":"Tern","engine":{"idleSpeed":"800 rpm","speed":"3000 rpm"},"gearbox":{"ratioAhead":2,"ratioAstern":"2.5"},"gland":{"packing":"flax"},`+trial+`"readings":[`+c.readings+`]}`, "sea-trial", `{}`)
		if len(s.Cautions) != len(c.want) {
			t.Errorf("%s: %d cautions, want %d: %+v", c.name, len(s.Cautions), len(c.want), s.Cautions)
			continue
		}
		for i, want := range c.want {
			if !strings.Contains(s.Cautions[i].Text, want) {
				t.Errorf("%s: %q, want %q", c.name, s.Cautions[i].Text, want)
			}
		}
	}
}
