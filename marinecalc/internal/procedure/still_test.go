package procedure_test

import (
	"os"
	"slices"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/sheet"
)

// A step that runs the shaft before anything is cured is left out, and told,
// where the fault finding keeps the shaft still, and only there; what runs it
// afterwards is held where the work leaves the reason standing.
func TestAShaftKeptStillIsNotRun(t *testing.T) {
	for _, c := range []struct {
		symptom, work string
		still, held   bool
	}{
		{"knock-into-gear", "align-coupling", false, false},
		{"damper-seen", "replace-damper-plate", true, false},
		{"damper-seen", "align-coupling", true, true},
		{"key-seen", "replace-key", true, false},
		{"key-seen", "repair-propeller", true, true},
		{"coupling-insert-seen", "replace-coupling-insert", true, false},
		{"spline-seen", "replace-damper-spline", true, false},
		{"after-touching", "straighten-shaft", true, false},
		{"after-touching", "repack-gland", true, true},
		{"gland-hot", "align-coupling", true, true},
	} {
		b := testboat.Read(t, `{"name": "Stint", "lies": "afloat", "symptoms": [{"evidence": "`+c.symptom+`", "answer": "yes"}, {"evidence": "shake-grows", "answer": "yes"}]}`)
		p := made(t, b, marinecalc.Options{NoRanges: true}, c.work)
		if omitted := !hasStep(p, "note-under-way"); omitted != c.still || (len(p.LeftOut) > 0) != c.still {
			t.Errorf("%s, %s: left out: %v, told %q", c.symptom, c.work, omitted, p.LeftOut)
		}
		for _, phase := range p.Phases {
			for _, s := range phase.Steps {
				turns := slices.ContainsFunc(s.Cautions, func(c sheet.Caution) bool { return strings.HasPrefix(c.Text, "A turning shaft") })
				stops := slices.ContainsFunc(s.Cautions, func(c sheet.Caution) bool { return strings.HasPrefix(c.Text, "The shaft stays still") })
				if (s.Hold != "") != (c.held && turns) || stops != (s.Hold != "") {
					t.Errorf("%s, %s, %s: held by %q", c.symptom, c.work, s.ID, s.Hold)
				}
			}
		}
	}
	done := testboat.Read(t, `{"name": "Stint", "symptoms": [{"evidence": "damper-seen", "answer": "yes"}], "work": {"steps": [{"step": "note-under-way", "done": "2026-05-02", "remedies": ["replace-damper-plate"]}]}}`)
	if p := made(t, done, marinecalc.Options{NoRanges: true}, "replace-damper-plate"); !hasStep(p, "note-under-way") || p.Ticked != 1 {
		t.Error("a step that was done before is left out")
	}
}

// What runs the shaft is held back by a verdict that forbids power as by the fault
// finding, until the work of the procedure cures what the verdict is of: a flange
// whose pinch bolts hold a tenth of the torque, and one that they hold.
func TestAVerdictThatForbidsPowerHoldsBackWhatRunsTheShaft(t *testing.T) {
	text, err := os.ReadFile(testboat.Root("testdata", "cases", "weak-split-clamp.json"))
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		torque, work string
		still, held  bool
	}{{"4 N·m", "align-coupling", true, true}, {"4 N·m", "refit-coupling", true, false}, {"24 N·m", "align-coupling", false, false}} {
		boat := strings.Replace(string(text), "6 N·m", c.torque, 1)
		if c.torque == "24 N·m" {
			boat = strings.Replace(strings.Replace(boat, "steel-oily", "steel-dry", 1), "28 kW", "5 kW", 1)
		}
		p := made(t, testboat.Read(t, boat), marinecalc.Options{NoRanges: true}, c.work)
		if omitted := len(p.LeftOut) > 0; omitted != c.still || omitted && !strings.Contains(p.LeftOut[0], "forbids power") {
			t.Errorf("%s, %s: left out %q", c.torque, c.work, p.LeftOut)
		}
		held, runs := 0, 0
		for _, phase := range p.Phases {
			for _, s := range phase.Steps {
				if slices.ContainsFunc(s.Cautions, func(c sheet.Caution) bool { return strings.HasPrefix(c.Text, "A turning shaft") }) {
					runs++
				}
				if turns := slices.ContainsFunc(s.Cautions, func(c sheet.Caution) bool { return strings.HasPrefix(c.Text, "A turning shaft") }); (s.Once != "") != (turns && c.still && !c.held) {
					t.Errorf("%s, %s, %s: once %q", c.torque, c.work, s.ID, s.Once)
				} else if s.Once != "" && !strings.Contains(s.Once, "read again: torque margin of shaft and flange ahead (sheet “Coupling flange bore”)") {
					t.Errorf("%s: %s", s.ID, s.Once)
				}
				if s.Hold != "" {
					held++
					if !strings.Contains(s.Hold, "orque margin of shaft and flange ahead") {
						t.Errorf("%s: %s", s.ID, s.Hold)
					}
				}
			}
		}
		if runs == 0 || (held > 0) != c.held || c.held && held != runs {
			t.Errorf("%s, %s: %d of %d steps that run the shaft held", c.torque, c.work, held, runs)
		}
	}
}
