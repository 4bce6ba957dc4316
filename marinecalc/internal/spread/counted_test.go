package spread

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/stat/distuv"
)

// Quantiles of the gamma distribution against gonum, an independent library.
func TestGammaQuantiles(t *testing.T) {
	for _, shape := range []float64{0.5, 1.5, 2.5, 8.5, 40.5, 120.5, 199.5} {
		for _, u := range []float64{0.0005, 0.025, 0.3, 0.5, 0.9, 0.975, 0.9999} {
			want := distuv.Gamma{Alpha: shape, Beta: 1}.Quantile(u)
			if got := gammaQuantile(shape, u); math.Abs(got-want) > 1e-7*want {
				t.Errorf("shape %g at %g: %g, gonum has %g", shape, u, got, want)
			}
		}
	}
	for _, u := range []float64{0.025, 0.5, 0.975} {
		want := distuv.Gamma{Alpha: 900.5, Beta: 1}.Quantile(u)
		if got := gammaQuantile(900.5, u); math.Abs(got-want) > 1e-4*want {
			t.Errorf("900 events at %g: %g, gonum has %g", u, got, want)
		}
	}
}

// Limits of a rate: after no event in a minute up to 2.51, half the 0.975 quantile
// 5.024 of chi-square with one degree of freedom (any table of chi-square);
// after ten 5.14 to 17.74, half of 10.283 and 35.479 with 21.
func TestLimitsOfACount(t *testing.T) {
	for _, c := range []struct{ count, low, high float64 }{{0, 0, 2.512}, {10, 5.1414, 17.7395}} {
		f := Count(c.count, 1)
		if math.Abs(f.Low-c.low) > 1e-3 || math.Abs(f.High-c.high) > 1e-3 {
			t.Errorf("%g events: %g to %g, want %g to %g", c.count, f.Low, f.High, c.low, c.high)
		}
	}
	// A quarter of the time makes the same rate four times as coarse.
	if a, b := Count(8, 4), Count(2, 1); math.Abs(a.High-4*b.High) > 1e-9 {
		t.Errorf("%+v against %+v", a, b)
	}
}

// The standard uncertainty of a rate is the root of n + 1/2 events, each worth
// one over the time: 8 drips in 4 minutes are 2 ± √8.5/4 a minute.
func TestStdDevOfACount(t *testing.T) {
	agree(t, "8 in 4 minutes", Count(2, 0.25).StdDev(), math.Sqrt(8.5)/4, 1e-12)
	agree(t, "none in 2 minutes", Count(0, 0.5).StdDev(), math.Sqrt(0.5)/2, 1e-12)
}

// The draws have the mean and the variance of the gamma distribution, both
// n + 1/2, and its limits.
func TestDrawsOfACount(t *testing.T) {
	for _, count := range []float64{0, 1, 8, 60, 600} {
		out, err := Propagate([]Factor{Count(count, 1)}, 1, Plan{Trials: 20000}, func(x, y []float64) bool { y[0] = x[0]; return true })
		if err != nil {
			t.Fatal(err)
		}
		r := out.Results[0]
		if math.Abs(r.Mean-(count+0.5)) > 0.004*(count+0.5) || math.Abs(r.StdDev-math.Sqrt(count+0.5)) > 0.01*math.Sqrt(count+0.5) {
			t.Errorf("%g events: mean %g, standard deviation %g", count, r.Mean, r.StdDev)
		}
		if f := Count(count, 1); count > 0 && (math.Abs(r.Low-f.Low) > 0.02*f.High || math.Abs(r.High-f.High) > 0.02*f.High) {
			t.Errorf("%g events: %g to %g, limits %g to %g", count, r.Low, r.High, f.Low, f.High)
		}
	}
}

// Drips fall, 400 times for each true rate, and are counted: the limits hold the
// true rate in about 95 of 100, over rates from 2 to 40 a minute.
func TestLimitsOfACountCover(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 5))
	held, all := 0, 0
	for rate := 2.0; rate <= 40; rate += 2 {
		for range 400 {
			n := distuv.Poisson{Lambda: rate, Src: r}.Rand()
			f := Count(n, 1)
			all++
			if f.Low <= rate && rate <= f.High {
				held++
			}
		}
	}
	if share := float64(held) / float64(all); share < 0.94 || share > 0.96 {
		t.Errorf("the limits hold the rate in %.1f %% of %d counts", 100*share, all)
	}
}

func TestImpossibleCountsAreRefused(t *testing.T) {
	for _, f := range []Factor{{Shape: Counted, High: 1}, {Shape: Counted, Estimate: -1, Low: -1, High: 1, One: 1}, {Shape: Counted, High: 1, One: math.NaN()}} {
		if f.check(0) == nil {
			t.Errorf("%+v is taken", f)
		}
	}
}

func BenchmarkDrawsOfACount(b *testing.B) {
	sorted := make([]float64, DefaultTrials)
	f := Count(8, 1)
	for b.Loop() {
		for i := range sorted {
			sorted[i] = float64(i) + 0.5
		}
		placeCounted(&f, sorted)
	}
}

// A rate in steps of other than one is the gamma distribution of gonum times the
// step: limits, and the draws at every twentieth of them.
func TestCountInItsSteps(t *testing.T) {
	for _, c := range []struct{ rate, one float64 }{{2, 0.25}, {0, 0.25}, {0.5, 0.5}, {12, 4}, {3000, 10}} {
		law := distuv.Gamma{Alpha: c.rate/c.one + 0.5, Beta: 1 / c.one}
		f := Count(c.rate, c.one)
		agree(t, "low", f.Low, min(c.rate, law.Quantile(0.025)), 1e-4*f.High)
		agree(t, "high", f.High, law.Quantile(0.975), 1e-4*f.High)
		const n = 4000
		sorted := make([]float64, n)
		for i := range sorted {
			sorted[i] = float64(i) + 0.5
		}
		placeCounted(&f, sorted)
		for i := n / 20; i < n; i += n / 20 {
			agree(t, "draw", sorted[i], law.Quantile((float64(i)+0.5)/n), 2e-3*f.High)
		}
	}
}

// The chance that the rate behind a count lies below a level, against gonum's gamma
// distribution of the count and a half (Jeffreys); and how far its range goes to either
// side, never below nothing.
func TestRateBehindACountAgainstGonum(t *testing.T) {
	for _, one := range []float64{1, 0.25} {
		for _, count := range []float64{0, 1, 4, 20} {
			g := distuv.Gamma{Alpha: count + 0.5, Beta: 1 / one}
			for _, level := range []float64{0.1, 1, 3, 15} {
				if got, want := CountBelow(count*one, one, level), g.CDF(level); math.Abs(got-want) > 1e-9 {
					t.Errorf("%g of %g below %g: %g, gonum has %g", count, one, level, got, want)
				}
			}
			below, above := Count(count*one, one).Sides()
			if want := 1.959964 * g.StdDev(); math.Abs(above-want) > 1e-5*want || math.Abs(below-min(want, count*one)) > 1e-5*want {
				t.Errorf("%g of %g: %g below and %g above, want %g", count, one, below, above, want)
			}
		}
		if CountBelow(3*one, one, 0) != 0 || CountBelow(3*one, one, -1) != 0 {
			t.Error("no rate is below nothing")
		}
	}
}
