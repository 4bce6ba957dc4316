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
// peaks of the surfaces (DIN 7190); a clearance presses nothing. Of a taper it is
// the push of its nut over sin α + μ·cos α; for the torque the nut then counts for
// nothing, which is the safe side. Torque and pull act together: friction acts
// against the resultant.
//
// A taper leaves its flange when cone and nut have let go: the nut at what brings
// its thread to yield in tension. With the nut lost the cone is alone.
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
// shaft and count for no torque. Friction and screws are not added. Of a flange that
// turns on its shaft it is not known what keeps it on, however it is held.
//
// A pinch bolt, or the thread of a taper's nut, clamps no more than what brings
// it to yield by combined tension and torsion (distortion energy). What breaks it, a
// strength that nobody told where the weakest usual grade would yield, leave what
// rests on the clamp not known. With the slot closed the bolts press lip on lip, and
// nothing is counted on the shaft.
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
	out.turned(&in)
	out.withhold(&in)
	out.fitting(&in)
	return out, nil
}

// BoreTrial is Bore with figures of a trial about the estimates that came to like:
// it gives the margins that these tell, on either side of 1.
func BoreTrial(in BoreInput, like *BoreResult) (BoreResult, error) {
	in.like = like
	out, err := Bore(in)
	if err == nil {
		hub.Told(&like.MarginAhead, &out.MarginAhead)
		hub.Told(&like.MarginAstern, &out.MarginAstern)
		hub.Told(&like.MarginPeak, &out.MarginPeak)
		hub.Told(&like.PullMargin, &out.PullMargin)
		hub.Told(&like.FoulMargin, &out.FoulMargin)
		hub.Told(&like.BareMargin, &out.BareMargin)
	}
	return out, err
}

// press finds what presses shaft and bore together.
func (out *BoreResult) press(in *BoreInput) hub.Cone {
	nan := math.NaN()
	out.MeanDiameter, out.ClampUsed = in.ShaftDiameter, quantity.Force(nan)
	out.BorePressure, out.Grip = quantity.Stress(nan), quantity.Length(nan)
	out.PinchStress, out.PinchUse, out.NutHold = quantity.Stress(nan), quantity.Ratio(nan), quantity.Force(nan)
	c := hub.Cone{Friction: in.BoreFriction}
	switch in.HoldMethod {
	case SplitClamp:
		out.clamp(in)
		out.Pressed = out.ClampUsed * quantity.Force(in.ClampFactor) * quantity.Force(in.PinchBolts)
		if in.slotClosed() { // the bolts clamp the flange itself
			out.Pressed = 0
		}
	case TaperNut:
		out.clamp(in)
		c.Taper = in.TaperRatio
		out.MeanDiameter = (in.ShaftDiameter + hub.SmallEnd(in.ShaftDiameter, in.TaperRatio, in.EngagedLength)) / 2
		out.Pressed = c.Pressed(out.ClampUsed)
		out.BorePressure = quantity.Stress(float64(out.Pressed) / (math.Pi * float64(out.MeanDiameter) * float64(in.EngagedLength)))
	case Interference:
		f := hub.Fit{Diameter: in.ShaftDiameter, Outside: in.HubDiameter, Bore: in.Bore, HubModulus: in.HubModulus,
			ShaftModulus: in.ElasticModulus, HubPoisson: in.HubPoisson, ShaftPoisson: in.ShaftPoisson}
		out.Grip = max(0, in.Interference-in.SmoothingLoss) // of a clearance nothing
		out.BorePressure = quantity.Stress(float64(out.Grip) / f.Give())
		out.Pressed = quantity.Force(float64(out.BorePressure) * math.Pi * float64(in.ShaftDiameter) * float64(in.EngagedLength))
	}
	out.face(in)
	c.Mean = out.MeanDiameter
	out.HubStress = quantity.Stress(float64(out.BorePressure) * hub.Equivalent(out.MeanDiameter, in.HubDiameter)) // NaN of a boss nobody measured
	out.HubUse = quantity.Ratio(float64(out.HubStress) / quantity.OrNaN(float64(in.HubYieldStrength)))
	if in.loose() {
		out.HubStress, out.HubUse = quantity.Stress(nan), quantity.Ratio(nan)
	}
	return c
}

// key finds the torque at which key or keyway yield.
func (out *BoreResult) key(in *BoreInput) {
	out.KeyTorque, out.KeyTorqueMost = quantity.Torque(math.NaN()), quantity.Torque(math.NaN())
	if in.Keyed == hub.NoKey {
		out.KeyTorque = 0
		return
	}
	if in.KeyWidth == 0 || in.KeyYieldStrength == 0 {
		return
	}
	k, err := shaft.KeyStrength(in.keyed())
	if err == nil {
		out.KeyTorque, out.KeyTorqueMost = k.TorqueHeld, k.KnownTorque
	}
}

// keyed is the key in this bore, by itself; on a taper it bears at the mean diameter.
func (in *BoreInput) keyed() shaft.KeyStrengthInput {
	k := shaft.KeyStrengthInput{ShaftDiameter: in.ShaftDiameter, ShaftTorque: in.ShaftTorque, KeyWidth: in.KeyWidth, KeyHeight: in.KeyHeight, HeightShare: in.HeightShare, KeySeat: in.KeySeat, SeatShare: in.SeatShare,
		KeyLength: in.KeyLength, TaperLength: in.EngagedLength, KeyYieldStrength: in.KeyYieldStrength, ShaftYieldStrength: in.ShaftYieldStrength, HubYieldStrength: in.HubYieldStrength}
	if in.HoldMethod == TaperNut {
		k.TaperRatio = in.TaperRatio
	}
	return k
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
	out.FrictionTorque, out.ConeMargin = quantity.Torque(slip(0)), quantity.Ratio(nan)
	if in.HoldMethod == TaperNut {
		out.ConeMargin = quantity.Ratio(slip(0) / quantity.OrNaN(float64(in.ShaftTorque)))
	}
	held := better(slip(0), key)
	out.SlipTorque = quantity.Torque(held)
	switch {
	case in.slotClosed() && key > 0:
		out.HeldBy = KeyInClosed
	case in.slotClosed():
		out.HeldBy = SlotClosed
	case math.IsNaN(held):
		out.HeldBy = HeldByNothing
	case in.HoldMethod == SetScrews && in.Keyed == hub.NoKey:
		out.HeldBy = ScrewsAlone
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
	margin := func(asked quantity.Torque) quantity.Ratio {
		return hub.Margin(astern, out.KeyTorque, asked, told || in.like != nil)
	}
	out.MarginAstern, out.MarginPeak = margin(in.AsternTorque), margin(in.PeakTorque)
	if math.IsNaN(key) { // and it may hold what friction does not
		out.SlipTorque, out.SlipAstern = quantity.Torque(nan), quantity.Torque(nan)
		most := func(pull float64, asked quantity.Torque) quantity.Ratio {
			if math.IsNaN(float64(out.KeyTorqueMost)) {
				return quantity.Ratio(nan)
			}
			return over(quantity.Torque(better(slip(pull), float64(out.KeyTorqueMost))), asked)
		}
		var ahead, back, peak *quantity.Ratio
		if l := in.like; l != nil {
			ahead, back, peak = &l.MarginAhead, &l.MarginAstern, &l.MarginPeak
		}
		out.MarginAhead = hub.Bounded(out.MarginAhead, most(0, in.ShaftTorque), ahead)
		out.MarginAstern = hub.Bounded(out.MarginAstern, most(pull, in.AsternTorque), back)
		out.MarginPeak = hub.Bounded(out.MarginPeak, most(pull, in.PeakTorque), peak)
	}
}

// pulls finds what takes the flange off, and the margins. A torque that nobody
// told takes nothing off the friction: turned takes back what that leaves at 1 or
// more. One below 1 is not known while what the nut of a taper holds is not.
func (out *BoreResult) pulls(in *BoreInput, c hub.Cone) {
	nan, taper := math.NaN(), in.HoldMethod == TaperNut
	out.ScrewHold = in.screws()
	out.BareOff, out.BareMargin = quantity.Force(nan), quantity.Ratio(nan)
	bare := func(torque quantity.Torque) quantity.Force {
		if in.HoldMethod == SetScrews {
			return out.ScrewHold
		}
		if float64(out.KeyTorque) >= float64(torque) {
			torque = 0
		}
		held := float64(c.PullTwisted(out.Pressed, torque))
		if taper {
			return quantity.Force(held)
		}
		return quantity.Force(better(held, float64(out.ScrewHold)))
	}
	off := func(torque quantity.Torque) quantity.Force {
		if taper {
			return max(bare(torque), out.NutHold)
		}
		return bare(torque)
	}
	keyed := func(margin quantity.Ratio, pull float64) quantity.Ratio { // a key would leave all friction for the pull
		if holds := float64(bare(0)); math.IsNaN(float64(out.KeyTorque)) && margin < 1 && (holds >= pull || holds > 0 && math.IsNaN(pull)) && in.like == nil {
			return quantity.Ratio(nan)
		}
		return margin
	}
	nut := func(margin quantity.Ratio, pull float64) quantity.Ratio {
		if !taper || math.IsNaN(float64(out.NutHold)) && (margin >= 1 || in.like != nil) {
			return margin
		}
		if math.IsNaN(float64(out.NutHold)) {
			return quantity.Ratio(nan)
		}
		if math.IsNaN(pull) { // and the nut holds something
			return quantity.Ratio(nan)
		}
		return quantity.Ratio(better(float64(margin), float64(out.NutHold)/pull))
	}
	pull, foul := quantity.OrNaN(float64(out.PullAstern)), quantity.OrNaN(float64(in.FoulPull)) // no pull takes nothing off
	hardest := max(in.AsternTorque, in.PeakTorque)
	out.PullOff, out.PullOffFoul = off(in.AsternTorque), off(hardest)
	margin := keyed(against(bare(in.AsternTorque), pull), pull)
	out.PullMargin = nut(margin, pull)
	out.FoulMargin = nut(keyed(against(bare(hardest), foul), foul), foul)
	if taper {
		out.BareOff, out.BareMargin = bare(in.AsternTorque), margin
	}
	out.ScrewMargin = against(out.ScrewHold, pull)
	switch nutUnknown := taper && math.IsNaN(float64(out.NutHold)); {
	case !(pull > float64(bare(0))) || float64(out.NutHold) >= pull:
	case nutUnknown && !(out.KeyTorque == 0) && in.like == nil: // the nut may hold it on its key
		out.SlipAstern, out.MarginAstern, out.MarginPeak = quantity.Torque(nan), quantity.Ratio(nan), quantity.Ratio(nan)
	default: // the shaft is out of its flange, and its key with it
		out.SlipAstern, out.MarginAstern, out.MarginPeak = 0, 0, 0
	}
}

// against is a hold over a pull. What holds nothing stands against no pull, though
// nobody told how hard that is.
func against(hold quantity.Force, pull float64) quantity.Ratio {
	if hold == 0 {
		return 0
	}
	return quantity.Ratio(float64(hold) / pull)
}

// turned takes back that the flange stays on where it turns on its shaft, or may, ahead,
// astern or in a shock: one that turns ploughs its screws out and loosens what holds it.
// A trial in which it turns is one in which nothing holds it on.
func (out *BoreResult) turned(in *BoreInput) {
	gone := quantity.Ratio(math.NaN())
	if in.like != nil {
		gone = 0
	}
	if !(out.MarginAhead >= 1 && out.MarginAstern >= 1) {
		for _, m := range [...]*quantity.Ratio{&out.PullMargin, &out.BareMargin, &out.FoulMargin} {
			if *m >= 1 {
				*m = gone
			}
		}
	}
	if !(out.MarginPeak >= 1) && out.FoulMargin >= 1 {
		out.FoulMargin = gone
	}
}

// loose tells whether the shaft is no thicker than its bore, so that nothing is
// pressed, warmed or pulled.
func (in *BoreInput) loose() bool {
	return in.HoldMethod == Interference && in.Interference <= 0 && in.like == nil
}

// fitting finds how an interference fit goes on and comes off.
func (out *BoreResult) fitting(in *BoreInput) {
	nan := math.NaN()
	out.PressForce, out.HeatOn, out.HeatOff = quantity.Force(nan), quantity.Temperature(nan), quantity.TemperatureDifference(nan)
	if in.HoldMethod != Interference || in.loose() {
		return
	}
	out.PressForce = out.Pressed * quantity.Force(in.BoreFriction)
	grown := quantity.OrNaN(float64(in.HubExpansion)) * float64(in.ShaftDiameter) // for each kelvin
	clearance := float64(in.FittingClearance)
	if clearance == 0 {
		clearance = clearanceShare * float64(in.ShaftDiameter)
	}
	out.HeatOn = quantity.Temperature(quantity.OrNaN(float64(in.RoomTemperature)) + max(0, float64(in.Interference)+clearance)/grown)
	out.HeatOff = quantity.TemperatureDifference(float64(out.Grip) / grown)
}
