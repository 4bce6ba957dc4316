package bearing

import (
	"math"
	"testing"

	"example.org/driveline/marinecalc/internal/parttest"
	"example.org/driveline/marinecalc/quantity"
)

// A shaft of 30 mm with 0.6 mm of clearance has a fiftieth of its diameter.
// Without a worn limit no time is told, and one without wear never ends.
func TestClearanceForItsShaft(t *testing.T) {
	in := used()
	out := worn(t, in)
	parttest.Within(t, "ratio", out.ClearanceRatio, float64(out.Clearance)/float64(in.ShaftDiameter), 1e-12)
	in.WornLimit = 0
	if out = worn(t, in); !math.IsNaN(float64(out.TimeLeft)) {
		t.Errorf("without a limit: %g s", out.TimeLeft)
	}
	in = used()
	in.EarlierClearance = in.BearingClearance
	if out = worn(t, in); out.TimeLeft != Never {
		t.Errorf("without wear: %g s", out.TimeLeft)
	}
	in.WornLimit = in.BearingClearance // no running is left once the limit is passed, though it wore no more since
	if out = worn(t, in); out.TimeLeft != 0 {
		t.Errorf("at the limit, without wear since: %g s", out.TimeLeft)
	}
	in.WornLimit = in.BearingClearance + 1e-6
	if out = worn(t, in); out.TimeLeft != Never {
		t.Errorf("just under the limit, without wear since: %g s", out.TimeLeft)
	}
}

// ISO 286-1 has for a shaft of 40 k6 +18 and +2 µm, ISO 492 for a bore of 40 mm
// 0 and -12 µm (both from memory): the ring sits with 2 to 30 µm.
func TestInterferenceOfK6(t *testing.T) {
	in := output()
	in.SeatUpper, in.SeatLower, in.BoreUpper, in.BoreLower = 18e-6, 2e-6, 0, -12e-6
	out := last(t, in)
	parttest.Near(t, "most", out.GreatestInterference, 30e-6, 1e-15)
	parttest.Near(t, "least", out.LeastInterference, 2e-6, 1e-15)
	in.BoreUpper = 5e-6
	parttest.Near(t, "in a bore that is too wide", last(t, in).LeastInterference, -3e-6, 1e-15)
	in.SeatUpper = 0.0011
	_, err := Life(in)
	parttest.RefusedAt(t, err, "/seatUpper")
	parttest.Says(t, err, "a size 1.1 mm off")
}

// Y·F over the static rating is what tables of X and Y go by (ISO 281, from
// memory): the thrust's share is that without Y.
func TestThrustOverTheStaticRating(t *testing.T) {
	in := output()
	in.Thrust, in.StaticRating = 1800, 18e3
	parttest.Within(t, "share", last(t, in).AxialShare, 0.1, 1e-12)
	// A thrust of half a newton counts as one: P0 = max(F_r, X0·F_r + Y0·F_a).
	in = plain(30e3, 1000, 150)
	in.Thrust, in.StaticRating, in.StaticRadialFactor, in.StaticAxialFactor = 0.5, 20e3, 1, 4000
	parttest.Within(t, "static load", last(t, in).StaticLoad, 1000+0.5*4000, 1e-12)
}

// The rating that lasts the wanted hours at 95 of 100, put in, lasts them: ISO 281
// has 0.64 for a reliability of 95 % (from memory).
func TestRatingNeededLastsAtItsReliability(t *testing.T) {
	in := plain(30e3, 2000, 150)
	in.ReliabilityFactor, in.WantedLife = 0.64, 5000*3600
	in.DynamicRating = last(t, in).RatingNeeded
	parttest.Within(t, "adjusted life", last(t, in).AdjustedLife, 5000*3600, 1e-9)
}

// Any one load is a load: radial, added, or a thrust that counts.
func TestOneLoadIsEnough(t *testing.T) {
	for what, change := range map[string]func(*LifeInput){
		"radial": func(in *LifeInput) { in.RadialLoad = 0.5 },
		"added":  func(in *LifeInput) { in.AddedLoad = 0.5 },
		"thrust": func(in *LifeInput) { in.Thrust, in.AxialFactor = 100, 1.5 },
	} {
		in := plain(30e3, 0, 150)
		in.AddedLoad, in.AxialFactor = quantity.Force(math.NaN()), 0
		change(&in)
		if _, err := Life(in); err != nil {
			t.Errorf("%s alone: %v", what, err)
		}
	}
	in := plain(30e3, 0, 150)
	in.Thrust, in.AxialFactor = 100, 0
	_, err := Life(in)
	parttest.RefusedAt(t, err, "/radialLoad")
	in.RadialLoad = -1
	_, err = Life(in)
	parttest.RefusedAt(t, err, "/radialLoad")
	in.RadialLoad, in.Thrust = 0, -1
	_, err = Life(in)
	parttest.RefusedAt(t, err, "/thrust")
}
