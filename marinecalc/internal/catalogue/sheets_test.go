package catalogue_test

import (
	"math"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
)

// whole are the calculations of coupling bolts, gland work, bearings and the
// shaft: each of their sheets has every part that a sheet can have.
var whole = []string{"coupling-grip", "bolt-fit", "gland-packing", "gland-drip", "bearing-clearance", "bearing-life",
	"shaft-strength", "shaft-whirl", "shaft-droop", "key-strength", "shaft-withdrawal"}

// Each draws what can be drawn, warns, judges and says what to do next, on its
// own examples and in every unit system.
func TestSheetsAreWhole(t *testing.T) {
	for _, id := range whole {
		input := testboat.Typed(t, id)
		for _, units := range []string{"metric", "us", "both"} {
			s := testboat.Run(t, id, input, marinecalc.Options{Trials: 256, Units: units})
			if len(s.Drawings) == 0 || len(s.Cautions) == 0 || len(s.Next) == 0 || len(s.Verdicts) == 0 || s.Trials == 0 {
				t.Errorf("%s: %d drawings, %d cautions, %d things to do, %d verdicts, %d trials, notes %q", id, len(s.Drawings), len(s.Cautions), len(s.Next), len(s.Verdicts), s.Trials, s.Notes)
			}
			for _, d := range s.Drawings {
				if fault := testboat.WellFormed(d.SVG); fault != "" {
					t.Errorf("%s: %s: %s", id, d.Name, fault)
				}
			}
		}
	}
}

// What goes in in one unit system comes out the same as in the other.
func TestUnitsInAndOut(t *testing.T) {
	for _, c := range []struct{ id, metric, us string }{
		{"coupling-grip", `{"boltCount":4,"boltCircle":"82.55 mm","faces":"steel-dry","preload":"25 kN","shaftTorque":"169.477 N·m","thread":"7/16-14 UNC","grade":"j429-5"}`,
			`{"boltCount":4,"boltCircle":"3-1/4 in","faces":"steel-dry","preload":"5620.224 lbf","shaftTorque":"125 lbf·ft","thread":"7/16-14 UNC","grade":"j429-5"}`},
		{"bolt-fit", `{"thread":"7/16-14 UNC","headFlangeThickness":"12.7 mm","nutFlangeThickness":"12.7 mm","nut":"ne-7/16-14"}`, `{"thread":"7/16-14 UNC","headFlangeThickness":"1/2 in","nutFlangeThickness":"1/2 in","nut":"ne-7/16-14"}`},
		{"gland-packing", `{"shaftDiameter":"31.75 mm","boxBore":"50.8 mm","boxDepth":"63.5 mm","followerDepth":"9.525 mm"}`, `{"shaftDiameter":"1-1/4 in","boxBore":"2 in","boxDepth":"2-1/2 in","followerDepth":"3/8 in"}`},
		{"gland-drip", `{"dripRate":"8 drips/min","dripRateAtRest":"4 drips/min","switchVolume":"18.92706 L","pumpFlow":"18.92706 L/min","pumpPower":"48 W"}`, `{"dripRate":"8 drips/min","dripRateAtRest":"4 drips/min","switchVolume":"5 US gal","pumpFlow":"5 US gal/min","pumpPower":"48 W"}`},
		{"bearing-clearance", `{"shaftDiameter":"31.75 mm","bearingClearance":"0.4572 mm","earlierClearance":"0.254 mm","runningTime":"400 h"}`, `{"shaftDiameter":"1-1/4 in","bearingClearance":"18 thou","earlierClearance":"0.010 in","runningTime":"400 h"}`},
		{"bearing-life", `{"bearing":"6206","radialLoad":"889.6443 N","thrust":"1201.020 N","axialFactors":"0.11","shaftSpeed":"1300 rpm"}`, `{"bearing":"6206","radialLoad":"200 lbf","thrust":"270 lbf","axialFactors":"0.11","shaftSpeed":"1300 rpm"}`},
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

// boltedBoat has all that the calculations of coupling bolts, gland work and
// bearings take from a boat file.
const boltedBoat = `{"name":"Oystercatcher",
 "engine":{"power":"21 kW","speed":"2800 rpm"},"gearbox":{"ratioAhead":"2.15","ratioAstern":"1.95"},
 "coupling":{"diameter":"105 mm","kind":"rigid","boltCount":4,"boltCircle":"82.5 mm","faces":"steel-dry","holeFit":"clearance","headFlangeThickness":"12 mm","nutFlangeThickness":"13 mm",
  "bolts":{"thread":"M10x1.5","grade":"iso-8.8","finish":"oiled","length":"45 mm"}},
 "shaft":{"diameter":"25 mm","alloy":"s31600-annealed","freeLength":"700 mm","grooveDiameter":"24.5 mm"},
 "gland":{"boxBore":"41 mm","boxDepth":"48 mm","followerDepth":"10 mm"},
 "bilge":{"switchVolume":"20 L","cycleVolume":"12 L","floodVolume":"200 L","pumpFlow":"20 L/min","pumpPower":"48 W"},
 "battery":{"energy":"1200 W·h","standingPower":"1.2 W"},
 "sternBearing":{"kind":"rubber","length":"100 mm","newClearance":"0.12 mm","grooveDepth":"3.2 mm"},
 "makersFigures":[{"of":"worn-limit","value":"0.4 mm","source":{"document":"the shell maker's sheet"}}],
 "readings":[{"date":"2026-03-20","dripRate":"8 drips/min","dripRateAtRest":"4 drips/min","bearingClearance":"0.45 mm","bearingBladeWidth":"0 mm","bearingGrooveDepth":"2.4 mm"}]}`

// On a boat file nothing is typed twice: clamp and torque come from the
// earlier calculations with their ranges, and the maker's figure wins.
func TestCalculationsTakeFromTheBoat(t *testing.T) {
	boat := testboat.Read(t, boltedBoat)
	o := marinecalc.Options{Boat: boat, Trials: 512}
	run := func(id, input string) *marinecalc.Sheet {
		s, err := marinecalc.Run(id, []byte(input), o)
		if err != nil {
			t.Fatalf("%s: %v", id, err)
		}
		return s
	}
	grip, preload, torque := run("coupling-grip", `{}`), run("bolt-preload", `{}`), run("shaft-torque", `{}`)
	for name, from := range map[string]*float64{"preload": preload.Result("achievedPreload").SI, "shaftTorque": torque.Result("shaftTorque").SI,
		"asternTorque": torque.Result("asternTorque").SI, "peakTorque": torque.Result("peakTorque").SI} {
		if in := grip.Input(name); in == nil || in.Origin != "earlier result" || in.Range == "" || *in.SI != *from {
			t.Errorf("%s came as %+v, worked out before: %v", name, in, *from)
		}
	}
	for _, v := range grip.Verdicts {
		if v.Limit == "grip-ahead" && (v.Probability == nil || *v.Probability <= 0.5) {
			t.Errorf("the slip torque margin ahead is given no probability: %+v", v)
		}
	}
	fit := run("bolt-fit", `{"plainNut":"hex-nut"}`)
	if in := fit.Input("wrenchSetting"); in == nil || in.Origin != "earlier result" || *in.SI != *preload.Result("wrenchSetting").SI {
		t.Errorf("the wrench setting came as %+v", in)
	}
	if fit.Input("boltLength") == nil || *fit.Result("judgedLength").SI != 0.045 {
		t.Error("the bolt on the boat is not the one that is judged")
	}
	run("gland-packing", `{}`)
	run("gland-drip", `{}`)
	wear := run("bearing-clearance", `{}`)
	for _, v := range wear.Verdicts {
		if v.Limit == "worn-limit" && (v.Word != "beyond" || v.Authority != "maker's figure" || !strings.Contains(v.Source, "shell maker")) {
			t.Errorf("the maker's figure does not win: %+v", v)
		}
	}
	life := run("bearing-life", `{"bearing":"6206","radialLoad":"0.9 kN","thrust":"1 kN","axialFactors":"0.11"}`)
	if in := life.Input("shaftSpeed"); in == nil || in.Origin != "earlier result" {
		t.Errorf("the shaft speed came as %+v", in)
	}
}
