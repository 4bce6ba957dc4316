// The clamp of a bolt that is there already: by its stretch, by the turn of its
// nut, after settling, and whether the bolt may be used again.

package fastener

import (
	"math"

	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/quantity"
)

// Retorque says whether the bolts were tightened again after the first hours.
type Retorque string

// Its words; "" is not told, which counts as not yet.
const (
	NotYet     Retorque = "not-yet"
	Retorqued  Retorque = "done"
	mostFaces           = 20
	fullCircle          = 2 * math.Pi
)

// readings finds the clamp by what was read, what settling takes, and how much
// the bolt has grown.
//
// By stretch: the spring of the bolt as it is measured end to end, its head and
// its thread in the nut by half a diameter each (Bickford and VDI 2230, from
// memory). By turn: the pitch over bolt and clamped parts in series. Settling
// takes off the clamp what the springs lose by it (VDI 2230, F_Z = f_Z/(δ_S +
// δ_P)). A bolt that is longer than new has yielded: ISO 898-1:2013, 9.6.6, lets a
// bolt differ by 12.5 µm after its proof load, for the uncertainty of measuring.
func (out *PreloadResult) readings(in *PreloadInput) {
	give := 1/float64(out.BoltSpring) + 1/float64(out.MemberSpring)
	out.ClampFromStretch = quantity.Force(float64(in.StretchScatter) * quantity.OrNaN(float64(in.StretchMeasured)) * out.lengthSpring(in))
	turn := quantity.OrNaN(float64(in.TurnMeasured))
	out.ClampFromTurn = quantity.Force(float64(in.TurnScatter) * turn * float64(in.Pitch) / fullCircle / give)
	measured := out.ClampFromStretch
	if math.IsNaN(float64(measured)) {
		measured = out.ClampFromTurn
	}
	out.measured(in, measured)
	tightened := out.JointClamp
	switch {
	case out.MeasuredBreakingUse > 1: // what is broken holds nothing
		tightened = quantity.Force(math.NaN())
	case !math.IsNaN(float64(measured)):
		tightened = measured
	}
	out.TightenedClamp = tightened
	out.Settling = quantity.Length(math.NaN())
	if in.ClampedFaces > 0 {
		out.Settling = in.SettlingEnds + quantity.Length(in.ClampedFaces)*in.SettlingFaces
	}
	out.SettlingLoss = quantity.Force(float64(out.Settling) / give)
	out.SettledClamp = max(0, tightened-out.SettlingLoss)
	out.SettledShare = quantity.Ratio(out.SettledClamp / out.Preload)
	out.RetorqueTurn = quantity.Angle(fullCircle * float64(out.Settling) / float64(in.Pitch))
	out.JointClamp = tightened
	if in.Retorque != Retorqued && math.IsNaN(float64(out.ClampFromStretch)) && !math.IsNaN(float64(out.SettledClamp)) {
		out.JointClamp = out.SettledClamp
	}
	out.Grown = quantity.Length(quantity.OrNaN(float64(in.FreeLength)) - quantity.OrNaN(float64(in.FreeLengthNew)))
}

// measured holds the clamp by stretch or turn against what the bolt bears in a
// straight pull and against the target.
func (out *PreloadResult) measured(in *PreloadInput, clamp quantity.Force) {
	area := quantity.Force(out.StressArea)
	out.MeasuredProofUse = quantity.Ratio(clamp / (quantity.Force(out.ProofStress) * area))
	out.MeasuredYieldUse = quantity.Ratio(clamp / (quantity.Force(quantity.OrNaN(float64(in.YieldStrength))) * area))
	out.MeasuredBreakingUse = quantity.Ratio(clamp / out.BreakingLoad)
	out.MeasuredShare = quantity.Ratio(clamp / out.Preload)
	if out.MeasuredBreakingUse > 1 {
		out.MeasuredShare = quantity.Ratio(math.NaN())
	}
}

// lengthSpring is the stiffness of the bolt as far as it is measured end to end.
func (out *PreloadResult) lengthSpring(in *PreloadInput) float64 {
	if in.BoltStiffness > 0 {
		return float64(in.BoltStiffness)
	}
	d, root := float64(in.NominalDiameter), float64(out.MinorDiameter)
	grip, shank := quantity.OrNaN(float64(in.GripLength)), float64(in.ShankLength)
	full, core := math.Pi/4*d*d, math.Pi/4*root*root
	return float64(in.BoltModulus) / ((shank+headLength*d)/full + (grip-shank)/float64(out.StressArea) + engagedLength*d/core)
}

func validateReadings(faults *problem.List, in *PreloadInput) {
	faults.NotNegative("/stretchMeasured", "stretch", float64(in.StretchMeasured))
	if s := float64(in.StretchMeasured); s > 0 {
		faults.Above("/stretchScatter", "scatter of the stretch", float64(in.StretchScatter))
		if grip := float64(in.GripLength); grip > 0 && s > 0.05*grip+0.05*float64(in.NominalDiameter) {
			faults.Add("/stretchMeasured", "the bolt would be a twentieth longer: it is broken or was never this one", "a few hundredths of a millimetre", "length under clamp less free length")
		}
	}
	faults.NotNegative("/turnMeasured", "turn of the nut", float64(in.TurnMeasured))
	if in.TurnMeasured > 0 {
		faults.Above("/turnScatter", "scatter of the turn", float64(in.TurnScatter))
	}
	if in.TurnMeasured > fullCircle {
		faults.Add("/turnMeasured", "the nut was turned by more than a turn from snug", "up to 360°", "snug is where the faces first lie shut")
	}
	if in.ClampedFaces < 0 || in.ClampedFaces > mostFaces {
		faults.Add("/clampedFaces", "the number of faces cannot be", "0 to 20", "two flanges on each other have one pair")
	}
	if in.ClampedFaces > 0 {
		faults.NotNegative("/settlingEnds", "settling of thread, head and nut", float64(in.SettlingEnds))
		faults.NotNegative("/settlingFaces", "settling of a pair of faces", float64(in.SettlingFaces))
	}
	if in.Retorque != "" && in.Retorque != NotYet && in.Retorque != Retorqued {
		faults.Add("/retorque", "whether it was tightened again is unknown", "not-yet, done", "")
	}
	faults.NotNegative("/freeLength", "free length", float64(in.FreeLength))
	faults.NotNegative("/freeLengthNew", "free length when new", float64(in.FreeLengthNew))
	now, fresh := float64(in.FreeLength), float64(in.FreeLengthNew)
	if now > 0 && fresh > 0 && math.Abs(now-fresh) > 0.05*fresh {
		faults.Add("/freeLength", "the two free lengths are not of one bolt", "within a twentieth of its length when new", "a bolt breaks before it grows by that much")
	}
}
