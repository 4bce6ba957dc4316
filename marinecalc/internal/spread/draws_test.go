package spread

import (
	"math"
	"slices"
	"testing"
)

// drawer is how the tests ask for draws.
type drawer struct{}

// draw fills values with the draws of f, and group with the group of strata
// that each came from.
func (drawer) draw(f *Factor, random stream, values []float64, group []uint8, groups int) {
	d := deal(random, len(values), groups)
	d.place(f, values, func() []float64 { return edges(len(values)) })
	copy(group, d.group)
}

// What is dealt once is what is dealt anew, whoever asked before, for what is
// kept and what is not.
func TestDecksAreWhatIsDealt(t *testing.T) {
	for _, n := range []int{128, DefaultTrials, DefaultTrials + 1} {
		for _, seed := range []uint64{1, 2, 3, 4, 5, 6, 7, 1} {
			for _, place := range []int{0, 3, mostPlaces - 1, mostPlaces, 3} {
				got, want := dealerFor(seed, n).deck(place), (&dealer{seed: seed, n: n, groups: groupsFor(n)}).deal(place)
				if !slices.Equal(got.at, want.at) || !slices.Equal(got.group, want.group) {
					t.Fatalf("%d trials, seed %d, place %d: another deck", n, seed, place)
				}
			}
		}
	}
	if len(dealers.list) > mostDealers {
		t.Errorf("%d dealers are kept", len(dealers.list))
	}
}

// Regression, not a source: numbers frozen from this code on amd64 in 2026.
// Run under WebAssembly too (GOOS=wasip1 GOARCH=wasm), it holds that platforms
// agree to 1e-9.
func TestFrozenDraws(t *testing.T) {
	values, groups := make([]float64, 4096), make([]uint8, 4096)
	for _, c := range []struct {
		shape Shape
		want  [4]float64
	}{
		{Rectangular, [4]float64{0.804927308631, 0.862203973568, 0.156455776179, 0.47338229397}},
		{Triangular, [4]float64{0.617502263371, 0.678523686994, 0.197772455223, 0.371538959424}},
		{Normal, [4]float64{0.578840384641, 0.667204769881, 0.121281867942, 0.241483226792}},
	} {
		new(drawer).draw(&Factor{Estimate: 0.25, Low: 0, High: 1, Shape: c.shape}, newStream(1, 0), values, groups, 64)
		for i, want := range c.want {
			agree(t, c.shape.String()+" draw", values[i], want, 1e-9)
		}
	}
}

// A normal factor with sides of its own has its estimate for median and its
// limits for 2.5 and 97.5 % quantiles, and the standard deviation by the
// moments of two half normal distributions: (s₁²+s₂²)/2 - ((s₂-s₁)/√(2π))².
func TestLopsidedNormal(t *testing.T) {
	f := Factor{Estimate: 10, Low: 8, High: 20, Shape: Normal}
	r := mustPropagate(t, []Factor{f}, 1, Plan{Trials: 100_000}, sum).Results[0]
	s1, s2 := 2/1.959964, 10/1.959964
	agree(t, "low", r.Low, 8, 0.01)
	agree(t, "high", r.High, 20, 0.01)
	agree(t, "below the estimate", r.ProbabilityBelow(10), 0.5, 0.001)
	agree(t, "mean", r.Mean, 10+(s2-s1)/math.Sqrt(2*math.Pi), 0.01)
	agree(t, "standard deviation", r.StdDev, math.Sqrt((s1*s1+s2*s2)/2-(s2-s1)*(s2-s1)/(2*math.Pi)), 0.01)
	agree(t, "standard uncertainty", f.StdDev(), r.StdDev, 0.01)
}

func TestDrawsAreStratified(t *testing.T) {
	for _, n := range []int{100, 1000, 4096, 1 << 20} {
		values, groups := make([]float64, n), make([]uint8, n)
		bins := groupsFor(n)
		new(drawer).draw(&Factor{Low: 0, High: 1, Shape: Rectangular}, newStream(5, 3), values, groups, bins)
		seen := make([]bool, n)
		for i, u := range values {
			s := int(u * float64(n))
			if u <= 0 || u >= 1 || seen[s] {
				t.Fatalf("n = %d: %g is outside 0 … 1 or the second of its stratum", n, u)
			}
			seen[s] = true
			if int(groups[i]) != s*bins/n {
				t.Fatalf("n = %d: stratum %d is in group %d", n, s, groups[i])
			}
		}
		if slices.IsSorted(values) {
			t.Errorf("n = %d: not shuffled", n)
		}
	}
}

// A normal factor is drawn evenly inside its strata. What that does to its
// standard deviation is far below what the trials themselves scatter.
func TestNormalDrawsKeepTheirSpread(t *testing.T) {
	for _, c := range []struct {
		n    int
		bias float64
	}{{100, 0.002}, {1000, 0.0003}, {4096, 0.0001}} {
		const seeds = 300
		values, groups := make([]float64, c.n), make([]uint8, c.n)
		unit, d := normal(0, 1), drawer{}
		mean, variance := 0.0, 0.0
		for seed := range uint64(seeds) {
			d.draw(&unit, newStream(seed+1, 0), values, groups, groupsFor(c.n))
			for _, v := range values {
				mean += v / float64(seeds*c.n)
				variance += v * v / float64(seeds*c.n)
			}
		}
		agree(t, "mean of normal draws", mean, 0, c.bias)
		agree(t, "standard deviation of normal draws", math.Sqrt(variance), 1, c.bias)
		t.Logf("%d: mean %.2g, sd 1%+.2g", c.n, mean, math.Sqrt(variance)-1)
	}
}

// Draws of different factors must not go together.
func TestDrawsAreIndependent(t *testing.T) {
	const n, count = 4096, 24
	unit := normal(0, 1)
	columns := make([][]float64, count)
	groups := make([]uint8, n)
	for i := range columns {
		columns[i] = make([]float64, n)
		new(drawer).draw(&unit, newStream(1, i), columns[i], groups, 64)
	}
	worst := 0.0
	for i := range columns {
		for j := range i {
			r := 0.0
			for t := range n {
				r += columns[i][t] * columns[j][t] / n
			}
			worst = max(worst, math.Abs(r))
		}
	}
	// 276 pairs, standard error 1/√4096 = 0.0156: four of them is 1 in 57.
	if worst > 4*0.0156 {
		t.Errorf("two factors are correlated by %.3f", worst)
	}
}
