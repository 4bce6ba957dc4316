package mount

import (
	"math"
	"testing"

	"example.org/driveline/marinecalc/internal/parttest"
	"example.org/driveline/marinecalc/quantity"
)

// At rest the mounts share the weight, each pressed down by what it carries over
// its stiffness; astern with the same torque and all of the thrust they carry what
// ahead takes off them, and the other way (linear springs).
func TestSharesAndAsternMirrored(t *testing.T) {
	in := engine()
	in.AsternTorque, in.AsternThrust = in.ShaftTorque, 1
	out := carried(t, in)
	weight, shares := 190*9.80665, 0.0
	for i := range in.Mounts {
		l := out.Loads[i]
		parttest.Within(t, "share", l.Share, float64(l.AtRest)/weight, 1e-9)
		parttest.Within(t, "pressed down", l.Deflection, float64(l.AtRest)/150e3, 1e-9)
		parttest.Within(t, "astern", float64(l.Astern-l.AtRest), -float64(l.Ahead-l.AtRest), 1e-9)
		shares += float64(l.Share)
	}
	parttest.Near(t, "together", shares, 1, 1e-9)
	half := in
	half.AsternThrust, half.AsternTorque = 0.5, in.ShaftTorque/2
	halved := carried(t, half)
	for i, l := range halved.Loads[:4] {
		parttest.Within(t, "half of it astern", float64(l.Astern-l.AtRest), float64(out.Loads[i].Astern-out.Loads[i].AtRest)/2, 1e-9)
	}
	parttest.Within(t, "gap", out.MovedGap, 0.102*float64(out.MovedGapPerDiameter), 1e-12)
	in.CouplingDiameter = 0
	if out = carried(t, in); out.MovedGap != 0 && !math.IsNaN(float64(out.MovedGap)) {
		t.Errorf("a gap of %g on a coupling nobody measured", out.MovedGap)
	}
}

// What a mount bears over its rating is told from 1 on though one way of driving
// is not known.
func TestOverloadedAHair(t *testing.T) {
	in := engine()
	in.AsternTorque, in.Thrust, in.ThrustOnMounts = 0, 0, 0
	most := 0.0
	out := carried(t, in)
	for _, l := range out.Loads[:4] {
		most = max(most, float64(l.Axial))
	}
	for share, told := range map[float64]bool{0.95: false, 1.05: true, 1.6: true} {
		for i := range in.Mounts {
			in.Mounts[i].RatedLoad = quantity.Force(most / share)
		}
		if out := carried(t, in); math.IsNaN(float64(out.LoadUse)) == told {
			t.Errorf("at %g of its rating: %g", share, out.LoadUse)
		}
	}
}

// A four-stroke engine of three cylinders fires three times in two turns: it
// meets a mode of f hertz at 40·f turns a minute. What is not passed is isolated;
// an idle above full speed is none.
func TestFiringMeetsTheModes(t *testing.T) {
	in := engine()
	out := carried(t, in)
	for _, m := range out.Modes {
		parttest.Within(t, "met at", float64(m.Meets)*30/math.Pi, 40*float64(m.Frequency), 1e-12)
	}
	parttest.Near(t, "isolated", out.IsolatedFull, 1-float64(out.PassedFull), 1e-12)
	parttest.Near(t, "lowest", out.LowestFrequency, float64(out.Modes[0].Frequency), 0)
	in.Strokes = TwoStroke
	for _, m := range carried(t, in).Modes {
		parttest.Within(t, "met by two strokes at", float64(m.Meets)*30/math.Pi, 20*float64(m.Frequency), 1e-12)
	}
	in.IdleSpeed = in.EngineSpeed * 1.01
	if out = carried(t, in); !math.IsNaN(float64(out.FiringIdle)) || math.IsNaN(float64(out.FiringFull)) {
		t.Errorf("idle above full speed fires at %g Hz", out.FiringIdle)
	}
	in.IdleSpeed = in.EngineSpeed
	if out = carried(t, in); out.FiringIdle != out.FiringFull {
		t.Errorf("idle at full speed fires at %g Hz", out.FiringIdle)
	}
	in.EngineSpeed = 0
	if out = carried(t, in); math.IsNaN(float64(out.FiringIdle)) || !math.IsNaN(float64(out.FiringFull)) {
		t.Errorf("no full speed: idle fires at %g Hz", out.FiringIdle)
	}
	in.Cylinders, in.Strokes = 0, FourStroke
	if out = carried(t, in); !math.IsNaN(float64(out.Modes[0].Meets)) {
		t.Errorf("no cylinders meet a mode at %g", out.Modes[0].Meets)
	}
}

// Each mode's own name is that of the way it goes most: with the centre at the
// height of springs that stand evenly no way takes another along, so that bounce
// is √(Σk/m).
func TestModesOfAnEvenEngine(t *testing.T) {
	in := engine()
	in.CentreForward, in.CentreUp = 0.55, 0.06
	out := carried(t, in)
	bounce := math.Sqrt(4*150e3*float64(in.DynamicRatio)/190) / (2 * math.Pi)
	found := false
	for _, m := range out.Modes {
		if math.Abs(float64(m.Frequency)-bounce) < 1e-6*bounce {
			found = m.MotionShare > 0.999
		}
	}
	if !found {
		t.Errorf("bounce at %g Hz is not among %+v", bounce, out.Modes)
	}
}

// What is left after the moves is over its diameter, run-out on top; a nut
// turns by what its thread takes for the raise, and the largest move is named.
func TestWhatIsLeftAndTurned(t *testing.T) {
	in := MovesInput{Mounts: fourMounts(), CouplingDiameter: 0.1, GapVertical: 1e-4, OffsetVertical: 3e-4, OffsetHorizontal: -9e-4, GapRunOut: 2e-5, OffsetRunOut: 3e-5}
	for i := range in.Mounts {
		in.Mounts[i].ThreadPitch = 0.002
	}
	out := corrected(t, in)
	parttest.Within(t, "gap for its diameter", out.GapPerDiameterAfter, float64(out.GapDifferenceAfter)/0.1, 1e-12)
	parttest.Within(t, "worst gap for its diameter", out.WorstGapPerDiameterAfter, (float64(out.GapDifferenceAfter)+2e-5)/0.1, 1e-12)
	largest := 0.0
	for i := range in.Mounts {
		m := out.Moves[i]
		parttest.Near(t, "raise by the nut", 0.002*float64(m.Turns)/(2*math.Pi), float64(m.Raise), 1e-12)
		parttest.Near(t, "flats", m.Nut.Flats, 6*float64(m.Turns)/(2*math.Pi), 1e-12)
		largest = max(largest, math.Abs(float64(m.Raise)), math.Abs(float64(m.Shift)))
	}
	parttest.Near(t, "largest", out.LargestMove, largest, 1e-15)
	parttest.Near(t, "to starboard", out.LargestMove, 9e-4, 1e-9)
	// Where only one way was read the engine turns about itself in the other.
	nan := quantity.Length(nan)
	for pivot, read := range map[string][2]quantity.Length{BothCured: {1e-4, 1e-4}, HorizontalPivot: {1e-4, nan}, VerticalPivot: {nan, 1e-4}, BothPivots: {nan, nan}} {
		in := MovesInput{Mounts: fourMounts(), CouplingDiameter: 0.1, GapVertical: 1e-4, OffsetVertical: read[0], OffsetHorizontal: read[1]}
		if out := corrected(t, in); out.Pivot != pivot {
			t.Errorf("%v: %s, want %s", read, out.Pivot, pivot)
		}
	}
}

// Set ashore the coupling is set wrong by what launching does to it, each way of
// the four by its own figure: once afloat it stands even.
func TestLaunchingComesTrue(t *testing.T) {
	in := warmed()
	in.FrontRise, in.AftRise = 0, 0
	in.AfloatGapVertical, in.AfloatGapHorizontal, in.AfloatOffsetVertical, in.AfloatOffsetHorizontal = 1e-4, -2e-4, 3e-4, -4e-4
	in.MeanGap = 0.004
	out := parttest.Must(t, Target, in)
	for what, c := range map[string][2]quantity.Length{
		"gap, up": {out.TargetGapVertical, in.AfloatGapVertical}, "gap, across": {out.TargetGapHorizontal, in.AfloatGapHorizontal},
		"offset, up": {out.TargetOffsetVertical, in.AfloatOffsetVertical}, "offset, across": {out.TargetOffsetHorizontal, in.AfloatOffsetHorizontal},
	} {
		parttest.Near(t, what+", afloat", c[0]+c[1], 0, 1e-12)
	}
	parttest.Near(t, "top less bottom", out.SetGapTop-out.SetGapBottom, float64(out.TargetGapVertical), 1e-12)
	parttest.Near(t, "starboard less port", out.SetGapStarboard-out.SetGapPort, float64(out.TargetGapHorizontal), 1e-12)
	parttest.Near(t, "their mean", (out.SetGapTop+out.SetGapBottom+out.SetGapStarboard+out.SetGapPort)/4, 0.004, 1e-12)
	parttest.Within(t, "gap correction", out.GapCorrection, math.Hypot(1e-4, 2e-4), 1e-12)
	parttest.Within(t, "offset correction", out.OffsetCorrection, 5e-4, 1e-12)
	parttest.Within(t, "offset told", out.OffsetTold, 50, 1e-12)
}

// The worst offset has the run-out of the rim and what a pilot may hide beside what is
// left; what becomes of an offset that was not read is what the move does to it.
func TestOffsetsThatAreAddedAndMade(t *testing.T) {
	in := MovesInput{Mounts: fourMounts(), CouplingDiameter: 0.1, GapVertical: 1e-4, GapHorizontal: 2e-4, OffsetVertical: 3e-4, OffsetHorizontal: -9e-4, OffsetRunOut: 3e-5, PilotOffset: 5e-5}
	out := corrected(t, in)
	parttest.Near(t, "worst offset", out.WorstOffsetAfter, float64(out.OffsetAfter)+8e-5, 1e-15)
	nan := quantity.Length(math.NaN())
	for _, c := range []struct {
		up, across quantity.Length
		made       func(*MovesResult) float64
	}{
		{3e-4, -9e-4, func(*MovesResult) float64 { return math.NaN() }},
		{nan, -9e-4, func(m *MovesResult) float64 { return math.Abs(float64(m.RaiseAtCoupling)) }},
		{3e-4, nan, func(m *MovesResult) float64 { return math.Abs(float64(m.ShiftAtCoupling)) }},
		{nan, nan, func(m *MovesResult) float64 {
			return math.Hypot(float64(m.RaiseAtCoupling), float64(m.ShiftAtCoupling))
		}},
	} {
		in.OffsetVertical, in.OffsetHorizontal = c.up, c.across
		out := corrected(t, in)
		if got, want := float64(out.OffsetMade), c.made(&out); !(math.Abs(got-want) <= 1e-15) && !(math.IsNaN(got) && math.IsNaN(want)) {
			t.Errorf("read %g and %g: made %g, want %g", c.up, c.across, got, want)
		}
	}
}

// An engine whose three moments of inertia are given needs no size, however small they
// are; with one missing it does.
func TestSizeWhereAnInertiaIsMissing(t *testing.T) {
	for missing := range 4 {
		in := engine()
		in.InertiaRoll, in.InertiaPitch, in.InertiaYaw, in.EngineLength = 0.5, 0.6, 0.7, 0
		switch missing {
		case 0:
			parttest.Must(t, Load, in)
			continue
		case 1:
			in.InertiaRoll = 0
		case 2:
			in.InertiaPitch = 0
		case 3:
			in.InertiaYaw = 0
		}
		_, err := Load(in)
		parttest.RefusedAt(t, err, "/engineLength")
	}
}
