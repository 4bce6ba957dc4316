package hub

import (
	"math"
	"testing"

	"example.org/driveline/marinecalc/quantity"
)

// Between what friction holds and what a key may hold at most a margin is told where
// both lie on one side of 1; one of just 1 is enough. A trial goes by the side that
// its estimate was told by.
func TestBoundedMargins(t *testing.T) {
	nan := quantity.Ratio(math.NaN())
	at := func(x quantity.Ratio) *quantity.Ratio { return &x }
	for _, c := range []struct {
		least, most quantity.Ratio
		like        *quantity.Ratio
		want        quantity.Ratio
	}{
		{0.5, 0.9, nil, 0.9}, {0.5, 1, nil, nan}, {0.5, 1.5, nil, nan}, {0.5, nan, nil, nan}, {1, 2, nil, 1}, {1.2, 1.5, nil, 1.2}, {1.2, nan, nil, 1.2},
		{0.5, 1.1, at(0.9), 1.1}, {0.5, nan, at(0.9), 0.5}, {0.95, 1.5, at(1), 0.95}, {0.95, 1.5, at(1.4), 0.95},
	} {
		if got := Bounded(c.least, c.most, c.like); got != c.want && !(math.IsNaN(float64(got)) && math.IsNaN(float64(c.want))) {
			t.Errorf("%+v: %g", c, got)
		}
	}
	if Unsure(1) != 1 || !math.IsNaN(float64(Unsure(0.999))) {
		t.Error("what friction alone holds")
	}
}

// A cone of 1 in 10 and 80 mm is 8 mm less at its small end.
func TestSmallEndOfACone(t *testing.T) {
	if got := SmallEnd(0.040, 0.1, 0.080); math.Abs(float64(got)-0.032) > 1e-12 {
		t.Errorf("%g", got)
	}
}
