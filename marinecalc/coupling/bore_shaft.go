// The shaft in the bore of its coupling flange: what is known of it, and what
// Bore finds.

package coupling

import (
	"example.org/driveline/marinecalc/hub"
	"example.org/driveline/marinecalc/quantity"
)

// HoldMethod is how the coupling flange is held on its shaft.
type HoldMethod string

// The ways.
const (
	SplitClamp   HoldMethod = "clamp"        // a split flange drawn together by pinch bolts
	SetScrews    HoldMethod = "set-screws"   // a straight bore on a key, with set screws
	Interference HoldMethod = "interference" // pressed or shrunk on
	TaperNut     HoldMethod = "taper"        // a taper drawn up by a nut
)

// BoreInput is a shaft in the bore of its coupling flange and what it has to
// hold. A field marked optional is not given when it is zero.
type BoreInput struct {
	HoldMethod    HoldMethod
	ShaftDiameter quantity.Length // on a taper at its large end, above 0
	EngagedLength quantity.Length // of shaft in the bore that touches; needed but for a clamp and set screws
	BoreFriction  quantity.Ratio  // of shaft and bore, above 0, below 1

	ShaftTorque  quantity.Torque // steady ahead, above 0
	AsternTorque quantity.Torque // steady astern; optional
	PeakTorque   quantity.Torque // shock, either way; optional
	Thrust       quantity.Force  // of the propeller, ahead; optional
	AsternThrust quantity.Ratio  // thrust astern over that ahead, 0 to 2
	ThrustAstern quantity.Force  // pull going astern; optional, goes before the two above
	FoulPull     quantity.Force  // pull of a rope in the propeller, or of a boat held fast; optional

	Keyed              hub.Keyed       // whether there is a key in this bore; empty where nobody said
	KeyWidth           quantity.Length // of that key
	KeyHeight          quantity.Length // optional, without it HeightShare of its width
	HeightShare        quantity.Ratio  // optional, 1: a square key
	KeySeat            quantity.Length // depth of the keyway at its side in the shaft; optional, without it SeatShare of the height
	SeatShare          quantity.Ratio  // optional, a half
	KeyLength          quantity.Length // needed with KeyWidth
	KeyYieldStrength   quantity.Stress // optional; without it and the next two nothing is said of the key
	ShaftYieldStrength quantity.Stress // optional
	HubYieldStrength   quantity.Stress // optional; of the flange

	ClampFactor            quantity.Ratio  // of a split clamp: what presses on the shaft all round over the clamp of all bolts
	PinchBolts             int             // of a split clamp; 1 is used for the nut of a taper
	PinchClamp             quantity.Force  // of one pinch bolt or of the nut; goes before the next three
	PinchTorque            quantity.Torque // that one is tightened with
	PinchDiameter          quantity.Length // nominal, of its thread
	NutFactor              quantity.Ratio  // torque over clamp times diameter
	PinchPitch             quantity.Length // of its thread; optional, a coarse one stands in
	PinchYieldStrength     quantity.Stress // optional; of the nut of a taper that of the shaft stands in
	PinchTensileStrength   quantity.Stress // optional
	ShaftTensileStrength   quantity.Stress // stands in for it where the shaft has the thread; optional
	SplitGap               quantity.Length `unset:"NaN"` // slot left open between the lips of a split clamp
	SetScrews              quantity.Ratio  `unset:"NaN"` // a count
	SeatingTorque          quantity.Torque `unset:"NaN"` // what they are tightened with; not known, the table's
	TableSeating           quantity.Torque // what ScrewHolding is for; optional
	ScrewHolding           quantity.Force  // that one set screw holds; needed with SetScrews
	FurtherScrew           quantity.Ratio  // what each set screw after the first adds, 0 to 1
	Interference           quantity.Length `unset:"NaN"` // on the diameter, measured; below 0 a clearance; needed of an interference fit
	SmoothingLoss          quantity.Length // of it, by the peaks of the surfaces; optional
	TaperRatio             quantity.Ratio  // loss of diameter over length; needed of a taper
	NutFaceDiameter        quantity.Length // of a taper's nut, outside of the face that bears on the hub; optional
	NutFaceShare           quantity.Ratio  // that face over PinchDiameter, where it was not measured; optional
	PermittedBearingStress quantity.Stress // of the hub under that nut; optional
	HubDiameter            quantity.Length // outside of the boss; needed where it is pressed, above ShaftDiameter
	Bore                   quantity.Length // through the shaft; optional
	HubModulus             quantity.Stress // needed of an interference fit, like the next three
	HubPoisson             quantity.Ratio
	ElasticModulus         quantity.Stress // of the shaft
	ShaftPoisson           quantity.Ratio
	HubExpansion           quantity.Ratio       // for each kelvin; optional, as the next two
	FittingClearance       quantity.Length      // to slip the warm flange on without force
	RoomTemperature        quantity.Temperature // of the shaft while the flange is warmed

	like *BoreResult // margins are given on either side of 1, see BoreTrial
}

// The codes of HeldBy, for which the schema of coupling-bore has the words.
const (
	HeldByFriction = "friction"
	HeldByKey      = "key"
	HeldByNothing  = "nothing-known"
	HeldByNone     = "nothing"      // no key, and no friction
	ScrewsAlone    = "screws-alone" // set screws without a key, which carry no torque
	SlotClosed     = "slot-closed"  // the clamp's lips touch and nothing clamps the shaft; no key, or none that is known
	KeyInClosed    = "key-alone"    // likewise, and the key
	KeyUnknown     = "key-unknown"  // friction at least; whether a key holds more is not known
	ClampLost      = "clamp-lost"   // the bolt or thread breaks
	ClampYields    = "clamp-yields" // it stretches past yield, and nobody told at what it breaks
	ClampUnsure    = "clamp-unsure" // a bolt of the weakest usual grade would yield, and nobody told the grade
)

// BoreResult is what Bore finds. NaN marks a figure for which an optional
// input is missing, what a key that nobody told of may hold, or that has no meaning for this way of holding.
type BoreResult struct {
	MarginAhead  quantity.Ratio // torque held over torque
	MarginAstern quantity.Ratio // with the pull astern; NaN where 1 or more and that is not known
	MarginPeak   quantity.Ratio // likewise: a shock comes either way
	PullMargin   quantity.Ratio // pull-off force over the pull astern
	FoulMargin   quantity.Ratio // pull-off force over that of a foul propeller
	BareMargin   quantity.Ratio // of a taper the pull-off force with its nut lost over the pull astern
	ConeMargin   quantity.Ratio // of a taper the torque that its surfaces hold over the steady torque ahead
	ScrewMargin  quantity.Ratio // what the set screws hold over the pull astern
	HubUse       quantity.Ratio // stress in the hub over its yield strength
	FaceUse      quantity.Ratio // pressure under a taper's nut over what the hub bears there
	PinchUse     quantity.Ratio // stress in pinch bolt or nut's thread while tightened over its yield strength

	SlipTorque     quantity.Torque // held going ahead
	HeldBy         string          // what holds it
	SlipAstern     quantity.Torque // held with the pull astern; NaN where that is not known
	PullOff        quantity.Force  // that takes the flange off while the astern torque is on it; of a taper, nut in place
	PullOffFoul    quantity.Force  // the same with the hardest torque known
	BareOff        quantity.Force  // of a taper with its nut lost
	NutHold        quantity.Force  // that brings the thread of a taper's nut to yield
	PullAstern     quantity.Force  // of the propeller, going astern
	FrictionTorque quantity.Torque // at which the surfaces slip going ahead
	KeyTorque      quantity.Torque // at which key or keyway yield
	KeyTorqueMost  quantity.Torque // no more than which they hold, while a strength is not known; else NaN
	ScrewHold      quantity.Force  // of all set screws

	PinchStress  quantity.Stress // equivalent, while it is tightened
	ClampUsed    quantity.Force  // of one pinch bolt or of the nut
	FaceStress   quantity.Stress // under a taper's nut
	FaceUsed     quantity.Length // outside of its face
	Pressed      quantity.Force  // on the shaft, added up all round
	BorePressure quantity.Stress // mean, of an interference fit or a taper
	HubStress    quantity.Stress // equivalent, at the bore
	Grip         quantity.Length // of the interference, what is left when the surfaces are smoothed
	PressForce   quantity.Force  // to press it on or off cold
	HeatOn       quantity.Temperature
	HeatOff      quantity.TemperatureDifference // hub over shaft, that frees it
	MeanDiameter quantity.Length
}
