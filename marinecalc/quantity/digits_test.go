package quantity

import (
	"math"
	"math/rand/v2"
	"testing"
)

// Half of the last digit typed: by hand, with 25.4 mm to the inch.
func TestHalfDigit(t *testing.T) {
	for _, c := range []struct {
		kind, text string
		half       float64
	}{
		{"length", "0.3 mm", 0.00005},
		{"length", "0.30 mm", 0.000005},
		{"length", "0,3 mm", 0.00005},
		{"length", "12 mm", 0.0005},
		{"length", "-12.5 mm", 0.00005},
		{"length", "12. mm", 0.0005},
		{"length", "1.25 in", 0.000127},
		{"length", "0.3 mm ± 0.1 mm", 0.00005},
		{"temperature", "20.5 °C", 0.05},
		{"length", "7/16 in", 0},
		{"length", "1-11/16 in", 0},
		{"length", "1 11/16 in", 0},
		{"length", "1e3 mm", 0},
		{"length", "mm", 0},
		{"length", "3 furlongs", 0},
	} {
		k, _ := Lookup(c.kind)
		half := k.HalfDigit(c.text)
		if math.Abs(half-c.half) > 1e-12 {
			t.Errorf("%q: %g, want %g", c.text, half, c.half)
		}
	}
}

// Three figures are what an accuracy of a tenth leaves, in every system of units.
func TestThreeFiguresAreThoseOfATenth(t *testing.T) {
	random := rand.New(rand.NewPCG(5, 8))
	for _, name := range []string{"ratio", "mass", "force", "torque", "energy", "power", "pressure", "stress", "stiffness", "inertia", "frequency", "volume-flow", "time", "area"} {
		k, ok := Lookup(name)
		if !ok {
			t.Fatal(name)
		}
		v := k.In("", "")
		for i := range 3000 {
			si := math.Pow10(random.IntN(16)-7) * (1 + float64(i%10))
			if i%3 > 0 {
				si = math.Pow10(random.IntN(16)-7) * (1 + 9*random.Float64())
			}
			for s := Metric; s <= Both; s++ {
				if got, want := string(v.AppendFigures(nil, si, 3, s)), v.PrintTo(si, si/10, s); got != want {
					t.Errorf("%s %v: %q, and to a tenth %q", name, si, got, want)
				}
			}
		}
	}
}

// No length is printed finer than a gauge on a boat reads, but where the range would
// be gone: a thousandth of a millimetre, a tenth of a thou, a ten-thousandth of an inch.
func TestLengthsStopAtTheGauge(t *testing.T) {
	length, _ := Lookup("length")
	mm, thou := length.In("mm", "thou"), length.In("mm", "in")
	for _, c := range []struct{ got, want string }{
		{mm.PrintTo(2.57e-6, 6e-6, Metric), "0.003 mm"},
		{mm.PrintTo(2.57e-6, 6e-6, US), "0.1 thou"},
		{thou.PrintTo(0.0004501, 2e-5, US), "0.0177 in"},
		{mm.PrintSpan(1.02e-6, 12.9e-6, Metric), "0.001 to 0.013 mm"},
		{mm.PrintTo(0.0014142, 1e-5, Metric), "1.414 mm"},
		{mm.PrintTo(1.704e-6, 1.5e-7, Metric), "0.0017 mm"},
		{mm.PrintTo(4.3e-7, 5e-8, Metric), "0.43 µm"},
	} {
		if c.got != c.want {
			t.Errorf("%q, want %q", c.got, c.want)
		}
	}
}

// What lacks a tenth by the last bit of a difference is a tenth: another platform's
// last bit would print a digit more.
func TestADecadeHasNoLastBit(t *testing.T) {
	least, most := 0.2, 0.3 // no constants, whose difference would be exact
	short, whole := most-least, 0.1
	if short >= whole {
		t.Fatal("nothing is lacking")
	}
	for _, half := range []float64{short, whole, 0.1 * (1 + 1e-15)} {
		if got := string(appendRounded(nil, 16.436, 100*half, 4)); got != "16" {
			t.Errorf("to %v: %s", half, got)
		}
	}
}
