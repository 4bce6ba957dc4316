package catalogue_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/sheet"
)

// 3 mm of play on a 32 mm shaft is not let pass by the rule for ships; the 15 in
// shaft of the rule's exam item (46 CFR 61.20-23, testdata/published) still is.
func TestShipRuleDoesNotPassSmallShafts(t *testing.T) {
	for input, want := range map[string]map[string]string{
		`"shaftDiameter":"32 mm","bearingClearance":"3 mm"`:   {"worn-cfr-small-shaft": "inside the guide", "worn-ship-rule-small-craft": "outside the guide"},
		`"shaftDiameter":"75 mm","bearingClearance":"3 mm"`:   {"worn-cfr-small-shaft": "inside the guide"},
		`"shaftDiameter":"15 in","bearingClearance":"1/4 in"`: {"worn-cfr": "inside the guide"},
	} {
		s := testboat.Run(t, "bearing-clearance", `{"wornRule":"cfr-amidships","bearingKind":"other",`+input+`}`, marinecalc.Options{})
		for _, id := range []string{"worn-cfr", "worn-cfr-small-shaft", "worn-ship-rule-small-craft"} {
			word := ""
			if v := s.Verdict(id); v != nil {
				word = string(v.Word)
			}
			if word != want[id] {
				t.Errorf("%s: %s: %q, want %q", input, id, word, want[id])
			}
		}
	}
}

// A bearing does not grow tighter by running: readings that say so are doubted,
// the more so the more the gauges can tell, and no time to the limit is made
// up from them.
func TestBearingThatGrowsTighterIsDoubted(t *testing.T) {
	run := func(now string) *marinecalc.Sheet {
		return testboat.Run(t, "bearing-clearance", `{"shaftDiameter":"32 mm","bearingClearance":"`+now+`","newClearance":"0.5 mm","earlierClearance":"0.4 mm","runningTime":"100 h"}`, marinecalc.Options{})
	}
	for _, c := range []struct {
		now, before, new string // the verdicts on wear since before and since new
		left             bool
	}{
		{"0.3 mm", "beyond", "beyond", false}, {"0.395 mm", "cannot tell", "beyond", false}, {"0.4 mm", "", "beyond", false},
		{"0.41 mm", "", "beyond", true}, {"0.6 mm", "", "", true},
	} {
		s := run(c.now)
		for id, want := range map[string]string{"not-tighter-than-before": c.before, "not-tighter-than-new": c.new} {
			word := ""
			if v := s.Verdict(id); v != nil {
				word = string(v.Word)
			}
			if word != want {
				t.Errorf("%s: %s: %q, want %q", c.now, id, word, want)
			}
		}
		left := s.Result("timeLeft")
		if (left != nil) != c.left || s.Trials == 0 {
			t.Errorf("%s: left %+v, %d trials, %q", c.now, left, s.Trials, s.Notes)
		}
		if advised := slices.ContainsFunc(s.Next, func(n sheet.Next) bool { return strings.Contains(n.Text, "show no wear") }); advised == c.left {
			t.Errorf("%s: said that no wear shows: %v", c.now, advised)
		}
	}
	// Where the gauge leaves room for no wear at all, the range has no end.
	if s := run("0.41 mm").Result("timeLeft"); !strings.HasSuffix(s.Interval, " or more") || strings.Contains(s.Interval, "87") {
		t.Errorf("left %s (%s)", s.Text, s.Interval)
	}
}

// A clearance that is the difference of two diameters has the accuracy of
// both: two calliper readings of ± 0.05 mm spread as a triangle of ± 0.1 mm,
// whose middle 95 % are ± 0.1·(1 − √0.05) mm (JCGM 101, 6.4.5, clause from memory).
func TestClearanceOfBoreAndShaftHasBothAccuracies(t *testing.T) {
	c := testboat.Run(t, "bearing-clearance", `{"shaftDiameter":"30 mm","shellBore":"30.45 mm"}`, marinecalc.Options{}).Result("clearance")
	half := 0.1e-3 * (1 - math.Sqrt(0.05))
	if math.Abs(*c.SI-0.45e-3) > 1e-9 || math.Abs(*c.Low-(0.45e-3-half)) > 0.03*half || math.Abs(*c.High-(0.45e-3+half)) > 0.03*half {
		t.Errorf("%+v, want ± %v m", c, half)
	}
	if _, err := marinecalc.Run("bearing-clearance", []byte(`{"shaftDiameter":"30 mm"}`), marinecalc.Options{}); err == nil || !strings.Contains(err.Error(), "/bearingClearance") || !strings.Contains(err.Error(), "bore") {
		t.Errorf("without clearance and bore: %v", err)
	}
}
