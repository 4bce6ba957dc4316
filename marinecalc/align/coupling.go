// What the readings round a coupling say: Coupling and its results.

package align

import (
	"fmt"
	"math"

	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/quantity"
)

// CouplingResult is what Coupling finds. A figure whose readings are missing is
// NaN, and its text is empty. Clock positions are as in Reading.
type CouplingResult struct {
	GapDifference  quantity.Length // widest less narrowest gap of the fitted faces, over CouplingDiameter
	GapAllowed     quantity.Length // GapAllowance of CouplingDiameter; NaN when not given
	GapPerDiameter quantity.Ratio
	Widest         string // the code of its hour; empty when no gap is wider
	Angle          quantity.Angle
	GapVertical    quantity.Length // top less bottom
	GapHorizontal  quantity.Length // starboard (3 o'clock) less port (9 o'clock)

	Offset           quantity.Length // between the centre lines at the coupling
	OffsetTowards    string          // where the gearbox output flange stands off to
	OffsetVertical   quantity.Length // engine flange high
	OffsetHorizontal quantity.Length // gearbox output flange to starboard

	WorstGap            quantity.Length // gap difference in the worst position of the shaft; NaN when run-out is not known
	WorstGapPerDiameter quantity.Ratio
	WorstOffset         quantity.Length // the same of the offset
	GapRunOut           quantity.Length // what run-out adds to the gap difference there; what may be hidden where it was not told apart
	OffsetRunOut        quantity.Length

	RunOut            quantity.Length // total, NaN when not told apart
	RunOutPerDiameter quantity.Ratio
	Separation        string             // what the readings tell apart
	TurnCheck         string             // whether they fit the shaft being turned the way it was typed; empty when it was not turned
	GapOtherWay       quantity.Length    // gap difference had it been turned the other way; NaN where that is ruled out
	ClosureUse        quantity.Ratio     // the same of gaps and rim offsets, over what the gauge explains at most; NaN without one
	Closure           quantity.Length    // by how much sums of opposite gaps disagree; NaN without two pairs in one shaft turn
	WorstResidual     quantity.Length    // by how much the reading farthest from the fitted faces is off them; NaN without a reading to spare
	Worst             string             // where that is, or AllAlike
	WorstAt           quantity.Direction // NaN when several readings are as far off, or none is
	FitScatter        quantity.Length    // root of the squared residuals over the readings to spare; NaN when there are none

	ScatterRatio    quantity.Ratio // of the gaps about flat faces, over what their gauge explains; NaN without a gauge or a reading to spare
	RimScatterRatio quantity.Ratio // the same of the steps
	ScatterChance   quantity.Ratio // that sound gauges scatter as much, the less of the two

	WidestAt         quantity.Direction // 0 to 2π
	MeanGap          quantity.Length    // in the first shaft turn
	RunOutAt         quantity.Direction // where run-out opens the gap most, shaft in its first position
	OffsetAt         quantity.Direction
	RadiusDifference quantity.Length    // gearbox output flange larger in radius; with a dial, its zero
	RimRunOut        quantity.Length    // total, NaN when not told apart
	RimRunOutAt      quantity.Direction // where it stands proud, shaft in its first position

	PilotState string          // where the pilot was
	ShaftState string          // whether the shaft stood in the middle of tube and gland
	PilotGap   quantity.Length // gap difference that an engaged pilot may make of an offset it hides; 0 when it was clear

	PilotOffset quantity.Length // offset that a pilot may hide of which nobody said where it was; 0 where that was said

	DroopGapTaken    quantity.Length // of the droop, put back into GapVertical; NaN when the shaft end was held up
	DroopOffsetTaken quantity.Length // of the droop, taken off OffsetVertical; NaN when the shaft end was held up or the rim not read
}

// The codes of Separation, for which the schema of coupling-alignment has the words.
const (
	NotTurned       = "not-turned"
	TurnedTooLittle = "turned-too-little"
	ShaftFlangeTold = "shaft-flange"
	BothFlangesTold = "both-flanges"
)

// AllAlike is the code of Worst when no one reading stands out.
const AllAlike = "all-alike"

// Coupling finds how two coupling faces lie to each other, by least squares
// over all readings: a mean gap for each shaft turn, a part that stands fixed
// in the boat (misalignment) and, when the shaft was turned far enough, a part
// that turns with it (face run-out). The same is done for the steps at the
// rim, whose fixed part is the offset: half the total reading of a dial that
// sweeps the rim (Bloch and Geitner, Machinery Component Maintenance and
// Repair; McMillan, Rotating Machinery: Practical Solutions to Unbalance and
// Misalignment, p. 173).
//
// When the shaft's free end hung free, its droop is in the readings: it opens
// the gap at the bottom by D·tan(slope) and lets the gearbox output flange look too high
// by the droop. Both are taken out.
//
// When only the shaft coupling flange was turned, run-out of the gearbox output flange stands
// still and cannot be told from misalignment; Separation says so. A rigid
// flange is to be true in every position of the shaft: see WorstGap.
//
// A pilot in its recess takes the shaft's end into the gearbox's line: the
// offset is then not known, and may stand in the gap instead; see PilotGap. Where
// nobody said whether it was in, WorstOffset holds what it may hide as well. Of
// a shaft that lies against tube or gland nothing is said to hold.
//
// The error is a *problem.Error of everything wrong: values out of range, fewer
// than three clock positions, readings bunched in less than a half circle, one
// place read twice with different answers, a gap difference or offset over
// 5 % of the diameter.
func Coupling(in CouplingInput) (out CouplingResult, err error) {
	var gapRoom, rimRoom [enough]point
	gap, rim := in.read(gapRoom[:0], rimRoom[:0])
	if bad := in.usable(gap, rim); len(bad) > 0 {
		return CouplingResult{}, bad.Err()
	}
	var bad problem.List
	var face, circle plane
	gap.fitted(&face, nil, &bad, &gaps)
	if len(rim) > 0 {
		rim.fitted(&circle, gap, &bad, &steps)
	}
	out.takeDroop(&in, &face, &circle)
	d := float64(in.CouplingDiameter)
	tooFar(&bad, &gaps, "gap difference", 2*face.fixed.size(), d)
	tooFar(&bad, &steps, "offset", circle.fixed.size(), d)
	if len(bad) > 0 {
		return CouplingResult{}, bad.Err()
	}
	out.takeFace(&face, face.fixed.size(), &in)
	out.takeReadings(&face, &circle, gap, rim)
	out.takeSeparation(&face, &in)
	out.takeRim(&circle, circle.fixed.size())
	out.takeTurn(&in, &face, gap)
	out.GapAllowed = quantity.Length(math.NaN())
	if in.GapAllowance > 0 {
		out.GapAllowed = quantity.Length(in.GapAllowance) * in.CouplingDiameter
	}
	out.takeWorst(&in)
	s := in.setup(out.MeanGap)
	out.takeSetup(&s)
	return out, nil
}

// setup is how the coupling stood, with its faces so far apart.
func (in *CouplingInput) setup(apart quantity.Length) setup {
	s := setup{pilot: in.Pilot, depth: in.PilotDepth, apart: apart, centred: in.ShaftCentred, flexible: in.CouplingKind == Flexible, free: in.FreeLength, hidden: in.HiddenOffset, diameter: in.CouplingDiameter}
	s.look()
	return s
}

// fitted is fit with the refusal put into words.
func (p points) fitted(f *plane, known points, bad *problem.List, s *series) {
	if !p.fit(f, known) {
		refuseLean(bad, s)
	}
}

// fittedBy is fitted by the design of the places, which is made anew where it is
// of others.
func (p points) fittedBy(d *design, f *plane, known points, bad *problem.List, s *series) {
	if !d.of(p) {
		d.take(p, known)
	}
	if !d.fit(f, p) {
		refuseLean(bad, s)
	}
}

func refuseLean(bad *problem.List, s *series) {
	bad.Add(s.list, "the readings do not tell which way the coupling leans", "readings all round in one position of the shaft", "read at 12, 3, 6 and 9 o'clock before turning the shaft")
}

// takeDroop takes what the droop of the shaft's end does out of the fits.
func (out *CouplingResult) takeDroop(in *CouplingInput, face, circle *plane) {
	out.DroopGapTaken, out.DroopOffsetTaken = quantity.Length(math.NaN()), quantity.Length(math.NaN())
	if in.ShaftEnd != HangingFree {
		return
	}
	gap := float64(in.CouplingDiameter) * math.Tan(float64(in.DroopSlope))
	out.DroopGapTaken = quantity.Length(gap)
	face.fixed.up += gap / 2
	if len(in.RimReadings) > 0 {
		out.DroopOffsetTaken = in.DroopSag
		circle.fixed.up -= float64(in.DroopSag)
	}
}

func tooFar(bad *problem.List, s *series, what string, found, diameter float64) {
	if found > steepest*diameter {
		bad.Add(s.list, fmt.Sprintf("the %s they give is %.4g mm, over 5 %% of the coupling diameter", what, 1000*found), fmt.Sprintf("up to %.4g mm", 1000*steepest*diameter), "is a unit or a decimal point wrong?")
	}
}

// takeFace writes the misalignment of the faces; half is half the gap
// difference, which is that of the fit or what it may truly be.
func (out *CouplingResult) takeFace(f *plane, half float64, in *CouplingInput) {
	lean := vector{2 * f.fixed.up, 2 * f.fixed.right} // from one side to the other
	d := float64(in.CouplingDiameter)
	out.GapVertical, out.GapHorizontal = quantity.Length(lean.up), quantity.Length(lean.right)
	out.GapDifference = quantity.Length(2 * half)
	out.GapPerDiameter = quantity.Ratio(2 * half / d)
	out.Angle = quantity.Angle(math.Atan(2 * half / d))
	out.WidestAt = quantity.Direction(lean.clock())
	out.Widest = hour(lean, out.WidestAt)
	out.MeanGap = quantity.Length(f.mean)
}

// takeReadings writes what the readings say of themselves.
func (out *CouplingResult) takeReadings(face, circle *plane, gap, rim points) {
	gap.inspect(face)
	out.Closure = quantity.Length(face.closure)
	out.WorstResidual, out.WorstAt = quantity.Length(face.worst), quantity.Direction(face.worstAt)
	switch {
	case !math.IsNaN(face.worstAt):
		out.Worst = hours[hourOf(face.worstAt)]
	case face.worst > 0:
		out.Worst = AllAlike
	}
	out.FitScatter = quantity.Length(face.scatter)
	if face.spare < 1 { // a plane goes through any three readings
		out.WorstResidual = quantity.Length(math.NaN())
	}
	if len(rim) > 0 {
		rim.inspect(circle)
	}
	use := face.excess(len(gap), gap[0].sd)
	if len(rim) > 0 {
		use = both(use, circle.excess(len(rim), rim[0].sd))
	}
	out.ClosureUse = quantity.Ratio(use)
	out.takeStrain(face, circle, len(rim) > 0)
}

// takeStrain takes how far the readings scatter, against their gauge.
func (out *CouplingResult) takeStrain(face, circle *plane, rim bool) {
	ratio, chance := face.strain()
	out.ScatterRatio, out.ScatterChance, out.RimScatterRatio = quantity.Ratio(ratio), quantity.Ratio(chance), quantity.Ratio(math.NaN())
	if rim {
		ratio, chance = circle.strain()
		out.RimScatterRatio = quantity.Ratio(ratio)
		if !(float64(out.ScatterChance) <= chance) {
			out.ScatterChance = quantity.Ratio(chance)
		}
	}
}

// takeSeparation writes the run-out of the face, where it is told apart.
func (out *CouplingResult) takeSeparation(f *plane, in *CouplingInput) {
	out.RunOut, out.RunOutAt, out.RunOutPerDiameter = quantity.Length(math.NaN()), quantity.Direction(math.NaN()), quantity.Ratio(math.NaN())
	switch {
	case f.turns < 2:
		out.Separation = NotTurned
		return
	case !f.apart:
		out.Separation = TurnedTooLittle
		return
	case in.Turned == BothFlanges:
		out.Separation = BothFlangesTold
	default:
		out.Separation = ShaftFlangeTold
	}
	out.RunOut = quantity.Length(2 * f.turning.size())
	out.RunOutAt = quantity.Direction(f.turning.clock())
}

// takeTurn says whether the readings fit the way the shaft was turned.
func (out *CouplingResult) takeTurn(in *CouplingInput, face *plane, gap points) {
	out.GapOtherWay = quantity.Length(math.NaN())
	if !face.apart {
		return
	}
	var other vector
	if out.TurnCheck, other = gap.turnCheck(face); out.TurnCheck != TurnAgrees {
		if in.ShaftEnd == HangingFree {
			other.up += float64(out.DroopGapTaken) / 2
		}
		out.GapOtherWay = quantity.Length(2 * other.size())
	}
}

// takeRim writes the offset; its size is that of the fit or what it may truly
// be.
func (out *CouplingResult) takeRim(f *plane, size float64) {
	nan := math.NaN()
	out.Offset, out.OffsetVertical, out.OffsetHorizontal = quantity.Length(nan), quantity.Length(nan), quantity.Length(nan)
	out.OffsetAt, out.RadiusDifference = quantity.Direction(nan), quantity.Length(nan)
	out.RimRunOut, out.RimRunOutAt = quantity.Length(nan), quantity.Direction(nan)
	if f.turns == 0 {
		return // not read
	}
	out.OffsetVertical, out.OffsetHorizontal = quantity.Length(f.fixed.up), quantity.Length(f.fixed.right)
	out.Offset = quantity.Length(size)
	out.OffsetAt = quantity.Direction(f.fixed.clock())
	out.OffsetTowards = hour(f.fixed, out.OffsetAt)
	out.RadiusDifference = quantity.Length(f.mean)
	if f.apart {
		out.RimRunOut = quantity.Length(2 * f.turning.size())
		out.RimRunOutAt = quantity.Direction(f.turning.clock())
	}
}

// takeWorst writes how far the flanges stand apart at worst, whichever way
// the shaft stands: what a feeler meets once in a turn. Run-out that was told
// apart adds to the misalignment. Where it was not, what was read holds as much
// of it as may be hidden either way, so that it counts twice. A flexible
// coupling turns with its run-out and is not worked by it; there only what may
// be hidden counts. What a dial read of the flange by itself is its run-out too,
// where the gaps do not tell it; where it points is then not known.
func (out *CouplingResult) takeWorst(in *CouplingInput) {
	face, rim := out.RunOut, out.RimRunOut
	if math.IsNaN(float64(out.RunOutAt)) { // not told apart
		face = 2 * max(in.KnownFaceRunOut, 0)
		if in.CouplingKind == Flexible {
			face /= 2
		}
		if in.FaceRunOutRead {
			out.RunOut = in.KnownFaceRunOut
		}
	} else if in.CouplingKind == Flexible {
		face = 0
	}
	out.RunOutPerDiameter = quantity.Ratio(out.RunOut / in.CouplingDiameter)
	if math.IsNaN(float64(out.RimRunOutAt)) {
		rim = 2 * max(in.KnownRimRunOut, 0)
		if in.CouplingKind == Flexible {
			rim /= 2
		}
		if in.RimRunOutRead {
			out.RimRunOut = in.KnownRimRunOut
		}
	} else if in.CouplingKind == Flexible {
		rim = 0
	}
	out.GapRunOut, out.OffsetRunOut = face, rim/2 // a rim that runs out by so much in all is half as far off its shaft
	out.WorstGap = out.GapDifference + face
	out.WorstOffset = out.Offset + out.OffsetRunOut
	out.contradicted(out.ClosureUse)
}

// contradicted takes back what readings tell that contradict each other by far
// more than their gauge explains.
func (out *CouplingResult) contradicted(use quantity.Ratio) {
	if use > farBeyond {
		nan := math.NaN()
		out.WorstGap, out.WorstGapPerDiameter, out.WorstOffset = quantity.Length(nan), quantity.Ratio(nan), quantity.Length(nan)
		out.RunOut, out.RunOutPerDiameter, out.RimRunOut = quantity.Length(nan), quantity.Ratio(nan), quantity.Length(nan)
	}
}

// GapAt gives the gap of the fitted faces at a clock position, misalignment
// alone, with the faces as far apart as in the first shaft turn.
func GapAt(m CouplingResult, clock quantity.Direction) quantity.Length {
	half := vector{float64(m.GapVertical) / 2, float64(m.GapHorizontal) / 2}
	return m.MeanGap + quantity.Length(half.at(float64(clock)))
}
