package series

import (
	"cmp"
	"slices"
	"testing"

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
