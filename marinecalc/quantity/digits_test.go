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
