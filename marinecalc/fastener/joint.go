// What is known of a bolted joint, and what Preload finds.

package fastener

import "example.org/driveline/marinecalc/quantity"

// ThreadForm is the thread standard, which decides the root diameter in the
// stress area.
type ThreadForm string

// The thread standards.
const (
	Metric ThreadForm = "metric" // ISO 898-1
	Inch   ThreadForm = "inch"   // ASME B1.1
)

// Target is what the preload aims for.
type Target string

// The targets.
const (
	Proof Target = "proof" // a share of the proof load, Shigley eq. 8-31
	Yield Target = "yield" // a share of yield in combined tension and torsion, VDI 2230
)

// Method is the form of the torque equation.
type Method string

// The forms.
const (
	Short Method = "short" // K·F·d, Shigley eq. 8-27
	Long  Method = "long"  // lead, thread friction and collar friction, Shigley eq. 8-26
)

// PreloadInput is one bolt with its nut and what it clamps. A field marked optional
// is not given when it is zero.
type PreloadInput struct {
	NominalDiameter quantity.Length // above 0
	Pitch           quantity.Length // above 0, and so that a root is left
	ThreadForm      ThreadForm      // Metric or Inch

	ProofStrength   quantity.Stress // optional; 0.85 of yield stands in
	YieldStrength   quantity.Stress // above 0, not below proof
	TensileStrength quantity.Stress // optional; not below yield

	NutFactor      quantity.Ratio // K of the short form, above 0
	ThreadFriction quantity.Ratio // optional; needed for Long and for Yield
	HeadFriction   quantity.Ratio // optional; needed for Long

	Target        Target         // Proof or Yield
	ProofFraction quantity.Ratio // above 0 up to 1, needed for Proof; Shigley: 0.75 reused, 0.90 permanent
	YieldFraction quantity.Ratio // above 0 up to 1, needed for Yield; VDI 2230: 0.9
	Method        Method         // Short or Long: which torque is used

	PrevailingTorque quantity.Torque // of a nut that turns hard before it seats; optional
	WrenchScatter    quantity.Ratio  // achieved over target clamp load, above 0, nominally 1
	TighteningFactor quantity.Ratio  // greatest over minimum preload, 1 or more; optional
	TorqueUsed       quantity.Torque // a torque whose clamp is asked for; optional
	WrenchLength     quantity.Length // square drive to grip; optional
	ExtensionLength  quantity.Length // adapter in line with the wrench; optional, needs WrenchLength

	HeadBearingDiameter    quantity.Length // outside of the bearing face; optional
	HoleDiameter           quantity.Length // under the bearing face; optional, below it
	PermittedBearingStress quantity.Stress // of the flange; optional

	GripLength      quantity.Length    // clamped thickness; optional
	ShankLength     quantity.Length    // plain part of the grip, 0 for threaded throughout
	BoltModulus     quantity.Stress    // needed with GripLength unless BoltStiffness is given
	MemberModulus   quantity.Stress    // needed with GripLength unless MemberStiffness is given
	BoltStiffness   quantity.Stiffness // optional
	MemberStiffness quantity.Stiffness // optional
	ExternalLoad    quantity.Force     // pull on this bolt from outside; optional
}

// PreloadResult is the answer for one joint. NaN marks a figure for which an
// optional input is missing.
type PreloadResult struct {
	WrenchSetting quantity.Torque // target torque and the prevailing torque added
	WrenchDial    quantity.Torque // the same with an adapter in line
	TargetTorque  quantity.Torque // by the chosen form, without prevailing torque
	ShortTorque   quantity.Torque
	LongTorque    quantity.Torque
	LongNutFactor quantity.Ratio // K that the long form comes to

	PrevailingShare       quantity.Ratio  // running over target torque
	PrevailingTorqueAdded quantity.Torque // all of it from one third of the target torque upward

	Preload         quantity.Force // target
	AchievedPreload quantity.Force // expected at the wrench setting, with the scatter
	LeastPreload    quantity.Force // clamp at the wrench setting, without scatter, over TighteningFactor
	BreakingLoad    quantity.Force

	ProofUse         quantity.Ratio  // achieved preload over proof load
	YieldUse         quantity.Ratio  // achieved preload over yield load, straight pull
	TighteningStress quantity.Stress // combined tension and torsion at the achieved preload
	TighteningUse    quantity.Ratio  // that over yield strength

	PreloadFromTorqueUsed  quantity.Force
	ProofUseFromTorqueUsed quantity.Ratio

	HeadBearingStress quantity.Stress // at the preload achieved, no washer
	BearingUse        quantity.Ratio

	NutTurn          quantity.Angle // from snug to the target preload
	NutFlats         quantity.Ratio // the same in sixths of a turn
	BoltSpring       quantity.Stiffness
	MemberSpring     quantity.Stiffness
	LoadShare        quantity.Ratio  // bolt's share of an external pull
	LoadedBoltStress quantity.Stress // at the preload achieved and the external pull
	SeparationLoad   quantity.Force  // external pull that opens the joint at the preload achieved

	StressArea     quantity.Area
	StressDiameter quantity.Length
	PitchDiameter  quantity.Length
	MinorDiameter  quantity.Length
	LeadAngle      quantity.Angle
	CollarDiameter quantity.Length // mean diameter of the bearing ring
	ProofStress    quantity.Stress // proof strength used
	TwistRatio     quantity.Ratio  // shear over tension while tightening
}
