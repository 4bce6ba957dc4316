package flange

import (
	"math"
	"math/rand/v2"
	"testing"

	"example.org/driveline/marinecalc/internal/parttest"
	"example.org/driveline/marinecalc/quantity"
)

// dial is what a dial shows over one turn: 3600 readings of the sum of what stays
// with the shaft and what goes with the flange, highest less lowest, and where
// it is highest from the shaft's mark.
func dial(shaft, shaftAt, flange, flangeAt float64) (quantity.Length, quantity.Direction) {
	high, low, at := math.Inf(-1), math.Inf(1), 0.0
	for n := range 3600 {
		phi := 2 * math.Pi * float64(n) / 3600
		v := shaft/2*math.Cos(phi-shaftAt) + flange/2*math.Cos(phi-flangeAt)
		if v > high {
			high, at = v, phi
		}
		low = min(low, v)
	}
	return quantity.Length(high - low), quantity.Direction(at)
}

func TestRunOutAgainstADial(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 5))
	for range 40 {
		shaft, shaftAt := 1e-4*random.Float64(), 2*math.Pi*random.Float64()
		flange, flangeAt := 1e-4*random.Float64(), 2*math.Pi*random.Float64()
		teeth := 6 + random.IntN(30)
		moved := 1 + random.IntN(teeth-1)
		on := func(n int) (quantity.Length, quantity.Direction) {
			return dial(shaft, shaftAt, flange, flangeAt+2*math.Pi*float64(n)/float64(teeth))
		}
		in := RunOutInput{SplineTeeth: teeth, TeethMoved: moved, RimRunOut: quantity.Length(math.NaN()), RimAt: quantity.Direction(math.NaN()), RimRunOutMoved: quantity.Length(math.NaN()), RimAtMoved: quantity.Direction(math.NaN())}
		in.FaceRunOut, in.FaceAt = on(0)
		in.FaceRunOutMoved, in.FaceAtMoved = on(moved)
		out := parttest.Must(t, RunOut, in)
		// The dial stands in steps of a tenth of a degree.
		slack := 0.002 * (shaft + flange) / math.Abs(math.Sin(math.Pi*float64(moved)/float64(teeth)))
		parttest.Near(t, "with the flange", out.FaceWithFlange, flange, slack)
		parttest.Near(t, "with the shaft", out.FaceWithShaft, shaft, 2*slack)
		least := math.Inf(1)
		for n := range teeth {
			r, _ := on(n)
			least = min(least, float64(r))
		}
		found, _ := on(int(out.BestTeeth))
		parttest.Near(t, "least of all teeth", found, least, 3*slack)
		parttest.Near(t, "foretold", out.BestFaceRunOut, float64(found), 3*slack)
		switch share := flange / (flange + shaft); {
		case share > 0.72 && out.Cause != GoesWithFlange, share < 0.28 && out.Cause != StaysWithShaft, share > 0.32 && share < 0.68 && out.Cause != BothRunOut:
			t.Errorf("share %.2f: %s", share, out.Cause)
		}
	}
}

func TestRunOutOfOnePosition(t *testing.T) {
	nan := math.NaN()
	in := RunOutInput{FaceRunOut: 1e-4, FaceAt: 1, FaceRunOutMoved: quantity.Length(nan), FaceAtMoved: quantity.Direction(nan), RimRunOut: quantity.Length(nan), RimAt: quantity.Direction(nan),
		RimRunOutMoved: quantity.Length(nan), RimAtMoved: quantity.Direction(nan), FaceReadDiameter: 0.1}
	out := parttest.Must(t, RunOut, in)
	if out.Cause != OnePosition || !math.IsNaN(float64(out.FaceWithFlange)) || !math.IsNaN(float64(out.BestTeeth)) {
		t.Errorf("%+v", out)
	}
	parttest.Within(t, "per diameter", out.FacePerDiameter, 0.001, 1e-12)
	// Moved, but by how much nobody counted: nothing is told either.
	in.FaceRunOutMoved, in.FaceAtMoved = 5e-5, 2
	if out = parttest.Must(t, RunOut, in); out.Cause != OnePosition || out.FaceNow != 5e-5 {
		t.Errorf("%+v", out)
	}
	in.SplineTeeth, in.TeethMoved = 20, 7
	chosen := parttest.Must(t, RunOut, in).BestTeeth
	in.FaceAt = 4
	if other := parttest.Must(t, RunOut, in).BestTeeth; other == chosen {
		t.Fatal("the same tooth for another flange")
	}
	kept, err := RunOutOn(in, chosen)
	if err != nil || kept.BestTeeth != chosen {
		t.Errorf("tooth %v in place of %v: %v", kept.BestTeeth, chosen, err)
	}
	parttest.SameCodes(t, "flange-run-out", "cause", GoesWithFlange, StaysWithShaft, BothRunOut, OnePosition, RunsTrue, ShareNotTold)
	parttest.SameCodes(t, "flange-run-out", "rimCause", GoesWithFlange, StaysWithShaft, BothRunOut, OnePosition, RunsTrue, ShareNotTold)
	parttest.NoAllocations(t, func() { _, _ = RunOut(in) })
}

// even is a flange of which nothing but its face was read.
func even() RunOutInput {
	nan := math.NaN()
	return RunOutInput{RimRunOut: quantity.Length(nan), RimAt: quantity.Direction(nan), RimRunOutMoved: quantity.Length(nan), RimAtMoved: quantity.Direction(nan), SplineTeeth: 12, TeethMoved: 6}
}

// Turned by half a turn the flange's part changes its side (index balancing, as
// ISO 21940-14 has it, from memory): half the sum stays, half the difference
// goes along. The cause is one of the two from 0.7 of both.
func TestRunOutBlamesFromItsShare(t *testing.T) {
	for _, c := range []struct {
		flange, shaft float64
		cause         string
	}{{71, 29, GoesWithFlange}, {69, 31, BothRunOut}, {31, 69, BothRunOut}, {29, 71, StaysWithShaft}, {10, 0, GoesWithFlange}, {0, 10, StaysWithShaft}} {
		in := even()
		in.FaceRunOut, in.FaceAt = quantity.Length(1e-6*(c.shaft+c.flange)), 0
		in.FaceRunOutMoved = quantity.Length(1e-6 * math.Abs(c.shaft-c.flange))
		if c.shaft < c.flange {
			in.FaceAtMoved = math.Pi
		}
		in.FaceReadDiameter = 0.1
		out := parttest.Must(t, RunOut, in)
		parttest.Near(t, "flange", out.FaceWithFlange, 1e-6*c.flange, 1e-12)
		parttest.Near(t, "shaft", out.FaceWithShaft, 1e-6*c.shaft, 1e-12)
		parttest.Near(t, "share", out.FlangeShare, c.flange/(c.flange+c.shaft), 1e-9)
		parttest.Near(t, "best for its diameter", out.BestPerDiameter, 1e-5*math.Abs(c.shaft-c.flange), 1e-10)
		if out.Cause != c.cause {
			t.Errorf("%g to %g: %s", c.flange, c.shaft, out.Cause)
		}
	}
}

// Face and rim have causes of their own. With the dial off by 5 µm (95 %: 10) and
// directions by a quarter of an hour of the clock face, what is less than that runs true and
// is not moved; a share that readings so far off leave open is not told.
func TestRunOutBlamesFaceAndRimEach(t *testing.T) {
	in := even()
	in.FaceRunOut, in.FaceAt, in.FaceRunOutMoved, in.FaceAtMoved = 100e-6, 0, 100e-6, math.Pi
	in.RimRunOut, in.RimAt, in.RimRunOutMoved, in.RimAtMoved = 100e-6, 0, 100e-6, 0
	in.FaceSpread, in.RimSpread, in.FaceAtSpread, in.RimAtSpread = 5e-6, 5e-6, 0.13, 0.13
	if out := parttest.Must(t, RunOut, in); out.Cause != GoesWithFlange || out.RimCause != StaysWithShaft {
		t.Errorf("face %s, rim %s", out.Cause, out.RimCause)
	}
	in.FaceRunOut, in.FaceRunOutMoved = 9e-6, 9e-6
	if out := parttest.Must(t, RunOut, in); out.Cause != RunsTrue || out.RimCause != StaysWithShaft || out.BestTeeth != 0 {
		t.Errorf("face %s, rim %s, tooth %g", out.Cause, out.RimCause, out.BestTeeth)
	}
	in.RimRunOut, in.RimRunOutMoved = 0, 0
	if out := parttest.Must(t, RunOut, in); out.Cause != RunsTrue || out.RimCause != RunsTrue || !math.IsNaN(float64(out.BestTeeth)) {
		t.Errorf("face %s, rim %s, tooth %g", out.Cause, out.RimCause, out.BestTeeth)
	}
	in.FaceRunOut, in.FaceRunOutMoved = 11e-6, 11e-6 // a little past what the dial tells from nothing
	if out := parttest.Must(t, RunOut, in); out.Cause != ShareNotTold {
		t.Errorf("11 µm by a dial good for 10: %s", out.Cause)
	}
	in.RimRunOut, in.RimRunOutMoved = quantity.Length(math.NaN()), quantity.Length(math.NaN())
	if out := parttest.Must(t, RunOut, in); out.RimCause != "" {
		t.Errorf("the rim, which was not read: %s", out.RimCause)
	}
}

// Of 2000 simulated flanges whose readings scatter as their gauges do, hardly one
// is blamed on the part that has the less of it: the readings are the vectors'
// sum with normal errors, made here and not by RunOut.
func TestRunOutSeldomBlamesTheWrongPart(t *testing.T) {
	random := rand.New(rand.NewPCG(11, 13))
	blamed, wrong := 0, 0
	for range 2000 {
		in := even()
		in.FaceSpread, in.FaceAtSpread = 4e-6, 0.15
		shaft, flange := 60e-6*random.Float64(), 60e-6*random.Float64()
		at := 2 * math.Pi * random.Float64()
		read := func(turned float64) (quantity.Length, quantity.Direction) {
			x, y := shaft+flange*math.Cos(at+turned), flange*math.Sin(at+turned)
			r := max(0, math.Hypot(x, y)+4e-6*random.NormFloat64())
			return quantity.Length(r), quantity.Direction(math.Mod(math.Atan2(y, x)+0.15*random.NormFloat64()+4*math.Pi, 2*math.Pi))
		}
		in.SplineTeeth, in.TeethMoved = 18, 6
		in.FaceRunOut, in.FaceAt = read(0)
		in.FaceRunOutMoved, in.FaceAtMoved = read(2 * math.Pi / 3)
		switch parttest.Must(t, RunOut, in).Cause {
		case GoesWithFlange:
			blamed++
			if flange < shaft {
				wrong++
			}
		case StaysWithShaft:
			blamed++
			if shaft < flange {
				wrong++
			}
		}
	}
	if blamed < 500 || wrong > blamed/40 {
		t.Errorf("%d blamed, %d of them wrongly; 2.5 %% may be", blamed, wrong)
	}
}

// A flange that already runs out least stays on its tooth; one tooth that was
// chosen, the first among them, is kept; of alike teeth the nearest is taken.
func TestTeethOfRunOut(t *testing.T) {
	in := even()
	in.FaceRunOut, in.FaceAt, in.FaceRunOutMoved, in.FaceAtMoved = 10e-6, 0, 90e-6, 0 // 50 stay, 40 stand against them
	out := parttest.Must(t, RunOut, in)
	if out.BestTeeth != 0 {
		t.Errorf("moved on by %g teeth for nothing", out.BestTeeth)
	}
	in.FaceRunOut, in.FaceRunOutMoved = 90e-6, 10e-6
	if out, err := RunOutOn(in, 0); err != nil || out.BestTeeth != 0 {
		t.Errorf("a chosen tooth of 0 became %g: %v", out.BestTeeth, err)
	}
	in.FaceRunOut, in.FaceRunOutMoved = 0, 0
	if out = parttest.Must(t, RunOut, in); !math.IsNaN(float64(out.BestTeeth)) || out.Cause != RunsTrue {
		t.Errorf("a true flange is moved on by %g teeth", out.BestTeeth)
	}
	// Two teeth are a spline of half turns; one tooth, a key, tells nothing.
	in = even()
	in.FaceRunOut, in.FaceRunOutMoved, in.SplineTeeth, in.TeethMoved = 90e-6, 10e-6, 2, 1
	out = parttest.Must(t, RunOut, in)
	parttest.Near(t, "with the flange", out.FaceWithFlange, 40e-6, 1e-12)
	parttest.Near(t, "moved", out.Moved, math.Pi, 1e-12)
	for _, c := range [][2]int{{1, 1}, {0, 3}, {12, 0}} {
		in.SplineTeeth, in.TeethMoved = c[0], c[1]
		if out = parttest.Must(t, RunOut, in); !math.IsNaN(float64(out.Moved)) || out.Cause != OnePosition {
			t.Errorf("%d teeth, moved by %d: %g, %s", c[0], c[1], out.Moved, out.Cause)
		}
	}
	in.SplineTeeth, in.TeethMoved = 2, 2
	_, err := RunOut(in)
	parttest.RefusedAt(t, err, "/teethMoved")
	in.SplineTeeth, in.TeethMoved = 3, 1
	parttest.Must(t, RunOut, in)
}

// A part of 8 in 10 or 2 in 10 is the cause where the readings tell it from a half, and
// both are where an even share is told from none and from all.
func TestWhatReadingsMayBeOffAgainstTheShare(t *testing.T) {
	for _, c := range []struct {
		share, unsure float64
		want          string
	}{
		{0.8, 0.29, GoesWithFlange}, {0.8, 0.31, ShareNotTold}, {0.2, 0.29, StaysWithShaft}, {0.2, 0.31, ShareNotTold}, {0.2, 0.33, ShareNotTold},
		{0.5, 0.49, BothRunOut}, {0.5, 0.51, ShareNotTold}, {0.4, 0.39, BothRunOut}, {0.4, 0.41, ShareNotTold}, {0.6, 0.39, BothRunOut}, {0.6, 0.41, ShareNotTold},
	} {
		p := parts{complex(c.share*1e-4, 0), complex((1-c.share)*1e-4, 0)}
		const chord = 2 // half a turn
		dial := c.unsure * 1e-4 * 1e-4 * chord / (1.96 * math.Sqrt2 * math.Hypot(c.share*1e-4, (1-c.share)*1e-4))
		if got, share := p.blame(reach{dial, 0, chord}, 1); got != c.want || math.Abs(float64(share)-c.share) > 1e-12 {
			t.Errorf("%g ± %g: %s, %g", c.share, c.unsure, got, share)
		}
	}
	if got, _ := (parts{}).blame(reach{0, 0, 2}, 1); got != RunsTrue {
		t.Errorf("nothing runs out: %s", got)
	}
}
