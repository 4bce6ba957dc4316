package flange

import (
	"fmt"
	"math"
	"strconv"

	"example.org/driveline/marinecalc/fastener"
	"example.org/driveline/marinecalc/problem"
)

// hair is how far its accuracy may take a small reading below nothing, in m.
const hair = 0.0003

// validate lists everything that cannot be.
func (in *OutputInput) validate() error {
	var faults problem.List
	d, p := float64(in.NominalDiameter), float64(in.Pitch)
	faults.Above("/nominalDiameter", "diameter of the nut's thread", d)
	faults.Above("/pitch", "pitch of the nut's thread", p)
	if in.ThreadForm != fastener.Metric && in.ThreadForm != fastener.Inch {
		faults.Add("/threadForm", "the thread's standard is missing or unknown", "metric, inch", "")
	}
	faults.Above("/seatDiameter", "diameter of the shaft inside the stack", float64(in.SeatDiameter))
	faults.Above("/torqueScatter", "scatter at a set torque", float64(in.TorqueScatter))
	faults.Above("/turnScatter", "scatter of the turn", float64(in.TurnScatter))
	faults.Above("/shaftModulus", "elastic modulus of the shaft", float64(in.ShaftModulus))
	faults.Above("/stackModulus", "elastic modulus of the stack", float64(in.StackModulus))
	for _, c := range [...]struct {
		where, name string
		v           float64
	}{
		{"/nutTorque", "torque of the nut", float64(in.NutTorque)}, {"/nutTurn", "turn of the nut", float64(in.NutTurn)},
		{"/looseningTorque", "torque at which the nut moved", float64(in.LooseningTorque)}, {"/nutFactor", "nut factor", float64(in.NutFactor)},
		{"/nutFaceDiameter", "outside of the nut's face", float64(in.NutFaceDiameter)},
		{"/permittedBearingStress", "allowed pressure under the nut", float64(in.PermittedBearingStress)},
		{"/hubDiameter", "diameter of the hub", float64(in.HubDiameter)},
		{"/ringDiameter", "diameter of the bearing ring", float64(in.RingDiameter)},
		{"/spacerDiameter", "diameter of the spacer", float64(in.SpacerDiameter)}, {"/faceDiameter", "outside of the clamped face", float64(in.FaceDiameter)},
		{"/runningTime", "running time", float64(in.RunningTime)}, {"/shaftTorque", "steady torque", float64(in.ShaftTorque)}, {"/peakTorque", "peak torque", float64(in.PeakTorque)},
		{"/driveDepth", "depth of a flank", float64(in.DriveDepth)}, {"/driveLength", "length of spline or key", float64(in.DriveLength)},
		{"/driveDiameter", "mean diameter of spline or key", float64(in.DriveDiameter)}, {"/permittedPressure", "allowed pressure on the flanks", float64(in.PermittedPressure)},
		{"/shaftYieldStrength", "yield strength of the shaft", float64(in.ShaftYieldStrength)}, {"/barLength", "length of the bar", float64(in.BarLength)},
		{"/boltCircle", "bolt circle", float64(in.BoltCircle)}, {"/holdBoltDiameter", "diameter of the holding bolts", float64(in.HoldBoltDiameter)},
		{"/holdBoltYield", "yield strength of the holding bolts", float64(in.HoldBoltYield)}, {"/standOff", "distance of the bar from the flange", float64(in.StandOff)},
		{"/barThickness", "thickness of the bar", float64(in.BarThickness)}, {"/barHeight", "height of the bar", float64(in.BarHeight)},
		{"/barYield", "yield strength of the bar", float64(in.BarYield)}, {"/socketLength", "length of the socket", float64(in.SocketLength)},

		{"/pullerLength", "length of the puller", float64(in.PullerLength)},
	} {
		faults.NotNegative(c.where, c.name, c.v)
	}
	for _, c := range [...]struct {
		where, name string
		v           float64
	}{
		{"/hubLength", "length of the hub", float64(in.HubLength)}, {"/ringLength", "length of the bearing ring", float64(in.RingLength)},
		{"/spacerLength", "length of the spacer", float64(in.SpacerLength)}, {"/driverLength", "length behind the socket", float64(in.DriverLength)},
		{"/nutRecess", "depth of the nut in the flange", float64(in.NutRecess)}, {"/stubLength", "length of the shaft's end", float64(in.StubLength)},
	} {
		faults.NotNegative(c.where, c.name, c.v+hair)
	}
	for _, c := range [...]struct {
		where, name string
		v, least    float64
	}{
		{"/faceWear", "face wear", float64(in.FaceWear), -hair}, {"/earlierWear", "face wear of the earlier reading", float64(in.EarlierWear), -hair},
		{"/pullAstern", "pull astern", float64(in.PullAstern), 0}, {"/bendingMoment", "bending moment", float64(in.BendingMoment), 0},
	} {
		if !(c.v >= c.least) && !math.IsNaN(c.v) || math.IsInf(c.v, 1) {
			faults.Add(c.where, "the "+c.name+" is negative or not a number", "0 or more", "")
		}
	}
	in.validateShares(&faults)
	if len(faults) == 0 {
		in.validateStack(&faults)
	}
	return faults.Err()
}

func (in *OutputInput) validateShares(faults *problem.List) {
	for _, c := range [...]struct {
		where, name string
		v           float64
	}{{"/faceFriction", "friction of the faces", float64(in.FaceFriction)}, {"/threadFriction", "friction in the thread", float64(in.ThreadFriction)}, {"/nutFriction", "friction under the nut", float64(in.NutFriction)}} {
		if !(c.v >= 0 && c.v < 1) {
			faults.Add(c.where, "the "+c.name+" is no coefficient of friction", "0 for not given, up to 1", "")
		}
	}
	faults.Share("/teethBearing", "share of the teeth that bear", float64(in.TeethBearing))
	if in.DriveTeeth < 0 || in.DriveTeeth > 200 {
		faults.Add("/driveTeeth", fmt.Sprintf("%d teeth or keys cannot be", in.DriveTeeth), "up to 200", "0 for not given")
	}
	if in.FrictionFaces < 0 || in.FrictionFaces > 2 {
		faults.Add("/frictionFaces", fmt.Sprintf("%d faces cannot pass torque to the shaft", in.FrictionFaces), "1 or 2", "")
	}
	if in.Drive != Spline && in.Drive != Key && in.Drive != Friction {
		faults.Add("/drive", "what turns the hub is missing or unknown", "spline, key, none", "")
	}
}

// validateStack lists what does not go together.
func (in *OutputInput) validateStack(faults *problem.List) {
	d, seat, bore := float64(in.NominalDiameter), float64(in.SeatDiameter), float64(in.ShaftBore)
	_, d3 := in.diameters()
	if d3 <= 0 {
		faults.Add("/pitch", "a pitch of "+problem.Millimetres(float64(in.Pitch))+" leaves nothing of a thread of "+problem.Millimetres(d), "a finer one", "threads per inch are one inch divided by them")
		return
	}
	if !(bore >= 0 && bore < d3) {
		faults.Add("/shaftBore", "a bore of "+problem.Millimetres(bore)+" leaves nothing of the thread's root of "+problem.Millimetres(d3), "0, up to the root", "")
	}
	if seat < d3 {
		faults.Add("/seatDiameter", "a stack with a bore of "+problem.Millimetres(seat)+" does not go over a thread of "+problem.Millimetres(d), "about "+problem.Millimetres(d)+" or more", "the shaft inside the hub, at the root of its spline")
	}
	in.validateTightening(faults, d3)
	if in.NutTorque == 0 && in.NutTurn == 0 {
		faults.Add("/nutTorque", "neither torque nor turn of the nut is known", "above 0", "the gearbox maker's torque for this nut")
	}
	if (in.NutTorque > 0 || in.LooseningTorque > 0) && in.NutFactor == 0 && (in.ThreadFriction == 0 || in.NutFriction == 0) {
		faults.Add("/nutFactor", "the nut factor is missing", "above 0", "choose the state of the thread")
	}
	for _, part := range [...]struct {
		where, name     string
		length, outside float64
	}{
		{"/hubDiameter", "hub", float64(in.HubLength), float64(in.HubDiameter)}, {"/ringDiameter", "bearing ring", float64(in.RingLength), float64(in.RingDiameter)},
		{"/spacerDiameter", "spacer", float64(in.SpacerLength), float64(in.SpacerDiameter)}, {"/faceDiameter", "clamped face", 0, float64(in.FaceDiameter)},
		{"/nutFaceDiameter", "nut's face", 0, float64(in.NutFaceDiameter)},
	} {
		if part.outside > 0 && part.outside <= seat {
			faults.Add(part.where, "a "+part.name+" of "+problem.Millimetres(part.outside)+" has no wall over a shaft of "+problem.Millimetres(seat), "above "+problem.Millimetres(seat), "")
		}
	}
	if l, t := float64(in.HubLength+in.RingLength+in.SpacerLength), float64(in.ThreadInside); !(t >= 0 && (t <= l || in.HubLength == 0)) {
		faults.Add("/threadInside", problem.Millimetres(t)+" of thread do not go into a stack of "+problem.Millimetres(l), "0, up to the stack's length", "")
	}
	in.validateBar(faults)
}

const (
	strongest  = 2.5e9 // Pa, above the yield strength of any steel: maraging steels have about 2.4 GPa, from memory
	faceShare  = 10    // torque of the nut over what of it twists its thread, more than any face takes
	mostStrain = 0.02  // of a stack, beyond what any steel gives before it yields: strongest over 207 GPa is 0.012
)

// validateTightening lists what no shaft bears, whatever its steel: it would
// have any clamp that one types.
func (in *OutputInput) validateTightening(faults *problem.List, root float64) {
	most := faceShare * math.Pi / 12 * root * root * root * strongest / math.Sqrt(3) // the root twisted through
	for _, c := range [...]struct {
		where string
		v     float64
	}{{"/nutTorque", float64(in.NutTorque)}, {"/looseningTorque", float64(in.LooseningTorque)}} {
		if c.v > most {
			faults.Add(c.where, fmt.Sprintf("%.4g N·m would twist a thread of %s off its shaft", c.v, problem.Millimetres(float64(in.NominalDiameter))), fmt.Sprintf("up to %.3g N·m", most), "mind the unit and the thread")
		}
	}
	stack := float64(in.HubLength + in.RingLength + in.SpacerLength)
	if in.HubLength == 0 {
		stack = 0 // not known
	}
	if drawn := float64(in.NutTurn) / (2 * math.Pi) * float64(in.Pitch); stack > 0 && drawn > mostStrain*stack {
		faults.Add("/nutTurn", "a turn that draws "+problem.Millimetres(drawn)+" out of a stack of "+problem.Millimetres(stack)+" tears the shaft", "up to "+strconv.FormatFloat(360*mostStrain*stack/float64(in.Pitch), 'f', 0, 64)+"°", "from snug, with the whole stack seated")
	}
}

func (in *OutputInput) validateBar(faults *problem.List) {
	if l, c := float64(in.BarLength), float64(in.BoltCircle); l > 0 && c > 0 && l <= c/2 {
		faults.Add("/barLength", "a bar of "+problem.Millimetres(l)+" ends inside a bolt circle of "+problem.Millimetres(c), "above "+problem.Millimetres(c/2), "from the shaft's middle to where it rests")
	}
	if h, d := float64(in.BarHeight), float64(in.HoldBoltDiameter); h > 0 && d >= h {
		faults.Add("/barHeight", "bolts of "+problem.Millimetres(d)+" leave nothing of a bar "+problem.Millimetres(h)+" high", "above "+problem.Millimetres(d), "")
	}
}
