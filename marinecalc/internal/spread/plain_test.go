package spread

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"gonum.org/v1/gonum/stat"
	"gonum.org/v1/gonum/stat/distuv"
)

// What is worked out fast, held against the same worked out plainly.

// Mean and sum of squares are those of gonum, at every length about a round of
// eight, far from nothing as well.
func TestSummariseAtEveryLength(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 5))
	for n := 1; n <= 41; n++ {
		for _, about := range []float64{0, 1e6} {
			v := make([]float64, n)
			for i := range v {
				v[i] = about + float64(i*i%7) + r.NormFloat64()
			}
			mean, squares := summarise(v)
			m, variance := stat.MeanVariance(v, nil)
			if n == 1 {
				variance = 0
			}
			if math.Abs(mean-m) > 1e-9 || math.Abs(squares-variance*float64(n-1)) > 1e-7*float64(n) {
				t.Errorf("%d values about %g: %v and %v, want %v and %v", n, about, mean, squares, m, variance*float64(n-1))
			}
		}
	}
}

// The interval of the standard (JCGM 101:2008, 7.7.2), by sorting: q the whole
// number next to 0.95·M, r the whole number next to half of what is left.
func TestIntervalsBySorting(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 11))
	draw := []func(i int) float64{
		func(int) float64 { return r.NormFloat64() },
		func(int) float64 { return math.Exp(3 * r.NormFloat64()) }, // a long tail, so that one end lies near the mean
		func(int) float64 { return -math.Exp(3 * r.NormFloat64()) },
		func(i int) float64 { return float64(i % 3) }, // ties
		func(i int) float64 { return float64(min(i, 1)) },
	}
	for m := 2; m <= 260; m++ {
		for k, of := range draw {
			v := make([]float64, m)
			for i := range v {
				v[i] = of(i)
			}
			sorted := slices.Sorted(slices.Values(v))
			q := min(int(math.Floor(0.95*float64(m)+0.5)), m-1)
			at := min(int(math.Floor(float64(m-q+1)/2)), m-q)
			mean, variance := stat.MeanVariance(v, nil)
			low, high := symmetricInterval(v, make([]float64, m), mean, math.Sqrt(variance))
			if low != sorted[at-1] || high != sorted[at+q-1] {
				t.Fatalf("%d values of kind %d: %v to %v, want %v to %v", m, k, low, high, sorted[at-1], sorted[at+q-1])
			}
		}
	}
}

// The shares of factors are those of a one-way analysis of variance with random
// effects (Searle, Casella and McCulloch, Variance Components, 1992, 3.6, from
// memory): σ̂a² = (MSA − MSE)/n0, and the share is σ̂a²/(σ̂a² + MSE).
func TestSharesAgainstAnalysisOfVariance(t *testing.T) {
	r := rand.New(rand.NewPCG(13, 17))
	for n := 1; n <= 70; n++ {
		groupsOf := 1 + r.IntN(min(n+1, 12))
		groups := make([]uint8, n)
		v, values := make([]float64, n), make([][]float64, groupsOf)
		for i := range v {
			g := r.IntN(groupsOf)
			groups[i] = uint8(g)
			v[i] = 5 + float64(g)*r.Float64()*3 + r.NormFloat64()
			values[g] = append(values[g], v[i])
		}
		grand, total := stat.Mean(v, nil), 0.0
		for _, y := range v {
			total += (y - grand) * (y - grand)
		}
		var counts tally
		between, inside, squares, full := 0.0, 0.0, 0.0, 0.0
		for g, list := range values {
			counts[g] = int32(len(list))
			if len(list) == 0 {
				continue
			}
			full++
			mean := stat.Mean(list, nil)
			between += float64(len(list)) * (mean - grand) * (mean - grand)
			squares += float64(len(list) * len(list))
			for _, y := range list {
				inside += (y - mean) * (y - mean)
			}
		}
		want, all := 0.0, float64(n)
		if full >= 2 && all > full {
			msa, mse := between/(full-1), inside/(all-full)
			part := (msa - mse) / ((all - squares/all) / (full - 1))
			want = math.Max(0, math.Min(1, part/(part+mse)))
			if msa-mse <= 2*mse*math.Sqrt(2/(full-1)) { // as much as chance may give
				want = 0
			}
		}
		var s sums
		other := make([]uint8, n) // of three factors that do nothing
		s.add([lanes][]uint8{other, groups, other, groups}, v, grand)
		for _, lane := range []int{1, 3} {
			a := analyse(&s[lane], &counts, n)
			if got := a.share(n, total, a.inside(n, total)); math.Abs(got-want) > 1e-9 {
				t.Errorf("%d trials in %v groups: share %v, want %v", n, full, got, want)
			}
		}
		if math.Abs(s[0][0]) > 1e-9*all || math.Abs(s[2][0]) > 1e-9*all { // all in one group: the deviations cancel
			t.Errorf("%d trials: %v and %v are left of one group", n, s[0][0], s[2][0])
		}
	}
	one := tally{4, 4}
	a := analyse(&[maxGroups]float64{1, -1}, &one, 8)
	if got := a.share(8, 0, 0); got != 0 {
		t.Errorf("a share of nothing: %v", got)
	}
}

// About √n groups, 4 to 64, each of whole strata that follow each other.
func TestGroupsOfStrata(t *testing.T) {
	for n := 1; n <= 5000; n++ {
		groups := groupsFor(n)
		if want := min(max(int(math.Sqrt(float64(n))), 4), 64); groups != want {
			t.Fatalf("%d groups of %d, want %d", groups, n, want)
		}
		at := 0
		for s := range n { // the first s with s·groups/n ≥ group
			for at <= groups && s*groups >= at*n {
				if firstOf(at, n, groups) != s {
					t.Fatalf("group %d of %d in %d begins at %d, want %d", at, groups, n, firstOf(at, n, groups), s)
				}
				at++
			}
		}
		if firstOf(groups, n, groups) != n {
			t.Fatalf("%d strata end at %d", n, firstOf(groups, n, groups))
		}
	}
}

// Of a trial that is refused the edge is found on the inside, to a thousandth
// of the way to its draw, and costs eleven runs; where one factor alone went
// too far the other keeps its draw.
func TestEdgesOfWhereAModelApplies(t *testing.T) {
	const wall = 0.7
	runs := 0
	f := []Factor{rectangular(0, 1), rectangular(7, 13)}
	out := mustPropagate(t, f, 2, Plan{Trials: 2000}, func(x, y []float64) bool {
		runs++
		y[0], y[1] = x[0], x[1]
		return x[0] <= wall
	})
	first, second := out.Results[0], out.Results[1]
	if len(first.edge) != out.Failed || out.Failed < 590 || out.Failed > 610 {
		t.Fatalf("%d edges of %d refused trials", len(first.edge), out.Failed)
	}
	if most := 2000 + 12*out.Failed; runs != 2000+11*out.Failed && runs > most {
		t.Errorf("%d runs", runs)
	}
	low, high := math.Inf(1), math.Inf(-1)
	for i, v := range first.edge {
		if v > wall || v < wall-0.5/1000 {
			t.Errorf("an edge at %v, want %v", v, wall)
		}
		low, high = min(low, second.edge[i]), max(high, second.edge[i])
	}
	if low > 7.1 || high < 12.9 {
		t.Errorf("the other factor keeps %v to %v of 7 to 13", low, high)
	}
	out = mustPropagate(t, f, 1, Plan{Trials: 2000}, func(x, y []float64) bool { // both together
		y[0] = x[0] + x[1]
		return x[0]+x[1] <= 12
	})
	for _, v := range out.Results[0].edge {
		if v > 12 || v < 12-3.5/1000 {
			t.Errorf("an edge at %v, want 12", v)
		}
	}
}

// How many trials must be left: a tenth.
func TestATenthOfTheTrialsTells(t *testing.T) {
	for _, c := range []struct {
		wall   float64
		usable bool
	}{{0.09, false}, {0.11, true}} {
		out, err := Propagate([]Factor{rectangular(0, 1)}, 1, Plan{Trials: 2000}, func(x, y []float64) bool { y[0] = x[0]; return x[0] < c.wall })
		if err != nil {
			t.Fatal(err)
		}
		if out.Usable != c.usable || out.Results[0].Usable != c.usable {
			t.Errorf("%g of the trials are left: usable %v and %v", c.wall, out.Usable, out.Results[0].Usable)
		}
	}
	for kept, few := range map[int]bool{99: true, 100: false, 101: false} {
		if scarce(kept, 1000) != few {
			t.Errorf("%d of 1000: scarce %v", kept, !few)
		}
	}
}

// Settle says what its definition does, tried one gauge and one number of
// readings after the other: the variance left is V·(1 − s + s·k), and it is
// told when a normal value meets or misses the limit with 97.5 %.
func TestSettleByItsDefinition(t *testing.T) {
	r := rand.New(rand.NewPCG(19, 23))
	gauges := []float64{0.02, 0.1, 0.25, 0.5, 0.9, 1.5}
	for n := range 4000 {
		factors := 1 + r.IntN(3)
		shares, left := make([]float64, factors), 1.0
		for i := range shares {
			shares[i] = left * r.Float64()
			left -= shares[i]
		}
		v := &Range{Usable: true, Mean: 9, StdDev: 1, Shares: shares}
		limit := []Limit{AtMost(9 + 3*(r.Float64()-0.5)), AtLeast(9 + 3*(r.Float64()-0.5)), {Min: 9 - 2*r.Float64(), Max: 9 + 2*r.Float64()}}[n%3]
		low, high, _ := limit.bounds()
		told := func(part float64) bool {
			d := distuv.Normal{Mu: 9, Sigma: math.Sqrt(math.Max(part, 1e-300))}
			p := d.CDF(high) - d.CDF(low)
			return p >= 0.975 || p <= 0.025
		}
		var measured []Measured
		for i := range shares {
			if r.IntN(4) > 0 {
				measured = append(measured, Measured{Factor: i, InHand: 1, Gauges: gauges, Fixed: r.IntN(3) == 0})
			}
		}
		want := fmt.Sprint(byDefinition(shares, measured, told, left))
		s := Settle(v, limit, measured)
		if got := fmt.Sprint([]any{s.GaugeFactor, s.Gauge, s.RepeatFactor, s.Readings, s.Together, s.Blocker}); got != want {
			t.Fatalf("shares %v, limit %+v, measured %+v: %s, want %s", shares, limit, measured, got, want)
		}
	}
}

// byDefinition is gauge factor, gauge, factor to repeat, readings, together and
// blocker; rest is the share that no factor has.
func byDefinition(shares []float64, measured []Measured, told func(part float64) bool, rest float64) []any {
	factor, gauge, repeat, readings := -1, -1, -1, 0
	finest, coarsest := slices.Clone(shares), 0.0
	for _, m := range measured {
		s := shares[m.Factor]
		for g, u := range m.Gauges {
			if u >= 1 {
				continue
			}
			finest[m.Factor] = math.Min(finest[m.Factor], s*u*u)
			if told(1-s+s*u*u) && u > coarsest {
				coarsest, factor, gauge = u, m.Factor, g
			}
		}
		for n := 2; n <= 30 && !m.Fixed; n++ {
			if told(1-s+s/float64(n)) && (readings == 0 || n < readings) {
				repeat, readings = m.Factor, n
			}
		}
	}
	if gauge >= 0 || readings > 0 {
		return []any{factor, gauge, repeat, readings, false, -1}
	}
	all := rest
	for _, part := range finest {
		all += part
	}
	if all < 1-1e-9 && told(all) {
		return []any{-1, -1, -1, 0, true, -1}
	}
	blocker, largest := -1, rest
	for i, part := range finest {
		if part > largest {
			blocker, largest = i, part
		}
	}
	return []any{-1, -1, -1, 0, false, blocker}
}

// A limit of two sides is near where more than nine tenths of the way from its
// middle are used, one of nothing where less than a tenth of its scale is left.
func TestNearOnBothSides(t *testing.T) {
	window, worn := Limit{Min: 2, Max: 6}, Limit{Max: math.NaN(), Min: 0, Scale: 5}
	for v, near := range map[float64]bool{4: false, 5.79: false, 5.81: true, 2.21: false, 2.19: true, 5.8: false, 2.2: false} {
		if window.isNear(v) != near {
			t.Errorf("%g in 2 to 6: near %v", v, !near)
		}
	}
	for v, near := range map[float64]bool{0.49: true, 0.51: false, 0.5: false, -0.4: true} {
		if worn.isNear(v) != near {
			t.Errorf("%g of 5 left: near %v", v, !near)
		}
	}
	worn.Near, worn.Max, worn.Min = 0.5, 0, math.NaN()
	for v, near := range map[float64]bool{-2.4: true, -2.6: false} {
		if worn.isNear(v) != near {
			t.Errorf("%g of 5, near from a half on: near %v", v, !near)
		}
	}
	for _, l := range []Limit{AtMost(0), AtLeast(0), {Min: math.NaN(), Max: math.NaN()}} {
		if l.isNear(0) || l.isNear(-1) || l.isNear(1) {
			t.Errorf("%+v is near without a scale", l)
		}
	}
	for _, c := range []struct {
		l    Limit
		v    float64
		near bool
	}{{AtMost(10), 9.01, true}, {AtMost(10), 8.99, false}, {AtMost(-10), -10.5, true}, {AtMost(-10), -12, false},
		{AtLeast(9), 9.9, true}, {AtLeast(9), 10.1, false}, {AtLeast(-10), -9.1, true}, {AtLeast(-10), -8.9, false},
		{Limit{Max: 10, Min: math.NaN(), Near: 1}, 9.99, false}, {Limit{Max: 10, Min: math.NaN(), Near: 1.5}, 9.5, true}} {
		if c.l.isNear(c.v) != c.near {
			t.Errorf("%g at %+v: near %v", c.v, c.l, !c.near)
		}
	}
}
