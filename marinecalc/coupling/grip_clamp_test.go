package coupling

import (
	"math"
	"testing"

	"example.org/driveline/marinecalc/internal/parttest"
	"example.org/driveline/marinecalc/quantity"
)

// ISO 898-1: M10 of 8.8 has a proof load of 33.7 kN (580 MPa on 58 mm²) and
// breaks at 46.4 kN at least.
func TestNoMarginOfAClampThatStretchesItsBolt(t *testing.T) {
	in := small()
	for _, c := range []struct {
		clamp float64
		given bool
	}{{33.5e3, true}, {33.8e3, false}, {46.3e3, false}} {
		in.Preload = quantity.Force(c.clamp)
		out := hold(t, in)
		parttest.Within(t, "share of the proof load", float64(out.ClampProofUse), c.clamp/33.7e3, 3e-3)
		if given := !math.IsNaN(float64(out.MarginAhead)); given != c.given {
			t.Errorf("%g N: margin ahead %g", c.clamp, out.MarginAhead)
		}
	}
	in.FaceFriction = 0.02 // it slips all the same, and that is said
	if out := hold(t, in); !(out.MarginPeak < 1) {
		t.Errorf("margin in a shock %g", out.MarginPeak)
	}
	in.Preload = 46.5e3
	_, err := Grip(in)
	parttest.RefusedAt(t, err, "/preload")
	in.Pitch, in.ThreadForm, in.ShearPlane = 0, "", Shank // of what thread is not known
	if out := hold(t, in); !math.IsNaN(float64(out.ClampProofUse)) {
		t.Errorf("%g of a thread that is not known", out.ClampProofUse)
	}
}

// A bolt in a tapped hole clamps no more than strips its thread, and one in a thread
// that bears more clamps what it was tightened to.
func TestClampOfATappedHole(t *testing.T) {
	in := small()
	for strips, clamp := range map[quantity.Force]float64{20e3: 20e3, 25e3: 25e3, 30e3: 25e3} {
		in.StrippingLoad = strips
		out := hold(t, in)
		parttest.Within(t, "clamp", float64(out.ClampUsed), clamp, 0)
		parttest.Within(t, "thread over clamp", float64(out.StripShare), float64(strips)/25e3, 1e-12)
	}
}

// Just at the proof load a bolt has not stretched for good; just at its tensile
// strength it breaks.
func TestClampJustAtTheProofLoad(t *testing.T) {
	in := small()
	in.Preload = quantity.Force(580e6 * in.stressArea())
	if out := hold(t, in); out.ClampProofUse != 1 || math.IsNaN(float64(out.MarginAhead)) {
		t.Errorf("%g of the proof load: margin %g", out.ClampProofUse, out.MarginAhead)
	}
	in.Preload = quantity.Force(800e6 * in.stressArea())
	_, err := Grip(in)
	parttest.RefusedAt(t, err, "/preload")
	in.Preload = 60e3
	_, err = Grip(in)
	parttest.Says(t, err, "a clamp of 60 kN breaks the bolt, which bears 46.39 kN", "below 46.39 kN") // 57.99 mm² of 800 MPa
	in = small()
	in.ShearPlane, in.Pitch, in.NominalDiameter = Shank, 1./1024, inchRootDepth/1024 // no root is left
	if out := hold(t, in); !math.IsNaN(float64(out.ClampProofUse)) {
		t.Errorf("%g of a thread that has no root", out.ClampProofUse)
	}
	in = small()
	in.ShearPlane, in.Pitch = Shank, 0
	if out := hold(t, in); !math.IsNaN(float64(out.ClampProofUse)) {
		t.Errorf("%g of a thread of no known pitch", out.ClampProofUse)
	}
}

// A margin of just 1 is one that is met: where a pull, a peak or a bolt past its proof
// load would make it worse it is not told.
func TestMarginOfJustOneIsWithheldToo(t *testing.T) {
	told := func(m ...quantity.Ratio) (n int) {
		for _, m := range m {
			if !math.IsNaN(float64(m)) {
				n++
			}
		}
		return n
	}
	in := small()
	in.ThreadForm, in.ThrustAstern = "", 0
	in.ShaftTorque = hold(t, in).FrictionCapacity
	in.AsternTorque, in.PeakTorque = in.ShaftTorque, in.ShaftTorque
	if out := hold(t, in); out.MarginAhead != 1 || out.MarginAstern != 1 || out.MarginPeak != 1 || out.MarginHardest != 1 {
		t.Fatalf("just held: %+v", out)
	}
	if out, _ := GripAt(in, true); told(out.MarginAhead, out.MarginAstern, out.MarginPeak, out.MarginHardest) != 0 {
		t.Errorf("by a bolt past its proof load: %+v", out)
	}
	in.ThrustOnCoupling = 1 // and nobody told the pull
	if out := hold(t, in); out.MarginAhead != 1 || told(out.MarginAstern, out.MarginPeak, out.MarginHardest) != 0 {
		t.Errorf("with a pull that nobody told: %+v", out)
	}
	in = small()
	parttest.Within(t, "shear by yield, distortion energy", float64(hold(t, in).ShearLimit), 640e6/math.Sqrt(3), 1e-3)
	in.PeakTorque = 0
	in.PermittedShear = hold(t, in).ShearStress
	if out := hold(t, in); told(out.ShearUse) != 0 {
		t.Errorf("shear just allowed, with no peak told: %g", out.ShearUse)
	}
}
