package catalogue_test

import (
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
)

// Without a peak torque the limits at the peak are not measured, and sheet
// and advice say how to get one; with one they are judged.
func TestNoPeakTorqueNoVerdictAtThePeak(t *testing.T) {
	for limit, c := range map[string]struct{ id, input string }{
		"shaft-yield-at-peak": {"shaft-strength", `"shaftDiameter":"30 mm","shaftPower":"22 kW","shaftSpeed":"1300 rpm","shaftAlloy":"s31600-annealed"`},
		"key-at-peak":         {"key-strength", `"shaftDiameter":"30 mm","shaftTorque":"160 N·m","keyWidth":"8 mm","keyLength":"50 mm","keyYieldStrength":"250 MPa","shaftYieldStrength":"250 MPa","hubYieldStrength":"250 MPa"`},
	} {
		s := runInput(t, c.id, "{"+c.input+"}", "metric")
		if v := verdictsOf(s)[limit]; v.Word != "not measured" || v.Probability != nil || !strings.Contains(v.Sentence, "shock factor times the steady torque") {
			t.Errorf("%s without a peak torque: %+v", limit, v)
		}
		told := false
		for _, n := range s.Next {
			told = told || strings.Contains(n.Text, "shock factor in “Shaft torque”")
		}
		if !told {
			t.Errorf("%s: no advice how to get a peak torque: %+v", limit, s.Next)
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

// The strength of a shaft takes torque and power from the drive, and a figure
// that no source confirms, the usual shock factor of 1.3 to 3, decides only
// where the verdict is the same over the whole of it.
func TestStrengthFollowsTheDrive(t *testing.T) {
	boat := testboat.Read(t, `{"name":"Marguerite","engine":{"power":"24 kW","speed":"2800 rpm"},"gearbox":{"ratioAhead":"2.15","ratioAstern":"1.95"},"shaft":{"diameter":"28 mm","alloy":"s31600-annealed"}}`)
	s := testboat.Run(t, "shaft-strength", `{}`, marinecalc.Options{Boat: boat})
	words := map[string]string{}
	for _, v := range s.Verdicts {
		words[v.Limit] = string(v.Word)
	}
	if words["shaft-yield-at-peak"] != "cannot tell" { // the usual shock factor is not confirmed
		t.Errorf("stress at the peak: %q", words["shaft-yield-at-peak"])
	}
	if words["shaft-yacht-rule"] != "near the limit" { // which does not rest on it
		t.Errorf("yacht rule: %q", words["shaft-yacht-rule"])
	}
	if v := verdictsOf(testboat.Run(t, "shaft-strength", `{"shaftDiameter":"32 mm"}`, marinecalc.Options{Boat: boat}))["shaft-yield-at-peak"]; v.Word != "within" {
		t.Errorf("stress at the hardest of usual peaks: %+v", v)
	}
	if s.Input("peakTorque").Origin != "earlier result" || s.Input("shaftDiameter").Origin != "boat" {
		t.Errorf("origins %s, %s", s.Input("peakTorque").Origin, s.Input("shaftDiameter").Origin)
	}
}

const bentShaft = `"shaftDiameter":"30 mm","shaftPower":"23 kW","shaftSpeed":"1300 rpm","shaftAlloy":"s31600-annealed","peakTorque":"300 N·m","notchFactor":2,"fatigueStrength":"100 MPa"`

// Bending that turns is judged on both sides wherever a moment is known, and
// is not measured without one: 30 mm of 316 bears 80 N·m with ease and 300 N·m
// not for long (2·32·M/(π·d³) of 100 MPa, and the steady torque).
func TestFatigueIsJudgedWhereAMomentIsKnown(t *testing.T) {
	for more, want := range map[string]string{``: "not measured", `,"bendingMoment":"20 N·m"`: "within", `,"bendingMoment":"80 N·m"`: "near the limit", `,"bendingMoment":"300 N·m"`: "beyond"} {
		s := runInput(t, "shaft-strength", "{"+bentShaft+more+"}", "metric")
		if v := verdictsOf(s)["shaft-fatigue"]; string(v.Word) != want {
			t.Errorf("%s: %+v", more, v)
		}
	}
	// Without a word on the water no fatigue strength stands in.
	s := runInput(t, "shaft-strength", `{"shaftDiameter":"30 mm","shaftPower":"23 kW","shaftSpeed":"1300 rpm","shaftAlloy":"s31600-annealed","bendingMoment":"300 N·m"}`, "metric")
	if v := verdictsOf(s)["shaft-fatigue"]; v.Word != "not measured" || !strings.Contains(v.Sentence, "what water") {
		t.Errorf("water not known: %+v", v)
	}
}

// Army manuals allow a propeller shaft 0.003 in of run-out in total
// (TM 55-1905-221-14-3, p. 6-184; TM 55-1905-222-14, p. 6-128).
func TestRunOutIsJudged(t *testing.T) {
	for more, want := range map[string]string{``: "not measured", `,"shaftRunOut":"1 thou"`: "within", `,"shaftRunOut":"5 thou"`: "beyond"} {
		s := runInput(t, "shaft-strength", "{"+bentShaft+more+"}", "us")
		if v := verdictsOf(s)["shaft-run-out"]; string(v.Word) != want || v.Authority != "manual" {
			t.Errorf("%s: %+v", more, v)
		}
	}
}

// F 95 of UR M68 is for intermediate shafts; every propeller shaft has F 100,
// a slip coupling or not (from memory).
func TestSlipCouplingDoesNotThinAPropellerShaft(t *testing.T) {
	for place, want := range map[string]float64{"": 100, "propeller-keyed": 100, "propeller-flange": 100, "stern-tube-forward": 100, "intermediate-flange": 95, "intermediate-keyed": 95, "thrust-shaft": 95} {
		more := `,"diameterRule":"iacs-m68-slip"`
		if place != "" {
			more += `,"shaftPlace":"` + place + `"`
		}
		s := runInput(t, "shaft-strength", "{"+bentShaft+more+"}", "metric")
		if got := *s.Input("ruleScale").SI; got != want {
			t.Errorf("%s: F %g", place, got)
		}
	}
}

// The boat's groove thins the shaft that is judged.
func TestGrooveOfTheBoatIsTaken(t *testing.T) {
	boat := testboat.Read(t, `{"name":"Marguerite","shaft":{"diameter":"30 mm","grooveDiameter":"28 mm","alloy":"s31600-annealed"}}`)
	s := testboat.Run(t, "shaft-strength", `{"shaftPower":"23 kW","shaftSpeed":"1300 rpm"}`, marinecalc.Options{Boat: boat})
	if r := s.Result("diameterUsed"); *r.SI != 0.028 {
		t.Errorf("diameter used %g", *r.SI)
	}
	told := false
	for _, n := range s.Next {
		told = told || strings.Contains(n.Text, "thinnest neck")
	}
	if !told {
		t.Errorf("the sheet says nothing of the neck: %+v", s.Next)
	}
}

// What stands in for the fatigue strength goes by metal and water, and a
// verdict drawn from it holds over its whole bracket: 300 N·m tire 30 mm of 316
// in sea water whatever it is, 30 N·m do not, and 120 N·m are not told.
func TestUsualFatigueStrengthIsABracket(t *testing.T) {
	const shaft = `{"shaftDiameter":"30 mm","shaftPower":"23 kW","shaftSpeed":"1300 rpm","shaftAlloy":"s31600-annealed","shaftProtection":"bare-sea","bendingMoment":"`
	for moment, want := range map[string]string{"300 N·m": "beyond", "30 N·m": "near the limit", "5 N·m": "within", "120 N·m": "cannot tell"} {
		s := testboat.Run(t, "shaft-strength", shaft+moment+`"}`, marinecalc.Options{Trials: 2000})
		if v := verdictsOf(s)["shaft-fatigue"]; string(v.Word) != want {
			t.Errorf("%s: %+v", moment, v)
		}
	}
	strength := func(alloy, water string) float64 {
		s := runInput(t, "shaft-strength", `{"shaftDiameter":"1 in","shaftPower":"23 kW","shaftSpeed":"1300 rpm","shaftAlloy":"`+alloy+`","shaftProtection":"`+water+`","bendingMoment":"20 N·m"}`, "metric")
		if in := s.Input("fatigueStrength"); in != nil {
			return *in.SI
		}
		return 0
	}
	for _, alloy := range []string{"s31600-annealed", "s30400-annealed", "s20910-high-strength", "s20910-annealed", "s17400-h900", "s17400-h1025", "s17400-h1150", "s17400-h1150-m", "c46400-h02"} {
		if sea, dry := strength(alloy, "bare-sea"), strength(alloy, "protected"); !(sea > 0 && sea < dry) {
			t.Errorf("%s: %g in sea water, %g protected", alloy, sea, dry)
		}
		if fresh := strength(alloy, "bare-fresh"); fresh != 0 {
			t.Errorf("%s: %g in fresh water, of which nothing is known", alloy, fresh)
		}
	}
}
