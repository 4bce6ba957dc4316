package line

import (
	"math"
	"math/rand/v2"
	"testing"

	"example.org/driveline/marinecalc/internal/parttest"
	"example.org/driveline/marinecalc/quantity"
)

// whole is a line of which every joint is known: 400, 600, 500 and 300 N·m ahead.
func whole() JointsInput {
	return JointsInput{
		ShaftTorque: 150, AsternTorque: 140, PeakTorque: 240,
		HubDrive: "spline", HubFriction: 90, HubFlanks: 400, HubPullMargin: 30,
		FacesAhead: 600, FacesAstern: 580, BoreAhead: 500, BoreAstern: 480, TaperAhead: 300, TaperAstern: 290,
		CouplingKey: 340, PropellerKey: math.MaxFloat32,
		HubFrictionSides: plain(10), HubFlanksSides: plain(20), FacesAheadSides: plain(40), FacesAsternSides: plain(40), BoreAheadSides: plain(30), BoreAsternSides: plain(30), TaperAheadSides: plain(10), TaperAsternSides: plain(10),
	}
}

// plain is the range of a normal quantity of that standard uncertainty.
func plain(spread quantity.Torque) Sides { return Sides{1.96 * spread, 1.96 * spread} }

// Ranges that lean to one side are told apart by the sides that face each other:
// 300 (290 to 340) and 400 (350 to 900) are two joints, whatever lies above the
// stronger, and 300 (200 to 390) and 400 (395 to 410) as well; 300 (290 to 410) and
// 400 (320 to 405) are not.
func TestLopsidedRangesAreToldApartByTheirFacingSides(t *testing.T) {
	for _, c := range []struct {
		weaker, stronger Sides
		apart            bool
	}{{Sides{10, 40}, Sides{50, 500}, true}, {Sides{100, 90}, Sides{5, 10}, true}, {Sides{10, 110}, Sides{80, 5}, false}, {Sides{250, 99}, Sides{0, 900}, true}, {Sides{5, 70}, Sides{75, 0}, false}, {Sides{0, 60}, Sides{80, 0}, false}} {
		in := whole()
		in.TaperAheadSides, in.HubFlanksSides = c.weaker, c.stronger
		want := AlikeOfAll
		if c.apart {
			want = OfAll
		}
		if out := parttest.Must(t, Joints, in); out.SureAhead != want {
			t.Errorf("%+v: %s", c, out.SureAhead)
		}
	}
}

// The least of what the joints hold is what the line holds, over one torque.
func TestWeakestOfAll(t *testing.T) {
	in := whole()
	out := parttest.Must(t, Joints, in)
	if out.WeakestAhead != Taper || out.SureAhead != OfAll || out.WeakestShock != Taper || out.SureShock != OfAll || out.Known != 4 {
		t.Errorf("%+v", out)
	}
	parttest.Near(t, "ahead", out.LeastAhead, 300./150, 1e-12)
	parttest.Near(t, "astern", out.LeastAstern, 290./140, 1e-12)
	parttest.Near(t, "shock", out.LeastShock, 290./240, 1e-12)
	if got := out.Joints[0]; got.HeldAhead != 400 || got.StandAhead != Stronger || got.Wanted != WantsNothing {
		t.Errorf("output flange: %+v", got)
	}
	in.TaperAhead, in.TaperAstern = 700, 700
	if out = parttest.Must(t, Joints, in); out.WeakestAhead != Hub {
		t.Errorf("with a better taper: %s", out.WeakestAhead)
	}
	in.TaperAhead = 400 // of two alike the forward one is named
	if out = parttest.Must(t, Joints, in); out.WeakestAhead != Hub || out.SureAhead != AlikeOfAll {
		t.Errorf("two alike: %s, %s", out.WeakestAhead, out.SureAhead)
	}
}

// A joint that is not known could be weaker: no margin of 1 or more is told then,
// and one below 1 is, since nothing that is found can mend it.
func TestUnknownJointCouldBeWeaker(t *testing.T) {
	for _, hide := range []func(*JointsInput){
		func(in *JointsInput) { in.HubFlanks = quantity.Torque(math.NaN()) },
		func(in *JointsInput) {
			in.FacesAhead, in.FacesAstern = quantity.Torque(math.NaN()), quantity.Torque(math.NaN())
		},
		func(in *JointsInput) {
			in.BoreAhead, in.BoreAstern = quantity.Torque(math.NaN()), quantity.Torque(math.NaN())
		},
	} {
		in := whole()
		hide(&in)
		out := parttest.Must(t, Joints, in)
		if out.WeakestShock != Taper || out.SureShock != OfKnown || !math.IsNaN(float64(out.LeastShock)) || out.Known != 3 {
			t.Errorf("%+v", out)
		}
		in.PeakTorque = 290 // just held by what is known
		if out = parttest.Must(t, Joints, in); !math.IsNaN(float64(out.LeastShock)) || out.LeastKnownShock != 1 {
			t.Errorf("just held: %g, of those known %g", out.LeastShock, out.LeastKnownShock)
		}
		in.PeakTorque = 600
		if out = parttest.Must(t, Joints, in); !(out.LeastShock < 1) {
			t.Errorf("under 1 it is told: %+v", out.LeastShock)
		}
	}
	in := whole()
	in.HubFlanks, in.HubFriction = quantity.Torque(math.NaN()), 900 // friction alone is surely more
	if out := parttest.Must(t, Joints, in); out.SureAhead != OfAll || out.Joints[0].StandAhead != Stronger || out.Joints[0].Wanted != WantsFlanks {
		t.Errorf("a flange whose friction alone is more: %+v", out)
	}
	in = whole()
	in.TaperAstern = quantity.Torque(math.NaN())
	if out := parttest.Must(t, Joints, in); out.SureAhead != OfAll || out.SureShock != OfKnown || out.Joints[3].Wanted != WantsPull {
		t.Errorf("without the pull astern: %+v", out)
	}
	nan := quantity.Torque(math.NaN())
	if out := parttest.Must(t, Joints, JointsInput{ShaftTorque: 100, HubFriction: nan, HubFlanks: nan, HubPullMargin: quantity.Ratio(math.NaN()), FacesAhead: nan, FacesAstern: nan, BoreAhead: nan, BoreAstern: nan, TaperAhead: nan, TaperAstern: nan, CouplingKey: nan, PropellerKey: nan}); out.WeakestAhead != NoneKnown || out.SureAhead != NothingKnown || out.Joints[1].StandAhead != NotRanked {
		t.Errorf("nothing known: %+v", out)
	}
}

// Two joints are told apart where their difference passes 1.96 of its standard
// uncertainty, on either hand of that.
func TestToldApart(t *testing.T) {
	in := whole()
	in.TaperAheadSides, in.HubFlanksSides = plain(30), plain(40) // together 50: 98 N·m
	in.TaperAhead = 400 - 99
	if out := parttest.Must(t, Joints, in); out.SureAhead != OfAll || out.Joints[0].StandAhead != Stronger {
		t.Errorf("99 N·m apart: %s, %s", out.SureAhead, out.Joints[0].StandAhead)
	}
	in.TaperAhead = 400 - 97
	if out := parttest.Must(t, Joints, in); out.SureAhead != AlikeOfAll || out.Joints[0].StandAhead != Alike {
		t.Errorf("97 N·m apart: %s, %s", out.SureAhead, out.Joints[0].StandAhead)
	}
}

// Of simulated lines whose joints are called apart, the named one is truly the
// weaker in 97 of 100 or more: a one-sided 97.5 %.
func TestToldApartIsRight(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 13))
	told, right := 0, 0
	for range 20000 {
		truth := [Count]float64{200 + 200*r.Float64(), 2000, 2000, 200 + 200*r.Float64()}
		in := whole()
		in.HubFlanksSides, in.TaperAheadSides, in.FacesAhead, in.BoreAhead = plain(30), plain(40), 2000, 2000
		in.HubFlanks = quantity.Torque(truth[0] + 30*r.NormFloat64())
		in.TaperAhead = quantity.Torque(truth[3] + 40*r.NormFloat64())
		out := parttest.Must(t, Joints, in)
		if out.SureAhead != OfAll {
			continue
		}
		told++
		if (out.WeakestAhead == Hub) == (truth[0] < truth[3]) {
			right++
		}
	}
	if told < 2000 || float64(right) < 0.975*float64(told) {
		t.Errorf("%d told apart, %d rightly", told, right)
	}
}

// The pull astern takes its part of the output flange's friction.
func TestPullTakesFriction(t *testing.T) {
	in := whole()
	in.HubDrive, in.HubPullMargin = DriveNone, 4
	out := parttest.Must(t, Joints, in)
	parttest.Near(t, "ahead", out.Joints[0].HeldAhead, 90, 1e-12)
	parttest.Near(t, "astern", out.Joints[0].HeldAstern, 67.5, 1e-12)
	in.HubPullMargin = 0.5
	parttest.Near(t, "open face", parttest.Must(t, Joints, in).Joints[0].HeldAstern, 0, 0)
}

// Of a nut without clamp the pull astern takes all, and a spline holds no hub on its
// shaft: nut and lock alone do, which counts as nothing astern and in a shock. Ahead the
// thrust presses the hub on, and the spline bears.
func TestNoClampHoldsNothingAstern(t *testing.T) {
	for _, drive := range []string{"spline", "key", ""} {
		in := whole()
		in.HubDrive = drive
		for _, c := range []struct{ margin, astern float64 }{{0, 0}, {0.99, 0}, {1, 400}, {30, 400}} {
			in.HubPullMargin = quantity.Ratio(c.margin)
			out := parttest.Must(t, Joints, in)
			hub := out.Joints[0]
			parttest.Near(t, "ahead", hub.HeldAhead, 400, 1e-12)
			parttest.Near(t, "astern", hub.HeldAstern, c.astern, 1e-12)
			if none := c.astern == 0; none != (hub.Astern == 0 && hub.Shock == 0 && out.WeakestAstern == Hub && out.LeastShock == 0) {
				t.Errorf("%s at %g: %+v", drive, c.margin, hub)
			}
		}
	}
}

func TestJointsRefuses(t *testing.T) {
	in := whole()
	in.PeakTorque, in.BoreAhead = -1, -2
	_, err := Joints(in)
	parttest.RefusedAt(t, err, "/peakTorque", "/boreAhead")
}

func TestJointsDoesNotAllocate(t *testing.T) {
	in := whole()
	if n := testing.AllocsPerRun(100, func() { _, _ = Joints(in) }); n != 0 {
		t.Errorf("%g allocations", n)
	}
}

// Of a flange whose spline nobody knows friction is the least that it holds: a
// margin of 1 or more by that is one, a lesser tells nothing. One that has
// friction alone is known by it, and every other joint by what it holds astern.
func TestMarginsOfEachJoint(t *testing.T) {
	in := whole()
	in.HubFlanks, in.ShaftTorque = quantity.Torque(math.NaN()), 100
	for friction, told := range map[quantity.Torque]bool{90: false, 99.9: false, 100: true, 150: true} {
		in.HubFriction = friction
		if out := parttest.Must(t, Joints, in); math.IsNaN(float64(out.Joints[0].Ahead)) == told || told && out.Joints[0].Ahead != quantity.Ratio(friction/100) {
			t.Errorf("at least %g N·m: margin %g", friction, out.Joints[0].Ahead)
		}
	}
	in = whole()
	in.HubDrive, in.HubFriction = DriveNone, 350
	for _, flanks := range []quantity.Torque{in.HubFlanks, quantity.Torque(math.NaN())} { // of which it has none
		in.HubFlanks = flanks
		if out := parttest.Must(t, Joints, in); out.Known != 4 || out.SureAhead != OfAll || out.Joints[0].Wanted != WantsNothing {
			t.Errorf("friction alone: %+v", out)
		}
	}
	in = whole()
	in.FacesAstern, in.BoreAstern, in.TaperAstern = 70, 84, 98 // of 140
	out := parttest.Must(t, Joints, in)
	for i, want := range []float64{400. / 140, 0.5, 0.6, 0.7} {
		parttest.Near(t, out.Joints[i].Joint, out.Joints[i].Astern, want, 1e-12)
	}
	if out.WeakestAstern != Faces || out.SureAstern != AlikeOfAll {
		t.Errorf("astern: %s, %s", out.WeakestAstern, out.SureAstern)
	}
}

// Without the pull astern a joint holds no more than ahead: less than the torque
// is told, and more is not.
func TestNoMoreAsternThanAhead(t *testing.T) {
	in := whole()
	in.BoreAhead, in.BoreAstern = 100, quantity.Torque(math.NaN())
	out := parttest.Must(t, Joints, in)
	if out.WeakestAstern != Bore || out.WeakestShock != Bore || out.Joints[2].Wanted != WantsPull || !math.IsNaN(float64(out.Joints[2].HeldAstern)) {
		t.Errorf("%+v", out)
	}
	parttest.Near(t, "astern", out.LeastAstern, 100./140, 1e-12)
	parttest.Near(t, "shock", out.LeastShock, 100./240, 1e-12)
	for _, ahead := range []quantity.Torque{140, 200} { // the torque astern and over it, under the peak
		in.BoreAhead = ahead
		if out = parttest.Must(t, Joints, in); out.WeakestAstern != Taper || !math.IsNaN(float64(out.LeastAstern)) || out.WeakestShock != Bore {
			t.Errorf("%+v", out)
		}
	}
	in.BoreAstern, in.BoreAhead = 50, 100 // what it holds astern is known
	parttest.Near(t, "astern", parttest.Must(t, Joints, in).LeastAstern, 50./140, 1e-12)
	in.BoreAstern, in.BoreAhead = quantity.Torque(math.NaN()), 250
	if out = parttest.Must(t, Joints, in); out.WeakestShock != Taper || !math.IsNaN(float64(out.LeastShock)) {
		t.Errorf("%+v", out)
	}
}

// Of a taper whose key is not known the friction is the least that it holds: 200 over
// 150 N·m is told, and surely stronger than a weakest of 160 N·m or not. The joints
// that are known are judged by themselves then.
func TestFrictionIsTheLeastThatATaperHolds(t *testing.T) {
	nan := quantity.Torque(math.NaN())
	in := whole()
	in.TaperAhead, in.TaperByFriction, in.TaperByFrictionSides = nan, 200, plain(5)
	out := parttest.Must(t, Joints, in)
	j := out.Joints[3]
	if j.Wanted != WantsKey || j.StandAhead != CouldBe || out.SureAhead != OfKnown || !math.IsNaN(float64(out.LeastAhead)) {
		t.Errorf("%+v; %+v", j, out)
	}
	parttest.Near(t, "at least", j.Ahead, 200./150, 1e-12)
	parttest.Near(t, "of those known", out.LeastKnownAhead, 400./150, 1e-12)
	in.FacesAhead, in.FacesAheadSides = 160, plain(5) // the weakest, and the taper holds more by friction alone
	if out = parttest.Must(t, Joints, in); out.Joints[3].StandAhead != Stronger || !(out.LeastAhead > 1) || !math.IsNaN(float64(out.LeastKnownAhead)) {
		t.Errorf("%+v", out)
	}
	in.TaperByFriction = 100 // under the torque friction alone tells nothing
	if out = parttest.Must(t, Joints, in); !math.IsNaN(float64(out.Joints[3].Ahead)) || !(out.LeastKnownAhead > 1) {
		t.Errorf("%+v", out)
	}
}

// A joint that the pull astern takes off its seat holds nothing, and says so; a flange
// on set screws, which is told, lacks its key.
func TestWhatHoldsNothingAsternSaysWhy(t *testing.T) {
	nan := quantity.Torque(math.NaN())
	out, err := Joints(JointsInput{ShaftTorque: 100, AsternTorque: 90, PeakTorque: 200, HubFriction: 400, HubFlanks: 900, HubPullMargin: 0.5, FacesAhead: 500, FacesAstern: 480,
		BoreAhead: nan, BoreAstern: nan, BoreByFriction: nan, TaperByFriction: nan, TaperAhead: 300, TaperAstern: 0, CouplingKey: nan, PropellerKey: nan, BoreHold: BoreByScrews})
	if err != nil {
		t.Fatal(err)
	}
	for i, want := range [Count]string{WantsHold, WantsNothing, WantsKey, WantsHold} {
		if got := out.Joints[i].Wanted; got != want {
			t.Errorf("%s: %q, want %q", out.Joints[i].Joint, got, want)
		}
	}
}

// A joint that holds no torque ahead lacks no figure: it says so, and does not ask for
// the pull astern; one of which nothing is known, or only its friction, still asks.
func TestAJointThatHoldsNothingAsksForNothing(t *testing.T) {
	nan := quantity.Torque(math.NaN())
	for _, c := range []struct {
		bore   quantity.Torque
		wanted string
	}{{0, WantsMending}, {nan, WantsBore}, {200, WantsPull}} {
		in := JointsInput{HubFriction: nan, HubFlanks: nan, HubPullMargin: quantity.Ratio(math.NaN()), FacesAhead: nan, FacesAstern: nan, BoreAhead: c.bore, BoreAstern: nan,
			TaperAhead: nan, TaperAstern: nan, BoreByFriction: nan, TaperByFriction: nan, CouplingKey: nan, PropellerKey: nan, ShaftTorque: 170, AsternTorque: 150, PeakTorque: 340}
		if out := parttest.Must(t, Joints, in); out.Joints[2].Wanted != c.wanted {
			t.Errorf("holds %g N·m: wants %s", float64(c.bore), out.Joints[2].Wanted)
		}
	}
}
