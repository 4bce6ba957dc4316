package marinecalc

import (
	"context"
	"math"
	"strings"
	"testing"

	"example.org/driveline/marinecalc/internal/catalogue"
	"example.org/driveline/marinecalc/sheet"
)

// shaftCalculations are those of package shaft.
var shaftCalculations = []string{"shaft-strength", "shaft-whirl", "shaft-droop", "key-strength", "shaft-withdrawal"}

func runInput(t *testing.T, id, input, units string) *Sheet {
	t.Helper()
	s, err := Run(id, []byte(input), Options{Units: units, NoRanges: true})
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// What goes in in one unit system comes out the same as in the other.
func TestShaftUnitsInAndOut(t *testing.T) {
	for _, c := range []struct{ id, metric, us string }{
		{"shaft-strength", `{"shaftDiameter":"25.4 mm","shaftPower":"22.371 kW","shaftSpeed":"1300 rpm","shaftAlloy":"s31600-annealed","peakTorque":"338.954 N·m"}`,
			`{"shaftDiameter":"1 in","shaftPower":"30 hp","shaftSpeed":"1300 rpm","shaftAlloy":"s31600-annealed","peakTorque":"250 lbf·ft"}`},
		{"shaft-droop", `{"shaftDiameter":"31.75 mm","freeLength":"762 mm","couplingMass":"4.53592 kg","couplingDiameter":"101.6 mm","shaftAlloy":"s31600-annealed"}`,
			`{"shaftDiameter":"1-1/4 in","freeLength":"30 in","couplingMass":"10 lb","couplingDiameter":"4 in","shaftAlloy":"s31600-annealed"}`},
		{"shaft-whirl", `{"sections":[{"length":"3.048 m","diameter":"31.75 mm"}],"bearings":[{"at":"0 mm"},{"at":"1524 mm"},{"at":"2921 mm"}],"propellerMass":"9.07185 kg","shaftSpeed":"1200 rpm","shaftAlloy":"s31600-annealed"}`,
			`{"sections":[{"length":"10 ft","diameter":"1-1/4 in"}],"bearings":[{"at":"0 in"},{"at":"5 ft"},{"at":"115 in"}],"propellerMass":"20 lb","shaftSpeed":"1200 rpm","shaftAlloy":"s31600-annealed"}`},
		{"key-strength", `{"shaftDiameter":"25.4 mm","shaftTorque":"169.477 N·m","keyWidth":"6.35 mm","keyLength":"50.8 mm","keyYieldStrength":"206.843 MPa"}`,
			`{"shaftDiameter":"1 in","shaftTorque":"125 lbf·ft","keyWidth":"1/4 in","keyLength":"2 in","keyYieldStrength":"30 ksi"}`},
		{"shaft-withdrawal", `{"task":"coupling-off","roomAft":"127 mm","socketDepth":"76.2 mm"}`, `{"task":"coupling-off","roomAft":"5 in","socketDepth":"3 in"}`},
	} {
		metric, us := runInput(t, c.id, c.metric, "us"), runInput(t, c.id, c.us, "metric")
		for _, r := range metric.Results {
			other := us.Result(r.Name)
			if other == nil || (r.SI == nil) != (other.SI == nil) || r.SI == nil && r.Text != other.Text ||
				r.SI != nil && math.Abs(*r.SI-*other.SI) > 2e-5*math.Abs(*r.SI)+1e-12 {
				t.Errorf("%s: %s is %+v from metric and %+v from US input", c.id, r.Name, r, other)
			}
		}
	}
}

// Every calculation of the shaft draws, cautions and says what to do next.
func TestShaftSheetsAreWhole(t *testing.T) {
	for i, k := range openAll(t) {
		id := catalogue.Calculations[i].ID
		if !strings.Contains(strings.Join(shaftCalculations, " "), id) {
			continue
		}
		s, err := standard.run(context.Background(), id, typedInput(t, k.ID), Options{Trials: 256})
		if err != nil {
			t.Errorf("%s: its own examples are refused: %v", id, err)
			continue
		}
		if len(s.Drawings) == 0 || len(s.Cautions) == 0 || len(s.Next) == 0 || len(s.Verdicts) == 0 {
			t.Errorf("%s: %d drawings, %d cautions, %d things to do, %d verdicts", id, len(s.Drawings), len(s.Cautions), len(s.Next), len(s.Verdicts))
		}
	}
}

// The two key tables disagree for four sizes, and the sheet says so: 7/8, 1-3/4
// and 2-1/4 in, and 1-1/4 in, where the row of ASME B17.1 for 1/4 in keys ends.
func TestKeyTablesDisagree(t *testing.T) {
	for size, tells := range map[string]bool{"3/4": false, "7/8": true, "1": false, "1-1/8": false, "1-1/4": true, "1-3/8": false, "1-1/2": false, "1-3/4": true, "2": false, "2-1/4": true, "2-1/2": false, "2-3/4": false, "3": false} {
		width := func(pick string) float64 {
			s := runInput(t, "key-strength", `{"shaftDiameter":"`+size+` in","shaftTorque":"100 N·m","keyLength":"50 mm","keyYieldStrength":"200 MPa",`+pick+`}`, "us")
			said := false
			for _, n := range s.Next {
				said = said || strings.Contains(n.Text, "the tables disagree")
			}
			if said != tells {
				t.Errorf("%s in: disagreement told: %v", size, said)
			}
			return *s.Input("keyWidth").SI
		}
		j755, b17 := width(`"shaftEndTable":"j755-`+size+`"`), width(`"keyTable":"b17.1-square"`)
		if (math.Abs(j755-b17) > 1e-9) != tells {
			t.Errorf("%s in: J755 %g, B17.1 %g", size, j755, b17)
		}
	}
}

// A result of one calculation is an input of the next: the droop of the boat
// goes into the alignment when its shaft end hung free, and only then.
func TestDroopFeedsTheAlignment(t *testing.T) {
	boat := boatOf(t, `{"name":"Marguerite","coupling":{"diameter":"102 mm","kind":"rigid","mass":"3 kg"},"shaft":{"diameter":"30 mm","alloy":"s31600-annealed","freeLength":"700 mm"},
		"readings":[{"date":"2026-05-02","couplingGaps":[{"clock":"12 o'clock","gap":"0.30 mm"},{"clock":"3 o'clock","gap":"0.35 mm"},{"clock":"6 o'clock","gap":"0.40 mm"},{"clock":"9 o'clock","gap":"0.35 mm"}]}]}`)
	o := Options{Boat: boat, NoRanges: true}
	droop := mustRun(t, "shaft-droop", `{}`, o)
	held, free := mustRun(t, "coupling-alignment", `{}`, o), mustRun(t, "coupling-alignment", `{"shaftEnd":"hanging-free"}`, o)
	gap := *droop.Result("droopGap").SI
	if got := *free.Result("gapVertical").SI - *held.Result("gapVertical").SI; math.Abs(got-gap) > 1e-12 {
		t.Errorf("the droop's gap of %g moved the vertical gap by %g", gap, got)
	}
	if in := free.Input("droopSlope"); in == nil || in.Origin != "earlier result" || in.Source != "Shaft droop" {
		t.Errorf("the slope came from %+v", in)
	}
	if held.Result("droopGapTaken") != nil {
		t.Error("a droop was taken off an end that was held up")
	}
}

// The verdicts of a sheet by the id of their limit.
func verdictsOf(s *Sheet) map[string]sheet.Verdict {
	byLimit := map[string]sheet.Verdict{}
	for _, v := range s.Verdicts {
		byLimit[v.Limit] = v
	}
	return byLimit
}

// Without a peak torque the limits at the peak are not measured, and sheet
// and advice say how to come by one; with one they are judged.
func TestNoPeakTorqueNoVerdictAtThePeak(t *testing.T) {
	for limit, c := range map[string]struct{ id, input string }{
		"shaft-yield-at-peak": {"shaft-strength", `"shaftDiameter":"30 mm","shaftPower":"22 kW","shaftSpeed":"1300 rpm","shaftAlloy":"s31600-annealed"`},
		"key-at-peak":         {"key-strength", `"shaftDiameter":"30 mm","shaftTorque":"160 N·m","keyWidth":"8 mm","keyLength":"50 mm","keyYieldStrength":"250 MPa"`},
	} {
		s := runInput(t, c.id, "{"+c.input+"}", "metric")
		if v := verdictsOf(s)[limit]; v.Word != "not measured" || v.Probability != nil || !strings.Contains(v.Sentence, "shock factor times the steady torque") {
			t.Errorf("%s without a peak torque: %+v", limit, v)
		}
		told := false
		for _, n := range s.Next {
			told = told || strings.Contains(n.Text, "shock factor in shaft-torque")
		}
		if !told {
			t.Errorf("%s: no advice how to come by a peak torque: %+v", limit, s.Next)
		}
		if w := s.Result("designCase"); w == nil || !strings.Contains(w.Text, "no peak torque is known") {
			t.Errorf("%s: the sheet says of its torque: %+v", limit, w)
		}
		s = runInput(t, c.id, "{"+c.input+`,"peakTorque":"320 N·m"}`, "metric")
		if v := verdictsOf(s)[limit]; v.Word != "within" {
			t.Errorf("%s with a peak torque: %+v", limit, v)
		}
	}
}

// A yield strength typed from the certificate is enough for the yacht rule.
func TestYieldStrengthIsEnoughForTheYachtRule(t *testing.T) {
	s := runInput(t, "shaft-strength", `{"shaftDiameter":"1-3/4 in","shaftPower":"403 hp","shaftSpeed":"1050 rpm","shaftYieldStrength":"105 ksi","yachtSafetyFactor":3}`, "us")
	if v := verdictsOf(s)["shaft-yacht-rule"]; v.Word != "near the limit" { // 1.74 of 1.75 in: Gerr, Propeller Handbook, example
		t.Errorf("%+v", v)
	}
	if r := s.Result("torsionalCase"); r == nil || !strings.Contains(r.Text, "ABYC P-6") {
		t.Errorf("the sheet says of the yield strength in torsion: %+v", r)
	}
}

// A range whose ends both print as its value does is left out; its numbers
// stay, for what comes after.
func TestNoRangeThatSaysNothing(t *testing.T) {
	for accuracy, want := range map[string]string{"0.1 mm": "", "20 mm": "(-1310 to -1270 mm)"} {
		s, err := Run("shaft-withdrawal", []byte(`{"task":"coupling-off","roomAft":"110 mm ± `+accuracy+`","socketDepth":"1400 mm","workingClearance":"0 mm"}`), Options{Trials: 512})
		if err != nil {
			t.Fatal(err)
		}
		r, v := s.Result("roomSpare"), verdictsOf(s)["withdrawal-room"]
		if r.Low == nil || !(*r.Low < *r.High) || (r.Interval == "") != (want == "") {
			t.Errorf("± %s: %+v", accuracy, r.Spread)
		}
		if got := strings.Contains(v.Sentence, r.Text+" ("); got != (want != "") || !strings.Contains(v.Sentence, want) {
			t.Errorf("± %s: %s", accuracy, v.Sentence)
		}
	}
}

// The all-clear on whirling is given below half the critical speed only
// (Shigley, Mechanical Engineering Design, 9th ed., sec. 7-6, from memory), and
// never beside a speed that is beyond it.
func TestNoAllClearAboveHalfTheCriticalSpeed(t *testing.T) {
	for speed, clear := range map[string]bool{"600 rpm": true, "1200 rpm": false, "2400 rpm": false} {
		s := runInput(t, "shaft-whirl", `{"sections":[{"diameter":"30 mm","length":"2700 mm"}],"bearings":[{"at":"0 mm"},{"at":"1250 mm"},{"at":"2550 mm"}],
			"shaftSpeed":"`+speed+`","propellerMass":"9 kg","shaftAlloy":"s31600-annealed","couplingMass":"3 kg"}`, "metric")
		if got := verdictsOf(s)["whirl-half-critical"].Word == "within"; got != clear {
			t.Errorf("%s: below half the critical speed: %v", speed, got)
		}
		allClear, thin := false, false
		for _, n := range s.Next {
			allClear = allClear || strings.Contains(n.Text, "another cause")
			thin = thin || strings.Contains(n.Text, "no all-clear")
		}
		if allClear != clear || thin != (speed == "1200 rpm") {
			t.Errorf("%s: all-clear %v, thin margin told %v", speed, allClear, thin)
		}
	}
}

// The strength of a shaft takes torque and power from the drive, and a figure
// that no source confirms never decides.
func TestStrengthFollowsTheDrive(t *testing.T) {
	boat, err := ReadBoat([]byte(`{"name":"Marguerite","engine":{"power":"24 kW","speed":"2800 rpm"},"gearbox":{"ratioAhead":"2.15","ratioAstern":"1.95"},"shaft":{"diameter":"30 mm","alloy":"s31600-annealed"}}`))
	if err != nil {
		t.Fatal(err)
	}
	s, err := Run("shaft-strength", []byte(`{}`), Options{Boat: boat})
	if err != nil {
		t.Fatal(err)
	}
	words := map[string]string{}
	for _, v := range s.Verdicts {
		words[v.Limit] = string(v.Word)
	}
	if words["shaft-yield-at-peak"] != "cannot tell" { // the usual shock factor is not confirmed
		t.Errorf("stress at the peak: %q", words["shaft-yield-at-peak"])
	}
	if words["shaft-yacht-rule"] != "within" { // which does not rest on it
		t.Errorf("yacht rule: %q", words["shaft-yacht-rule"])
	}
	if s.Input("peakTorque").Origin != "earlier result" || s.Input("shaftDiameter").Origin != "boat" {
		t.Errorf("origins %s, %s", s.Input("peakTorque").Origin, s.Input("shaftDiameter").Origin)
	}
}
