package fastener

import (
	"math"
	"testing"

	"example.org/driveline/marinecalc/internal/parttest"
	"example.org/driveline/marinecalc/quantity"
)

// read is a whole joint of which all was read.
func read() PreloadInput {
	in := whole()
	in.StretchMeasured, in.StretchScatter, in.TurnMeasured, in.TurnScatter = 30e-6, 1, 0.35, 1
	in.ClampedFaces, in.SettlingEnds, in.SettlingFaces = 1, 9e-6, 2e-6
	in.FreeLength, in.FreeLengthNew = 0.0464, 0.0464
	return in
}

// series is an independent answer: a chain of springs pulled apart by steps until
// the nut has moved as far as it was turned, the ends of bolt and stack being
// shut on each other.
func series(bolt, stack []float64, turned float64) (clamp float64) {
	low, high := 0.0, 1e7
	for range 200 {
		clamp = (low + high) / 2
		moved := 0.0
		for _, k := range bolt {
			moved += clamp / k
		}
		for _, k := range stack {
			moved += clamp / k
		}
		if moved < turned {
			low = clamp
		} else {
			high = clamp
		}
	}
	return clamp
}

// By turn and after settling the clamp is that of a chain of springs, element by
// element.
func TestTurnAndSettlingAsAChainOfSprings(t *testing.T) {
	in := read()
	in.StretchMeasured = 0
	out := parttest.Must(t, Preload, in)
	const e, full = 207e9, math.Pi / 4 * 0.010 * 0.010
	core := math.Pi / 4 * math.Pow(0.010-1.226869*0.0015, 2)
	bolt := []float64{e * full / 0.010, e * full / 0.005, e * full / 0.004, e * float64(out.StressArea) / 0.014, e * core / 0.005}
	stack := []float64{float64(out.MemberSpring)}
	turned := 0.35 * 0.0015 / (2 * math.Pi)
	want := series(bolt, stack, turned)
	parttest.Within(t, "clamp by turn", float64(out.ClampFromTurn), want, 1e-6)
	parttest.Within(t, "after settling of 11 µm", float64(out.SettledClamp), series(bolt, stack, turned-11e-6), 1e-6)
	parttest.Within(t, "lost", float64(out.SettlingLoss), want-series(bolt, stack, turned-11e-6), 1e-6)
	parttest.Within(t, "turn that takes it up", float64(out.RetorqueTurn), 2*math.Pi*11e-6/0.0015, 1e-12)
	if out.TightenedClamp != out.ClampFromTurn || out.JointClamp != out.SettledClamp {
		t.Errorf("the joint goes by %g, tightened %g, settled %g", out.JointClamp, out.TightenedClamp, out.SettledClamp)
	}
	in.Retorque = Retorqued
	if out = parttest.Must(t, Preload, in); out.JointClamp != out.ClampFromTurn {
		t.Errorf("tightened again it goes by %g", out.JointClamp)
	}
}

// Shigley's example 8-3 (from memory): a bolt of 6.50 Mlbf/in that is 25/6.50 thou
// longer is clamped with 25 kip.
func TestClampByStretch(t *testing.T) {
	const lbf, in = 4.4482216152605, 0.0254
	joint := read()
	joint.BoltStiffness = quantity.Stiffness(6.50e6 * lbf / in)
	joint.StretchMeasured = quantity.Length(25.0 / 6500 * in)
	joint.GripLength = 1.5 * in
	joint.TensileStrength = 0 // of a grade that bears it, which the example does not tell
	out := parttest.Must(t, Preload, joint)
	parttest.Within(t, "clamp", float64(out.ClampFromStretch), 25000*lbf, 1e-9)
	if out.JointClamp != out.ClampFromStretch {
		t.Errorf("what was measured goes before all: %g", out.JointClamp)
	}
	parttest.Within(t, "over what yields it", float64(out.MeasuredYieldUse), 25000*lbf/(float64(joint.YieldStrength)*float64(out.StressArea)), 1e-9)
	parttest.Within(t, "over the proof load", float64(out.MeasuredProofUse), 25000*lbf/(float64(out.ProofStress)*float64(out.StressArea)), 1e-9)
}

// A torque that breaks the bolt leaves nothing to settle.
func TestNothingIsLeftOfABrokenBolt(t *testing.T) {
	in := read()
	in.StretchMeasured, in.TurnMeasured, in.TorqueUsed = 0, 0, 900
	if out := parttest.Must(t, Preload, in); !math.IsNaN(float64(out.JointClamp)) {
		t.Errorf("it holds %g", out.JointClamp)
	}
	in = read()
	in.StretchMeasured, in.SettlingEnds = 0, 1e-3
	if out := parttest.Must(t, Preload, in); out.SettledClamp != 0 {
		t.Errorf("a millimetre of settling leaves %g", out.SettledClamp)
	}
}

func TestReadingsRefuse(t *testing.T) {
	in := read()
	in.Retorque, in.ClampedFaces, in.TurnMeasured, in.FreeLength = "often", -1, 7, 0.06
	_, err := Preload(in)
	parttest.RefusedAt(t, err, "/turnMeasured", "/clampedFaces", "/retorque", "/freeLength")
}
