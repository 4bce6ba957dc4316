// Slip torque of the coupling and the load of its bolts: Grip.

package coupling

import (
	"math"

	"example.org/driveline/marinecalc/fastener"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/torque"
)

const (
	yieldInShear    = 0.577    // of yield in tension, distortion energy: Shigley ch. 5
	metricRootDepth = 1.226869 // pitches, ISO 68-1 and ISO 898-1
	inchRootDepth   = 1.299038 // pitches, ASME B1.1
	absAddend       = 160e6    // Pa, c in ABS 4-3-2/5.19
	absMostRatio    = 1.7      // bolt over shaft, tensile, that ABS 4-3-2/5.19 lets count (from memory)
	absMostTensile  = 1000e6   // Pa, likewise
	proofOfYield    = 0.85     // Shigley ch. 8: proof strength where the standard gives none
)

// Grip finds what a bolted flange carries.
//
// Friction: each bolt presses the faces together with its clamp, and the
// friction of that clamp acts at the bolt circle: n·F·μ·R (Coulomb; the same
// as Shigley, Mechanical Engineering Design, ch. 8, has for joints loaded
// across the bolts). A pull astern is taken off the clamp in full: the part
// that the bolts take over instead (their stiffness share) is left out, which
// is the safe side. Thrust ahead presses the faces together and is left out
// too. A bolt in a tapped hole clamps no more than strips its thread. The pull is ThrustAstern, or else of the thrust ahead the part
// AsternThrust that a propeller gives astern and the share that passes the
// coupling.
//
// Shear, when friction carries nothing: the bolts share as their distance
// from the middle (Singer and Pytel, Strength of Materials, flanged bolt
// couplings), BearingShare of them.
//
// Fitted bolts: ABS 4-3-2/5.19, 0.65·√(D³(U + 160)/(N·B·U_b)), with the
// fitted shaft diameter standing for the required one and no more of the bolt's
// strength than 1.7 times the shaft's and 1000 N/mm² (both from memory), and GL I-1-2 section 4
// D, 16·√(10⁶·P/(n·D·z·R_m)), here with P/n written as the torque ahead.
//
// The error is a *problem.Error of everything that cannot be. Grip does not
// allocate unless it refuses.
func Grip(in GripInput) (GripResult, error) { return grip(in, nil) }

// GripAt is Grip where it was told before whether the clamp stretches its bolt
// past the proof load, when it was thought to be another: then no margin of 1
// and more is given.
func GripAt(in GripInput, stretched bool) (GripResult, error) { return grip(in, &stretched) }

func grip(in GripInput, stretched *bool) (out GripResult, err error) {
	if err = validate(&in); err != nil {
		return GripResult{}, err
	}
	out.grip(&in)
	out.weakened(&in)
	out.stretched(&in)
	out.shear(&in)
	out.fitted(&in)
	if stretched == nil {
		past := out.ClampProofUse > 1
		stretched = &past
	}
	out.silence(&in, *stretched)
	return out, nil
}

// silence takes back what is met only because a torque or a pull that would
// make it worse is not known, or because of a clamp that stretches its bolt
// for good: NaN. What is not met even so stands.
func (out *GripResult) silence(in *GripInput, stretched bool) {
	nan := quantity.Ratio(math.NaN())
	pull, peak := !math.IsNaN(float64(out.PullAstern)), in.PeakTorque > 0
	if stretched {
		for _, margin := range [...]*quantity.Ratio{&out.MarginAhead, &out.MarginAstern, &out.MarginPeak, &out.MarginHardest, &out.MarginOneLoose, &out.MarginLowerGrade} {
			if *margin >= 1 {
				*margin = nan
			}
		}
	}
	if !pull && out.MarginPeak >= 1 {
		out.MarginPeak = nan
	}
	if !pull || !peak {
		for _, margin := range [...]*quantity.Ratio{&out.MarginHardest, &out.MarginOneLoose, &out.MarginLowerGrade} {
			if *margin >= 1 {
				*margin = nan
			}
		}
	}
	if !peak && out.ShearUse <= 1 {
		out.ShearUse = nan
	}
}

// slip is the torque at which faces slip that are held by so many bolts on
// each circle, each with that clamp, against that pull.
func slip(in *GripInput, bolts int, clamp, pull float64) float64 {
	all := float64(bolts + in.InnerBoltCount)
	arms := float64(bolts)*float64(in.BoltCircle) + float64(in.InnerBoltCount)*float64(in.InnerBoltCircle)
	left := max(0, 1-pull/(all*clamp))
	return float64(in.FaceFriction) * clamp * arms / 2 * left
}

// pull is what parts the faces going astern, or NaN when nobody told.
func (in *GripInput) pull() float64 {
	if in.ThrustAstern == 0 && in.ThrustOnCoupling == 0 {
		return 0 // a thrust bearing behind the coupling takes it
	}
	return float64(torque.PullAstern(in.ThrustAstern, in.Thrust*quantity.Force(in.ThrustOnCoupling), in.AsternThrust))
}

// takenOff is the pull that is taken off the clamp: none where it is not known.
func (out *GripResult) takenOff() float64 {
	if math.IsNaN(float64(out.PullAstern)) {
		return 0
	}
	return float64(out.PullAstern)
}

// hardest sets the greatest torque that is known.
func (out *GripResult) hardest(in *GripInput) {
	out.HardestTorque, out.HardestCase = in.ShaftTorque, AheadIsHardest
	if in.AsternTorque > out.HardestTorque {
		out.HardestTorque, out.HardestCase = in.AsternTorque, AsternIsHardest
	}
	if in.PeakTorque >= out.HardestTorque {
		out.HardestTorque, out.HardestCase = in.PeakTorque, PeakIsHardest
	}
}

// fallsShort is how far below the steady torque a peak may lie, which their
// scatters can do: one that is less is no peak, and of it nothing is said.
const fallsShort = 0.8

// grip sets capacity and margins of the flange as it is.
func (out *GripResult) grip(in *GripInput) {
	out.StripShare = quantity.Ratio(quantity.OrNaN(float64(in.StrippingLoad)) / float64(in.Preload))
	out.ClampUsed = in.Preload
	if in.StrippingLoad > 0 && in.StrippingLoad < in.Preload { // never for NaN
		out.ClampUsed = in.StrippingLoad
	}
	clamp := float64(out.ClampUsed)
	out.PullAstern = quantity.Force(in.pull())
	out.FrictionCapacity = quantity.Torque(slip(in, in.BoltCount, clamp, 0))
	either := quantity.Torque(slip(in, in.BoltCount, clamp, out.takenOff()))
	out.CapacityAstern = either
	if math.IsNaN(float64(out.PullAstern)) {
		out.CapacityAstern = quantity.Torque(math.NaN())
	}
	out.hardest(in)
	out.MarginAhead = over(out.FrictionCapacity, in.ShaftTorque)
	out.MarginAstern = over(out.CapacityAstern, in.AsternTorque)
	out.MarginPeak = over(either, in.PeakTorque)
	if in.PeakTorque < fallsShort*max(in.ShaftTorque, in.AsternTorque) {
		out.MarginPeak = quantity.Ratio(math.NaN())
	}
	out.MarginHardest = over(either, out.HardestTorque)
	per := float64(in.FaceFriction) * (float64(in.BoltCount)*float64(in.BoltCircle) + float64(in.InnerBoltCount)*float64(in.InnerBoltCircle)) / 2
	out.PreloadToHold = quantity.Force(float64(out.HardestTorque)/per + out.takenOff()/float64(in.BoltCount+in.InnerBoltCount))
}

// weakened sets what is left with one bolt slack, or a grade lower.
func (out *GripResult) weakened(in *GripInput) {
	clamp := float64(out.ClampUsed)
	out.CapacityOneLoose = quantity.Torque(slip(in, in.BoltCount-1, clamp, out.takenOff()))
	out.ProofUsed, out.LowerProofUsed = proof(in.ProofStrength, in.YieldStrength), proof(in.LowerProofStrength, in.LowerYieldStrength)
	out.GradeRatio = quantity.Ratio(out.LowerProofUsed / out.ProofUsed)
	out.CapacityLowerGrade = quantity.Torque(math.NaN())
	if out.GradeRatio > 0 { // it is NaN where a grade is not known
		out.CapacityLowerGrade = quantity.Torque(slip(in, in.BoltCount, min(float64(in.Preload)*float64(out.GradeRatio), clamp), out.takenOff()))
	}
	out.MarginOneLoose = over(out.CapacityOneLoose, out.HardestTorque)
	out.MarginLowerGrade = over(out.CapacityLowerGrade, out.HardestTorque)
}

// stretched sets what the clamp asks of its bolt in a straight pull.
func (out *GripResult) stretched(in *GripInput) {
	out.ClampProofUse = quantity.Ratio(float64(in.Preload) / (float64(out.ProofUsed) * in.stressArea()))
}

// stressArea is that of the bolt's thread, NaN where it is not known.
func (in *GripInput) stressArea() float64 {
	if in.Pitch == 0 || in.ThreadForm == "" || float64(in.NominalDiameter) <= inchRootDepth*float64(in.Pitch) {
		return math.NaN()
	}
	return float64(fastener.StressArea(in.NominalDiameter, in.Pitch, in.ThreadForm))
}

// proof is the proof strength, or what stands in for it; NaN where neither is
// known.
func proof(proof, yield quantity.Stress) quantity.Stress {
	if proof > 0 {
		return proof
	}
	return proofOfYield * quantity.Stress(quantity.OrNaN(float64(yield)))
}

// shear sets what the bolts bear when the faces slip.
func (out *GripResult) shear(in *GripInput) {
	circle, inner := float64(in.BoltCircle), float64(in.InnerBoltCircle)
	spread := float64(in.BearingShare) * (float64(in.BoltCount)*circle*circle + float64(in.InnerBoltCount)*inner*inner)
	force := 2 * float64(out.HardestTorque) * circle / spread
	out.BoltShear = quantity.Force(force)

	d := quantity.OrNaN(float64(in.NominalDiameter))
	if in.ShearPlane == Thread {
		depth := inchRootDepth
		if in.ThreadForm == fastener.Metric {
			depth = metricRootDepth
		}
		d -= depth * float64(in.Pitch)
	}
	out.ShearDiameter = quantity.Length(d)
	area := math.Pi / 4 * d * d
	out.ShearStress = quantity.Stress(force / area)
	out.ShearStressInner = quantity.Stress(math.NaN())
	if in.InnerBoltCount > 0 {
		out.ShearStressInner = out.ShearStress * quantity.Stress(inner/circle)
	}
	limit := quantity.OrNaN(float64(in.PermittedShear))
	if in.PermittedShear == 0 {
		limit = quantity.OrNaN(yieldInShear * float64(in.YieldStrength))
	}
	out.ShearLimit = quantity.Stress(limit)
	out.ShearUse = quantity.Ratio(float64(out.ShearStress) / limit)
	out.ShearTorque = quantity.Torque(limit * area * spread / (2 * circle))
	out.ShearDiameterNeeded = quantity.Length(math.Sqrt(4 * force / (math.Pi * limit)))
}

// fitted sets the diameters that two rules ask of fitted bolts.
func (out *GripResult) fitted(in *GripInput) {
	d, shaft, bolt := float64(in.ShaftDiameter), float64(in.ShaftTensileStrength), quantity.OrNaN(float64(in.TensileStrength))
	bolts := float64(in.BoltCount) * float64(in.BoltCircle)
	counted := min(bolt, absMostRatio*shaft, absMostTensile)
	out.FittedDiameterAbs = quantity.Length(0.65 * math.Sqrt(quantity.OrNaN(d)*d*d*(quantity.OrNaN(shaft)+absAddend)/(bolts*counted)))
	out.FittedDiameterGl = quantity.Length(math.Sqrt(256 * math.Pi / 30 * float64(in.ShaftTorque) / (bolts * bolt)))
}

// over is a margin, NaN where the torque is not known.
func over(capacity, torque quantity.Torque) quantity.Ratio {
	return quantity.Ratio(float64(capacity) / quantity.OrNaN(float64(torque)))
}
