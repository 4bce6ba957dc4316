// The gearbox's output flange on its shaft: Output.

package flange

import (
	"math"

	"example.org/driveline/marinecalc/fastener"
	"example.org/driveline/marinecalc/quantity"
)

// Drive is what turns the hub with its shaft besides friction.
type Drive string

// The kinds.
const (
	Spline   Drive = "spline"
	Key      Drive = "key"
	Friction Drive = "none" // nothing but friction
)

// OutputInput is the stack on a gearbox's output shaft, from the shoulder
// of the shaft to the nut: hub, bearing ring, spacer. A field marked optional is
// not given when it is zero.
type OutputInput struct {
	NominalDiameter quantity.Length // of the nut's thread, above 0
	Pitch           quantity.Length // above 0
	ThreadForm      fastener.ThreadForm

	NutTorque       quantity.Torque // it is tightened to; optional, as the next: one is needed
	NutTurn         quantity.Angle  // from snug; goes before NutTorque where the stiffness is known
	LooseningTorque quantity.Torque // at which the nut moved when it was undone; optional

	NutFactor              quantity.Ratio  // torque over clamp and diameter; needed with a torque unless both frictions are given
	ThreadFriction         quantity.Ratio  // optional
	NutFriction            quantity.Ratio  // under the nut; optional
	NutFaceDiameter        quantity.Length // outside of the face that turns; optional
	PermittedBearingStress quantity.Stress // of what the nut bears on; optional
	TorqueScatter          quantity.Ratio  // above 0; 1 for none
	TurnScatter            quantity.Ratio  // above 0; 1 for none

	SeatDiameter   quantity.Length // of the shaft inside the stack, above 0
	ShaftBore      quantity.Length // optional
	ThreadInside   quantity.Length // length of thread within the stack; optional
	HubLength      quantity.Length // that is clamped, face to face; without it nothing is known of the stack
	HubDiameter    quantity.Length // of its barrel; needed with HubLength for the stiffness
	RingLength     quantity.Length // of the bearing's inner ring; optional
	RingDiameter   quantity.Length // outside of that ring
	SpacerLength   quantity.Length // of spacers and washers; optional
	SpacerDiameter quantity.Length
	ShaftModulus   quantity.Stress // above 0
	StackModulus   quantity.Stress // above 0

	FaceWear    quantity.Length `unset:"NaN"` // depth worn off the clamped faces since the nut was tightened; NaN for not measured
	EarlierWear quantity.Length `unset:"NaN"` // of an earlier reading; NaN for none: then RunningTime is since the tightening
	RunningTime quantity.Time   // optional

	ShaftTorque   quantity.Torque // steady, ahead; optional
	PeakTorque    quantity.Torque // shock, either way; optional
	PullAstern    quantity.Force  `unset:"NaN"` // of the propeller; NaN for not known
	BendingMoment quantity.Torque `unset:"NaN"` // at the flange; NaN for not known
	FaceFriction  quantity.Ratio  // of the clamped faces; optional
	FrictionFaces int             // that pass torque to the shaft, 1 or 2; 0 is 1
	FaceDiameter  quantity.Length // outside of the smallest clamped face; optional, else the least of the parts

	Drive             Drive
	DriveTeeth        int             // teeth of the spline, or keys; optional
	DriveDepth        quantity.Length // of flank that bears, on one tooth or key
	DriveLength       quantity.Length // that bears
	DriveDiameter     quantity.Length // through the middle of those flanks
	TeethBearing      quantity.Ratio  // share of the teeth that bear, above 0 up to 1
	PermittedPressure quantity.Stress // on the flanks; optional

	ShaftYieldStrength quantity.Stress // optional

	BarLength        quantity.Length // from the shaft's middle to where the bar rests; optional
	BoltCircle       quantity.Length // that the bar is bolted across
	HoldBoltDiameter quantity.Length // of those bolts where they are thinnest
	HoldBoltYield    quantity.Stress
	StandOff         quantity.Length // from the flange's face to the middle of the bar
	BarThickness     quantity.Length // along the shaft
	BarHeight        quantity.Length // across
	BarYield         quantity.Stress

	SocketLength quantity.Length // optional, as the rest
	DriverLength quantity.Length // ratchet, bar or multiplier behind the socket
	NutRecess    quantity.Length // from the flange's face in to the nut
	PullerLength quantity.Length // from the flange's face aft
	StubLength   quantity.Length // of shaft and thread standing out of the hub
}

// OutputResult is what Output finds. NaN marks a figure for which an
// optional input is missing.
type OutputResult struct {
	FittedClamp  quantity.Force  // when it was tightened: ClampFromTurn, or else ClampFromTorque
	ClampLeft    quantity.Force  // with the face worn as it is, no more than ClampFromLoosening
	ShareLeft    quantity.Ratio  // of FittedClamp
	WearToLoss   quantity.Length // face wear that takes the whole clamp
	TimeToLoss   quantity.Time   // of running until then; 0 when it is gone, Never at most
	LostAgo      quantity.Time   // of running since then, at most; 0 while there is clamp
	FaceWearRate quantity.Length // in a thousand hours

	ClampFromTorque    quantity.Force
	ClampFromTurn      quantity.Force
	ClampFromLoosening quantity.Force // by the torque at which the nut moved
	ShareByLoosening   quantity.Ratio // ClampFromLoosening over FittedClamp: at most so much is left
	TurnFromSnug       quantity.Angle // that makes FittedClamp
	RetorqueTurn       quantity.Angle // that takes up FaceWear
	Stretch            quantity.Length
	Squeeze            quantity.Length

	FrictionTorque quantity.Torque // that the clamp left passes
	MarginFriction quantity.Ratio  // over the peak torque
	MarginSteady   quantity.Ratio  // over the steady torque: below 1 spline or key carries a part of it all the time
	DriveTorque    quantity.Torque // of spline or key at PermittedPressure
	DrivePressure  quantity.Stress // on its flanks at the peak torque, friction passing nothing
	DriveUse       quantity.Ratio

	ClampForPull    quantity.Force // that the pull astern takes from the face
	ClampForBending quantity.Force // that opens the face's edge under the bending moment
	MarginPull      quantity.Ratio // ClampLeft over ClampForPull
	MarginBending   quantity.Ratio // ClampLeft over both together

	ShaftStress quantity.Stress // in the thread while it is tightened, tension and torsion
	ShaftUse    quantity.Ratio

	MostNutTorque quantity.Torque // that brings the thread to yield

	FaceUse    quantity.Ratio  // pressure under the nut over what the hub bears there
	FaceStress quantity.Stress // under the nut; NaN without its face

	HoldTorque    quantity.Torque // the greater of NutTorque and LooseningTorque
	BarForce      quantity.Force  // where the bar rests
	HoldBoltForce quantity.Force  // on the nearer bolt
	HoldBoltUse   quantity.Ratio
	BarUse        quantity.Ratio

	GapNeeded quantity.Length // between the flanges, for socket, puller and hub

	ClampedLength      quantity.Length
	ShaftSpring        quantity.Stiffness
	StackSpring        quantity.Stiffness
	LoadShare          quantity.Ratio // of a pull from outside that the shaft takes on
	ThreadFrictionUsed quantity.Ratio
	NutFrictionUsed    quantity.Ratio
	FrictionsFactor    quantity.Ratio // nut factor that the two coefficients given come to; NaN without both
	TorquePerClamp     quantity.Length
	CollarDiameter     quantity.Length // mean, of the face that turns
	PitchDiameter      quantity.Length
	MinorDiameter      quantity.Length
	StressDiameter     quantity.Length
	FaceOutside        quantity.Length
	FaceRadius         quantity.Length // at which its friction acts
}

// Never stands for what does not come in ten years of running, in seconds. It is
// no figure to be shown.
const Never = 10 * 365.25 * 86400

// Output finds what holds a flange on its shaft.
//
// Shaft end and stack are springs in series (Shigley, Mechanical Engineering
// Design, 9th ed., eq. 8-17 and fig. 8-13; each part of the stack is a sleeve,
// as in VDI 2230 for sleeves that the nut covers; 0.5 d of the root and 0.4 d of
// the full section for thread and nut: VDI 2230; all from memory). The nut's
// torque is that of lead, thread and face (Motosh, as in Bickford and ISO
// 16047); undoing it the lead helps. What wears off a clamped face lets both
// springs out by as much: the clamp falls in a straight line, and is gone when
// the wear is as great as stretch and squeeze together.
//
// Friction of the face is taken under even pressure (Shigley, ch. 16, from
// memory), the flanks of spline or key as T = p·n·h·l·r (SAE, as in Machinery's
// Handbook). A pull astern opens the face when the part of it that the stack
// loses is all of the clamp; a bending moment when its stress at the edge is
// that of the clamp. The bar that holds the flange lies across two bolts and
// rests at its end: statics. The thrust ahead is left out: it presses the stack
// together.
//
// The error is a *problem.Error of everything that cannot be. Output does
// not allocate unless it refuses.
func Output(in OutputInput) (out OutputResult, err error) {
	if err = in.validate(); err != nil {
		return OutputResult{}, err
	}
	out.springs(&in)
	out.friction(&in)
	out.clamp(&in)
	out.wear(&in)
	out.passes(&in)
	out.opens(&in)
	out.thread(&in)
	out.face(&in)
	out.hold(&in)
	out.room(&in)
	return out, nil
}

// passes finds the torque that the stack passes.
func (out *OutputResult) passes(in *OutputInput) {
	outside, inside := float64(out.FaceOutside), float64(in.SeatDiameter)
	radius := (math.Pow(outside, 3) - math.Pow(inside, 3)) / (outside*outside - inside*inside) / 3
	out.FaceRadius = quantity.Length(radius)
	faces, peak := float64(max(1, in.FrictionFaces)), quantity.OrNaN(float64(in.PeakTorque))
	passed := faces * quantity.OrNaN(float64(in.FaceFriction)) * float64(out.ClampLeft) * radius
	out.FrictionTorque = quantity.Torque(passed)
	out.MarginFriction = quantity.Ratio(passed / peak)
	out.MarginSteady = quantity.Ratio(passed / quantity.OrNaN(float64(in.ShaftTorque)))

	flanks := float64(in.TeethBearing) * float64(in.DriveTeeth) * float64(in.DriveDepth) * float64(in.DriveLength) * float64(in.DriveDiameter) / 2
	if in.Drive == Friction {
		flanks = 0
	}
	flanks = quantity.OrNaN(flanks)
	permitted := quantity.OrNaN(float64(in.PermittedPressure))
	out.DriveTorque = quantity.Torque(permitted * flanks)
	out.DrivePressure = quantity.Stress(peak / flanks)
	out.DriveUse = quantity.Ratio(float64(out.DrivePressure) / permitted)
}

// opens finds the clamp that pull and bending ask for.
func (out *OutputResult) opens(in *OutputInput) {
	outside, inside, left := float64(out.FaceOutside), float64(in.SeatDiameter), float64(out.ClampLeft)
	out.ClampForPull = quantity.Force((1 - float64(out.LoadShare)) * float64(in.PullAstern))
	out.ClampForBending = quantity.Force(8 * outside * float64(in.BendingMoment) / (outside*outside + inside*inside))
	out.MarginPull = margin(left, float64(out.ClampForPull))
	out.MarginBending = margin(left, float64(out.ClampForPull+out.ClampForBending))
}

// plenty is a margin over next to nothing, where a division would say less.
const plenty = 1000

// margin is a clamp over what is asked of it, plenty at most.
func margin(has, asked float64) quantity.Ratio {
	if asked*plenty <= has { // never for NaN
		return plenty
	}
	return quantity.Ratio(has / asked)
}

// hold finds what the bar that keeps the flange from turning has to bear.
func (out *OutputResult) hold(in *OutputInput) {
	out.HoldTorque = quantity.Torque(quantity.OrNaN(float64(max(in.NutTorque, in.LooseningTorque))))
	length, circle, d := quantity.OrNaN(float64(in.BarLength)), quantity.OrNaN(float64(in.BoltCircle)), quantity.OrNaN(float64(in.HoldBoltDiameter))
	rest := float64(out.HoldTorque) / length
	bolt := float64(out.HoldTorque)/circle + rest/2
	out.BarForce, out.HoldBoltForce = quantity.Force(rest), quantity.Force(bolt)
	bending := 32 * bolt * quantity.OrNaN(float64(in.StandOff)) / (math.Pi * d * d * d)
	shear := 4 * bolt / (math.Pi * d * d)
	out.HoldBoltUse = quantity.Ratio(math.Sqrt(bending*bending+3*shear*shear) / quantity.OrNaN(float64(in.HoldBoltYield)))
	h := quantity.OrNaN(float64(in.BarHeight))
	section := quantity.OrNaN(float64(in.BarThickness)) * (h*h*h - d*d*d) / (6 * h)
	out.BarUse = quantity.Ratio(rest * (length - circle/2) / section / quantity.OrNaN(float64(in.BarYield)))
}

// room finds the gap between the flanges that the work needs.
func (out *OutputResult) room(in *OutputInput) {
	socket, puller := quantity.OrNaN(float64(in.SocketLength)), quantity.OrNaN(float64(in.PullerLength))
	tool := socket + float64(in.DriverLength) - float64(in.NutRecess)
	out.GapNeeded = quantity.Length(max(tool, puller, quantity.OrNaN(float64(in.HubLength))+float64(in.StubLength)))
}
