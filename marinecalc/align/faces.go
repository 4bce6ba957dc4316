// What is read round a coupling: CouplingInput, and the checks of the readings.

package align

import (
	"fmt"
	"math"

	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/quantity"
)

// Kind says how the two coupling flanges meet.
type Kind string

// The kinds of coupling.
const (
	Rigid    Kind = "rigid"    // metal to metal, face to face
	Flexible Kind = "flexible" // a rubber or sprung part between the faces
)

// Turned says what was turned between one set of readings and the next.
type Turned string

// What may be turned.
const (
	ShaftFlange Turned = "shaft-flange" // the shaft alone; the default
	BothFlanges Turned = "both-flanges" // both flanges together
)

// End says how the shaft's free end was while the readings were taken.
type End string

// How the end may be.
const (
	HeldUp      End = "held-up"      // lifted by its droop; the default
	HangingFree End = "hanging-free" // the droop is in the readings
)

// Reading is one gap between the faces. Directions are clock positions in
// radians from the top, clockwise as seen looking forward from the shaft
// toward the engine: 3 o'clock, to starboard, is π/2.
type Reading struct {
	Clock quantity.Direction // where the feeler goes in, fixed in the boat; 0 to 2π
	Turn  quantity.Angle     // how far the shaft stood turned from its first position, same sense; 0 to 2π
	Gap   quantity.Length    // 0 to 50 mm; down to -0.1 mm for a gap of none less its accuracy

	GapUncertainty quantity.Length `spreadOf:"gap"` // standard uncertainty of its gauge; 0: not known
}

// RimReading is one step between the rims of the two flanges.
type RimReading struct {
	Clock quantity.Direction // as in Reading
	Turn  quantity.Angle     // as in Reading
	Step  quantity.Length    // -50 to 50 mm, plus where the gearbox output flange stands proud

	StepUncertainty quantity.Length `spreadOf:"step"` // standard uncertainty of its gauge; 0: not known
}

// CouplingInput is what was read at a coupling.
type CouplingInput struct {
	Readings         []Reading       // 4 to 96
	CouplingDiameter quantity.Length // of the circle the feeler reads on, 30 mm to 800 mm
	CouplingKind     Kind            // Rigid or Flexible
	GapAllowance     quantity.Ratio  // gap difference over diameter that is allowed, up to 0.05; 0: not given
	Turned           Turned          // empty: ShaftFlange
	RimReadings      []RimReading    // none, or 4 to 96
	ShaftEnd         End             // empty: HeldUp
	DroopSlope       quantity.Angle  // of the shaft's free end, plus down; needed when it hung free, else not used
	DroopSag         quantity.Length // of the shaft's free end, plus down; needed when it hung free and the rim was read

	Pilot        Pilot           // empty: not said
	PilotDepth   quantity.Length // of the pilot, up to 0.2 m; 0: not known. Faces nearer than that have it in
	ShaftCentred Centred         // empty: not looked at
	FreeLength   quantity.Length // of the shaft from its face to the first bearing or gland behind, up to 10 m; 0: not known
	HiddenOffset quantity.Length `unset:"NaN"` // that an engaged pilot may hide, or one of which nobody said where it was, up to 10 mm; NaN: not known

	KnownFaceRunOut quantity.Length `unset:"NaN"` // total, of the shaft coupling flange, where the readings do not tell it; NaN: not known
	KnownRimRunOut  quantity.Length `unset:"NaN"` // the same of its rim

	FaceRunOutRead bool `readOf:"knownFaceRunOut"` // by a dial on this flange, and not only what is usual
	RimRunOutRead  bool `readOf:"knownRimRunOut"`
}

// What is taken as a slip of the pen rather than as a reading. These are
// bounds on input, not tolerances of alignment.
const (
	fewest       = 3                  // readings at different places: as many as a plane has unknowns
	most         = 96                 // readings
	samePlace    = 10 * math.Pi / 180 // positions nearer than this are one place
	mostPlaces   = 36                 // that leave samePlace between any two
	sameReading  = math.Pi / 180      // nearer than this the same reading was taken twice
	twiceApart   = 0.3e-3             // m, two readings of the same place
	angleOff     = 0.2                // rad, by which an angle's accuracy may take it beyond one turn
	gapBelowNone = 0.1e-3             // m, by which its accuracy may take a gap below nothing
	steepest     = 0.05               // gap difference or offset over coupling diameter
)

// point is a reading of a gap or of a step. The fit fills in the rest.
type point struct {
	clock, turn, value float64
	sd                 float64 // of its gauge; 0: not known
	sin, cos           float64 // of clock
	group              int     // number of its shaft turn
	row                row     // less the mean of its group
}

// points is the readings of one series.
type points []point

// enough is how many readings fit without allocating: four
// places in four turns of the shaft.
const enough = 16

func (p points) with(clock quantity.Direction, turn quantity.Angle, value, sd quantity.Length) points {
	if n := len(p); n < cap(p) {
		p = p[:n+1] // a point written in full would be copied
	} else {
		p = append(p, point{})
	}
	r := &p[len(p)-1]
	r.clock, r.turn, r.value, r.sd = float64(clock), float64(turn), float64(value), float64(sd)
	return p
}

// series names one list of readings for messages.
type series struct{ list, value, valueTitle, allowed string }

// again is what to ask of a place that was read twice with different answers: by a
// dial, which is carried round, or by feelers.
func (s *series) again() string {
	if s.value == rimSeries.value || s.value == faceSeries.value {
		return "set both dials to zero and go round again; did the bar, its clamp or a dial slip on the way?"
	}
	return "read it again; was the shaft turned between the two?"
}

var (
	gaps  = series{"/readings", "gap", "the gap", "0 mm to 50 mm"}
	steps = series{"/rimReadings", "step", "the step", "-50 mm to 50 mm"}
)

// read gives the readings as points, in the slices handed over where they fit.
func (in *CouplingInput) read(gap, rim points) (points, points) {
	for i := range in.Readings {
		r := &in.Readings[i]
		gap = gap.with(r.Clock, r.Turn, r.Gap, r.GapUncertainty)
	}
	for i := range in.RimReadings {
		r := &in.RimReadings[i]
		rim = rim.with(r.Clock, r.Turn, r.Step, r.StepUncertainty)
	}
	return gap, rim
}

// usable collects everything that makes the faces unfit to work with.
func (in *CouplingInput) usable(gap, rim points) problem.List {
	var bad problem.List
	if !problem.Within(float64(in.CouplingDiameter), 0.03, 0.8) {
		bad.Add("/couplingDiameter", fmt.Sprintf("a coupling diameter of %.4g m is out of range", float64(in.CouplingDiameter)), "30 mm to 800 mm", "")
	}
	if in.CouplingKind != Rigid && in.CouplingKind != Flexible {
		bad.Add("/couplingKind", fmt.Sprintf("%q is not a kind of coupling", string(in.CouplingKind)), "rigid, flexible", "")
	}
	if in.Turned != "" && in.Turned != ShaftFlange && in.Turned != BothFlanges {
		bad.Add("/turned", fmt.Sprintf("%q cannot be what was turned", string(in.Turned)), "shaft-flange, both-flanges", "")
	}
	in.checkDroop(&bad)
	s := setup{pilot: in.Pilot, depth: in.PilotDepth, centred: in.ShaftCentred, free: in.FreeLength, hidden: in.HiddenOffset}
	s.check(&bad)
	checkRunOut(&bad, "knownFaceRunOut", in.KnownFaceRunOut)
	checkRunOut(&bad, "knownRimRunOut", in.KnownRimRunOut)
	if len(in.Readings) > most || len(in.RimReadings) > most {
		where := gaps.list
		if len(in.Readings) <= most {
			where = steps.list
		}
		bad.Add(where, "there are too many readings", fmt.Sprintf("%d to %d", fewest, most), "")
		return bad
	}
	gap.check(&bad, &gaps, -gapBelowNone)
	if len(rim) > 0 {
		rim.check(&bad, &steps, -0.05)
	}
	return bad
}

// check looks at each reading, and at how they lie round the clock.
func (p points) check(bad *problem.List, s *series, least float64) {
	sound := true
	fault := func(i int, part, what, allowed, hint string) {
		bad.Add(fmt.Sprintf("%s/%d/%s", s.list, i, part), what, allowed, hint)
		sound = false
	}
	lowest, highest := math.Inf(1), math.Inf(-1)
	for i := range p {
		r := &p[i]
		if !problem.Within(r.clock, -angleOff, 2*math.Pi+angleOff) {
			fault(i, "clock", "the clock position is not within one turn", "0° to 360°", "3 o'clock is 90°")
		}
		if !problem.Within(r.turn, -angleOff, 2*math.Pi+angleOff) {
			fault(i, "turn", "the shaft turn is not within one turn", "0° to 360°", "")
		}
		if !problem.Within(r.value, least, 0.05) {
			fault(i, s.value, fmt.Sprintf("%s of %.4g mm is out of range", s.valueTitle, 1000*r.value), s.allowed, "")
		}
		if r.value < lowest {
			lowest = r.value
		}
		if r.value > highest {
			highest = r.value
		}
	}
	if !sound {
		return
	}
	if highest-lowest > twiceApart {
		p.checkTwice(fault, s)
	}
	places, oneSided := p.spread()
	switch {
	case places < fewest:
		bad.Add(s.list, fmt.Sprintf("there are readings at %d clock positions", places), "3 or more, at least 10° apart", "read at 12, 3, 6 and 9 o'clock")
	case oneSided:
		bad.Add(s.list, "all readings lie in less than a half circle, which does not tell which way the faces lean", "readings all round", "read at 12, 3, 6 and 9 o'clock")
	}
}

// checkTwice looks for places that were read twice with different answers.
func (p points) checkTwice(fault func(i int, part, what, allowed, hint string), s *series) {
	for i := range p {
		r := &p[i]
		for j := range i {
			q := &p[j]
			if math.Abs(r.value-q.value) > twiceApart && apart(r.clock, q.clock) < sameReading && apart(r.turn, q.turn) < sameReading {
				fault(i, s.value, fmt.Sprintf("the same place was read twice, %.4g mm and %.4g mm", 1000*q.value, 1000*r.value), "readings within 0.3 mm of each other", s.again())
				break
			}
		}
	}
}

// spread counts the clock positions that are samePlace or more from one
// another, and says whether they all lie in less than a half circle, so that
// there is one with no other in the half turn after it.
func (p points) spread() (places int, oneSided bool) {
	var place [mostPlaces]float64
next:
	for i := range p {
		clock := p[i].clock
		for _, known := range place[:places] {
			if clock == known || apart(clock, known) < samePlace {
				continue next
			}
		}
		place[places] = clock
		places++
	}
	for i, from := range place[:places] {
		alone := true
		for j, to := range place[:places] {
			if i != j && turnOf(to-from) <= math.Pi+sameReading {
				alone = false
				break
			}
		}
		oneSided = oneSided || alone
	}
	return places, oneSided
}

// turnOf brings an angle into 0 to 2π, 2π itself left out. Nearly all angles
// are within a turn of it, which spares the division.
func turnOf(a float64) float64 {
	switch {
	case a >= 0 && a < 2*math.Pi:
		return a
	case a < 0 && a >= -2*math.Pi:
		a += 2 * math.Pi
	default:
		a -= 2 * math.Pi * math.Floor(a/(2*math.Pi))
	}
	if a >= 2*math.Pi {
		return 0
	}
	return a
}

// apart is the smaller arc between two directions.
func apart(a, b float64) float64 {
	d := turnOf(a - b)
	if d > math.Pi {
		return 2*math.Pi - d
	}
	return d
}

// checkDroop asks for the droop where the readings hold it.
func (in *CouplingInput) checkDroop(bad *problem.List) {
	switch in.ShaftEnd {
	case "", HeldUp:
		return
	case HangingFree:
	default:
		bad.Add("/shaftEnd", fmt.Sprintf("%q is no way the shaft end can be", string(in.ShaftEnd)), "held-up, hanging-free", "")
		return
	}
	const hint = "take it from shaft-droop, or hold the end up and read again"
	if slope := float64(in.DroopSlope); slope == 0 || !problem.Within(slope, -0.1, 0.25) {
		bad.Add("/droopSlope", "the slope of the hanging shaft end is not known or out of range", "-50 mm/m to 200 mm/m", hint)
	}
	if sag := float64(in.DroopSag); len(in.RimReadings) > 0 && (sag == 0 || !problem.Within(sag, -0.02, 0.06)) {
		bad.Add("/droopSag", "the droop of the hanging shaft end is not known or out of range", "-10 mm to 50 mm", hint)
	}
}

// checkRunOut refuses a run-out that no flange has. A little below nothing is
// its accuracy.
func checkRunOut(bad *problem.List, name string, total quantity.Length) {
	if v := float64(total); !math.IsNaN(v) && !problem.Within(v, -gapBelowNone, 0.01) {
		bad.Add("/"+name, fmt.Sprintf("a run-out of %.4g mm is out of range", 1000*v), "0 mm to 10 mm", "a total indicator reading over one turn of the shaft")
	}
}
