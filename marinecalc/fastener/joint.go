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
	Proof   Target = "proof"   // a share of the proof load, Shigley eq. 8-31
	Yield   Target = "yield"   // a share of yield in combined tension and torsion, VDI 2230
	Tension Target = "tension" // a share of yield in plain tension, as makers' torque tables have it
)

// Control is what the way of tightening goes by.
type Control string

// The controls.
const (
	ByTorque  Control = "torque"  // a torque is set, and friction decides what it clamps
	ByStretch Control = "stretch" // stretch, turn or load itself, whatever the friction
)

// PrevailingRule says when the prevailing torque is added to the wrench setting.
type PrevailingRule string

// The rules.
const (
	Always     PrevailingRule = "always"
	FromAThird PrevailingRule = "from-a-third" // of the target torque upward: US Army TM 5-2330-325-13&P
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
	ThreadFriction quantity.Ratio // optional; without both, what the nut factor comes to stands in
	HeadFriction   quantity.Ratio // optional; likewise

	Target          Target         // Proof, Yield or Tension
	ProofFraction   quantity.Ratio // above 0 up to 1, needed for Proof; Shigley: 0.75 reused, 0.90 permanent
	YieldFraction   quantity.Ratio // above 0 up to 1, needed for Yield; VDI 2230: 0.9
	TensionFraction quantity.Ratio // above 0 up to 1, needed for Tension
	Method          Method         // Short or Long: which torque is used

	PrevailingTorque quantity.Torque // of a nut that turns hard before it seats; optional
	PrevailingRule   PrevailingRule  // Always or FromAThird
	Control          Control         // ByTorque or ByStretch
	TorqueScatter    quantity.Ratio  // clamp at a set torque over that by the formula, above 0, nominally 1
	WrenchScatter    quantity.Ratio  // the same of the way of tightening; optional, TorqueScatter stands in
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

	StretchMeasured quantity.Length // longer under clamp than free; optional
	TurnMeasured    quantity.Angle  // of the nut from snug; optional
	StretchScatter  quantity.Ratio  // clamp by stretch over that by the formula, nominally 1; needed with StretchMeasured
	TurnScatter     quantity.Ratio  // the same by turn; needed with TurnMeasured
	ClampedFaces    int             // pairs of faces between head and nut; 0: nothing is said of settling
	SettlingEnds    quantity.Length // of thread, head and nut together
	SettlingFaces   quantity.Length // of one pair of faces
	Retorque        Retorque        // whether it was tightened again after the first hours; optional
	FreeLength      quantity.Length // end to end, taken out; optional
	FreeLengthNew   quantity.Length // of the same bolt when new; optional
}

// Setting is what a person sets: one figure each, whatever nature does then.
type Setting struct {
	Wrench, Dial, Added quantity.Torque // wrench setting, the same with an adapter in line, prevailing torque in it
	Turn                quantity.Angle  // of the nut from snug
	Flats               quantity.Ratio  // the same in flats
	Clamp               quantity.Force  // target clamp load
}

// PreloadResult is the answer for one joint. NaN marks a figure for which an
// optional input is missing.
type PreloadResult struct {
	WrenchSetting   quantity.Torque // target torque and the prevailing torque added
	WrenchDial      quantity.Torque // the same with an adapter in line
	TargetTorque    quantity.Torque // by the chosen form, without prevailing torque
	ShortTorque     quantity.Torque
	LongTorque      quantity.Torque
	LongNutFactor   quantity.Ratio // K that the long form comes to
	FrictionsFactor quantity.Ratio // likewise by the two coefficients given; NaN without both

	PrevailingShare       quantity.Ratio  // prevailing over target torque
	PrevailingTorqueAdded quantity.Torque // to the target torque, by PrevailingRule

	Preload         quantity.Force // target
	AchievedPreload quantity.Force // at the setting, with the scatter; a bolt that breaks holds no more than BreakingClamp
	ClampShare      quantity.Ratio // achieved over target
	MiddlePreload   quantity.Force // clamp at the setting without scatter
	ScatterUsed     quantity.Ratio // WrenchScatter, or TorqueScatter where there is none
	LeastPreload    quantity.Force // that over TighteningFactor
	BreakingLoad    quantity.Force // in a straight pull
	BreakingClamp   quantity.Force // under the wrench, which twists the bolt
	BreakingTorque  quantity.Torque

	ProofUse         quantity.Ratio  // clamp that the setting asks for over proof load, even of a bolt that breaks before
	YieldUse         quantity.Ratio  // likewise over yield load, straight pull
	TighteningStress quantity.Stress // likewise, combined tension and torsion
	TighteningUse    quantity.Ratio  // that over yield strength

	PreloadFromTorqueUsed    quantity.Force
	JointClamp               quantity.Force // what the joint has to go by: TightenedClamp, or what settling leaves of it where the bolt was not read and not tightened again
	TightenedClamp           quantity.Force // by stretch, by turn, by TorqueUsed or at the setting, the first that is known
	ClampFromStretch         quantity.Force
	ClampFromTurn            quantity.Force
	MeasuredProofUse         quantity.Ratio  // what the stretch measured, else the turn, asks of the bolt over its proof load, as if it did not yield
	MeasuredYieldUse         quantity.Ratio  // likewise over yield load, straight pull
	MeasuredBreakingUse      quantity.Ratio  // likewise over BreakingLoad; above 1 no clamp goes on to the joint
	MeasuredShare            quantity.Ratio  // clamp measured over the target; NaN where it breaks the bolt
	Settling                 quantity.Length // of thread, head, nut and faces; NaN where their number is not known
	SettlingLoss             quantity.Force  // clamp that it takes
	SettledClamp             quantity.Force  // what is left
	SettledShare             quantity.Ratio  // of the target
	RetorqueTurn             quantity.Angle  // of the nut, that takes it up
	Grown                    quantity.Length // free length over that when new
	ProofUseFromTorqueUsed   quantity.Ratio
	ClampShareFromTorqueUsed quantity.Ratio // that clamp over the target
	BreakingUse              quantity.Ratio // what TorqueUsed asks of the bolt over BreakingClamp

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

	ThreadFrictionUsed quantity.Ratio // NaN where the nut factor leaves none for friction
	HeadFrictionUsed   quantity.Ratio
}
