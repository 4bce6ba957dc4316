// Package seatrial is the protocol of a sea trial for this boat, and takes its
// readings back. The arithmetic is package proof below it: seatrial.go is what
// goes in and comes out, protocol.go makes the stages of the rows of rule
// data, hold.go holds the readings against limits and baseline, words.go says
// how it came out, waits.go what stands against running it, draw.go draws it.
package seatrial

import (
	"math"

	"example.org/driveline/marinecalc/internal/calc"
	"example.org/driveline/marinecalc/internal/picture"
	"example.org/driveline/marinecalc/internal/seatrial/proof"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/sheet"
)

// Input is what sea-trial takes.
type Input struct {
	Date         string
	By           string
	IdleSpeed    quantity.RotationSpeed
	EngineSpeed  quantity.RotationSpeed // rated
	RatioAhead   quantity.Ratio         // 0: not known
	RatioAstern  quantity.Ratio
	RevsPerInch  quantity.RotationSpeed // by which an inch of pitch moves the speed at full throttle
	SteadyWithin quantity.TemperatureDifference
	Runs         []Run
	Tachometer   string
	Thermometer  string
	MeterUsed    string
	DripGauge    string
}

// Run is what was read at one stage. Numbers that are NaN and words that are
// "" were not read.
type Run struct {
	Stage              string
	EngineSpeed        quantity.RotationSpeed `unset:"NaN"`
	BoatSpeed          quantity.Velocity      `unset:"NaN"`
	GlandTemperature   quantity.Temperature   `unset:"NaN"`
	GlandBefore        quantity.Temperature   `unset:"NaN"` // five minutes earlier
	GearboxTemperature quantity.Temperature   `unset:"NaN"`
	WaterTemperature   quantity.Temperature   `unset:"NaN"`
	AirTemperature     quantity.Temperature   `unset:"NaN"`
	VibrationVelocity  quantity.Velocity      `unset:"NaN"`
	DripRate           quantity.DripRate      `unset:"NaN"`
	Leaks              string
	Marks              string
	FluidLevel         string
	Drive              string
	ExhaustWater       string

	EngineSpeedUncertainty quantity.RotationSpeed `spreadOf:"engineSpeed"`
	GlandUncertainty       quantity.Temperature   `spreadOf:"glandTemperature"`
	GearboxUncertainty     quantity.Temperature   `spreadOf:"gearboxTemperature"`
	WaterUncertainty       quantity.Temperature   `spreadOf:"waterTemperature"`
	VibrationUncertainty   quantity.Velocity      `spreadOf:"vibrationVelocity"`
	DripUncertainty        quantity.DripRate      `spreadOf:"dripRate"`
}

// Result is what sea-trial gives. A number that is NaN was not read.
type Result struct {
	Outcome            string // a proof.Word
	Says               string
	Fails              quantity.Ratio // readings over their limit; NaN while the trial is neither failed nor whole
	FullSpeedShare     quantity.Ratio
	PitchSays          string
	PitchChange        quantity.Length
	GlandRise          quantity.TemperatureDifference
	GearboxTemperature quantity.Temperature
	GearboxRise        quantity.TemperatureDifference // above the sea
	GearboxOverAir     quantity.TemperatureDifference // above the engine space
	VibrationVelocity  quantity.Velocity              // the strongest
	ReadingsWanted     int
	ReadingsTaken      int
	Minutes            quantity.Time
	Signature          string
	Protocol           [mostStages]StageLine
	Checks             [mostChecks]CheckLine
	hazards            []string // ids of cautions: of the stages still to run, or that the shaft stands
}

// Hazards are the cautions of the stages that are still to run. Where the shaft
// must not run that caution stands alone.
func (r Result) Hazards() []string { return r.hazards }

const (
	mostStages = 16
	mostChecks = 64
)

// StageLine is one stage of the protocol.
type StageLine struct {
	Stage       string
	Lever       string
	EngineSpeed quantity.RotationSpeed
	ShaftSpeed  quantity.RotationSpeed
	Minutes     quantity.Time
	Do          string
	Read        string
	Stop        string
}

// CheckLine is one reading at one stage.
type CheckLine struct {
	Stage    string
	Reading  string
	Read     string // "" leaves space to write
	Limit    string
	Baseline string
	Word     string // a proof.Word
	Reason   string
}

// Prove lays the protocol out and holds the readings that were brought back
// against it. The lists are made on the estimates, and trials move the numbers.
func Prove(s *calc.Session) calc.PerRun[Input, Result] {
	var made *Result
	return calc.PerRun[Input, Result]{Compute: func(in Input) (Result, error) {
		if made == nil {
			t := &trial{session: s, in: &in, doubted: map[string]bool{}}
			if err := t.check(); err != nil {
				return Result{}, err
			}
			t.make()
			made = &t.out
		}
		out := *made
		out.numbers(&in)
		return out, nil
	}, Draw: func(in Input, out Result, b picture.Brush) []sheet.Drawing { return draw(in, out, b) }}
}

// numbers works out what trials move: the hottest readings, and the speed that
// was reached.
func (r *Result) numbers(in *Input) {
	nan := math.NaN()
	r.FullSpeedShare, r.PitchChange = quantity.Ratio(nan), quantity.Length(nan)
	r.GlandRise, r.GearboxRise, r.GearboxOverAir = quantity.TemperatureDifference(nan), quantity.TemperatureDifference(nan), quantity.TemperatureDifference(nan)
	r.GearboxTemperature, r.VibrationVelocity = quantity.Temperature(nan), quantity.Velocity(nan)
	for i := range in.Runs {
		run := &in.Runs[i]
		r.GlandRise = hotter(r.GlandRise, run.GlandTemperature, run.WaterTemperature)
		r.GearboxRise = hotter(r.GearboxRise, run.GearboxTemperature, run.WaterTemperature)
		r.GearboxOverAir = hotter(r.GearboxOverAir, run.GearboxTemperature, run.AirTemperature)
		if !(r.GearboxTemperature >= run.GearboxTemperature) && !math.IsNaN(float64(run.GearboxTemperature)) {
			r.GearboxTemperature = run.GearboxTemperature
		}
		if v := run.VibrationVelocity; !math.IsNaN(float64(v)) && !(r.VibrationVelocity >= v) {
			r.VibrationVelocity = v
		}
		if run.Stage == fullThrottle {
			r.FullSpeedShare = quantity.Ratio(run.EngineSpeed / in.EngineSpeed)
			r.PitchChange = quantity.Length(inch * float64((in.EngineSpeed-run.EngineSpeed)/in.RevsPerInch))
		}
	}
}

const (
	fullThrottle = "full"
	inch         = 0.0254
)

// hotter is the larger of a rise and that of a temperature over another.
func hotter(so quantity.TemperatureDifference, of, over quantity.Temperature) quantity.TemperatureDifference {
	rise := quantity.TemperatureDifference(of - over)
	if math.IsNaN(float64(rise)) || so >= rise {
		return so
	}
	return rise
}

// reading is what was read under a name, with its standard uncertainty; NaN
// where it was not.
func (r *Run) reading(name string) proof.Reading {
	switch name {
	case "engineSpeed":
		return proof.Reading{Value: float64(r.EngineSpeed), Uncertainty: float64(r.EngineSpeedUncertainty)}
	case "glandTemperature":
		return proof.Reading{Value: float64(r.GlandTemperature), Uncertainty: float64(r.GlandUncertainty)}
	case "gearboxTemperature":
		return proof.Reading{Value: float64(r.GearboxTemperature), Uncertainty: float64(r.GearboxUncertainty)}
	case "waterTemperature":
		return proof.Reading{Value: float64(r.WaterTemperature), Uncertainty: float64(r.WaterUncertainty)}
	case "vibrationVelocity":
		return proof.Reading{Value: float64(r.VibrationVelocity), Uncertainty: float64(r.VibrationUncertainty)}
	case "dripRate":
		return proof.Reading{Value: float64(r.DripRate), Uncertainty: float64(r.DripUncertainty), Counted: true}
	}
	return proof.Reading{Value: math.NaN()}
}

// word is what was seen under a name; "" where nobody looked.
func (r *Run) word(name string) string {
	switch name {
	case "leaks":
		return r.Leaks
	case "marks":
		return r.Marks
	case "fluidLevel":
		return r.FluidLevel
	case "drive":
		return r.Drive
	case "exhaustWater":
		return r.ExhaustWater
	}
	return ""
}
