package problem

import (
	"math"
	"testing"
)

func TestWithin(t *testing.T) {
	for _, c := range []struct {
		v, lo, hi float64
		want      bool
	}{
		{1, 1, 2, true}, {2, 1, 2, true}, {0, 0, 1, true},
		{2 * (1 + 1e-13), 1, 2, true}, {1 - 1e-13, 1, 2, true}, {-1 - 1e-13, -1, 2, true},
		{2.000001, 1, 2, false}, {0.999999, 1, 2, false}, {-1e-9, 0, 1, false},
		{math.Inf(1), 1, 2, false}, {math.Inf(-1), 1, 2, false}, {math.NaN(), 1, 2, false},
	} {
		if got := Within(c.v, c.lo, c.hi); got != c.want {
			t.Errorf("%g from %g to %g: %v", c.v, c.lo, c.hi, got)
		}
	}
}

func TestChecksAddWhatTheyRefuse(t *testing.T) {
	nan, inf, negativeZero := math.NaN(), math.Inf(1), math.Copysign(0, -1)
	for _, c := range []struct {
		name  string
		check func(*List, float64) bool
		good  []float64
		bad   []float64
	}{
		{"Above", func(l *List, v float64) bool { return l.Above("/a", "a", v) }, []float64{5e-324, 1e-300, 1, math.MaxFloat64}, []float64{0, negativeZero, -5e-324, -1, nan, -nan, inf, -inf}},
		{"NotNegative", func(l *List, v float64) bool { return l.NotNegative("/a", "a", v) }, []float64{0, negativeZero, 5e-324, 1, math.MaxFloat64}, []float64{-5e-324, -1, nan, -nan, inf, -inf}},
		{"Between", func(l *List, v float64) bool { return l.Between("/a", "a", v, 1, 2, "1 to 2") }, []float64{1, 1.5, 2}, []float64{0.999, 2.001, 0, nan, inf, -inf}},
		{"Share", func(l *List, v float64) bool { return l.Share("/a", "a", v) }, []float64{5e-324, 1e-9, 1}, []float64{0, negativeZero, 1 + 1e-15, 1.001, nan, -nan, inf, -inf, -1}},
	} {
		var l List
		for _, v := range c.good {
			if !c.check(&l, v) || len(l) != 0 {
				t.Errorf("%s refuses %g: %v", c.name, v, l)
			}
		}
		for i, v := range c.bad {
			if c.check(&l, v) || len(l) != i+1 || l[i].Where != "/a" {
				t.Errorf("%s lets %g pass: %v", c.name, v, l)
			}
		}
	}
}
