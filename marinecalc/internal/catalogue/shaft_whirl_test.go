package catalogue_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/sheet"
)

// whirling is a shaft line at a speed, its gearbox end and bearings as told.
func whirling(speed, more string) string {
	return `{"sections":[{"diameter":"30 mm","length":"2700 mm"}],"bearings":[{"at":"0 mm"},{"at":"1250 mm"},{"at":"2550 mm"}],
		"shaftSpeed":"` + speed + `","propellerMass":"9 kg","shaftAlloy":"s31600-annealed","couplingMass":"3 kg","entrainedWater":"25 %"` + more + `}`
}

// The all-clear on whirling is given below half the critical speed only
// (Shigley, Mechanical Engineering Design, 9th ed., sec. 7-6, from memory), and
// never beside a speed that is beyond it.
func TestNoAllClearAboveHalfTheCriticalSpeed(t *testing.T) {
	for speed, clear := range map[string]bool{"600 rpm": true, "1200 rpm": false, "2600 rpm": false} {
		s := runInput(t, "shaft-whirl", whirling(speed, `,"endFixity":0,"supportFactor":"1 ± 0 %"`), "metric")
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

// Between the critical speeds of a free and of a clamped end nothing is told,
// on either side of both it is.
func TestSpeedBetweenFreeAndClampedIsNotTold(t *testing.T) {
	const end = `,"supportFactor":1`
	s := runInput(t, "shaft-whirl", whirling("1000 rpm", end), "metric")
	free, clamped := *s.Result("critical").SI, *s.Result("criticalClamped").SI
	if clamped < 1.05*free {
		t.Fatalf("clamped %g, free %g", clamped, free)
	}
	word := func(speed float64) string {
		s := testboat.Run(t, "shaft-whirl", whirling(fmt.Sprintf("%g rad/s ± 0 %%", speed), end), marinecalc.Options{Trials: 1000})
		return string(verdictsOf(s)["whirl-below-critical"].Word)
	}
	if got := word(free * 0.7); got != "within" {
		t.Errorf("well below both: %s", got)
	}
	if got := word((free + clamped) / 2); got != "cannot tell" {
		t.Errorf("between: %s", got)
	}
	if got := word(clamped * 1.12); got != "beyond" {
		t.Errorf("above both: %s", got)
	}
}

// The sheet says where the blades excite the shaft, and asks for their number.
func TestBladesAreTold(t *testing.T) {
	for more, want := range map[string]string{
		``:            "type the number of blades",
		`,"blades":3`: "below full",
		`,"blades":3,"idleSpeed":"800 rpm","gearRatioAhead":2`: "between idle and full",
	} {
		s := runInput(t, "shaft-whirl", whirling("1200 rpm", more), "metric")
		if r := s.Result("bladeCrossing"); r == nil || !strings.Contains(r.Text, want) {
			t.Errorf("%s: %+v", more, r)
		}
	}
	s := runInput(t, "shaft-whirl", whirling("1200 rpm", `,"blades":4,"supportFactor":1`), "metric")
	if c := s.Cell("orders", 1, "from"); c == nil || c.SI == nil || *c.SI*4 < *s.Result("critical").SI*0.999 || *c.SI*4 > *s.Result("critical").SI*1.001 {
		t.Errorf("by each of four blades: %+v", c)
	}
}

// A place of the propeller typed over the overhang of the boat file is told
// where the two are not one place.
func TestPropellerInTwoPlaces(t *testing.T) {
	boat := testboat.Read(t, `{"name":"Marguerite","shaft":{"alloy":"s31600-annealed","sections":[{"length":"2700 mm","diameter":"30 mm"}],"bearings":[{"at":"0 mm"},{"at":"1250 mm"},{"at":"2550 mm"}]},
		"propeller":{"mass":"9 kg","overhang":"90 mm"}}`)
	for at, told := range map[string]bool{"2650 mm": false, "2200 mm": true} {
		s := testboat.Run(t, "shaft-whirl", `{"shaftSpeed":"1200 rpm","propellerAt":"`+at+`"}`, marinecalc.Options{Boat: boat, Trials: 500})
		if (len(s.Conflicts) > 0) != told {
			t.Errorf("%s: %+v", at, s.Conflicts)
		}
		if v := verdictsOf(s)["whirl-below-critical"]; (v.Word == "cannot tell") != told {
			t.Errorf("%s: %+v", at, v)
		}
	}
}

// A flexible coupling holds the shaft's slope less than a flange does.
func TestFlexibleCouplingHoldsLess(t *testing.T) {
	rigid := *runInput(t, "shaft-whirl", whirling("1200 rpm", `,"couplingKind":"rigid"`), "metric").Input("endFixity").SI
	flexible := *runInput(t, "shaft-whirl", whirling("1200 rpm", `,"couplingKind":"flexible"`), "metric").Input("endFixity").SI
	unknown := *runInput(t, "shaft-whirl", whirling("1200 rpm", ""), "metric").Input("endFixity").SI
	if !(flexible < rigid && unknown == rigid) {
		t.Errorf("rigid %g, flexible %g, not known %g", rigid, flexible, unknown)
	}
}

// Naval brass has rows by diameter for its strength, and one stiffness: a
// calculation that asks no diameter takes it (ASTM B21, 15 000 ksi).
func TestAMetalWhoseRowsGoByASizeNotAskedFor(t *testing.T) {
	s := testboat.Run(t, "shaft-whirl", `{"sections": [{"length": "800 mm", "diameter": "25 mm"}], "bearings": [{"at": "0 mm"}, {"at": "700 mm"}], "shaftSpeed": "1300 rpm", "propellerMass": "6 kg", "shaftAlloy": "c46400-h02"}`, marinecalc.Options{NoRanges: true})
	in := s.Input("elasticModulus")
	if in == nil || in.SI == nil || math.Abs(*in.SI-15000e3*6894.757293168) > 1e3 {
		t.Errorf("%+v", in)
	}
}

// The blades' whirl at full speed has a verdict once blades are counted, and asks for them before.
func TestBladesWhirlIsJudged(t *testing.T) {
	const line = `{"shaftSpeed": "1300 rpm", "propellerMass": "6 kg", "shaftAlloy": "s31600-annealed", "sections": [{"length": "1400 mm", "diameter": "30 mm"}], "bearings": [{"at": "0 mm"}, {"at": "1250 mm"}], "propellerAt": "1350 mm"`
	for rest, want := range map[string]sheet.Word{``: sheet.NotMeasured, `, "blades": 1`: "", `, "blades": 3`: "", `, "blades": 5`: ""} {
		v := runInput(t, "shaft-whirl", line+rest+"}", "metric").Verdict("whirl-blades-at-full")
		if v == nil || want != "" && v.Word.Plain() != want || want == "" && v.Word.Plain() == sheet.NotMeasured {
			t.Errorf("%q: %+v", rest, v)
		}
	}
}

// What speed is left below a critical speed goes by where that lies against idle in
// gear: under idle, or about it, no lever keeps her below.
func TestWhatSpeedIsLeftGoesByIdle(t *testing.T) {
	const below, no, ask = "four fifths of the low end", "do not run her in gear", "nobody has said"
	for more, want := range map[string][]string{
		`,"idleSpeed":"600 rpm","gearRatioAhead":2`:    {below},
		`,"idleSpeed":"3400 rpm","gearRatioAhead":2`:   {no},
		`,"idleSpeed":"3800 rpm","gearRatioAhead":1.5`: {no},
		``: {no, ask},
	} {
		s := runInput(t, "shaft-whirl", whirling("2600 rpm", more+`,"endFixity":0.5,"supportFactor":"1 ± 0 %"`), "metric")
		for _, text := range []string{below, no, ask} {
			said := false
			for _, n := range s.Next {
				said = said || strings.Contains(n.Text, text)
			}
			if said != slices.Contains(want, text) {
				t.Errorf("%q: %q said: %v, critical %s", more, text, said, s.Result("criticalUsed").Text)
			}
		}
	}
}
