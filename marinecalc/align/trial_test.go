package align

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"gonum.org/v1/gonum/stat/distuv"

	"example.org/driveline/marinecalc/internal/parttest"
	"example.org/driveline/marinecalc/quantity"
)

// ends are the ends of the 95 % interval that trials give for a size.
func ends(r *rand.Rand, found vector, noise float64, sizes []float64) (low, high float64) {
	for i := range sizes {
		sizes[i] = about(found, vector{found.up + noise*r.NormFloat64(), found.right + noise*r.NormFloat64()})
	}
	slices.Sort(sizes)
	n := len(sizes)
	return sizes[n*25/1000], sizes[n-1-n*25/1000]
}

// Independent simulation: a size is found with normal noise, and the interval
// holds the true one as often as it says, at zero too.
func TestIntervalsOfSizesCover(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 8))
	sizes := make([]float64, 800)
	for _, truth := range []float64{0, 0.5, 1, 1.5, 2, 3, 5, 20} {
		const runs = 2000
		hit := 0
		for range runs {
			low, high := ends(r, vector{r.NormFloat64(), truth + r.NormFloat64()}, 1, sizes)
			if low <= truth && truth <= high {
				hit++
			}
		}
		if part := float64(hit) / runs; part < 0.935 || part > 0.985 {
			t.Errorf("a size of %g times the noise is held by %.1f %% of the intervals", truth, 100*part)
		} else {
			t.Logf("%g: %.1f %%", truth, 100*part)
		}
	}
}

// More noise makes no size surer to lie on its side of a limit: what lay past
// it at one noise lies past it at more, draw by draw.
func TestMoreNoiseIsNeverSurer(t *testing.T) {
	r := rand.New(rand.NewPCG(2, 6))
	for range 20000 {
		found := vector{r.Float64() * 2, r.Float64() * 2}
		limit := 2 * r.Float64()
		up, right := r.NormFloat64(), r.NormFloat64()
		more := 1 + 2*r.Float64()
		near := about(found, vector{found.up + up, found.right + right})
		far := about(found, vector{found.up + more*up, found.right + more*right})
		if meets := found.size() <= limit; meets && near > limit && far <= limit || !meets && near <= limit && far > limit {
			t.Fatalf("%+v, limit %g: %g, and with %g times the noise %g", found, limit, near, more, far)
		}
	}
}

// A trial with the readings as they are is what was found of them.
func TestTrialWithoutNoise(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 7))
	for n := range 100 {
		turns := round(1 + n%4)
		in := faces(anyTruth(r).read(round(4+n%5), turns))
		for _, s := range anyTruth(r).read(round(4), turns) {
			in.RimReadings = append(in.RimReadings, RimReading{Clock: s.Clock, Turn: s.Turn, Step: s.Gap - 0.001})
		}
		for i := range in.Readings {
			in.Readings[i].Gap += quantity.Length(r.NormFloat64() * 3e-5)
			in.Readings[i].GapUncertainty = 1e-5
		}
		in.KnownFaceRunOut, in.KnownRimRunOut = 2e-5, 3e-5
		best := solved(t, in)
		again, err := Trial(in, &best)
		if err != nil {
			t.Fatal(err)
		}
		for name, pair := range map[string][2]quantity.Length{
			"gap difference": {best.GapDifference, again.GapDifference}, "offset": {best.Offset, again.Offset},
			"run-out": {best.RunOut, again.RunOut}, "rim run-out": {best.RimRunOut, again.RimRunOut},
			"worst gap": {best.WorstGap, again.WorstGap}, "worst offset": {best.WorstOffset, again.WorstOffset},
			"closure": {best.Closure, again.Closure}, "mean": {best.MeanGap, again.MeanGap},
		} {
			if a, b := float64(pair[0]), float64(pair[1]); !(math.Abs(a-b) < 1e-12) && !(math.IsNaN(a) && math.IsNaN(b)) {
				t.Errorf("%s: %g, on trial %g", name, a, b)
			}
		}
	}
}

// Readings that scatter twice as much as their gauge explains move the trials
// twice as far.
func TestScatterWidensTheTrials(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 1))
	in := faces(truth{1e-3, vector{3e-4, 1e-4}, vector{}}.read(round(8), round(4)))
	for i := range in.Readings {
		in.Readings[i].Gap += quantity.Length(r.NormFloat64() * 4e-5)
		in.Readings[i].GapUncertainty = 2e-5
	}
	best := solved(t, in)
	wide := float64(best.ScatterRatio)
	if wide < 1.6 || wide > 2.4 || best.ScatterChance > 1e-4 {
		t.Fatalf("scatter %g times the gauge's, chance %g", wide, best.ScatterChance)
	}
	sure := in
	sure.Readings = slices.Clone(in.Readings)
	for i := range sure.Readings {
		sure.Readings[i].GapUncertainty = 8e-5
	}
	coarse := solved(t, sure)
	if coarse.ScatterRatio > 0.7 || coarse.ScatterChance < 0.9 {
		t.Fatalf("a coarse gauge: scatter %g, chance %g", coarse.ScatterRatio, coarse.ScatterChance)
	}
	moved := in
	moved.Readings = slices.Clone(in.Readings)
	moved.Readings[0].Gap += 1e-4
	a, _ := Trial(moved, &best)
	b, _ := Trial(moved, &coarse)
	for _, n := range []int{8*4 - 4 - 4, 8, 10, 40} {
		if want := (distuv.StudentsT{Sigma: 1, Nu: float64(n)}).Quantile(0.975) / 1.959964; math.Abs(student(n)-want) > 0.003 {
			t.Errorf("Student, %d readings to spare: %g, want %g", n, student(n), want)
		}
	}
	wide *= student(8*4 - 4 - 4)
	parttest.Near(t, "vertical", a.GapVertical-best.GapVertical, wide*float64(b.GapVertical-best.GapVertical), 1e-12)
	parttest.Near(t, "horizontal", a.GapHorizontal-best.GapHorizontal, wide*float64(b.GapHorizontal-best.GapHorizontal), 1e-12)
}

func BenchmarkTrial(b *testing.B) {
	c := truth{1e-3, vector{1e-4, 5e-5}, vector{2e-5, 1e-5}}
	for name, turns := range map[string][]float64{"one turn": {0}, "four turns": round(4)} {
		b.Run(name, func(b *testing.B) {
			in := faces(c.read(round(4), turns))
			best, err := Coupling(in)
			if err != nil {
				b.Fatal(err)
			}
			trials := Trials{Best: &best}
			b.ReportAllocs()
			for b.Loop() {
				if _, err := trials.Run(in); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

// What a vector may truly be does not hang on which way it points: turned
// together, found and trial give the same size. Along the vector itself, by
// hand: 0.3 found and 0.4 tried is 0.1 outward, 0.4; 0.2 tried is 0.1 inward,
// so that 0.2 would have been found as it was.
func TestAboutHasNoPreferredWay(t *testing.T) {
	for clock := 0.0; clock < 6.2; clock += 0.3 {
		found := along(0.3, clock)
		parttest.Near(t, "outward", about(found, along(0.4, clock)), 0.4, 1e-12)
		parttest.Near(t, "inward", about(found, along(0.2, clock)), 0.2, 1e-12)
		parttest.Near(t, "nothing found, upward", about(vector{}, vector{0.2, 0}), 0.2, 1e-12)
		parttest.Near(t, "askew", about(found, along(0.25, clock+0.4)), about(along(0.3, 0), along(0.25, 0.4)), 1e-12)
	}
}

// Of dials whose readings stay, a trial in which only the bar's sag and the standing
// flange are otherwise finds what Dial finds with those.
func TestTrialOfDialsFollowsWhatIsTakenOff(t *testing.T) {
	in := zeroed(0.001, 0.0001)
	in.DialRadius, in.RimReadAft, in.Swept = 0.04, 0.03, CarrierTurned
	in.BarSagRim, in.BarSagFace, in.StandingFaceUp, in.StandingFaceStarboard, in.StandingRimUp, in.StandingRimStarboard = -4e-5, -1e-5, 1e-5, 2e-5, 3e-5, 4e-5
	var trials DialTrials
	if _, err := trials.Run(in); err != nil {
		t.Fatal(err)
	}
	in.BarSagRim, in.BarSagFace, in.StandingFaceUp, in.StandingFaceStarboard, in.StandingRimUp, in.StandingRimStarboard = -6e-5, -2e-5, 2e-5, 5e-5, 1e-5, 9e-5
	trial, err := trials.Run(in)
	if err != nil {
		t.Fatal(err)
	}
	whole := parttest.Must(t, Dial, in)
	for name, pair := range map[string][2]quantity.Length{"gap up": {trial.GapVertical, whole.GapVertical}, "gap to starboard": {trial.GapHorizontal, whole.GapHorizontal}, "gap": {trial.GapDifference, whole.GapDifference},
		"offset up": {trial.OffsetVertical, whole.OffsetVertical}, "offset to starboard": {trial.OffsetHorizontal, whole.OffsetHorizontal}, "offset": {trial.Offset, whole.Offset}} {
		parttest.Near(t, name, pair[0], float64(pair[1]), 1e-12)
	}
}

// Flat faces without scatter: a trial is the coupling that its readings are, where its
// run-outs point as well. One that cannot be is refused.
func TestTrialOfAnotherCoupling(t *testing.T) {
	read := func(c, rim truth) CouplingInput {
		in := faces(c.read(round(4), round(3)))
		for _, s := range rim.read(round(4), round(3)) {
			in.RimReadings = append(in.RimReadings, RimReading{Clock: s.Clock, Turn: s.Turn, Step: s.Gap})
		}
		return in
	}
	best := solved(t, read(truth{1e-3, vector{1e-4, 2e-4}, vector{5e-5, 3e-5}}, truth{0, vector{2e-4, -1e-4}, vector{-3e-5, 4e-5}}))
	other := read(truth{1.1e-3, vector{-2e-4, 1e-4}, vector{4e-5, 3e-5}}, truth{0, vector{1e-4, 3e-4}, vector{-2.5e-5, 3e-5}})
	trial, err := Trial(other, &best)
	if err != nil {
		t.Fatal(err)
	}
	whole := solved(t, other)
	for name, pair := range map[string][2]float64{"gap up": {float64(trial.GapVertical), float64(whole.GapVertical)}, "gap to starboard": {float64(trial.GapHorizontal), float64(whole.GapHorizontal)},
		"offset up": {float64(trial.OffsetVertical), float64(whole.OffsetVertical)}, "offset to starboard": {float64(trial.OffsetHorizontal), float64(whole.OffsetHorizontal)},
		"run-out points": {float64(trial.RunOutAt), float64(whole.RunOutAt)}, "rim's run-out points": {float64(trial.RimRunOutAt), float64(whole.RimRunOutAt)},
		// Sizes lie about what was found, which a trial without an error of its own leaves where it is.
		"run-out": {float64(trial.RunOut), 2 * about(vector{5e-5, 3e-5}, vector{4e-5, 3e-5})}, "rim's run-out": {float64(trial.RimRunOut), 2 * about(vector{-3e-5, 4e-5}, vector{-2.5e-5, 3e-5})}} {
		parttest.Near(t, name, pair[0], pair[1], 1e-9)
	}
	other.Readings[0].Gap = 0.06
	_, err = Trial(other, &best)
	parttest.RefusedAt(t, err, "/readings/0/gap")
}
