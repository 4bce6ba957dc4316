package mount

import (
	"math"
	"math/rand/v2"
	"testing"

	"example.org/driveline/marinecalc/align"
	"example.org/driveline/marinecalc/internal/parttest"
	"example.org/driveline/marinecalc/quantity"
)

const inch = 0.0254

var nan = math.NaN()

// at is a mount of which only the place is known.
func at(name string, forward, starboard float64) Mount {
	nan := quantity.Length(nan)
	return Mount{Name: name, Forward: quantity.Length(forward), Starboard: quantity.Length(starboard),
		TravelUp: nan, TravelDown: nan, SidewaysSlack: nan, FootGap: nan}
}

func fourMounts() []Mount {
	return []Mount{at("front port", 0.85, -0.25), at("front starboard", 0.85, 0.25), at("aft port", 0.25, -0.24), at("aft starboard", 0.25, 0.24)}
}

func corrected(t *testing.T, in MovesInput) MovesResult {
	t.Helper()
	return parttest.Must(t, Moves, in)
}

// Source: Bloch and Geitner, Machinery Component Maintenance and Repair, pp.
// 198-199, fig. 5-17 (4 in, 9 in and 39 in inferred from the printed
// products): inboard feet -0.0212 in, outboard -0.0738 in.
func TestRimAndFaceBlochGeitner(t *testing.T) {
	m := corrected(t, MovesInput{Mounts: []Mount{at("inboard", 9*inch, 0), at("outboard", 39*inch, 0)},
		GapVertical: -0.007 * inch, OffsetVertical: 0.0055 * inch, CouplingDiameter: 4 * inch})
	parttest.Near(t, "inboard", m.Moves[0].Raise, -0.0212*inch, 0.00006*inch)
	parttest.Near(t, "outboard", m.Moves[1].Raise, -0.0738*inch, 0.00006*inch)
}

// Source: Bloch and Geitner, p. 203, fig. 5-21: dials at planes 14 in apart,
// the next plane 12 in from the inboard feet, feet 26 in apart; vertical
// -0.0027 and +0.0066 in, horizontal -0.0356 in at the inboard feet.
func TestReverseIndicatorBlochGeitner(t *testing.T) {
	m := corrected(t, MovesInput{Mounts: []Mount{at("inboard", 26*inch, 0), at("outboard", 52*inch, 0)}, CouplingDiameter: 14 * inch,
		GapVertical: (0.012 - 0.007) * inch, OffsetVertical: 0.012 * inch,
		GapHorizontal: -(0.0015 + 0.0185) * inch, OffsetHorizontal: -0.0015 * inch})
	parttest.Near(t, "inboard", m.Moves[0].Raise, -0.0027*inch, 0.00006*inch)
	parttest.Near(t, "outboard", m.Moves[1].Raise, 0.0066*inch, 0.00006*inch)
	parttest.Near(t, "inboard sideways", m.Moves[0].Shift, -0.0356*inch, 0.00006*inch)
}

// truth is an engine that is off the shaft line by known small turns, and
// what a feeler and a straight edge read at its coupling.
type truth struct{ slopeUp, slopeRight, high, right float64 }

// faces reads a rigid face whose axis rises by slopeUp and bears off to
// starboard by slopeRight, its middle standing high and right.
func (c truth) faces(d float64) align.CouplingInput {
	in := align.CouplingInput{CouplingDiameter: quantity.Length(d), CouplingKind: align.Rigid}
	for i := range 8 {
		sin, cos := math.Sincos(float64(i) * math.Pi / 4)
		// A rising axis leans the face's top aft: the gap closes there.
		gap := 1.5e-3 - d/2*(c.slopeUp*cos+c.slopeRight*sin)
		in.Readings = append(in.Readings, align.Reading{Clock: quantity.Direction(i) * math.Pi / 4, Gap: quantity.Length(gap)})
		in.RimReadings = append(in.RimReadings, align.RimReading{Clock: quantity.Direction(i) * math.Pi / 4, Step: quantity.Length(c.high*cos + c.right*sin)})
	}
	return in
}

func misfit(t *testing.T, in align.CouplingInput, mounts []Mount) MovesInput {
	t.Helper()
	m, err := align.Coupling(in)
	if err != nil {
		t.Fatal(err)
	}
	return MovesInput{Mounts: mounts, CouplingDiameter: in.CouplingDiameter, MeanGap: m.MeanGap,
		GapVertical: m.GapVertical, GapHorizontal: m.GapHorizontal, OffsetVertical: m.OffsetVertical, OffsetHorizontal: m.OffsetHorizontal}
}

// moved is the engine after its mounts moved: the axis through what the front
// and the aft mount did. It knows nothing of how Moves calculates.
func (c truth) moved(m MovesResult, mounts []Mount, front, aft int) truth {
	apart := float64(mounts[front].Forward - mounts[aft].Forward)
	up := float64(m.Moves[front].Raise-m.Moves[aft].Raise) / apart
	right := float64(m.Moves[front].Shift-m.Moves[aft].Shift) / apart
	back := float64(mounts[aft].Forward)
	return truth{c.slopeUp + up, c.slopeRight + right,
		c.high + float64(m.Moves[aft].Raise) - up*back, c.right + float64(m.Moves[aft].Shift) - right*back}
}

func anyTruth(r *rand.Rand) truth {
	part := func(size float64) float64 { return (r.Float64() - 0.5) * size }
	return truth{part(8e-3), part(8e-3), part(2e-3), part(2e-3)}
}

// Moving by the advised amount and reading the coupling again gives no
// misalignment; the gaps foretold are those read.
func TestMovedEngineReadsTrue(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 9))
	for range 300 {
		c, mounts := anyTruth(r), fourMounts()
		for i := range mounts {
			mounts[i].Forward += quantity.Length(r.Float64() * 0.2)
		}
		in := misfit(t, c.faces(0.1), mounts)
		out := corrected(t, in)
		again := misfit(t, c.moved(out, mounts, 1, 2).faces(0.1), mounts)
		parttest.Near(t, "gap vertical", again.GapVertical, 0, 1e-12)
		parttest.Near(t, "gap horizontal", again.GapHorizontal, 0, 1e-12)
		parttest.Near(t, "offset vertical", again.OffsetVertical, 0, 1e-12)
		parttest.Near(t, "offset horizontal", again.OffsetHorizontal, 0, 1e-12)
		for _, gap := range []quantity.Length{out.GapTopAfter, out.GapStarboardAfter, out.GapBottomAfter, out.GapPortAfter} {
			parttest.Near(t, "gap after", gap, 1.5e-3, 1e-12)
		}
		if out.Reach != NotGiven || out.Pivot != BothCured {
			t.Fatalf("%q, %q", out.Reach, out.Pivot)
		}
	}
}

// What is foretold when the studs run out of travel is what is then read.
func TestForetoldIsRead(t *testing.T) {
	r := rand.New(rand.NewPCG(8, 1))
	short := 0
	for range 500 {
		c, mounts := anyTruth(r), fourMounts()
		for i := range mounts {
			mounts[i].TravelUp, mounts[i].TravelDown = quantity.Length(r.Float64()*3e-3), quantity.Length(r.Float64()*3e-3)
			mounts[i].SidewaysSlack = quantity.Length(r.Float64() * 3e-3)
		}
		in := misfit(t, c.faces(0.12), mounts)
		out := corrected(t, in)
		face, err := align.Coupling(c.moved(out, mounts, 0, 3).faces(0.12))
		if err != nil {
			t.Fatal(err)
		}
		parttest.Near(t, "gap at 12", align.GapAt(face, 0), float64(out.GapTopAfter), 1e-11)
		parttest.Near(t, "gap at 3", align.GapAt(face, math.Pi/2), float64(out.GapStarboardAfter), 1e-11)
		parttest.Near(t, "gap at 6", align.GapAt(face, math.Pi), float64(out.GapBottomAfter), 1e-11)
		parttest.Near(t, "gap at 9", align.GapAt(face, 3*math.Pi/2), float64(out.GapPortAfter), 1e-11)
		parttest.Near(t, "offset", face.Offset, float64(out.OffsetAfter), 1e-11)
		for i := range mounts {
			m, to := &mounts[i], out.Moves[i]
			if to.Raise > m.TravelUp+1e-12 || to.Raise < -m.TravelDown-1e-12 || math.Abs(float64(to.Shift)) > float64(m.SidewaysSlack)+1e-12 {
				t.Fatalf("mount %d moves by %g and %g, travel %+v", i, to.Raise, to.Shift, m)
			}
		}
		if out.Reach != Reached {
			short++
		}
	}
	if short < 100 {
		t.Errorf("only %d of 500 ran out of travel", short)
	}
}

// Source: algebra; mirrored readings give mirrored moves.
func TestMirroredReadingsMirroredMoves(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 4))
	for range 300 {
		mounts := fourMounts()
		for i := range mounts {
			mounts[i].SidewaysSlack = quantity.Length(r.Float64() * 2e-3)
			both := quantity.Length(r.Float64() * 2e-3)
			mounts[i].TravelUp, mounts[i].TravelDown = both, both
		}
		in := misfit(t, anyTruth(r).faces(0.1), mounts)
		if r.IntN(3) == 0 {
			in.OffsetVertical, in.OffsetHorizontal = quantity.Length(nan), quantity.Length(nan)
		}
		other := in
		other.GapVertical, other.GapHorizontal, other.OffsetVertical, other.OffsetHorizontal = -in.GapVertical, -in.GapHorizontal, -in.OffsetVertical, -in.OffsetHorizontal
		a, b := corrected(t, in), corrected(t, other)
		for i := range mounts {
			parttest.Near(t, "raise", a.Moves[i].Raise, -float64(b.Moves[i].Raise), 1e-12)
			parttest.Near(t, "shift", a.Moves[i].Shift, -float64(b.Moves[i].Shift), 1e-12)
		}
		parttest.Near(t, "gap left", a.GapDifferenceAfter, float64(b.GapDifferenceAfter), 1e-12)
	}
}

// No allowed move leaves less misalignment than the one found: tried at the
// corners and along the sides of what is allowed, and at random inside.
func TestNothingAllowedIsBetter(t *testing.T) {
	r := rand.New(rand.NewPCG(17, 2))
	const d = 0.1
	for range 400 {
		var s studs
		s.n = 2 + r.IntN(7)
		for i := range s.n {
			s.all[i] = stud{0.1 + r.Float64(), -r.Float64() * 2e-3, r.Float64() * 2e-3}
		}
		want := line{(r.Float64() - 0.5) * 0.02, (r.Float64() - 0.5) * 6e-3}
		left := func(l line) float64 { return math.Hypot(d*(l.slope-want.slope), l.at-want.at) }
		got := s.nearest(want, d)
		if !s.allow(got) {
			t.Fatalf("%+v is not allowed in %+v", got, s)
		}
		at := left(got)
		// From the move found, every allowed small step leads away, as the
		// allowed moves are convex.
		for range 400 {
			angle := 2 * math.Pi * r.Float64()
			for _, step := range []float64{1e-6, 1e-4, 1e-3} {
				try := line{got.slope + step*math.Cos(angle)/d, got.at + step*math.Sin(angle)}
				if s.allow(try) && left(try) < at-1e-9*step {
					t.Fatalf("%+v leaves %g, %+v leaves %g", got, at, try, left(try))
				}
			}
		}
	}
}

// Where the offset was not read the coupling stays where it is, and only its
// angle is cured; with the least turning, about the middle of the mounts, its
// offset moves, and the result says by how much. Where the studs allow no more,
// as much of the angle is cured as can be.
func TestAngleAlone(t *testing.T) {
	in := MovesInput{Mounts: fourMounts(), CouplingDiameter: 0.1, GapVertical: 1e-4, OffsetVertical: quantity.Length(nan), OffsetHorizontal: quantity.Length(nan)}
	out := corrected(t, in)
	parttest.Near(t, "front", out.Moves[0].Raise, 0.85e-3, 1e-12)
	parttest.Near(t, "aft", out.Moves[2].Raise, 0.25e-3, 1e-12)
	parttest.Near(t, "offset made", out.OffsetMade, 0, 1e-12)
	if out.Pivot != BothPivots || out.Reach != NotGiven || !math.IsNaN(float64(out.OffsetAfter)) {
		t.Errorf("%+v", out)
	}
	in.TurnAbout = AboutMounts
	out = corrected(t, in)
	parttest.Near(t, "front", out.Moves[0].Raise, 0.3e-3, 1e-12)
	parttest.Near(t, "aft", out.Moves[2].Raise, -0.3e-3, 1e-12)
	parttest.Near(t, "gap left", out.GapDifferenceAfter, 0, 1e-12)
	parttest.Near(t, "offset made", out.OffsetMade, 0.55e-3, 1e-12) // from the middle, 0.55 m forward, at a slope of 1e-3
	if out.Pivot != BothPivots || out.Reach != NotGiven || !math.IsNaN(float64(out.OffsetAfter)) || !math.IsNaN(float64(out.GapTopAfter)) {
		t.Errorf("%+v", out)
	}
	in.Mounts[2].TravelDown = 0.1e-3 // one aft mount hardly goes down
	out = corrected(t, in)
	parttest.Near(t, "front", out.Moves[1].Raise, 0.5e-3, 1e-12)
	parttest.Near(t, "aft", out.Moves[3].Raise, -0.1e-3, 1e-12)
	if out.Moves[2].Stop != lowerStop || out.Moves[3].Stop != "" {
		t.Errorf("%q, %q", out.Moves[2].Stop, out.Moves[3].Stop)
	}
	in.Mounts[0].TravelUp = 0.2e-3 // and one front mount hardly up: half the angle can be had
	out = corrected(t, in)
	parttest.Near(t, "gap left", out.GapDifferenceAfter, 0.5e-4, 1e-12)
	if out.Reach != ShortUp {
		t.Errorf("%q", out.Reach)
	}
	in = MovesInput{Mounts: fourMounts(), CouplingDiameter: 0.1, GapVertical: 1e-4}
	if out := corrected(t, in); !math.IsNaN(float64(out.OffsetMade)) {
		t.Errorf("an offset of %g is made beside one that was read", out.OffsetMade)
	}
}

func TestMovesAllocatesNothing(t *testing.T) {
	in := misfit(t, truth{2e-3, -1e-3, 4e-4, -3e-4}.faces(0.1), fourMounts())
	short := in
	short.Mounts = fourMounts()
	for i := range short.Mounts {
		short.Mounts[i].TravelUp, short.Mounts[i].TravelDown, short.Mounts[i].SidewaysSlack = 2e-4, 2e-4, 1e-4
	}
	for i := range in.Mounts {
		in.Mounts[i].ThreadPitch = 1.5e-3
	}
	chosen := corrected(t, in)
	for _, in := range []MovesInput{in, short} {
		parttest.NoAllocations(t, func() { _, _ = Moves(in) })
		parttest.NoAllocations(t, func() { _, _ = MovesTrial(in, &chosen) })
	}
}

func BenchmarkMoves(b *testing.B) {
	in := MovesInput{Mounts: fourMounts(), CouplingDiameter: 0.1, GapVertical: 1e-4, GapHorizontal: -2e-4, OffsetVertical: 1e-3, OffsetHorizontal: -1e-3}
	short := in
	short.Mounts = fourMounts()
	for i := range short.Mounts {
		short.Mounts[i].TravelUp, short.Mounts[i].TravelDown, short.Mounts[i].SidewaysSlack = 2e-4, 2e-4, 1e-4
	}
	nuts := in
	nuts.Mounts = fourMounts()
	for i := range nuts.Mounts {
		nuts.Mounts[i].ThreadPitch = 1.5e-3
	}
	chosen, _ := Moves(nuts)
	b.Run("a trial", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			if _, err := MovesTrial(nuts, &chosen); err != nil {
				b.Fatal(err)
			}
		}
	})
	for name, in := range map[string]MovesInput{"enough": in, "short": short, "quarter flats": nuts} {
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := Moves(in); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func TestCodesHaveTheirWords(t *testing.T) {
	parttest.SameCodes(t, "mount-moves", "reach", Reached, NotGiven, ShortUp, ShortAcross, ShortAllWays)
	parttest.SameCodes(t, "mount-moves", "pivot", BothCured, VerticalPivot, HorizontalPivot, BothPivots)
	parttest.SameCodes(t, "mount-moves", "moves/stop", upperStop, lowerStop, sideStop, twoStops)
	parttest.SameCodes(t, "mount-load", "driving", NotDriven, ThrustMissing, TorqueMissing, TorqueOnly, BothDrive)
}

// Of two studs that may only be lowered the one that may be lowered least by at
// least two millimetres sets how far the engine goes down at one slope.
func TestTheLeastAllowedStudStops(t *testing.T) {
	var s studs
	s.n = 2
	s.all[0] = stud{x: 0, least: -3e-3, most: -2e-3}
	s.all[1] = stud{x: 1, least: -4e-3, most: -1e-3}
	if got := s.pivoted(0); got.slope != 0 || math.Abs(got.at+2e-3) > 1e-15 {
		t.Errorf("%+v, want level, 2 mm down", got)
	}
}
