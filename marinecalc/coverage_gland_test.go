package marinecalc_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
	"gonum.org/v1/gonum/stat/distuv"
)

// simulated is a gland or a bearing whose true figures are known, read as a
// person reads it: the inputs of a sheet, and the truth by the sheet's results.
type simulated struct {
	what        string
	calculation string
	draw        func(*rand.Rand) (input string, truth map[string]float64)
	wide        bool // more than the stated share is right: a count is a whole number, and a blade has one side
}

// between draws evenly, and triangle from a triangle, as the rule rows and gauges say.
func between(r *rand.Rand, low, high float64) float64 { return low + (high-low)*r.Float64() }

func triangle(r *rand.Rand, low, mode, high float64) float64 {
	u := r.Float64()
	if c := (mode - low) / (high - low); u < c {
		return low + math.Sqrt(u*(high-low)*(mode-low))
	}
	return high - math.Sqrt((1-u)*(high-low)*(high-mode))
}

const perMinute = 1.0 / 60

// glandOf is a gland with every factor drawn from what the sheet says of it; the drips and
// temperatures are read with the gauges' errors. The heat balance is worked here on its own.
func glandOf(r *rand.Rand, measured bool) (string, map[string]float64) {
	d, bore, packed, omega := 0.032, 0.050, 0.036, 1200*2*math.Pi/60
	water, rate := between(r, 285, 298), between(r, 3, 30)
	mu, lateral, stress := triangle(r, 0.15, 0.2, 0.25), triangle(r, 0.5, 0.7, 0.9), triangle(r, 30e3, 100e3, 300e3)
	drop, filmWater, filmAir := between(r, 0.045e-6, 0.055e-6), triangle(r, 100, 500, 1500), triangle(r, 5, 10, 25)
	area, wet := triangle(r, 2, 4, 8), triangle(r, 0, 0.5, 2)
	const k = 15.0
	decay := (bore - d) / (4 * mu * lateral)
	power := d / 2 * math.Pi * d * mu * lateral * stress * decay * (1 - math.Exp(-packed/decay)) * omega
	fin := func(film float64) float64 { return math.Sqrt(film * math.Pi * d * k * math.Pi * d * d / 4) }
	dry := fin(filmWater) + fin(filmAir) + (filmAir*area+filmWater*wet)*math.Pi*bore*packed
	if measured { // any friction: the thermometer tells
		power = between(r, 5, 40)
	}
	const heat = 1025.5 * 3993 // of sea water, J/(m³·K)
	rise := power / (dry + heat*drop*rate*perMinute)
	counted := distuv.Poisson{Lambda: rate, Src: r}.Rand()
	input := fmt.Sprintf(`"shaftDiameter":"32 mm","boxBore":"50 mm","packedLength":"36 mm","shaftSpeed":"1200 rpm","packing":"flax","conductivity":"15 W/(m·K)","dripRate":"%g drips/min","waterTemperature":"%.6f °C"`,
		counted, water-273.15+between(r, -1, 1))
	truth := map[string]float64{"leakUnderWay": drop * rate * perMinute}
	if measured {
		input += fmt.Sprintf(`,"measuredGlandTemperature":"%.6f °C"`, water-273.15+rise+between(r, -1, 1))
		truth["measuredRise"], truth["impliedPower"] = rise, power
		truth["riseWithoutDrips"] = power / dry
	} else {
		truth["temperatureRise"], truth["frictionPower"] = math.Min(rise, 373.15-water), power
	}
	return "{" + input + "}", truth
}

// wornBearing has two clearances and the hours between them.
func wornBearing(r *rand.Rand, read func(r *rand.Rand, shaft, clearance float64) float64, more string) (string, map[string]float64) {
	shaft, before, rate, hours := 0.030, between(r, 0.4e-3, 0.6e-3), between(r, 0.1e-3, 0.6e-3), between(r, 300, 900)
	now := before + rate*hours/1000
	truth := map[string]float64{"clearance": now, "wearPerThousand": rate, "clearanceUse": now / 1.2e-3}
	if left := (1.2e-3 - now) / rate * 1000; left > 0 {
		truth["timeLeft"] = left * 3600
	}
	return fmt.Sprintf(`{"shaftDiameter":"30 mm ± 0.001 mm","wornLimit":"1.2 mm","bearingClearance":"%.6f mm","earlierClearance":"%.6f mm","runningTime":"%.6f h"%s}`,
		1000*read(r, shaft, now), 1000*read(r, shaft, before), hours, more), truth
}

func feeler(r *rand.Rand, _, c float64) float64 { return c + between(r, -0.02e-3, 0.02e-3) }

// blade is a feeler 6 mm wide by a calliper: it reads short by the height of the
// arc over its width.
func blade(r *rand.Rand, shaft, c float64) float64 {
	radius, half := (shaft+c)/2, 0.003+between(r, -0.025e-3, 0.025e-3)
	return c - (radius - math.Sqrt(radius*radius-half*half)) + between(r, -0.02e-3, 0.02e-3)
}

// steps are single blades 0.05 mm apart: the thickest that goes in.
func steps(_ *rand.Rand, _, c float64) float64 { return 0.05e-3 * math.Floor(c/0.05e-3) }

var simulations = []simulated{
	{what: "gland measured with a thermometer", calculation: "gland-heat", draw: func(r *rand.Rand) (string, map[string]float64) { return glandOf(r, true) }},
	{what: "gland computed from its friction", calculation: "gland-heat", draw: func(r *rand.Rand) (string, map[string]float64) { return glandOf(r, false) }},
	{what: "gland that does not drip", calculation: "gland-heat", wide: true, draw: func(r *rand.Rand) (string, map[string]float64) {
		return `{"shaftDiameter":"32 mm","boxBore":"50 mm","packedLength":"36 mm","shaftSpeed":"1200 rpm","packing":"ptfe","shaftAlloy":"s31600-annealed","dripRate":"0 drips/min"}`, map[string]float64{"leakUnderWay": 0}
	}},
	{what: "gland of one drip in two minutes", calculation: "gland-heat", wide: true, draw: func(r *rand.Rand) (string, map[string]float64) {
		drop, n := between(r, 0.045e-6, 0.055e-6), distuv.Poisson{Lambda: 0.5, Src: r}.Rand()
		return fmt.Sprintf(`{"shaftDiameter":"32 mm","boxBore":"50 mm","packedLength":"36 mm","shaftSpeed":"1200 rpm","packing":"ptfe","shaftAlloy":"s31600-annealed","dripRate":"%g drips/min"}`, n), map[string]float64{"leakUnderWay": drop * 0.5 * perMinute}
	}},
	{what: "drips at rest and a dead pump", calculation: "gland-drip", draw: func(r *rand.Rand) (string, map[string]float64) {
		rate, drop, flood := between(r, 3, 40), between(r, 0.045e-6, 0.055e-6), between(r, 0.1, 0.4)
		n := distuv.Poisson{Lambda: rate, Src: r}.Rand()
		q := drop * rate * perMinute
		return fmt.Sprintf(`{"dripRate":"20 drips/min","dripRateAtRest":"%g drips/min","floodVolume":"%.6f L"}`, n, 1000*flood*(1+between(r, -0.05, 0.05))), map[string]float64{"dayAtRest": q * 86400, "timeToFlood": math.Min(flood/q, 315360000)}
	}},
	{what: "packing in a box", calculation: "gland-packing", draw: func(r *rand.Rand) (string, map[string]float64) {
		shaft, bore := between(r, 24, 26), between(r, 40, 42)
		return fmt.Sprintf(`{"shaftDiameter":"%.6f mm","boxBore":"%.6f mm","boxDepth":"48 mm","followerDepth":"10 mm","stockSections":"8 mm"}`, shaft+between(r, -0.05, 0.05), bore+between(r, -0.05, 0.05)),
			map[string]float64{"section": (bore - shaft) / 2000, "sectionExcess": 0.008 - (bore-shaft)/2000, "ringLength": math.Pi*(shaft+bore)/2000 + 0.00635}
	}},
	{what: "bearing by wire, ± 0.02 mm", calculation: "bearing-clearance", draw: func(r *rand.Rand) (string, map[string]float64) {
		return wornBearing(r, feeler, `,"bladeWidth":"0 mm"`)
	}},
	{what: "bearing by a blade of 6 mm", calculation: "bearing-clearance", draw: func(r *rand.Rand) (string, map[string]float64) {
		return wornBearing(r, blade, `,"bladeWidth":"6 mm"`)
	}},
	{what: "bearing by single blades", calculation: "bearing-clearance", wide: true, draw: func(r *rand.Rand) (string, map[string]float64) {
		return wornBearing(r, steps, `,"bladeWidth":"0 mm","clearanceGauge":"feeler-gauge-wide"`)
	}},
	{what: "bearing by a lift of two pulls", calculation: "bearing-clearance", draw: func(r *rand.Rand) (string, map[string]float64) {
		c, give := between(r, 0.2e-3, 1e-3), between(r, 0.1e-6, 0.5e-6) // bending and squeeze, m/N
		travel := func(pull float64) float64 {
			return c + give*pull*(1+between(r, -0.05, 0.05)) + between(r, -0.01e-3, 0.01e-3) - between(r, -0.01e-3, 0.01e-3)
		}
		return fmt.Sprintf(`{"shaftDiameter":"30 mm","dialAft":"0 mm ± 0 %%","liftTravel":"%.6f mm","liftPull":"300 N","secondTravel":"%.6f mm","secondPull":"150 N"}`, 1000*travel(300), 1000*travel(150)),
			map[string]float64{"clearance": c, "elasticTravel": give * 300}
	}},
	{what: "bearing by two drill shanks", calculation: "bearing-clearance", draw: func(r *rand.Rand) (string, map[string]float64) {
		c := between(r, 0.3e-3, 1e-3)
		in := 0.1e-3 * math.Floor(c/0.1e-3)
		return fmt.Sprintf(`{"shaftDiameter":"30 mm","wireIn":"%.6f mm","wireOut":"%.6f mm"}`, 1000*(in+between(r, -0.05e-3, 0.05e-3)), 1000*(in+0.1e-3+between(r, -0.05e-3, 0.05e-3))), map[string]float64{"clearance": c}
	}},
	{what: "bearing by its mark", calculation: "bearing-clearance", draw: func(r *rand.Rand) (string, map[string]float64) {
		c, worn := between(r, 0.1e-3, 0.2e-3), between(r, 0.1e-3, 0.8e-3)
		return fmt.Sprintf(`{"shaftDiameter":"30 mm","markClearance":"%.6f mm","markFirst":"%.6f mm","markDistance":"%.6f mm"}`, 1000*feeler(r, 0, c), 42+between(r, -0.05, 0.05), 42+1000*worn+between(r, -0.05, 0.05)),
			map[string]float64{"clearance": c + worn, "dropSinceMark": worn}
	}},
	{what: "bearing that does not wear", calculation: "bearing-clearance", draw: func(r *rand.Rand) (string, map[string]float64) {
		c := between(r, 0.2e-3, 0.4e-3)
		return fmt.Sprintf(`{"bladeWidth":"0 mm","shaftDiameter":"30 mm","wornLimit":"1.2 mm","bearingClearance":"%.6f mm","earlierClearance":"%.6f mm","runningTime":"400 h"}`, 1000*feeler(r, 0, c), 1000*feeler(r, 0, c)), map[string]float64{"clearance": c, "wearPerThousand": 0}
	}},
	{what: "bearing by bore and shaft", calculation: "bearing-clearance", draw: func(r *rand.Rand) (string, map[string]float64) {
		shaft, c := between(r, 25, 35), between(r, 0.1, 0.8)
		return fmt.Sprintf(`{"shaftDiameter":"%.6f mm","shellBore":"%.6f mm"}`, shaft+between(r, -0.05, 0.05), shaft+c+between(r, -0.05, 0.05)), map[string]float64{"clearance": c / 1000, "clearanceFromBore": c / 1000}
	}},
}

// The 95 % intervals of gland and bearing hold the truth in about 95 of 100
// simulated readings: MARINECALC_COVERAGE=1 go test -run GlandAndBearing -v ./marinecalc.
// Without it a few of each are tried, and only gross faults show.
func TestIntervalsOfGlandAndBearingCover(t *testing.T) {
	trials, each := 60, 512
	if os.Getenv("MARINECALC_COVERAGE") != "" {
		trials, each = 3000, 0
	}
	for n, s := range simulations {
		r := rand.New(rand.NewPCG(11, uint64(n)))
		held, all := map[string]int{}, map[string]int{}
		for range trials {
			input, truth := s.draw(r)
			out := testboat.Run(t, s.calculation, input, marinecalc.Options{Trials: each})
			for name, want := range truth {
				result := out.Result(name)
				if result == nil || result.SI == nil {
					continue
				}
				all[name]++
				low, high := *result.SI, *result.SI
				if result.Low != nil {
					low = *result.Low
				}
				if result.High != nil {
					high = *result.High
				}
				if result.Low != nil && result.High == nil { // "… or more"
					high = math.Inf(1)
				}
				if low-1e-12 <= want && want <= high+1e-12 {
					held[name]++
				}
			}
		}
		for name, count := range all {
			share := 100 * float64(held[name]) / float64(count)
			t.Logf("%-36s %-18s %5.1f %% of %d", s.what, name, share, count)
			low, high := 93.0, 97.0
			if trials < 300 {
				low, high = 80, 100
			}
			if share < low || share > high && !s.wide {
				t.Errorf("%s: the interval of %s holds the truth in %.1f %%", s.what, name, share)
			}
		}
	}
}
