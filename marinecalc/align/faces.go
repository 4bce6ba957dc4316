// Package align tells how engine and propeller shaft lie to each other from
// gaps and steps read round the coupling between them.
package align

import (
	"fmt"
	"math"

	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/quantity"
)

// Kind says how the two halves of the coupling meet.
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
	ShaftHalf  Turned = "shaft-half"  // the shaft alone; the default
	BothHalves Turned = "both-halves" // shaft and engine half together
)

// Reading is one gap between the faces. Directions are clock positions in
// radians from the top, clockwise as seen looking forward from the shaft
// toward the engine: 3 o'clock, to starboard, is π/2.
type Reading struct {
	Clock quantity.Direction // where the feeler goes in, fixed in the boat; 0 to 2π
	Turn  quantity.Angle     // how far the shaft stood turned from its first position, same sense; 0 to 2π
	Gap   quantity.Length    // 0 to 50 mm; down to -0.1 mm for a gap of none less its accuracy
}

// RimReading is one step between the rims of the two halves.
type RimReading struct {
	Clock quantity.Direction // as in Reading
	Turn  quantity.Angle     // as in Reading
	Step  quantity.Length    // -50 to 50 mm, plus where the engine half stands proud
}

// Faces is what was read at a coupling.
type Faces struct {
	Readings         []Reading              // 4 to 96
	CouplingDiameter quantity.Length        // of the circle the feeler reads on, 30 mm to 800 mm
	CouplingKind     Kind                   // does not enter the arithmetic; limits go by it
	Turned           Turned                 // empty: ShaftHalf
	ShaftSpeed       quantity.RotationSpeed // does not enter the arithmetic; limits go by it. 0: not given, else 1 to 1000 rad/s
	RimReadings      []RimReading           // none, or 4 to 96
}

// What is taken as a slip of the pen rather than as a reading. These are
// bounds on input, not tolerances of alignment.
const (
	fewest       = 4                  // readings at different places
	most         = 96                 // readings
	samePlace    = 10 * math.Pi / 180 // positions nearer than this are one place
	mostPlaces   = 36                 // that leave samePlace between any two
	sameReading  = math.Pi / 180      // nearer than this the same reading was taken twice
	twiceApart   = 0.3e-3             // m, two readings of the same place
	angleOff     = 0.2                // rad, by which an angle's accuracy may take it beyond one turn
	gapBelowNone = 0.1e-3             // m, by which its accuracy may take a gap below nothing
	steepest     = 0.05               // gap difference or offset over coupling diameter
)

// point is a reading of a gap or of a step.
type point struct{ clock, turn, value float64 }

// points holds the readings of one series without allocating.
type points struct {
	all [most]point
	n   int
}

func (p *points) add(clock quantity.Direction, turn quantity.Angle, value quantity.Length) {
	p.all[p.n] = point{float64(clock), float64(turn), float64(value)}
	p.n++
}

// series names one list of readings for messages.
type series struct{ list, value, valueTitle, allowed string }

var (
	gaps  = series{"/readings", "gap", "the gap", "0 mm to 50 mm"}
	steps = series{"/rimReadings", "step", "the step", "-50 mm to 50 mm"}
)

// usable collects everything that makes the faces unfit to work with.
func (in *Faces) usable(gap, rim *points) problem.List {
	var bad problem.List
	if !within(float64(in.CouplingDiameter), 0.03, 0.8) {
		bad.Add("/couplingDiameter", fmt.Sprintf("a coupling diameter of %.4g m is out of range", float64(in.CouplingDiameter)), "30 mm to 800 mm", "")
	}
	if in.CouplingKind != Rigid && in.CouplingKind != Flexible {
		bad.Add("/couplingKind", fmt.Sprintf("%q is not a kind of coupling", string(in.CouplingKind)), "rigid, flexible", "")
	}
	if in.Turned != "" && in.Turned != ShaftHalf && in.Turned != BothHalves {
		bad.Add("/turned", fmt.Sprintf("%q cannot be what was turned", string(in.Turned)), "shaft-half, both-halves", "")
	}
	if in.ShaftSpeed != 0 && !within(float64(in.ShaftSpeed), 1, 1000) {
		bad.Add("/shaftSpeed", fmt.Sprintf("a shaft speed of %.4g rad/s is out of range", float64(in.ShaftSpeed)), "1 rad/s to 1000 rad/s (10 rpm to 9550 rpm)", "")
	}
	if len(in.Readings) > most || len(in.RimReadings) > most {
		where := gaps.list
		if len(in.Readings) <= most {
			where = steps.list
		}
		bad.Add(where, "there are too many readings", fmt.Sprintf("%d to %d", fewest, most), "")
		return bad
	}
	for _, r := range in.Readings {
		gap.add(r.Clock, r.Turn, r.Gap)
	}
	for _, r := range in.RimReadings {
		rim.add(r.Clock, r.Turn, r.Step)
	}
	gap.check(&bad, gaps, -gapBelowNone)
	if rim.n > 0 {
		rim.check(&bad, steps, -0.05)
	}
	return bad
}

// check looks at each reading, and at how they lie round the clock.
func (p *points) check(bad *problem.List, s series, least float64) {
	sound := true
	fault := func(i int, part, what, allowed, hint string) {
		bad.Add(fmt.Sprintf("%s/%d/%s", s.list, i, part), what, allowed, hint)
		sound = false
	}
	for i, r := range p.all[:p.n] {
		if !within(r.clock, -angleOff, 2*math.Pi+angleOff) {
			fault(i, "clock", "the clock position is not within one turn", "0° to 360°", "3 o'clock is 90°")
		}
		if !within(r.turn, -angleOff, 2*math.Pi+angleOff) {
			fault(i, "turn", "the shaft turn is not within one turn", "0° to 360°", "")
		}
		if !within(r.value, least, 0.05) {
			fault(i, s.value, fmt.Sprintf("%s of %.4g mm is out of range", s.valueTitle, 1000*r.value), s.allowed, "")
		}
	}
	if !sound {
		return
	}
	for i, r := range p.all[:p.n] {
		for _, q := range p.all[:i] {
			if math.Abs(r.value-q.value) > twiceApart && apart(r.clock, q.clock) < sameReading && apart(r.turn, q.turn) < sameReading {
				fault(i, s.value, fmt.Sprintf("the same place was read twice, %.4g mm and %.4g mm", 1000*q.value, 1000*r.value), "readings within 0.3 mm of each other", "read it again; was the shaft turned between the two?")
				break
			}
		}
	}
	places, widest := p.spread()
	switch {
	case places < fewest:
		bad.Add(s.list, fmt.Sprintf("there are readings at %d clock positions", places), "4 or more, at least 10° apart", "read at 12, 3, 6 and 9 o'clock")
	case widest > math.Pi+sameReading:
		bad.Add(s.list, "all readings lie in less than a half circle, which does not tell which way the faces lean", "readings all round", "read at 12, 3, 6 and 9 o'clock")
	}
}

// spread counts the clock positions that are samePlace or more from one
// another, and finds the widest arc between neighbours among them.
func (p *points) spread() (places int, widest float64) {
	var place [mostPlaces]float64
next:
	for i := range p.all[:p.n] {
		clock := p.all[i].clock
		for _, known := range place[:places] {
			if apart(clock, known) < samePlace {
				continue next
			}
		}
		place[places] = clock
		places++
	}
	for i, from := range place[:places] {
		ahead := 2 * math.Pi
		for j, to := range place[:places] {
			if i != j {
				ahead = min(ahead, turnOf(to-from))
			}
		}
		widest = max(widest, ahead)
	}
	return places, widest
}

// turnOf brings an angle into 0 to 2π, 2π itself left out.
func turnOf(a float64) float64 {
	a -= 2 * math.Pi * math.Floor(a/(2*math.Pi))
	if a >= 2*math.Pi {
		return 0
	}
	return a
}

// apart is the smaller arc between two directions.
func apart(a, b float64) float64 {
	d := turnOf(a - b)
	return min(d, 2*math.Pi-d)
}

// within allows the last digit of a limit that came from another unit, and
// refuses NaN.
func within(v, lo, hi float64) bool {
	slack := 1e-12 * math.Abs(v)
	return v >= lo-slack && v <= hi+slack
}
