package align

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/mat"

	"example.org/driveline/marinecalc/internal/parttest"
	"example.org/driveline/marinecalc/quantity"
)

const inch = 0.0254

func solved(t *testing.T, in CouplingInput) CouplingResult {
	t.Helper()
	return parttest.Must(t, Coupling, in)
}

// truth is a coupling whose misalignment and run-out are known.
type truth struct {
	mean           float64
	fixed, turning vector
}

func (c truth) at(clock, turn float64) float64 {
	return c.mean + c.fixed.at(clock) + c.turning.at(clock-turn)
}

// read reads a coupling at every clock position in every shaft turn.
func (c truth) read(clocks, turns []float64) []Reading {
	var out []Reading
	for _, turn := range turns {
		for _, clock := range clocks {
			out = append(out, Reading{Clock: quantity.Direction(clock), Turn: quantity.Angle(turn), Gap: quantity.Length(c.at(clock, turn))})
		}
	}
	return out
}

func round(n int) []float64 {
	out := make([]float64, n)
	for i := range out {
		out[i] = 2 * math.Pi * float64(i) / float64(n)
	}
	return out
}

func anyTruth(r *rand.Rand) truth {
	part := func() float64 { return (r.Float64() - 0.5) * 0.6e-3 }
	return truth{1e-3 + r.Float64()*1e-3, vector{part(), part()}, vector{part(), part()}}
}

func faces(readings []Reading) CouplingInput {
	return CouplingInput{Readings: readings, CouplingDiameter: 0.1, CouplingKind: Rigid}
}

// Source: Bloch and Geitner, Machinery Component Maintenance and Repair, pp.
// 198-199, fig. 5-17 (4 in, 9 in and 39 in inferred from the printed
// products): bottom face gap wide by 0.007 in, movable shaft 0.0055 in high,
// rim reading 0.011 in; inboard -0.0212 in, outboard -0.0738 in.
func TestFaceAndRimBlochGeitner(t *testing.T) {
	in := CouplingInput{CouplingDiameter: 4 * inch, CouplingKind: Flexible}
	for i, gap := range []float64{0.020, 0.0235, 0.027, 0.0235} { // 12, 3, 6, 9 o'clock
		in.Readings = append(in.Readings, Reading{Clock: quantity.Direction(i) * math.Pi / 2, Gap: quantity.Length(gap * inch)})
	}
	for i, step := range []float64{0.011, 0.0055, 0, 0.0055} { // dial zeroed at the bottom
		in.RimReadings = append(in.RimReadings, RimReading{Clock: quantity.Direction(i) * math.Pi / 2, Step: quantity.Length(step * inch)})
	}
	m := solved(t, in)
	parttest.Near(t, "gap vertical", m.GapVertical, -0.007*inch, 1e-12)
	parttest.Near(t, "offset", m.OffsetVertical, 0.0055*inch, 1e-12)
	feet := func(from float64) float64 {
		return (float64(m.GapVertical)/float64(in.CouplingDiameter)*from*inch - float64(m.OffsetVertical)) / inch
	}
	parttest.Near(t, "inboard feet", feet(9), -0.0212, 0.00006)
	parttest.Near(t, "outboard feet", feet(39), -0.0738, 0.00006)
	if m.Widest != "6" || m.OffsetTowards != "12" {
		t.Errorf("widest %q, offset towards %q", m.Widest, m.OffsetTowards)
	}
}

// Source: Bloch and Geitner; McMillan, Rotating Machinery: Practical Solutions
// to Unbalance and Misalignment, p. 173: the offset is half the rim reading,
// wherever the dial was zeroed and whichever way the offset points.
func TestOffsetIsHalfTheRimReading(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 6))
	for range 60 {
		c := anyTruth(r)
		in := faces(anyTruth(r).read(round(4), []float64{0}))
		highest, lowest := math.Inf(-1), math.Inf(1)
		c.turning = vector{}
		for _, clock := range round(72) {
			step := c.at(clock, 0)
			highest, lowest = max(highest, step), min(lowest, step)
			in.RimReadings = append(in.RimReadings, RimReading{Clock: quantity.Direction(clock), Step: quantity.Length(step)})
		}
		parttest.Near(t, "offset", solved(t, in).Offset, (highest-lowest)/2, 0.0025*(highest-lowest)/2) // 72 places find the extremes to cos 2.5°
	}
}

// Source: two operator manuals of marine diesel makers, same wording: a 3 in
// coupling, 0.003 in; a thousandth for each inch of diameter.
func TestGapPerDiameterRule(t *testing.T) {
	c := truth{mean: 0.02 * inch, fixed: vector{0.0015 * inch, 0}}
	in := faces(c.read(round(4), []float64{0}))
	in.CouplingDiameter, in.GapAllowance = 3*inch, 0.001
	m := solved(t, in)
	parttest.Near(t, "gap difference", m.GapDifference, 0.003*inch, 1e-12)
	parttest.Near(t, "gap allowed", m.GapAllowed, 0.003*inch, 1e-12)
	parttest.Near(t, "gap for the diameter", m.GapPerDiameter, 0.001, 1e-9)
	parttest.Near(t, "angle", m.Angle, math.Atan(0.001), 1e-9)
	in.CouplingKind = Flexible
	in.GapAllowance = 0 // the rule is one for rigid flanges; the rule data gives it to those alone
	if m := solved(t, in); !math.IsNaN(float64(m.GapAllowed)) {
		t.Errorf("a gap difference of %v is allowed that nobody gave", m.GapAllowed)
	}
}

// Readings made from a known coupling give it back, run-out told apart, for
// quarter and half turns, three places or more, even and uneven.
func TestCouplingGivesBackTheTruth(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 8))
	quarter := math.Pi / 2
	for _, turns := range [][]float64{{0, quarter}, {0, 2 * quarter}, {0, quarter, 2 * quarter, 3 * quarter}, {0.3, 2.1, 4}} {
		for _, clocks := range [][]float64{round(3), {0, quarter, 3 * quarter}, {quarter, 2 * quarter, 3 * quarter}, round(4), round(8), round(12), {0.1, 1.2, 3.3, 4.1, 5.9}} {
			for range 50 {
				c := anyTruth(r)
				in := faces(c.read(clocks, turns))
				for _, s := range c.read(clocks, turns) {
					in.RimReadings = append(in.RimReadings, RimReading{Clock: s.Clock, Turn: s.Turn, Step: s.Gap - 0.0012})
				}
				m := solved(t, in)
				parttest.Near(t, "gap vertical", m.GapVertical, 2*c.fixed.up, 1e-11)
				parttest.Near(t, "gap horizontal", m.GapHorizontal, 2*c.fixed.right, 1e-11)
				parttest.Near(t, "run-out", m.RunOut, 2*c.turning.size(), 1e-11)
				parttest.Near(t, "run-out at", apart(float64(m.RunOutAt), c.turning.clock()), 0, 1e-7)
				parttest.Near(t, "mean gap", m.MeanGap, c.mean, 1e-11)
				if len(clocks) > 3 || len(turns) > 2 { // else none is to spare
					parttest.Near(t, "worst residual", m.WorstResidual, 0, 1e-11)
				}
				parttest.Near(t, "offset up", m.OffsetVertical, c.fixed.up, 1e-11)
				parttest.Near(t, "offset right", m.OffsetHorizontal, c.fixed.right, 1e-11)
				parttest.Near(t, "rim run-out", m.RimRunOut, 2*c.turning.size(), 1e-11)
				parttest.Near(t, "radius difference", m.RadiusDifference, c.mean-0.0012, 1e-11)
				parttest.Near(t, "gap where widest", GapAt(m, m.WidestAt), c.mean+float64(m.GapDifference)/2, 1e-11)
				parttest.Near(t, "offset at", apart(float64(m.OffsetAt), c.fixed.clock()), 0, 1e-7)
				if m.Separation != ShaftFlangeTold {
					t.Fatalf("%q", m.Separation)
				}
				for _, clock := range round(7) {
					parttest.Near(t, "gap at", GapAt(m, quantity.Direction(clock)), c.mean+c.fixed.at(clock), 1e-11)
				}
			}
		}
	}
}

// A shaft that slides along between turns changes nothing but the mean gap.
func TestCouplingShaftMaySlide(t *testing.T) {
	c := truth{1e-3, vector{1e-4, -2e-4}, vector{5e-5, 3e-5}}
	readings := c.read(round(4), []float64{0, math.Pi / 2})
	for i := range readings[4:] {
		readings[4+i].Gap += 0.4e-3
	}
	m := solved(t, faces(readings))
	parttest.Near(t, "gap vertical", m.GapVertical, 2e-4, 1e-12)
	parttest.Near(t, "run-out", m.RunOut, 2*c.turning.size(), 1e-12)
	parttest.Near(t, "mean gap of the first turn", m.MeanGap, 1e-3, 1e-12)
}

// Without a turn, run-out is inside the misalignment, and the result says so.
func TestCouplingNotTurned(t *testing.T) {
	c := truth{1e-3, vector{1e-4, 0}, vector{5e-5, 0}}
	m := solved(t, faces(c.read(round(4), []float64{0})))
	parttest.Near(t, "gap vertical", m.GapVertical, 2*1.5e-4, 1e-12)
	if !math.IsNaN(float64(m.RunOut)) || !math.IsNaN(float64(m.RunOutAt)) || m.Separation != NotTurned {
		t.Errorf("run-out %g at %g, %q", m.RunOut, m.RunOutAt, m.Separation)
	}
	for _, v := range []float64{float64(m.Offset), float64(m.OffsetVertical), float64(m.OffsetHorizontal), float64(m.OffsetAt), float64(m.RadiusDifference), float64(m.RimRunOut)} {
		if !math.IsNaN(v) {
			t.Errorf("an offset of %g without a rim reading", v)
		}
	}
}

func TestCouplingSeparation(t *testing.T) {
	c := truth{1e-3, vector{1e-4, 0}, vector{5e-5, 0}}
	for _, k := range []struct {
		turn   float64
		turned Turned
		want   string
	}{
		{20, "", TurnedTooLittle}, {90, "", ShaftFlangeTold}, {90, ShaftFlange, ShaftFlangeTold}, {90, BothFlanges, BothFlangesTold}, {180, BothFlanges, BothFlangesTold}, {45, "", ShaftFlangeTold},
	} {
		in := faces(c.read(round(4), []float64{0, k.turn * math.Pi / 180}))
		in.Turned = k.turned
		m := solved(t, in)
		if m.Separation != k.want || math.IsNaN(float64(m.RunOut)) != (k.want == TurnedTooLittle) {
			t.Errorf("%g° %q: %q, run-out %g", k.turn, k.turned, m.Separation, m.RunOut)
		}
	}
}

// Properties: turning every clock position turns the answer; mirrored
// readings mirror it; thicker blades all round change nothing but the mean;
// doubled gaps double it; the order of the readings does not matter.
func TestCouplingProperties(t *testing.T) {
	r := rand.New(rand.NewPCG(21, 3))
	for range 500 {
		readings := anyTruth(r).read(round(8), []float64{0, math.Pi / 2})
		for i := range readings {
			readings[i].Gap += quantity.Length((r.Float64() - 0.5) * 4e-5) // feelers err
		}
		base := solved(t, faces(readings))
		alike := func(what string, m CouplingResult, turn, times float64) {
			t.Helper()
			parttest.Near(t, what+": gap difference", m.GapDifference, times*float64(base.GapDifference), 1e-11)
			parttest.Near(t, what+": widest", apart(float64(m.WidestAt), float64(base.WidestAt)+turn), 0, 1e-6)
			parttest.Near(t, what+": run-out", m.RunOut, times*float64(base.RunOut), 1e-11)
			parttest.Near(t, what+": run-out at", apart(float64(m.RunOutAt), float64(base.RunOutAt)+turn), 0, 1e-6)
			parttest.Near(t, what+": scatter", m.FitScatter, times*float64(base.FitScatter), 1e-11)
			parttest.Near(t, what+": worst", m.WorstResidual, times*float64(base.WorstResidual), 1e-11)
			parttest.Near(t, what+": closure", m.Closure, times*float64(base.Closure), 1e-11)
		}
		change := func(f func(Reading) Reading) CouplingResult {
			out := make([]Reading, len(readings))
			for i, one := range readings {
				out[i] = f(one)
			}
			return solved(t, faces(out))
		}
		by := 2 * math.Pi * r.Float64()
		alike("turned", change(func(x Reading) Reading {
			x.Clock = quantity.Direction(turnOf(float64(x.Clock) + by))
			return x
		}), by, 1)
		alike("thicker", change(func(x Reading) Reading { x.Gap += 5e-4; return x }), 0, 1)
		alike("doubled", change(func(x Reading) Reading { x.Gap *= 2; return x }), 0, 2)
		mirrored := change(func(x Reading) Reading {
			x.Clock, x.Turn = quantity.Direction(turnOf(-float64(x.Clock))), quantity.Angle(turnOf(-float64(x.Turn)))
			return x
		})
		parttest.Near(t, "mirrored vertical", mirrored.GapVertical, float64(base.GapVertical), 1e-11)
		parttest.Near(t, "mirrored horizontal", mirrored.GapHorizontal, -float64(base.GapHorizontal), 1e-11)
		parttest.Near(t, "mirrored run-out", apart(float64(mirrored.RunOutAt), -float64(base.RunOutAt)), 0, 1e-6)
		r.Shuffle(len(readings), func(i, j int) { readings[i], readings[j] = readings[j], readings[i] })
		shuffled := solved(t, faces(readings))
		parttest.Near(t, "shuffled", shuffled.GapDifference, float64(base.GapDifference), 1e-11)
		parttest.Near(t, "shuffled run-out", shuffled.RunOut, float64(base.RunOut), 1e-11)
	}
}

// The answer is that of gonum's least squares on the whole design matrix,
// with a mean for each shaft turn, for readings that no flat face fits.
func TestFitAgainstGonum(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 9))
	for n := range 300 {
		turns := []float64{0, math.Pi / 2, 3}[:1+n%3]
		clocks := round(4 + r.IntN(6))
		readings := anyTruth(r).read(clocks, turns)
		for i := range readings {
			readings[i].Gap += quantity.Length(r.NormFloat64() * 5e-5)
			readings[i].Clock += quantity.Direction(0.1 * r.Float64())
		}
		unknowns := 2
		if len(turns) > 1 {
			unknowns = 4
		}
		design := mat.NewDense(len(readings), unknowns+len(turns), nil)
		right := mat.NewVecDense(len(readings), nil)
		for i, one := range readings {
			clock, turn := float64(one.Clock), float64(one.Turn)
			row := []float64{math.Cos(clock), math.Sin(clock), math.Cos(clock - turn), math.Sin(clock - turn)}[:unknowns]
			for c, v := range row {
				design.Set(i, c, v)
			}
			design.Set(i, unknowns+i/len(clocks), 1)
			right.SetVec(i, float64(one.Gap))
		}
		var want mat.VecDense
		if err := want.SolveVec(design, right); err != nil {
			t.Fatal(err)
		}
		var fitted, left mat.VecDense
		fitted.MulVec(design, &want)
		left.SubVec(right, &fitted)

		in := faces(readings)
		m := solved(t, in)
		parttest.Near(t, "gap vertical", m.GapVertical, 2*want.AtVec(0), 1e-12)
		parttest.Near(t, "gap horizontal", m.GapHorizontal, 2*want.AtVec(1), 1e-12)
		parttest.Near(t, "mean", m.MeanGap, want.AtVec(unknowns), 1e-12)
		parttest.Near(t, "worst", m.WorstResidual, mat.Norm(&left, math.Inf(1)), 1e-12)
		if spare := len(readings) - unknowns - len(turns); spare > 0 {
			parttest.Near(t, "scatter", m.FitScatter, mat.Norm(&left, 2)/math.Sqrt(float64(spare)), 1e-12)
		} else if !math.IsNaN(float64(m.FitScatter)) {
			t.Errorf("scatter %g with no reading to spare", m.FitScatter)
		}
		if unknowns == 4 {
			parttest.Near(t, "run-out", m.RunOut, 2*math.Hypot(want.AtVec(2), want.AtVec(3)), 1e-12)
		}
	}
}

// A slip of 0.2 mm at 3 o'clock: the sums of opposite gaps disagree by all of
// it; with eight places the reading is named, with four none stands out.
func TestCouplingSlipIsFound(t *testing.T) {
	c := truth{mean: 1e-3, fixed: vector{1e-4, 5e-5}}
	for _, k := range []struct {
		places, slip int
		worst        string
	}{{4, 1, AllAlike}, {8, 2, "3"}, {12, 3, "3"}} {
		readings := c.read(round(k.places), []float64{0})
		readings[k.slip].Gap += 2e-4
		m := solved(t, faces(readings))
		parttest.Near(t, "closure", m.Closure, 2e-4, 1e-12)
		if m.Worst != k.worst || math.IsNaN(float64(m.WorstAt)) != (k.worst == AllAlike) {
			t.Errorf("%d places: worst %q at %g", k.places, m.Worst, m.WorstAt)
		}
	}
	m := solved(t, faces(c.read([]float64{0, 1.5, 3, 4.6, 5.3}, []float64{0})))
	if !math.IsNaN(float64(m.Closure)) || m.Worst != "" || m.WorstResidual != 0 {
		t.Errorf("no opposite pairs, no slip: closure %g, worst %q %g", m.Closure, m.Worst, m.WorstResidual)
	}
}

// Equal gaps all round point nowhere.
func TestCouplingTrue(t *testing.T) {
	m := solved(t, faces(truth{mean: 5e-4}.read(round(4), []float64{0, math.Pi})))
	if m.GapDifference != 0 || m.Widest != "" || m.WidestAt != 0 || m.RunOut != 0 || m.Closure != 0 {
		t.Errorf("%+v", m)
	}
}

func TestHours(t *testing.T) {
	for degrees, want := range map[float64]string{
		0: "12", 14: "12", 16: "1", 60: "2", 90: "3",
		180: "6", 270: "9", 344: "11", 346: "12", 360: "12",
	} {
		if got := hours[hourOf(degrees*math.Pi/180)]; got != want {
			t.Errorf("%g°: %q, want %q", degrees, got, want)
		}
	}
}

func BenchmarkCoupling(b *testing.B) {
	c := truth{1e-3, vector{1e-4, 5e-5}, vector{2e-5, 1e-5}}
	for name, turns := range map[string][]float64{"one turn": {0}, "four turns": round(4)} {
		b.Run(name, func(b *testing.B) {
			in := faces(c.read(round(4), turns))
			b.ReportAllocs()
			for b.Loop() {
				if _, err := Coupling(in); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

// Where the pilot is: as it was said, or as its depth and the faces' distance tell; a
// flexible coupling has none. What it may hide counts where nobody said.
func TestWhereThePilotIs(t *testing.T) {
	nan := quantity.Length(math.NaN())
	for _, c := range []struct {
		pilot       Pilot
		depth, mean quantity.Length
		kind        Kind
		want        string
	}{
		{"", nan, 0.004, Rigid, PilotNotLooked}, {"", 0, 0.004, Rigid, PilotNotLooked}, {"", 0.003, 0.004, Rigid, PilotClear}, {"", 0.004, 0.003, Rigid, PilotStillIn},
		{PilotOut, nan, 0.004, Rigid, PilotClear}, {PilotOut, 0.004, 0.003, Rigid, PilotStillIn}, {PilotIn, 0.003, 0.004, Rigid, PilotEngaged}, {NoPilot, 0.004, 0.003, Rigid, PilotClear}, {"", nan, 0.004, Flexible, PilotClear},
	} {
		in := faces(truth{mean: float64(c.mean)}.read(round(4), []float64{0}))
		for _, r := range in.Readings {
			in.RimReadings = append(in.RimReadings, RimReading{Clock: r.Clock})
		}
		in.Pilot, in.PilotDepth, in.CouplingKind, in.HiddenOffset, in.FreeLength = c.pilot, c.depth, c.kind, 2e-4, 0.2
		out := solved(t, in)
		if out.PilotState != c.want {
			t.Errorf("%+v: %s", c, out.PilotState)
		}
		hides := 0.0
		if c.want == PilotNotLooked {
			hides = 2e-4
			parttest.Near(t, "worst offset", out.WorstOffset, hides, 1e-12)
		}
		parttest.Near(t, "may hide", out.PilotOffset, hides, 1e-12)
	}
}
