package series

import (
	"cmp"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"gonum.org/v1/gonum/stat"
	"gonum.org/v1/gonum/stat/distuv"

	"example.org/driveline/marinecalc/internal/parttest"
)

// NIST Statistical Reference Datasets, linear regression, Norris: 36 points,
// slope 1.00211681802045, intercept -0.262323073774029, residual standard
// deviation 0.884796396144373 (certified; data and values from memory, which
// agree with each other). The unbent curve is that line.
func TestUnbentCurveAgainstNorris(t *testing.T) {
	data := [][2]float64{{0.2, 0.1}, {337.4, 338.8}, {118.2, 118.1}, {884.6, 888.0}, {10.1, 9.2}, {226.5, 228.1}, {666.3, 668.5}, {996.3, 998.5}, {448.6, 449.1},
		{777.0, 778.9}, {558.2, 559.2}, {0.4, 0.3}, {0.6, 0.1}, {775.5, 778.1}, {666.9, 668.8}, {338.0, 339.3}, {447.5, 448.9}, {11.6, 10.8}, {556.0, 557.7}, {228.1, 228.3},
		{995.8, 998.0}, {887.6, 888.8}, {120.2, 119.6}, {0.3, 0.3}, {0.3, 0.6}, {556.8, 557.6}, {339.1, 339.3}, {887.2, 888.0}, {999.0, 998.5}, {779.0, 778.9}, {11.1, 10.2},
		{118.3, 117.6}, {229.2, 228.9}, {669.1, 668.4}, {448.9, 449.2}, {0.5, 0.2}}
	slices.SortFunc(data, func(a, b [2]float64) int { return cmp.Compare(a[0], b[0]) })
	var x, y []float64
	for _, d := range data {
		x, y = append(x, d[0]), append(y, d[1])
	}
	c := layCurves(x, y, 0)
	f := &c.of[0]
	slope := f.rise / c.span
	parttest.Near(t, "slope", slope, 1.00211681802045, 1e-12)
	parttest.Near(t, "intercept", f.height-slope*mean(x), -0.262323073774029, 1e-10)
	parttest.Near(t, "residual standard deviation", f.scatter, 0.884796396144373, 1e-11)
}

// The weights of the curves and the chance of one more reading, from gonum's
// regression on the shape of each bend and its Student distribution: a weight
// goes as the prior, the residual sum of squares to the power −(n−2)/2 and one
// over the root of the shape's own sum of squares.
func TestWeightsOfTheCurvesAgainstGonum(t *testing.T) {
	r := rand.New(rand.NewPCG(21, 5))
	for range 40 {
		var x, y []float64
		for i := range 6 + r.IntN(8) {
			x, y = append(x, float64(10*i)+5*r.Float64()), append(y, 3+0.05*float64(i*i)+0.1*r.NormFloat64())
		}
		n := float64(len(x))
		c := layCurves(x, y, 0)
		if len(x) != c.readings {
			continue // one was left out
		}
		at, level := x[len(x)-1]+20, y[len(y)-1]+r.Float64()
		growths := []float64{0, 1, 2, 3, 4, 5, 6} // of the pace by e, over the run
		weights, chances, total := make([]float64, len(growths)), make([]float64, len(growths)), 0.0
		for k, bend := range growths {
			shape := func(x0 float64) float64 {
				u := (x0 - x[0]) / (x[len(x)-1] - x[0])
				if bend == 0 {
					return u
				}
				return (math.Exp(bend*u) - 1) / (math.Exp(bend) - 1)
			}
			g := make([]float64, len(x))
			for i := range x {
				g[i] = shape(x[i])
			}
			height, rise := stat.LinearRegression(g, y, nil, false)
			rss := 0.0
			for i := range g {
				d := y[i] - height - rise*g[i]
				rss += d * d
			}
			mean, spread := stat.Mean(g, nil), 0.0
			for _, v := range g {
				spread += (v - mean) * (v - mean)
			}
			prior := 1. / 6
			if bend == 0 {
				prior = 1. / 3
			}
			weights[k] = prior * math.Pow(rss, -(n-2)/2) / math.Sqrt(spread)
			total += weights[k]
			sd := math.Sqrt(rss / (n - 2) * (1 + 1/n + (shape(at)-mean)*(shape(at)-mean)/spread))
			chances[k] = distuv.StudentsT{Mu: height + rise*shape(at), Sigma: sd, Nu: n - 2}.CDF(level)
		}
		want := 0.0
		for k := range weights {
			parttest.Near(t, "weight", c.of[k].weight, weights[k]/total, 1e-9)
			want += weights[k] / total * chances[k]
		}
		parttest.Near(t, "chance", c.below(level, at), want, 1e-9)
		parttest.Near(t, "chance from above", c.short(level, at, false), 1-want, 1e-9)
	}
}

// Of seven readings one far off the line of the others is left out of the
// bends, of six none.
func TestALoneReadingSaysNothingOfABend(t *testing.T) {
	for n, want := range map[int]int{6: 6, 7: 6, 14: 13} {
		var x, y []float64
		for i := range n {
			x, y = append(x, float64(i)), append(y, float64(i)+0.01*float64(i%3))
		}
		y[1] += 5
		if c := layCurves(x, y, 0); c.readings != want {
			t.Errorf("of %d readings %d are used, want %d", n, c.readings, want)
		}
	}
}
