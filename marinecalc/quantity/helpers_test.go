package quantity

import (
	"math"
	"testing"
)

func kind(t testing.TB, name string) *Kind {
	t.Helper()
	k, ok := Lookup(name)
	if !ok {
		t.Fatalf("no kind %q", name)
	}
	return k
}

// near checks that text is read as want, to a relative tolerance.
func near(t *testing.T, kindName, text string, want, tolerance float64) Reading {
	t.Helper()
	r, err := kind(t, kindName).Parse(text)
	if err != nil {
		t.Errorf("%s %q: %v", kindName, text, err)
		return r
	}
	if math.Abs(r.SI-want) > tolerance*math.Abs(want) {
		t.Errorf("%s %q = %.17g, want %.17g", kindName, text, r.SI, want)
	}
	return r
}

// ulps gives how many floats lie between a and b.
func ulps(a, b float64) uint64 {
	if a == b {
		return 0
	}
	if math.Signbit(a) != math.Signbit(b) {
		return math.MaxUint64
	}
	x, y := math.Float64bits(math.Abs(a)), math.Float64bits(math.Abs(b))
	return max(x, y) - min(x, y)
}
