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
		decimals   bool
	}{
		{"length", "0.3 mm", 0.00005, true},
		{"length", "0.30 mm", 0.000005, true},
		{"length", "0,3 mm", 0.00005, true},
		{"length", "12 mm", 0.0005, false},
		{"length", "-12.5 mm", 0.00005, true},
		{"length", "12. mm", 0.0005, false},
		{"length", "1.25 in", 0.000127, true},
		{"length", "0.3 mm ± 0.1 mm", 0.00005, true},
		{"temperature", "20.5 °C", 0.05, true},
		{"length", "7/16 in", 0, false},
		{"length", "1-11/16 in", 0, false},
		{"length", "1 11/16 in", 0, false},
		{"length", "1e3 mm", 0, false},
		{"length", "mm", 0, false},
		{"length", "3 furlongs", 0, false},
	} {
		k, _ := Lookup(c.kind)
		half, decimals := k.HalfDigit(c.text)
		if math.Abs(half-c.half) > 1e-12 || decimals != c.decimals {
			t.Errorf("%q: %g %v, want %g %v", c.text, half, decimals, c.half, c.decimals)
		}
	}
}
