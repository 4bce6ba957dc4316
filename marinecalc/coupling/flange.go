// What is known of a flange coupling, and what Grip finds.

package coupling

import (
	"example.org/driveline/marinecalc/fastener"
	"example.org/driveline/marinecalc/quantity"
)

// ShearPlane is the part of a bolt that lies where the faces meet.
type ShearPlane string

// The parts.
const (
	Shank  ShearPlane = "shank"  // plain shank: the full diameter
	Thread ShearPlane = "thread" // thread: the root diameter
)

// GripInput is a bolted pair of coupling faces and what it has to carry. A field
// marked optional is not given when it is zero.
type GripInput struct {
	BoltCount  int             // 2 to 48
	BoltCircle quantity.Length // through the middles of the bolts, above 0

	Preload       quantity.Force // clamp of one bolt, above 0
	StrippingLoad quantity.Force `unset:"NaN"` // that strips its thread in a tapped hole; 0 or NaN for not known, or a nut
	FaceFriction  quantity.Ratio // between the faces, above 0, below 1

	ShaftTorque  quantity.Torque // steady ahead, above 0
	AsternTorque quantity.Torque // steady astern; optional
	PeakTorque   quantity.Torque // shock, either way; optional

	ThrustAstern     quantity.Force // pull that parts the faces going astern; optional, goes before the next three
	Thrust           quantity.Force // of the propeller, ahead; optional
	AsternThrust     quantity.Ratio // thrust astern over that ahead, 0 to 2
	ThrustOnCoupling quantity.Ratio // share of it that the coupling passes, 0 to 1; 0 behind a thrust bearing

	InnerBoltCount  int             // bolts on a second circle; optional
	InnerBoltCircle quantity.Length // needed with InnerBoltCount, not above BoltCircle

	NominalDiameter quantity.Length     // of the bolt; optional, as all that follows
	Pitch           quantity.Length     // needed with NominalDiameter where the thread is sheared
	ThreadForm      fastener.ThreadForm // likewise
	ShearPlane      ShearPlane          // Shank or Thread
	BearingShare    quantity.Ratio      // bolts that bear when it slips, over all bolts; above 0 up to 1
	ProofStrength   quantity.Stress     // 0.85 of yield stands in
	YieldStrength   quantity.Stress
	TensileStrength quantity.Stress
	PermittedShear  quantity.Stress // in the bolt; 0.577 of yield stands in

	LowerProofStrength quantity.Stress // of the next lower grade; 0.85 of its yield stands in
	LowerYieldStrength quantity.Stress // not above YieldStrength

	ShaftDiameter        quantity.Length
	ShaftTensileStrength quantity.Stress
	CouplingDiameter     quantity.Length // outside of the flange
	HoleDiameter         quantity.Length // of the bolt holes
}

// The codes of HardestCase, for which the schema of coupling-grip has the words.
const (
	PeakIsHardest   = "peak"
	AheadIsHardest  = "steady-ahead"
	AsternIsHardest = "steady-astern"
)

// GripResult is what Grip finds. NaN marks a figure for which an optional input is
// missing.
type GripResult struct {
	FrictionCapacity quantity.Torque // at which the faces slip
	ClampUsed        quantity.Force  // of one bolt: Preload, or what strips its thread where that is less
	StripShare       quantity.Ratio  // StrippingLoad over Preload; NaN where it is not known
	PullAstern       quantity.Force  // that parts the faces; NaN when not known, and then none is taken off
	CapacityAstern   quantity.Torque // with the pull astern taken off the clamp
	HardestTorque    quantity.Torque // greatest of ahead, astern and peak, as far as they are known
	HardestCase      string          // which of them that is

	MarginAhead      quantity.Ratio // capacity over torque
	MarginAstern     quantity.Ratio // NaN too when the pull is not known
	MarginPeak       quantity.Ratio // NaN where 1 or more and the pull is not known; with the pull taken off too: a shock comes either way
	MarginOneLoose   quantity.Ratio // this and those below: NaN where 1 or more and peak or pull is not known; one bolt of the outer circle slack, hardest torque
	MarginLowerGrade quantity.Ratio // every bolt of the next lower grade, hardest torque
	MarginHardest    quantity.Ratio // all bolts, with the pull taken off, hardest torque

	ProofUsed      quantity.Stress // ProofStrength, or what stands in
	LowerProofUsed quantity.Stress // of the next lower grade
	GradeRatio     quantity.Ratio  // the lower over the right one
	ClampProofUse  quantity.Ratio  // what the clamp asks of its bolt over ProofUsed, straight pull; NaN where thread or grade is not known; above 1 no margin of 1 and more is given

	CapacityOneLoose   quantity.Torque
	CapacityLowerGrade quantity.Torque
	PreloadToHold      quantity.Force // of each bolt, that just holds the hardest torque

	BoltShear           quantity.Force  // on one bolt of the outer circle when friction carries nothing
	ShearDiameter       quantity.Length // of the bolt where the faces meet
	ShearStress         quantity.Stress
	ShearStressInner    quantity.Stress // in the second circle
	ShearLimit          quantity.Stress // PermittedShear, or what stands in
	ShearUse            quantity.Ratio  // ShearStress over ShearLimit; NaN where 1 or less and the peak is not known
	ShearTorque         quantity.Torque // that brings the bolts to ShearLimit
	ShearDiameterNeeded quantity.Length // that keeps the hardest torque at ShearLimit

	FittedDiameterAbs quantity.Length // fitted bolts by ABS 4-3-2/5.19
	FittedDiameterGl  quantity.Length // fitted bolts by GL I-1-2 section 4 D
}
