package spread

import (
	"math"
	"testing"
)

// Closed forms: the mean of a triangular distribution is a third of its three
// corners, of its square (a² + b² + c² + ab + ac + bc)/6; of 1/(1-u) over an
// even one ln((1-a)/(1-b))/(b-a); a normal one has its mean in the middle and
// e^(m + s²/2) for e^x (Johnson, Kotz and Balakrishnan, Continuous Univariate
// Distributions, from memory).
func TestMeanOverAFactor(t *testing.T) {
	same := func(u float64) float64 { return u }
	for _, c := range []struct {
		name string
		f    Factor
		of   func(float64) float64
		want float64
	}{
		{"triangular", Factor{Estimate: 8, Low: 2, High: 25, Shape: Triangular}, same, 35.0 / 3},
		{"its square", Factor{Estimate: 8, Low: 2, High: 25, Shape: Triangular}, func(u float64) float64 { return u * u }, (64.0 + 4 + 625 + 16 + 200 + 50) / 6},
		{"even", Factor{Estimate: 0.2, Low: 0.1, High: 0.3, Shape: Rectangular}, func(u float64) float64 { return 1 / (1 - u) }, math.Log(0.9/0.7) / 0.2},
		{"normal", Factor{Estimate: 1, Low: 1 - 0.2*z95, High: 1 + 0.2*z95, Shape: Normal}, math.Exp, math.Exp(1.02)},
		{"exact", Factor{Estimate: 3}, math.Sqrt, math.Sqrt(3)},
	} {
		if got := c.f.Mean(c.of); math.Abs(got-c.want) > 2e-4*c.want {
			t.Errorf("%s: %g, want %g", c.name, got, c.want)
		}
	}
}
