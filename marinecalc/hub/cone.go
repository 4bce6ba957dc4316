// A taper by its angle and friction: Cone.

package hub

import (
	"math"

	"example.org/driveline/marinecalc/quantity"
)

// Cone is a hub on a taper. A Taper of 0 is a cylinder.
type Cone struct {
	Taper    quantity.Ratio  // loss of diameter over length: 1/16 for 3/4 in a foot
	Friction quantity.Ratio  // of the surfaces, above 0
	Mean     quantity.Length // diameter midway along the contact
}

// SteepestTaper is loss of diameter over length of 1:4, steeper than any shaft end.
const SteepestTaper = 0.25

// SmallEnd is the diameter of a cone at the end of a length.
func SmallEnd(large quantity.Length, taper quantity.Ratio, length quantity.Length) quantity.Length {
	return large - length*quantity.Length(taper)
}

// sides are sine and cosine of half the angle of the cone.
func (c Cone) sides() (sin, cos float64) {
	half := float64(c.Taper) / 2
	cos = 1 / math.Sqrt(1+half*half)
	return half * cos, cos
}

// Pressed is the force square to the surfaces, added up all round, that a push
// along the shaft brings on while the hub slides up: F/(sin α + μ·cos α), of the
// balance of forces along the shaft.
func (c Cone) Pressed(push quantity.Force) quantity.Force {
	sin, cos := c.sides()
	return push / quantity.Force(sin+float64(c.Friction)*cos)
}

// Push is the push along the shaft that presses the surfaces so: the inverse of
// Pressed.
func (c Cone) Push(pressed quantity.Force) quantity.Force {
	sin, cos := c.sides()
	return pressed * quantity.Force(sin+float64(c.Friction)*cos)
}

// Pull is what draws the hub off again with no torque on it: N·(μ·cos α −
// sin α). Below 0 the hub jumps off by itself.
func (c Cone) Pull(pressed quantity.Force) quantity.Force {
	sin, cos := c.sides()
	return pressed * quantity.Force(float64(c.Friction)*cos-sin)
}

// Slip is the torque at which the surfaces slip while a pull tries to take
// the hub off: friction acts against both together, and the wedge of the cone
// pulls along, d/2·√((μ·N)² − ((N·sin α + F)/cos α)²), with no nut to help. It is 0
// where the pull alone takes the hub off.
func (c Cone) Slip(pressed, pull quantity.Force) quantity.Torque {
	sin, cos := c.sides()
	grip := float64(c.Friction) * float64(pressed)
	along := (float64(pressed)*sin + float64(pull)) / cos
	return quantity.Torque(float64(c.Mean) / 2 * math.Sqrt(max(0, grip*grip-along*along)))
}

// PullTwisted is what draws the hub off while a torque is on it: 0 where the
// torque alone makes it slip.
func (c Cone) PullTwisted(pressed quantity.Force, torque quantity.Torque) quantity.Force {
	sin, cos := c.sides()
	grip := float64(c.Friction) * float64(pressed)
	round := 2 * float64(torque) / float64(c.Mean)
	return quantity.Force(max(0, math.Sqrt(max(0, grip*grip-round*round))*cos-float64(pressed)*sin))
}

// Keyed says whether a key stands between shaft and hub.
type Keyed string

// Whether there is one. Empty: nobody said.
const (
	WithKey Keyed = "yes"
	NoKey   Keyed = "no"
)

// Unsure is a margin of friction beside a key that may hold more: known where
// friction holds by itself.
func Unsure(margin quantity.Ratio) quantity.Ratio {
	if margin < 1 {
		return quantity.Ratio(math.NaN())
	}
	return margin
}

// Bounded is a margin beside a key of which not all is known: the least that friction
// holds, where that is enough, and the most that friction or key hold, where even that
// is not. NaN between them, and where the most is not known. A trial goes by the side
// that the estimate was told by.
func Bounded(least, most quantity.Ratio, like *quantity.Ratio) quantity.Ratio {
	if like != nil {
		if *like < 1 && !math.IsNaN(float64(most)) {
			return most
		}
		return least
	}
	if most < 1 {
		return most
	}
	return Unsure(least)
}

// Margin is the torque that a joint holds astern over the one asked of it. One
// of 1 or more that rests on a pull which nobody told is not known, but where
// the key alone holds.
func Margin(held, key, asked quantity.Torque, told bool) quantity.Ratio {
	by := float64(held) / quantity.OrNaN(float64(asked))
	if !told && by >= 1 && !(key >= asked) {
		return quantity.Ratio(math.NaN())
	}
	return quantity.Ratio(by)
}

// Told leaves of a trial's margins those that the estimates tell. A trial on the
// other side of 1 of such a one counts as it came out, as the least where a key may
// hold more and as the most where a pull is not known: left out, its range would end
// at 1 while what lies behind goes on.
func Told(like, trial *quantity.Ratio) {
	if math.IsNaN(float64(*like)) {
		*trial = *like
	}
}
