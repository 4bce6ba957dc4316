// Two states of one coupling: Change.

package align

import (
	"fmt"
	"math"

	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/quantity"
)

// Position says whether the flanges stood turned alike both times.
type Position string

// How they may have stood. Empty: nobody said.
const (
	AtTheirMarks Position = "same"
	TurnedOther  Position = "other"
)

// ChangeInput is a coupling read twice with one kind of gauge: gaps and rim offsets
// of both times, or dials of both times, which go before.
type ChangeInput struct {
	GapsBefore, GapsNow   []Reading // none, or 4 to 96
	StepsBefore, StepsNow []RimReading
	DialBefore, DialNow   []DialReading

	CouplingDiameter quantity.Length // that gap differences are for, 30 mm to 800 mm
	DialRadius       quantity.Length // as in DialInput, as what follows; needed with dials
	DialOn           Carrier
	Swept            Sweep // empty: nobody said
	FaceTouched      Touched
	CountedFrom      Counted
	RimReadAft       quantity.Length
	Pilot            Pilot // both times
	CouplingKind     Kind  // empty: nobody said; a flexible coupling has no pilot unless one was told of
	SamePosition     Position

	TurnedFaceUp        quantity.Length // change of gap, top less bottom, that a crooked face makes which stood turned otherwise, up to 10 mm
	TurnedFaceStarboard quantity.Length // the same to starboard
	TurnedRimUp         quantity.Length // change of offset that a rim off centre makes so
	TurnedRimStarboard  quantity.Length
	ExpectedUp          quantity.Length `unset:"NaN"` // by which the engine flange should have risen; NaN: nothing expected
}

// ChangeResult is what Change finds: now less before. A figure whose readings are
// missing is NaN.
type ChangeResult struct {
	Seen      string          // whether the gauge tells a change
	Chance    quantity.Ratio  // that the gauge alone shows as much; NaN where it is not known or run-out may be in it
	LeastTold quantity.Length // change of gap difference that the gauge alone stays under in 95 of 100 readings

	ClosureBefore quantity.Ratio // by how much the readings of that day contradict each other, over what the gauge explains at most; NaN where that is not known
	ClosureNow    quantity.Ratio

	GapChange              quantity.Length // of the two flat faces, over CouplingDiameter
	GapChangeVertical      quantity.Length // top less bottom
	GapChangeHorizontal    quantity.Length // starboard less port
	AngleChange            quantity.Angle
	OffsetChange           quantity.Length
	OffsetChangeVertical   quantity.Length // engine flange rose
	OffsetChangeHorizontal quantity.Length // engine flange went to starboard
	LeftUp                 quantity.Length // OffsetChangeVertical less ExpectedUp
	PilotState             string
}

// The codes of Seen, for which the schema of alignment-change has the words.
const (
	ChangeTold     = "moved"
	ChangeNotTold  = "no-change"
	ChangePosition = "position-unknown"
	ChangeGauge    = "gauge-unknown"
	ChangeContra   = "contradict"    // the readings of one day, each other
	ChangeHidden   = "offset-hidden" // by the pilot, or maybe
	surelyNot      = 0.025           // chance from which down a change is told
	told95         = 5.991           // chi-square of two degrees of freedom, 95 %
)

// state is one of the two times.
type state struct {
	face, circle vector
	apart, rim   bool
	faceCov      [3]float64 // of face: up, both, right
	circleCov    [3]float64
	wide         float64
	excess       float64 // see plane.excess
}

// Change finds how a coupling has moved between two readings: the difference of the
// two least-squares planes. What is alike both times drops out of it: the sag of a
// bar, a tilted or worn face, an off-centre rim, the droop of an end that hangs. A
// flange that stood turned otherwise brings its run-out in, unless both flanges were
// swept together or the shaft was read in several positions each time.
//
// Whether it moved at all is asked of the gauge: the squared change over its variance is
// chi-square with as many degrees of freedom as directions were read (Johnson and
// Wichern, Applied Multivariate Statistical Analysis, ch. 4, from memory). Readings of one
// day that contradict each other by more than the gauge explains tell nothing.
//
// The error is a *problem.Error of everything wrong, as of Coupling and Dial.
func Change(in ChangeInput) (ChangeResult, error) {
	var t ChangeTrials
	return t.Run(in)
}

// ChangeTrials are many of one change: the first run is Change, the others are as it
// may truly have moved about that.
type ChangeTrials struct {
	begun       bool
	before, now state
	found       ChangeResult
}

// Run is the next one.
func (t *ChangeTrials) Run(in ChangeInput) (ChangeResult, error) {
	var bad problem.List
	dials := len(in.DialBefore) > 0 && len(in.DialNow) > 0
	in.usable(&bad, dials)
	if len(bad) > 0 {
		return ChangeResult{}, bad.Err()
	}
	before, now := in.state(&bad, dials, false, !t.begun), in.state(&bad, dials, true, !t.begun)
	if len(bad) > 0 {
		return ChangeResult{}, bad.Err()
	}
	rim := before.rim && now.rim
	d := float64(in.CouplingDiameter)
	faceMoved := vector{-float64(in.TurnedFaceUp) / 2, -float64(in.TurnedFaceStarboard) / 2}
	circleMoved := vector{-float64(in.TurnedRimUp), -float64(in.TurnedRimStarboard)}
	if in.free(&before, &now, dials) {
		faceMoved, circleMoved = vector{}, vector{}
	}
	if !t.begun {
		t.begun, t.before, t.now = true, before, now
		t.found = in.seen(&before, &now, rim, dials)
	}
	out := t.found
	move := func(was, is, wasBest, isBest, moved vector) (found, trial vector) {
		found = vector{isBest.up - wasBest.up + moved.up, isBest.right - wasBest.right + moved.right}
		w, n := t.before.wide, t.now.wide
		trial = vector{found.up + n*(is.up-isBest.up) - w*(was.up-wasBest.up), found.right + n*(is.right-isBest.right) - w*(was.right-wasBest.right)}
		return found.tidied(), trial.tidied()
	}
	found, trial := move(before.face, now.face, t.before.face, t.now.face, faceMoved)
	out.GapChangeVertical, out.GapChangeHorizontal = quantity.Length(2*trial.up), quantity.Length(2*trial.right)
	out.GapChange = quantity.Length(2 * about(found, trial))
	out.AngleChange = quantity.Angle(math.Atan(float64(out.GapChange) / d))
	nan := quantity.Length(math.NaN())
	out.OffsetChange, out.OffsetChangeVertical, out.OffsetChangeHorizontal = nan, nan, nan
	if rim && out.PilotState != PilotEngaged {
		found, trial = move(before.circle, now.circle, t.before.circle, t.now.circle, circleMoved)
		out.OffsetChangeVertical, out.OffsetChangeHorizontal = quantity.Length(trial.up), quantity.Length(trial.right)
		out.OffsetChange = quantity.Length(about(found, trial))
	}
	out.LeftUp = out.OffsetChangeVertical - in.ExpectedUp
	return out, nil
}

// free tells whether no run-out is in the change.
func (in *ChangeInput) free(before, now *state, dials bool) bool {
	return before.apart && now.apart || in.SamePosition == AtTheirMarks || dials && in.Swept == SweptTogether
}

// seen finds whether the gauge tells a change.
func (in *ChangeInput) seen(before, now *state, rim, dials bool) (out ChangeResult) {
	s := setup{pilot: in.Pilot, flexible: in.CouplingKind == Flexible}
	s.look()
	out.PilotState = s.pilotIs
	sum := func(a, b [3]float64) (c [3]float64) {
		for i := range c {
			c[i] = before.wide*before.wide*a[i] + now.wide*now.wide*b[i]
		}
		return c
	}
	squared := func(d vector, c [3]float64) float64 {
		return (d.up*d.up*c[2] - 2*d.up*d.right*c[1] + d.right*d.right*c[0]) / (c[0]*c[2] - c[1]*c[1])
	}
	cov := sum(before.faceCov, now.faceCov)
	chi, freedom := squared(vector{now.face.up - before.face.up, now.face.right - before.face.right}, cov), 2
	if rim && out.PilotState != PilotEngaged {
		chi += squared(vector{now.circle.up - before.circle.up, now.circle.right - before.circle.right}, sum(before.circleCov, now.circleCov))
		freedom = 4
	}
	widest := (cov[0]+cov[2])/2 + math.Hypot((cov[0]-cov[2])/2, cov[1])
	out.LeastTold = quantity.Length(2 * math.Sqrt(told95*widest))
	out.Chance = quantity.Ratio(chanceOf(chi, freedom))
	out.ClosureBefore, out.ClosureNow = quantity.Ratio(before.excess), quantity.Ratio(now.excess)
	switch {
	case before.excess > 1, now.excess > 1:
		out.Seen, out.Chance, out.LeastTold = ChangeContra, quantity.Ratio(math.NaN()), quantity.Length(math.NaN())
	case !in.free(before, now, dials):
		out.Seen, out.Chance, out.LeastTold = ChangePosition, quantity.Ratio(math.NaN()), quantity.Length(math.NaN())
	case math.IsNaN(chi) || math.IsInf(chi, 1):
		out.Seen, out.Chance, out.LeastTold = ChangeGauge, quantity.Ratio(math.NaN()), quantity.Length(math.NaN())
	case float64(out.Chance) <= surelyNot:
		out.Seen = ChangeTold
	case rim && out.PilotState != PilotClear: // it was read to be compared, and may not show
		out.Seen, out.Chance = ChangeHidden, quantity.Ratio(math.NaN())
	default:
		out.Seen = ChangeNotTold
	}
	return out
}

// state reads one of the two times; first asks for how sure it is as well.
func (in *ChangeInput) state(bad *problem.List, dials, isNow, first bool) (s state) {
	var gapRoom, rimRoom [enough]point
	gap, rim := points(gapRoom[:0]), points(rimRoom[:0])
	faces, rims := series{"/gapsBefore", "gap", "the gap", gaps.allowed}, series{"/stepsBefore", "step", "the step", steps.allowed}
	if dials {
		as := DialInput{DialReadings: in.DialBefore, DialRadius: in.DialRadius, DialOn: in.DialOn, FaceTouched: in.FaceTouched, CountedFrom: in.CountedFrom, CouplingDiameter: in.CouplingDiameter}
		faces.list, faces.value, faces.valueTitle, faces.allowed = "/dialBefore", "face", faceSeries.valueTitle, faceSeries.allowed
		rims = series{"/dialBefore", "rim", rimSeries.valueTitle, rimSeries.allowed}
		if isNow {
			as.DialReadings, faces.list, rims.list = in.DialNow, "/dialNow", "/dialNow"
		}
		gap, rim = as.points(gap, rim)
		if len(rim) < len(gap) { // a rim at some places tells no offset
			rim = rim[:0]
		}
		gap.check(bad, &faces, -mostDial)
		if len(*bad) > 0 {
			return s
		}
		as.scaled(gap, rim)
	} else {
		as := CouplingInput{Readings: in.GapsBefore, RimReadings: in.StepsBefore}
		if isNow {
			as.Readings, as.RimReadings, faces.list, rims.list = in.GapsNow, in.StepsNow, "/gapsNow", "/stepsNow"
		}
		gap, rim = as.read(gap, rim)
		gap.check(bad, &faces, -gapBelowNone)
	}
	if len(rim) > 0 {
		rim.check(bad, &rims, -mostDial)
	}
	if len(*bad) > 0 {
		return s
	}
	var face, circle plane
	gap.fitted(&face, nil, bad, &faces)
	if len(rim) > 0 {
		rim.fitted(&circle, nil, bad, &rims)
	}
	if len(*bad) > 0 {
		return s
	}
	s.face, s.circle, s.apart, s.rim, s.wide = face.fixed, circle.fixed, face.apart, len(rim) > 0, 1
	if first {
		s.faceCov, s.circleCov = gap.covariance(), rim.covariance()
		gap.inspect(&face)
		ratio, _ := face.strain()
		s.wide, s.excess = face.widening(ratio), face.excess(len(gap), gap[0].sd)
		if s.rim {
			rim.inspect(&circle)
			s.excess = both(s.excess, circle.excess(len(rim), rim[0].sd))
			ratio, _ = circle.strain()
			s.wide = max(s.wide, circle.widening(ratio))
		}
	}
	if dials {
		in := DialInput{RimReadAft: in.RimReadAft, CouplingDiameter: in.CouplingDiameter}
		in.carryToFace(&face, &circle)
		s.circle = circle.fixed
	}
	return s
}

// covariance is that of the fixed part, for readings that are off independently: the
// fit is linear, so that each moves it by what a fit of that one alone gives. NaN
// where a gauge is not known.
func (p points) covariance() (c [3]float64) {
	if len(p) == 0 {
		return c
	}
	var d design
	d.take(p, nil)
	one := make(points, len(p))
	copy(one, p)
	for i := range one {
		for j := range one {
			one[j].value = 0
		}
		one[i].value = 1
		var f plane
		d.fit(&f, one)
		v := p[i].sd * p[i].sd
		if !(v > 0) {
			v = math.NaN()
		}
		c[0] += v * f.fixed.up * f.fixed.up
		c[1] += v * f.fixed.up * f.fixed.right
		c[2] += v * f.fixed.right * f.fixed.right
	}
	return c
}

// usable collects what is missing and out of range.
func (in *ChangeInput) usable(bad *problem.List, dials bool) {
	within := func(name string, v quantity.Length, low, high float64, allowed string) {
		if !problem.Within(float64(v), low, high) {
			bad.Add("/"+name, fmt.Sprintf("%.4g mm is out of range", 1000*float64(v)), allowed, "")
		}
	}
	within("couplingDiameter", in.CouplingDiameter, 0.03, 0.8, "30 mm to 800 mm")
	if dials {
		within("dialRadius", in.DialRadius, 0.01, 0.6, "10 mm to 600 mm")
		within("rimReadAft", in.RimReadAft, -0.3, 0.3, "-300 mm to 300 mm")
	}
	if dials && in.Swept == OtherTurned {
		bad.Add("/swept", "with only the flange turned that the dial touches it shows that flange's run-out and nothing of the alignment", "both flanges together, or the one with the dial", "")
	}
	s := setup{pilot: in.Pilot}
	s.check(bad)
	if in.CouplingKind != "" && in.CouplingKind != Rigid && in.CouplingKind != Flexible {
		bad.Add("/couplingKind", fmt.Sprintf("%q is not a kind of coupling", string(in.CouplingKind)), "rigid, flexible", "")
	}
	if in.SamePosition != "" && in.SamePosition != AtTheirMarks && in.SamePosition != TurnedOther {
		bad.Add("/samePosition", fmt.Sprintf("%q is no way the flanges can stand", string(in.SamePosition)), "same, other", "")
	}
	for _, l := range [...]struct {
		name string
		v    quantity.Length
	}{{"turnedFaceUp", in.TurnedFaceUp}, {"turnedFaceStarboard", in.TurnedFaceStarboard}, {"turnedRimUp", in.TurnedRimUp}, {"turnedRimStarboard", in.TurnedRimStarboard}} {
		within(l.name, l.v, -0.01, 0.01, "-10 mm to 10 mm")
	}
	if up := in.ExpectedUp; !math.IsNaN(float64(up)) {
		within("expectedUp", up, -0.02, 0.02, "-20 mm to 20 mm")
	}
	lists := [...]struct {
		name string
		n    int
	}{{"gapsBefore", len(in.GapsBefore)}, {"gapsNow", len(in.GapsNow)}, {"stepsBefore", len(in.StepsBefore)}, {"stepsNow", len(in.StepsNow)}, {"dialBefore", len(in.DialBefore)}, {"dialNow", len(in.DialNow)}}
	for i, l := range lists {
		switch {
		case l.n > most:
			bad.Add("/"+l.name, "there are too many readings", fmt.Sprintf("%d to %d", fewest, most), "")
		case l.n == 0 && !dials && i < 2:
			bad.Add("/"+l.name, "there are no readings of that day", "gaps of both days, or dials of both days", "feeler against dial tells no change: read both times with the same gauge")
		}
	}
}
