// Checks of a flange coupling.

package coupling

import (
	"fmt"
	"math"

	"example.org/driveline/marinecalc/fastener"
	"example.org/driveline/marinecalc/problem"
)

// mostBolts is the largest count that is taken for a flange, not for a slip.
const mostBolts = 48

// validate lists everything in the flange that cannot be.
func validate(in *GripInput) error {
	var faults problem.List
	validateLoad(&faults, in)
	validateBolts(&faults, in)
	if faults == nil {
		validateGeometry(&faults, in)
	}
	return faults.Err()
}

func validateLoad(faults *problem.List, in *GripInput) {
	faults.Above("/boltCircle", "bolt circle", float64(in.BoltCircle))
	faults.Above("/preload", "clamp of one bolt", float64(in.Preload))
	if f := float64(in.StrippingLoad); !(f >= 0) && !math.IsNaN(f) || math.IsInf(f, 1) {
		faults.Add("/strippingLoad", "the load that strips the thread is negative or not a number", "0 or more", "leave it out for bolts with nuts")
	}
	faults.Above("/shaftTorque", "torque ahead", float64(in.ShaftTorque))
	faults.NotNegative("/asternTorque", "torque astern", float64(in.AsternTorque))
	faults.NotNegative("/peakTorque", "peak torque", float64(in.PeakTorque))
	faults.NotNegative("/thrustAstern", "thrust astern", float64(in.ThrustAstern))
	faults.NotNegative("/thrust", "thrust", float64(in.Thrust))
	if r := float64(in.AsternThrust); !(r >= 0 && r <= 2) {
		faults.Add("/asternThrust", "the thrust astern over that ahead is negative, far too great or not a number", "0 to 2", "0.7 means that the propeller pulls 70 % astern of what it pushes ahead")
	}
	if r := float64(in.ThrustOnCoupling); !(r >= 0 && r <= 1) {
		faults.Add("/thrustOnCoupling", "the share of the thrust that the coupling passes cannot be", "0 to 1", "1 where the gearbox takes the thrust, 0 behind a thrust bearing")
	}
	if mu := float64(in.FaceFriction); !(mu > 0 && mu < 1) {
		faults.Add("/faceFriction", "the friction of the faces is missing or cannot be", "above 0, below 1", "0.15 means that the faces hold 15 % of what presses them together")
	}
}

func validateBolts(faults *problem.List, in *GripInput) {
	if in.BoltCount < 2 || in.BoltCount > mostBolts {
		faults.Add("/boltCount", fmt.Sprintf("%d bolts", in.BoltCount), fmt.Sprintf("2 to %d", mostBolts), "")
	}
	if in.InnerBoltCount < 0 || in.InnerBoltCount > mostBolts {
		faults.Add("/innerBoltCount", fmt.Sprintf("%d bolts", in.InnerBoltCount), fmt.Sprintf("0 to %d", mostBolts), "")
	}
	faults.NotNegative("/innerBoltCircle", "second bolt circle", float64(in.InnerBoltCircle))
	if in.InnerBoltCount > 0 && in.InnerBoltCircle == 0 {
		faults.Add("/innerBoltCircle", "bolts on a second circle are given without the circle", "above 0, up to the bolt circle", "")
	}
	faults.NotNegative("/nominalDiameter", "thread diameter", float64(in.NominalDiameter))
	faults.NotNegative("/pitch", "pitch", float64(in.Pitch))
	if in.ShearPlane != Shank && in.ShearPlane != Thread {
		faults.Add("/shearPlane", "what lies where the faces meet is missing or unknown", "shank, thread", "")
	}
	if in.ThreadForm != "" && in.ThreadForm != fastener.Metric && in.ThreadForm != fastener.Inch {
		faults.Add("/threadForm", "the thread standard is unknown", "metric, inch", "")
	}
	if in.ShearPlane == Thread && in.NominalDiameter > 0 && float64(in.NominalDiameter) <= inchRootDepth*float64(in.Pitch) {
		faults.Add("/pitch", "the pitch is so coarse that the thread has no root left", "well below the thread diameter", "an inch thread's pitch is one inch divided by its threads per inch")
	}
	if in.ShearPlane == Thread && in.NominalDiameter > 0 && in.Pitch == 0 {
		faults.Add("/pitch", "a thread where the faces meet is given without its pitch", "above 0", "choose the thread, or a plain shank")
	}
	faults.Share("/bearingShare", "share of the bolts that bear", float64(in.BearingShare))
	faults.NotNegative("/proofStrength", "proof strength", float64(in.ProofStrength))
	faults.NotNegative("/lowerProofStrength", "proof strength of the lower grade", float64(in.LowerProofStrength))
	faults.NotNegative("/lowerYieldStrength", "yield strength of the lower grade", float64(in.LowerYieldStrength))
	if right, lower := proof(in.ProofStrength, in.YieldStrength), proof(in.LowerProofStrength, in.LowerYieldStrength); lower > right {
		faults.Add("/lowerGrade", fmt.Sprintf("the lower grade is the stronger one: proof %.4g against %.4g MPa", lower/1e6, right/1e6), "a weaker grade", "is the grade of the bolts the right one?")
	}
	faults.NotNegative("/yieldStrength", "yield strength", float64(in.YieldStrength))
	faults.NotNegative("/tensileStrength", "tensile strength", float64(in.TensileStrength))
	faults.NotNegative("/permittedShear", "allowed shear stress", float64(in.PermittedShear))
	faults.NotNegative("/shaftDiameter", "shaft diameter", float64(in.ShaftDiameter))
	faults.NotNegative("/shaftTensileStrength", "tensile strength of the shaft", float64(in.ShaftTensileStrength))
	faults.NotNegative("/couplingDiameter", "flange diameter", float64(in.CouplingDiameter))
	faults.NotNegative("/holeDiameter", "hole diameter", float64(in.HoleDiameter))
}

// validateGeometry names flanges that nobody can drill, with the figure that
// shows it.
func validateGeometry(faults *problem.List, in *GripInput) {
	if breaks := in.stressArea() * float64(in.TensileStrength); breaks > 0 && float64(in.Preload) >= breaks {
		faults.Add("/preload", fmt.Sprintf("a clamp of %.4g kN breaks the bolt, which bears %.4g kN", float64(in.Preload)/1000, breaks/1000), fmt.Sprintf("below %.4g kN", breaks/1000), "the bolt preload works it out")
	}
	hole := max(float64(in.HoleDiameter), float64(in.NominalDiameter))
	circle := float64(in.BoltCircle)
	if least := float64(in.ShaftDiameter) + hole; in.ShaftDiameter > 0 && circle <= least {
		faults.Add("/boltCircle", fmt.Sprintf("the bolt circle leaves no room round the shaft: shaft and hole take %.4g mm, the circle is %.4g mm", 1000*least, 1000*circle),
			"above the shaft diameter and one hole together", "measure from the middle of one bolt to the middle of the opposite one")
	}
	if most := float64(in.CouplingDiameter) - hole; in.CouplingDiameter > 0 && circle >= most {
		faults.Add("/boltCircle", fmt.Sprintf("the holes break through the rim: the flange leaves %.4g mm, the circle is %.4g mm", 1000*most, 1000*circle),
			"below the flange diameter less one hole", "is it the outside of the flange that was measured?")
	}
	if apart := circle * math.Sin(math.Pi/float64(in.BoltCount)); apart <= hole {
		faults.Add("/boltCount", fmt.Sprintf("the holes run into each other: their middles are %.4g mm apart, each is %.4g mm wide", 1000*apart, 1000*hole),
			"so many that metal is left between the holes", "")
	}
	if in.InnerBoltCount == 0 {
		return
	}
	inner := float64(in.InnerBoltCircle)
	if inner > circle {
		faults.Add("/innerBoltCircle", "the second bolt circle is the larger one", "up to the bolt circle", "give the outer circle first")
	}
	if apart := inner * math.Sin(math.Pi/float64(in.InnerBoltCount)); in.InnerBoltCount > 1 && apart <= hole {
		faults.Add("/innerBoltCount", fmt.Sprintf("the holes of the second circle run into each other: their middles are %.4g mm apart, each is %.4g mm wide", 1000*apart, 1000*hole),
			"so many that metal is left between the holes", "")
	}
}
