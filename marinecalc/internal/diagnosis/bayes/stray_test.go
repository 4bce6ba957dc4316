package bayes

import (
	"math"
	"math/rand/v2"
	"testing"
)

// Derived: the average over what a probability may be, against drawing it, and
// the points against the moments of the normal, 1, 0, 1, 0, 3, 0, 15.
func TestStrayIsTheAverage(t *testing.T) {
	for power, want := range []float64{1, 0, 1, 0, 3, 0, 15} {
		sum := 0.0
		for _, s := range strays {
			sum += s.weight * math.Pow(s.at, float64(power))
		}
		near(t, "moment", sum, want)
	}
	r := rand.New(rand.NewPCG(7, 7))
	for _, p := range []float64{0.001, 0.03, 0.3, 0.5, 0.75, 0.99} {
		sum := 0.0
		const runs = 400_000
		for range runs {
			sum += 1 / (1 + math.Exp(-math.Log(p/(1-p))-r.NormFloat64()))
		}
		if got, want := stray(p, 1), sum/runs; math.Abs(got-want) > 0.002 {
			t.Errorf("%v comes to %v, drawn %v", p, got, want)
		}
		near(t, "known exactly", stray(p, 0), p)
	}
}

// Less is known, so less is claimed: the answers move every odds less.
func TestStrayedClaimsLess(t *testing.T) {
	m := sharp([]float64{0.01, 0.01}, [][]float64{{0.9, 0.8}, {0.1, 0.05}}, []float64{0.05, 0.05})
	for q := range m.Wrong {
		m.Wrong[q] = 0.01
	}
	weak := m.Strayed(1)
	answers := []Answer{Yes, Yes}
	if strict, loose := m.Believe(answers).Cause[0], weak.Believe(answers).Cause[0]; !(loose < strict && loose > 0.5) {
		t.Errorf("%v at their word, %v strayed", strict, loose)
	}
}
