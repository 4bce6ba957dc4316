// How coupling and shaft stood while they were read: pilot and centring.

package align

import (
	"fmt"
	"math"

	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/quantity"
)

// Pilot says where the spigot that centres the flanges was while they were read.
type Pilot string

// Where the pilot may be. Empty: nobody said.
const (
	PilotOut Pilot = "parted"  // clear of its recess
	PilotIn  Pilot = "engaged" // in its recess
	NoPilot  Pilot = "none"    // the flanges have none
)

// Centred says whether the shaft stood in the middle of tube and gland.
type Centred string

// How the shaft may stand. Empty: nobody looked.
const (
	InMiddle Centred = "centred"
	Touching Centred = "touching" // it lay against tube or gland
)

// The codes of PilotState, for which the schemas have the words.
const (
	PilotClear     = "clear"
	PilotEngaged   = "engaged"
	PilotStillIn   = "still-in"
	PilotNotLooked = "not-looked"
)

// The codes of ShaftState, for which the schemas have the words.
const (
	ShaftCentred   = "centred"
	ShaftTouching  = "touching"
	ShaftNotLooked = "not-looked"
)

// setup is what both ways of reading ask of coupling and shaft.
type setup struct {
	pilot               Pilot
	depth, apart        quantity.Length // of the pilot, and the faces; 0 or NaN: not known
	centred             Centred
	flexible            bool            // the coupling: it is centred by no pilot
	free, hidden        quantity.Length // free length of the shaft; offset that a pilot in its recess may hide
	diameter            quantity.Length
	pilotGap            quantity.Length // see bent
	pilotIs, shaftStand string
}

// look finds the codes, and what a pilot in its recess may do to the gap.
func (s *setup) look() {
	s.pilotIs = PilotNotLooked
	switch known := s.depth > 0 && s.apart > 0; {
	case s.pilot == NoPilot:
		s.pilotIs = PilotClear
	case s.pilot == PilotIn:
		s.pilotIs = PilotEngaged
	case known && s.apart < s.depth:
		s.pilotIs = PilotStillIn // whatever was said
	case s.pilot == PilotOut, known, s.flexible:
		s.pilotIs = PilotClear
	}
	s.shaftStand = ShaftNotLooked
	switch s.centred {
	case InMiddle:
		s.shaftStand = ShaftCentred
	case Touching:
		s.shaftStand = ShaftTouching
	}
	s.pilotGap = 0
	if s.in() {
		s.pilotGap = s.bent()
	}
}

// in tells whether the pilot held the shaft's end.
func (s *setup) in() bool { return s.pilotIs == PilotEngaged || s.pilotIs == PilotStillIn }

// bent is the gap difference that a pilot makes of an offset it hides. It takes
// the shaft's free end across by the offset h and lets it turn: a cantilever of
// length L with a force at its end, whose slope there is 3h/(2L) (Gere,
// Mechanics of Materials, appendix of beam deflections: PL²/(2EI) over
// PL³/(3EI)). NaN where the length is not known.
func (s *setup) bent() quantity.Length {
	return quantity.Length(1.5 * float64(s.diameter) * max(float64(s.hidden), 0) / quantity.OrNaN(float64(s.free)))
}

// check refuses words and lengths that cannot be.
func (s *setup) check(bad *problem.List) {
	if s.pilot != "" && s.pilot != PilotOut && s.pilot != PilotIn && s.pilot != NoPilot {
		bad.Add("/pilot", fmt.Sprintf("%q is no place for the pilot", string(s.pilot)), "parted, engaged, none", "")
	}
	if s.centred != "" && s.centred != InMiddle && s.centred != Touching {
		bad.Add("/shaftCentred", fmt.Sprintf("%q is no way the shaft can stand", string(s.centred)), "centred, touching", "")
	}
	orNone := func(name, what string, v, high float64, allowed string) {
		if !math.IsNaN(v) && !problem.Within(v, -gapBelowNone, high) { // a little below nothing is its accuracy
			bad.Add("/"+name, fmt.Sprintf("%s of %.4g mm is out of range", what, 1000*v), allowed, "")
		}
	}
	orNone("pilotDepth", "a pilot's depth", float64(s.depth), 0.2, "0 mm to 200 mm")
	orNone("freeLength", "a free length", float64(s.free), 10, "0 mm to 10 m")
	orNone("hiddenOffset", "an offset", float64(s.hidden), 0.01, "0 mm to 10 mm")
}

// takeSetup writes how it was read, blanks the offset that a pilot hides, adds
// what one may hide of which nobody said where it was, and lets nothing be judged of a shaft that does not stand where it runs.
func (out *CouplingResult) takeSetup(s *setup) {
	out.PilotState, out.ShaftState, out.PilotGap = s.pilotIs, s.shaftStand, s.pilotGap
	nan := quantity.Length(math.NaN())
	if out.PilotOffset = 0; s.pilotIs == PilotNotLooked {
		out.PilotOffset = max(s.hidden, 0)
		out.WorstOffset += out.PilotOffset
	}
	if s.in() {
		out.Offset, out.OffsetVertical, out.OffsetHorizontal, out.WorstOffset = nan, nan, nan, nan
		out.OffsetAt, out.OffsetTowards = quantity.Direction(math.NaN()), ""
		out.WorstGap += s.pilotGap
	}
	if s.shaftStand == ShaftTouching {
		out.WorstGap, out.WorstOffset = nan, nan
	}
	out.WorstGapPerDiameter = quantity.Ratio(out.WorstGap / s.diameter)
}
