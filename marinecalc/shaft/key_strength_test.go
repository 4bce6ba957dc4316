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
	parttest.Within(t, "safety at the steady torque", out.SteadySafety, 65000/(5850/(1.5*0.1875)), 2e-3)
	if out.WeakestPlace != KeyCrushes {
		t.Error(out.WeakestPlace)
	}
	// No peak torque, nothing said of the peak.
	if !math.IsNaN(float64(out.LeastSafety)) || !math.IsNaN(float64(out.KeyUse)) || out.DesignCase != AtSteadyAlone {
		t.Errorf("without a peak torque: %+v", out)
	}
	in.PeakTorque = 2 * in.ShaftTorque
	peak := parttest.Must(t, KeyStrength, in)
	parttest.Within(t, "safety at twice the torque", peak.LeastSafety, 65000/(2*5850/(1.5*0.1875)), 2e-3)
	parttest.Within(t, "length for it", peak.LengthWanted, 2*1.34*inch, 5e-3)
	if peak.SteadySafety != out.SteadySafety || peak.DesignCase != AtPeak {
		t.Errorf("with a peak torque: %+v", peak)
	}
}

// A key of the length wanted has the safety wanted.
func TestLengthWantedComesBack(t *testing.T) {
	r := rand.New(rand.NewPCG(21, 1))
	for range 500 {
		in := sloopKey()
		in.ShaftTorque = quantity.Torque(10 + 500*r.Float64())
		in.PeakTorque = quantity.Torque(1000 * r.Float64())
		in.HubYieldStrength = quantity.Stress(1e8 * (0.5 + r.Float64()))
		in.WantedSafety = quantity.Ratio(1 + 4*r.Float64())
		in.KeyCount = 1 + r.IntN(2)
		in.KeyLength = parttest.Must(t, KeyStrength, in).LengthWanted
		parttest.Within(t, "safety", parttest.Must(t, KeyStrength, in).LeastSafety, float64(in.WantedSafety), 1e-12)
		was := parttest.Must(t, KeyStrength, in)
		in.ShaftTorque *= 1.5
		in.PeakTorque *= 1.5
		if more := parttest.Must(t, KeyStrength, in); more.LeastSafety >= was.LeastSafety || more.LengthWanted <= was.LengthWanted {
			t.Error("more torque makes the key safer")
		}
	}
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
	in := sloopKey()
	in.HubYieldStrength, in.ShaftYieldStrength, in.WantedSafety = 0, 0, 0
	out := parttest.Must(t, KeyStrength, in)
	if !math.IsNaN(float64(out.HubSafety)) || !math.IsNaN(float64(out.ShaftSafety)) || !math.IsNaN(float64(out.LengthWanted)) || math.IsNaN(float64(out.LeastSafety)) {
		t.Errorf("%+v", out)
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
