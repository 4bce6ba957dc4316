// How much of a vibration the mounts pass on.

package mount

import (
	"math"

	"example.org/driveline/marinecalc/quantity"
)

// Transmissibility is the share of a vibrating force that a damped spring
// passes on: T = √((1+(2ζr)²)/((1-r²)²+(2ζr)²)), r being the frequency over
// the natural one (Ogata, System Dynamics, 4th ed., eq. 9-14). It is under 1
// from r = √2 on, whatever the damping.
func Transmissibility(r, damping quantity.Ratio) quantity.Ratio {
	re, im := passed(float64(r), float64(damping))
	return quantity.Ratio(math.Hypot(re, im))
}

// passed is the transmitted part of a force as a complex number.
func passed(r, damping float64) (re, im float64) {
	// (1+2iζr)/(1-r²+2iζr)
	a, b := 1-r*r, 2*damping*r
	size := a*a + b*b
	return (a + b*b) / size, (b*a - b) / size
}

// Passed is the share of a vibrating moment about the crankshaft (firing) and
// of a vibrating force up and down that the mounts pass to the boat at one
// frequency, for the natural modes of Load. Each mode passes its own share
// as a single spring does, weighted by the part of the motion's kinetic
// energy that is roll, or heave: with mass-normalised modes this is the exact
// answer of the six freedoms when damping is alike in all modes (modal
// superposition; own derivation).
func Passed(modes *[6]Mode, frequency quantity.Frequency, damping quantity.Ratio) (firing, bounce quantity.Ratio) {
	var rollRe, rollIm, heaveRe, heaveIm float64
	for i := range modes {
		m := &modes[i]
		re, im := passed(float64(frequency/m.Frequency), float64(damping))
		rollRe += float64(m.RollShare) * re
		rollIm += float64(m.RollShare) * im
		heaveRe += float64(m.BounceShare) * re
		heaveIm += float64(m.BounceShare) * im
	}
	return quantity.Ratio(math.Hypot(rollRe, rollIm)), quantity.Ratio(math.Hypot(heaveRe, heaveIm))
}
