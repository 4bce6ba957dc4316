package torque_test

import (
	"math"
	"testing"

	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/torque"
)

// The pull astern is the one that is known by itself, else the part of the
// thrust ahead, else not known.
func TestPullAstern(t *testing.T) {
	for _, c := range []struct{ known, ahead, share, want float64 }{
		{1200, 3000, 0.7, 1200}, {0, 3000, 0.7, 2100}, {0, 3000, 0, 0}, {0, 0, 0.7, math.NaN()},
	} {
		if got := float64(torque.PullAstern(quantity.Force(c.known), quantity.Force(c.ahead), quantity.Ratio(c.share))); !(got == c.want || math.IsNaN(got) && math.IsNaN(c.want)) {
			t.Errorf("%+v: %g", c, got)
		}
	}
}
