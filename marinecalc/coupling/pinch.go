// The clamp of pinch bolts, of the nut of a taper and of set screws.

package coupling

import (
	"math"

	"example.org/driveline/marinecalc/fastener"
	"example.org/driveline/marinecalc/hub"
	"example.org/driveline/marinecalc/quantity"
)

// ThinnestSlot, in m, is the narrowest slot of a split clamp that counts as open: the
// thinnest usual feeler blade (common practice, no source).
const ThinnestSlot = 50e-6

const (
	mostPitch    = 1.649519 // pitches that a diameter is more than, so that its pitch diameter is above the pitch
	coarse       = 0.15     // pitch of a coarse thread over its diameter, as M10 has (ISO 261)
	weakestYield = 240e6    // Pa, property class 4.6: ISO 898-1, the weakest that is usual
)

// slotClosed tells whether the lips of a split clamp touch, so that its bolts clamp
// the flange itself and not the shaft.
func (in *BoreInput) slotClosed() bool {
	return in.HoldMethod == SplitClamp && in.SplitGap < ThinnestSlot
}

// clamp finds the clamp of one pinch bolt, or of the nut of a taper, and the
// stress while it is tightened to that: combined tension and torsion by the distortion
// energy, the twist with the friction that thread and head have alike when
// NutFactor is what they come to. The stress area has the root of the inch
// standard, the smaller one.
func (out *BoreResult) clamp(in *BoreInput) {
	out.ClampUsed = in.PinchClamp
	if in.PinchClamp == 0 {
		out.ClampUsed = fastener.ShortClamp(in.PinchTorque, in.NutFactor, in.PinchDiameter)
	}
	d, pitch := quantity.Length(quantity.OrNaN(float64(in.PinchDiameter))), in.PinchPitch
	if pitch == 0 {
		pitch = coarse * d
	}
	area := fastener.StressArea(d, pitch, fastener.Inch)
	friction := max(0, fastener.AlikeFriction(quantity.Ratio(quantity.OrNaN(float64(in.NutFactor))), d, pitch, fastener.HexagonCollar*d))
	one := fastener.Combined(fastener.ElasticTwist(friction, d, pitch, area)) / float64(area) // stress of each newton
	if !(d > mostPitch*pitch) {                                                               // NaN too
		one = math.NaN()
	}
	out.PinchStress = quantity.Stress(one * float64(out.ClampUsed))
	yield := in.pinchYield()
	if in.HoldMethod == TaperNut {
		out.NutHold = quantity.Force(float64(area) * quantity.OrNaN(yield))
	}
	out.PinchUse = quantity.Ratio(float64(out.PinchStress) / quantity.OrNaN(yield))
	if out.PinchUse > 1 { // it stretches, and clamps no more than at yield
		out.ClampUsed = quantity.Force(yield / one)
		if breaks := in.pinchTensile(); breaks > 0 && float64(out.PinchStress) > max(yield, breaks) {
			out.ClampUsed = quantity.Force(math.NaN())
		}
	}
}

// face finds the pressure under the nut of a taper, over the ring between its face and
// the small end of the cone.
func (out *BoreResult) face(in *BoreInput) {
	nan := math.NaN()
	out.FaceUsed, out.FaceStress, out.FaceUse = quantity.Length(nan), quantity.Stress(nan), quantity.Ratio(nan)
	if in.HoldMethod != TaperNut {
		return
	}
	out.FaceUsed = in.NutFaceDiameter
	if in.NutFaceDiameter == 0 {
		out.FaceUsed = quantity.Length(quantity.OrNaN(float64(in.NutFaceShare)) * quantity.OrNaN(float64(in.PinchDiameter)))
	}
	out.FaceStress = fastener.FacePressure(out.ClampUsed, out.FaceUsed, hub.SmallEnd(in.ShaftDiameter, in.TaperRatio, in.EngagedLength))
	out.FaceUse = quantity.Ratio(float64(out.FaceStress) / quantity.OrNaN(float64(in.PermittedBearingStress)))
}

// pinchTensile is the tensile strength of what pinchYield is of; 0 for not known.
func (in *BoreInput) pinchTensile() float64 {
	if in.HoldMethod == TaperNut && in.PinchYieldStrength == 0 && in.PinchTensileStrength == 0 {
		return float64(in.ShaftTensileStrength)
	}
	return float64(in.PinchTensileStrength)
}

// pinchYield is the yield strength of the pinch bolts, or of the shaft that has
// the thread of a taper's nut; 0 for not known.
func (in *BoreInput) pinchYield() float64 {
	if in.HoldMethod == TaperNut && in.PinchYieldStrength == 0 {
		return float64(in.ShaftYieldStrength)
	}
	return float64(in.PinchYieldStrength)
}

// withhold takes back what rests on a clamp that is lost, that a bolt past its yield
// may have lost where nobody told at what it breaks, or that one of the weakest usual
// grade would not give where nobody told the grade. A key that is
// known holds ahead without it; what is not held even by the whole clamp stands.
func (out *BoreResult) withhold(in *BoreInput) {
	if in.HoldMethod != SplitClamp && in.HoldMethod != TaperNut || in.slotClosed() { // and no bolt opens a slot
		return
	}
	lost := math.IsNaN(float64(out.Pressed))
	unsure := in.pinchYield() == 0 && out.PinchStress > weakestYield
	yields := out.PinchUse > 1 && in.pinchTensile() == 0 && in.like == nil
	if !lost && !unsure && !yields {
		return
	}
	nan := math.NaN()
	switch {
	case lost:
		out.HeldBy = ClampLost
	case yields:
		out.HeldBy = ClampYields
	default:
		out.HeldBy = ClampUnsure
	}
	out.FrictionTorque, out.SlipTorque, out.SlipAstern = quantity.Torque(nan), quantity.Torque(nan), quantity.Torque(nan)
	out.PullOff, out.PullOffFoul, out.BareOff = quantity.Force(nan), quantity.Force(nan), quantity.Force(nan)
	if lost {
		out.NutHold = quantity.Force(nan)
	}
	for _, m := range [...]*quantity.Ratio{&out.MarginAhead, &out.MarginAstern, &out.MarginPeak, &out.PullMargin, &out.FoulMargin, &out.BareMargin, &out.ConeMargin} {
		if lost || *m >= 1 {
			*m = quantity.Ratio(nan)
		}
	}
	if out.KeyTorque >= in.ShaftTorque {
		out.SlipTorque, out.MarginAhead = out.KeyTorque, over(out.KeyTorque, in.ShaftTorque)
	}
}

// screws is what all set screws hold along the shaft: none, or loose, nothing; NaN
// where nobody counted them.
func (in *BoreInput) screws() quantity.Force {
	if in.SetScrews == 0 || in.SeatingTorque == 0 {
		return 0
	}
	held := in.ScrewHolding * quantity.Force(1+float64(in.SetScrews-1)*float64(in.FurtherScrew))
	if in.SeatingTorque < in.TableSeating {
		held *= quantity.Force(in.SeatingTorque / in.TableSeating)
	}
	return held
}
