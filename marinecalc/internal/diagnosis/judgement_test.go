package diagnosis

import (
	"math"
	"testing"

	"example.org/driveline/marinecalc/rules"
)

// Access and hazard make minutes count for more, by the table of judgements;
// a hazard that a precaution takes away does not: with the key in the pocket
// the dipstick is as safe as the ear.
func TestAccessAndHazardRaiseTheCost(t *testing.T) {
	f := newFinder(rules.Standard())
	for id, want := range map[string]float64{
		"clatter-at-idle": 1,         // in reach, no hazard
		"fluid-low":       1,         // in reach, engine stopped and key out
		"engine-jumps":    1.75,      // in reach, warning
		"growth-seen":     2.5 * 2.5, // hard to reach, danger to a diver
	} {
		e := f.evidence.At(f.question[id])
		if got := (f.cost(e) - f.figure("getting-ready")) / e.Minutes; math.Abs(got-want) > 1e-9 {
			t.Errorf("%s counts %v times, not %v", id, got, want)
		}
	}
}

// Every figure that the entry point asks the table of judgements for is there.
func TestJudgementsAreThere(t *testing.T) {
	for _, id := range []string{"access-1", "access-2", "access-3", "hazard-none", "hazard-notice", "hazard-caution", "hazard-warning", "hazard-danger",
		"getting-ready", "arises", "weights-stray", "brings-mostly", "brings-often", "brings-sometimes", "brings-seldom", "leads", "look-among", "alive", "alive-rise", "worth-naming", "worth-proposing",
		"near-odds", "least-information", "weight-meaningful", "weight-moderate", "weight-strong", "sure-open", "sure-likely", "sure-nearly", "points-nowhere", "part-odds", "part-information", "surprise"} {
		if math.IsNaN(Judgement(rules.Standard(), id)) {
			t.Errorf("there is no row %s", id)
		}
	}
}

// Of no other cause does a sign row stand for a check that settles one: it
// would never count.
func TestSettlingChecksHaveNoOtherSigns(t *testing.T) {
	f := newFinder(rules.Standard())
	for _, s := range f.book.Signs().All() {
		if c := f.model.Settles[f.question[s.Evidence]]; c >= 0 && f.causes.At(c).ID != s.Cause {
			t.Errorf("%s does not count", s.ID)
		}
	}
}
