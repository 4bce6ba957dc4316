package spread

import (
	"math"
	"testing"
)

// linear is y = Σ c·x with its closed-form shares c²u²/Σc²u²
// (JCGM 100:2008, 5.1.2, terms of eq. 10 over their sum).
func linear(c []float64) func(x, y []float64) bool {
	return func(x, y []float64) bool {
		y[0] = 0
		for i := range c {
			y[0] += c[i] * x[i]
		}
		return true
	}
}

func TestSharesOfLinearModel(t *testing.T) {
	f := []Factor{normal(1, 0.1), rectangular(-1, 1), exact(7), {Estimate: 0.12, Low: 0.1, High: 0.2, Shape: Triangular}, normal(0, 1e-6), rectangular(2, 3)}
	c := []float64{4, 1, 3, 10, 1, -0.5}
	total := 0.0
	for i := range f {
		total += c[i] * c[i] * f[i].StdDev() * f[i].StdDev()
	}
	for _, plan := range []struct {
		Plan
		tolerance float64
	}{{Plan{}, 0.015}, {Plan{Trials: 4096, Seed: 77}, 0.015}, {Plan{Trials: 200_000}, 0.007}, {Plan{Trials: 500}, 0.08}} {
		r := mustPropagate(t, f, 1, plan.Plan, linear(c)).Results[0]
		for i := range f {
			agree(t, "JCGM 100:2008, 5.1.2: share", r.Shares[i], c[i]*c[i]*f[i].StdDev()*f[i].StdDev()/total, plan.tolerance)
		}
		if r.Shares[2] != 0 {
			t.Errorf("an exact factor has a share of %g", r.Shares[2])
		}
	}
}

func TestSharesOfIshigami(t *testing.T) {
	const source = "Ishigami function, Saltelli et al., Global Sensitivity Analysis, Wiley 2008 (value from memory; closed form)"
	const a, b = 7, 0.1
	pi4 := math.Pow(math.Pi, 4)
	v1 := 0.5 * (1 + b*pi4/5) * (1 + b*pi4/5)
	v2 := a * a / 8.0
	v13 := b * b * pi4 * pi4 * (1.0/18 - 1.0/50)
	total := v1 + v2 + v13
	agree(t, source+": S1", v1/total, 0.314, 0.0005)
	agree(t, source+": S2", v2/total, 0.442, 0.0005)
	x := rectangular(-math.Pi, math.Pi)
	model := func(x, y []float64) bool {
		s := math.Sin(x[1])
		y[0] = math.Sin(x[0]) + a*s*s + b*x[2]*x[2]*x[2]*x[2]*math.Sin(x[0])
		return true
	}
	for _, c := range []struct {
		trials        int
		u, s1, s2, s3 float64 // tolerances
	}{{4096, 0.03, 0.03, 0.03, 0.01}, {200_000, 0.005, 0.006, 0.006, 0.002}} {
		r := mustPropagate(t, []Factor{x, x, x}, 1, Plan{Trials: c.trials}, model).Results[0]
		agree(t, source+": u", r.StdDev, math.Sqrt(total), c.u*math.Sqrt(total))
		agree(t, source+": S1", r.Shares[0], v1/total, c.s1)
		agree(t, source+": S2", r.Shares[1], v2/total, c.s2)
		agree(t, source+": S3", r.Shares[2], 0, c.s3)
	}
}

func TestSharesFollowTheFactors(t *testing.T) {
	f := []Factor{normal(0, 1), normal(0, 2), rectangular(-5, 5), exact(1)}
	order := []int{2, 0, 3, 1}
	turned := make([]Factor, len(f))
	for i, from := range order {
		turned[i] = f[from]
	}
	first := mustPropagate(t, f, 1, Plan{}, sum).Results[0]
	second := mustPropagate(t, turned, 1, Plan{}, sum).Results[0]
	for i, from := range order {
		agree(t, "share after a change of order", second.Shares[i], first.Shares[from], 0.02)
	}
}

func TestShareOfTheOnlyFactor(t *testing.T) {
	r := mustPropagate(t, []Factor{exact(2), normal(0, 1)}, 1, Plan{}, sum).Results[0]
	if r.Shares[0] != 0 || r.Shares[1] != 1 {
		t.Errorf("shares %v, want 0 and 1", r.Shares)
	}
}

// The standard error and the loss that the comment at share states.
func TestSharesAreAsGoodAsSaid(t *testing.T) {
	idle, normalOnly, rectangularOnly := 0.0, 0.0, 0.0
	const runs = 30
	for seed := range uint64(runs) {
		model := func(x, y []float64) bool { y[0], y[1], y[2] = x[0], x[1], x[0]*1e-9+x[1]; return true }
		out := mustPropagate(t, []Factor{normal(0, 1), rectangular(-1, 1)}, 3, Plan{Seed: seed + 1}, model)
		idle += out.Results[2].Shares[0] * out.Results[2].Shares[0]
		normalOnly += out.Results[0].Shares[0] / runs
		rectangularOnly += out.Results[1].Shares[1] / runs
	}
	if e := math.Sqrt(idle / runs); e > 0.003 {
		t.Errorf("an idle factor reads %g, root mean square", e)
	}
	agree(t, "share of a normal factor that does all", normalOnly, 0.991, 0.003)
	agree(t, "share of a rectangular factor that does all", rectangularOnly, 0.99903, 0.0001)
}

// What does not vary is explained by no factor.
func TestSharesOfWhatDoesNotVary(t *testing.T) {
	r := mustPropagate(t, []Factor{normal(1, 0.1), rectangular(-1, 1)}, 1, Plan{}, func(x, y []float64) bool { y[0] = 3; return true }).Results[0]
	for i, s := range r.Shares {
		if s != 0 {
			t.Errorf("factor %d has a share of %g in a constant", i, s)
		}
	}
}

// Two groups that lie apart and have no scatter of their own explain the whole.
func TestTwoGroupsExplainTheWhole(t *testing.T) {
	sums, counts := [maxGroups]float64{50, -50}, tally{50, 50}
	a := analyse(&sums, &counts, 100)
	if got := a.share(100, 100, a.inside(100, 100)); math.Abs(got-1) > 1e-12 {
		t.Errorf("%g", got)
	}
}
