package spread

import (
	"math"
	"testing"

	"example.org/driveline/marinecalc/sheet"
)

// A size above nothing, read as 1 with a gauge good to ±a: what is below
// nothing is refused. Expected probabilities are by hand those of the
// rectangular distribution, cut off at nothing where that is less sure.
func TestACoarserGaugeIsNotSurer(t *testing.T) {
	judge := func(a float64, l Limit) Judgement {
		out := mustPropagate(t, []Factor{{Estimate: 1, Low: 1 - a, High: 1 + a, Shape: Rectangular}}, 1, Plan{Trials: 10_000},
			func(x, y []float64) bool { y[0] = x[0]; return x[0] > 0 })
		return Judge(1, &out.Results[0], l)
	}
	for _, c := range []struct {
		a     float64
		limit Limit
		p     float64
		word  sheet.Word
	}{
		{0.1, AtMost(1.2), 1, sheet.Within},
		{0.5, AtMost(1.2), 0.7, sheet.CannotTell},
		{2, AtMost(1.2), 2.2 / 4, sheet.CannotTell},
		{8, AtMost(1.2), 8.2 / 16, sheet.CannotTell},
		{30, AtMost(1.2), 30.2 / 60, sheet.CannotTell}, // 1.2/31 by the trials that are left; 29 in 60 are refused, each with its edge at nothing, where the limit is met
		{0.1, AtLeast(0.8), 1, sheet.Within},
		{0.5, AtLeast(0.8), 0.7, sheet.CannotTell},
		{8, AtLeast(0.8), 8.2 / 16, sheet.CannotTell},
		{39, AtLeast(0.8), 39.2 / 78, sheet.CannotTell}, // 0.98 by the trials that are left
		{2, AtMost(5), 1, sheet.Within},                 // no size the gauge allows is too large, whatever lies below nothing
	} {
		j := judge(c.a, c.limit)
		agree(t, "probability", j.Probability, c.p, 0.002)
		if j.Word != c.word {
			t.Errorf("1 ± %g against %+v: %s with %g, want %s", c.a, c.limit, j.Word, j.Probability, c.word)
		}
	}
}

// A result that the model leaves open in some trials counts against either
// word, and other results of the same trials stay as sure as they are.
func TestAResultLeftOpenIsCountedAgainst(t *testing.T) {
	out := mustPropagate(t, []Factor{rectangular(0, 1)}, 2, Plan{Trials: 10_000}, func(x, y []float64) bool {
		y[0] = x[0]
		if x[0] > 0.1 {
			y[1] = x[0]
		}
		return true
	})
	if j := Judge(0.5, &out.Results[0], AtMost(2)); j.Word != sheet.Within {
		t.Errorf("a result that is always there: %+v", j)
	}
	if j := Judge(0.5, &out.Results[1], AtMost(2)); j.Word != sheet.CannotTell || math.Abs(j.Probability-0.9) > 0.001 {
		t.Errorf("a result that one trial in ten leaves open: %+v", j)
	}
	if j := Judge(3, &out.Results[1], AtMost(0.05)); j.Word != sheet.CannotTell || math.Abs(j.Probability-0.1) > 0.001 {
		t.Errorf("the same from above: %+v", j)
	}
}
