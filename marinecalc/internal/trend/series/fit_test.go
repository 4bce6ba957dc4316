package series

import (
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/stat/distuv"

	"example.org/driveline/marinecalc/internal/parttest"
)

// The chance that one more reading falls short of a level is that of gonum's
// Student distribution about the line, above it and below it, from either side.
func TestShortAgainstGonum(t *testing.T) {
	r := rand.New(rand.NewPCG(2, 9))
	x, y := []float64{0, 10, 20, 30, 40, 50, 60, 70}, make([]float64, 8)
	for i := range y {
		y[i] = 2 + 0.1*x[i] + r.NormFloat64()
	}
	f := Lay(x, y, 0)
	for _, at := range []float64{35, 100} {
		law := distuv.StudentsT{Mu: f.At(at), Sigma: f.Half(at) / f.Factor, Nu: 6}
		for _, off := range []float64{-3, -0.5, 0, 0.5, 3} {
			level := f.At(at) + off
			parttest.Near(t, "from below", f.short(level, at, true), law.CDF(level), 1e-9)
			parttest.Near(t, "from above", f.short(level, at, false), 1-law.CDF(level), 1e-9)
		}
	}
}

// Independent simulation: the median of many normal values scatters by π/2 times
// the variance of their mean.
func TestMedianScattersMoreThanTheMean(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 4))
	const n, runs = 101, 20000
	sum, v := 0.0, make([]float64, n)
	for range runs {
		for i := range v {
			v[i] = r.NormFloat64()
		}
		m := median(v)
		sum += m * m
	}
	parttest.Within(t, "variance over that of the mean", sum/runs*n, medianLoss, 0.04)
}
