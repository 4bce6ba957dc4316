package cost

import (
	"math"
	"math/rand/v2"
	"testing"

	"example.org/driveline/marinecalc/quantity"
)

// Raiffa, Decision Analysis: Introductory Lectures on Choices under
// Uncertainty, 1968: the oil wildcatter, in thousands of dollars; figures from
// memory, page not known. Drilling costs 70 and brings 0, 120 or 270 from a dry, wet or soaking
// hole, of chances 0.5, 0.3, 0.2; seismic soundings say no, open or closed
// structure. Published: drilling at once is worth 20, perfect information 35
// more, the soundings 12.5, so that with their price of 10 they are taken.
func TestOilWildcatter(t *testing.T) {
	p := &Prospect{
		Chance: []float64{0.5, 0.3, 0.2},
		Cost:   [][]float64{{70, -50, -200}, {0, 0, 0}},
		Says:   [][]float64{{0.6, 0.3, 0.1}, {0.3, 0.4, 0.4}, {0.1, 0.3, 0.5}},
	}
	now, act, after := p.Look()
	near(t, "drilling at once", -now, 20, 1e-12)
	if act != 0 {
		t.Error("drilling is not the best act before the soundings")
	}
	near(t, "value of the soundings", now-after, 12.5, 1e-12)
	p.Says = [][]float64{{1, 0, 0}, {0, 1, 0}, {0, 0, 1}} // it tells how things stand
	_, _, after = p.Look()
	near(t, "value of perfect information", now-after, 35, 1e-12)
	p.Says = [][]float64{{0.2, 0.2, 0.2}, {0.8, 0.8, 0.8}} // it tells nothing
	_, _, after = p.Look()
	near(t, "value of a look that tells nothing", now-after, 0, 1e-12)
}

// Derived: what the look before a job saves, against two million boats of the
// test's own: each has the fault or not, its owner looks or not, sees it or not,
// and does what is best on the average of those who see the same.
func TestLookAgainstBoats(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 2))
	for _, c := range []struct {
		p, misses, mistakes, minutes float64
		job, loss                    float64
		says                         string
	}{
		{0.7, 0.1, 0.1, 30, 900, 1500, LookFirst},
		{0.98, 0.1, 0.1, 30, 500, 1500, JustDoIt},     // no answer would change what is done
		{0.7, 0.1, 0.1, 60 * 24, 300, 1500, JustDoIt}, // the look costs more than it is worth
		{0.02, 0.1, 0.1, 30, 900, 1500, NotYet},
		{0.3, 0, 0, 30, 900, 1500, LookFirst},
	} {
		in := Input{Seasons: 3, OwnHourValue: 20, RepairParts: 900, ReplaceParts: 900, FailureCost: 1500, CauseAtWork: 0, LookMisses: 0}
		in.RepairParts, in.ReplaceParts = quantity.Money(c.job), quantity.Money(c.job+100)
		in.FailureCost, in.CauseAtWork, in.LookTime = quantity.Money(c.loss), quantity.Ratio(c.p), quantity.Time(60*c.minutes)
		in.LookMisses, in.LookMistakes = quantity.Ratio(c.misses), quantity.Ratio(c.mistakes)
		out := weigh(t, in)
		if out.LookFirst != c.says {
			t.Errorf("%+v: says %s, worth %g at %g", c, out.LookFirst, out.LookWorth, out.LookCosts)
		}
		const boats = 2_000_000
		var fault, seen, both float64
		for range boats {
			is := r.Float64() < c.p
			sees := is && r.Float64() >= c.misses || !is && r.Float64() < c.mistakes
			fault, seen, both = fault+one(is), seen+one(sees), both+one(is && sees)
		}
		of := func(with, n float64) float64 { return min((n-with)*c.job, with*c.loss) / boats } // done, or left
		now := of(fault, boats)
		after := of(both, seen) + of(fault-both, boats-seen)
		near(t, "loss without the look", float64(out.ActNowCosts), now, 2e-2)
		near(t, "loss with it", float64(out.LookFirstCosts), after+20*c.minutes/60, 2e-2)
		if math.Abs(float64(out.LookWorth)-max(now-after, 0)) > 2 {
			t.Errorf("%+v: the look is worth %g, to these boats %g", c, out.LookWorth, now-after)
		}
	}
}

func one(is bool) float64 {
	if is {
		return 1
	}
	return 0
}

// What is not known is not weighed, and what was found is not looked for.
func TestNothingToLookFor(t *testing.T) {
	in := choice()
	if out := weigh(t, in); out.LookFirst != "" || !math.IsNaN(float64(out.LookWorth)) {
		t.Errorf("no cause is known: %s, %g", out.LookFirst, out.LookWorth)
	}
	in.CauseAtWork, in.LookTime = 1, 600
	if out := weigh(t, in); out.LookFirst != Known || !math.IsNaN(float64(out.LookCosts)) {
		t.Errorf("it was found: %s", out.LookFirst)
	}
	in.CauseAtWork, in.FailureCost, in.FailureDays = 0.5, 0, 0
	if out := weigh(t, in); out.LookFirst != "" {
		t.Errorf("nobody knows what a failure costs: %s", out.LookFirst)
	}
	in = choice()
	in.CauseAtWork, in.LookTime = 0.5, 0
	if out := weigh(t, in); out.LookFirst != "" {
		t.Errorf("nobody knows how long the look takes: %s", out.LookFirst)
	}
	in.CauseAtWork = 1.5
	if _, err := Weigh(in); err == nil {
		t.Error("a chance of 150 % is weighed")
	}
}
