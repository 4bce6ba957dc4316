package mount

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/mat"

	"example.org/driveline/marinecalc/internal/parttest"
	"example.org/driveline/marinecalc/quantity"
)

// threaded are four mounts on studs of that pitch.
func threaded(pitch float64) []Mount {
	mounts := fourMounts()
	for i := range mounts {
		mounts[i].ThreadPitch = quantity.Length(pitch)
	}
	return mounts
}

// Nuts are turned by whole quarter flats, those abreast alike, and what is
// foretold of gap and offset is what is read after those turns: the coupling is
// read again by package align on an engine moved by its nuts.
func TestQuarterFlatsAreForetold(t *testing.T) {
	r := rand.New(rand.NewPCG(12, 5))
	for _, pitch := range []float64{1.5e-3, 2e-3, 2.5e-3} {
		worst := 0.0
		for range 300 {
			c, mounts := anyTruth(r), threaded(pitch)
			in := misfit(t, c.faces(0.1), mounts)
			out := corrected(t, in)
			for i := range mounts {
				quarters := float64(out.Moves[i].Turns) / (2 * math.Pi) * 24
				parttest.Near(t, "quarter flats", quarters, math.Round(quarters), 1e-9)
				parttest.Near(t, "raise", out.Moves[i].Raise, quarters*pitch/24, 1e-12)
			}
			if out.Moves[0].Turns != out.Moves[1].Turns || out.Moves[2].Turns != out.Moves[3].Turns {
				t.Fatalf("nuts abreast are not turned alike: %+v", out.Moves)
			}
			again := misfit(t, c.moved(out, mounts, 1, 2).faces(0.1), mounts)
			parttest.Near(t, "gap", again.GapVertical, float64(out.GapVerticalAfter), 1e-10)
			parttest.Near(t, "offset", again.OffsetVertical, float64(out.OffsetVerticalAfter), 1e-10)
			worst = max(worst, float64(out.OffsetAfter))
		}
		t.Logf("pitch %g mm: offset left at most %.3f mm", 1e3*pitch, 1e3*worst)
		if worst > 0.05e-3 {
			t.Errorf("pitch %g mm: %g mm is left", 1e3*pitch, 1e3*worst)
		}
	}
}

// No quarter flats of the two pairs near the exact move leave less: tried one
// and all by brute force, with the travel of the studs too.
func TestNoQuarterFlatsLeaveLess(t *testing.T) {
	r := rand.New(rand.NewPCG(14, 1))
	for n := range 200 {
		c, mounts := anyTruth(r), threaded(1e-3+2e-3*r.Float64())
		if n%2 == 0 {
			for i := range mounts {
				mounts[i].TravelUp, mounts[i].TravelDown = quantity.Length(4e-3*r.Float64()), quantity.Length(4e-3*r.Float64())
			}
		}
		in := misfit(t, c.faces(0.1), mounts)
		in.GapHorizontal, in.OffsetHorizontal = 0, 0
		out := corrected(t, in)
		got := math.Hypot(float64(out.GapVerticalAfter), float64(out.OffsetVerticalAfter))
		step := float64(mounts[0].ThreadPitch) / 24
		allowed := func(i int, lift float64) bool {
			for _, m := range mounts[i : i+2] {
				if lift > room(m.TravelUp)+1e-12 || lift < -room(m.TravelDown)-1e-12 {
					return false
				}
			}
			return true
		}
		slope, at := float64(in.GapVertical)/0.1, -float64(in.OffsetVertical)
		near := func(x float64) int { return int(math.Round((slope*x + at) / step)) }
		for front := near(0.85) - 4; front <= near(0.85)+4; front++ {
			for aft := near(0.25) - 4; aft <= near(0.25)+4; aft++ {
				up, back := float64(front)*step, float64(aft)*step
				if !allowed(0, up) || !allowed(2, back) {
					continue
				}
				s := (up - back) / 0.6
				left := math.Hypot(float64(in.GapVertical)-0.1*s, float64(in.OffsetVertical)+back-0.25*s)
				if left < got*(1-1e-3)-1e-9 {
					t.Fatalf("%g m is left, %d and %d quarter flats leave %g", got, front, aft, left)
				}
			}
		}
	}
}

// Six mounts on three pairs, uneven threads: no nut turned a quarter flat more
// or less leaves less.
func TestThreePairsOfNuts(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 4))
	for range 100 {
		mounts := append(threaded(1.5e-3), at("middle port", 0.5, -0.3), at("middle starboard", 0.5, 0.3))
		mounts[4].ThreadPitch, mounts[5].ThreadPitch = 2e-3, 2e-3
		in := misfit(t, anyTruth(r).faces(0.1), mounts)
		out := corrected(t, in)
		left := func(m MovesResult) float64 {
			m.foresee(&in, &m)
			return math.Hypot(float64(m.GapVerticalAfter), float64(m.OffsetVerticalAfter))
		}
		was := left(out)
		for _, pair := range [][2]int{{0, 1}, {2, 3}, {4, 5}} {
			for _, by := range []quantity.Angle{-math.Pi / 12, math.Pi / 12} {
				try := out
				try.Moves[pair[0]].Turns += by
				try.Moves[pair[1]].Turns += by
				if l := left(try); l < was-2e-7 { // what a move off the line costs besides
					t.Fatalf("%v turned by %g: %g left instead of %g", pair, by, l, was)
				}
			}
		}
	}
}

// Source: statics, solved whole in gonum: two mounts lean inward, each as stiff
// along its axis as k and square to it χ·k; both feet are driven along their
// studs by t. The engine, free up and down, athwartships and in roll, comes to
// rest where the mounts' forces balance.
func TestLiftOfLeaningStuds(t *testing.T) {
	const k, half, travel = 150e3, 0.25, 1e-3
	for _, ratio := range []float64{0.2, 0.5, 1} {
		for _, angle := range []float64{0, 0.2, math.Pi / 6, math.Pi / 4} {
			whole, right := mat.NewDense(3, 3, nil), mat.NewVecDense(3, nil)
			for _, side := range []float64{-1, 1} {
				sin, cos := math.Sincos(angle)
				axis := mat.NewVecDense(2, []float64{-side * sin, cos}) // inboard and up
				square := mat.NewVecDense(2, []float64{cos, side * sin})
				var own, part mat.Dense
				own.Outer(k, axis, axis)
				part.Outer(ratio*k, square, square)
				own.Add(&own, &part)
				b := mat.NewDense(2, 3, []float64{1, 0, 0, 0, 1, side * half}) // foot's sideways and upward movement for sway, heave, roll
				var kb, bkb mat.Dense
				kb.Mul(&own, b)
				bkb.Mul(b.T(), &kb)
				whole.Add(whole, &bkb)
				var push mat.VecDense
				push.MulVec(b.T(), axis)
				right.AddScaledVec(right, k*travel, &push)
			}
			var x mat.VecDense
			if err := x.SolveVec(whole, right); err != nil {
				t.Fatal(err)
			}
			m := Mount{Starboard: half, Inclination: quantity.Angle(angle)}
			parttest.Near(t, "lift", m.lift(quantity.Ratio(ratio)), x.AtVec(1)/travel, 1e-9)
			m.Stiffness, m.StiffnessSideways = k, quantity.Stiffness(ratio*k)
			parttest.Near(t, "lift by the mount's own stiffness", m.lift(0), x.AtVec(1)/travel, 1e-9)
		}
	}
	m := Mount{Starboard: half, Inclination: math.Pi / 4}
	parttest.Near(t, "as stiff all ways: cos 45°", m.lift(1), math.Sqrt2/2, 1e-12)
}

// Leaning studs lift otherwise, so their nuts are turned otherwise; in trials
// the turns stay and the lift varies.
func TestLeaningNutsInTrials(t *testing.T) {
	in := MovesInput{Mounts: threaded(1.5e-3), CouplingDiameter: 0.1, GapVertical: 2e-4, OffsetVertical: -1e-3, SidewaysRatio: 1}
	upright := corrected(t, in)
	for i := range in.Mounts {
		in.Mounts[i].Inclination = math.Pi / 4
	}
	leaning := corrected(t, in)
	parttest.Near(t, "turns", float64(leaning.Moves[0].Turns/upright.Moves[0].Turns), math.Sqrt2, 0.02)
	in.SidewaysRatio = 0.2
	other, err := MovesTrial(in, &leaning)
	if err != nil {
		t.Fatal(err)
	}
	for i := range other.Moves {
		if a, b := other.Moves[i], leaning.Moves[i]; a.Turns != b.Turns && a.Name != "" || a.Raise != b.Raise || a.Shift != b.Shift {
			t.Error("a trial turned the nuts anew")
		}
	}
	more := (1 / math.Sqrt2) / (0.5 + 0.2*0.5) / (math.Sqrt2 / 2) // of the lift: 1/0.6
	parttest.Near(t, "lift at the coupling", other.RaiseAtCoupling, more*float64(leaning.RaiseAtCoupling), 1e-9)
}

// A move made by the readings leaves what they were off by: gap and offset of
// a trial are those of the trial's readings less the move.
func TestTrialsKeepTheMove(t *testing.T) {
	in := MovesInput{Mounts: threaded(1.5e-3), CouplingDiameter: 0.1, GapVertical: 2e-4, GapHorizontal: 1e-4, OffsetVertical: 3e-4, OffsetHorizontal: -2e-4, GapRunOut: 2e-5, OffsetRunOut: 1e-5}
	chosen := corrected(t, in)
	off := in
	off.GapVertical += 3e-5
	off.OffsetHorizontal -= 4e-5
	out, err := MovesTrial(off, &chosen)
	if err != nil {
		t.Fatal(err)
	}
	parttest.Near(t, "gap", out.GapVerticalAfter-chosen.GapVerticalAfter, 3e-5, 1e-12)
	parttest.Near(t, "offset", out.OffsetHorizontalAfter-chosen.OffsetHorizontalAfter, -4e-5, 1e-12)
	parttest.Near(t, "worst gap", out.WorstGapAfter, float64(out.GapDifferenceAfter)+2e-5, 1e-12)
	parttest.Near(t, "worst offset", out.WorstOffsetAfter, float64(out.OffsetAfter)+1e-5, 1e-12)
	same, _ := MovesTrial(in, &chosen)
	parttest.Near(t, "the readings as they are", same.GapDifferenceAfter, float64(chosen.GapDifferenceAfter), 1e-12)
	in.GapRunOut = quantity.Length(nan)
	if out := corrected(t, in); !math.IsNaN(float64(out.WorstGapAfter)) {
		t.Errorf("nobody knows the run-out, and %g is left at worst", out.WorstGapAfter)
	}
}

// Nuts that turn alike are named together; without a thread none are.
func TestNutsInWords(t *testing.T) {
	at := func(name string, flats float64, raise quantity.Length) Move {
		return Move{Name: name, Nut: Turning{flats}, Raise: raise}
	}
	for want, moves := range map[string][]Move{
		"a, b: 5 flats up; c: 1¾ flats down; d: leave": {at("a", 5, 1e-3), at("b", 5, 1e-3), at("c", -1.75, -4e-4), at("d", 0, 0)},
		"a: leave; b: 1 turn up":                       {at("a", nan, 0), at("b", 6, 1.5e-3)},
		"":                                             {at("a", 5, 1e-3), at("b", nan, 1e-3)},
	} {
		if got := nutTurns(moves).String(); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}
