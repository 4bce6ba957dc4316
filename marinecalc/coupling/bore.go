// What holds a coupling flange on its shaft: Bore.

package coupling

import (
	"math"

	"example.org/driveline/marinecalc/hub"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/shaft"
	"example.org/driveline/marinecalc/torque"
)

const clearanceShare = 0.001 // of the diameter, to slip a warm hub on: DIN 7190, from memory

// Bore finds whether a coupling flange stays on its shaft: the torque it holds
// ahead, astern and in a shock, the pull that takes it off, the stress in its
// hub, and how it goes on and comes off.
//
// Friction: what presses shaft and bore together, added up all round, times
// its friction, at the mean radius (Coulomb). Of a split clamp that is the
// clamp of all pinch bolts times ClampFactor, which is 2 where the halves of a
// bore touch along two lines and π where they press evenly (balance of forces
// over half the bore). Of an interference fit it is the pressure by Lamé's
// equations over the whole bore (package hub), less SmoothingLoss for the
// peaks of the surfaces (DIN 7190). Of a taper it is the push of its nut over
// sin α + μ·cos α; once it is drawn up the nut counts for nothing, which is
// the safe side. Torque and pull act together: friction acts against the
// resultant.
//
// Key: the torque at which key or keyway yield, as shaft.KeyStrength finds it.
// Friction and key are not added, since the key bears only when friction has
// gone; the greater of them holds. Where the key bears the torque astern, all
// friction is left for the pull. Where the pull astern alone draws the shaft out
// nothing is left to hold the torque, key or not. Where nobody told whether there
// is a key, or what it carries, friction that holds is known to hold, and what
// friction does not hold is not known.
//
// Set screws: ScrewHolding of the first, FurtherScrew of it for each more, and of
// that the share that their SeatingTorque is of the table's. They hold along the
// shaft and count for no torque. Friction and screws are not added either.
//
// A pinch bolt, or the thread of a taper's nut, clamps no more than what brings
// it to yield by combined tension and torsion (distortion energy). What breaks it, a
// strength that nobody told where the weakest usual grade would yield, and a slot
// that is closed leave what rests on the clamp not known.
//
// The error is a *problem.Error of everything that cannot be. Bore does not
// allocate unless it refuses.
func Bore(in BoreInput) (out BoreResult, err error) {
	if err = in.validate(); err != nil {
		return BoreResult{}, err
	}
	c := out.press(&in)
	out.key(&in)
	out.torques(&in, c)
	out.pulls(&in, c)
	out.withhold(&in)
	out.fitting(&in)
	return out, nil
}

// press finds what presses shaft and bore together.
func (out *BoreResult) press(in *BoreInput) hub.Cone {
	nan := math.NaN()
	out.MeanDiameter, out.ClampUsed = in.ShaftDiameter, quantity.Force(nan)
	out.BorePressure, out.Grip = quantity.Stress(nan), quantity.Length(nan)
	out.PinchStress, out.PinchUse = quantity.Stress(nan), quantity.Ratio(nan)
	c := hub.Cone{Friction: in.BoreFriction}
	switch in.HoldMethod {
	case SplitClamp:
		out.clamp(in)
		out.Pressed = out.ClampUsed * quantity.Force(in.ClampFactor) * quantity.Force(in.PinchBolts)
		if in.SplitGap < closedSlot { // the bolts clamp the flange itself
			out.Pressed = quantity.Force(nan)
		}
	case TaperNut:
		out.clamp(in)
		c.Taper = in.TaperRatio
		out.MeanDiameter -= in.EngagedLength * quantity.Length(in.TaperRatio) / 2
		out.Pressed = c.Pressed(out.ClampUsed)
		out.BorePressure = quantity.Stress(float64(out.Pressed) / (math.Pi * float64(out.MeanDiameter) * float64(in.EngagedLength)))
	case Interference:
		f := hub.Fit{Diameter: in.ShaftDiameter, Outside: in.HubDiameter, Bore: in.Bore, HubModulus: in.HubModulus,
			ShaftModulus: in.ElasticModulus, HubPoisson: in.HubPoisson, ShaftPoisson: in.ShaftPoisson}
		out.Grip = max(0, in.Interference-in.SmoothingLoss)
		out.BorePressure = quantity.Stress(float64(out.Grip) / f.Give())
		out.Pressed = quantity.Force(float64(out.BorePressure) * math.Pi * float64(in.ShaftDiameter) * float64(in.EngagedLength))
	}
	c.Mean = out.MeanDiameter
	out.HubStress = quantity.Stress(float64(out.BorePressure) * hub.Equivalent(out.MeanDiameter, in.HubDiameter))
	if in.HubDiameter == 0 {
		out.HubStress = quantity.Stress(nan)
	}
	out.HubUse = quantity.Ratio(float64(out.HubStress) / quantity.OrNaN(float64(in.HubYieldStrength)))
	return c
}

// key finds the torque at which key or keyway yield.
func (out *BoreResult) key(in *BoreInput) {
	out.KeyTorque = quantity.Torque(math.NaN())
	if in.Keyed == hub.NoKey {
		out.KeyTorque = 0
		return
	}
	if in.KeyWidth == 0 || in.KeyYieldStrength == 0 {
		return
	}
	k, err := shaft.KeyStrength(in.keyed())
	if err == nil {
		out.KeyTorque = k.TorqueHeld
	}
}

// keyed is the key in this bore, by itself.
func (in *BoreInput) keyed() shaft.KeyStrengthInput {
	return shaft.KeyStrengthInput{ShaftDiameter: in.ShaftDiameter, ShaftTorque: in.ShaftTorque, KeyWidth: in.KeyWidth, KeyHeight: in.KeyHeight,
		KeyLength: in.KeyLength, KeyYieldStrength: in.KeyYieldStrength, ShaftYieldStrength: in.ShaftYieldStrength, HubYieldStrength: in.HubYieldStrength}
}

// better is the greater of two figures of which each may not be known.
func better(a, b float64) float64 {
	if math.IsNaN(a) || b > a {
		return b
	}
	return a
}

// torques finds what torque is held, and the margins. A margin of 1 or more
// that rests on a pull nobody told is not known.
func (out *BoreResult) torques(in *BoreInput, c hub.Cone) {
	key, nan := float64(out.KeyTorque), math.NaN()
	slip := func(pull float64) float64 {
		if in.HoldMethod == SetScrews {
			return nan
		}
		return float64(c.Slip(out.Pressed, quantity.Force(pull)))
	}
	out.PullAstern = torque.PullAstern(in.ThrustAstern, in.Thrust, in.AsternThrust)
	out.FrictionTorque = quantity.Torque(slip(0))
	held := better(slip(0), key)
	out.SlipTorque = quantity.Torque(held)
	switch {
	case math.IsNaN(held):
		out.HeldBy = HeldByNothing
	case held == 0 && in.Keyed == hub.NoKey:
		out.HeldBy = HeldByNone
	case math.IsNaN(key):
		out.HeldBy = KeyUnknown
	case held == key:
		out.HeldBy = HeldByKey
	default:
		out.HeldBy = HeldByFriction
	}
	out.MarginAhead = over(out.SlipTorque, in.ShaftTorque)
	pull, told := float64(out.PullAstern), !math.IsNaN(float64(out.PullAstern))
	if !told {
		pull = 0
	}
	astern := quantity.Torque(better(slip(pull), key))
	out.SlipAstern = quantity.Torque(nan)
	if told {
		out.SlipAstern = astern
	}
	margin := func(asked quantity.Torque) quantity.Ratio { return hub.Margin(astern, out.KeyTorque, asked, told) }
	out.MarginAstern, out.MarginPeak = margin(in.AsternTorque), margin(in.PeakTorque)
	if math.IsNaN(key) { // and it may hold what friction does not
		out.SlipTorque, out.SlipAstern = quantity.Torque(nan), quantity.Torque(nan)
		out.MarginAhead, out.MarginAstern, out.MarginPeak = hub.Unsure(out.MarginAhead), hub.Unsure(out.MarginAstern), hub.Unsure(out.MarginPeak)
	}
}

// pulls finds what takes the flange off, and the margins. A torque that nobody
// told takes nothing off the friction, and then a margin of 1 or more is not
// known.
func (out *BoreResult) pulls(in *BoreInput, c hub.Cone) {
	out.ScrewHold = in.screws()
	off := func(torque quantity.Torque) quantity.Force {
		if in.HoldMethod == SetScrews {
			return out.ScrewHold
		}
		if float64(out.KeyTorque) >= float64(torque) {
			torque = 0
		}
		return quantity.Force(better(float64(c.PullTwisted(out.Pressed, torque)), float64(out.ScrewHold)))
	}
	sure := func(margin quantity.Ratio, torques ...quantity.Torque) quantity.Ratio {
		for _, t := range torques {
			if t == 0 && margin >= 1 && in.HoldMethod != SetScrews {
				return quantity.Ratio(math.NaN())
			}
		}
		return margin
	}
	keyed := func(margin quantity.Ratio, pull float64) quantity.Ratio { // a key would leave all friction for the pull
		if math.IsNaN(float64(out.KeyTorque)) && margin < 1 && float64(off(0)) >= pull {
			return quantity.Ratio(math.NaN())
		}
		return margin
	}
	pull := quantity.OrNaN(float64(out.PullAstern)) // no pull takes nothing off
	out.PullOff = off(in.AsternTorque)
	out.PullOffFoul = off(max(in.AsternTorque, in.PeakTorque))
	out.PullMargin = keyed(sure(quantity.Ratio(float64(out.PullOff)/pull), in.AsternTorque), pull)
	out.FoulMargin = keyed(sure(quantity.Ratio(float64(out.PullOffFoul)/quantity.OrNaN(float64(in.FoulPull))), in.AsternTorque, in.PeakTorque), float64(in.FoulPull))
	out.ScrewMargin = quantity.Ratio(float64(out.ScrewHold) / pull)
	if pull > float64(off(0)) { // the shaft is out of its flange, and its key with it
		out.SlipAstern, out.MarginAstern, out.MarginPeak = 0, 0, 0
	}
}

// fitting finds how an interference fit goes on and comes off.
func (out *BoreResult) fitting(in *BoreInput) {
	nan := math.NaN()
	out.PressForce, out.HeatOn, out.HeatOff = quantity.Force(nan), quantity.Temperature(nan), quantity.TemperatureDifference(nan)
	if in.HoldMethod != Interference {
		return
	}
	out.PressForce = out.Pressed * quantity.Force(in.BoreFriction)
	grown := quantity.OrNaN(float64(in.HubExpansion)) * float64(in.ShaftDiameter) // for each kelvin
	clearance := float64(in.FittingClearance)
	if clearance == 0 {
		clearance = clearanceShare * float64(in.ShaftDiameter)
	}
	out.HeatOn = quantity.Temperature(quantity.OrNaN(float64(in.RoomTemperature)) + (float64(in.Interference)+clearance)/grown)
	out.HeatOff = quantity.TemperatureDifference(float64(out.Grip) / grown)
}
