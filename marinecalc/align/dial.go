// Rim and face by dial: Dial.

package align

import (
	"math"

	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/quantity"
)

// Carrier says which flange the dial's bracket is clamped to. The dial touches
// the other one.
type Carrier string

// What may carry the dial.
const (
	OnShaft  Carrier = "shaft-flange"
	OnEngine Carrier = "engine-flange"
)

// Sweep says what was turned to take the dial round.
type Sweep string

// How the dial may be taken round.
const (
	SweptTogether Sweep = "together"  // both flanges by the same angle: the dial stays on one spot, and run-out drops out
	CarrierTurned Sweep = "dial-half" // the one with the dial: run-out of the one it touches is read as misalignment
	OtherTurned   Sweep = "other"     // the one it touches: that shows its run-out alone
)

// Touched says which side of the flange the face dial touches.
type Touched string

// Where it may touch.
const (
	Front Touched = "front" // the face that is bolted
	Back  Touched = "back"
)

// Counted says which way the clock positions go.
type Counted string

// How they may be counted.
const (
	LookingForward Counted = "looking-forward"
	LookingAft     Counted = "looking-aft"
)

// DialReading is what the dials show at one place. Plus: the plunger is pushed
// in. Any zero will do; the rule is zero at the top.
type DialReading struct {
	Clock quantity.Direction // of the dials, from the top; 0 to 2π
	Face  quantity.Length    // along the shaft, -50 to 50 mm
	Rim   quantity.Length    `unset:"NaN"` // across it, -50 to 50 mm; NaN: not read

	FaceUncertainty quantity.Length `spreadOf:"face"` // standard uncertainty of its gauge; 0: not known
	RimUncertainty  quantity.Length `spreadOf:"rim"`
}

// DialInput is what dials showed round a coupling.
type DialInput struct {
	DialReadings          []DialReading   // 4 to 96; a last one where the first was taken is the return to zero
	DialRadius            quantity.Length // of the face dial's circle, 10 mm to 0.6 m
	DialOn                Carrier         // empty: OnShaft
	Swept                 Sweep
	FaceTouched           Touched         // empty: Front
	CountedFrom           Counted         // empty: LookingForward
	BarSagRim             quantity.Length `unset:"NaN"` // what the rim dial shows at the bottom of a straight pipe, zero at its top, -10 to 10 mm; NaN: not measured
	BarSagFace            quantity.Length `unset:"NaN"` // the same of the face dial
	RimReadAft            quantity.Length // aft of the gearbox flange's face, where the rim dial runs; minus: forward; up to 0.3 m
	StandingFaceUp        quantity.Length // of a flange that does not turn: gap that its run-out opens at the top, less at the bottom, over CouplingDiameter, up to 10 mm
	StandingFaceStarboard quantity.Length // the same to starboard
	StandingRimUp         quantity.Length // by how much its rim stands off centre upward, up to 10 mm
	StandingRimStarboard  quantity.Length // the same to starboard

	CouplingDiameter quantity.Length // that gap differences are for, 30 mm to 800 mm
	CouplingKind     Kind
	GapAllowance     quantity.Ratio  // as in CouplingInput, as all below
	ShaftEnd         End             // empty: HeldUp
	DroopSlope       quantity.Angle  // needed when it hung free
	DroopSag         quantity.Length // needed when it hung free and the rim was read
	Pilot            Pilot
	PilotDepth       quantity.Length
	FacesApart       quantity.Length // 0: not known, up to 0.3 m
	ShaftCentred     Centred
	FreeLength       quantity.Length
	HiddenOffset     quantity.Length `unset:"NaN"`
	KnownFaceRunOut  quantity.Length `unset:"NaN"` // total, of the flanges; NaN: not known
	KnownRimRunOut   quantity.Length `unset:"NaN"`
}

// DialResult is what Dial finds; figures are as in CouplingResult.
type DialResult struct {
	GapDifference  quantity.Length
	GapAllowed     quantity.Length
	GapPerDiameter quantity.Ratio
	Widest         string
	WidestAt       quantity.Direction
	Angle          quantity.Angle
	GapVertical    quantity.Length
	GapHorizontal  quantity.Length

	Offset           quantity.Length
	OffsetTowards    string
	OffsetAt         quantity.Direction
	OffsetVertical   quantity.Length
	OffsetHorizontal quantity.Length

	WorstGap            quantity.Length
	WorstGapPerDiameter quantity.Ratio
	WorstOffset         quantity.Length
	GapRunOut           quantity.Length
	OffsetRunOut        quantity.Length

	SweepCheck  string // what run-out does to these readings
	PilotState  string
	ShaftState  string
	PilotGap    quantity.Length
	PilotOffset quantity.Length

	FaceClosure     quantity.Length // by how much sums of opposite face readings disagree; NaN without two pairs
	RimClosure      quantity.Length
	FaceReturn      quantity.Length // last less first reading, taken at one place; NaN when it was not taken twice
	RimReturn       quantity.Length
	ClosureUse      quantity.Ratio // the greatest of these over what the gauge explains at most; NaN without one
	ScatterRatio    quantity.Ratio
	RimScatterRatio quantity.Ratio
	ScatterChance   quantity.Ratio

	SagOffsetTaken   quantity.Length // what the bar's sag made of the offset, taken off; plus: engine flange read too high
	SagGapTaken      quantity.Length // the same of GapVertical
	DroopGapTaken    quantity.Length
	DroopOffsetTaken quantity.Length
}

// The codes of SweepCheck, for which the schema of dial-alignment has the words.
const (
	RunOutDropsOut = "drops-out"
	RunOutIsIn     = "is-in"
)

var (
	faceSeries = series{"/dialReadings", "face", "the face reading", "-50 mm to 50 mm"}
	rimSeries  = series{"/dialReadings", "rim", "the rim reading", "-50 mm to 50 mm"}
)

// mostDial is the most a dial shows, in m.
const mostDial = 0.05

// Dial finds how two coupling flanges lie to each other from dials that one of
// them carries round the other: rim and face (Bloch and Geitner, Machinery
// Component Maintenance and Repair, ch. 5). Opposite face readings differ by
// the angle times the dial's circle, opposite rim readings by twice the offset.
//
// With both flanges turned together each dial stays on one spot of the other,
// so that neither flange's run-out is read. With the one turned that carries the
// dial, run-out of the one that stands is read as misalignment. With the other
// one turned nothing of the alignment is read, which is refused.
//
// A bar that sags by s shows 2s at the bottom of a straight pipe; by half of
// what it shows there the offset is wrong, and in the same way the gap.
//
// The error is a *problem.Error of everything wrong, as of Coupling.
func Dial(in DialInput) (DialResult, error) {
	var t DialTrials
	return t.Run(in)
}

// DialTrials are many of one coupling: the first run is Dial, the others are
// the coupling as it may truly stand about that, as in Trials.
type DialTrials struct {
	best      *CouplingResult
	found     DialResult
	laid      layings
	gap, rim  design
	gapPoints points
	rimPoints points
}

// Run is the next one.
func (t *DialTrials) Run(in DialInput) (DialResult, error) {
	as := in.coupling()
	gap, rim := in.points(t.gapPoints[:0], t.rimPoints[:0])
	t.gapPoints, t.rimPoints = gap, rim
	if bad := in.usable(&as, gap, rim); len(bad) > 0 {
		return DialResult{}, bad.Err()
	}
	k := in.scaled(gap, rim)
	var bad problem.List
	var face, circle plane
	gap.fittedBy(&t.gap, &face, nil, &bad, &faceSeries)
	if len(rim) > 0 {
		rim.fittedBy(&t.rim, &circle, gap, &bad, &rimSeries)
	}
	if len(bad) > 0 {
		return DialResult{}, bad.Err()
	}
	var out CouplingResult
	first := t.best == nil
	if first {
		out.inspectDials(&face, &circle, gap, rim)
		t.found = DialResult{}
		t.found.takeClosure(&in, &face, &circle, gap, rim, k)
	} else {
		out = *t.best
	}
	laid := in.lay(k)
	face.fixed.take(laid.face)
	circle.fixed.take(laid.circle)
	in.carryToFace(&face, &circle)
	out.takeDroop(&as, &face, &circle)
	d := float64(in.CouplingDiameter)
	if first {
		tooFar(&bad, &faceSeries, "gap difference", 2*face.fixed.size(), d)
		tooFar(&bad, &rimSeries, "offset", circle.fixed.size(), d)
		if len(bad) > 0 {
			return DialResult{}, bad.Err()
		}
		out.takeFace(&face, face.fixed.size(), &as)
		out.takeRim(&circle, circle.fixed.size())
		kept := out
		t.best, t.laid = &kept, laid
	} else {
		faceMoved, circleMoved := t.laid.face, t.laid.circle
		faceMoved.take(laid.face)
		circleMoved.take(laid.circle)
		aft := 2 * float64(in.RimReadAft) / d
		circleMoved.take(vector{faceMoved.up * aft, faceMoved.right * aft})
		out.lieAbout(t.best, &as, &face, &circle, faceMoved, circleMoved)
	}
	out.GapAllowed = quantity.Length(quantity.OrNaN(float64(in.GapAllowance))) * in.CouplingDiameter
	out.takeSwept(&in)
	out.contradicted(t.found.ClosureUse)
	s := as.setup(in.FacesApart)
	out.takeSetup(&s)
	return in.result(&t.found, &out, &laid), nil
}

// coupling is what the same coupling is asked when it is read by feeler.
func (in *DialInput) coupling() CouplingInput {
	as := CouplingInput{CouplingDiameter: in.CouplingDiameter, CouplingKind: in.CouplingKind, GapAllowance: in.GapAllowance,
		ShaftEnd: in.ShaftEnd, DroopSlope: in.DroopSlope, DroopSag: in.DroopSag, Pilot: in.Pilot, PilotDepth: in.PilotDepth, ShaftCentred: in.ShaftCentred,
		FreeLength: in.FreeLength, HiddenOffset: in.HiddenOffset, KnownFaceRunOut: in.KnownFaceRunOut, KnownRimRunOut: in.KnownRimRunOut}
	for i := range in.DialReadings {
		if !math.IsNaN(float64(in.DialReadings[i].Rim)) {
			as.RimReadings = aRim
			break
		}
	}
	return as
}

// aRim says that the rim was read.
var aRim = make([]RimReading, 1)

// points are the readings, by clock positions looking forward.
func (in *DialInput) points(gap, rim points) (points, points) {
	for i := range in.DialReadings {
		r := &in.DialReadings[i]
		clock := r.Clock
		if in.CountedFrom == LookingAft {
			clock = 2*math.Pi - clock
		}
		gap = gap.with(clock, 0, r.Face, r.FaceUncertainty)
		if !math.IsNaN(float64(r.Rim)) {
			rim = rim.with(clock, 0, r.Rim, r.RimUncertainty)
		}
	}
	return gap, rim
}

// scaled turns face readings into gaps over the coupling's diameter, and gives
// the factor; rim readings into steps where the engine's flange stands proud.
func (in *DialInput) scaled(gap, rim points) (k float64) {
	k = -float64(in.CouplingDiameter) / (2 * float64(in.DialRadius))
	if in.FaceTouched == Back {
		k = -k
	}
	for i := range gap {
		gap[i].value *= k
		gap[i].sd *= math.Abs(k)
	}
	if in.DialOn == OnEngine {
		for i := range rim {
			rim[i].value = -rim[i].value
		}
	}
	return k
}

// inspectDials is takeReadings for dials.
func (out *CouplingResult) inspectDials(face, circle *plane, gap, rim points) {
	gap.inspectBy(face)
	if len(rim) > 0 {
		rim.inspectBy(circle)
	}
	out.takeStrain(face, circle, len(rim) > 0)
}

// inspectBy fits anew, since a fit by design leaves no rows, and inspects.
func (p points) inspectBy(f *plane) {
	var again plane
	p.fit(&again, nil)
	p.inspect(&again)
	*f = again
}

// takeClosure writes what the readings say of themselves.
func (out *DialResult) takeClosure(in *DialInput, face, circle *plane, gap, rim points, k float64) {
	nan := quantity.Length(math.NaN())
	out.FaceClosure, out.RimClosure, out.FaceReturn, out.RimReturn = quantity.Length(face.closure/math.Abs(k)), nan, nan, nan
	if len(rim) > 0 {
		out.RimClosure = quantity.Length(circle.closure)
	}
	first, last := &in.DialReadings[0], &in.DialReadings[len(in.DialReadings)-1]
	if len(in.DialReadings) > fewest && apart(float64(first.Clock), float64(last.Clock)) < sameReading {
		out.FaceReturn, out.RimReturn = last.Face-first.Face, last.Rim-first.Rim
	}
	out.ClosureUse = quantity.Ratio(math.NaN())
	use := func(by, sd quantity.Length, readings float64) {
		most := readings * math.Sqrt(3) * float64(sd) // half width of an even spread
		if u := quantity.Ratio(math.Abs(float64(by)) / quantity.OrNaN(most)); !(out.ClosureUse >= u) && !math.IsNaN(float64(u)) {
			out.ClosureUse = u
		}
	}
	use(out.FaceClosure, first.FaceUncertainty, 4)
	use(out.RimClosure, first.RimUncertainty, 4)
	use(out.FaceReturn, first.FaceUncertainty, 2)
	use(out.RimReturn, first.RimUncertainty, 2)
	if math.IsNaN(face.closure) && !(out.ClosureUse > 1) { // the rim was read at the same places
		out.ClosureUse = quantity.Ratio(math.NaN()) // the return to zero tells a slip, no misreading
	}
}

// takeSwept writes what run-out does: these readings do not tell it. Bolted up
// a rigid coupling works by that of its flanges as well.
func (out *CouplingResult) takeSwept(in *DialInput) {
	face, rim := max(in.KnownFaceRunOut, 0), max(in.KnownRimRunOut, 0)
	if in.CouplingKind == Flexible {
		face, rim = 0, 0
	}
	out.GapRunOut, out.OffsetRunOut = face, rim/2
	out.WorstGap = out.GapDifference + face
	out.WorstOffset = out.Offset + out.OffsetRunOut
}

// nanWhere is a figure, or none.
func nanWhere(none bool, v float64) float64 {
	if none {
		return math.NaN()
	}
	return v
}

// result is what is told.
func (in *DialInput) result(found *DialResult, c *CouplingResult, laid *layings) DialResult {
	out := *found
	out.GapDifference, out.GapAllowed, out.GapPerDiameter = c.GapDifference, c.GapAllowed, c.GapPerDiameter
	out.Widest, out.WidestAt, out.Angle, out.GapVertical, out.GapHorizontal = c.Widest, c.WidestAt, c.Angle, c.GapVertical, c.GapHorizontal
	out.Offset, out.OffsetTowards, out.OffsetAt = c.Offset, c.OffsetTowards, c.OffsetAt
	out.OffsetVertical, out.OffsetHorizontal = c.OffsetVertical, c.OffsetHorizontal
	out.WorstGap, out.WorstGapPerDiameter, out.WorstOffset = c.WorstGap, c.WorstGapPerDiameter, c.WorstOffset
	out.GapRunOut, out.OffsetRunOut = c.GapRunOut, c.OffsetRunOut
	out.PilotState, out.ShaftState, out.PilotGap, out.PilotOffset = c.PilotState, c.ShaftState, c.PilotGap, c.PilotOffset
	out.ScatterRatio, out.RimScatterRatio, out.ScatterChance = c.ScatterRatio, c.RimScatterRatio, c.ScatterChance
	out.DroopGapTaken, out.DroopOffsetTaken = c.DroopGapTaken, c.DroopOffsetTaken
	out.SagGapTaken, out.SagOffsetTaken = quantity.Length(laid.sagGap), quantity.Length(nanWhere(math.IsNaN(float64(in.DialReadings[0].Rim)), laid.sagOffset))
	if out.SweepCheck = RunOutDropsOut; in.Swept == CarrierTurned {
		out.SweepCheck = RunOutIsIn
	}
	return out
}
