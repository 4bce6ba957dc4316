// Run-out of the output flange, and what it goes with: RunOut.

package flange

import (
	"fmt"
	"math"
	"math/cmplx"

	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/quantity"
)

// RunOutInput is the run-out of a flange as a dial shows it, with the flange
// as it was found and after it was moved on its spline. Amounts are highest less
// lowest over one turn; directions are where it stands highest, clockwise
// looking forward from a mark on the shaft (not on the flange). NaN is not read.
// Of FaceRunOut and RimRunOut one is needed.
type RunOutInput struct {
	FaceRunOut quantity.Length    `unset:"NaN"` // near the rim, along the shaft
	FaceAt     quantity.Direction `unset:"NaN"`
	RimRunOut  quantity.Length    `unset:"NaN"` // across the shaft, on rim or pilot
	RimAt      quantity.Direction `unset:"NaN"`

	FaceRunOutMoved quantity.Length    `unset:"NaN"` // with the flange moved on
	FaceAtMoved     quantity.Direction `unset:"NaN"`
	RimRunOutMoved  quantity.Length    `unset:"NaN"`
	RimAtMoved      quantity.Direction `unset:"NaN"`

	FaceSpread   quantity.Length `spreadOf:"faceRunOut"` // standard uncertainties; 0: not known
	RimSpread    quantity.Length `spreadOf:"rimRunOut"`
	FaceAtSpread quantity.Angle  `spreadOf:"faceAt"`
	RimAtSpread  quantity.Angle  `spreadOf:"rimAt"`

	SplineTeeth int // up to 200; optional, and 1 (a key) tells nothing
	TeethMoved  int // by which the flange was moved on, clockwise looking forward; optional

	FaceReadDiameter quantity.Length // on which the face was read; optional
	CouplingDiameter quantity.Length // outside of the flange, which FaceReadDiameter does not go past; optional
}

// RunOutResult is what RunOut finds. NaN marks a figure for which a
// reading is missing.
type RunOutResult struct {
	Cause           string          // what the run-out of the face goes with; empty where it was not read
	RimCause        string          // likewise of the rim
	FaceWithFlange  quantity.Length // part of the face run-out that goes with the flange
	FaceWithShaft   quantity.Length // part that stays with the shaft
	RimWithFlange   quantity.Length
	RimWithShaft    quantity.Length
	BestTeeth       quantity.Ratio  // from its first position, on which by these readings the flange runs out least
	BestFaceRunOut  quantity.Length // there
	BestRimRunOut   quantity.Length // there
	FaceNow         quantity.Length // as the flange sits now
	RimNow          quantity.Length
	FacePerDiameter quantity.Ratio // FaceNow over the diameter it was read on
	BestPerDiameter quantity.Ratio
	Moved           quantity.Angle // by which the flange was moved on
	FlangeShare     quantity.Ratio // of what goes with the flange in both together, by the face
	RimFlangeShare  quantity.Ratio // likewise by the rim
}

// The codes of Cause and RimCause, for which the schema of flange-run-out has the
// words.
const (
	GoesWithFlange = "flange"
	StaysWithShaft = "shaft"
	BothRunOut     = "both"
	OnePosition    = "one-position"
	RunsTrue       = "true"   // no run-out that the dial tells from nothing, in either position
	ShareNotTold   = "unsure" // there is some, and the dial does not tell of which
)

// pastRim is how far a rule and a nominal size may take the diameter that was
// read past the flange's own.
const pastRim = 1.1

// mostlyOne is the share from which one of the two is called the cause.
const mostlyOne = 0.7

// RunOut splits run-out by vectors.
//
// Once a turn, a dial shows the sum of what stays with the shaft (its seat is
// bent or cut out of true, or the ring behind the hub is not square) and of what
// goes with the flange (its bore, face or rim is not true). Turned on by an
// angle α on its spline the flange carries its part along: R₁ = S + H and
// R₂ = S + H·e^{iα}, so that H = (R₂ − R₁)/(e^{iα} − 1) and S = R₁ − H. The flange
// runs out least where H stands against S, as near to that as the teeth let it.
// This is the arithmetic of two-position (index) balancing; dirt between the
// faces, and a nut tightened otherwise, go into the difference as well.
//
// The error is a *problem.Error of everything that cannot be. RunOut
// allocates nothing when it succeeds.
func RunOut(in RunOutInput) (RunOutResult, error) { return runOut(&in, -1) }

// RunOutOn is RunOut with the tooth of least run-out chosen before, by
// readings as they were then thought to be.
func RunOutOn(in RunOutInput, teeth quantity.Ratio) (RunOutResult, error) {
	return runOut(&in, teeth)
}

func runOut(in *RunOutInput, teeth quantity.Ratio) (out RunOutResult, err error) {
	if err = in.validate(); err != nil {
		return RunOutResult{}, err
	}
	nan := math.NaN()
	out.Moved = quantity.Angle(nan)
	if in.SplineTeeth > 1 && in.TeethMoved != 0 {
		out.Moved = quantity.Angle(2 * math.Pi * float64(in.TeethMoved) / float64(in.SplineTeeth))
	}
	face := split(in.FaceRunOut, in.FaceAt, in.FaceRunOutMoved, in.FaceAtMoved, out.Moved)
	rim := split(in.RimRunOut, in.RimAt, in.RimRunOutMoved, in.RimAtMoved, out.Moved)
	out.FaceWithFlange, out.FaceWithShaft = face.amounts()
	out.RimWithFlange, out.RimWithShaft = rim.amounts()
	out.FaceNow, out.RimNow = now(in.FaceRunOut, in.FaceRunOutMoved), now(in.RimRunOut, in.RimRunOutMoved)
	spread := func(read quantity.Length, at quantity.Angle) reach {
		return reach{float64(read), float64(at), cmplx.Abs(cmplx.Rect(1, float64(out.Moved)) - 1)}
	}
	if !math.IsNaN(float64(out.FaceNow)) {
		out.Cause, out.FlangeShare = face.blame(spread(in.FaceSpread, in.FaceAtSpread), max(in.FaceRunOut, out.FaceNow))
	}
	if !math.IsNaN(float64(out.RimNow)) {
		out.RimCause, out.RimFlangeShare = rim.blame(spread(in.RimSpread, in.RimAtSpread), max(in.RimRunOut, out.RimNow))
	}
	out.best(in, face, rim, teeth)
	d := quantity.OrNaN(float64(in.FaceReadDiameter))
	out.FacePerDiameter = quantity.Ratio(float64(out.FaceNow) / d)
	out.BestPerDiameter = quantity.Ratio(float64(out.BestFaceRunOut) / d)
	return out, nil
}

// now is the newer of two readings.
func now(first, moved quantity.Length) quantity.Length {
	if math.IsNaN(float64(moved)) {
		return first
	}
	return moved
}

// parts are the two parts of a run-out, as vectors of the flange's first
// position.
type parts struct{ flange, shaft complex128 }

func split(first quantity.Length, firstAt quantity.Direction, moved quantity.Length, movedAt quantity.Direction, by quantity.Angle) parts {
	r1 := cmplx.Rect(float64(first), float64(firstAt))
	r2 := cmplx.Rect(float64(moved), float64(movedAt))
	h := (r2 - r1) / (cmplx.Rect(1, float64(by)) - 1)
	return parts{flange: h, shaft: r1 - h}
}

func (p parts) amounts() (flange, shaft quantity.Length) {
	return quantity.Length(cmplx.Abs(p.flange)), quantity.Length(cmplx.Abs(p.shaft))
}

// at is the run-out with the flange turned on by an angle.
func (p parts) at(by float64) float64 { return cmplx.Abs(p.shaft + p.flange*cmplx.Rect(1, by)) }

// best finds the tooth on which the flange runs out least: by its face, which is
// what the shaft coupling is bolted against, or by its rim where the face was
// not read in both positions or runs true in both; or the tooth that was chosen
// before. A flange that runs true is not moved.
func (out *RunOutResult) best(in *RunOutInput, face, rim parts, chosen quantity.Ratio) {
	nan := math.NaN()
	out.BestTeeth, out.BestFaceRunOut, out.BestRimRunOut = quantity.Ratio(nan), quantity.Length(nan), quantity.Length(nan)
	by := face
	if math.IsNaN(real(face.flange)) || out.Cause == RunsTrue {
		by = rim
		if out.RimCause == RunsTrue {
			return
		}
	}
	if math.IsNaN(real(by.flange)) {
		return
	}
	teeth, least := int(chosen), math.Inf(1)
	for n := 0; chosen < 0 && n < in.SplineTeeth; n++ {
		if r := by.at(step(n, in.SplineTeeth)); r < least {
			teeth, least = n, r
		}
	}
	out.BestTeeth = quantity.Ratio(teeth)
	out.BestFaceRunOut = quantity.Length(face.at(step(teeth, in.SplineTeeth)))
	out.BestRimRunOut = quantity.Length(rim.at(step(teeth, in.SplineTeeth)))
}

func step(n, teeth int) float64 { return 2 * math.Pi * float64(n) / float64(teeth) }

// reach is how far readings may be off, as standard uncertainties: the dial, the
// direction, and by what the move divides a difference of two readings.
type reach struct{ dial, at, chord float64 }

// coverage is two-sided 95 % of the normal distribution.
const coverage = 1.96

// blame says what a run-out goes with, most being the greater of its readings.
// The share is told where it lies on the one side of a half by more than the
// readings may be off.
func (p parts) blame(r reach, most quantity.Length) (string, quantity.Ratio) {
	flange, shaft := cmplx.Abs(p.flange), cmplx.Abs(p.shaft)
	sum := flange + shaft
	share := flange / sum
	off := math.Sqrt2 * math.Hypot(r.dial, float64(most)*r.at) / r.chord // of either part
	unsure := coverage * off * math.Hypot(flange, shaft) / (sum * sum)
	switch {
	case float64(most) <= coverage*r.dial || sum == 0:
		return RunsTrue, quantity.Ratio(math.NaN())
	case math.IsNaN(sum):
		return OnePosition, quantity.Ratio(math.NaN())
	case share >= mostlyOne && share-unsure > 0.5:
		return GoesWithFlange, quantity.Ratio(share)
	case share <= 1-mostlyOne && share+unsure < 0.5:
		return StaysWithShaft, quantity.Ratio(share)
	case share > 1-mostlyOne && share < mostlyOne && share-unsure > 0 && share+unsure < 1:
		return BothRunOut, quantity.Ratio(share)
	}
	return ShareNotTold, quantity.Ratio(share)
}

// validate lists everything that cannot be.
func (in *RunOutInput) validate() error {
	var faults problem.List
	for _, r := range [...]struct {
		where, name string
		v           float64
	}{{"/faceRunOut", "face run-out", float64(in.FaceRunOut)}, {"/rimRunOut", "rim run-out", float64(in.RimRunOut)},
		{"/faceRunOutMoved", "face run-out after the move", float64(in.FaceRunOutMoved)}, {"/rimRunOutMoved", "rim run-out after the move", float64(in.RimRunOutMoved)}} {
		if !(r.v >= -hair) && !math.IsNaN(r.v) || math.IsInf(r.v, 1) {
			faults.Add(r.where, "the "+r.name+" is negative or not a number", "0 or more", "highest less lowest over one turn")
		}
	}
	for _, r := range [...]struct {
		where string
		v     quantity.Direction
	}{{"/faceAt", in.FaceAt}, {"/rimAt", in.RimAt}, {"/faceAtMoved", in.FaceAtMoved}, {"/rimAtMoved", in.RimAtMoved}} {
		if math.IsInf(float64(r.v), 0) {
			faults.Add(r.where, "the direction is not a number", "0 to 360°", "")
		}
	}
	if math.IsNaN(float64(in.FaceRunOut)) && math.IsNaN(float64(in.RimRunOut)) {
		faults.Add("/faceRunOut", "neither face nor rim run-out was read", "0 or more", "dial on the face near its rim, one turn by hand")
	}
	if n := in.SplineTeeth; n < 0 || n > 200 {
		faults.Add("/splineTeeth", fmt.Sprintf("a spline of %d teeth cannot be", n), "up to 200", "0 for not known")
	}
	if n := in.SplineTeeth; n >= 2 && in.TeethMoved != 0 && in.TeethMoved%n == 0 {
		faults.Add("/teethMoved", fmt.Sprintf("%d teeth on a spline of %d is where it was", in.TeethMoved, n), "another position", "about a third of the way round tells most")
	}
	for _, u := range [...]struct {
		where string
		v     float64
	}{{"/faceSpread", float64(in.FaceSpread)}, {"/rimSpread", float64(in.RimSpread)}, {"/faceAtSpread", float64(in.FaceAtSpread)}, {"/rimAtSpread", float64(in.RimAtSpread)}} {
		faults.NotNegative(u.where, "uncertainty", u.v)
	}
	faults.NotNegative("/faceReadDiameter", "diameter on which the face was read", float64(in.FaceReadDiameter))
	faults.NotNegative("/couplingDiameter", "diameter of the flange", float64(in.CouplingDiameter))
	if read, flange := float64(in.FaceReadDiameter), float64(in.CouplingDiameter); flange > 0 && read > pastRim*flange {
		faults.Add("/faceReadDiameter", "a flange of "+problem.Millimetres(flange)+" has no face at "+problem.Millimetres(read), "up to "+problem.Millimetres(flange), "twice the distance of the dial from the shaft's middle")
	}
	return faults.Err()
}
