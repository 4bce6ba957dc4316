// A coupling as it may truly stand: Trial.

package align

import (
	"math"

	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/quantity"
)

// Trial is the coupling as it may truly stand, each reading of in being off by
// what its gauge does not see; best is what Coupling finds of the readings as
// they were taken. What the readings say of themselves (scatter, closure,
// which way the shaft was turned) is that of best.
//
// Where the readings scatter more than their gauge explains, they are off by
// so much more. Of sizes, which cannot be less than nothing, see about.
func Trial(in CouplingInput, best *CouplingResult) (out CouplingResult, err error) {
	return (&Trials{Best: best}).Run(in)
}

// Trials are many of one coupling, on which readings are moved and where they
// were taken is not.
type Trials struct {
	Best     *CouplingResult
	gap, rim design
}

// Run is [Trial] of the coupling.
func (t *Trials) Run(in CouplingInput) (out CouplingResult, err error) {
	best := t.Best
	var gapRoom, rimRoom [enough]point
	gap, rim := in.read(gapRoom[:0], rimRoom[:0])
	if bad := in.usable(gap, rim); len(bad) > 0 {
		return CouplingResult{}, bad.Err()
	}
	var bad problem.List
	var face, circle plane
	gap.fittedBy(&t.gap, &face, nil, &bad, &gaps)
	if len(rim) > 0 {
		rim.fittedBy(&t.rim, &circle, gap, &bad, &steps)
	}
	if len(bad) > 0 {
		return CouplingResult{}, bad.Err()
	}
	out = *best
	out.takeDroop(&in, &face, &circle)
	out.lieAbout(best, &in, &face, &circle, vector{}, vector{})
	out.takeWorst(&in)
	as := in.setup(best.MeanGap)
	out.takeSetup(&as)
	return out, nil
}

// lieAbout writes sizes and directions of fits of a trial that lie about those
// of best as the truth may. What a trial takes off otherwise than best did is no
// error of the readings: by so much the fixed parts themselves are elsewhere.
func (out *CouplingResult) lieAbout(best *CouplingResult, in *CouplingInput, face, circle *plane, faceMoved, circleMoved vector) {
	wide := face.widening(float64(best.ScatterRatio))
	fixed := vector{float64(best.GapVertical)/2 + faceMoved.up, float64(best.GapHorizontal)/2 + faceMoved.right}
	face.fixed = fixed.towards(face.fixed, wide)
	out.takeFace(face, about(fixed, face.fixed), in)
	if face.apart {
		was := along(float64(best.RunOut)/2, float64(best.RunOutAt))
		turning := was.towards(face.turning, wide)
		out.RunOut = quantity.Length(2 * about(was, turning))
		out.RunOutAt = quantity.Direction(turning.clock())
	}
	if circle.turns == 0 {
		return // not read
	}
	wide = circle.widening(float64(best.RimScatterRatio))
	fixed = vector{float64(best.OffsetVertical) + circleMoved.up, float64(best.OffsetHorizontal) + circleMoved.right}
	if math.IsNaN(fixed.up) { // hidden by the pilot
		fixed = circle.fixed
	}
	circle.fixed = fixed.towards(circle.fixed, wide)
	out.takeRim(circle, about(fixed, circle.fixed))
	if circle.apart {
		was := along(float64(best.RimRunOut)/2, float64(best.RimRunOutAt))
		turning := was.towards(circle.turning, wide)
		out.RimRunOut = quantity.Length(2 * about(was, turning))
		out.RimRunOutAt = quantity.Direction(turning.clock())
	}
}

// along is a vector of that size that points to a clock position.
func along(size, clock float64) vector {
	sin, cos := math.Sincos(clock)
	return vector{size * cos, size * sin}
}

// towards goes from v to another vector, and beyond it where the factor is
// over 1.
func (v vector) towards(to vector, factor float64) vector {
	return vector{v.up + factor*(to.up-v.up), v.right + factor*(to.right-v.right)}
}

// about is a size that a vector may truly have, when it was found as found and
// a trial lies as far off that as the truth may lie.
//
// The size of the trial itself is never nothing, however true the coupling is,
// and too large on the whole (the bias of Rice's distribution). Where the
// trial lies outward, it counts by how much. Where it lies inward, the size
// counts that with such an error would have been found as it was, or nothing
// where there is none. The lower end of a
// 95 % interval is nothing just where the circle round what was found that
// holds 95 % of the trials also holds nothing (own derivation; a test holds
// how often the intervals hold the truth).
func about(found, trial vector) float64 {
	size := found.size()
	out := vector{1, 0}
	if size > 0 {
		out = vector{found.up / size, found.right / size}
	}
	up, right := trial.up-found.up, trial.right-found.right
	outward := up*out.up + right*out.right
	if !(outward < 0) { // of what was not read too, which is NaN
		return size + outward
	}
	across := up*out.right - right*out.up
	if room := size*size - across*across; room > 0 {
		return max(outward+math.Sqrt(room), 0)
	}
	return 0
}
