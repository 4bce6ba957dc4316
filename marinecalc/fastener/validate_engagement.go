// Checks of a bolt in a tapped hole.

package fastener

import (
	"fmt"
	"math"

	"example.org/driveline/marinecalc/problem"
)

// validate lists everything in the hole that cannot be.
func (in *EngagementInput) validate() error {
	var faults problem.List
	d, p := float64(in.NominalDiameter), float64(in.Pitch)
	faults.Above("/nominalDiameter", "thread diameter", d)
	faults.Above("/pitch", "pitch", p)
	faults.Above("/engagementLength", "engaged length", float64(in.EngagementLength))
	faults.Above("/tensileStrength", "tensile strength of the bolt", float64(in.TensileStrength))
	faults.NotNegative("/tappedTensileStrength", "tensile strength of the tapped metal", float64(in.TappedTensileStrength))
	faults.NotNegative("/lostThreads", "turns that do not bear", float64(in.LostThreads))
	faults.Share("/threadShare", "sound share of the tapped thread", float64(in.ThreadShare))
	faults.Share("/shearShare", "strength in shear over that in tension", float64(in.ShearShare))
	faults.NotNegative("/preload", "clamp", float64(in.Preload))
	faults.NotNegative("/tappedMinorDiameter", "minor diameter of the hole", float64(in.TappedMinorDiameter))
	faults.NotNegative("/tappedDepth", "depth of full thread", float64(in.TappedDepth))
	faults.NotNegative("/insertDiameter", "outside thread of the insert", float64(in.InsertDiameter))
	faults.NotNegative("/insertPitch", "pitch of the insert's outside", float64(in.InsertPitch))
	faults.NotNegative("/insertLength", "length of the insert", float64(in.InsertLength))
	if in.ThreadForm != Metric && in.ThreadForm != Inch {
		faults.Add("/threadForm", "the thread standard is missing or unknown", "metric, inch", "")
	} else if d > 0 && d <= coarsest*p {
		faults.Add("/pitch", "the pitch is so coarse that the thread has no root left", "well below the thread diameter", "an inch thread's pitch is one inch divided by its threads per inch")
	}
	if faults == nil {
		in.validateHole(&faults)
	}
	return faults.Err()
}

const coarsest = 2 // pitches that a thread is thick, at least

func (in *EngagementInput) validateHole(faults *problem.List) {
	mm := func(v float64) string { return fmt.Sprintf("%.4g mm", 1000*v) }
	d, p := float64(in.NominalDiameter), float64(in.Pitch)
	if minor := float64(in.TappedMinorDiameter); minor > 0 && !(minor >= d-1.3*p && minor < d) {
		faults.Add("/tappedMinorDiameter", fmt.Sprintf("a hole of %s is none for a thread of %s", mm(minor), mm(d)), "from "+mm(d-1.3*p)+" to below "+mm(d), "measure across the crests of the tapped thread")
	}
	switch in.Insert {
	case NoInsert, WireInsert:
	case SolidInsert:
		outside, pitch := float64(in.InsertDiameter), float64(in.InsertPitch)
		if !(outside > d) {
			faults.Add("/insertDiameter", "the insert's outside is missing or no wider than the bolt", "above "+mm(d), "nominal diameter of its outside thread")
		}
		if !(pitch > 0 && outside > coarsest*pitch) {
			faults.Add("/insertPitch", "the pitch of the insert's outside is missing or too coarse", "above 0, well below its diameter", "")
		}
	default:
		faults.Add("/insert", "the insert is missing or unknown", "none, wire, solid", "")
	}
	if long := float64(in.InsertLength); in.Insert != NoInsert && long > 0 && long < float64(in.EngagementLength)-math.Abs(p) {
		faults.Add("/insertLength", fmt.Sprintf("an insert %s long does not take %s of bolt", mm(long), mm(float64(in.EngagementLength))), "the engaged length, or more", "what goes on below the insert bears nothing: type no more engagement than the insert is long")
	}
	if breaks := float64(StressArea(in.NominalDiameter, in.Pitch, in.ThreadForm)) * float64(in.TensileStrength); float64(in.Preload) >= breaks {
		faults.Add("/preload", fmt.Sprintf("a clamp of %.4g kN breaks the bolt, which bears %.4g kN", float64(in.Preload)/1000, breaks/1000), fmt.Sprintf("below %.4g kN", breaks/1000), "the bolt preload works it out")
	}
	if depth := float64(in.TappedDepth); depth > 0 && depth < float64(in.EngagementLength)-math.Abs(p) {
		faults.Add("/tappedDepth", fmt.Sprintf("a thread %s deep does not take %s of bolt", mm(depth), mm(float64(in.EngagementLength))), "the engaged length, or more", "a bolt that reaches the bottom clamps nothing")
	}
}
