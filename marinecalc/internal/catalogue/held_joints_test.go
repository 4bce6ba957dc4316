package catalogue_test

import (
	"math"
	"strings"
	"testing"

	"example.org/driveline/marinecalc/sheet"
)

// A single key bears whole; of teeth a share does. 400 N·m on one key of 3 by 40 mm at
// a radius of 17 mm press 400/(0.003·0.040·0.017) = 196 MPa.
func TestASingleKeyBearsWhole(t *testing.T) {
	const flange = `{"thread": "M24x2", "nutTorque": "200 N·m", "seatDiameter": "28 mm", "peakTorque": "400 N·m", "driveDepth": "3 mm", "driveLength": "40 mm", "driveDiameter": "34 mm", `
	one := runInput(t, "output-flange", flange+`"drive": "key", "driveTeeth": 1}`, "metric")
	if got := result(one, "drivePressure"); math.Abs(got/196.0784e6-1) > 1e-4 {
		t.Errorf("one key is pressed by %g Pa", got)
	}
	if in := one.Input("teethBearing"); in == nil || *in.SI != 1 {
		t.Errorf("of one key bears %+v", in)
	}
	two := runInput(t, "output-flange", flange+`"drive": "key", "driveTeeth": 2}`, "metric")
	if in := two.Input("teethBearing"); in == nil || *in.SI >= 1 {
		t.Errorf("of two keys bear %+v", in)
	}
	if in := runInput(t, "output-flange", flange+`"drive": "spline", "driveTeeth": 20}`, "metric").Input("teethBearing"); in == nil || *in.SI != 0.5 {
		t.Errorf("of a spline bears %+v", in)
	}
}

// ISO 898-1: class 8.8 yields at 640 MPa up to 16 mm and at 660 MPa above, by the bolt's
// own thread, not by that of the nut which it helps to hold.
func TestAHoldingBoltYieldsByItsOwnSize(t *testing.T) {
	for size, want := range map[string]float64{"8.2 mm": 640e6, "17 mm": 660e6} {
		s := runInput(t, "output-flange", `{"thread": "M24x2", "nutTorque": "200 N·m", "seatDiameter": "28 mm", "holdGrade": "iso-8.8", "holdBoltDiameter": "`+size+`"}`, "metric")
		if in := s.Input("holdBoltYield"); in == nil || *in.SI != want {
			t.Errorf("%s: %+v", size, in)
		}
	}
}

// A flange pressed on with 0.2 mm on 30 mm, of a metal that nobody named, is not told to
// hold: most metals burst.
func TestAPressedFlangeOfUnknownMetalIsNotOK(t *testing.T) {
	v := verdictsOf(runInput(t, "coupling-bore", `{"holdMethod": "interference", "shaftDiameter": "30 mm", "engagedLength": "40 mm", "hubDiameter": "58 mm", "interference": "0.2 mm", "surfaces": "steel-dry", "keyed": "no",
		"hubModulus": "205 GPa", "hubPoisson": 0.3, "elasticModulus": "193 GPa", "shaftTorque": "100 N·m", "asternTorque": "90 N·m", "peakTorque": "200 N·m", "thrustAstern": "1 kN"}`, "metric"))
	for _, limit := range []string{"bore-boss-yields", "bore-torque-ahead", "bore-torque-astern", "bore-torque-peak", "bore-pull-astern"} {
		if w := v[limit].Word.Plain(); w != sheet.Beyond && w != sheet.CannotTell && w != sheet.NotMeasured {
			t.Errorf("%s: %s", limit, v[limit].Sentence)
		}
	}
	if v["bore-boss-yields"].Word.Plain() == sheet.NotMeasured {
		t.Errorf("%s", v["bore-boss-yields"].Sentence)
	}
}

// The pull-off verdict asks for what is not known, and not for what was typed.
func TestPullOffAsksForWhatIsNotKnown(t *testing.T) {
	v := verdictsOf(runInput(t, "coupling-bore", `{"holdMethod": "set-screws", "shaftDiameter": "30 mm", "shaftTorque": "100 N·m", "thrustAstern": "1 kN"}`, "metric"))["bore-pull-astern"]
	if !strings.Contains(v.Sentence, "set screws") || strings.Contains(v.Sentence, "thrust") {
		t.Errorf("%s", v.Sentence)
	}
	v = verdictsOf(runInput(t, "coupling-bore", `{"holdMethod": "set-screws", "shaftDiameter": "30 mm", "shaftTorque": "100 N·m", "setScrewSize": "3/8", "setScrews": 2}`, "metric"))["bore-pull-astern"]
	if !strings.Contains(v.Sentence, "thrust") || strings.Contains(v.Sentence, "set screws") {
		t.Errorf("%s", v.Sentence)
	}
}
