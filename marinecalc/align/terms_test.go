package align

import (
	"math"
	"testing"

	"example.org/driveline/marinecalc/internal/parttest"
	"example.org/driveline/marinecalc/quantity"
)

// Swept together the dials do not see run-out: what is known of it is added, the
// rim's by half, as an offset is half of what the rim shows; a flexible coupling
// does not work by it.
func TestKnownRunOutOfSweptDials(t *testing.T) {
	in := zeroed(0.001, 0.0001)
	in.KnownFaceRunOut, in.KnownRimRunOut = 5e-5, 6e-5
	for kind, want := range map[Kind][2]float64{Rigid: {5e-5, 3e-5}, Flexible: {0, 0}} {
		in.CouplingKind = kind
		out := parttest.Must(t, Dial, in)
		parttest.Near(t, "gap by run-out", out.GapRunOut, want[0], 1e-12)
		parttest.Near(t, "offset by run-out", out.OffsetRunOut, want[1], 1e-12)
		parttest.Near(t, "worst gap", out.WorstGap, float64(out.GapDifference)+want[0], 1e-12)
		parttest.Near(t, "worst offset", out.WorstOffset, float64(out.Offset)+want[1], 1e-12)
		parttest.Near(t, "worst gap for its diameter", out.WorstGapPerDiameter, (float64(out.GapDifference)+want[0])/0.1, 1e-9)
	}
}

// A bar that sags takes half of what its dial shows at the bottom off the
// offset, and what it shows on the face, at its radius, off the gap; of a rim that
// was not read no sag is taken.
func TestSagOfTheBar(t *testing.T) {
	in := zeroed(0.001, 0.0001)
	bare := parttest.Must(t, Dial, in)
	in.BarSagRim, in.BarSagFace = -4e-5, 0
	out := parttest.Must(t, Dial, in)
	parttest.Near(t, "offset by the sag", math.Abs(float64(out.SagOffsetTaken)), 2e-5, 1e-12)
	parttest.Near(t, "offset without it", math.Abs(float64(out.OffsetVertical-bare.OffsetVertical)), 2e-5, 1e-12)
	for i := range in.DialReadings {
		in.DialReadings[i].Rim = quantity.Length(math.NaN())
	}
	if out = parttest.Must(t, Dial, in); !math.IsNaN(float64(out.SagOffsetTaken)) || !math.IsNaN(float64(out.Offset)) {
		t.Errorf("no rim was read: sag %g, offset %g", out.SagOffsetTaken, out.Offset)
	}
}

// A gap difference of a twentieth of the diameter is taken, and one of more is
// not, by feeler and by dial.
func TestSteepestIsATwentieth(t *testing.T) {
	for slope, refused := range map[float64]bool{0.0499: false, 0.0501: true} {
		_, err := Coupling(faces(truth{mean: 0.004, fixed: vector{slope * 0.05, 0}}.read(round(4), []float64{0})))
		if refused {
			parttest.RefusedAt(t, err, "/readings")
			parttest.Says(t, err, "5.01 mm", "up to 5 mm")
		} else if err != nil {
			t.Errorf("%g: %v", slope, err)
		}
		if _, err = Dial(zeroed(slope, 0)); refused != (err != nil) {
			t.Errorf("by dial, %g: %v", slope, err)
		}
	}
}
