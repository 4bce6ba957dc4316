// What is known of an engine on its mounts, and what Load finds.

package mount

import (
	"example.org/driveline/marinecalc/quantity"
)

// LoadInput is an engine with its gearbox, as one rigid body on its mounts.
// Fields marked optional are not given when they are 0.
type LoadInput struct {
	Mounts          []Mount         // 3 to 8
	EngineMass      quantity.Mass   // 20 kg to 50 t
	CentreForward   quantity.Length // of gravity, as a mount's place
	CentreStarboard quantity.Length
	CentreUp        quantity.Length

	EngineLength quantity.Length  // over all, with gearbox; needed where an inertia is not given
	EngineWidth  quantity.Length  //
	EngineHeight quantity.Length  //
	BoxFactor    quantity.Ratio   // inertia of the engine over that of a solid box of its size
	InertiaRoll  quantity.Inertia // about the axis forward through the centre of gravity; optional
	InertiaPitch quantity.Inertia // about the axis athwartships; optional
	InertiaYaw   quantity.Inertia // about the axis up; optional

	UsualDeflection quantity.Length // of mounts of which neither stiffness nor deflection is known
	SidewaysRatio   quantity.Ratio  // stiffness athwartships over that along the mount's axis, where not given
	AlongRatio      quantity.Ratio  // the same fore and aft
	DynamicRatio    quantity.Ratio  // dynamic-to-static stiffness ratio of the rubber, 1 to 5
	DampingRatio    quantity.Ratio  // over critical, 0 to 0.5
	CreepPerDecade  quantity.Ratio  // of the deflection, for each tenfold of time; optional
	MountAge        quantity.Time   // since they were loaded, a day or more; optional

	Cylinders   int                    // optional
	Strokes     string                 // FourStroke or TwoStroke
	IdleSpeed   quantity.RotationSpeed // optional
	EngineSpeed quantity.RotationSpeed // full; optional

	ShaftTorque      quantity.Torque // at the gearbox's output, ahead; optional
	AsternTorque     quantity.Torque // astern; optional
	Thrust           quantity.Force  // of the propeller, ahead; optional
	AsternThrust     quantity.Ratio  // thrust astern over that ahead
	ThrustOnMounts   quantity.Ratio  // share of the thrust that the engine's mounts take, 0 to 1
	ShaftTurns       string          // ahead, looking forward: Right or Left
	CouplingDiameter quantity.Length // optional
}

// The words of Engine.
const (
	FourStroke = "four-stroke"
	TwoStroke  = "two-stroke"
	Right      = "right" // clockwise
	Left       = "left"
)

// LoadResult is how the engine stands and swings on its mounts. A figure that
// cannot be given is NaN.
type LoadResult struct {
	Loads     [Most]MountLoad // one for each mount, in their order
	Modes     [6]Mode         // by frequency, lowest first
	FaceMoves [2]FaceMove

	MovedGapPerDiameter quantity.Ratio  // gap difference that driving adds, the greater of ahead and astern
	MovedGap            quantity.Length // the same at CouplingDiameter
	MovedOffset         quantity.Length
	AheadUp             quantity.Length // of the coupling face, ahead; NaN when that is not known
	AheadStarboard      quantity.Length
	AheadFrontUp        quantity.Angle // front end up
	AheadFrontStarboard quantity.Angle
	Driving             string // what pushes

	NewGapPerDiameter quantity.Ratio // the same with the mounts as new; NaN when no deflection was measured
	NewOffset         quantity.Length
	TiredFactor       quantity.Ratio // MovedGapPerDiameter over NewGapPerDiameter
	DeflectionRatio   quantity.Ratio // largest deflection now over new
	DeflectionRatioAt string
	LeastRatio        quantity.Ratio // least deflection now over new; nothing or less: a mount that carries nothing
	LeastRatioAt      string
	CarriedRatio      quantity.Ratio // weight by stiffness and deflection when new, over that given; NaN where not all mounts have both
	CreepRatio        quantity.Ratio // what creep alone explains of it

	Weight            quantity.Force
	LowestLoad        quantity.Force // at rest
	LowestLoadAt      string
	LowestDriving     quantity.Force // ahead or astern; NaN when not both are known and none is below 0
	LowestDrivingAt   string
	RestUse           quantity.Ratio     // greatest load along a mount's axis at rest over what the maker rates
	LoadUse           quantity.Ratio     // the same at rest and driving; NaN when not both ways are known and it is 1 or less
	ThrustUse         quantity.Ratio     // greatest load fore and aft over what the maker rates; NaN likewise
	Compression       quantity.Ratio     // greatest deflection along a mount's axis over the height of its rubber
	VerticalStiffness quantity.Stiffness // of all mounts together
	MeanDeflection    quantity.Length

	FiringIdle       quantity.Frequency
	FiringFull       quantity.Frequency
	PassedIdle       quantity.Ratio // of the firing torque, to the boat
	PassedFull       quantity.Ratio
	IsolatedFull     quantity.Ratio // 1 less PassedFull
	BouncePassedIdle quantity.Ratio // of a force up and down
	BouncePassedFull quantity.Ratio

	BounceFrequency  quantity.Frequency // as if the engine only moved up and down
	LowestFrequency  quantity.Frequency
	HighestFrequency quantity.Frequency
	RollInertia      quantity.Inertia // as used
	PitchInertia     quantity.Inertia
	YawInertia       quantity.Inertia
}

// MountLoad is what one mount carries.
type MountLoad struct {
	Name         string
	AtRest       quantity.Force // minus: the engine would lift off
	Share        quantity.Ratio // of the weight
	Deflection   quantity.Length
	Ahead        quantity.Force // NaN when nothing is known of the drive
	Astern       quantity.Force
	Axial        quantity.Force // greatest along its axis, of what is known
	Thrust       quantity.Force // greatest fore and aft, ahead or astern; NaN when nothing is known of the drive
	Use          quantity.Ratio // Axial over RatedLoad
	ThrustUse    quantity.Ratio // Thrust over RatedThrust
	Compression  quantity.Ratio // deflection at rest along its axis over RubberHeight
	StiffnessNow quantity.Stiffness
}

// Mode is one of the engine's six rigid-body modes on its mounts.
type Mode struct {
	Motion      string // what it is most
	Frequency   quantity.Frequency
	MotionShare quantity.Ratio         // of its kinetic energy, in that motion
	RollShare   quantity.Ratio         // of its kinetic energy
	BounceShare quantity.Ratio         // of its kinetic energy
	Meets       quantity.RotationSpeed // engine speed at which firing meets it; NaN when the cylinders are not known
}

// motions are the words for what a mode is most.
var motions = [freedoms]string{"fore and aft", "sideways", "up and down", "roll", "pitch", "yaw"}

// FaceMove is how the coupling face moves when the propeller drives, were it
// free to move.
type FaceMove struct {
	Name           string // "ahead" or "astern"
	Up             quantity.Length
	Starboard      quantity.Length
	Forward        quantity.Length
	GapPerDiameter quantity.Ratio // opened across the face
	Offset         quantity.Length
	FrontUp        quantity.Angle // plus: the engine's front end goes up
	FrontStarboard quantity.Angle
	Roll           quantity.Angle // plus: clockwise looking forward
}

// The codes of Driving, for which the schema of mount-load has the words. How
// the engine is driven is known where torque and thrust are, or where the
// mounts take no thrust.
const (
	NotDriven     = "none"
	ThrustMissing = "thrust-missing"
	TorqueMissing = "torque-missing"
	TorqueOnly    = "torque"
	BothDrive     = "thrust-and-torque"
)
