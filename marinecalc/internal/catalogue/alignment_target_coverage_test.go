package catalogue_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
)

// targetBoats simulates boats whose engine stands on four mounts at two places
// along it: what warms, creeps and drives is known here, read with an error as even
// as its ± says, and the target is worked out from what was read. Each place
// rises by height times expansion times warming, less deflection times creep for
// each tenfold of time; the engine's line through the two places goes on to the
// coupling at nought (own derivation, without the sheet's least squares).
func targetBoats(t *testing.T, c *covered, r *rand.Rand, boats int, driven float64) {
	const front, aft, d, standing, settles = 0.9, 0.3, 0.12, 30 * 86400.0, 180 * 86400.0
	off := func(truth, half float64, unit string) string {
		return fmt.Sprintf("%.9g ± %.9g %s", truth+even(r, half), half, unit)
	}
	for range boats {
		heightFront, heightAft := 0.2+0.2*r.Float64(), 0.15+0.1*r.Float64()
		warmFront, warmAft, alpha := 30+40*r.Float64(), 20+30*r.Float64(), 10.5e-6+1e-6*r.Float64()
		creep, deflection := 0.03+0.02*r.Float64(), 3e-3+2e-3*r.Float64()
		up, across := driven*even(r, 0.4e-3), driven*even(r, 0.3e-3)
		tilt, turn := driven*even(r, 1e-3), driven*even(r, 0.5e-3)
		sink := deflection * creep * math.Log10((standing+settles)/standing)
		riseFront, riseAft := heightFront*alpha*warmFront-sink, heightAft*alpha*warmAft-sink
		slope := (riseFront - riseAft) / (front - aft)
		atCoupling := riseAft - aft*slope
		share := 0.4 + 0.2*r.Float64()
		mount := func(name string, forward, starboard, height float64) string {
			return fmt.Sprintf(`{"name": %q, "forward": "%.9g mm", "starboard": "%.9g mm", "up": "%.9g mm"}`, name, 1000*forward, 1000*starboard, -1000*height)
		}
		input := fmt.Sprintf(`{"mounts": [%s, %s, %s, %s], "couplingDiameter": "120 mm ± 0 mm", "standing": "30 day", "settles": "180 day", "frontRise": %q, "aftRise": %q, "expansion": %q,
			"creepPerDecade": %q, "usualDeflection": %q, "drivingUp": %q, "drivingStarboard": %q, "drivingFrontUp": %q, "drivingFrontStarboard": %q, "drivingShare": %q}`,
			mount("front port", front, -0.2, heightFront), mount("front starboard", front, 0.2, heightFront), mount("aft port", aft, -0.2, heightAft), mount("aft starboard", aft, 0.2, heightAft),
			off(warmFront, 8, "K"), off(warmAft, 6, "K"), off(alpha, 0.5e-6, ""), off(creep, 0.008, ""), off(1000*deflection, 0.4, "mm"),
			off(1000*up, 0.05, "mm"), off(1000*across, 0.05, "mm"), off(1000*tilt, 0.1, "mm/m"), off(1000*turn, 0.1, "mm/m"), off(share, 0.1, ""))
		s := testboat.Run(t, "alignment-target", input, marinecalc.Options{})
		c.holds(s, "targetGapVertical", d*(slope+share*tilt))
		c.holds(s, "targetOffsetVertical", -(atCoupling + share*up))
		c.holds(s, "targetGapHorizontal", d*share*turn)
		c.holds(s, "targetOffsetHorizontal", -share*across)
		c.holds(s, "sink", sink)
	}
}

// Independent simulation, as many boats as for the other alignment sheets: the
// intervals of the cold target hold what comes true in about 95 of 100.
func TestTargetIntervalsCover(t *testing.T) {
	long(t)
	for n, driven := range []float64{0, 1} {
		c := covered{t, fmt.Sprintf("cold target, driving %g", driven), map[string]int{}}
		targetBoats(t, &c, rand.New(rand.NewPCG(uint64(n), 500+coverageSeed)), coverageRuns, driven)
		c.tell("targetGapVertical", "targetOffsetVertical", "targetGapHorizontal", "targetOffsetHorizontal", "sink")
	}
}

// The same of 60 boats, quickly: of a true 95 % fewer than 50 come once in some
// thousand suites (binomial distribution).
func TestTargetIntervalsCoverQuickly(t *testing.T) {
	const boats, fewest = 60, 50
	c := covered{t, "cold target, few boats", map[string]int{}}
	targetBoats(t, &c, rand.New(rand.NewPCG(7, 501)), boats, 1)
	for result, held := range c.hit {
		if held < fewest {
			t.Errorf("%s is held by %d of %d intervals", result, held, boats)
		}
	}
}
