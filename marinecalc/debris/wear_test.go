package debris

import (
	"math"
	"math/rand/v2"
	"testing"

	"example.org/driveline/marinecalc/internal/parttest"
	"example.org/driveline/marinecalc/quantity"
)

var tooth = WearInput{WearDepth: 0.15e-3, WearLength: 0.04, WearWidth: 0.008, WearFullness: 1, WornPlaces: 12, MetalDensity: 7850,
	FluidVolume: 2.2e-3, FluidDensity: 870, PartThickness: 6e-3, WornSides: 1, StrengthPower: 2,
	WearLimit: 0.25e-3, CaseDepth: 0.6e-3, ContactArea: 500e-6, ServiceTime: 600 * 3600}

func measure(t *testing.T, in WearInput) WearResult {
	t.Helper()
	return parttest.Must(t, Wear, in)
}

// Derived: geometry and the powers of the thickness.
func TestWearDerived(t *testing.T) {
	out := measure(t, tooth)
	for _, c := range []struct {
		name      string
		got, want float64
	}{
		{"volume", float64(out.WornVolume), 576e-9}, {"mass", float64(out.WornMass), 4.5216e-3},
		{"share", float64(out.DebrisShare), 4.5216e-3 / (870 * 2.2e-3)},
		{"thickness", float64(out.ThicknessLeft), 5.85e-3}, {"its share", float64(out.ThicknessShare), 0.975}, {"strength", float64(out.StrengthLeft), 0.975 * 0.975},
		{"surface", float64(out.SurfaceLeft), 1 - 320.0/500}, {"case", float64(out.CaseLeft), 0.75},
		{"use", float64(out.WearUse), 0.6}, {"time", float64(out.TimeToLimit), 400 * 3600},
	} {
		if math.Abs(c.got-c.want) > 1e-12*math.Abs(c.want) {
			t.Errorf("%s is %.12g, want %.12g", c.name, c.got, c.want)
		}
	}
}

// An elliptic paraboloid, a bowl, is half of the cylinder on its ellipse: π/8
// of depth × length × width, on π/4 of length × width (geometry).
func TestBowl(t *testing.T) {
	in := tooth
	in.WearFullness, in.WearOutline = math.Pi/8, math.Pi/4
	out := measure(t, in)
	parttest.Near(t, "area", float64(out.WearArea), math.Pi*0.02*0.004, 1e-15)
	parttest.Near(t, "surface", float64(out.SurfaceLeft), 1-math.Pi*80/500, 1e-12)
	parttest.Near(t, "volume", float64(out.WornVolume), 12*math.Pi*0.02*0.004*0.15e-3/2, 1e-18)
}

// What was not given gives no figure, and never 0 in its place.
func TestWearWithoutTheOptional(t *testing.T) {
	out := measure(t, WearInput{WearDepth: 1e-4, WearLength: 0.01, WearWidth: 0.01, WearFullness: 1, WornPlaces: 1, MetalDensity: 8800})
	for name, v := range map[string]float64{"share": float64(out.DebrisShare), "thickness": float64(out.ThicknessLeft), "strength": float64(out.StrengthLeft),
		"surface": float64(out.SurfaceLeft), "case": float64(out.CaseLeft), "use": float64(out.WearUse), "time": float64(out.TimeToLimit)} {
		if !math.IsNaN(v) {
			t.Errorf("%s is %g", name, v)
		}
	}
}

// Property: more wear takes more metal and leaves less of everything; worn
// through leaves nothing, and no time.
func TestMoreWearLeavesLess(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for range 2000 {
		in := tooth
		in.WearDepth = in.PartThickness * quantity.Length(0.001+0.98*r.Float64())
		more := in
		more.WearDepth *= quantity.Length(1.01)
		a, b := measure(t, in), measure(t, more)
		if b.WornMass <= a.WornMass || b.StrengthLeft > a.StrengthLeft || b.ThicknessLeft > a.ThicknessLeft || b.CaseLeft >= a.CaseLeft || b.TimeToLimit > a.TimeToLimit {
			t.Fatalf("%+v then %+v", a, b)
		}
		if a.ThicknessLeft < 0 || a.TimeToLimit < 0 {
			t.Fatalf("%+v of %+v", a, in)
		}
	}
	through := tooth
	through.WearDepth = through.PartThickness
	if out := measure(t, through); out.StrengthLeft != 0 || out.ThicknessLeft != 0 || out.TimeToLimit != 0 {
		t.Errorf("worn through: %+v", out)
	}
}

func TestWearRefuses(t *testing.T) {
	for where, spoil := range map[string]func(*WearInput){
		"/wearDepth":     func(w *WearInput) { w.WearDepth = 0 },
		"/wearLength":    func(w *WearInput) { w.WearLength = -1 },
		"/wearWidth":     func(w *WearInput) { w.WearWidth = quantity.Length(math.NaN()) },
		"/wearFullness":  func(w *WearInput) { w.WearFullness = 1.5 },
		"/wornPlaces":    func(w *WearInput) { w.WornPlaces = 0 },
		"/metalDensity":  func(w *WearInput) { w.MetalDensity = 1 },
		"/fluidVolume":   func(w *WearInput) { w.FluidVolume = quantity.Volume(math.Inf(1)) },
		"/strengthPower": func(w *WearInput) { w.StrengthPower = 4 },
	} {
		in := tooth
		spoil(&in)
		_, err := Wear(in)
		parttest.RefusedAt(t, err, where)
	}
}

func TestWearDoesNotAllocate(t *testing.T) {
	parttest.NoAllocations(t, func() { _, _ = Wear(tooth) })
}

func BenchmarkWear(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		_, _ = Wear(tooth)
	}
}

// What is refused says what would go: through the part from one side, from both,
// or by its own limit. Sides that nobody counted are one.
func TestWearThroughThePart(t *testing.T) {
	in := tooth
	in.PartThickness, in.WearDepth, in.WearLimit = 0.004, 0.005, 0
	_, err := Wear(in)
	parttest.RefusedAt(t, err, "/wearDepth")
	parttest.Says(t, err, "4 mm thick", "5 mm deep", "up to 4 mm")
	in.WornSides = 0
	_, err = Wear(in)
	parttest.RefusedAt(t, err, "/wearDepth")
	in.WornSides, in.WearDepth = 2, 0.003
	_, err = Wear(in)
	parttest.Says(t, err, "3 mm deep", "up to 2 mm")
	in.WearDepth = 0.002
	measure(t, in)
	in.WearDepth, in.WearLimit = 0.001, 0.0041
	_, err = Wear(in)
	parttest.RefusedAt(t, err, "/wearLimit")
	parttest.Says(t, err, "a limit of 4.1 mm", "the part's own 4 mm")
	in.WearLimit = 0.004
	measure(t, in)
}
