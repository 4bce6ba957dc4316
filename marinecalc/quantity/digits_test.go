package quantity

import (
	"math"
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
