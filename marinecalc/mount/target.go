// How the coupling is to stand cold and unloaded: Target.

package mount

import (
	"fmt"
	"math"

	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/quantity"
)

// TargetInput is what moves the engine between the day it is set and the day it
// drives warm. Movements are of the gearbox output flange. NaN is not known.
type TargetInput struct {
	Mounts           []Mount                        // 2 to 8; Up is what grows with heat
	CouplingDiameter quantity.Length                // 30 mm to 0.8 m
	MeanGap          quantity.Length                // of the faces while they are set, up to 50 mm; 0: not known
	FrontRise        quantity.TemperatureDifference // of the metal between shaft line and front mounts, up to 150 K
	AftRise          quantity.TemperatureDifference // the same of the aft mounts: the gearbox's
	Expansion        quantity.Ratio                 // of that metal, for each kelvin, 1e-6 to 5e-5
	UsualDeflection  quantity.Length                // of a mount whose own is not known, 0.05 mm to 0.1 m
	CreepPerDecade   quantity.Ratio                 // of the deflection, for each tenfold of time under load, up to 0.5
	Standing         quantity.Time                  // for which the mounts have carried the engine, an hour or more
	Settles          quantity.Time                  // from now to when it is to be true, 0 or more

	DrivingUp             quantity.Length `unset:"NaN"` // by which ahead lifts a free engine's flange, -20 to 20 mm
	DrivingStarboard      quantity.Length `unset:"NaN"`
	DrivingFrontUp        quantity.Angle  `unset:"NaN"` // by which its front end goes up, -0.05 to 0.05
	DrivingFrontStarboard quantity.Angle  `unset:"NaN"`
	DrivingShare          quantity.Ratio  // of that free movement which the shaft lets it make, 0 to 1
	ShareTold             bool            `readOf:"drivingShare"` // and not only what is usual

	AfloatGapVertical      quantity.Length // by which launching opens the gap at the top, less at the bottom, -5 to 5 mm; 0 where it is set afloat
	AfloatGapHorizontal    quantity.Length
	AfloatOffsetVertical   quantity.Length // by which it lifts the engine flange over the shaft's
	AfloatOffsetHorizontal quantity.Length

	GapReadingError    quantity.Length // what a gap difference can be read to, above 0
	OffsetReadingError quantity.Length
}

// TargetResult is the coupling to set. Gap and offset have the signs of
// MovesInput.
type TargetResult struct {
	TargetGapVertical      quantity.Length
	TargetGapHorizontal    quantity.Length
	TargetOffsetVertical   quantity.Length
	TargetOffsetHorizontal quantity.Length

	SetGapTop       quantity.Length // NaN without MeanGap
	SetGapStarboard quantity.Length
	SetGapBottom    quantity.Length
	SetGapPort      quantity.Length

	GapCorrection            quantity.Length // size of the target gap difference: what would stand warm, were it set even
	GapCorrectionPerDiameter quantity.Ratio
	OffsetCorrection         quantity.Length
	GapTold                  quantity.Ratio // GapCorrection over GapReadingError
	OffsetTold               quantity.Ratio
	Worth                    string // whether a target can be told from nothing by these gauges

	GrowthFront    quantity.Length // of the shaft line over the foremost mounts, by heat
	GrowthAft      quantity.Length
	GrowthUp       quantity.Length // of the flange
	GrowthFrontUp  quantity.Angle  // front end up
	Sink           quantity.Length // the most that a mount settles
	SinkUp         quantity.Length // of the flange, minus: down
	SinkFrontUp    quantity.Angle
	DrivenUp       quantity.Length // by DrivingShare; 0 where driving is not known
	DrivenFrontUp  quantity.Angle
	DrivingCounted string // whether it is in
}

// The codes of Worth and DrivingCounted, for which the schema of
// alignment-target has the words.
const (
	WorthSetting  = "worth-it"
	LostInReading = "lost-in-reading"

	DrivingIn       = "counted"
	DrivingInPart   = "in-part"
	DrivingHeld     = "held"
	DrivingNotKnown = "not-known"
)

// Target works back from a coupling that is true warm, afloat and driving.
//
// Metal of height h between a mount and the shaft line grows by h·α·ΔT. A
// mount that has crept under its load for a time t settles by δ·κ·log10((t+s)/t)
// in the time s (creep of rubber goes by the logarithm of time: Lindley,
// Engineering Design with Natural Rubber, from memory). What the mounts do to
// the flange is the line of least squares through them, as for moves. A front
// end that rises by a slope shuts the gap at the top by D times it: to be even
// then, it is set open by as much.
//
// The error is a *problem.Error of everything that cannot be.
func Target(in TargetInput) (out TargetResult, err error) {
	if bad := in.validate(); len(bad) > 0 {
		return TargetResult{}, bad.Err()
	}
	var grown, sunk [Most]float64
	decades := math.Log10(float64((in.Standing + in.Settles) / in.Standing))
	middle := in.middle()
	aft, fore := math.Inf(1), math.Inf(-1)
	for i := range in.Mounts {
		m := &in.Mounts[i]
		rise := in.AftRise
		if m.Forward > middle {
			rise = in.FrontRise
		}
		grown[i] = -float64(m.Up) * float64(in.Expansion) * float64(rise)
		if x := float64(m.Forward); x < aft {
			aft, out.GrowthAft = x, quantity.Length(grown[i])
		}
		if x := float64(m.Forward); x > fore {
			fore, out.GrowthFront = x, quantity.Length(grown[i])
		}
		deflection := m.DeflectionNow
		if !(deflection > 0) {
			deflection = m.DeflectionNew
		}
		if deflection == 0 {
			deflection = in.UsualDeflection
		}
		sunk[i] = -float64(deflection) * float64(in.CreepPerDecade) * decades
		out.Sink = max(out.Sink, quantity.Length(-sunk[i]))
	}
	growth, sink := settled(in.Mounts, &grown), settled(in.Mounts, &sunk)
	out.GrowthUp, out.GrowthFrontUp = quantity.Length(growth.at), quantity.Angle(growth.slope)
	out.SinkUp, out.SinkFrontUp = quantity.Length(sink.at), quantity.Angle(sink.slope)
	drivenUp, drivenFrontUp, up := in.driven(in.DrivingUp, in.DrivingFrontUp)
	drivenStarboard, drivenFrontStarboard, across := in.driven(in.DrivingStarboard, in.DrivingFrontStarboard)
	out.DrivenUp, out.DrivenFrontUp = drivenUp, drivenFrontUp
	switch {
	case in.held():
		out.DrivingCounted = DrivingHeld
	case up && across:
		out.DrivingCounted = DrivingIn
	case up || across:
		out.DrivingCounted = DrivingInPart
	default:
		out.DrivingCounted = DrivingNotKnown
	}
	d := in.CouplingDiameter
	out.TargetGapVertical = tidy(d*quantity.Length(out.GrowthFrontUp+out.SinkFrontUp+out.DrivenFrontUp) - in.AfloatGapVertical)
	out.TargetGapHorizontal = tidy(d*quantity.Length(drivenFrontStarboard) - in.AfloatGapHorizontal)
	out.TargetOffsetVertical = tidy(-(out.GrowthUp + out.SinkUp + out.DrivenUp + in.AfloatOffsetVertical))
	out.TargetOffsetHorizontal = tidy(-(drivenStarboard + in.AfloatOffsetHorizontal))
	mean := quantity.Length(quantity.OrNaN(float64(in.MeanGap)))
	out.SetGapTop, out.SetGapBottom = mean+out.TargetGapVertical/2, mean-out.TargetGapVertical/2
	out.SetGapStarboard, out.SetGapPort = mean+out.TargetGapHorizontal/2, mean-out.TargetGapHorizontal/2
	out.GapCorrection = quantity.Length(math.Hypot(float64(out.TargetGapVertical), float64(out.TargetGapHorizontal)))
	out.GapCorrectionPerDiameter = quantity.Ratio(out.GapCorrection / d)
	out.OffsetCorrection = quantity.Length(math.Hypot(float64(out.TargetOffsetVertical), float64(out.TargetOffsetHorizontal)))
	out.GapTold, out.OffsetTold = quantity.Ratio(out.GapCorrection/in.GapReadingError), quantity.Ratio(out.OffsetCorrection/in.OffsetReadingError)
	switch {
	case out.GapTold > 1 || out.OffsetTold > 1:
		out.Worth = WorthSetting
	case out.GapTold <= 1 && out.OffsetTold <= 1 && (out.DrivingCounted == DrivingIn || out.DrivingCounted == DrivingHeld): // what is left out could be more
		out.Worth = LostInReading
	}
	return out, nil
}

// held tells whether the shaft is told to hold the engine where it is.
func (in *TargetInput) held() bool { return in.DrivingShare == 0 && in.ShareTold }

// driven is what the shaft leaves of a free engine's movement ahead: of its
// flange, and of its front end. Known of neither it is left out, and of one alone
// NaN: that says that it moves, and not how.
func (in *TargetInput) driven(at quantity.Length, slope quantity.Angle) (quantity.Length, quantity.Angle, bool) {
	noAt, noSlope := math.IsNaN(float64(at)), math.IsNaN(float64(slope))
	if in.held() || noAt && noSlope {
		return 0, 0, false
	}
	if noAt || noSlope {
		return quantity.Length(math.NaN()), quantity.Angle(math.NaN()), false
	}
	share := float64(in.DrivingShare)
	return quantity.Length(share * float64(at)), quantity.Angle(share * float64(slope)), true
}

// middle is halfway between the foremost and the aftmost mount.
func (in *TargetInput) middle() quantity.Length {
	aft, fore := in.Mounts[0].Forward, in.Mounts[0].Forward
	for i := range in.Mounts {
		aft, fore = min(aft, in.Mounts[i].Forward), max(fore, in.Mounts[i].Forward)
	}
	return (aft + fore) / 2
}

// validate collects everything that cannot be.
func (in *TargetInput) validate() problem.List {
	var bad problem.List
	validate(&bad, in.Mounts, 2)
	for _, c := range [...]struct {
		name      string
		v         float64
		low, high float64
		allowed   string
		maybe     bool
	}{
		{"couplingDiameter", float64(in.CouplingDiameter), 0.03, 0.8, "30 mm to 800 mm", false},
		{"meanGap", float64(in.MeanGap), -1e-4, 0.05, "0 mm to 50 mm", false},
		{"frontRise", float64(in.FrontRise), -20, 150, "-20 K to 150 K", false},
		{"aftRise", float64(in.AftRise), -20, 150, "-20 K to 150 K", false},
		{"expansion", float64(in.Expansion), 1e-6, 5e-5, "1e-6 to 5e-5 for each kelvin", false},
		{"usualDeflection", float64(in.UsualDeflection), 0.05e-3, 0.1, "0.05 mm to 100 mm", false},
		{"creepPerDecade", float64(in.CreepPerDecade), 0, 0.5, "0 to 50 %", false},
		{"standing", float64(in.Standing), 3600, 1e10, "an hour or more", false},
		{"settles", float64(in.Settles), 0, 1e10, "0 or more", false},
		{"drivingUp", float64(in.DrivingUp), -0.02, 0.02, "-20 mm to 20 mm", true},
		{"drivingStarboard", float64(in.DrivingStarboard), -0.02, 0.02, "-20 mm to 20 mm", true},
		{"drivingFrontUp", float64(in.DrivingFrontUp), -0.05, 0.05, "-50 mm/m to 50 mm/m", true},
		{"drivingFrontStarboard", float64(in.DrivingFrontStarboard), -0.05, 0.05, "-50 mm/m to 50 mm/m", true},
		{"drivingShare", float64(in.DrivingShare), 0, 1, "0 to 100 %", false},
		{"afloatGapVertical", float64(in.AfloatGapVertical), -0.005, 0.005, "-5 mm to 5 mm", false},
		{"afloatGapHorizontal", float64(in.AfloatGapHorizontal), -0.005, 0.005, "-5 mm to 5 mm", false},
		{"afloatOffsetVertical", float64(in.AfloatOffsetVertical), -0.005, 0.005, "-5 mm to 5 mm", false},
		{"afloatOffsetHorizontal", float64(in.AfloatOffsetHorizontal), -0.005, 0.005, "-5 mm to 5 mm", false},
		{"gapReadingError", float64(in.GapReadingError), 1e-6, 0.01, "0.001 mm to 10 mm", false},
		{"offsetReadingError", float64(in.OffsetReadingError), 1e-6, 0.01, "0.001 mm to 10 mm", false},
	} {
		if c.maybe && math.IsNaN(c.v) {
			continue
		}
		if !problem.Within(c.v, c.low, c.high) {
			bad.Add("/"+c.name, fmt.Sprintf("%.4g is out of range", c.v), c.allowed, "")
		}
	}
	if len(bad) == 0 {
		aft, fore := math.Inf(1), math.Inf(-1)
		for i := range in.Mounts {
			aft, fore = min(aft, float64(in.Mounts[i].Forward)), max(fore, float64(in.Mounts[i].Forward))
		}
		if fore-aft < shortest {
			bad.Add("/mounts", "all mounts stand at one place along the shaft", "50 mm or more between the foremost and the aftmost", "measure each mount's distance forward of the coupling face")
		}
	}
	return bad
}
