package bearing

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"example.org/driveline/marinecalc/internal/parttest"
	"example.org/driveline/marinecalc/quantity"
)

const rpm = math.Pi / 30

// output is the output bearing of a small gearbox.
func output() LifeInput {
	return LifeInput{RollingKind: Ball, DynamicRating: 19500, StaticRating: 10000, RadialLoad: 900, Thrust: 1200,
		RadialFactor: 0.56, AxialFactor: 1.45, LoadLimit: 0.30, LoadFactor: 1.2, ShaftSpeed: 1300 * rpm, ReliabilityFactor: 0.64, WantedLife: 5000 * 3600,
		Offset: 0.0001, Angle: 0.001, FreeLength: 0.6, ShaftDiameter: 0.025, ElasticModulus: 193e9, Overhang: 0.06, BearingSpan: 0.11, RigidShare: 1,
		SeatUpper: 15e-6, SeatLower: 2e-6, BoreUpper: 0, BoreLower: -10e-6}
}

// plain is a bearing under a radial load alone.
func plain(rating, load, speed float64) LifeInput {
	return LifeInput{RollingKind: Ball, DynamicRating: quantity.Force(rating), RadialLoad: quantity.Force(load), RadialFactor: 0.56, AxialFactor: 1,
		LoadLimit: 0.4, LoadFactor: 1, ShaftSpeed: quantity.RotationSpeed(speed), ReliabilityFactor: 1}
}

func last(t *testing.T, in LifeInput) LifeResult {
	t.Helper()
	return parttest.Must(t, Life, in)
}

func TestBasicLife(t *testing.T) {
	// ISO 281, exam question: C 16 kN, P 2 kN: 512 million revolutions.
	parttest.Within(t, "ball", float64(last(t, plain(16000, 2000, 1)).BasicLife), 512, 1e-12)
	// Derived: C 14 kN, P 2 kN, 1000 rpm: 343 million, 5716.7 h.
	out := last(t, plain(14000, 2000, 1000*rpm))
	parttest.Within(t, "million", float64(out.BasicLife), 343, 1e-12)
	parttest.Within(t, "hours", float64(out.LifeHours)/3600, 5716.7, 1e-5)
	// Rollers go with 10/3: derived, 8^(10/3) = 1024.
	in := plain(16000, 2000, 1)
	in.RollingKind = Roller
	parttest.Within(t, "roller", float64(last(t, in).BasicLife), 1024, 1e-12)
}

func TestRatingNeeded(t *testing.T) {
	// Shigley, Mechanical Engineering Design, example 11-1, value from
	// memory: 400 lbf, 5000 h, 1725 rpm, 90 %: 3211 lbf, 14.3 kN.
	const pound = 4.4482216152605
	in := plain(14000, 400*pound, 1725*rpm)
	in.WantedLife = 5000 * 3600
	need := last(t, in).RatingNeeded
	parttest.Within(t, "lbf", float64(need)/pound, 3211, 2e-4)
	parttest.Within(t, "kN", float64(need)/1000, 14.3, 2e-3)
	in.DynamicRating = need
	parttest.Within(t, "life at that rating", float64(last(t, in).AdjustedLife), float64(in.WantedLife), 1e-12)
}

func TestThrustBelowItsLimitDoesNotCount(t *testing.T) {
	in := plain(14000, 2000, 1)
	in.Thrust = 800 // e = 0.4
	parttest.Within(t, "at the limit", float64(last(t, in).EquivalentLoad), 2000, 1e-12)
	in.Thrust = 2000
	parttest.Within(t, "above it", float64(last(t, in).EquivalentLoad), 0.56*2000+2000, 1e-12)
}

func TestBentShaft(t *testing.T) {
	// The shaft as a beam: Shigley table A-9, case 1, F·a³/(3·E·I), gives the
	// offset back; 0.1 mm over 600 mm of 25 mm shaft, and the lever 770/110.
	in := output()
	in.Angle = 0
	out := last(t, in)
	inertia := math.Pi / 64 * math.Pow(0.025, 4)
	parttest.Within(t, "deflection", float64(out.BendingForce)*math.Pow(0.6, 3)/(3*193e9*inertia), 0.0001, 1e-12)
	parttest.Within(t, "on the bearing", float64(out.MisalignmentLoad), float64(out.BendingForce)*7, 1e-12)
	// An angle over the free length is an offset at its end.
	byAngle := output()
	byAngle.Offset, byAngle.Angle = 0, quantity.Angle(0.0001/0.6)
	parttest.Within(t, "angle", float64(last(t, byAngle).BendingForce), float64(out.BendingForce), 1e-12)
	// Either way round it is the same.
	byAngle.Angle = -byAngle.Angle
	parttest.Within(t, "mirrored", float64(last(t, byAngle).BendingForce), float64(out.BendingForce), 1e-12)
	// Where half of it is given way to, half arrives.
	soft := in
	soft.RigidShare = 0.5
	parttest.Within(t, "given way", float64(last(t, soft).MisalignmentLoad), float64(out.MisalignmentLoad)/2, 1e-12)
	// Without the gearbox's own measure nothing is made up.
	in.BearingSpan = 0
	if got := last(t, in).MisalignmentLoad; got != 0 {
		t.Errorf("%v without the distance of the bearings", got)
	}
}

func TestLifeRunsTheRightWay(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 1))
	for range 1000 {
		in := output()
		in.RadialLoad = quantity.Force(100 + 3000*r.Float64())
		in.Thrust = quantity.Force(3000 * r.Float64())
		in.Offset = quantity.Length(0.0005 * r.Float64())
		out := last(t, in)
		worse := func(what string, change func(*LifeInput)) {
			other := in
			change(&other)
			if got := last(t, other); got.AdjustedLife > out.AdjustedLife*(1+1e-12) {
				t.Fatalf("%s: life goes from %v to %v", what, out.AdjustedLife, got.AdjustedLife)
			}
		}
		worse("more offset", func(b *LifeInput) { b.Offset *= 1.1 })
		worse("more speed", func(b *LifeInput) { b.ShaftSpeed *= 1.1 })
		worse("a smaller bearing", func(b *LifeInput) { b.DynamicRating *= 0.9 })
		worse("more certainty", func(b *LifeInput) { b.ReliabilityFactor *= 0.9 })
		if out.LifeLost < 0 || out.LifeLost > 1 || out.AdjustedLife > out.LifeHours {
			t.Fatalf("%+v", out)
		}
		// What is lost is what an aligned shaft would give back.
		aligned := in
		aligned.Offset, aligned.Angle = 0, 0
		parttest.Within(t, "aligned", float64(last(t, aligned).AdjustedLife)*(1-float64(out.LifeLost)), float64(out.AdjustedLife), 1e-9)
	}
}

func TestInterferenceByTolerance(t *testing.T) {
	// ISO 286-2 k6 and ISO 492 Normal on 25 mm, values from memory:
	// interference 2 to 25 µm.
	out := last(t, output())
	parttest.Within(t, "least", float64(out.LeastInterference), 2e-6, 1e-9)
	parttest.Within(t, "greatest", float64(out.GreatestInterference), 25e-6, 1e-9)
	in := output()
	in.SeatDiameter, in.BoreDiameter = 0.025012, 0.024995
	parttest.Within(t, "measured", float64(last(t, in).MeasuredInterference), 17e-6, 1e-6)
	in.SeatUpper, in.SeatLower, in.BoreUpper, in.BoreLower = quantity.Length(math.NaN()), quantity.Length(math.NaN()), quantity.Length(math.NaN()), quantity.Length(math.NaN())
	if out := last(t, in); !math.IsNaN(float64(out.LeastInterference)) {
		t.Error("an interference without tolerances")
	}
}

func TestImpossibleBearingsAreRefused(t *testing.T) {
	for where, change := range map[string]func(*LifeInput){
		"/rollingKind":       func(b *LifeInput) { b.RollingKind = "needle" },
		"/dynamicRating":     func(b *LifeInput) { b.DynamicRating = 0 },
		"/radialLoad":        func(b *LifeInput) { b.RadialLoad, b.Thrust = 0, 0 },
		"/thrust":            func(b *LifeInput) { b.Thrust = quantity.Force(math.NaN()) },
		"/radialFactor":      func(b *LifeInput) { b.RadialFactor = 2 },
		"/loadFactor":        func(b *LifeInput) { b.LoadFactor = 0.5 },
		"/shaftSpeed":        func(b *LifeInput) { b.ShaftSpeed = 0 },
		"/reliabilityFactor": func(b *LifeInput) { b.ReliabilityFactor = 95 },
		"/freeLength":        func(b *LifeInput) { b.FreeLength = 0.02 },
		"/offset":            func(b *LifeInput) { b.Offset = 1 },
		"/angle":             func(b *LifeInput) { b.Angle = 1 },
		"/seatLower":         func(b *LifeInput) { b.SeatLower = 20e-6 },
		"/boreLower":         func(b *LifeInput) { b.BoreLower = 20e-6 },
		"/seatDiameter":      func(b *LifeInput) { b.BearingBore, b.SeatDiameter = 0.025, 0.030 },
		"/boreDiameter":      func(b *LifeInput) { b.BearingBore, b.BoreDiameter = 0.025, 0.020 },
		"/rigidShare":        func(b *LifeInput) { b.RigidShare = 2 },
		"/overhang":          func(b *LifeInput) { b.Overhang = -0.1 },
	} {
		in := output()
		change(&in)
		_, err := Life(in)
		parttest.RefusedAt(t, err, strings.TrimSpace(where))
	}
}

func TestLifeDoesNotAllocate(t *testing.T) {
	in := output()
	parttest.NoAllocations(t, func() { _, _ = Life(in) })
}

func BenchmarkLife(b *testing.B) {
	in := output()
	b.ReportAllocs()
	for b.Loop() {
		_, _ = Life(in)
	}
}
