package spread

import (
	"math"
	"testing"
)

// tried are the trials of a model of one rectangular factor, 0 to 1.
func tried(t *testing.T, of func(u float64) float64) *Range {
	t.Helper()
	out, err := Propagate([]Factor{{Estimate: 0.5, High: 1, Shape: Rectangular}}, 1, Plan{}, func(x, y []float64) bool { y[0] = of(x[0]); return true })
	if err != nil {
		t.Fatal(err)
	}
	return &out.Results[0]
}

// Two lumps, 0 and 280, are handed on as they lie: 42 % at 280, standard deviation
// 280·√(0.42·0.58) = 138.2 (Bernoulli). A bell, also one that leans, and a
// rectangle stay a bell.
func TestListOfTrials(t *testing.T) {
	lumps := tried(t, func(u float64) float64 {
		if u < 0.58 {
			return 0
		}
		return 280
	})
	list := lumps.List(0, lumps.Low, lumps.High)
	if list == nil {
		t.Fatal("a bell stands for two lumps")
	}
	f := Factor{Low: 0, High: 280, Shape: Listed, List: list}
	if sd := f.StdDev(); math.Abs(sd-138.2) > 0.5 {
		t.Errorf("standard deviation %g", sd)
	}
	out, err := Propagate([]Factor{f}, 1, Plan{}, func(x, y []float64) bool { y[0] = x[0]; return true })
	if err != nil {
		t.Fatal(err)
	}
	if p := out.Results[0].ProbabilityAbove(279); math.Abs(p-0.42) > 0.005 {
		t.Errorf("drawn again: %g at 280", p)
	}
	for name, of := range map[string]func(u float64) float64{
		"bell": standardNormalOf, "leaning": func(u float64) float64 { return math.Exp(0.3 * standardNormalOf(u)) }, "flat": func(u float64) float64 { return u },
	} {
		r := tried(t, of)
		if r.List(of(0.5), r.Low, r.High) != nil {
			t.Errorf("%s: no bell stands for it", name)
		}
	}
	if _, err := Propagate([]Factor{{Low: 0, High: 1, Shape: Listed}}, 1, Plan{}, func(x, y []float64) bool { return true }); err == nil {
		t.Error("a list without trials is drawn from")
	}
}

func standardNormalOf(u float64) float64 {
	if u > 0.5 {
		return -standardNormal(1 - u)
	}
	return standardNormal(u)
}

// The sides of a range: what a normal of that width has, and never more than
// where the values end.
func TestSides(t *testing.T) {
	for _, c := range []struct {
		f            Factor
		below, above float64
	}{
		{Factor{Estimate: 3}, 0, 0},
		{Factor{Estimate: 3, Low: 2, High: 7, Shape: Normal}, 1, 4},
		{Factor{Estimate: 3, Low: 2, High: 4, Shape: Rectangular}, 1, 1},
		{Factor{Estimate: 3, Low: 2, High: 4, Shape: Triangular}, 0.8, 0.8}, // 1.96/√6
	} {
		if below, above := c.f.Sides(); math.Abs(below-c.below) > 1e-3 || math.Abs(above-c.above) > 1e-3 {
			t.Errorf("%+v: %g, %g", c.f, below, above)
		}
	}
}

// A bell stands for trials that lie as one but for a few far out, which move mean and
// width and not the distribution function; of two lumps their list stands, from the
// least to the greatest.
func TestABellWithAFewFarOutIsNoList(t *testing.T) {
	const n = 2000
	result := func(value func(u float64) float64) *Range {
		r := &Range{Usable: true}
		for i := range n {
			r.trials = append(r.trials, value((float64(i)+0.5)/n))
		}
		mean, squares := summarise(r.trials)
		r.Mean, r.StdDev = mean, math.Sqrt(squares/(n-1))
		return r
	}
	z := func(u float64) float64 { return math.Sqrt2 * math.Erfinv(2*u-1) }
	for name, c := range map[string]struct {
		value     func(u float64) float64
		low, high float64
		listed    bool
	}{
		"a few above": {func(u float64) float64 {
			if u > 0.985 {
				return 40
			}
			return z(u)
		}, -1.96, 1.96, false},
		"a few below, wider above": {func(u float64) float64 {
			switch x := z(u); {
			case u < 0.015:
				return -60
			case x > 0:
				return 3 * x
			default:
				return x
			}
		}, -1.96, 3 * 1.96, false},
		"two lumps": {func(u float64) float64 {
			if u < 0.5 {
				return -1 + u/100
			}
			return 1 + u/100
		}, -1, 1, true},
	} {
		r := result(c.value)
		l := r.List(0, c.low, c.high)
		if (l != nil) != c.listed {
			t.Errorf("%s: listed %v", name, l != nil)
		}
		if l != nil && (l[0] != r.trials[0] || l[cells] != r.trials[n-1] || l[cells/2] > -0.9) {
			t.Errorf("%s: %g, %g, %g", name, l[0], l[cells/2], l[cells])
		}
	}
}

// Of a result that is not usable no probability is told, whatever was tried of it, nor
// of one of which nothing was tried.
func TestNoProbabilityOfNothing(t *testing.T) {
	for _, r := range []Range{{Usable: false, trials: []float64{1, 2}}, {Usable: true}} {
		if p := r.ProbabilityAbove(0); !math.IsNaN(p) {
			t.Errorf("%+v: %g", r, p)
		}
	}
}
