// Orders of a rolling bearing.

package vibration

import "math"

// Orders are what a rolling bearing gives off for each turn of its inner
// ring, were nothing to slip.
type Orders struct {
	Outer float64 // balls over a spot on the outer ring (BPFO)
	Inner float64 // balls over a spot on the inner ring (BPFI)
	Cage  float64 // turns of the cage (FTF)
	Ball  float64 // a spot on a ball meets a ring: twice its turns (2·BSF)
}

// Bearing gives the orders of a bearing with so many balls of diameter d on a
// pitch circle D with a contact angle in radians, outer ring held: rolling
// without slip, k = d/D·cos α; FTF (1 − k)/2, BPFO N(1 − k)/2, BPFI
// N(1 + k)/2, 2·BSF D/d·(1 − k²) (standard kinematics of rolling bearings,
// from memory; checked against the multipliers that the Case Western Reserve
// University bearing data centre gives for a 6205). In a running bearing they
// are 1 to 3 % lower.
func Bearing(balls int, d, pitch, angle float64) Orders {
	k := d / pitch * math.Cos(angle)
	n := float64(balls)
	return Orders{Outer: n / 2 * (1 - k), Inner: n / 2 * (1 + k), Cage: (1 - k) / 2, Ball: pitch / d * (1 - k*k)}
}
