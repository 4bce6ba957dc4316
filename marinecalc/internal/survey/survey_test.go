package survey_test

import (
	"encoding/json"
	"os"
	"slices"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/catalogue"
	"example.org/driveline/marinecalc/internal/survey"
	"example.org/driveline/marinecalc/internal/testboat"
)

func TestSurveySaysWhatIsMissing(t *testing.T) {
	s := testboat.Check(t, testboat.Demo(t, "kittiwake"), marinecalc.Options{NoRanges: true})
	if len(s.Faults) > 0 {
		t.Errorf("the demo boat has faults: %+v", s.Faults)
	}
	bare := testboat.Read(t, `{"name": "Bare", "engine": {"power": "20 kW"}}`)
	s = testboat.Check(t, bare, marinecalc.Options{NoRanges: true})
	if len(s.Sheets) != 0 || len(s.Missing) != len(catalogue.Calculations) {
		t.Errorf("%d sheets, %d missing of %d", len(s.Sheets), len(s.Missing), len(catalogue.Calculations))
	}
	for _, m := range s.Missing {
		if m.Calculation == "shaft-torque" && (len(m.Needs) != 2 || m.Needs[0].How == "") {
			t.Errorf("shaft torque needs %+v", m.Needs)
		}
	}
}

// A verdict that waits for a figure is drawn once the figure is typed, and the
// survey counts what waits.
func TestAwaitedFigureLetsMoreBeTold(t *testing.T) {
	boat := withoutFigures(t, "kittiwake")
	s := testboat.Check(t, boat, marinecalc.Options{})
	waiting := 0
	for _, f := range s.Findings {
		if slices.Contains(f.Verdict.Awaits, "Shock factor") {
			waiting++
		}
	}
	if i := slices.IndexFunc(s.Awaited, func(a survey.Awaited) bool { return a.Title == "Shock factor" }); i < 0 || waiting == 0 || s.Awaited[i].Verdicts != waiting || !slices.Contains(s.Awaited[i].Sheets, "key-strength") {
		t.Fatalf("%d verdicts wait for the shock factor, the survey has %+v", waiting, s.Awaited)
	}
	typed := testboat.Run(t, "key-strength", `{"peakTorque": "200 N·m"}`, marinecalc.Options{Boat: boat})
	for _, v := range typed.Verdicts {
		if len(v.Awaits) > 0 || v.Word == "cannot tell" {
			t.Errorf("with the peak torque typed: %+v", v)
		}
	}
}

// withoutFigures is a demonstration boat without the figures of its makers.
func withoutFigures(t *testing.T, name string) *marinecalc.Boat {
	t.Helper()
	text, err := os.ReadFile(testboat.Root("testdata", "boats", name+".json"))
	if err != nil {
		t.Fatal(err)
	}
	var members map[string]any
	if err := json.Unmarshal(text, &members); err != nil {
		t.Fatal(err)
	}
	if members["makersFigures"] == nil {
		t.Fatalf("%s has no makers' figures to leave out", name)
	}
	delete(members, "makersFigures")
	return testboat.Read(t, testboat.Text(t, members))
}

// A boat that does not say what is to be done lacks that; it is no fault.
func TestSurveySaysThatNoWorkIsChosen(t *testing.T) {
	b := testboat.Read(t, `{"name": "Test", "readings": [{"date": "2026-03-02", "dripRate": "5 drips/min"}]}`)
	s := testboat.Check(t, b, marinecalc.Options{NoRanges: true})
	if !slices.ContainsFunc(s.Missing, func(m survey.Missing) bool {
		return m.Calculation == "work-plan" && len(m.Needs) == 1 && m.Needs[0].Input == "remedies"
	}) {
		t.Errorf("missing %+v, faults %+v", s.Missing, s.Faults)
	}
}
