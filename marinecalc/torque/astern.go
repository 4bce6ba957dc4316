// The pull of the propeller going astern: PullAstern.

package torque

import "example.org/driveline/marinecalc/quantity"

// PullAstern is what the propeller pulls going astern: as it is known by
// itself, or the thrust ahead times the part of it that a propeller gives
// astern; NaN where neither is known. Coupling faces, bore and taper all take
// it from here, so that the joints of one line bear the same pull.
func PullAstern(known, ahead quantity.Force, share quantity.Ratio) quantity.Force {
	if known > 0 {
		return known
	}
	return quantity.Force(quantity.OrNaN(float64(ahead)) * float64(share))
}
