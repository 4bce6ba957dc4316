package coupling

import (
	"math"
	"testing"

	"example.org/driveline/marinecalc/hub"
	"example.org/driveline/marinecalc/internal/parttest"
	"example.org/driveline/marinecalc/quantity"
)

// M10 of property class 8.8 has 58.0 mm² (ISO 898-1) and yields in plain pull at
// 37.1 kN; combined tension and torsion take it to yield at about 29.5 kN with a friction of
// 0.14 (VDI 2230, assembly preload at 0.9 of yield 26.3 kN, from memory). The sheet
// takes the smaller stress area of the inch standard, 2 % less.
func TestPinchBoltYieldsAndBreaks(t *testing.T) {
	in := split()
	in.Keyed = hub.NoKey
	in.NutFactor = 0.18 // about a friction of 0.14
	in.PinchTorque = 30
	out := parttest.Must(t, Bore, in)
	parttest.Within(t, "clamp at yield", quantity.Force(float64(out.ClampUsed)/float64(out.PinchUse)), 26.3e3/0.9, 0.05)
	for _, c := range []struct {
		torque       quantity.Torque
		sound, holds bool
	}{{45, true, true}, {60, false, true}, {400, false, false}} {
		in.PinchTorque = c.torque
		out := parttest.Must(t, Bore, in)
		if out.PinchUse <= 1 != c.sound || !math.IsNaN(float64(out.SlipTorque)) != c.holds || !math.IsNaN(float64(out.PullMargin)) != c.holds {
			t.Errorf("%g N·m: use %g, holds %g, pull %g", c.torque, out.PinchUse, out.SlipTorque, out.PullMargin)
		}
		if most := 37.1e3; float64(out.ClampUsed) > most {
			t.Errorf("%g N·m clamp %g", c.torque, out.ClampUsed)
		}
		if !c.holds && out.HeldBy != ClampLost {
			t.Errorf("held by %q", out.HeldBy)
		}
	}
	// A key that is known holds ahead all the same.
	in.Keyed, in.KeyWidth, in.KeyHeight, in.KeyLength, in.KeyYieldStrength, in.ShaftYieldStrength = hub.WithKey, 0.008, 0.007, 0.045, 250e6, 205e6
	if out = parttest.Must(t, Bore, in); !(out.MarginAhead > 1) || out.SlipTorque != out.KeyTorque || !math.IsNaN(float64(out.MarginAstern)) {
		t.Errorf("broken bolts and a key: ahead %g, astern %g", out.MarginAhead, out.MarginAstern)
	}
}

// A grade that nobody told: what the weakest usual grade bears is held, more is
// not known; what slips with the whole clamp slips.
func TestPinchBoltOfNoKnownGrade(t *testing.T) {
	in := split()
	in.Keyed, in.PinchYieldStrength, in.PinchTensileStrength, in.PeakTorque = hub.NoKey, 0, 0, 100
	for torque, known := range map[quantity.Torque]bool{15: true, 45: false} {
		in.PinchTorque, in.ShaftTorque, in.AsternTorque = torque, 50, 40
		out := parttest.Must(t, Bore, in)
		if !math.IsNaN(float64(out.SlipTorque)) != known || out.MarginAhead >= 1 != known || (out.HeldBy == ClampUnsure) == known || !math.IsNaN(float64(out.PinchUse)) {
			t.Errorf("%g N·m: %+v", torque, out)
		}
	}
	in.ShaftTorque = 5000
	if out := parttest.Must(t, Bore, in); !(out.MarginAhead < 1) {
		t.Errorf("what slips even so: %g", out.MarginAhead)
	}
}

// The thread of a taper's nut is the shaft's.
func TestThreadOfTheTapersNut(t *testing.T) {
	in := coned()
	in.PinchClamp, in.PinchTorque, in.PinchDiameter, in.PinchPitch, in.NutFactor, in.ShaftYieldStrength = 0, 150, 0.02, 0.0025, 0.18, 205e6
	for torque, holds := range map[quantity.Torque]bool{100: true, 400: false} {
		in.PinchTorque = torque
		out := parttest.Must(t, Bore, in)
		if out.PinchUse <= 1 != holds || !math.IsNaN(float64(out.PullMargin)) != holds {
			t.Errorf("%g N·m: use %g, pull %g", torque, out.PinchUse, out.PullMargin)
		}
	}
}

// Holding power goes by the seating torque, and no further than the table's; none
// and loose ones hold nothing.
func TestSetScrewsHoldByTheirTorque(t *testing.T) {
	in := screwed()
	in.TableSeating = 33
	for torque, share := range map[quantity.Torque]float64{0: 0, 1: 1. / 33, 3.3: 0.1, 33: 1, 66: 1} {
		in.SeatingTorque = torque
		parttest.Within(t, "screws", parttest.Must(t, Bore, in).ScrewHold, share*1.5*6600, 1e-12)
	}
	in.SeatingTorque = quantity.Torque(math.NaN())
	parttest.Within(t, "screws by the table", parttest.Must(t, Bore, in).ScrewHold, 1.5*6600, 1e-12)
	in.SetScrews = 0
	if out := parttest.Must(t, Bore, in); out.PullMargin != 0 || out.ScrewHold != 0 {
		t.Errorf("no screws hold %g", out.ScrewHold)
	}
}

// Astern the nut of a taper holds till its thread yields, A·S_y; with the nut lost
// the cone is alone. M24x2 has 384 mm² (ISO 898-1, 3 mm less in by the inch
// standard's root); 205 MPa of it are 79 kN.
func TestNutOfATaperHoldsOrIsLost(t *testing.T) {
	in := coned()
	in.Keyed, in.PinchDiameter, in.PinchPitch, in.ShaftYieldStrength = hub.NoKey, 0.024, 0.002, 205e6
	out := parttest.Must(t, Bore, in)
	parttest.Within(t, "nut's thread", out.NutHold, 384e-6*205e6, 0.02)
	parttest.Within(t, "pull-off, nut in place", out.PullOff, float64(out.NutHold), 0)
	in.ThrustAstern = quantity.Force(0.5 * float64(out.NutHold))
	in.Keyed = hub.NoKey
	held := parttest.Must(t, Bore, in)
	if !math.IsNaN(float64(held.PullMargin)) || held.MarginAstern != 0 || held.BareMargin >= 1 { // on its nut alone it turns
		t.Errorf("with its nut %g, without %g; astern %g", held.PullMargin, held.BareMargin, held.MarginAstern)
	}
	in.ThrustAstern = quantity.Force(1.1 * float64(out.NutHold))
	if gone := parttest.Must(t, Bore, in); gone.PullMargin >= 1 || gone.MarginAstern != 0 {
		t.Errorf("past the thread: pull %g, torque %g", gone.PullMargin, gone.MarginAstern)
	}
	// What the thread is nobody told: the cone alone holds, or it is not known.
	in.PinchDiameter, in.ShaftYieldStrength, in.PinchYieldStrength = 0, 0, 0
	if unknown := parttest.Must(t, Bore, in); !math.IsNaN(float64(unknown.PullMargin)) || !(unknown.BareMargin < 1) {
		t.Errorf("a nut nobody told of: pull %g, bare %g", unknown.PullMargin, unknown.BareMargin)
	}
	in.ThrustAstern = 100
	if light := parttest.Must(t, Bore, in); !(light.PullMargin >= 1) || light.PullMargin != light.BareMargin {
		t.Errorf("the cone alone: pull %g, bare %g", light.PullMargin, light.BareMargin)
	}
}

// A shaft thinner than its bore is pressed by nothing (Lamé's pressure is in
// proportion to the interference).
func TestAClearanceHoldsNothing(t *testing.T) {
	for interference, holds := range map[quantity.Length]bool{-20e-6: false, 0: false, 30e-6: true} {
		in := pressed()
		in.Keyed, in.Interference = hub.NoKey, interference
		out := parttest.Must(t, Bore, in)
		if (out.SlipTorque > 0) != holds || (out.PullOff > 0) != holds || !holds && out.MarginAhead != 0 {
			t.Errorf("%g µm: %g N·m, %g N, margin %g", interference*1e6, out.SlipTorque, out.PullOff, out.MarginAhead)
		}
		if told := !math.IsNaN(float64(out.HubStress)); told != holds || !math.IsNaN(float64(out.HeatOn)) != holds {
			t.Errorf("%g µm: hub %g Pa, warmed to %g K", interference*1e6, out.HubStress, out.HeatOn)
		}
		if !holds && out.HeldBy != HeldByNone {
			t.Errorf("%g µm: held by %s", interference*1e6, out.HeldBy)
		}
	}
}

// With the lips met the bolts press lip on lip (statics): friction holds nothing, nor
// does anything keep the shaft in; a key that is known still bears the torque ahead.
func TestClosedSlotHoldsNothing(t *testing.T) {
	in := split()
	in.Keyed, in.SplitGap = hub.NoKey, 0
	out := parttest.Must(t, Bore, in)
	if out.SlipTorque != 0 || out.PullOff != 0 || out.MarginAhead != 0 || out.PullMargin != 0 || out.HeldBy == ClampLost {
		t.Errorf("closed: holds %g, pull-off %g, margins %g and %g, by %q", out.SlipTorque, out.PullOff, out.MarginAhead, out.PullMargin, out.HeldBy)
	}
	if out.HeldBy != SlotClosed {
		t.Errorf("closed, no key: held by %s", out.HeldBy)
	}
	for gap, open := range map[quantity.Length]bool{49e-6: false, 50e-6: true, 51e-6: true, 0.001: true} { // a feeler of 0.05 mm goes in, or not
		in.SplitGap = gap
		if out := parttest.Must(t, Bore, in); out.PullMargin > 0 != open || out.SlipTorque > 0 != open {
			t.Errorf("open by %g mm: %g, %g", 1000*gap, out.PullMargin, out.SlipTorque)
		}
	}
	in.SplitGap, in.PinchYieldStrength, in.PinchTensileStrength = 0, 0, 0 // no bolt opens it, whatever its grade
	if out = parttest.Must(t, Bore, in); out.HeldBy != SlotClosed || out.MarginAhead != 0 {
		t.Errorf("closed, by bolts of no known grade: held by %s, margin %g", out.HeldBy, out.MarginAhead)
	}
	in.SplitGap, in.Keyed, in.KeyWidth, in.KeyHeight, in.KeyLength, in.KeyYieldStrength, in.ShaftYieldStrength = 0, hub.WithKey, 0.008, 0.007, 0.045, 250e6, 205e6
	if out = parttest.Must(t, Bore, in); !(out.MarginAhead > 1) || out.PullOff != 0 || out.PullMargin != 0 {
		t.Errorf("closed, with a key: ahead %g, pull-off %g", out.MarginAhead, out.PullOff)
	}
	if out.HeldBy != KeyInClosed {
		t.Errorf("closed, with a key: held by %s", out.HeldBy)
	}
}

// Past yield the thread of a taper's nut stretches and clamps what it does at yield;
// it breaks past its tensile strength alone, and where nobody told that, what it still
// holds is not known.
func TestThreadPastYieldStretchesAndDoesNotBreak(t *testing.T) {
	in := coned()
	in.PinchClamp, in.PinchDiameter, in.PinchPitch, in.NutFactor, in.ShaftYieldStrength = 0, 0.02, 0.0025, 0.18, 205e6
	in.PinchTorque = 100
	one := float64(parttest.Must(t, Bore, in).PinchStress) / 100
	for _, c := range []struct {
		stress, tensile float64
		held            string
		clamps          bool
	}{{300e6, 515e6, "", true}, {600e6, 515e6, ClampLost, false}, {300e6, 0, ClampYields, true}, {600e6, 0, ClampYields, true}} {
		in.PinchTorque, in.ShaftTensileStrength = quantity.Torque(c.stress/one), quantity.Stress(c.tensile)
		out := parttest.Must(t, Bore, in)
		if c.held != "" && out.HeldBy != c.held || c.held == "" && (out.HeldBy == ClampLost || out.HeldBy == ClampYields) {
			t.Errorf("%g of %g MPa: held by %s", c.stress/1e6, c.tensile/1e6, out.HeldBy)
		}
		if c.clamps {
			parttest.Within(t, "clamp at yield", float64(out.ClampUsed), 205e6/c.stress*float64(in.PinchTorque)/(0.18*0.02), 1e-9)
		} else if !math.IsNaN(float64(out.ClampUsed)) {
			t.Errorf("%g of %g MPa: clamps %g", c.stress/1e6, c.tensile/1e6, out.ClampUsed)
		}
		if c.held == ClampYields && out.MarginPeak >= 1 {
			t.Errorf("a thread past yield of which no tensile strength is known holds %g in a shock", out.MarginPeak)
		}
	}
}

// What holds nothing stands against no pull, though nobody told the pull: a slot that
// is closed, a clearance. What holds something, or may by a nut or a key of which
// nothing is known, is not judged without it.
func TestNothingHoldsAgainstAPullThatNobodyTold(t *testing.T) {
	untold := func(in BoreInput) BoreInput {
		in.Thrust, in.ThrustAstern, in.FoulPull = 0, 0, 0
		return in
	}
	closed := untold(split())
	closed.SplitGap, closed.KeyWidth, closed.KeyHeight, closed.KeyLength, closed.KeyYieldStrength, closed.ShaftYieldStrength = 0, 0.008, 0.007, 0.045, 250e6, 205e6
	clearance := untold(pressed())
	clearance.Interference = -20e-6
	for what, in := range map[string]BoreInput{"closed slot": closed, "clearance": clearance} {
		if out := parttest.Must(t, Bore, in); out.PullMargin != 0 || out.FoulMargin != 0 {
			t.Errorf("%s: %g, %g", what, out.PullMargin, out.FoulMargin)
		}
	}
	slack := untold(coned()) // a cone that does not hold itself, under its nut
	slack.BoreFriction, slack.ShaftYieldStrength, slack.PinchDiameter, slack.PinchPitch = 0.04, 205e6, 0.02, 0.0015
	for what, in := range map[string]BoreInput{"open slot": untold(split()), "press fit": untold(pressed()), "nut": slack} {
		if out := parttest.Must(t, Bore, in); !math.IsNaN(float64(out.PullMargin)) || !math.IsNaN(float64(out.FoulMargin)) {
			t.Errorf("%s: %g, %g", what, out.PullMargin, out.FoulMargin)
		}
	}
}

// A thread just at its yield or its tensile strength has not passed it.
func TestPinchBoltJustAtItsStrength(t *testing.T) {
	in := split()
	stress := parttest.Must(t, Bore, in).PinchStress
	in.PinchYieldStrength, in.PinchTensileStrength = stress, 0
	if out := parttest.Must(t, Bore, in); out.HeldBy == ClampYields || !(out.MarginAhead > 1) {
		t.Errorf("at its yield: held by %s", out.HeldBy)
	}
	in.PinchYieldStrength, in.PinchTensileStrength = stress/2, stress
	if out := parttest.Must(t, Bore, in); out.HeldBy == ClampLost {
		t.Error("at its tensile strength, which it bears, it is lost")
	}
	// No grade told: 4.6, the weakest usual one, yields at 240 MPa (ISO 898-1).
	in.PinchYieldStrength, in.PinchTensileStrength, in.ShaftTorque, in.AsternTorque, in.Keyed = 0, 0, 20, 20, hub.NoKey
	for share, known := range map[float64]bool{0.99: true, 1.01: false} {
		in.PinchTorque = 45 * quantity.Torque(share*240e6/float64(stress))
		if out := parttest.Must(t, Bore, in); math.IsNaN(float64(out.MarginAhead)) == known {
			t.Errorf("at %g of 240 MPa: %g", share, out.MarginAhead)
		}
	}
}

// Without its pitch a thread counts as a coarse one: M10 has 1.5 mm (ISO 261). One so
// coarse that its pitch diameter, d - 0.6495·P, is no more than the pitch is none.
func TestPitchOfAPinchBolt(t *testing.T) {
	in := split()
	coarse := parttest.Must(t, Bore, in).PinchStress
	in.PinchPitch = 0
	parttest.Within(t, "M10", parttest.Must(t, Bore, in).PinchStress, float64(coarse), 1e-12)
	for pitches, thread := range map[float64]bool{1.64: false, 1.649519: false, 1.66: true} {
		in.PinchDiameter, in.PinchPitch = quantity.Length(pitches/128), 1./128
		if out := parttest.Must(t, Bore, in); math.IsNaN(float64(out.PinchStress)) == thread {
			t.Errorf("%g pitches wide: %g Pa", pitches, out.PinchStress)
		}
	}
}

// The shaft's strengths are those of its own thread, and of no pinch bolt; nor do they
// stand in for the tensile strength of a nut whose yield strength was told.
func TestWhoseStrengthTheThreadHas(t *testing.T) {
	in := split()
	in.PinchYieldStrength, in.PinchTensileStrength, in.ShaftYieldStrength, in.ShaftTensileStrength = 0, 0, 205e6, 515e6
	if out := parttest.Must(t, Bore, in); !math.IsNaN(float64(out.PinchUse)) {
		t.Errorf("the shaft's yield strength is taken for a bolt's: %g", out.PinchUse)
	}
	in.PinchYieldStrength = 205e6
	if out := parttest.Must(t, Bore, in); out.HeldBy != ClampYields {
		t.Errorf("a bolt past its yield: held by %s", out.HeldBy)
	}
	nut := coned()
	nut.PinchClamp, nut.PinchTorque, nut.PinchDiameter, nut.PinchPitch, nut.NutFactor = 0, 200, 0.02, 0.0025, 0.18
	nut.PinchYieldStrength, nut.ShaftYieldStrength, nut.ShaftTensileStrength = 150e6, 205e6, 515e6
	out := parttest.Must(t, Bore, nut)
	parttest.Within(t, "use of the nut", float64(out.PinchUse), float64(out.PinchStress)/150e6, 1e-12)
	if out.HeldBy != ClampYields {
		t.Errorf("a nut past its yield: held by %s", out.HeldBy)
	}
}

// A nut presses on the ring between its face and the hole: 30 kN on 36 mm round 24 are
// 30000/(π/4·(36² − 24²)) = 53.05 MPa. Without its face that is a share of its thread.
func TestFaceUnderTheTapersNut(t *testing.T) {
	in := coned()
	in.NutFaceDiameter, in.PermittedBearingStress = 0.036, 106.1e6
	out := parttest.Must(t, Bore, in)
	parttest.Within(t, "pressure", out.FaceStress, 53.05e6, 1e-4)
	parttest.Within(t, "use", out.FaceUse, 0.5, 1e-4)
	in.NutFaceDiameter, in.NutFaceShare, in.PinchDiameter = 0, 1.8, 0.02
	parttest.Within(t, "face by its thread", parttest.Must(t, Bore, in).FaceUsed, 0.036, 1e-12)
	if out = parttest.Must(t, Bore, split()); !math.IsNaN(float64(out.FaceStress)) || !math.IsNaN(float64(out.FaceUsed)) {
		t.Errorf("a clamp presses a face with %g Pa", out.FaceStress)
	}
}
