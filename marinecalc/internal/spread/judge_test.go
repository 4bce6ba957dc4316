package spread

import (
	"math"
	"testing"

	"example.org/driveline/marinecalc/sheet"
)

// known gives the range of a result that is normally distributed.
func known(t testing.TB, mean, u float64) *Range {
	t.Helper()
	return &mustPropagate(t, []Factor{normal(mean, u)}, 1, Plan{Trials: 20_000}, sum).Results[0]
}

func TestConformanceProbability(t *testing.T) {
	for _, c := range []struct {
		source  string
		mean, u float64
		limit   Limit
		p, tol  float64
		word    sheet.Word
	}{
		{"JCGM 106:2012, clause 7, Zener diode (inputs from memory)", -5.47, 0.05, AtMost(-5.40), 0.919, 0.0005, sheet.CannotTell},
		{"JCGM 106:2012, 7.4, oil viscosity (inputs from memory)", 13.6, 1.8, Limit{Min: 12.5, Max: 16.3}, 0.663, 0.0005, sheet.CannotTell},
		{"JCGM 106:2012, clause 8, speed limit 100 km/h at 99.9 % (inputs from memory)", 106.6, 0.02 * 106.6, AtMost(100), 0.001, 0.0002, sheet.Beyond},
		// JCGM 106:2012, 7.3, table 1: z to two decimals for a probability; half
		// a unit in the last place of z is 0.0014 at 0.80, less further out.
		{"JCGM 106:2012, table 1, 0.80", 10 - 0.84, 1, AtMost(10), 0.80, 0.0015, sheet.CannotTell},
		{"JCGM 106:2012, table 1, 0.90", 10 - 1.28, 1, AtMost(10), 0.90, 0.0010, sheet.CannotTell},
		{"JCGM 106:2012, table 1, 0.95", 10 - 1.64, 1, AtMost(10), 0.95, 0.0006, sheet.CannotTell}, // 1.64 is just short of 0.95
		{"JCGM 106:2012, table 1, 0.99", 10 - 2.33, 1, AtMost(10), 0.99, 0.0003, sheet.Within},
		{"JCGM 106:2012, table 1, 0.999", 10 - 3.09, 1, AtMost(10), 0.999, 0.0001, sheet.Within},
		{"JCGM 106:2012, table 1, 0.99, from below", 10 + 2.33, 1, AtLeast(10), 0.99, 0.0003, sheet.Within},
		{"JCGM 106:2012, table 1, 0.01, the other side", 10 + 2.33, 1, AtMost(10), 0.01, 0.0003, sheet.Beyond},
		{"normal distribution, Φ(1)", 9, 1, AtMost(10), 0.8413, 0.0001, sheet.CannotTell},
		{"normal distribution, Φ(1.5)", 8.5, 1, AtMost(10), 0.9332, 0.0001, sheet.CannotTell},
		{"normal distribution, Φ(2)", 8, 1, AtMost(10), 0.9772, 0.0001, sheet.Within},
		{"normal distribution, Φ(3)", 7, 1, AtMost(10), 0.9987, 0.0001, sheet.Within},
	} {
		j := Judge(c.mean, known(t, c.mean, c.u), c.limit)
		agree(t, c.source, j.Probability, c.p, c.tol)
		if j.Word != c.word {
			t.Errorf("%s: %q with p = %.4f, want %q", c.source, j.Word, j.Probability, c.word)
		}
	}
}

// What the words mean is our own rule (common practice, no source): these hold
// the rule as written at Judge.
func TestWords(t *testing.T) {
	none := math.NaN()
	for _, c := range []struct {
		what     string
		estimate float64
		limit    Limit
		word     sheet.Word
		p        float64
	}{
		{"far below a maximum", 0.5, AtMost(1), sheet.Within, 1},
		{"exactly on the near bound", 0.9, AtMost(1), sheet.Within, 1},
		{"past the near bound", 0.9001, AtMost(1), sheet.NearLimit, 1},
		{"exactly on a maximum", 1, AtMost(1), sheet.NearLimit, 1},
		{"1e-10 past a maximum is on it", 1 + 1e-10, AtMost(1), sheet.NearLimit, 1},
		{"1e-8 past a maximum is beyond it", 1 + 1e-8, AtMost(1), sheet.Beyond, 0},
		{"0.1+0.2 at most 0.3", 0.1 + 0.2, AtMost(0.3), sheet.NearLimit, 1},
		{"a small maximum has no more room than a large one", 1e-4 * (1 + 1e-8), AtMost(1e-4), sheet.Beyond, 0},
		{"nor has a small minimum", 1e-4 * (1 - 1e-8), AtLeast(1e-4), sheet.Beyond, 0},
		{"nor is there any past a maximum of zero", 1e-12, AtMost(0), sheet.Beyond, 0},
		{"nor past a small near bound", 0.9e-4 * (1 + 1e-8), AtMost(1e-4), sheet.NearLimit, 1},
		{"the same above a minimum", 1e-4 / 0.9 * (1 - 1e-8), AtLeast(1e-4), sheet.NearLimit, 1},
		{"far above a minimum", 2, AtLeast(1), sheet.Within, 1},
		{"just above a minimum", 1.1, AtLeast(1), sheet.NearLimit, 1},
		{"at 1/0.9 of a minimum", 1 / 0.9, AtLeast(1), sheet.Within, 1},
		{"1e-10 short of a minimum is on it", 1 - 1e-10, AtLeast(1), sheet.NearLimit, 1},
		{"below a minimum", 0.99, AtLeast(1), sheet.Beyond, 0},
		{"own near", 0.85, Limit{Max: 1, Min: none, Near: 0.8}, sheet.NearLimit, 1},
		{"near 1 means never near", 1, Limit{Max: 1, Min: none, Near: 1}, sheet.Within, 1},
		{"a near that makes no sense is the usual one", 0.95, Limit{Max: 1, Min: none, Near: 7}, sheet.NearLimit, 1},
		{"negative maximum, near", -1.05, AtMost(-1), sheet.NearLimit, 1},
		{"negative maximum, far", -2, AtMost(-1), sheet.Within, 1},
		{"negative minimum, near", -0.95, AtLeast(-1), sheet.NearLimit, 1},
		{"negative minimum, far", -0.5, AtLeast(-1), sheet.Within, 1},
		{"minimum of zero", 1e-6, AtLeast(0), sheet.Within, 1},
		{"maximum of zero", 0, AtMost(0), sheet.Within, 1},
		{"minimum of zero, little of what there is", 0.19, Limit{Min: 0, Max: none, Near: 0.8, Scale: 1}, sheet.NearLimit, 1},
		{"minimum of zero, enough of what there is", 0.21, Limit{Min: 0, Max: none, Near: 0.8, Scale: 1}, sheet.Within, 1},
		{"minimum of zero, a tenth of what there is", 20, Limit{Min: 0, Max: none, Scale: 200}, sheet.Within, 1},
		{"maximum of zero, little of what there is", -19, Limit{Min: none, Max: 0, Scale: 200}, sheet.NearLimit, 1},
		{"below a minimum of zero", -1e-9, Limit{Min: 0, Max: none, Scale: 1}, sheet.Beyond, 0},
		{"no limit of zero goes by a scale", 1.2, Limit{Min: 1, Max: none, Scale: 100}, sheet.Within, 1},
		{"middle of a narrow window", 100, Limit{Min: 95, Max: 105}, sheet.Within, 1},
		{"edge of a narrow window", 104.8, Limit{Min: 95, Max: 105}, sheet.NearLimit, 1},
		{"window about zero, near", -0.047, Limit{Min: -0.05, Max: 0.05}, sheet.NearLimit, 1},
		{"window about zero, within", 0.04, Limit{Min: -0.05, Max: 0.05}, sheet.Within, 1},
		{"outside a window", 106, Limit{Min: 95, Max: 105}, sheet.Beyond, 0},
		{"no limit at all", 1, Limit{Max: none, Min: none}, sheet.CannotTell, none},
		{"no estimate", none, AtMost(1), sheet.CannotTell, none},
	} {
		j := Judge(c.estimate, nil, c.limit)
		same := j.Probability == c.p || math.IsNaN(c.p) && math.IsNaN(j.Probability)
		if j.Word != c.word || !same {
			t.Errorf("%s: %q with p = %g, want %q with %g", c.what, j.Word, j.Probability, c.word, c.p)
		}
	}
}

func TestJudgeWithRange(t *testing.T) {
	r := known(t, 0.92, 0.02)
	if j := Judge(0.92, r, AtMost(1)); j.Word != sheet.NearLimit {
		t.Errorf("0.92 ± 0.04 at most 1: %+v", j)
	}
	if j := Judge(0.92, r, AtMost(2)); j.Word != sheet.Within {
		t.Errorf("0.92 ± 0.04 at most 2: %+v", j)
	}
	// A result that does not vary, calculated onto the bound with rounding.
	still := mustPropagate(t, []Factor{exact(0.1), exact(0.2)}, 1, Plan{}, sum).Results[0]
	if j := Judge(0.3, &still, AtMost(0.3)); j.Word != sheet.NearLimit || j.Probability != 1 {
		t.Errorf("on the bound: %+v", j)
	}
	still = mustPropagate(t, []Factor{exact(0.3)}, 1, Plan{}, sum).Results[0]
	if j := Judge(0.3, &still, AtLeast(0.1+0.2)); j.Word != sheet.NearLimit || j.Probability != 1 {
		t.Errorf("on a bound from below: %+v", j)
	}
	if j := Judge(1, &Range{}, AtMost(2)); j.Word != sheet.CannotTell || !math.IsNaN(j.Probability) {
		t.Errorf("a range that is not usable: %+v", j)
	}
}

// The bounds of what is sure belong to it: 39 trials of 40 are 0.975, and 1 of
// 40 is 0.025.
func TestTheBoundsOfSureBelongToIt(t *testing.T) {
	for _, c := range []struct {
		meet int
		word sheet.Word
	}{{40, sheet.Within}, {39, sheet.Within}, {38, sheet.CannotTell}, {2, sheet.CannotTell}, {1, sheet.Beyond}, {0, sheet.Beyond}} {
		r := Range{Usable: true, StdDev: 1}
		for i := range 40 {
			r.trials = append(r.trials, 1+2*float64(min(1, i/max(1, c.meet)))) // 1 meets the limit, 3 does not
		}
		if c.meet == 0 {
			r.trials[0] = 3
		}
		estimate := 1.0
		if c.meet < 20 {
			estimate = 3
		}
		want := float64(c.meet) / 40
		if j := Judge(estimate, &r, AtMost(2)); j.Word != c.word || j.Probability != want {
			t.Errorf("%d of 40 trials meet it: %+v, want %s with %g", c.meet, j, c.word, want)
		}
	}
	for least, words := range map[float64]map[float64]sheet.Word{
		0.95:  {0.95: sheet.Within, 0.9499: sheet.CannotTell, 0.0501: sheet.CannotTell, 0.05: sheet.Beyond},
		0.975: {0.975: sheet.Within, 0.9749: sheet.CannotTell, 0.0251: sheet.CannotTell, 0.025: sheet.Beyond},
	} {
		for p, word := range words {
			if j := JudgeChance(p, least); j.Word != word || j.Probability != p {
				t.Errorf("a chance of %g, at least %g: %+v, want %s", p, least, j, word)
			}
		}
	}
}

func TestProbabilitiesComplement(t *testing.T) {
	r := known(t, 3, 0.5)
	for _, limit := range []float64{1, 2.5, 3, 3.3, 9} {
		if sum := r.ProbabilityBelow(limit) + r.ProbabilityAbove(limit); math.Abs(sum-1) > 1e-4 {
			t.Errorf("below and above %g add to %g", limit, sum)
		}
	}
	if p := r.ProbabilityBelow(math.NaN()); !math.IsNaN(p) {
		t.Errorf("below NaN: %g", p)
	}
	if r.ProbabilityBelow(math.Inf(1)) != 1 || r.ProbabilityBelow(math.Inf(-1)) != 0 {
		t.Error("infinite limits")
	}
}

// A size read as nothing with a coarse gauge was not found to be too large,
// though by its trials (Rayleigh: P(r <= 1) = 1 - exp(-1/2·(1/5)²) = 0.0198) it
// most likely is.
func TestNothingIsNotBeyond(t *testing.T) {
	r := mustPropagate(t, []Factor{normal(0, 5), normal(0, 5)}, 1, Plan{Trials: 20_000}, func(x, y []float64) bool {
		y[0] = math.Hypot(x[0], x[1])
		return true
	}).Results[0]
	j := Judge(0, &r, AtMost(1))
	if want := 1 - math.Exp(-0.02); j.Word != sheet.CannotTell || math.Abs(j.Probability-want) > 0.004 {
		t.Errorf("%s with %g, want %s with %g", j.Word, j.Probability, sheet.CannotTell, want)
	}
	// Read as a hair over its limit with that gauge, it may as well be under.
	if j := Judge(1.01, &r, AtMost(1)); j.Word != sheet.CannotTell {
		t.Errorf("read as a hair over its limit: %s", j.Word)
	}
	if j := Judge(25, &r, AtMost(1)); j.Word != sheet.Beyond {
		t.Errorf("read as far over its limit: %s", j.Word)
	}
}

// Of what is met by far fewer trials say the same, of what is not nobody knows: a
// bell of which 20 000 trials reach about four deviations out is met by far six and
// a half off, and not five and a half off, on either side.
func TestAmplyMet(t *testing.T) {
	r := known(t, 10, 1)
	none := Range{}
	edged := *r
	edged.edge = []float64{10}
	for _, c := range []struct {
		what     string
		estimate float64
		of       *Range
		limit    Limit
		met      bool
	}{
		{"far below a maximum", 10, r, AtMost(17), true},
		{"no trial past it, but near", 10, r, AtMost(15), false},
		{"far above a minimum", 10, r, AtLeast(3), true},
		{"no trial under it, but near", 10, r, AtLeast(5), false},
		{"far between two", 10, r, Limit{Min: 3, Max: 17}, true},
		{"far from one of two", 10, r, Limit{Min: 3, Max: 15}, false},
		{"far past it", 10, r, AtMost(1), false},
		{"the estimate past it", 18, r, AtMost(17), false},
		{"trials off the estimate, as far again as that", 12, r, AtMost(17.5), false},
		{"no limit", 10, r, Limit{Min: math.NaN(), Max: math.NaN()}, true},
		{"without a range, met", 10, nil, AtMost(10), true},
		{"without a range, not met", 10, nil, AtMost(9), false},
		{"no usable range", 10, &none, AtMost(17), false},
		{"trials that were refused", 10, &edged, AtMost(17), false},
	} {
		if got := AmplyMet(c.estimate, c.of, c.limit); got != c.met {
			t.Errorf("%s: %v", c.what, got)
		}
	}
}
