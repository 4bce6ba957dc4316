// What a bar's sag and a flange that stands put into dial readings.

package align

import "math"

// layings is what is taken off the fits of face and rim: the bar's sag, and the
// run-out of a flange that stands.
type layings struct {
	face, circle      vector
	sagGap, sagOffset float64
}

// lay works that out.
func (in *DialInput) lay(k float64) (l layings) {
	l.sagGap, l.sagOffset = -k*float64(in.BarSagFace), -float64(in.BarSagRim)/2
	sign := 1.0
	if in.DialOn == OnEngine { // the shaft's rim is read, from the other side
		sign = -1
	}
	l.sagOffset *= sign
	if !math.IsNaN(l.sagGap) {
		l.face.up = l.sagGap / 2
	}
	if !math.IsNaN(l.sagOffset) {
		l.circle.up = l.sagOffset
	}
	if in.Swept == CarrierTurned {
		l.face.up += float64(in.StandingFaceUp) / 2
		l.face.right += float64(in.StandingFaceStarboard) / 2
		l.circle.up += sign * float64(in.StandingRimUp)
		l.circle.right += sign * float64(in.StandingRimStarboard)
	}
	return l
}

func (v *vector) take(off vector) { v.up, v.right = v.up-off.up, v.right-off.right }

// carryToFace gives the offset at the gearbox flange's face, from where the rim
// dial ran.
func (in *DialInput) carryToFace(face, circle *plane) {
	aft := 2 * float64(in.RimReadAft) / float64(in.CouplingDiameter)
	circle.fixed.take(vector{face.fixed.up * aft, face.fixed.right * aft})
}
