package mount

import (
	"fmt"
	"math"
	"testing"

	"example.org/driveline/marinecalc/internal/parttest"
	"example.org/driveline/marinecalc/quantity"
)

// warmed is an engine whose mounts stand a known way under its shaft line.
func warmed() TargetInput {
	return TargetInput{CouplingDiameter: 0.1, Expansion: 1.2e-5, FrontRise: 50, AftRise: 50, UsualDeflection: 0.004, CreepPerDecade: 0, Standing: 86400, Settles: 86400,
		MeanGap: 0.004, GapReadingError: 2e-5, OffsetReadingError: 1e-5,
		Mounts: []Mount{{Name: "a", Forward: 0.7, Starboard: -0.2, Up: -0.3}, {Name: "b", Forward: 0.7, Starboard: 0.2, Up: -0.3}, {Name: "c", Forward: 0.2, Starboard: -0.2, Up: -0.3}, {Name: "d", Forward: 0.2, Starboard: 0.2, Up: -0.3}}}
}

// 0.3 m of bracket and block, 50 K, 12 µm for each metre and kelvin: 0.18 mm
// (thermal expansion of a solid; the figures are an own example).
func TestHeatLiftsTheShaftLine(t *testing.T) {
	in := warmed()
	out, err := Target(in)
	if err != nil {
		t.Fatal(err)
	}
	parttest.Near(t, "set low by", out.TargetOffsetVertical, -0.18e-3, 1e-12)
	parttest.Near(t, "growth over the front", out.GrowthFront, 0.18e-3, 1e-12)
	if math.Abs(float64(out.TargetGapVertical)) > 1e-12 {
		t.Errorf("alike warmed it stays even: %g", out.TargetGapVertical)
	}
	in.FrontRise = 100 // the front goes up by 0.18 mm in 0.5 m more
	if out, err = Target(in); err != nil {
		t.Fatal(err)
	}
	parttest.Near(t, "open at the top, cold", out.TargetGapVertical, 0.1*0.18e-3/0.5, 1e-12)
	parttest.Near(t, "gap to set at 12", out.SetGapTop, 0.004+0.1*0.18e-3/0.5/2, 1e-12)
}

// Creep of 5 % a decade on 4 mm, from a day to ten days under load: 0.2 mm, of all
// mounts alike; the flange sinks by it and is set high.
func TestMountsSettleByTheDecade(t *testing.T) {
	in := warmed()
	in.FrontRise, in.AftRise, in.CreepPerDecade, in.Settles = 0, 0, 0.05, 9*86400
	out, err := Target(in)
	if err != nil {
		t.Fatal(err)
	}
	parttest.Near(t, "sinks", out.Sink, 0.2e-3, 1e-12)
	parttest.Near(t, "set high by", out.TargetOffsetVertical, 0.2e-3, 1e-9)
	in.Standing, in.Settles = 365*86400, 9*86400 // old ones hardly
	if out, err = Target(in); err != nil || out.Sink > 0.003e-3 {
		t.Errorf("old mounts settle by %g, %v", out.Sink, err)
	}
}

// Set by the target, and then moved as foreseen, the coupling comes true: the
// four corners of a rigid engine are lifted one by one, in space, and gap and
// offset read off its face.
func TestTheTargetComesTrueWarm(t *testing.T) {
	in := warmed()
	in.FrontRise, in.AftRise, in.CreepPerDecade = 60, 30, 0.04
	in.DrivingUp, in.DrivingFrontUp, in.DrivingStarboard, in.DrivingFrontStarboard, in.DrivingShare = 0.2e-3, 0.4e-3, -0.1e-3, 0.3e-3, 0.5
	in.AfloatGapVertical, in.AfloatOffsetVertical = 0.05e-3, -0.1e-3
	out, err := Target(in)
	if err != nil {
		t.Fatal(err)
	}
	lift := func(x float64) float64 { // of the shaft line over a station, by heat and settling
		rise := 30.0
		if x > 0.45 {
			rise = 60
		}
		return 0.3*1.2e-5*rise - 0.004*0.04*math.Log10(2)
	}
	slope := (lift(0.7) - lift(0.2)) / 0.5
	high := lift(0.2) - 0.2*slope + 0.5*0.2e-3 - 0.1e-3
	slope += 0.5 * 0.4e-3
	parttest.Near(t, "gap warm", float64(out.TargetGapVertical)-0.1*slope+0.05e-3+1, 1, 1e-12)
	parttest.Near(t, "offset warm", float64(out.TargetOffsetVertical)+high+1, 1, 1e-12)
	parttest.Near(t, "gap across warm", float64(out.TargetGapHorizontal)-0.1*0.5*0.3e-3+1, 1, 1e-12)
	parttest.Near(t, "offset across warm", float64(out.TargetOffsetHorizontal)-0.5*0.1e-3+1, 1, 1e-12)
	for i := range in.Mounts {
		m, nan := &in.Mounts[i], quantity.Length(math.NaN())
		m.TravelUp, m.TravelDown, m.SidewaysSlack = nan, nan, nan
	}
	moves, err := Moves(MovesInput{Mounts: in.Mounts, CouplingDiameter: 0.1, OffsetVertical: 0, OffsetHorizontal: 0, WantedGapVertical: out.TargetGapVertical,
		WantedGapHorizontal: out.TargetGapHorizontal, WantedOffsetVertical: out.TargetOffsetVertical, WantedOffsetHorizontal: out.TargetOffsetHorizontal})
	if err != nil {
		t.Fatal(err)
	}
	parttest.Near(t, "moves aim at the gap", moves.GapVerticalAfter, float64(out.TargetGapVertical), 1e-9)
	parttest.Near(t, "moves aim at the offset", moves.OffsetVerticalAfter, float64(out.TargetOffsetVertical), 1e-9)
	if moves.GapDifferenceAfter > 1e-9 || moves.OffsetAfter > 1e-9 {
		t.Errorf("left against the target: %g, %g", moves.GapDifferenceAfter, moves.OffsetAfter)
	}
	last := moves.Moves[3]
	parttest.Near(t, "after the last nut", last.GapThen, float64(moves.GapVerticalAfter), 1e-9)
	parttest.Near(t, "after the last nut, offset", last.OffsetThen, float64(moves.OffsetVerticalAfter), 1e-9)
}

func TestTargetRefusesAndTells(t *testing.T) {
	in := warmed()
	in.FrontRise, in.AftRise = 0, 0
	if out, err := Target(in); err != nil || out.Worth != LostInReading || out.DrivingCounted != DrivingIn {
		t.Errorf("nothing moves: %q, %q, %v", out.Worth, out.DrivingCounted, err)
	}
	nan := math.NaN()
	in.DrivingStarboard, in.DrivingFrontStarboard = quantity.Length(nan), quantity.Angle(nan)
	if out, err := Target(in); err != nil || out.Worth != "" || out.DrivingCounted != DrivingInPart {
		t.Errorf("athwart not known: %q, %q, %v", out.Worth, out.DrivingCounted, err)
	}
	in.DrivingUp, in.DrivingFrontUp = quantity.Length(nan), quantity.Angle(nan)
	if out, err := Target(in); err != nil || out.Worth != "" || out.DrivingCounted != DrivingNotKnown {
		t.Errorf("nothing known of driving: %q, %q, %v", out.Worth, out.DrivingCounted, err)
	}
	in.DrivingShare, in.ShareTold = 0, true
	if out, err := Target(in); err != nil || out.Worth != LostInReading || out.DrivingCounted != DrivingHeld {
		t.Errorf("held by the shaft: %q, %q, %v", out.Worth, out.DrivingCounted, err)
	}
	in.ShareTold = false
	in.DrivingFrontUp = 0.001
	if out, err := Target(in); err != nil || !math.IsNaN(float64(out.GapCorrection)) {
		t.Errorf("a front end that rises about nowhere: %g, %v", out.GapCorrection, err)
	}
	in.DrivingFrontUp = quantity.Angle(nan)
	in.FrontRise = 90
	if out, err := Target(in); err != nil || out.Worth != WorthSetting || out.DrivingCounted != DrivingNotKnown {
		t.Errorf("hot front: %q, %q, %v", out.Worth, out.DrivingCounted, err)
	}
	for i := range in.Mounts {
		in.Mounts[i].Forward = 0.3
	}
	_, err := Target(in)
	parttest.RefusedAt(t, err, "/mounts")
	parttest.SameCodes(t, "alignment-target", "worth", WorthSetting, LostInReading)
	parttest.SameCodes(t, "alignment-target", "drivingCounted", DrivingIn, DrivingInPart, DrivingHeld, DrivingNotKnown)
}

func TestEdgesOfTarget(t *testing.T) {
	mm5, maybe := "[-0.005, 0.005]", "NaN or [-0.02, 0.02]"
	edges := map[string]string{
		"/couplingDiameter": "[0.03, 0.8]", "/meanGap": "[-0.0001, 0.05]", "/frontRise": "[-20, 150]", "/aftRise": "[-20, 150]", "/expansion": "[1e-06, 5e-05]",
		"/usualDeflection": "[5e-05, 0.1]", "/creepPerDecade": "[0, 0.5]", "/standing": "[3600, 1e+10]", "/settles": "[0, 1e+10]",
		"/drivingUp": maybe, "/drivingStarboard": maybe, "/drivingFrontUp": "NaN or [-0.05, 0.05]", "/drivingFrontStarboard": "NaN or [-0.05, 0.05]", "/drivingShare": "[0, 1]",
		"/afloatGapVertical": mm5, "/afloatGapHorizontal": mm5, "/afloatOffsetVertical": mm5, "/afloatOffsetHorizontal": mm5,
		"/gapReadingError": "[1e-06, 0.01]", "/offsetReadingError": "[1e-06, 0.01]",
	}
	for _, name := range []string{"forward", "starboard", "up", "threadPitch", "travelUp", "travelDown", "sidewaysSlack", "footGap", "stiffness", "stiffnessSideways", "stiffnessAlong", "inclination", "deflectionNew", "deflectionNow", "rubberHeight", "ratedLoad", "ratedThrust"} {
		edges[fmt.Sprintf("/mounts/0/%s", name)] = "any"
	}
	parttest.Edges(t, warmed(), Target, edges)
}

// A target is worth setting where gap or offset is more than what the gauges are out
// by; just as much is lost in reading, where all that moves the engine is counted.
func TestTargetAgainstTheGauges(t *testing.T) {
	in := warmed()
	in.FrontRise, in.AftRise = 70, 30
	nan := quantity.Length(math.NaN())
	plain := parttest.Must(t, Target, in)
	for _, c := range []struct {
		gap, offset quantity.Length // over what the gauges are out by
		known       bool
		worth       string
	}{{1, 1, true, LostInReading}, {1.5, 1, true, WorthSetting}, {1, 1.5, true, WorthSetting}, {1.5, 0.5, true, WorthSetting}, {0.5, 0.5, true, LostInReading}, {1, 1, false, ""}, {0.5, 1.5, false, WorthSetting}} {
		in := in
		if !c.known {
			in.DrivingStarboard, in.DrivingFrontStarboard = nan, quantity.Angle(nan)
		}
		plain := parttest.Must(t, Target, in)
		in.GapReadingError, in.OffsetReadingError = plain.GapCorrection/c.gap, plain.OffsetCorrection/c.offset
		out := parttest.Must(t, Target, in)
		parttest.Within(t, "gap told", float64(out.GapTold), float64(c.gap), 1e-12)
		parttest.Within(t, "offset told", float64(out.OffsetTold), float64(c.offset), 1e-12)
		if out.Worth != c.worth {
			t.Errorf("%+v: %q", c, out.Worth)
		}
	}
	parttest.Within(t, "gap for its diameter", float64(plain.GapCorrectionPerDiameter), float64(plain.GapCorrection/in.CouplingDiameter), 1e-12)
}
