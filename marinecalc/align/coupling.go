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
	GapAllowed     quantity.Length // GapAllowance of CouplingDiameter; NaN for a flexible coupling
	GapPerDiameter quantity.Ratio
	Widest         string // "about 2 o'clock"; empty when no gap is wider
	Angle          quantity.Angle
	GapVertical    quantity.Length // top less bottom
	GapHorizontal  quantity.Length // starboard (3 o'clock) less port (9 o'clock)

	Offset           quantity.Length // between the centre lines at the coupling
	OffsetTowards    string          // where the gearbox output flange stands off to
	OffsetVertical   quantity.Length // engine flange high
	OffsetHorizontal quantity.Length // gearbox output flange to starboard

	RunOut        quantity.Length    // total, NaN when not told apart
	Separation    string             // what the readings tell apart
	Closure       quantity.Length    // by how much sums of opposite gaps disagree; NaN without two pairs in one shaft turn
	WorstResidual quantity.Length    // by how much the reading farthest from the fitted faces is off them
	Worst         string             // where that is, or AllAlike
	WorstAt       quantity.Direction // NaN when several readings are as far off, or none is
	FitScatter    quantity.Length    // root of the squared residuals over the readings to spare; NaN when there are none

	WidestAt         quantity.Direction // 0 to 2π
	MeanGap          quantity.Length    // in the first shaft turn
	RunOutAt         quantity.Direction // where run-out opens the gap most, shaft in its first position
	OffsetAt         quantity.Direction
	RadiusDifference quantity.Length // gearbox output flange larger in radius; with a dial, its zero
	RimRunOut        quantity.Length // total, NaN when not told apart

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

// AllAlike is the text of Worst when no one reading stands out.
const AllAlike = "no one reading stands out; eight places instead of four would show which is off"

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
// still and cannot be told from misalignment; Separation says so.
//
// The error is a *problem.Error of everything wrong: values out of range, fewer
// than four clock positions, readings bunched in less than a half circle, one
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
	out.takeFace(&face, d, in.Turned)
	out.GapAllowed = quantity.Length(math.NaN())
	if in.CouplingKind == Rigid && in.GapAllowance > 0 {
		out.GapAllowed = quantity.Length(in.GapAllowance) * in.CouplingDiameter
	}
	out.takeRim(&circle, len(rim) > 0)
	return out, nil
}

// fitted is fit with the refusal put into words.
func (p points) fitted(f *plane, known points, bad *problem.List, s *series) {
	if !p.fit(f, known) {
		bad.Add(s.list, "the readings do not tell which way the coupling leans", "readings all round in one position of the shaft", "read at 12, 3, 6 and 9 o'clock before turning the shaft")
	}
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
		bad.Add(s.list, fmt.Sprintf("they give a %s of %.4g mm, over 5 %% of the coupling diameter", what, 1000*found), fmt.Sprintf("up to %.4g mm", 1000*steepest*diameter), "is a unit or a decimal point wrong?")
	}
}

func (out *CouplingResult) takeFace(f *plane, d float64, turned Turned) {
	lean := vector{2 * f.fixed.up, 2 * f.fixed.right} // from one side to the other
	g := math.Sqrt(lean.up*lean.up + lean.right*lean.right)
	out.GapVertical, out.GapHorizontal = quantity.Length(lean.up), quantity.Length(lean.right)
	out.GapDifference = quantity.Length(g)
	out.GapPerDiameter = quantity.Ratio(g / d)
	out.Angle = quantity.Angle(math.Atan(g / d))
	out.WidestAt = quantity.Direction(lean.clock())
	out.Widest = hour(lean, out.WidestAt)
	out.MeanGap = quantity.Length(f.mean)

	out.Closure = quantity.Length(f.closure)
	out.WorstResidual, out.WorstAt = quantity.Length(f.worst), quantity.Direction(f.worstAt)
	switch {
	case !math.IsNaN(f.worstAt):
		out.Worst = hours[hourOf(f.worstAt)]
	case f.worst > 0:
		out.Worst = AllAlike
	}
	out.FitScatter = quantity.Length(f.scatter)

	out.RunOut, out.RunOutAt = quantity.Length(math.NaN()), quantity.Direction(math.NaN())
	switch {
	case f.turns < 2:
		out.Separation = NotTurned
		return
	case !f.apart:
		out.Separation = TurnedTooLittle
		return
	case turned == BothFlanges:
		out.Separation = BothFlangesTold
	default:
		out.Separation = ShaftFlangeTold
	}
	out.RunOut = quantity.Length(2 * f.turning.size())
	out.RunOutAt = quantity.Direction(f.turning.clock())
}

func (out *CouplingResult) takeRim(f *plane, read bool) {
	nan := math.NaN()
	out.Offset, out.OffsetVertical, out.OffsetHorizontal = quantity.Length(nan), quantity.Length(nan), quantity.Length(nan)
	out.OffsetAt, out.RadiusDifference, out.RimRunOut = quantity.Direction(nan), quantity.Length(nan), quantity.Length(nan)
	if !read {
		return
	}
	out.OffsetVertical, out.OffsetHorizontal = quantity.Length(f.fixed.up), quantity.Length(f.fixed.right)
	out.Offset = quantity.Length(math.Sqrt(f.fixed.up*f.fixed.up + f.fixed.right*f.fixed.right))
	out.OffsetAt = quantity.Direction(f.fixed.clock())
	out.OffsetTowards = hour(f.fixed, out.OffsetAt)
	out.RadiusDifference = quantity.Length(f.mean)
	if f.apart {
		out.RimRunOut = quantity.Length(2 * f.turning.size())
	}
}

// GapAt gives the gap of the fitted faces at a clock position, misalignment
// alone, with the faces as far apart as in the first shaft turn.
func GapAt(m CouplingResult, clock quantity.Direction) quantity.Length {
	half := vector{float64(m.GapVertical) / 2, float64(m.GapHorizontal) / 2}
	return m.MeanGap + quantity.Length(half.at(float64(clock)))
}
