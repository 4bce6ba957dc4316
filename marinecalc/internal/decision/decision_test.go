package decision_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
)

// triangular draws from low to high, likeliest at mode (by inversion).
func triangular(r *rand.Rand, low, mode, high float64) float64 {
	u, at := r.Float64(), (mode-low)/(high-low)
	if u < at {
		return low + math.Sqrt(u*(high-low)*(mode-low))
	}
	return high - math.Sqrt((1-u)*(high-low)*(high-mode))
}

// What is expected is the mean over the ranges of the chances, here of 400 000
// draws of the test's own: not what it costs at their likeliest values, which
// for these usual values would call repairing the cheaper over five seasons.
func TestExpectedIsTheMean(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 1))
	for _, c := range []struct {
		seasons  float64
		cheapest string
	}{{1, "repairing costs least"}, {3, "too close to tell: go by the risk, not by the money"}, {5, "replacing costs least"}, {8, "replacing costs least"}} {
		var repair, replace, cheaper float64
		const draws = 400_000
		for range draws {
			cost := func(first, misses, fails float64) float64 {
				return first + (misses+fails*c.seasons)/(1-misses)*(450+5*120+first)
			}
			a := cost(180+4*85, triangular(r, 0.05, 0.15, 0.40), triangular(r, 0.02, 0.08, 0.25))
			b := cost(640+5*85, triangular(r, 0.02, 0.08, 0.25), triangular(r, 0.005, 0.02, 0.06))
			repair, replace = repair+a/draws, replace+b/draws
			if b < a {
				cheaper += 1.0 / draws
			}
		}
		s := testboat.Run(t, "repair-or-replace", fmt.Sprintf(`{"seasons":%g,"repairParts":"180 EUR","replaceParts":"640 EUR","repairYardTime":"4 h","replaceYardTime":"5 h",
		 "yardHourCost":"85 EUR","failureCost":"450 EUR","failureDays":"5 days","dayValue":"120 EUR"}`, c.seasons), marinecalc.Options{})
		for name, want := range map[string]float64{"repairExpected": repair, "replaceExpected": replace, "saving": repair - replace} {
			if got := *s.Result(name).SI; math.Abs(got-want) > 6 {
				t.Errorf("%g seasons: %s is %g, the mean of the draws %g", c.seasons, name, got, want)
			}
		}
		if got := *s.Result("replacingCheaperChance").SI; math.Abs(got-cheaper) > 0.015 {
			t.Errorf("%g seasons: replacing is cheaper with %g, of the draws in %g", c.seasons, got, cheaper)
		}
		if got := s.Result("cheapest").Text; got != c.cheapest {
			t.Errorf("%g seasons: %s, saving %g of %g", c.seasons, got, repair-replace, replace)
		}
	}
}

// Two prices alone call repairing the cheaper because a failure costs nothing then:
// the headline says so, until somebody says what one costs, be it nothing.
func TestTheCheaperWayHangsOnWhatAFailureCosts(t *testing.T) {
	const free = ", if a failure costs nothing but the same repair"
	for _, c := range []struct{ more, want string }{
		{"", "repairing costs least" + free},
		{`, "failureDays": "5 days"`, "repairing costs least" + free},
		{`, "failureCost": "0 USD"`, "repairing costs least"},
		{`, "failureDays": "1 day", "dayValue": "10 USD"`, "repairing costs least"},
		{`, "failureCost": "2000 USD"`, "replacing costs least"},
	} {
		s := testboat.Run(t, "repair-or-replace", `{"seasons": 10, "repairParts": "180 USD", "replaceParts": "640 USD"`+c.more+`}`, marinecalc.Options{})
		if got := s.Result("cheapest").Text; got != c.want {
			t.Errorf("%s: %s", c.more, got)
		}
		if got := s.Result("takes").Text; strings.Contains(got, "if a failure") {
			t.Errorf("%s: the plan takes %s", c.more, got)
		}
	}
}

// A mean life has a range too: the chance a season is the mean over it.
func TestExpectedOfALife(t *testing.T) {
	s := testboat.Run(t, "repair-or-replace", `{"seasons":5,"repairParts":"100 EUR","replaceParts":"300 EUR","engineHoursPerSeason":"100 h","repairLife":"300 ± 200 h","replaceLife":"3000 h"}`, marinecalc.Options{})
	want := 0.0
	for i := range 1000 {
		want += -math.Expm1(-100/(100+400*(float64(i)+0.5)/1000)) / 1000
	}
	if got := *s.Result("repairSeason").SI; math.Abs(got-want) > 1e-4 {
		t.Errorf("%g, want %g", got, want)
	}
	if got := *s.Result("replaceSeason").SI; math.Abs(got+math.Expm1(-100.0/3000)) > 1e-9 {
		t.Errorf("%g", got)
	}
}

// What the plan takes is what the plan does: nothing on a suspicion under even odds.
func TestSuspicionTakesNoWorkYet(t *testing.T) {
	b := testboat.Read(t, `{"name": "Test", "symptoms": [{"evidence": "gearbox-whine", "answer": "yes"}, {"evidence": "fluid-metal", "answer": "yes"}]}`)
	o := marinecalc.Options{Boat: b, NoRanges: true}
	takes, planned := testboat.Run(t, "repair-or-replace", `{}`, o).Result("takes").Text, testboat.Run(t, "work-plan", `{"today": "2026-03-02"}`, o).Result("planned").Text
	if takes != "nothing for it yet: it is only suspected, and looked for first" || !strings.HasPrefix(planned, "nothing yet") {
		t.Errorf("takes %q, plans %q", takes, planned)
	}
}
