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
