package gland

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"example.org/driveline/marinecalc/internal/parttest"
	"example.org/driveline/marinecalc/quantity"
)

// small is a box for a 25 mm shaft, with metric packing to choose from.
func small() PackingInput {
	return PackingInput{ShaftDiameter: 0.025, BoxBore: 0.041, BoxDepth: 0.048, FollowerDepth: 0.010,
		StockSections: "4 mm, 5 mm, 6 mm, 8 mm, 10 mm, 12 mm, 14 mm, 16 mm, 18 mm, 20 mm, 22 mm, 25 mm", SkiveAllowance: 0.00635, SpareRings: 1,
		MostOver: 0.5e-3, MostUnder: 0.2e-3}
}

func pack(t *testing.T, in PackingInput) PackingResult {
	t.Helper()
	return parttest.Must(t, Packing, in)
}

func TestRingOfTheHandbook(t *testing.T) {
	// Mobley, Root Cause Failure Analysis (1999), p. 226: bore 4 in, shaft
	// 2 in: section 1 in, mean diameter 3 in, length 9.42 in (the book rounds
	// up to 9.43), about 1/4 in more for a bevel.
	const inch = 0.0254
	in := PackingInput{ShaftDiameter: 2 * inch, BoxBore: 4 * inch, BoxDepth: 6 * inch, StockSections: "3/4 in, 1 in"}
	out := pack(t, in)
	parttest.Within(t, "section", float64(out.Section), inch, 1e-12)
	parttest.Within(t, "length", float64(out.RingLength), 9.42*inch, 1e-3)
	in.SkiveAllowance = inch / 4
	parttest.Within(t, "bevelled", float64(pack(t, in).RingLength), 9.67*inch, 1e-3)
	if out.SoldAs != "1 in" || out.RingCount != 6 {
		t.Errorf("%v rings of %q", out.RingCount, out.SoldAs)
	}
}

func TestRingsFillTheBox(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 1))
	for range 2000 {
		in := small()
		in.BoxBore = in.ShaftDiameter + quantity.Length(0.008+0.03*r.Float64())
		in.BoxDepth = quantity.Length(0.04 + 0.1*r.Float64())
		out, err := Packing(in)
		if err != nil {
			continue // not one ring goes in
		}
		if out.DepthLeft < -1e-9 || out.DepthLeft >= out.StockSection {
			t.Fatalf("%v left beside rings of %v", out.DepthLeft, out.StockSection)
		}
		for rest := in.StockSections; rest != ""; {
			var size quantity.Length
			size, _, rest = rest.Cut()
			if math.Abs(float64(size-out.Section)) < math.Abs(float64(out.SectionExcess))-1e-9 {
				t.Fatalf("%v is nearer to %v than %v", size, out.Section, out.StockSection)
			}
		}
		deeper := in
		deeper.BoxDepth += out.StockSection
		parttest.Within(t, "one ring deeper", float64(pack(t, deeper).RingCount), float64(out.RingCount+1), 1e-12)
		// The ring lies on the shaft inside and on the bore outside.
		if l := float64(out.RingLength - in.SkiveAllowance); l < math.Pi*float64(in.ShaftDiameter) || l > math.Pi*float64(in.BoxBore) {
			t.Fatalf("a ring of %v round a shaft of %v", l, in.ShaftDiameter)
		}
	}
}

// A size that can be used goes before one that is nearer and cannot; of several
// that can be used, or where none can, the nearest is taken. Source of what can
// be used, 0.5 mm over and 0.2 mm under: common practice, no source.
func TestASizeThatFitsGoesFirst(t *testing.T) {
	for room, want := range map[float64]string{
		9.00: "3/8 in",  // 0.525 over, 1 under: neither fits, the nearest
		9.10: "3/8 in",  // 0.425 over
		8.30: "8 mm",    // 0.3 under, 1.2 over: neither fits
		4.35: "3/16 in", // 0.41 over, where 4 mm is nearer and 0.35 under
		9.80: "10 mm",   // 3/8 in would be 0.275 under
		9.70: "3/8 in",  // 0.175 under, nearer than 10 mm, 0.3 over
	} {
		in := small()
		in.BoxBore = in.ShaftDiameter + quantity.Length(2e-3*room)
		in.StockSections = "4 mm, 3/16 in, 5 mm, 8 mm, 3/8 in, 10 mm"
		out := pack(t, in)
		if out.SoldAs != want {
			t.Errorf("room of %g mm: %s, want %s", room, out.SoldAs, want)
		}
		fit := map[float64]string{9.00: TooThick, 8.30: TooThin}[room]
		if out.SectionFit != fit && (fit != "" || out.SectionFit != Fits) {
			t.Errorf("room of %g mm: it %s", room, out.SectionFit)
		}
	}
}

func TestWornShaft(t *testing.T) {
	in := small()
	if out := pack(t, in); !math.IsNaN(float64(out.GrooveDepth)) {
		t.Error("a smooth shaft has a groove")
	}
	in.GrooveDiameter = 0.0244
	out := pack(t, in)
	parttest.Within(t, "depth", float64(out.GrooveDepth), 0.0003, 1e-9)
	parttest.Within(t, "room", float64(out.GrooveSection), 0.0083, 1e-9)
	parttest.Within(t, "neck", float64(out.NeckDiameter), 0.0244, 1e-12)
	parttest.Within(t, "groove share", float64(out.GrooveShare), 0.3/8, 1e-9) // of the room of (41 - 25)/2 mm
	parttest.Within(t, "strength", float64(out.StrengthLeft), 0.92972, 1e-4)  // derived: (24.4/25)³
	deeper := in
	deeper.GrooveDiameter = 0.0240
	if pack(t, deeper).StrengthLeft >= out.StrengthLeft {
		t.Error("a deeper groove leaves more strength")
	}
}

// By hand: (41.3 - 25)/2 mm of room are 8.15 mm, and 8 mm is 0.15 mm thinner;
// four rings of it take 32 of the 38 mm that the follower leaves.
func TestThePackedBox(t *testing.T) {
	in := small()
	in.BoxBore = 0.0413
	out := pack(t, in)
	for what, c := range map[string]struct{ got, want float64 }{
		"thicker by": {float64(out.SectionExcess), -0.15},
		"thinner by": {float64(out.SectionShort), 0.15},
		"ring":       {float64(out.RingLength), math.Pi*33.15 + 6.35},
		"to buy":     {float64(out.TotalLength), 5 * (math.Pi*33.15 + 6.35)},
		"packed":     {float64(out.PackedLength), 32},
		"left":       {float64(out.DepthLeft), 6},
		"ratio, ‰":   {float64(out.PackedRatio), 1000 * 32. / 25},
		"rings, ‰":   {float64(out.RingCount), 1000 * 4},
	} {
		parttest.Within(t, what, c.got, c.want/1000, 1e-9)
	}
}

func TestJointsAreStaggered(t *testing.T) {
	for rings, degrees := range map[int]float64{2: 180, 3: 120, 4: 90, 7: 90} {
		in := small()
		in.BoxDepth = in.FollowerDepth + quantity.Length(rings)*0.008
		parttest.Within(t, "stagger", float64(pack(t, in).JointStagger)*180/math.Pi, degrees, 1e-12)
	}
}

func TestImpossibleBoxesAreRefused(t *testing.T) {
	for where, change := range map[string]func(*PackingInput){
		"/shaftDiameter":   func(b *PackingInput) { b.ShaftDiameter = 25 },
		"/boxBore":         func(b *PackingInput) { b.BoxBore = 0.026 },
		"/boxDepth":        func(b *PackingInput) { b.FollowerDepth = 0.045 },
		"/followerDepth":   func(b *PackingInput) { b.FollowerDepth = quantity.Length(math.NaN()) },
		"/grooveDiameter":  func(b *PackingInput) { b.GrooveDiameter = 0.0003 },
		"/grooveDiameter ": func(b *PackingInput) { b.GrooveDiameter = 0.030 },
		"/stockSections":   func(b *PackingInput) { b.StockSections = "8 mm, 6 mm" },
		"/stockSections  ": func(b *PackingInput) { b.StockSections = "6 mm, 6 mm" },
		"/stockSections ":  func(b *PackingInput) { b.StockSections = "" },
		"/spareRings":      func(b *PackingInput) { b.SpareRings = -1 },
		"/skiveAllowance":  func(b *PackingInput) { b.SkiveAllowance = 1 },
		"/mostOver":        func(b *PackingInput) { b.MostOver = 1 },
		"/mostUnder":       func(b *PackingInput) { b.MostUnder = -1e-3 },
	} {
		in := small()
		change(&in)
		_, err := Packing(in)
		parttest.RefusedAt(t, err, strings.TrimSpace(where))
	}
}

func TestPackingDoesNotAllocate(t *testing.T) {
	in := small()
	parttest.NoAllocations(t, func() { _, _ = Packing(in) })
}

func BenchmarkPacking(b *testing.B) {
	in := small()
	in.GrooveDiameter = 0.0244
	in.StockSections = "3 mm, 1/8 in, 4 mm, 3/16 in, 5 mm, 6 mm, 1/4 in, 5/16 in, 8 mm, 3/8 in, 10 mm, 7/16 in, 12 mm, 1/2 in, 14 mm, 9/16 in, 5/8 in, 16 mm, 18 mm, 3/4 in, 20 mm, 22 mm, 7/8 in, 25 mm, 1 in"
	b.ReportAllocs()
	for b.Loop() {
		_, _ = Packing(in)
	}
}

// A box of 5 mm, the least that is asked for, drawn with the 2 mm of a rule, is
// still a box; a shallower one is a slip.
func TestTheShallowestBox(t *testing.T) {
	in := small()
	in.BoxBore, in.StockSections, in.BoxDepth, in.FollowerDepth = 0.030, "2.5 mm, 3 mm", 0.003, 0
	if _, err := Packing(in); err != nil {
		t.Errorf("3 mm: %v", err)
	}
	in.BoxDepth = 0.00299
	_, err := Packing(in)
	parttest.RefusedAt(t, err, "/boxDepth")
}
