package catalogue_test

import (
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
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
