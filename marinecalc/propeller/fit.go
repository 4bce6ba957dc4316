// A propeller on its taper: what is known of it, and what Taper finds.

package propeller

import (
	"example.org/driveline/marinecalc/fastener"
	"example.org/driveline/marinecalc/hub"
	"example.org/driveline/marinecalc/quantity"
)

// TaperInput is a propeller on the taper of its shaft. A field marked optional
// is not given when it is zero.
type TaperInput struct {
	ShaftDiameter    quantity.Length // at the large end of the taper, above 0
	TaperRatio       quantity.Ratio  // loss of diameter over length, above 0
	TaperLength      quantity.Length // of the cone on the shaft; this or HubLength is needed
	HubLength        quantity.Length // of the propeller's hub
	LengthShare      quantity.Ratio  // of HubLength that touches where TaperLength is not known; optional, all
	SmallEndDiameter quantity.Length // measured at the end of TaperLength; optional

	ContactShare   quantity.Ratio  // of the cone that touches, by blueing; above 0, up to 1
	BoreFriction   quantity.Ratio  // of cone and hub, above 0, below 1
	MarkWithoutKey quantity.Length // from a mark on the shaft before the hub to the hub, pushed up without the key; optional
	MarkWithKey    quantity.Length // the same with the key in; optional

	PushUp      quantity.Length     // along the shaft from where the dry hub first sits; goes before the nut
	NutForce    quantity.Force      // with which the nut pushes the hub up; goes before its torque
	NutTorque   quantity.Torque     // one of the three is needed
	NutFactor   quantity.Ratio      // torque over force times NutDiameter, needed with NutTorque
	NutDiameter quantity.Length     // nominal, of its thread; needed with NutTorque
	NutPitch    quantity.Length     // optional; without it nothing is said of the thread
	NutForm     fastener.ThreadForm // likewise

	NutFaceDiameter        quantity.Length // outside of the face of nut or washer that bears on the hub; optional
	NutFaceShare           quantity.Ratio  // that face over NutDiameter, where it was not measured; optional
	HubHole                quantity.Length // in the hub's face under the nut; optional, else the small end of what touches
	PermittedBearingStress quantity.Stress // of the hub under its nut; optional

	NutLock  string // what locks the nut besides a second one: LockCotter and those below it; empty where nobody said
	NutOrder string // of the nuts: ThinFirst and those below it; likewise

	HubDiameter                quantity.Length // outside of the hub midway along, above ShaftDiameter
	Bore                       quantity.Length // through the shaft; optional
	HubModulus, ElasticModulus quantity.Stress // of hub and shaft, above 0
	HubPoisson, ShaftPoisson   quantity.Ratio
	HubYieldStrength           quantity.Stress // optional
	ShaftYieldStrength         quantity.Stress // optional
	HubExpansion               quantity.Ratio  // for each kelvin; optional

	ShaftTorque  quantity.Torque // steady ahead, above 0
	AsternTorque quantity.Torque // optional
	PeakTorque   quantity.Torque // shock, either way; optional
	Keyed        hub.Keyed       // whether there is a key; empty where nobody said
	KeyTorque    quantity.Torque // at which that key yields; 0 for not known

	KeyTorqueMost quantity.Torque // what that key holds at most, where KeyTorque is not known; optional

	Thrust       quantity.Force // ahead; optional
	AsternThrust quantity.Ratio // thrust astern over that ahead, 0 to 2
	ThrustAstern quantity.Force // optional, goes before the two above

	like *TaperResult // margins are given on either side of 1, see TaperTrial
}

// The codes of HeldBy, for which the schema of propeller-taper has the words.
const (
	HeldByFriction = "friction"
	HeldByKey      = "key"
	KeyUnknown     = "key-unknown" // friction at least; whether a key holds more is not known
)

// The codes of what locks a propeller's nut, for which boat-shaft's schema has the words.
const (
	LockCotter = "cotter"
	LockTab    = "tab-washer"
	LockNylon  = "nylon-insert"
	LockSecond = "second-nut"
	LockMakers = "makers-lock"
	LockNone   = "none"
	LockUnseen = "not-known"
)

// The codes of the nuts' order, from the hub outward: rows of the table nut-orders.
const (
	ThinFirst    = "thin-first" // two nuts, which lock each other
	ThickFirst   = "thick-first"
	OneNut       = "one-nut"
	OrderUnknown = "not-known"
)

// TaperResult is what Taper finds. NaN marks a figure for which an optional
// input is missing.
type TaperResult struct {
	MarginPeak     quantity.Ratio // torque held over torque, with the pull astern; NaN where 1 or more and that is not known
	MarginAhead    quantity.Ratio
	MarginAstern   quantity.Ratio
	FrictionMargin quantity.Ratio  // the cone alone over the steady torque
	HubUse         quantity.Ratio  // stress in the hub over its yield strength
	ThreadUse      quantity.Ratio  // stress in the shaft's thread, while the nut is drawn, over its yield strength
	FaceUse        quantity.Ratio  // pressure under the nut over what the hub bears there
	NutMargin      quantity.Ratio  // what the nut's thread holds over the pull astern, the cone counted for nothing
	BareMargin     quantity.Ratio  // pull-off force over the pull astern, with the nut lost
	NutLocks       quantity.Ratio  // how many things lock the nut; NaN where that is not known
	KeyHoldOff     quantity.Length // by how much less far the hub goes on with its key

	SlipTorque     quantity.Torque // held ahead
	HeldBy         string
	FrictionTorque quantity.Torque // at which the cone slips ahead, no nut counted
	SlipAstern     quantity.Torque // held with the pull astern
	PushUpUsed     quantity.Length
	PushForce      quantity.Force  // along the shaft
	TorqueOfPush   quantity.Torque // of the nut for that force; NaN without its thread and factor
	ConePressure   quantity.Stress // where the cone touches
	HubStress      quantity.Stress // equivalent, at the bore

	FaceStress quantity.Stress // under the nut; NaN without its face
	FaceUsed   quantity.Length // outside of the nut's face
	HoleUsed   quantity.Length // in the hub under it

	LeastNutTorque quantity.Torque // that lets friction alone hold the hardest torque known
	MostNutTorque  quantity.Torque // that brings hub or thread to yield; NaN while a strength is not known
	SinkNutTorque  quantity.Torque // at which the nut begins to sink into the hub
	NutTorqueRoom  quantity.Ratio  // the most over the least over the former; below 1 no torque does both
	LeastPushUp    quantity.Length
	MostPushUp     quantity.Length // that brings the hub to yield

	PullOff       quantity.Force                 // of a puller
	HeatOff       quantity.TemperatureDifference // hub over shaft, that frees it
	SelfHolding   quantity.Ratio                 // friction over the slope of the cone; below 1 it jumps off
	PullAstern    quantity.Force
	Pressed       quantity.Force // square to the cone, all round
	ContactLength quantity.Length
	MeanDiameter  quantity.Length
	SmallEnd      quantity.Length // of the contact, by the taper
	TaperMeasured quantity.Ratio  // by both diameters; NaN where the small end was not measured
	HardestTorque quantity.Torque
	NutHold       quantity.Force // that brings the nut's thread on the shaft to yield
	StressArea    quantity.Area  // of the nut's thread

	ThreadFrictionUsed quantity.Ratio // in the nut's thread, by the nut factor
	TwistRatio         quantity.Ratio // shear over tension in it while the nut is turned
}
