package align

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/stat/distuv"

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

// What does not close is held against its own gauge: four half widths of two
// pairs, two of one reading taken twice; the face by its own, the rim by its own.
func TestEachClosureByItsOwnGauge(t *testing.T) {
	use := func(change func(*DialInput)) float64 {
		in := zeroed(0.001, 0.0001)
		in.DialReadings = append(in.DialReadings, in.DialReadings[0])
		for i := range in.DialReadings {
			in.DialReadings[i].FaceUncertainty, in.DialReadings[i].RimUncertainty = 10e-6, 20e-6
		}
		change(&in)
		return float64(parttest.Must(t, Dial, in).ClosureUse)
	}
	half := math.Sqrt(3)
	parttest.Within(t, "face", use(func(in *DialInput) { in.DialReadings[1].Face += 30e-6 }), 30/(4*half*10), 1e-6)
	parttest.Within(t, "rim", use(func(in *DialInput) { in.DialReadings[1].Rim += 30e-6 }), 30/(4*half*20), 1e-6)
	parttest.Within(t, "face, back", use(func(in *DialInput) { in.DialReadings[4].Face -= 30e-6 }), 30/(2*half*10), 1e-6)
	parttest.Within(t, "rim, back", use(func(in *DialInput) { in.DialReadings[4].Rim -= 30e-6 }), 30/(2*half*20), 1e-6)
}

// Student's 97.5 % over the normal one, as any table has it: 12.706, 4.303 … over
// 1.960. Two terms of the series come near it from five degrees of freedom on, and
// a band is never widened by more than a fifth, nor made narrower.
func TestWideningAgainstStudent(t *testing.T) {
	for freedom := 5; freedom <= 60; freedom++ {
		want := distuv.StudentsT{Sigma: 1, Nu: float64(freedom)}.Quantile(0.975) / 1.959963985
		parttest.Within(t, "student", student(freedom), want, 0.01)
		// Abramowitz and Stegun 26.7.5, its first two terms in the normal quantile z.
		n, z := float64(freedom), 1.959963985
		parttest.Near(t, "two terms", student(freedom), 1+(z*z+1)/(4*n)+(5*z*z*z*z+16*z*z+3)/(96*n*n), 1e-4)
	}
	parttest.Within(t, "student of eight", student(8), 2.306/1.96, 0.003)
	for _, c := range []struct {
		spare       int
		ratio, want float64
	}{{1, 1, 1.2}, {1, 2, 2.4}, {60, 1, 1.02}, {10, 0.5, 1}, {10, math.NaN(), 1}} {
		f := plane{spare: c.spare}
		parttest.Within(t, "widened", f.widening(c.ratio), c.want, 0.002)
	}
}

// An angle and the same angle some turns on are one place of the clock.
func TestTurnsOfAnAngle(t *testing.T) {
	for _, a := range []float64{0, 0.5, 1, 3, 5, 6.2} {
		for turns := -5.0; turns <= 5; turns++ {
			parttest.Near(t, "angle", turnOf(a+turns*2*math.Pi), a, 1e-12)
		}
	}
	for _, a := range []float64{-1e-300, 2 * math.Pi, -2 * math.Pi} {
		if got := turnOf(a); got != 0 {
			t.Errorf("%g is %g on the clock", a, got)
		}
	}
}

// Beside its limit: the gap that a maker allows for each diameter, and the worst gap for it.
func TestGapsForTheirDiameter(t *testing.T) {
	in := faces(truth{mean: 1e-3, fixed: vector{1e-4, 0}}.read(round(4), []float64{0}))
	in.GapAllowance, in.KnownFaceRunOut = 0.0005, 3e-5
	out := solved(t, in)
	parttest.Near(t, "allowed", out.GapAllowed, 5e-5, 1e-12)
	parttest.Near(t, "worst", out.WorstGapPerDiameter, float64(out.WorstGap)/0.1, 1e-9)
	parttest.Near(t, "worst by a run-out that is in the gaps and may be as far on the other side", out.WorstGap, 2e-4+2*3e-5, 1e-12)
	dial := zeroed(0.001, 0)
	dial.GapAllowance = 0.0005
	parttest.Near(t, "allowed, by dial", parttest.Must(t, Dial, dial).GapAllowed, 5e-5, 1e-12)
}
