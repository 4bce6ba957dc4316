// What excites the whirl: once a turn and the blades.

package shaft

import (
	"math"

	"example.org/driveline/marinecalc/quantity"
)

// WhirlOrder is one way in which the turning shaft excites its critical speed.
type WhirlOrder struct {
	Order    string                 // its code; "" where there is none
	From, To quantity.RotationSpeed // shaft speeds at which it does, the gearbox end free to turn and clamped, in bearings as soft as they are
	Crossing string                 // whether one of them is in use
}

// The codes of WhirlOrder.Order, for which the schema of shaft-whirl has the
// words.
const (
	OncePerTurn    = "once"
	EachBlade      = "blades"
	TwiceEachBlade = "twice-blades"
)

// The codes of WhirlOrder.Crossing and WhirlResult.BladeCrossing.
const (
	InUse         = "in-use"
	ClearOfUse    = "clear"
	UpToFull      = "up-to-full"       // below full speed, idle not known
	UpToFullRatio = "up-to-full-ratio" // likewise, of the engine's idle the gear ratio not known
	BladesUnknown = "blades-not-known"
)

// orders finds at which shaft speeds each order meets the critical speed.
func (out *WhirlResult) orders(in *WhirlInput) {
	z := quantity.RotationSpeed(in.Blades)
	out.Orders[0] = out.order(in, OncePerTurn, 1)
	out.BladeCrossing, out.BladesApart = BladesUnknown, quantity.Ratio(math.NaN())
	if z > 0 {
		out.Orders[1] = out.order(in, EachBlade, z)
		out.Orders[2] = out.order(in, TwiceEachBlade, 2*z)
		out.BladeCrossing = out.Orders[1].Crossing
		out.BladesApart = quantity.Ratio(math.Abs(float64(out.CriticalUsed/(z*in.ShaftSpeed)) - 1))
	}
}

func (out *WhirlResult) order(in *WhirlInput, code string, times quantity.RotationSpeed) WhirlOrder {
	o := WhirlOrder{Order: code, From: in.soft() * out.Critical / times, To: in.soft() * out.CriticalClamped / times, Crossing: ClearOfUse}
	switch {
	case o.From > in.ShaftSpeed || o.To < out.ShaftSpeedIdle: // never for NaN
	case out.ShaftSpeedIdle > 0:
		o.Crossing = InUse
	case in.IdleSpeed > 0:
		o.Crossing = UpToFullRatio
	default:
		o.Crossing = UpToFull
	}
	return o
}
