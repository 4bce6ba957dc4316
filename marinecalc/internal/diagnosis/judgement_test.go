package diagnosis

import (
	"math"
	"testing"

	"example.org/driveline/marinecalc/rules"
)

// Access and hazard make minutes count for more, by the table of judgements.
func TestAccessAndHazardRaiseTheCost(t *testing.T) {
	f := newFinder(rules.Standard())
	p := f.model.Posterior(f.answers)
	rate := map[string]float64{}
	for _, c := range f.next(p, Input{Lies: "afloat"}) {
		e := f.evidence.At(c.Question)
		rate[e.ID] = c.Bits / e.Minutes / c.Rate
	}
	for id, want := range map[string]float64{
		"clatter-at-idle": 1,         // in reach, no hazard
		"fluid-low":       2.5,       // in reach, danger
		"engine-jumps":    1.75,      // in reach, warning
		"growth-seen":     2.5 * 2.5, // hard to reach, danger
	} {
		if math.Abs(rate[id]-want) > 1e-9 {
			t.Errorf("%s counts %v times, not %v", id, rate[id], want)
		}
	}
}

// Every figure that the entry point asks the table of judgements for is there.
func TestJudgementsAreThere(t *testing.T) {
	for _, id := range []string{"access-1", "access-2", "access-3", "hazard-none", "hazard-notice", "hazard-caution", "hazard-warning", "hazard-danger",
		"weight-moderate", "weight-strong", "sure-open", "sure-likely", "sure-nearly", "part-odds", "part-information", "surprise"} {
		if math.IsNaN(judgement(rules.Standard(), id)) {
			t.Errorf("there is no row %s", id)
		}
	}
}
