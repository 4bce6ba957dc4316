// Checks of a joint.

package fastener

import (
	"fmt"
	"math"

	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/quantity"
)

// validate lists everything in the joint that cannot be.
func validate(in *PreloadInput) error {
	var faults problem.List
	validateThread(&faults, in)
	validateMaterial(&faults, in)
	validateTightening(&faults, in)
	validateFlange(&faults, in)
	validateReadings(&faults, in)
	return faults.Err()
}

func validateThread(faults *problem.List, in *PreloadInput) {
	d, p := float64(in.NominalDiameter), float64(in.Pitch)
	faults.Above("/nominalDiameter", "thread diameter", d)
	faults.Above("/pitch", "pitch", p)
	if in.ThreadForm != Metric && in.ThreadForm != Inch {
		faults.Add("/threadForm", "the thread standard is missing or unknown", "metric, inch", "")
	} else if d > 0 && d <= rootDepth(in.ThreadForm)*p {
		faults.Add("/pitch", "the pitch is so coarse that the thread has no root left", "well below the thread diameter", "an inch thread's pitch is one inch divided by its threads per inch")
	}
}

func validateMaterial(faults *problem.List, in *PreloadInput) {
	proof, yield, tensile := float64(in.ProofStrength), float64(in.YieldStrength), float64(in.TensileStrength)
	faults.Above("/yieldStrength", "yield strength", yield)
	faults.NotNegative("/proofStrength", "proof strength", proof)
	if yield > 0 && proof > yield {
		faults.Add("/proofStrength", "the proof strength is above the yield strength", "up to the yield strength", "check that both belong to the same grade")
	}
	faults.NotNegative("/tensileStrength", "tensile strength", tensile)
	if tensile > 0 && tensile < yield {
		faults.Add("/tensileStrength", "the tensile strength is below the yield strength", "at least the yield strength", "check that both belong to the same grade")
	}
	faults.Above("/nutFactor", "nut factor", float64(in.NutFactor))
	friction(faults, "/threadFriction", "friction in the thread", float64(in.ThreadFriction))
	friction(faults, "/headFriction", "friction under head or nut", float64(in.HeadFriction))
}

func validateTightening(faults *problem.List, in *PreloadInput) {
	switch in.Target {
	case Proof:
		faults.Share("/proofFraction", "share of the proof strength", float64(in.ProofFraction))
	case Yield:
		faults.Share("/yieldFraction", "share of the yield strength", float64(in.YieldFraction))
	case Tension:
		faults.Share("/tensionFraction", "share of the yield strength", float64(in.TensionFraction))
	default:
		faults.Add("/target", "the aim is missing or unknown", "proof, yield, tension", "")
	}
	switch in.Method {
	case Short:
	case Long:
		if in.HeadFriction == 0 && in.ThreadFriction > 0 {
			faults.Add("/headFriction", "the long form needs the friction under head or nut too", "above 0", "type both, or neither for what the nut factor comes to")
		}
		if in.ThreadFriction == 0 && in.HeadFriction > 0 {
			faults.Add("/threadFriction", "the long form needs the friction in the thread too", "above 0", "type both, or neither for what the nut factor comes to")
		}
	default:
		faults.Add("/method", "the form of the torque is missing or unknown", "short, long", "")
	}
	if lead := float64(in.Pitch) / (2 * math.Pi); in.NutFactor > 0 && in.ThreadFriction == 0 && in.NominalDiameter > 0 && in.Pitch > 0 && float64(in.NutFactor*quantity.Ratio(in.NominalDiameter)) <= lead {
		faults.Add("/nutFactor", "the nut factor is less than the lead of the thread alone takes", fmt.Sprintf("above %.3g", lead/float64(in.NominalDiameter)), "nut factors lie between 0.08 and 0.4")
	}
	faults.NotNegative("/prevailingTorque", "prevailing torque of the nut", float64(in.PrevailingTorque))
	if in.PrevailingRule != Always && in.PrevailingRule != FromAThird {
		faults.Add("/prevailingRule", "when the prevailing torque is added is missing or unknown", "always, from-a-third", "")
	}
	if in.Control != ByTorque && in.Control != ByStretch {
		faults.Add("/control", "what the tightening goes by is missing or unknown", "torque, stretch", "")
	}
	faults.Above("/torqueScatter", "scatter at a set torque", float64(in.TorqueScatter))
	faults.NotNegative("/wrenchScatter", "scatter of the clamp", float64(in.WrenchScatter))
	faults.NotNegative("/tighteningFactor", "tightening factor", float64(in.TighteningFactor))
	if in.TighteningFactor > 0 && in.TighteningFactor < 1 {
		faults.Add("/tighteningFactor", "the tightening factor is below 1", "1 or more", "it is the greatest clamp divided by the least")
	}
	faults.NotNegative("/torqueUsed", "torque in question", float64(in.TorqueUsed))
	faults.NotNegative("/extensionLength", "length of the adapter", float64(in.ExtensionLength))
	faults.NotNegative("/wrenchLength", "length of the wrench", float64(in.WrenchLength))
	if in.WrenchLength == 0 && in.ExtensionLength > 0 {
		faults.Add("/wrenchLength", "an adapter is given without the length of the wrench", "above 0", "measure from the square drive to the middle of the grip")
	}
}

func validateFlange(faults *problem.List, in *PreloadInput) {
	face, hole := float64(in.HeadBearingDiameter), float64(in.HoleDiameter)
	faults.NotNegative("/headBearingDiameter", "bearing face", face)
	faults.NotNegative("/holeDiameter", "hole", hole)
	if face > 0 && hole >= face {
		faults.Add("/holeDiameter", "the hole is as wide as the bearing face or wider", "below the bearing face", "the head would pull through; measure both again")
	}
	thread := float64(in.NominalDiameter) - pitchDepth*float64(in.Pitch)
	if hole > 0 && hole < thread && !math.IsInf(thread, 0) {
		faults.Add("/holeDiameter", "the bolt does not go through the hole", "at least the thread diameter", "")
	}
	faults.NotNegative("/permittedBearingStress", "allowed pressure under the head", float64(in.PermittedBearingStress))

	grip, shank := float64(in.GripLength), float64(in.ShankLength)
	faults.NotNegative("/boltStiffness", "stiffness of the bolt", float64(in.BoltStiffness))
	faults.NotNegative("/memberStiffness", "stiffness of the flanges", float64(in.MemberStiffness))
	faults.NotNegative("/externalLoad", "pull from outside", float64(in.ExternalLoad))
	faults.NotNegative("/gripLength", "grip", grip)
	faults.NotNegative("/shankLength", "plain shank", shank)
	if grip > 0 && shank > grip {
		faults.Add("/shankLength", "the plain shank is longer than the grip", "up to the grip", "count only the part between head and nut; a nut that meets the shank clamps nothing")
	}
	if grip != 0 && in.BoltStiffness == 0 {
		faults.Above("/boltModulus", "elastic modulus of the bolt", float64(in.BoltModulus))
	}
	if grip != 0 && in.MemberStiffness == 0 {
		faults.Above("/memberModulus", "elastic modulus of the flanges", float64(in.MemberModulus))
	}
}

// friction asks for a coefficient of zero (not given) up to below one.
func friction(faults *problem.List, where, name string, v float64) {
	faults.NotNegative(where, name, v)
	if v >= 1 {
		faults.Add(where, "the "+name+" is 1 or more", "below 1", "coefficients of bolts lie between 0.05 and 0.35; 0.14 means 14 %")
	}
}
