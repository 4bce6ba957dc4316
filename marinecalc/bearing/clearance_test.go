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
		EarlierClearance: 0.00025, RunningTime: 400 * 3600, BearingLength: 0.120, GrooveDepth: 0.0024, GrooveDepthNew: 0.0032,
		LiftTravel: unreadLength, SecondTravel: unreadLength, ElasticShare: quantity.Ratio(math.NaN()), WireIn: unreadLength, MarkClearance: unreadLength}
}

var unreadLength = quantity.Length(math.NaN())

func worn(t *testing.T, in ClearanceInput) ClearanceResult {
	t.Helper()
	return parttest.Must(t, Clearance, in)
}

// unread are the readings that ClearanceInput marks with NaN.
func unread(in ClearanceInput) ClearanceInput {
	nan := quantity.Length(math.NaN())
	in.NewClearance, in.EarlierClearance, in.GrooveDepth = nan, nan, nan
	in.LiftTravel, in.SecondTravel, in.WireIn, in.MarkClearance, in.ElasticShare = nan, nan, nan, nan, quantity.Ratio(nan)
	return in
}

func TestShipsTailShaft(t *testing.T) {
	// USCG exam item on 46 CFR 61.20-23(a), rule from memory: 15 in tail
	// shaft, machinery amidships, worn 1/4 in, limit 3/8 in: no renewal yet.
	const inch = 0.0254
	out := worn(t, unread(ClearanceInput{BearingKind: Other, ShaftDiameter: 15 * inch, BearingClearance: inch / 4, WornLimit: 3 * inch / 8}))
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
		case in.BearingClearance >= in.WornLimit: // worn since or not, nothing is left
			if out.TimeLeft != 0 {
				t.Fatalf("past the limit, and %v left", out.TimeLeft)
			}
		case in.BearingClearance <= in.EarlierClearance:
			if out.TimeLeft != Never {
				t.Fatalf("no wear, and %v left", out.TimeLeft)
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

// A flat blade in a round bearing, by geometry of its own: a circle for the shaft lies at the
// bottom of one for the bore, and the thickest rectangle of that width is sought that
// stands on the shaft's crown with its corners inside the bore. With the blades of the
// shops, 12.7 mm, a bore of 30 mm hides 1.4 mm.
func TestAFlatBladeReadsShort(t *testing.T) {
	for _, c := range []struct{ bore, shaft, width float64 }{{30, 29.5, 12.7}, {30, 28, 12.7}, {25, 24.2, 12.7}, {50, 49, 12.7}, {30, 29, 6}, {30, 29.5, 4}, {100, 98, 12.7}} {
		crown := c.shaft // of the shaft above the bottom of the bore
		thickest, high := 0.0, c.bore
		for range 60 {
			middle := (thickest + high) / 2
			if math.Hypot(c.width/2, crown+middle-c.bore/2) <= c.bore/2 {
				thickest = middle
			} else {
				high = middle
			}
		}
		if thickest == 0 {
			continue // it does not go in
		}
		in := unread(ClearanceInput{BearingKind: Rubber, ShaftDiameter: quantity.Length(c.shaft / 1000), BearingClearance: quantity.Length(thickest / 1000), BladeWidth: quantity.Length(c.width / 1000)})
		out := worn(t, in)
		parttest.Within(t, "clearance", 1000*float64(out.Clearance), c.bore-c.shaft, 1e-9)
		parttest.Within(t, "and what the blade hides", 1000*float64(out.ClearanceRead-out.BladeHides), thickest, 1e-9)
	}
	round := used()
	if out := worn(t, round); out.BladeHides != 0 || out.Clearance != round.BearingClearance {
		t.Errorf("a wire reads short: %+v", out)
	}
	round.BearingClearance, round.BladeWidth = 0, 0.0127
	if out := worn(t, round); out.Clearance != 0 {
		t.Errorf("a blade that does not go in reads %v", out.Clearance)
	}
	for _, hidden := range []struct{ bore, width, mm float64 }{{30, 12.7, 1.41}, {25, 12.7, 1.73}, {50, 12.7, 0.82}, {30, 6, 0.30}, {30, 4, 0.13}} {
		// The same as the height of an arc over its chord in the bore, R - √(R² - w²/4).
		r, w := hidden.bore/2, hidden.width
		s := r - math.Sqrt(r*r-w*w/4)
		if math.Abs(s-hidden.mm) > 0.006 {
			t.Errorf("a bore of %g mm hides %.3f mm, want %g", hidden.bore, s, hidden.mm)
		}
		read := 0.2
		in := unread(ClearanceInput{BearingKind: Rubber, ShaftDiameter: quantity.Length((hidden.bore - s - read) / 1000), BearingClearance: quantity.Length(read / 1000), BladeWidth: quantity.Length(w / 1000)})
		parttest.Within(t, "hidden", 1000*float64(worn(t, in).BladeHides), s, 1e-9)
	}
}

// An earlier reading with the same blade hides nearly the same, so the wear is told as it is.
func TestWearBetweenTwoReadingsWithOneBlade(t *testing.T) {
	in := used()
	in.BladeWidth = 0.006
	parttest.Within(t, "wear in 1000 h", float64(worn(t, in).WearPerThousand), 0.0005, 0.01)
	in.EarlierClearance = 0 // read, and nothing went in
	if out := worn(t, in); math.IsNaN(float64(out.WearPerThousand)) {
		t.Error("a reading of nothing passes for none")
	}
	in = used()
	in.GrooveDepth = 0
	if out := worn(t, in); out.GrooveLeft != 0 {
		t.Errorf("grooves worn away: %v left", out.GrooveLeft)
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
		"/bladeWidth":         func(b *ClearanceInput) { b.BladeWidth = 0.031 },
		"/earlierClearance":   func(b *ClearanceInput) { b.EarlierClearance = -0.001 },
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
