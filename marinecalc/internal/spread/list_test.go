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
