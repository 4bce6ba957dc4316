// How to move the mounts to cure a misalignment: Moves.

package mount

import (
	"fmt"
	"math"

	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/quantity"
)

// MovesInput is what was found at the coupling, and the mounts that can cure it.
// The signs are those of package align: gap plus when open at the top or to
// starboard, offset plus when the gearbox output flange is high or to starboard.
type MovesInput struct {
	Mounts                 []Mount         // 2 to 8
	GapVertical            quantity.Length // top less bottom
	GapHorizontal          quantity.Length // starboard less port
	OffsetVertical         quantity.Length `unset:"NaN"` // engine flange high; NaN: not read
	OffsetHorizontal       quantity.Length `unset:"NaN"` // gearbox output flange to starboard; NaN: not read
	CouplingDiameter       quantity.Length // where the gaps were read, 30 mm to 0.8 m
	MeanGap                quantity.Length // of the faces as they were read, up to 50 mm; 0: not known
	WantedGapVertical      quantity.Length // gap top less bottom to aim for, as a cold target or the maker wants it; 0: even
	WantedGapHorizontal    quantity.Length // starboard less port
	WantedOffsetVertical   quantity.Length // engine flange high
	WantedOffsetHorizontal quantity.Length // to starboard
	DroopGapTaken          quantity.Length // by how much a shaft end that hangs free opens the gap at the bottom, already out of GapVertical; 0: held up

	TurnAbout     string          // where an angle is cured alone; empty: AboutCoupling
	SidewaysRatio quantity.Ratio  // stiffness of a mount square to its axis over that along it, 0.01 to 10; needed where a stud leans and its mount does not give both
	GapRunOut     quantity.Length `unset:"NaN"` // what run-out of the flanges adds to the gap difference in the worst shaft position, up to 20 mm; NaN: not known
	OffsetRunOut  quantity.Length `unset:"NaN"` // the same of the offset
	PilotOffset   quantity.Length // offset that a pilot may hide of which nobody said where it was; 0 where that was said
}

// What TurnAbout may be.
const (
	AboutCoupling = "coupling" // the offset stays as it is
	AboutMounts   = "mounts"   // the least turning of nuts; the offset moves
)

// MovesResult is what to do at the mounts, and what then stands at the coupling.
// A figure that cannot be given is NaN.
type MovesResult struct {
	Moves [Most]Move // one for each mount, in their order

	NutsToTurn    NutTurns
	Reach         string          // whether the studs' travel is enough
	LargestMove   quantity.Length // of all raises, lowerings and shifts
	LargestMoveAt string          // the mount's name

	GapTopAfter              quantity.Length // to read after the move; NaN without MeanGap
	GapStarboardAfter        quantity.Length
	GapBottomAfter           quantity.Length
	GapPortAfter             quantity.Length
	GapDifferenceAfter       quantity.Length // between the widest and the narrowest
	GapPerDiameterAfter      quantity.Ratio
	OffsetAfter              quantity.Length // NaN when an offset was not read
	OffsetMade               quantity.Length // by the move, where the offset was not read; NaN where it was
	WorstGapAfter            quantity.Length // with the run-out, in the worst shaft position; NaN when that is not known
	WorstGapPerDiameterAfter quantity.Ratio
	WorstOffsetAfter         quantity.Length
	SoftFoot                 quantity.Length // largest FootGap, NaN when none was read
	SoftFootAt               string
	SlopeUp                  quantity.Angle  // how much more a mount is raised the farther forward it stands
	SlopeStarboard           quantity.Angle  // the same to starboard
	RaiseAtCoupling          quantity.Length // of the gearbox output flange
	ShiftAtCoupling          quantity.Length
	GapVerticalAfter         quantity.Length
	GapHorizontalAfter       quantity.Length
	OffsetVerticalAfter      quantity.Length
	OffsetHorizontalAfter    quantity.Length
	Pivot                    string // what was done about the offset
}

// Move is what to do at one mount.
type Move struct {
	Name       string
	Raise      quantity.Length // what its nut raises it by; minus: lower
	Nut        Turning         // how far that is turned, by quarter flats
	Shift      quantity.Length // to starboard; minus: to port
	GapThen    quantity.Length // GapVertical to expect once this nut and those before it are turned
	OffsetThen quantity.Length // the same of OffsetVertical; NaN when that was not read
	Stop       string          // at the end of which travel it comes to stand
	Turns      quantity.Angle  // of the nut, plus to raise, by quarter flats; NaN when the thread is not known
}

// The codes of Reach, for which the schema of mount-moves has the words.
const (
	Reached      = "enough"
	NotGiven     = "travel-not-given" // of a stud or slot that is moved
	ShortUp      = "short-up-and-down"
	ShortAcross  = "short-sideways"
	ShortAllWays = "short-all-ways"
)

// The codes of Pivot, for which the schema of mount-moves has the words.
const (
	BothCured       = "all-cured"
	VerticalPivot   = "vertical-not-read"
	HorizontalPivot = "horizontal-not-read"
	BothPivots      = "neither-read"
)

// The codes of Move.Stop, for which the schema of mount-moves has the words.
const (
	upperStop = "top"
	lowerStop = "bottom"
	sideStop  = "slack"
	twoStops  = "travel-and-slack"
)

// shortest is how far apart along the shaft the mounts must stand to set an
// angle by them.
const shortest = 0.05 // m

// steepest is the largest gap difference or offset over the coupling
// diameter that is believed, as in package align.
const steepest = 0.05

// Moves finds the move of each mount that brings the coupling true.
//
// The engine moves as one rigid body. An angle of the faces opens the gap by
// G over the diameter D, so a mount x forward of the coupling is raised by
// (G/D)·x less what the gearbox output flange stands high: the rim-and-face formula,
// F = bf·B/D - br/2 (Bloch and Geitner, Machinery Component Maintenance and
// Repair, pp. 198-199, fig. 5-17). Sideways the same. Mounts as high or low
// as one likes and the roll of the engine do not enter.
//
// Where the offset was not read only the angle is cured: about the middle of
// the coupling face, which then stays where it is, or with the least sum of
// squared moves. Where a mount's travel is not enough, the move is the allowed
// one that leaves the least misalignment (see nearest, pivoted). Nuts are
// turned by quarter flats, all of them chosen together (see choose), and what
// is foretold is what those leave.
//
// The error is a *problem.Error: values out of range, fewer than 2 or more
// than 8 mounts, mounts that all stand less than 50 mm apart along the shaft,
// a gap or offset over 5 % of the diameter.
func Moves(in MovesInput) (MovesResult, error) {
	if bad := in.validate(); len(bad) > 0 {
		return MovesResult{}, bad.Err()
	}
	var upright, across studs
	upright.n, across.n = len(in.Mounts), len(in.Mounts)
	for i := range in.Mounts {
		m := &in.Mounts[i]
		lift := m.lift(in.SidewaysRatio)
		upright.all[i] = stud{float64(m.Forward), -lift * room(m.TravelDown), lift * room(m.TravelUp)}
		across.all[i] = stud{float64(m.Forward), -room(m.SidewaysSlack), room(m.SidewaysSlack)}
	}
	d := float64(in.CouplingDiameter)
	readUp, readAcross := !math.IsNaN(float64(in.OffsetVertical)), !math.IsNaN(float64(in.OffsetHorizontal))
	wantUp := line{float64(in.GapVertical-in.WantedGapVertical) / d, in.wanted(in.OffsetVertical - in.WantedOffsetVertical)}
	wantAcross := line{float64(in.GapHorizontal-in.WantedGapHorizontal) / d, in.wanted(in.OffsetHorizontal - in.WantedOffsetHorizontal)}
	up := upright.solve(wantUp, d)
	sideways := across.solve(wantAcross, d)

	var out MovesResult
	out.Reach = reach(up.reaches(wantUp), sideways.reaches(wantAcross))
	if math.IsNaN(wantUp.at) {
		wantUp = up
	}
	var turned nuts
	in.nuts(&upright, &turned)
	turned.choose(wantUp, up, d)
	out.take(&in, &turned, sideways, &upright, &across)
	out.NutsToTurn = nutTurns(out.Moves[:len(in.Mounts)])
	if out.Reach == Reached && out.onTrust(in.Mounts) {
		out.Reach = NotGiven
	}
	out.Pivot = pivot(readUp, readAcross)
	out.foresee(&in, &out)
	out.feet(in.Mounts)
	return out, nil
}

// wanted is what the coupling is to be moved by to cure an offset. NaN: by
// whatever takes the least turning.
func (in *MovesInput) wanted(offset quantity.Length) float64 {
	switch {
	case !math.IsNaN(float64(offset)):
		return -float64(offset)
	case in.TurnAbout == AboutMounts:
		return math.NaN()
	}
	return 0
}

// room is a stud's travel; one that nobody looked at is taken as enough.
func room(travel quantity.Length) float64 {
	if math.IsNaN(float64(travel)) {
		return math.Inf(1)
	}
	return max(float64(travel), 0)
}

// solve takes a move without a wanted offset as one with a free pivot.
func (s *studs) solve(want line, d float64) line {
	if math.IsNaN(want.at) {
		return s.pivoted(want.slope)
	}
	return s.nearest(want, d)
}

func (l line) reaches(want line) bool {
	return math.Abs(l.slope-want.slope) < 1e-9 && !(math.Abs(l.at-want.at) > 1e-9)
}

func reach(up, across bool) string {
	switch {
	case up && across:
		return Reached
	case across:
		return ShortUp
	case up:
		return ShortAcross
	}
	return ShortAllWays
}

// onTrust tells whether a mount is moved whose travel that way nobody looked at.
func (out *MovesResult) onTrust(mounts []Mount) bool {
	for i := range mounts {
		m, to := &mounts[i], &out.Moves[i]
		if to.Raise > 0 && math.IsNaN(float64(m.TravelUp)) || to.Raise < 0 && math.IsNaN(float64(m.TravelDown)) ||
			math.Abs(float64(to.Shift)) > shiftsNot && math.IsNaN(float64(m.SidewaysSlack)) {
			return true
		}
	}
	return false
}

const shiftsNot = 1e-6 // m: less is nothing that a slot is asked for

func pivot(up, across bool) string {
	switch {
	case up && across:
		return BothCured
	case across:
		return VerticalPivot
	case up:
		return HorizontalPivot
	}
	return BothPivots
}

// take writes the move of every mount.
func (out *MovesResult) take(in *MovesInput, turned *nuts, sideways line, upright, across *studs) {
	for i := range in.Mounts {
		m, to := &in.Mounts[i], &out.Moves[i]
		one := &turned.all[turned.of[i]]
		raise, shift := one.lifted, sideways.move(float64(m.Forward))
		to.Name, to.Raise, to.Shift = m.Name, tidy(quantity.Length(raise)), tidy(quantity.Length(shift))
		turns := math.NaN()
		if one.step > 0 {
			turns = quarter * float64(one.quarters)
		}
		to.Turns, to.Nut = quantity.Angle(2*math.Pi*turns), Turning{6 * turns}
		to.Stop = stop(raise, shift, upright.all[i], across.all[i], one.step)
		for _, move := range [2]float64{math.Abs(raise), math.Abs(shift)} {
			if move > float64(out.LargestMove) {
				out.LargestMove, out.LargestMoveAt = quantity.Length(move), m.Name
			}
		}
	}
}

// stop says which end of a mount's travel a move takes it to, but for less
// than the quarter flat that its nut is turned by.
func stop(raise, shift float64, upright, across stud, step float64) string {
	near := max(step, 1e-9) * (1 - 1e-6)
	side := shift != 0 && (shift > across.most-1e-9 || shift < across.least+1e-9)
	switch {
	case raise > 0 && raise > upright.most-near:
		if side {
			return twoStops
		}
		return upperStop
	case raise < 0 && raise < upright.least+near:
		if side {
			return twoStops
		}
		return lowerStop
	case side:
		return sideStop
	}
	return ""
}

// tidy makes 0 of a length or a small angle that is nothing but rounding.
func tidy[T ~float64](v T) T {
	if math.Abs(float64(v)) < 1e-10 {
		return 0
	}
	return v
}

// feet finds the softest foot.
func (out *MovesResult) feet(mounts []Mount) {
	out.SoftFoot = quantity.Length(math.NaN())
	for i := range mounts {
		if m := &mounts[i]; m.FootGap > out.SoftFoot || math.IsNaN(float64(out.SoftFoot)) && !math.IsNaN(float64(m.FootGap)) {
			out.SoftFoot, out.SoftFootAt = m.FootGap, m.Name
		}
	}
}

// validate collects everything that makes the misfit unfit to work with.
func (in *MovesInput) validate() problem.List {
	var bad problem.List
	d := float64(in.CouplingDiameter)
	if !(d >= 0.03-1e-12 && d <= 0.8+1e-12) {
		bad.Add("/couplingDiameter", fmt.Sprintf("a coupling diameter of %.4g m is out of range", d), "30 mm to 800 mm", "")
		d = 0.8
	}
	if !(in.MeanGap >= -1e-4 && in.MeanGap <= 0.05) {
		bad.Add("/meanGap", fmt.Sprintf("a mean gap of %.4g mm is out of range", 1000*float64(in.MeanGap)), "0 to 50 mm", "")
	}
	for _, one := range [...]struct {
		name, what string
		value      quantity.Length
		maybe      bool
	}{
		{"gapVertical", "a gap difference", in.GapVertical, false},
		{"gapHorizontal", "a gap difference", in.GapHorizontal, false},
		{"wantedGapVertical", "a gap difference", in.WantedGapVertical, false},
		{"wantedGapHorizontal", "a gap difference", in.WantedGapHorizontal, false},
		{"wantedOffsetVertical", "an offset", in.WantedOffsetVertical, false},
		{"wantedOffsetHorizontal", "an offset", in.WantedOffsetHorizontal, false},
		{"droopGapTaken", "a gap difference", in.DroopGapTaken, false},
		{"gapRunOut", "a run-out", in.GapRunOut, true},
		{"offsetRunOut", "a run-out", in.OffsetRunOut, true},
		{"pilotOffset", "an offset", in.PilotOffset, true},
		{"offsetVertical", "an offset", in.OffsetVertical, true},
		{"offsetHorizontal", "an offset", in.OffsetHorizontal, true},
	} {
		if one.maybe && math.IsNaN(float64(one.value)) {
			continue
		}
		if !(math.Abs(float64(one.value)) <= 1.02*steepest*d) { // a little more, for a reading with its accuracy
			bad.Add("/"+one.name, fmt.Sprintf("%s of %.4g mm is over 5 %% of the coupling diameter", one.what, 1000*float64(one.value)), fmt.Sprintf("up to %.4g mm either way", 1000*steepest*d), "is a unit or a decimal point wrong?")
		}
	}
	validate(&bad, in.Mounts, 2)
	if in.TurnAbout != "" && in.TurnAbout != AboutCoupling && in.TurnAbout != AboutMounts {
		bad.Add("/turnAbout", fmt.Sprintf("%q is no place to turn about", in.TurnAbout), AboutCoupling+", "+AboutMounts, "")
	}
	if r := float64(in.SidewaysRatio); r != 0 && !(r >= 0.01 && r <= 10) || r == 0 && in.leansUnknown() {
		bad.Add("/sidewaysRatio", "a stud leans, and how stiff its mount is sideways is not known or out of range", "0.01 to 10", "type the ratio, or both stiffnesses of the mount")
	}
	if len(bad) == 0 {
		aft, fore := math.Inf(1), math.Inf(-1)
		for i := range in.Mounts {
			aft, fore = min(aft, float64(in.Mounts[i].Forward)), max(fore, float64(in.Mounts[i].Forward))
		}
		if fore-aft < shortest {
			bad.Add("/mounts", fmt.Sprintf("all mounts stand within %.3g mm of each other along the shaft: no angle can be set by them", 1000*(fore-aft)), "50 mm or more between the foremost and the aftmost", "measure each mount's distance forward of the coupling face")
		}
	}
	return bad
}

// leansUnknown tells whether a mount leans whose stiffness square to its axis
// is not known.
func (in *MovesInput) leansUnknown() bool {
	for i := range in.Mounts {
		if m := &in.Mounts[i]; m.Inclination != 0 && m.squareTo(0) == 0 {
			return true
		}
	}
	return false
}
