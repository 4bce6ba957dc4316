package catalogue_test

import (
	"encoding/json"
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"strconv"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
)

// fewestHeld, in per cent, is how often an interval must hold the truth. Asked
// for are 93 to 97 %. Of n boats the share found of a true 95 % wanders by a
// standard deviation of √(0.95·0.05/n): 1.3 % of 300, so that no floor above
// 91 % could be held with them, and 0.49 % of the 2000 that are simulated. 93 %
// then lies four of them below: what truly covers 95 % falls under it once in
// 30 000 cases, and what truly covers 92 % passes once in twenty.
const fewestHeld = 93.0

// coverageRuns is how many boats are simulated for a case.
var coverageRuns = fromEnvironment("MARINECALC_BOATS", 2000)

// coverageSeed shifts every seed: a factor must not be fitted to the boats it
// is then tried on.
var coverageSeed = uint64(fromEnvironment("MARINECALC_SEED", 0))

func fromEnvironment(name string, otherwise int) int {
	if n, err := strconv.Atoi(os.Getenv(name)); err == nil && n > 0 {
		return n
	}
	return otherwise
}

// covered counts how many intervals hold the truth.
type covered struct {
	t    *testing.T
	name string
	hit  map[string]int
}

func (c *covered) holds(s *marinecalc.Sheet, result string, truth float64) {
	low, high := math.NaN(), math.NaN()
	if r := s.Result(result); r != nil {
		low, high = *r.SI, *r.SI
		if l, h, ok := r.Range(); ok {
			low, high = l, h
		}
	}
	n := 0
	if low-1e-12 <= truth && truth <= high+1e-12 {
		n = 1
	}
	c.hit[result] += n
}

// tell prints the table's line, and refuses what holds the truth too seldom.
func (c *covered) tell(results ...string) {
	for _, r := range results {
		part := 100 * float64(c.hit[r]) / float64(coverageRuns)
		c.t.Logf("%-58s %-22s %5.1f %%", c.name, r, part)
		if part < fewestHeld {
			c.t.Errorf("%s: %s is held by %.1f %% of the intervals", c.name, r, part)
		}
	}
}

// long skips a check that takes long, unless it is asked for.
func long(t *testing.T) {
	t.Helper()
	if os.Getenv("MARINECALC_COVERAGE") == "" {
		t.Skip("set MARINECALC_COVERAGE to count how often the intervals hold the truth")
	}
}

// even is an error spread evenly over ± half.
func even(r *rand.Rand, half float64) float64 { return half * (2*r.Float64() - 1) }

// Independent simulation, 2000 boats a case: a coupling whose misalignment and
// run-out are known is read with a gauge as good as it is said to be, and the
// interval on the sheet holds the truth in about 95 of 100.
func TestAlignmentIntervalsCover(t *testing.T) {
	long(t)
	const feeler = 0.02e-3
	exact := func(r *rand.Rand, gap float64) float64 { return gap + even(r, feeler) }
	for n, k := range []struct {
		name                        string
		gap, runOut, offset, rimOut float64 // total, of the truth
		places, turns               int
		gauge                       string
		read                        func(r *rand.Rand, gap float64) float64
		results                     []string
	}{
		{name: "4 places, feeler, gap 0.15 mm", gap: 0.15e-3, places: 4, turns: 1, results: []string{"gapVertical", "gapHorizontal", "gapDifference"}},
		{name: "the same, gap 0.03 mm", gap: 0.03e-3, places: 4, turns: 1, results: []string{"gapDifference"}},
		{name: "the same, gap 0.01 mm", gap: 0.01e-3, places: 4, turns: 1, results: []string{"gapDifference"}},
		{name: "the same, gap 0", places: 4, turns: 1, results: []string{"gapDifference", "gapVertical"}},
		{name: "8 places, feeler, gap 0", places: 8, turns: 1, results: []string{"gapDifference"}},
		{name: "4 turns of 4, gap 0.1, run-out 0.1 mm", gap: 0.1e-3, runOut: 0.1e-3, places: 4, turns: 4, results: []string{"gapDifference", "runOut", "worstGap"}},
		{name: "4 turns of 4, gap 0, run-out 0.005 mm", runOut: 0.005e-3, places: 4, turns: 4, results: []string{"gapDifference", "runOut"}},
		{name: "4 turns of 4, gap 0, run-out 0", places: 4, turns: 4, results: []string{"gapDifference", "runOut"}},
		{name: "2 turns of 4, gap 0.1, run-out 0.05 mm", gap: 0.1e-3, runOut: 0.05e-3, places: 4, turns: 2, results: []string{"gapVertical", "runOut"}},
		{name: "8 turns of 4, scatter twice the gauge's", gap: 0.1e-3, runOut: 0.05e-3, places: 4, turns: 8, results: []string{"gapVertical", "gapDifference", "runOut"},
			read: func(r *rand.Rand, gap float64) float64 { return gap + 2*feeler/math.Sqrt(3)*r.NormFloat64() }},
		{name: "4 turns of 4, scatter three times the gauge's", gap: 0.1e-3, places: 4, turns: 4, results: []string{"gapVertical", "gapDifference"},
			read: func(r *rand.Rand, gap float64) float64 { return gap + even(r, 3*feeler) }},
		{name: "4 turns of 4, thou blades", gap: 0.1e-3, runOut: 0.05e-3, places: 4, turns: 4, gauge: "feeler-gauge-thou", results: []string{"gapVertical", "runOut"},
			read: func(r *rand.Rand, gap float64) float64 {
				return 25.4e-6 * math.Floor((gap+even(r, 12.7e-6))/25.4e-6)
			}},
		{name: "4 places, single blades 0.05 mm apart", gap: 0.1e-3, places: 4, turns: 1, gauge: "feeler-gauge-wide", results: []string{"gapVertical", "gapDifference"},
			read: func(r *rand.Rand, gap float64) float64 { return 0.05e-3 * math.Floor(gap/0.05e-3) }},
		{name: "dial on the rim, 4 places, offset 0.1 mm", offset: 0.1e-3, places: 4, turns: 1, results: []string{"offset", "offsetVertical"}},
		{name: "the same, offset 0", places: 4, turns: 1, results: []string{"offset"}},
		{name: "dial on the rim, 4 turns, offset 0.05, run-out 0.1 mm", offset: 0.05e-3, rimOut: 0.1e-3, places: 4, turns: 4, results: []string{"offset", "rimRunOut", "worstOffset"}},
	} {
		r := rand.New(rand.NewPCG(uint64(n), 300+coverageSeed))
		read := k.read
		if read == nil {
			read = exact
		}
		gauge := k.gauge
		if gauge == "" {
			gauge = "feeler-gauge"
		}
		c := covered{t, k.name, map[string]int{}}
		for range coverageRuns {
			up, right := math.Sincos(2 * math.Pi * r.Float64())
			tUp, tRight := math.Sincos(2 * math.Pi * r.Float64())
			mean, first := 0.4e-3+0.2e-3*r.Float64(), 2*math.Pi*r.Float64()
			var gaps, steps []map[string]any
			for turn := range k.turns {
				by := 2 * math.Pi * float64(turn) / float64(k.turns)
				for place := range k.places {
					clock := 2 * math.Pi * float64(place) / float64(k.places)
					if k.places > 4 {
						clock = math.Mod(clock+first, 2*math.Pi)
					}
					sin, cos := math.Sincos(clock)
					tSin, tCos := math.Sincos(clock - by)
					gap := mean + k.gap/2*(up*cos+right*sin) + k.runOut/2*(tUp*tCos+tRight*tSin)
					step := k.offset*(up*cos+right*sin) + k.rimOut/2*(tUp*tCos+tRight*tSin)
					gaps = append(gaps, map[string]any{"clock": clock, "turn": by, "gap": read(r, gap)})
					steps = append(steps, map[string]any{"clock": clock, "turn": by, "step": step + even(r, 0.01e-3)})
				}
			}
			text, err := json.Marshal(map[string]any{"couplingKind": "rigid", "pilot": "parted", "couplingDiameter": 0.102, "readings": gaps, "rimReadings": steps, "gapGauge": gauge, "rimGauge": "dial-indicator"})
			if err != nil {
				t.Fatal(err)
			}
			s := testboat.Run(t, "coupling-alignment", string(text), marinecalc.Options{})
			for result, truth := range map[string]float64{
				"gapVertical": k.gap * up, "gapHorizontal": k.gap * right, "gapDifference": k.gap, "runOut": k.runOut, "worstGap": k.gap + k.runOut,
				"offset": k.offset, "offsetVertical": k.offset * up, "rimRunOut": k.rimOut, "worstOffset": k.offset + k.rimOut/2,
			} {
				c.holds(s, result, truth)
			}
		}
		c.tell(k.results...)
	}
}

// Independent simulation: gaps and offsets are typed as they were read, the
// nuts are turned as the sheet says, and what then stands at the coupling is
// held by the intervals of what was foretold.
func TestMovesIntervalsCover(t *testing.T) {
	long(t)
	const d, fore, aft = 0.102, 0.85, 0.25
	for n, pitch := range []float64{1.5, 2, 2.5} {
		r := rand.New(rand.NewPCG(uint64(n), 77+coverageSeed))
		c := covered{t, fmt.Sprintf("nuts turned as printed, pitch %g mm", pitch), map[string]int{}}
		worst := 0.0
		for range coverageRuns {
			gapV, gapH := even(r, 0.3e-3), even(r, 0.3e-3)
			offV, offH := even(r, 0.5e-3), even(r, 0.5e-3)
			twoBlades := func() float64 { return even(r, 0.02e-3) - even(r, 0.02e-3) }
			twoDials := func() float64 { return (even(r, 0.01e-3) - even(r, 0.01e-3)) / 2 }
			s := testboat.Run(t, "mount-moves", fmt.Sprintf(`{"couplingDiameter": %g, "gapVertical": %g, "gapHorizontal": %g, "offsetVertical": %g, "offsetHorizontal": %g,
				"rimGauge": "dial-indicator", "mounts": [
				{"name": "a", "forward": 0.85, "starboard": -0.25, "threadPitch": "%g mm"}, {"name": "b", "forward": 0.85, "starboard": 0.25, "threadPitch": "%g mm"},
				{"name": "c", "forward": 0.25, "starboard": -0.25, "threadPitch": "%g mm"}, {"name": "d", "forward": 0.25, "starboard": 0.25, "threadPitch": "%g mm"}]}`,
				d, gapV+twoBlades(), gapH+twoBlades(), offV+twoDials(), offH+twoDials(), pitch, pitch, pitch, pitch), marinecalc.Options{})
			cell := func(row int, column string) float64 { return *s.Cell("moves", row, column).SI }
			up := func(row int) float64 { return cell(row, "turns") / (2 * math.Pi) * pitch * 1e-3 }
			slope, across := (up(0)-up(2))/(fore-aft), (cell(0, "shift")-cell(2, "shift"))/(fore-aft)
			leftV, leftH := gapV-d*slope, gapH-d*across
			highV, highH := offV+up(2)-slope*aft, offH+cell(2, "shift")-across*aft
			c.holds(s, "gapVerticalAfter", leftV)
			c.holds(s, "offsetVerticalAfter", highV)
			c.holds(s, "gapDifferenceAfter", math.Hypot(leftV, leftH))
			c.holds(s, "offsetAfter", math.Hypot(highV, highH))
			worst = max(worst, math.Hypot(highV, highH))
		}
		c.tell("gapVerticalAfter", "offsetVerticalAfter", "gapDifferenceAfter", "offsetAfter")
		t.Logf("%s: the offset ends at %.3f mm at most", c.name, 1e3*worst)
	}
}
