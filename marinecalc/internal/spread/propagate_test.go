package spread

import (
	"math"
	"math/rand/v2"
	"reflect"
	"slices"
	"strings"
	"testing"
)

func TestSameSeedSameNumbers(t *testing.T) {
	f, model := massCalibration()
	var w Workspace
	want := mustPropagate(t, f, 1, Plan{Seed: 9}, model)
	for range 3 {
		got, err := w.Propagate(f, 1, Plan{Seed: 9}, model)
		if err != nil || !reflect.DeepEqual(got, want) {
			t.Fatalf("a second run gives %+v (%v), the first gave %+v", got, err, want)
		}
		// Something else in between must leave nothing behind.
		big, wide := twelve()
		if _, err := w.Propagate(big, 12, Plan{Trials: 5000}, wide); err != nil {
			t.Fatal(err)
		}
	}
	other := mustPropagate(t, f, 1, Plan{Seed: 10}, model)
	if other.Results[0].Mean == want.Results[0].Mean {
		t.Error("another seed gives the same mean")
	}
	if zero, one := mustPropagate(t, f, 1, Plan{}, model), mustPropagate(t, f, 1, Plan{Trials: 1024, Seed: 1}, model); !reflect.DeepEqual(zero, one) {
		t.Error("the zero plan is not 1024 trials with seed 1")
	}
}

// Regression as above: a whole outcome.
func TestFrozenOutcome(t *testing.T) {
	f, model := massCalibration()
	r := mustPropagate(t, f, 1, Plan{}, model).Results[0]
	got := append([]float64{r.Mean, r.StdDev, r.Low, r.High, r.ProbabilityBelow(1.3)}, r.Shares...)
	want := []float64{1.23395705916, 0.0747318129168, 1.08821155678, 1.38240122517, 0.8154296875, 0.417274757365, 0.0785207132541, 0, 0, 0}
	for i := range want {
		agree(t, "frozen outcome", got[i], want[i], 1e-9)
	}
}

// A plan that asks for the shares of the first results gets those, the same
// as without, and everything else of the others.
func TestSharesOnlyWhereAsked(t *testing.T) {
	f, model := twelve()
	all := mustPropagate(t, f, 12, Plan{}, model)
	some := mustPropagate(t, f, 12, Plan{Shares: 5}, model)
	for r, want := range all.Results {
		got := some.Results[r]
		if r >= 5 {
			if len(got.Shares) != len(f) || slices.Max(got.Shares) != 0 {
				t.Errorf("result %d has the shares %v", r, got.Shares)
			}
			got.Shares = want.Shares
		}
		if !reflect.DeepEqual(got, want) {
			t.Errorf("result %d: %+v, want %+v", r, got, want)
		}
	}
	for r, got := range mustPropagate(t, f, 12, Plan{Shares: NoShares}, model).Results {
		if want := all.Results[r]; slices.Max(got.Shares) != 0 || got.Low != want.Low || got.High != want.High {
			t.Errorf("result %d without shares: %+v, want %+v", r, got, want)
		}
	}
}

// Whatever the numbers of trials, factors and results, each result of each
// trial is kept, in the order of the trials.
func TestEveryTrialIsKept(t *testing.T) {
	for _, n := range []int{100, 101, 102, 103, 128, 1000, 4096} {
		for size := 1; size < 10; size++ {
			f := make([]Factor, size)
			for i := range f {
				f[i] = rectangular(float64(i), float64(i+1))
			}
			results := 11 - size
			var want [][]float64
			out := mustPropagate(t, f, results, Plan{Trials: n}, func(x, y []float64) bool {
				if len(x) != size || len(y) != results {
					t.Fatalf("%d factors and %d results, want %d and %d", len(x), len(y), size, results)
				}
				for i, v := range x {
					if v < float64(i) || v > float64(i+1) {
						t.Errorf("factor %d is %g", i, v)
					}
				}
				for r := range y {
					y[r] = x[r%size] + float64(r)
				}
				want = append(want, slices.Clone(y))
				return true
			})
			for r, result := range out.Results {
				for i, v := range result.trials {
					if v != want[i][r] {
						t.Fatalf("%d trials, %d factors: result %d of trial %d is %g, want %g", n, size, r, i, v, want[i][r])
					}
				}
			}
		}
	}
}

func TestMoreSpreadNeverNarrows(t *testing.T) {
	shapes := []Shape{Rectangular, Triangular, Normal}
	rng := rand.New(rand.NewPCG(1, 2))
	for range 60 {
		f := make([]Factor, 4)
		c := make([]float64, 4)
		for i := range f {
			half := rng.Float64()
			f[i] = Factor{Low: -half, High: half, Shape: shapes[rng.IntN(3)]}
			c[i] = rng.NormFloat64()
		}
		before := mustPropagate(t, f, 1, Plan{}, linear(c)).Results[0]
		i := rng.IntN(4)
		f[i].Low *= 1.5
		f[i].High *= 1.5
		after := mustPropagate(t, f, 1, Plan{}, linear(c)).Results[0]
		// 1 % is left to the sampling.
		if after.StdDev < 0.99*before.StdDev || after.High-after.Low < 0.99*(before.High-before.Low) {
			t.Errorf("factor %d of %v widened: from %g [%g, %g] to %g [%g, %g]", i, f,
				before.StdDev, before.Low, before.High, after.StdDev, after.Low, after.High)
		}
	}
}

func TestExactOnly(t *testing.T) {
	runs := 0
	out := mustPropagate(t, []Factor{exact(2), {Estimate: 3, Low: 3, High: 3, Shape: Normal}}, 1, Plan{}, func(x, y []float64) bool {
		runs++
		y[0] = x[0] * x[1]
		return true
	})
	r := out.Results[0]
	if runs != 1 || out.Trials != 1 {
		t.Errorf("%d runs of the model, %d trials; one tells all", runs, out.Trials)
	}
	if r.Mean != 6 || r.StdDev != 0 || r.Low != 6 || r.High != 6 || r.Shares[0] != 0 || r.Shares[1] != 0 {
		t.Errorf("%+v", r)
	}
	if r.ProbabilityBelow(6) != 1 || r.ProbabilityBelow(5.9) != 0 {
		t.Error("probabilities of a result that does not vary")
	}
}

func TestConstantResultBesideVaryingOnes(t *testing.T) {
	out := mustPropagate(t, []Factor{exact(0.1), normal(5, 1), normal(2, 1)}, 3, Plan{}, func(x, y []float64) bool {
		y[0] = 3 * x[0]
		y[1] = x[1] + x[2]
		y[2] = (x[0] + x[1]) - x[1] // constant but for rounding
		return true
	})
	if r := out.Results[0]; r.StdDev != 0 || r.Low != r.High || slices.Max(r.Shares) != 0 {
		t.Errorf("constant: %+v", r)
	}
	if r := out.Results[1]; !(r.StdDev > 1) {
		t.Errorf("varying: %+v", r)
	}
	if r := out.Results[2]; r.StdDev > 1e-15 {
		t.Errorf("rounding only: %+v", r)
	}
	offset := mustPropagate(t, []Factor{normal(5, 1), normal(5, 1)}, 1, Plan{}, func(x, y []float64) bool {
		y[0] = 1000 * x[0] * x[1] / x[0] / x[1]
		return true
	}).Results[0]
	if offset.StdDev != 0 || slices.Max(offset.Shares) != 0 {
		t.Errorf("rounding about 1000: %+v", offset)
	}
}

func TestFailedTrials(t *testing.T) {
	f := []Factor{rectangular(0, 1), rectangular(0, 1)}
	for _, c := range []struct {
		what string
		bad  float64 // values stored by a trial that fails
		ok   bool
	}{{"false", 0, false}, {"NaN", math.NaN(), true}, {"+Inf", math.Inf(1), true}, {"-Inf", math.Inf(-1), true}} {
		for _, part := range []float64{0.005, 0.5, 0.89, 0.91, 1} {
			out, err := Propagate(f, 1, Plan{Trials: 10_000}, func(x, y []float64) bool {
				if x[0] < part {
					y[0] = c.bad
					return c.ok
				}
				y[0] = x[0] + 2*x[1]
				return true
			})
			if err != nil {
				t.Fatal(err)
			}
			if refused := int(part*10_000 + 0.5); out.Failed != refused && !c.ok || c.ok && out.Failed != 0 {
				t.Errorf("%s: %d of %d failed, want %g", c.what, out.Failed, out.Trials, part*10_000)
			}
			r := out.Results[0]
			if r.Usable != (part < 0.9) {
				t.Errorf("%s: %g failed, usable %v", c.what, part, r.Usable)
			}
			if !r.Usable {
				if !math.IsNaN(r.Mean) || !math.IsNaN(r.StdDev) || !math.IsNaN(r.Low) || !math.IsNaN(r.High) || !math.IsNaN(r.ProbabilityBelow(1)) {
					t.Errorf("%s: figures given for an unusable range: %+v", c.what, r.Mean)
				}
				continue
			}
			// What is left is x0 from part to 1: mean and shares of that.
			agree(t, c.what+": mean", r.Mean, (1+part)/2+1, 0.02)
			own := (1 - part) * (1 - part)
			agree(t, c.what+": share", r.Shares[0], own/(own+4), 0.02)
			agree(t, c.what+": share", r.Shares[1], 4/(own+4), 0.02)
		}
	}
}

func TestResultLeftOutIsNotAResult(t *testing.T) {
	var w Workspace
	f := []Factor{normal(0, 1)}
	if _, err := w.Propagate(f, 2, Plan{}, func(x, y []float64) bool { y[0], y[1] = x[0], x[0]; return true }); err != nil {
		t.Fatal(err)
	}
	out, err := w.Propagate(f, 2, Plan{}, func(x, y []float64) bool { y[0] = x[0]; return true })
	if err != nil || !out.Results[0].Usable || out.Results[1].Usable {
		t.Errorf("a model that fills half its results: usable %v, %v; %v", out.Results[0].Usable, out.Results[1].Usable, err)
	}
}

func TestHugeResultIsNotGiven(t *testing.T) {
	out := mustPropagate(t, []Factor{normal(1, 0.1), normal(1, 0.1)}, 1, Plan{}, func(x, y []float64) bool { y[0] = 1e300 * x[0] * x[1]; return true })
	if r := out.Results[0]; r.Usable || !math.IsNaN(r.StdDev) {
		t.Errorf("%+v", r)
	}
}

func TestRefusals(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	good := []Factor{rectangular(0, 1)}
	for _, c := range []struct {
		what    string
		factors []Factor
		results int
		plan    Plan
		want    string
	}{
		{"estimate NaN", []Factor{{Estimate: nan}}, 1, Plan{}, "estimate is not"},
		{"estimate outside", []Factor{{Estimate: 2, Low: 0, High: 1, Shape: Triangular}}, 1, Plan{}, "outside its limits"},
		{"limits turned round", []Factor{{Estimate: 0.5, Low: 1, High: 0, Shape: Rectangular}}, 1, Plan{}, "outside its limits"},
		{"limit NaN", []Factor{{Estimate: 0.5, Low: nan, High: 1, Shape: Normal}}, 1, Plan{}, "limits are not"},
		{"limit infinite", []Factor{{Estimate: 0.5, Low: 0, High: inf, Shape: Normal}}, 1, Plan{}, "limits are not"},
		{"width overflows", []Factor{{Low: -1.7e308, High: 1.7e308, Shape: Normal}}, 1, Plan{}, "limits are not"},
		{"unknown shape", []Factor{{Shape: 9}}, 1, Plan{}, "shape 9"},
		{"second factor", append(good, Factor{Estimate: nan}), 1, Plan{}, "factor 1"},
		{"no results", good, 0, Plan{}, "results"},
		{"too few trials", good, 1, Plan{Trials: 99}, "99 trials"},
		{"too many trials", good, 1, Plan{Trials: 1<<20 + 1}, "trials"},
		{"negative trials", good, 1, Plan{Trials: -1}, "trials"},
		{"negative shares", good, 1, Plan{Shares: -2}, "shares"},
	} {
		_, err := Propagate(c.factors, c.results, c.plan, func(x, y []float64) bool { t.Errorf("%s: the model was run", c.what); return false })
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: error %v, want one with %q", c.what, err, c.want)
		}
	}
}

func TestSummarise(t *testing.T) {
	for _, v := range [][]float64{{1, 2, 6}, {6, 2, 1}, {2, 6, 1}, {3, 3, 3, 3, 3, 1, 2, 6, 3, 3, 3}} {
		if mean, squares := summarise(v); mean != 3 || math.Abs(squares-14) > 1e-12 {
			t.Errorf("%v: mean %g, sum of squares %g; want 3, 14", v, mean, squares)
		}
	}
}

func TestOrderStatistic(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 4))
	for _, n := range []int{1, 2, 3, 10, 601, 602, 4096, 20_000} {
		for name, draw := range map[string]func(i int) float64{
			"random": func(int) float64 { return rng.NormFloat64() },
			"ties":   func(int) float64 { return float64(rng.IntN(3)) },
			"equal":  func(int) float64 { return 1 },
			"rising": func(i int) float64 { return float64(i) },
			"fall":   func(i int) float64 { return float64(-i) },
			"wild":   func(int) float64 { return math.Exp(200 * rng.NormFloat64()) },
		} {
			v := make([]float64, n)
			for i := range v {
				v[i] = draw(i)
			}
			sorted := slices.Sorted(slices.Values(v))
			for _, k := range []int{0, n / 40, n / 2, n - 1 - n/40, n - 1} {
				if got := orderStatistic(v, k); got != sorted[k] || v[k] != got || n > k+1 && slices.Min(v[k:]) < v[k] || slices.Max(v[:k+1]) > v[k] {
					t.Errorf("%s, n = %d: place %d holds %g, want %g", name, n, k, v[k], sorted[k])
				}
			}
			if slices.Sort(v); !slices.Equal(v, sorted) {
				t.Errorf("%s, n = %d: values were lost", name, n)
			}
		}
	}
}

// interval is the symmetric interval of v.
func interval(v []float64) (low, high float64) {
	mean, squares := summarise(v)
	return symmetricInterval(v, make([]float64, len(v)), mean, math.Sqrt(squares/float64(len(v)-1)))
}

// The short cut through the tails gives what sorting gives, also where a tail
// holds fewer values than the end point needs.
func TestSymmetricIntervalOfAnyShape(t *testing.T) {
	rng := rand.New(rand.NewPCG(5, 6))
	for _, n := range []int{2, 3, 41, 100, 1001, 4096} {
		for name, draw := range map[string]func(i int) float64{
			"normal":     func(int) float64 { return rng.NormFloat64() },
			"even":       func(int) float64 { return rng.Float64() },
			"skew":       func(int) float64 { return math.Exp(3 * rng.NormFloat64()) },
			"skew left":  func(int) float64 { return -math.Exp(3 * rng.NormFloat64()) },
			"two values": func(int) float64 { return float64(rng.IntN(2)) },
			"far off":    func(i int) float64 { return rng.NormFloat64() + 1e6*float64(1/(i+1)) },
		} {
			v := make([]float64, n)
			for i := range v {
				v[i] = draw(i)
			}
			q := min(int(0.95*float64(n)+0.5), n-1)
			r := min((n-q+1)/2, n-q)
			sorted := slices.Sorted(slices.Values(v))
			if low, high := interval(v); low != sorted[r-1] || high != sorted[r+q-1] {
				t.Errorf("%s, n = %d: from %g to %g, want %g to %g", name, n, low, high, sorted[r-1], sorted[r+q-1])
			}
		}
	}
}

// JCGM 101:2008, 7.7.2: with M trials q = pM (or its integer part after adding
// ½), r = (M-q)/2 (or the integer part of (M-q+1)/2), and the interval is from
// the r-th to the (r+q)-th of the sorted values.
func TestSymmetricIntervalIsThatOfTheStandard(t *testing.T) {
	for _, c := range []struct{ m, low, high int }{{1000, 25, 975}, {4096, 103, 3994}, {100, 3, 98}, {10_000, 250, 9750}} {
		v := make([]float64, c.m)
		for i := range v {
			v[i] = float64(i + 1)
		}
		rand.New(rand.NewPCG(1, 1)).Shuffle(c.m, func(i, j int) { v[i], v[j] = v[j], v[i] })
		if low, high := interval(v); low != float64(c.low) || high != float64(c.high) {
			t.Errorf("M = %d: from %g to %g, want %d to %d", c.m, low, high, c.low, c.high)
		}
	}
}

func TestWorkspaceDoesNotAllocate(t *testing.T) {
	f, model := twelve()
	var w Workspace
	run := func() {
		if _, err := w.Propagate(f, 12, Plan{}, model); err != nil {
			t.Fatal(err)
		}
	}
	run()
	if n := testing.AllocsPerRun(5, run); n > 0 {
		t.Errorf("%g allocations", n)
	}
}
