// Whether a propeller holds on its taper: Taper.

package propeller

import (
	"math"

	"example.org/driveline/marinecalc/fastener"
	"example.org/driveline/marinecalc/hub"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/torque"
)

// Taper finds what holds a propeller on the taper of its shaft.
//
// The push of the nut, T/(K·d), or the push-up along the shaft presses hub and
// cone together. Pushed up by a length a the hub is stretched by a times the
// taper on the diameter; Lamé's equations give the pressure where the cone
// touches (package hub, at the mean diameter), and the balance of forces along
// the shaft the push: N·(sin α + μ·cos α). Both ways give the same pressure
// for the same fit, so that each tells what the other would be.
//
// The cone slips where friction no longer stands against torque, the wedge of
// the cone and the propeller's pull together; the nut counts for nothing once
// the hub is home, and neither does the thrust ahead, which presses it on: the
// safe side; with the cone off, nut and thread keep the propeller on the shaft as
// far as the thread bears the pull in tension. The key is not added to the friction, since it bears only when
// that has gone; the greater of them holds. Where the pull alone takes the hub
// off its cone neither holds: the key does not keep it on the shaft. Where nobody
// told whether there is a key, or what it carries, what friction alone does not
// hold is not known, unless it is more than that key holds at most.
//
// The stress in the hub is of hoop tension and pressure together at the bore,
// by the distortion energy; the keyway in it raises it further and is not
// counted. The stress in the shaft's thread is of the push over its stress area
// and of the twist of the nut together, by the distortion energy, while the nut
// is drawn; a push that is given by itself, as of a hydraulic nut, twists nothing.
//
// Under the nut the push bears on the ring between its face and the hole in the hub's
// end, which is the cone's small end where nobody measured it.
//
// A nut is locked by a second one drawn against it as by a cotter, a tab or an
// insert; that nothing locks it is told only of one nut alone of which somebody
// said so (common practice, no source).
//
// The error is a *problem.Error of everything that cannot be. Taper does not
// allocate unless it refuses.
func Taper(in TaperInput) (out TaperResult, err error) {
	if err = in.validate(); err != nil {
		return TaperResult{}, err
	}
	c, f := out.shape(&in)
	out.push(&in, c, f)
	out.hold(&in, c)
	out.bounds(&in, c, f)
	out.face(&in)
	out.off(&in, c)
	out.NutLocks = in.locks()
	return out, nil
}

// TaperTrial is Taper with figures of a trial about the estimates that came to
// like: it gives the margins that these tell, on either side of 1.
func TaperTrial(in TaperInput, like *TaperResult) (TaperResult, error) {
	in.like = like
	out, err := Taper(in)
	if err == nil {
		hub.Told(&like.MarginAhead, &out.MarginAhead)
		hub.Told(&like.MarginAstern, &out.MarginAstern)
		hub.Told(&like.MarginPeak, &out.MarginPeak)
		hub.Told(&like.BareMargin, &out.BareMargin)
	}
	return out, err
}

// shape finds where hub and cone touch.
func (out *TaperResult) shape(in *TaperInput) (hub.Cone, hub.Fit) {
	out.ContactLength = in.contact()
	out.SmallEnd = hub.SmallEnd(in.ShaftDiameter, in.TaperRatio, out.ContactLength)
	out.MeanDiameter = (in.ShaftDiameter + out.SmallEnd) / 2
	out.TaperMeasured = quantity.Ratio(math.NaN())
	if in.SmallEndDiameter > 0 && in.TaperLength > 0 {
		out.TaperMeasured = quantity.Ratio((in.ShaftDiameter - in.SmallEndDiameter) / in.TaperLength)
	}
	out.KeyHoldOff = quantity.Length(quantity.OrNaN(float64(in.MarkWithKey)) - quantity.OrNaN(float64(in.MarkWithoutKey)))
	return hub.Cone{Taper: in.TaperRatio, Friction: in.BoreFriction, Mean: out.MeanDiameter},
		hub.Fit{Diameter: out.MeanDiameter, Outside: in.HubDiameter, Bore: in.Bore, HubModulus: in.HubModulus, ShaftModulus: in.ElasticModulus, HubPoisson: in.HubPoisson, ShaftPoisson: in.ShaftPoisson}
}

// contact is the length that touches: of cone and hub the shorter one known.
func (in *TaperInput) contact() quantity.Length {
	if in.TaperLength == 0 && in.LengthShare > 0 {
		return in.HubLength * quantity.Length(in.LengthShare)
	}
	if in.TaperLength == 0 || in.HubLength > 0 && in.HubLength < in.TaperLength {
		return in.HubLength
	}
	return in.TaperLength
}

// area is what of the cone touches.
func (out *TaperResult) area(in *TaperInput) float64 {
	return math.Pi * float64(out.MeanDiameter) * float64(out.ContactLength) * float64(in.ContactShare)
}

// push finds what presses hub and cone together.
func (out *TaperResult) push(in *TaperInput, c hub.Cone, f hub.Fit) {
	area := out.area(in)
	switch {
	case in.PushUp > 0:
		out.ConePressure = quantity.Stress(float64(in.PushUp) * float64(in.TaperRatio) / f.Give())
		out.Pressed = quantity.Force(float64(out.ConePressure) * area)
		out.PushForce = c.Push(out.Pressed)
	default:
		out.PushForce = in.NutForce
		if in.NutForce == 0 {
			out.PushForce = fastener.ShortClamp(in.NutTorque, in.NutFactor, in.NutDiameter)
		}
		out.Pressed = c.Pressed(out.PushForce)
		out.ConePressure = quantity.Stress(float64(out.Pressed) / area)
	}
	out.PushUpUsed = in.PushUp
	if in.PushUp == 0 {
		out.PushUpUsed = quantity.Length(float64(out.ConePressure) * f.Give() / float64(in.TaperRatio))
	}
	out.TorqueOfPush = in.torqueOf(out.PushForce)
	out.HubStress = quantity.Stress(float64(out.ConePressure) * hub.Equivalent(out.MeanDiameter, in.HubDiameter))
	out.HubUse = quantity.Ratio(float64(out.HubStress) / quantity.OrNaN(float64(in.HubYieldStrength)))
	out.StressArea = quantity.Area(math.NaN())
	if in.NutDiameter > 0 && in.NutPitch > 0 {
		out.StressArea = fastener.StressArea(in.NutDiameter, in.NutPitch, in.NutForm)
	}
	out.twist(in)
	combined := out.combined()
	if in.PushUp == 0 && in.NutForce > 0 {
		combined = 1
	}
	out.ThreadUse = quantity.Ratio(float64(out.PushForce) / float64(out.StressArea) / quantity.OrNaN(float64(in.ShaftYieldStrength)) * combined)
}

// twist finds what of the nut's torque twists its thread, whose face is that of a
// hexagon.
func (out *TaperResult) twist(in *TaperInput) {
	friction := fastener.AlikeFriction(quantity.Ratio(quantity.OrNaN(float64(in.NutFactor))), in.NutDiameter, in.NutPitch, fastener.HexagonCollar*in.NutDiameter)
	if friction < 0 {
		friction = math.NaN()
	}
	out.ThreadFrictionUsed = quantity.Ratio(friction)
	out.TwistRatio = quantity.Ratio(fastener.ElasticTwist(friction, in.NutDiameter, in.NutPitch, out.StressArea))
	if math.IsNaN(float64(out.StressArea)) {
		out.ThreadFrictionUsed = quantity.Ratio(math.NaN())
	}
}

// combined is the equivalent stress in the nut's thread over that of its
// tension alone.
func (out *TaperResult) combined() float64 { return fastener.Combined(float64(out.TwistRatio)) }

// torqueOf is the nut's torque for a push, or NaN without its thread or factor.
func (in *TaperInput) torqueOf(push quantity.Force) quantity.Torque {
	return quantity.Torque(float64(push) * quantity.OrNaN(float64(in.NutFactor)) * quantity.OrNaN(float64(in.NutDiameter)))
}

// hold finds the torque that is held, and the margins. One of 1 or more that
// rests on a pull nobody told is not known.
func (out *TaperResult) hold(in *TaperInput, c hub.Cone) {
	nan := quantity.Ratio(math.NaN())
	over := func(held, torque quantity.Torque) quantity.Ratio {
		return quantity.Ratio(float64(held) / quantity.OrNaN(float64(torque)))
	}
	out.PullAstern = torque.PullAstern(in.ThrustAstern, in.Thrust, in.AsternThrust)
	out.NutHold = quantity.Force(float64(out.StressArea) * quantity.OrNaN(float64(in.ShaftYieldStrength)))
	out.NutMargin = quantity.Ratio(float64(out.NutHold) / quantity.OrNaN(float64(out.PullAstern)))
	out.FrictionTorque = c.Slip(out.Pressed, 0)
	out.SlipTorque, out.HeldBy = out.FrictionTorque, HeldByFriction
	if in.KeyTorque > out.SlipTorque {
		out.SlipTorque, out.HeldBy = in.KeyTorque, HeldByKey
	}
	out.MarginAhead, out.FrictionMargin = over(out.SlipTorque, in.ShaftTorque), over(out.FrictionTorque, in.ShaftTorque)
	pull, told := out.PullAstern, !math.IsNaN(float64(out.PullAstern))
	if !told {
		pull = 0
	}
	astern := max(c.Slip(out.Pressed, pull), in.KeyTorque)
	if pull > max(0, c.Pull(out.Pressed)) { // the hub is off, and its keyway with it
		astern = 0
	}
	margin := func(asked quantity.Torque) quantity.Ratio {
		return hub.Margin(astern, in.KeyTorque, asked, told || in.like != nil)
	}
	out.MarginAstern, out.MarginPeak = margin(in.AsternTorque), margin(in.PeakTorque)
	out.SlipAstern = quantity.Torque(math.NaN())
	if told {
		out.SlipAstern = astern
	}
	out.HardestTorque = max(in.ShaftTorque, in.AsternTorque, in.PeakTorque)
	twist := in.AsternTorque
	if in.KeyTorque >= twist {
		twist = 0
	}
	out.BareMargin = quantity.Ratio(float64(c.PullTwisted(out.Pressed, twist)) / quantity.OrNaN(float64(out.PullAstern)))
	if in.AsternTorque == 0 && out.BareMargin >= 1 && in.like == nil {
		out.BareMargin = nan
	}
	if in.KeyTorque == 0 && in.Keyed != hub.NoKey { // a key may hold what friction does not
		out.HeldBy, out.SlipTorque, out.SlipAstern = KeyUnknown, quantity.Torque(math.NaN()), quantity.Torque(math.NaN())
		most := quantity.Torque(quantity.OrNaN(float64(in.KeyTorqueMost)))
		var ahead, back, peak *quantity.Ratio
		if l := in.like; l != nil {
			ahead, back, peak = &l.MarginAhead, &l.MarginAstern, &l.MarginPeak
		}
		out.MarginAhead = hub.Bounded(out.MarginAhead, over(max(out.FrictionTorque, most), in.ShaftTorque), ahead)
		if !(pull > max(0, c.Pull(out.Pressed))) {
			out.MarginAstern = hub.Bounded(out.MarginAstern, over(max(astern, most), in.AsternTorque), back)
			out.MarginPeak = hub.Bounded(out.MarginPeak, over(max(astern, most), in.PeakTorque), peak)
			if in.like == nil {
				out.BareMargin = hub.Unsure(out.BareMargin)
			}
		}
	}
}

// bounds finds how little holds and how much bursts.
func (out *TaperResult) bounds(in *TaperInput, c hub.Cone, f hub.Fit) {
	area, taper := out.area(in), float64(in.TaperRatio)
	half := taper / 2
	least := math.NaN() // where it cannot hold itself
	if mu := float64(in.BoreFriction); mu > half {
		least = 2 * float64(out.HardestTorque) / float64(out.MeanDiameter) / math.Sqrt(mu*mu-half*half)
	}
	out.LeastPushUp = quantity.Length(least / area * f.Give() / taper)
	out.LeastNutTorque = in.torqueOf(c.Push(quantity.Force(least)))
	most := quantity.OrNaN(float64(in.HubYieldStrength)) / hub.Equivalent(out.MeanDiameter, in.HubDiameter)
	out.MostPushUp = quantity.Length(most * f.Give() / taper)
	thread := float64(out.StressArea) * quantity.OrNaN(float64(in.ShaftYieldStrength)) / out.combined()
	bursts := float64(c.Push(quantity.Force(most * area)))
	out.MostNutTorque = in.torqueOf(quantity.Force(min(thread, bursts))) // NaN where either is
	out.NutTorqueRoom = quantity.Ratio(out.MostNutTorque / out.LeastNutTorque)
}

// face finds the pressure under the nut.
func (out *TaperResult) face(in *TaperInput) {
	out.FaceUsed, out.HoleUsed = in.NutFaceDiameter, in.hole()
	if in.NutFaceDiameter == 0 {
		out.FaceUsed = quantity.Length(quantity.OrNaN(float64(in.NutFaceShare)) * quantity.OrNaN(float64(in.NutDiameter)))
	}
	out.FaceStress = fastener.FacePressure(out.PushForce, out.FaceUsed, out.HoleUsed)
	out.FaceUse = quantity.Ratio(float64(out.FaceStress) / quantity.OrNaN(float64(in.PermittedBearingStress)))
	out.SinkNutTorque = in.torqueOf(out.PushForce) / quantity.Torque(out.FaceUse)
}

// hole is the hole in the hub's face under the nut.
func (in *TaperInput) hole() quantity.Length {
	if in.HubHole > 0 {
		return in.HubHole
	}
	return hub.SmallEnd(in.ShaftDiameter, in.TaperRatio, in.contact())
}

// off finds what takes the propeller off.
func (out *TaperResult) off(in *TaperInput, c hub.Cone) {
	out.PullOff = max(0, c.Pull(out.Pressed))
	out.SelfHolding = 2 * in.BoreFriction / in.TaperRatio
	out.HeatOff = quantity.TemperatureDifference(float64(out.PushUpUsed) * float64(in.TaperRatio) / (quantity.OrNaN(float64(in.HubExpansion)) * float64(out.MeanDiameter)))
}

// locks counts what locks the nut. What nobody looked at locks nothing, and
// nothing is told of a nut of which that is all there is.
func (in *TaperInput) locks() (n quantity.Ratio) {
	seen := true
	switch in.NutLock {
	case LockCotter, LockTab, LockNylon, LockSecond, LockMakers:
		n++
	case "", LockUnseen:
		seen = false
	}
	switch in.NutOrder {
	case ThinFirst, ThickFirst:
		if in.NutLock != LockSecond { // the same nut
			n++
		}
	case "", OrderUnknown:
		seen = false
	}
	if n == 0 && !seen {
		return quantity.Ratio(math.NaN())
	}
	return n
}
