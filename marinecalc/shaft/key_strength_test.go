package shaft

import (
	"math"
	"math/rand/v2"
	"testing"

	"example.org/driveline/marinecalc/internal/parttest"
	"example.org/driveline/marinecalc/quantity"
)

// sloopKey is a scenario of our own: a 1 in taper with a 1/4 in key.
func sloopKey() KeyStrengthInput {
	return KeyStrengthInput{ShaftDiameter: inch, SmallEndDiameter: 0.828 * inch, ShaftTorque: 170, PeakTorque: 340, KeyWidth: inch / 4, KeyHeight: inch / 4, KeySeat: 0.126 * inch,
		KeyLength: 2 * inch, KeyYieldStrength: 30 * ksi, ShaftYieldStrength: 30 * ksi, HubYieldStrength: 25 * ksi, WantedSafety: 2}
}

// Shigley, Mechanical Engineering Design, example 7-6: value from memory.
func TestKeyOfTheHandbook(t *testing.T) {
	in := KeyStrengthInput{ShaftDiameter: 1.4375 * inch, ShaftTorque: quantity.Torque(4200 * lbf * inch), KeyWidth: 0.375 * inch, KeyLength: 1.5 * inch, KeyYieldStrength: 65 * ksi, WantedSafety: 2.8}
	out := parttest.Must(t, KeyStrength, in)
	parttest.Within(t, "force", out.KeyForce, 5850*lbf, 2e-3)
	parttest.Within(t, "shear length", out.ShearLength, 1.16*inch, 5e-3)
	parttest.Within(t, "bearing length", out.BearingLength, 1.34*inch, 5e-3)
	// 65 ksi over what 5850 lbf does to 1.5 in times half of 0.375 in.
	parttest.Within(t, "safety of the key", out.KeyBearingSafety, 65000/(5850/(1.5*0.1875)), 2e-3)
	if out.WeakestPlace != KeyCrushes || out.NotJudged != NeitherJudged {
		t.Error(out.WeakestPlace, out.NotJudged)
	}
	// Shaft and hub not known, nothing said of the whole.
	if !math.IsNaN(float64(out.SteadySafety)) || !math.IsNaN(float64(out.LengthWanted)) {
		t.Errorf("without the strengths of shaft and hub: %+v", out)
	}
	in.ShaftYieldStrength, in.HubYieldStrength = 65*ksi, 65*ksi
	out = parttest.Must(t, KeyStrength, in)
	parttest.Within(t, "safety at the steady torque", out.SteadySafety, 65000/(5850/(1.5*0.1875)), 2e-3)
	parttest.Within(t, "length wanted", out.LengthWanted, 1.34*inch, 5e-3)
	// No peak torque, nothing said of the peak.
	if !math.IsNaN(float64(out.LeastSafety)) || !math.IsNaN(float64(out.KeyUse)) || !math.IsNaN(float64(out.HubUse)) || out.DesignCase != AtSteadyAlone {
		t.Errorf("without a peak torque: %+v", out)
	}
	in.PeakTorque = 2 * in.ShaftTorque
	peak := parttest.Must(t, KeyStrength, in)
	parttest.Within(t, "safety at twice the torque", peak.LeastSafety, 65000/(2*5850/(1.5*0.1875)), 2e-3)
	parttest.Within(t, "use at twice the torque, weakest of three", peak.PeakUse, float64(max(peak.KeyUse, peak.ShaftUse, peak.HubUse)), 1e-12)
	parttest.Within(t, "use at twice the torque", peak.KeyUse, 2*5850/(1.5*0.1875)/65000, 2e-3)
	parttest.Within(t, "length, still for the steady torque", peak.LengthWanted, 1.34*inch, 5e-3)
	if peak.SteadySafety != out.SteadySafety || peak.DesignCase != AtPeak {
		t.Errorf("with a peak torque: %+v", peak)
	}
	in.PeakTorque = 4 * in.ShaftTorque
	parttest.Within(t, "length for a hard peak", parttest.Must(t, KeyStrength, in).LengthWanted, 4/2.8*1.34*inch, 5e-3)
}

// A key of the length wanted meets both what its limits ask: the safety wanted
// at the steady torque and yield at the peak, one of them just so.
func TestLengthWantedComesBack(t *testing.T) {
	r := rand.New(rand.NewPCG(21, 1))
	short := 0
	for range 500 {
		in := sloopKey()
		in.ShaftTorque = quantity.Torque(5 + 60*r.Float64())
		in.PeakTorque = in.ShaftTorque * quantity.Torque(0.5+5*r.Float64())
		in.HubYieldStrength = quantity.Stress(1e8 * (0.5 + r.Float64()))
		in.WantedSafety = quantity.Ratio(1 + 4*r.Float64())
		in.KeyCount = 1 + r.IntN(2)
		in.KeyLength = parttest.Must(t, KeyStrength, in).LengthWanted
		if in.KeyLength > longestKey*in.ShaftDiameter {
			continue
		}
		short++
		was := parttest.Must(t, KeyStrength, in)
		steady, peak := float64(was.SteadySafety/in.WantedSafety), float64(was.PeakUse)
		if in.PeakTorque < in.ShaftTorque {
			peak = 0 // the steady torque is the harder one
		}
		parttest.Within(t, "what is left", max(1/steady, peak), 1, 1e-12)
		in.ShaftTorque *= 1.5
		in.PeakTorque *= 1.5
		if more := parttest.Must(t, KeyStrength, in); more.LeastSafety >= was.LeastSafety || more.LengthWanted <= was.LengthWanted {
			t.Error("more torque makes the key safer")
		}
	}
	if short < 200 {
		t.Errorf("only %d keys were short enough", short)
	}
}

// More than one and a half diameters of key help nothing.
func TestLongKeyCountsOnlyInPart(t *testing.T) {
	in := sloopKey()
	in.KeyLength = 1.5 * inch
	was := parttest.Must(t, KeyStrength, in)
	in.KeyLength = 2.5 * inch
	long := parttest.Must(t, KeyStrength, in)
	parttest.Within(t, "length used", long.LengthUsed, 1.5*inch, 1e-12)
	parttest.Within(t, "safety", long.SteadySafety, float64(was.SteadySafety), 1e-12)
}

func TestWeakestPlace(t *testing.T) {
	for want, change := range map[string]func(*KeyStrengthInput){
		HubGives:   func(*KeyStrengthInput) {},
		ShaftGives: func(k *KeyStrengthInput) { k.ShaftYieldStrength = 1e8 },
		KeyShears:  func(k *KeyStrengthInput) { k.KeyWidth = 0.1 * inch },
		KeyCrushes: func(k *KeyStrengthInput) { k.HubYieldStrength, k.ShaftYieldStrength = 0, 0 },
	} {
		in := sloopKey()
		change(&in)
		if got := parttest.Must(t, KeyStrength, in).WeakestPlace; got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}

// What is not known is not unbreakable: the whole is then not judged, and the
// place is named. What is known still is.
func TestUnknownStrengthIsNotJudged(t *testing.T) {
	for _, c := range []struct {
		hub, shaft quantity.Stress
		named      string
	}{{0, 30 * ksi, HubNotJudged}, {25 * ksi, 0, ShaftNotJudged}, {0, 0, NeitherJudged}, {25 * ksi, 30 * ksi, AllJudged}} {
		in := sloopKey()
		in.HubYieldStrength, in.ShaftYieldStrength = c.hub, c.shaft
		out := parttest.Must(t, KeyStrength, in)
		if out.NotJudged != c.named || math.IsNaN(float64(out.KeyUse)) || math.IsNaN(float64(out.HubUse)) != (c.hub == 0) || math.IsNaN(float64(out.ShaftUse)) != (c.shaft == 0) {
			t.Errorf("%+v: %+v", c, out)
		}
		whole := c.named == AllJudged
		strong := in // in parts that never yield what is known holds as much
		if c.hub == 0 {
			strong.HubYieldStrength = 1e12
		}
		if c.shaft == 0 {
			strong.ShaftYieldStrength = 1e12
		}
		if all := parttest.Must(t, KeyStrength, strong); !whole {
			parttest.Within(t, c.named+", torque of what is known", float64(out.KnownTorque), float64(all.TorqueHeld), 1e-9)
			parttest.Within(t, c.named+", safety of what is known", float64(out.KnownSafety), float64(all.TorqueHeld)/170, 1e-9)
		} else if !math.IsNaN(float64(out.KnownTorque)) || !math.IsNaN(float64(out.KnownSafety)) {
			t.Errorf("all is judged, and beside it %g is known", out.KnownSafety)
		}
		for _, v := range []float64{float64(out.LeastSafety), float64(out.PeakUse), float64(out.SteadySafety), float64(out.LengthWanted)} {
			if math.IsNaN(v) == whole {
				t.Errorf("%+v: %+v", c, out)
			}
		}
	}
}

func TestKeyStrengthRefuses(t *testing.T) {
	refusals(t, KeyStrength, sloopKey, []refusal[KeyStrengthInput]{
		{"/shaftDiameter", "", func(k *KeyStrengthInput) { k.ShaftDiameter = 0 }},
		{"/shaftTorque", "", func(k *KeyStrengthInput) { k.ShaftTorque = 0 }},
		{"/keyWidth", "15 mm wide does not go into a shaft of 25.4 mm", func(k *KeyStrengthInput) { k.KeyWidth = 0.015 }},
		{"/keyHeight", "15 mm high would reach through", func(k *KeyStrengthInput) { k.KeyHeight = 0.015 }},
		{"/keySeat", "7 mm deep swallows a key 6.35 mm high", func(k *KeyStrengthInput) { k.KeySeat = 0.007 }},
		{"/smallEndDiameter", "26 mm, is not smaller", func(k *KeyStrengthInput) { k.SmallEndDiameter = 0.026 }},
		{"/keyHeight", "8 mm deep is not that of a square key 19.05 mm wide", func(k *KeyStrengthInput) {
			k.ShaftDiameter, k.KeyWidth, k.KeyHeight, k.KeySeat = 3*inch, 0.75*inch, 0, 0.008
		}},
		{"/shaftDiameter", "25.4 mm does not end in a taper of 31.75 mm", func(k *KeyStrengthInput) { k.LargeEndDiameter = 1.25 * inch }},
		{"/keyLength", "50.8 mm long does not bear in a taper or bore of 40 mm", func(k *KeyStrengthInput) { k.TaperLength = 0.04 }},
		{"/largeEndDiameter", "", func(k *KeyStrengthInput) { k.LargeEndDiameter = -1 }},
		{"/keyLength", "", func(k *KeyStrengthInput) { k.KeyLength = quantity.Length(math.NaN()) }},
		{"/keyYieldStrength", "", func(k *KeyStrengthInput) { k.KeyYieldStrength = 0 }},
		{"/keyCount", "3 keys", func(k *KeyStrengthInput) { k.KeyCount = 3 }},
		{"/wantedSafety", "", func(k *KeyStrengthInput) { k.WantedSafety = -1 }},
	})
}

var keySink KeyStrengthResult

func TestKeyStrengthDoesNotAllocate(t *testing.T) {
	in := sloopKey()
	parttest.NoAllocations(t, func() { keySink, _ = KeyStrength(in) })
}

func BenchmarkKeyStrength(b *testing.B) {
	in := sloopKey()
	b.ReportAllocs()
	for b.Loop() {
		keySink, _ = KeyStrength(in)
	}
}

// Machinery's Handbook, depth control values for keyseats: 0.859 in across the
// keyseat of a 1 in shaft with a 1/4 in square key (from memory).
func TestAcrossTheKeyway(t *testing.T) {
	in := sloopKey()
	in.KeySeat = 0
	parttest.Within(t, "across the keyway", parttest.Must(t, KeyStrength, in).AcrossKeyway, 0.859*inch, 5e-4)
}

// What yields at the steady torque alone is told though no peak is: by a tenth too much
// as by ten times; what holds is not. Of a taper whose small end nobody measured no taper
// is told of its ends.
func TestYieldAtTheSteadyTorqueAlone(t *testing.T) {
	in := sloopKey()
	in.PeakTorque = 0
	holds := float64(parttest.Must(t, KeyStrength, in).TorqueHeld)
	for use, told := range map[float64]bool{0.9: false, 1.1: true, 1.9: true, 10: true} {
		in.ShaftTorque = quantity.Torque(use * holds)
		out := parttest.Must(t, KeyStrength, in)
		if math.IsNaN(float64(out.LeastSafety)) == told || math.IsNaN(float64(out.PeakUse)) == told {
			t.Errorf("%g of what it holds: safety %g, use %g", use, out.LeastSafety, out.PeakUse)
		}
		if told {
			parttest.Within(t, "use", float64(out.PeakUse), use, 1e-9)
		}
	}
	in = sloopKey()
	in.TaperLength = 2 * inch
	if in.SmallEndDiameter = 0; !math.IsNaN(float64(parttest.Must(t, KeyStrength, in).TaperMeasured)) {
		t.Error("a taper is told of one end")
	}
}
