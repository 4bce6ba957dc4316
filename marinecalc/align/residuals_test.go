package align

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/stat/distuv"

	"example.org/driveline/marinecalc/internal/parttest"
	"example.org/driveline/marinecalc/quantity"
)

// The chance of a scatter is that of gonum's chi-square distribution; and by
// the tables, 3.841 of one degree of freedom and 5.991 of two are 5 %, 18.307
// of ten too (Abramowitz and Stegun, table 26.8).
func TestChanceOfScatter(t *testing.T) {
	for freedom := 1; freedom < 80; freedom++ {
		d := distuv.ChiSquared{K: float64(freedom)}
		for _, chi := range []float64{0, 0.1, 1, 3, 9, 30, 90} {
			parttest.Near(t, "chance", chanceOf(chi, freedom), d.Survival(chi), 1e-10)
		}
	}
	for freedom, chi := range map[int]float64{1: 3.841, 2: 5.991, 10: 18.307} {
		parttest.Near(t, "chance by table", chanceOf(chi, freedom), 0.05, 2e-5)
	}
}

// Three places tell a plane and nothing of themselves: no closure and no residual,
// whatever the rim or the return of the dial to its zero says. What is too much
// there counts all the same.
func TestThreePlacesCloseNothing(t *testing.T) {
	c := truth{1e-3, vector{1e-4, 5e-5}, vector{}}
	const sd = 5.8e-6
	in := faces(c.read([]float64{0, math.Pi / 2, 3 * math.Pi / 2}, []float64{0}))
	for i := range in.Readings {
		in.Readings[i].GapUncertainty = sd
	}
	for _, s := range c.read(round(4), []float64{0}) {
		in.RimReadings = append(in.RimReadings, RimReading{Clock: s.Clock, Step: s.Gap, StepUncertainty: sd})
	}
	m := solved(t, in)
	if !math.IsNaN(float64(m.ClosureUse)) || !math.IsNaN(float64(m.WorstResidual)) {
		t.Errorf("three gaps close by %g, and lie %g off", m.ClosureUse, m.WorstResidual)
	}
	parttest.Near(t, "gap vertical", m.GapVertical, 2e-4, 1e-11)
	in.RimReadings[2].Step += 1e-4
	if m = solved(t, in); !(m.ClosureUse > 1) {
		t.Errorf("a rim that does not close is told as %g", m.ClosureUse)
	}

	dial := zeroed(0.001, 0.0001)
	dial.DialReadings = append(dial.DialReadings[:3], dial.DialReadings[0])
	out, err := Dial(dial)
	if err != nil || !math.IsNaN(float64(out.ClosureUse)) || out.FaceReturn != 0 {
		t.Errorf("three places and back at zero close by %g (%v)", out.ClosureUse, err)
	}
	dial.DialReadings[3].Face += 1e-4
	if out, err = Dial(dial); err != nil || !(out.ClosureUse > 1) {
		t.Errorf("a dial that does not come back is told as %g (%v)", out.ClosureUse, err)
	}
}

// A shaft that was turned the other way than it was typed is found out from
// three positions on; with two the readings fit either way, and the result
// says what they would mean.
func TestTurnedTheOtherWay(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 3))
	quarter := math.Pi / 2
	for range 100 {
		c := anyTruth(r)
		for c.turning.size() < 5e-5 {
			c = anyTruth(r)
		}
		for _, k := range []struct {
			turns []float64
			typed float64 // 1, or -1: the other way
			want  string
		}{
			{[]float64{0, quarter, 2 * quarter, 3 * quarter}, 1, TurnAgrees},
			{[]float64{0, quarter, 2 * quarter, 3 * quarter}, -1, TurnOtherWay},
			{[]float64{0, 0.8, 1.6}, 1, TurnAgrees},
			{[]float64{0, 0.8, 1.6}, -1, TurnOtherWay},
			{[]float64{0, quarter}, 1, TurnUnchecked},
			{[]float64{0, quarter}, -1, TurnUnchecked},
			{[]float64{0, 2 * quarter}, -1, TurnAgrees}, // half a turn is half a turn either way
		} {
			in := faces(c.read(round(4), k.turns))
			for i := range in.Readings {
				in.Readings[i].Turn = quantity.Angle(turnOf(k.typed * float64(in.Readings[i].Turn)))
				in.Readings[i].Gap += quantity.Length((r.Float64() - 0.5) * 1e-5)
				in.Readings[i].GapUncertainty = 3e-6
			}
			m := solved(t, in)
			if m.TurnCheck != k.want {
				t.Fatalf("%v typed %g: %q, want %q (run-out %g, scatter ratio %g)", k.turns, k.typed, m.TurnCheck, k.want, 2*c.turning.size(), m.ScatterRatio)
			}
			if math.IsNaN(float64(m.GapOtherWay)) != (k.want == TurnAgrees) {
				t.Errorf("%v: gap the other way %g", k.turns, m.GapOtherWay)
			}
			if k.want == TurnOtherWay || k.want == TurnUnchecked && k.typed < 0 {
				parttest.Near(t, "gap the other way", m.GapOtherWay, 2*c.fixed.size(), 4e-5)
			}
		}
	}
	if m := solved(t, faces(truth{1e-3, vector{1e-4, 0}, vector{}}.read(round(4), []float64{0}))); m.TurnCheck != "" {
		t.Errorf("a shaft that was not turned: %q", m.TurnCheck)
	}
}

// The gap in the worst position is the widest that any position of the shaft
// shows: found by turning a known coupling through a whole turn.
func TestWorstPosition(t *testing.T) {
	r := rand.New(rand.NewPCG(8, 8))
	for range 100 {
		c := anyTruth(r)
		worst, worstStep := 0.0, 0.0
		for _, turn := range round(720) {
			v := c.fixed
			sin, cos := math.Sincos(turn)
			v.up += c.turning.up*cos - c.turning.right*sin
			v.right += c.turning.up*sin + c.turning.right*cos
			worst, worstStep = max(worst, 2*v.size()), max(worstStep, v.size())
		}
		in := faces(c.read(round(4), round(4)))
		for _, s := range in.Readings {
			in.RimReadings = append(in.RimReadings, RimReading{Clock: s.Clock, Turn: s.Turn, Step: s.Gap - 0.001})
		}
		m := solved(t, in)
		parttest.Near(t, "worst gap", m.WorstGap, worst, 1e-4*worst)
		parttest.Near(t, "worst offset", m.WorstOffset, worstStep, 1e-4*worstStep)
		in.CouplingKind = Flexible
		parttest.Near(t, "of a flexible coupling", solved(t, in).WorstGap, 2*c.fixed.size(), 1e-11)

		// Not turned: with the run-out known by a dial, what was read cannot
		// hide more than that.
		in = faces(c.read(round(4), []float64{2 * math.Pi * r.Float64()}))
		in.KnownFaceRunOut = quantity.Length(2 * c.turning.size())
		if got := float64(solved(t, in).WorstGap); got < worst-1e-9 {
			t.Errorf("not turned: %g, and some position has %g", got, worst)
		}
		in.KnownFaceRunOut = quantity.Length(math.NaN())
		if m := solved(t, in); !math.IsNaN(float64(m.WorstGap)) || math.IsNaN(float64(m.GapDifference)) {
			t.Errorf("nobody knows the run-out, and the worst gap is %g", m.WorstGap)
		}
	}
}

// By hand: faces 0.2 mm apart at top and bottom of a coupling of 100 mm, with a
// run-out of 0.05 mm known of the face and 0.06 mm of the rim. Not turned, what
// was read may hide as much again; a flexible coupling is not worked by what
// turns with it.
func TestKnownRunOutAddsToTheWorst(t *testing.T) {
	in := faces(truth{mean: 1e-3, fixed: vector{1e-4, 0}}.read(round(4), []float64{0}))
	for _, r := range in.Readings {
		in.RimReadings = append(in.RimReadings, RimReading{Clock: r.Clock})
	}
	in.KnownFaceRunOut, in.KnownRimRunOut = 5e-5, 6e-5
	for kind, want := range map[Kind]struct{ gap, offset float64 }{Rigid: {3e-4, 6e-5}, Flexible: {2.5e-4, 3e-5}} {
		in.CouplingKind = kind
		m := solved(t, in)
		parttest.Near(t, "worst gap", m.WorstGap, want.gap, 1e-10)
		parttest.Near(t, "gap by run-out", m.GapRunOut, want.gap-2e-4, 1e-10)
		parttest.Near(t, "worst gap per diameter", m.WorstGapPerDiameter, want.gap/0.1, 1e-9)
		parttest.Near(t, "worst offset", m.WorstOffset, want.offset, 1e-10)
		parttest.Near(t, "offset by run-out", m.OffsetRunOut, want.offset, 1e-10)
	}
	// Turned through four quarters, it is measured: 2·√(0.03² + 0.04²) mm.
	m := solved(t, faces(truth{1e-3, vector{1e-4, 0}, vector{3e-5, 4e-5}}.read(round(4), round(4))))
	parttest.Near(t, "run-out", m.RunOut, 1e-4, 1e-10)
	parttest.Near(t, "run-out per diameter", m.RunOutPerDiameter, 1e-3, 1e-9)
}

func TestRunOutIsRefused(t *testing.T) {
	in := faces(truth{mean: 1e-3}.read(round(4), []float64{0}))
	in.KnownFaceRunOut, in.KnownRimRunOut = 0.02, -0.01
	_, err := Coupling(in)
	parttest.RefusedAt(t, err, "/knownFaceRunOut", "/knownRimRunOut")
}

// Two positions of the shaft fit whichever way it was turned, however much the
// readings scatter within their gauge: what they say of the run-out stays open.
func TestTwoPositionsStayOpenWithScatter(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 14))
	for range 20 {
		in := faces(truth{1e-3, vector{2e-4, 1e-4}, vector{1.5e-4, 0}}.read(round(8), []float64{0, math.Pi / 2}))
		for i := range in.Readings {
			in.Readings[i].Gap += quantity.Length(r.NormFloat64() * 1e-5)
			in.Readings[i].GapUncertainty = 1e-5
		}
		if m := solved(t, in); m.TurnCheck != TurnUnchecked {
			t.Fatalf("%s", m.TurnCheck)
		}
	}
}

// What a sound gauge of even spread explains at most, √3 of its standard uncertainty
// at each reading: four readings by what does not close, six that lie above and below
// in turn by the sum of their squares. More than three times that tells nothing.
func TestReadingsAgainstTheMostTheirGaugeExplains(t *testing.T) {
	const sd = 5e-6
	for _, places := range []int{4, 6} {
		for _, use := range []float64{0.5, 2.9, 3.1} {
			in := faces(truth{1e-3, vector{1e-4, 0}, vector{}}.read(round(places), []float64{0}))
			for i := range in.Readings {
				in.Readings[i].Gap += quantity.Length(use * math.Sqrt(3) * sd * math.Pow(-1, float64(i)))
				in.Readings[i].GapUncertainty = sd
			}
			out := solved(t, in)
			parttest.Within(t, "use", float64(out.ClosureUse), use, 1e-6)
			if told := !math.IsNaN(float64(out.WorstGap)); told != (use < 3) {
				t.Errorf("%d places, %g of the gauge: worst gap %g", places, use, out.WorstGap)
			}
		}
	}
	// Six that lie above at two places across, and half as far below at the others: their
	// opposite sums disagree by three times the greatest.
	in := faces(truth{mean: 1e-3}.read(round(6), []float64{0}))
	for i := range in.Readings {
		in.Readings[i].Gap += quantity.Length(8e-6 * math.Cos(2*float64(in.Readings[i].Clock)))
		in.Readings[i].GapUncertainty = sd
	}
	parttest.Within(t, "use by what does not close", float64(solved(t, in).ClosureUse), 3*8/(4*math.Sqrt(3)*5), 1e-6)
	if !math.IsNaN(both(math.NaN(), 0.9)) || both(math.NaN(), 1.5) != 1.5 || both(1.5, math.NaN()) != 1.5 || both(0.4, 0.9) != 0.9 {
		t.Error("of two closures of which one is not known only what is too much counts")
	}
}

// The worse of face and rim is told, and of two shaft turns the one that closes less.
func TestTheWorseOfFaceAndRim(t *testing.T) {
	off := func(face, rim float64) CouplingResult {
		in := faces(truth{mean: 1e-3}.read(round(4), []float64{0}))
		for i := range in.Readings {
			by := math.Pow(-1, float64(i))
			in.Readings[i].Gap += quantity.Length(face * by)
			in.Readings[i].GapUncertainty = 1e-5
			in.RimReadings = append(in.RimReadings, RimReading{Clock: in.Readings[i].Clock, Step: quantity.Length(rim * by), StepUncertainty: 1e-5})
		}
		return solved(t, in)
	}
	a, b := off(5e-6, 15e-6), off(15e-6, 5e-6)
	parttest.Within(t, "chance, rim the worse", float64(a.ScatterChance), chanceOf(9, 1), 1e-6)
	parttest.Within(t, "chance, face the worse", float64(b.ScatterChance), chanceOf(9, 1), 1e-6)
	if out := solved(t, faces(truth{mean: 1e-3}.read(round(4), []float64{0}))); !math.IsNaN(float64(out.RimScatterRatio)) {
		t.Errorf("a rim that was not read scatters %g times its gauge", out.RimScatterRatio)
	}
	for _, first := range []float64{30e-6, 10e-6} {
		in := faces(truth{mean: 1e-3}.read(round(4), []float64{0, 1}))
		in.Readings[0].Gap += quantity.Length(first)
		in.Readings[4].Gap += quantity.Length(40e-6 - first)
		parttest.Near(t, "closure", solved(t, in).Closure, 30e-6, 1e-12)
	}
	// Three places, each read twice, close nothing.
	in := faces(truth{mean: 1e-3}.read([]float64{0, 2, 4, 0, 2, 4}, []float64{0}))
	for i := range in.Readings {
		in.Readings[i].GapUncertainty = 1e-5
	}
	if out := solved(t, in); !math.IsNaN(float64(out.ClosureUse)) {
		t.Errorf("three places read twice close by %g", out.ClosureUse)
	}
}
