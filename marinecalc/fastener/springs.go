// Bolt and clamped parts as springs.

package fastener

import (
	"math"

	"example.org/driveline/marinecalc/quantity"
)

// Lengths in diameters by which the bolt is longer than its grip as a spring:
// VDI 2230 (from memory).
const (
	headLength     = 0.5 // of the full section inside a hexagon head
	engagedLength  = 0.5 // of the root inside the nut
	nutThreadShift = 0.4 // of the full section, for nut and thread giving way
)

// turn treats bolt and clamped parts as springs: the turn of the nut from
// snug to the target clamp load, and how a pull from outside divides between
// them (Shigley, Mechanical Engineering Design, 9th ed., eq. 8-17, 8-22 and
// example 8-3; VDI 2230 for head, engaged thread and nut; all from memory).
func (out *PreloadResult) turn(in *PreloadInput) {
	bolt, member := out.boltSpring(in), memberSpring(in)
	out.BoltSpring, out.MemberSpring = quantity.Stiffness(bolt), quantity.Stiffness(member)
	turn := 2 * math.Pi * float64(out.Preload) / float64(in.Pitch) * (1/bolt + 1/member)
	out.NutTurn = quantity.Angle(turn)
	out.NutFlats = quantity.Ratio(turn / nutFlat)
	out.LoadShare = quantity.Ratio(bolt / (bolt + member))
}

// pulled sets what a pull from outside does at the achieved clamp load.
func (out *PreloadResult) pulled(in *PreloadInput) {
	share, reached := float64(out.LoadShare), float64(out.AchievedPreload)
	opens := reached / (1 - share)
	out.SeparationLoad = quantity.Force(opens)
	pull := quantity.OrNaN(float64(in.ExternalLoad))
	force := share*pull + reached
	if pull >= opens { // the joint is open and the bolt bears the whole pull
		force = pull
	}
	out.LoadedBoltStress = quantity.Stress(force / float64(out.StressArea))
}

// boltSpring is the stiffness as given, or that of plain shank and thread in
// series over the grip (Shigley eq. 8-17) with head, engaged thread and nut;
// NaN when neither is known.
func (out *PreloadResult) boltSpring(in *PreloadInput) float64 {
	if in.BoltStiffness > 0 {
		return float64(in.BoltStiffness)
	}
	d, root := float64(in.NominalDiameter), float64(out.MinorDiameter)
	grip, shank := quantity.OrNaN(float64(in.GripLength)), float64(in.ShankLength)
	full, core := math.Pi/4*d*d, math.Pi/4*root*root
	return float64(in.BoltModulus) / ((shank+(headLength+nutThreadShift)*d)/full + (grip-shank)/float64(out.StressArea) + engagedLength*d/core)
}

// memberSpring is the stiffness as given, or that of the 30° pressure cone in
// one material under a face of 1.5 diameters (Shigley eq. 8-22); NaN when
// neither is known.
func memberSpring(in *PreloadInput) float64 {
	if in.MemberStiffness > 0 {
		return float64(in.MemberStiffness)
	}
	d, cone := float64(in.NominalDiameter), 0.5774*quantity.OrNaN(float64(in.GripLength))
	return 0.5774 * math.Pi * float64(in.MemberModulus) * d / (2 * math.Log(5*(cone+0.5*d)/(cone+2.5*d)))
}
