package catalogue_test

import (
	"slices"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/sheet"
)

// Free play is nothing or more: by a coarse gauge it may be nothing, and never less.
// Readings of which the differences lie wholly below nothing are left as they are.
func TestPlayIsNotBelowNothing(t *testing.T) {
	for input, contradicts := range map[string]bool{
		`{"atPropeller": "0.3°", "atShaft": "0.25°", "atFlange": "0.2°", "atOutputShaft": "0.15°", "angleGauge": "protractor"}`: false,
		`{"atPropeller": "0.3 ± 0.02°", "atShaft": "2 ± 0.02°", "atFlange": "2 ± 0.02°"}`:                                       true,
	} {
		below := false
		for _, r := range testboat.Run(t, "backlash", input, marinecalc.Options{Trials: 1024}).Results {
			below = below || r.Low != nil && *r.Low < 0
		}
		if below != contradicts {
			t.Errorf("%s: below nothing %t", input, below)
		}
	}
}

// Play that no joint can have is told where nobody said what the coupling is, and
// no advice says that all is well beside a limit that is broken.
func TestPlayOfAJointNotDescribed(t *testing.T) {
	for input, limit := range map[string]string{
		`{"atPropeller": "6°", "atShaft": "6°", "atFlange": "1°"}`:                                                    "backlash-coupling-free-unsaid",
		`{"atPropeller": "5°", "atShaft": "2°", "atFlange": "1.9°", "atOutputShaft": "0.4°"}`:                         "backlash-taper-free",
		`{"atPropeller": "6°", "atShaft": "6°", "atFlange": "1°", "holdMethod": "interference"}`:                      "backlash-coupling-free",
		`{"atPropeller": "6°", "atShaft": "6°", "atFlange": "1°", "holdMethod": "set-screws", "couplingKeyed": "no"}`: "backlash-coupling-free-screws",
		`{"atPropeller": "6°", "atShaft": "6°", "atFlange": "1°", "holdMethod": "set-screws"}`:                        "backlash-coupling-key-unsized",
	} {
		s := testboat.Run(t, "backlash", input, marinecalc.Options{Trials: 1024})
		over := false
		for _, v := range s.Verdicts {
			over = over || v.Limit == limit && v.Word.Plain() == "beyond"
		}
		stop, well := false, false
		for _, a := range s.Next {
			stop = stop || strings.Contains(a.Text, "Do not run under power")
			well = well || strings.Contains(a.Text, "all is well") || strings.Contains(a.Text, "No joint is told")
		}
		if mayRun := limit == "backlash-coupling-key-unsized"; !over || stop == mayRun || well { // a key may have that play
			t.Errorf("%s: %s over %t, stopped %t, all well %t", input, limit, over, stop, well)
		}
	}
	s := testboat.Run(t, "backlash", `{"atPropeller": "0.3 ± 0.02°", "atShaft": "0.3 ± 0.02°", "atFlange": "0.3 ± 0.02°"}`, marinecalc.Options{Trials: 1024})
	if !slices.ContainsFunc(s.Next, func(a sheet.Next) bool { return strings.Contains(a.Text, "all is well") }) {
		t.Error("not followed where all is well")
	}
}
