// Sources of vibration and their frequencies.

package vibration

import (
	"math"

	"example.org/driveline/marinecalc/quantity"
)

// The words for the gear, for the strokes and for what a bearing turns with.
const (
	Ahead   = "ahead"
	Neutral = "neutral"
	Astern  = "astern"

	FourStroke = "four-stroke"
	TwoStroke  = "two-stroke"

	WithShaft  = "shaft"
	WithEngine = "engine"
)

// Most is how many sources can be told apart, with the unknown one.
const Most = 20

// Suspect is a kind of part that makes a frequency. What its frequency does in
// each trial run is said in a word or two, the same words where two sources
// do the same.
type Suspect struct {
	Name      string
	Base      string  // engine, firing, mesh, shaft, blade, outer-race, inner-race, ball, cage or mounts
	Multiple  float64 // of the base
	InNeutral string
	AtSpeed   string // at another engine speed
	InAstern  string
	Look      string // where to look or measure, when no run parts it from another
	Healthy   bool   // a sound drivetrain makes it too
}

// SourceInput is the drivetrain as it ran while a frequency was measured. A field
// marked optional is not given when it is 0.
type SourceInput struct {
	EngineSpeed       quantity.RotationSpeed // above 0 up to 1500 rad/s
	Gear              string                 // Ahead, Neutral or Astern
	Cylinders         int                    // optional, up to 24
	Strokes           string                 // FourStroke or TwoStroke; needed with Cylinders
	GearRatioAhead    quantity.Ratio         // optional, 0.2 to 30
	GearRatioAstern   quantity.Ratio         // optional, 0.2 to 30
	InputTeeth        int                    // of the gear on the engine's side; optional, up to 200
	Blades            int                    // optional, up to 12
	Balls             int                    // of the rolling bearing, 3 to 60; optional, with the next two
	BallDiameter      quantity.Length        // below BearingPitch
	BearingPitch      quantity.Length        // diameter of the circle through the balls
	ContactAngle      quantity.Angle         // 0 to 60°
	BearingTurns      string                 // WithShaft or WithEngine; needed with Balls
	BearingSlip       quantity.Ratio         // 0 to 0.2: how far the bearing's orders lie below rolling without slip
	MountFrequency    quantity.Frequency     // of the engine on its mounts; optional
	MountAccuracy     quantity.Ratio         // half-width, of MountFrequency; above 0 up to 0.5, needed with MountFrequency
	Frequency         quantity.Frequency     // that was measured; optional
	FrequencyAccuracy quantity.Frequency     // half-width; needed with Frequency
	SpeedAccuracy     quantity.Ratio         // half-width, of EngineSpeed; 0 to 0.5
	VibrationVelocity quantity.Velocity      // effective value (rms); optional
	VibrationBaseline quantity.Velocity      // the same, of this boat when all was well; optional
	ZoneAb            quantity.Velocity      // limits of the zones; optional, all or none
	ZoneBc            quantity.Velocity
	ZoneCd            quantity.Velocity
}

// Candidate is one source and how likely it is.
type Candidate struct {
	Name      string
	Frequency quantity.Frequency
	Order     quantity.Ratio     // of the engine speed
	OffBy     quantity.Frequency // measured less this
	Share     quantity.Ratio     // of the likelihood; NaN where nothing was measured
}

// SourceResult is what makes the frequency. NaN marks a figure for which an optional
// input is missing.
type SourceResult struct {
	BestMatch          string
	BestShare          quantity.Ratio
	RunnerUp           string
	RunnerUpShare      quantity.Ratio
	Parting            string         // the code of the run or the look that parts the first two
	Zone               string         // of severity
	Growth             quantity.Ratio // vibration over its baseline
	EngineFrequency    quantity.Frequency
	FiringFrequency    quantity.Frequency
	MeshFrequency      quantity.Frequency
	GearRatio          quantity.Ratio // in the gear it ran in
	ShaftFrequency     quantity.Frequency
	BladeFrequency     quantity.Frequency
	BearingFrequency   quantity.Frequency // turns of the bearing's inner ring
	OuterRaceOrder     quantity.Ratio
	InnerRaceOrder     quantity.Ratio
	CageOrder          quantity.Ratio
	BallOrder          quantity.Ratio
	OuterRaceFrequency quantity.Frequency
	InnerRaceFrequency quantity.Frequency
	CageFrequency      quantity.Frequency
	BallFrequency      quantity.Frequency
	Sources            [Most]Candidate
}

// Ranking is the order of the sources in a SourceResult: places in the list of
// sources, the unknown one being one past its end. It is made once on the
// estimates and kept, so that a source stays in its row while trials move the
// numbers.
type Ranking struct {
	order [Most]int
	n     int
}

// bases sets the frequencies that the sources are multiples of.
func (m *SourceResult) bases(in *SourceInput) {
	nan := math.NaN()
	engine := float64(in.EngineSpeed) / (2 * math.Pi)
	m.EngineFrequency = quantity.Frequency(engine)
	firing := engine * quantity.OrNaN(float64(in.Cylinders))
	if in.Strokes == FourStroke {
		firing /= 2
	}
	m.FiringFrequency = quantity.Frequency(firing)
	m.MeshFrequency = quantity.Frequency(engine * quantity.OrNaN(float64(in.InputTeeth)))
	ratio := nan
	switch in.Gear {
	case Ahead:
		ratio = quantity.OrNaN(float64(in.GearRatioAhead))
	case Astern:
		ratio = quantity.OrNaN(float64(in.GearRatioAstern))
	}
	m.GearRatio = quantity.Ratio(ratio)
	shaft := engine / ratio
	m.ShaftFrequency = quantity.Frequency(shaft)
	m.BladeFrequency = quantity.Frequency(shaft * quantity.OrNaN(float64(in.Blades)))
	turns := nan
	o := Orders{nan, nan, nan, nan}
	if in.Balls > 0 {
		if turns = shaft; in.BearingTurns == WithEngine {
			turns = engine
		}
		o = Bearing(in.Balls, float64(in.BallDiameter), float64(in.BearingPitch), float64(in.ContactAngle))
	}
	m.BearingFrequency = quantity.Frequency(turns)
	m.OuterRaceOrder, m.InnerRaceOrder = quantity.Ratio(o.Outer), quantity.Ratio(o.Inner)
	m.CageOrder, m.BallOrder = quantity.Ratio(o.Cage), quantity.Ratio(o.Ball)
	slipped := turns * (1 - float64(in.BearingSlip))
	m.OuterRaceFrequency, m.InnerRaceFrequency = quantity.Frequency(o.Outer*slipped), quantity.Frequency(o.Inner*slipped)
	m.CageFrequency, m.BallFrequency = quantity.Frequency(o.Cage*slipped), quantity.Frequency(o.Ball*slipped)
}

// of is the frequency of a source, and whether the bearing's slip is in it.
func (m *SourceResult) of(s *Suspect, in *SourceInput) (hertz float64, slips bool) {
	var base quantity.Frequency
	switch s.Base {
	case "engine":
		base = m.EngineFrequency
	case "firing":
		base = m.FiringFrequency
	case "mesh":
		base = m.MeshFrequency
	case "shaft":
		base = m.ShaftFrequency
	case "blade":
		base = m.BladeFrequency
	case "outer-race":
		base, slips = m.OuterRaceFrequency, true
	case "inner-race":
		base, slips = m.InnerRaceFrequency, true
	case "ball":
		base, slips = m.BallFrequency, true
	case "cage":
		base, slips = m.CageFrequency, true
	case "mounts":
		base = quantity.Frequency(quantity.OrNaN(float64(in.MountFrequency)))
	default:
		base = quantity.Frequency(math.NaN())
	}
	return s.Multiple * float64(base), slips
}
