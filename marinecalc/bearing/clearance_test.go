package bearing

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"example.org/driveline/marinecalc/internal/parttest"
	"example.org/driveline/marinecalc/quantity"
)

// used is the bearing of a 30 mm shaft with two readings.
func used() ClearanceInput {
	return ClearanceInput{BearingKind: Rubber, ShaftDiameter: 0.030, BearingClearance: 0.00045, WornLimit: 0.00075, NewClearance: 0.00012,
		EarlierClearance: 0.00025, RunningTime: 400 * 3600, BearingLength: 0.120, GrooveDepth: 0.0024, GrooveDepthNew: 0.0032}
}

func worn(t *testing.T, in ClearanceInput) ClearanceResult {
	t.Helper()
	return parttest.Must(t, Clearance, in)
}

func TestShipsTailShaft(t *testing.T) {
	// USCG exam item on 46 CFR 61.20-23(a), rule from memory: 15 in tail
	// shaft, machinery amidships, worn 1/4 in, limit 3/8 in: no renewal yet.
	const inch = 0.0254
	out := worn(t, ClearanceInput{BearingKind: Other, ShaftDiameter: 15 * inch, BearingClearance: inch / 4, WornLimit: 3 * inch / 8})
	parttest.Within(t, "use", float64(out.ClearanceUse), 2./3, 1e-12)
	if !math.IsNaN(float64(out.TimeLeft)) || !math.IsNaN(float64(out.WearSinceNew)) || !math.IsNaN(float64(out.GrooveLeft)) {
		t.Errorf("%+v says more than was read", out)
	}
}

func TestStraightLineThroughTwoReadings(t *testing.T) {
	// Derived: 0.2 mm in 400 h are 0.5 mm in a thousand; 0.3 mm are left.
	out := worn(t, used())
	parttest.Within(t, "wear in 1000 h", float64(out.WearPerThousand), 0.0005, 1e-9)
	parttest.Within(t, "time left", float64(out.TimeLeft), 600*3600, 1e-9)
	parttest.Within(t, "since new", float64(out.WearSinceNew), 0.00033, 1e-9)
	parttest.Within(t, "groove", float64(out.GrooveLeft), 0.75, 1e-9)
	parttest.Within(t, "length", float64(out.LengthRatio), 4, 1e-9)

	r := rand.New(rand.NewPCG(2, 1))
	for range 1000 {
		in := used()
		in.EarlierClearance = quantity.Length(0.0001 + 0.0006*r.Float64())
		in.BearingClearance = quantity.Length(0.0001 + 0.0009*r.Float64())
		out := worn(t, in)
		switch {
		case in.BearingClearance <= in.EarlierClearance:
			if out.TimeLeft != Never {
				t.Fatalf("no wear, and %v left", out.TimeLeft)
			}
		case in.BearingClearance >= in.WornLimit:
			if out.TimeLeft != 0 {
				t.Fatalf("past the limit, and %v left", out.TimeLeft)
			}
		case out.TimeLeft < Never: // run on for that long and the limit is reached
			then := in.BearingClearance + out.WearPerThousand*quantity.Length(out.TimeLeft/3.6e6)
			parttest.Within(t, "clearance then", float64(then), float64(in.WornLimit), 1e-9)
		}
	}
}

// Derived: a bore of 30.45 mm on a shaft of 30 mm leaves 0.45 mm, and goes
// before what a feeler read.
func TestClearanceOfBoreAndShaft(t *testing.T) {
	byFeeler, byBore := used(), used()
	byBore.ShellBore, byBore.BearingClearance = 0.03045, quantity.Length(math.NaN())
	for range 2 {
		out := worn(t, byBore)
		parttest.Within(t, "clearance", float64(out.Clearance), 0.00045, 1e-9)
		parttest.Within(t, "use", float64(out.ClearanceUse), float64(worn(t, byFeeler).ClearanceUse), 1e-9)
		parttest.Within(t, "time left", float64(out.TimeLeft), float64(worn(t, byFeeler).TimeLeft), 1e-9)
		byBore.BearingClearance = 0.0001
	}
}

func TestImpossibleClearancesAreRefused(t *testing.T) {
	for where, change := range map[string]func(*ClearanceInput){
		"/shaftDiameter":      func(b *ClearanceInput) { b.ShaftDiameter = 0 },
		"/bearingClearance":   func(b *ClearanceInput) { b.BearingClearance = 0.02 },
		"/bearingClearance ":  func(b *ClearanceInput) { b.BearingClearance = quantity.Length(math.NaN()) },
		"/newClearance":       func(b *ClearanceInput) { b.NewClearance = -0.01 },
		"/runningTime":        func(b *ClearanceInput) { b.RunningTime = 0 },
		"/grooveDepthNew":     func(b *ClearanceInput) { b.GrooveDepthNew = 0 },
		"/grooveDepth":        func(b *ClearanceInput) { b.GrooveDepth = 0.005 },
		"/bearingKind":        func(b *ClearanceInput) { b.BearingKind = "felt" },
		"/bearingClearance  ": func(b *ClearanceInput) { b.BearingClearance = quantity.Length(math.Inf(1)) },
		"/shellBore":          func(b *ClearanceInput) { b.ShellBore = 0.029 },
		"/shellBore ":         func(b *ClearanceInput) { b.ShellBore = 0.046 },
		"/shellBore  ":        func(b *ClearanceInput) { b.ShellBore = quantity.Length(math.NaN()) },
		"/bearingLength":      func(b *ClearanceInput) { b.BearingLength = -1 },
	} {
		in := used()
		change(&in)
		_, err := Clearance(in)
		parttest.RefusedAt(t, err, strings.TrimSpace(where))
	}
	in := used()
	in.BearingClearance = -0.00002 // a feeler of nothing, drawn below it
	if _, err := Clearance(in); err != nil {
		t.Error(err)
	}
}

func TestClearanceDoesNotAllocate(t *testing.T) {
	in := used()
	parttest.NoAllocations(t, func() { _, _ = Clearance(in) })
}

func BenchmarkClearance(b *testing.B) {
	in := used()
	b.ReportAllocs()
	for b.Loop() {
		_, _ = Clearance(in)
	}
}
