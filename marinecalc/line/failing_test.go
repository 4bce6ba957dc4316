package line

import (
	"math"
	"testing"

	"example.org/driveline/marinecalc/internal/parttest"
	"example.org/driveline/marinecalc/quantity"
)

// Every joint that holds less than the torque is named, worst first: what holds
// nothing before what gives way in use, and that before what gives way in a shock.
func TestEveryJointThatFailsIsNamedWorstFirst(t *testing.T) {
	in := whole()
	in.HubPullMargin, in.TaperAstern = 0.5, 0 // both hold nothing astern
	in.FacesAhead, in.FacesAstern = 140, 135  // of 150 ahead
	in.BoreAstern = 200                       // of 240 in a shock
	out := parttest.Must(t, Joints, in)
	want := [Count]Failing{{Hub, NothingAstern, NoPower}, {Taper, NothingAstern, NoAstern}, {Faces, GivesAhead, NoPower}, {Bore, GivesShock, NoShock}}
	if out.First != want {
		t.Errorf("%+v", out.First)
	}
	in = whole()
	in.BoreAstern, in.TaperAstern, in.FacesAhead, in.FacesAstern = 120, 100, 0, 0 // astern 120 and 100 of 140
	want = [Count]Failing{{Faces, HoldsNothing, NoPower}, {Taper, GivesAstern, NoAstern}, {Bore, GivesAstern, NoAstern}}
	if out = parttest.Must(t, Joints, in); out.First != want {
		t.Errorf("%+v", out.First)
	}
	if out = parttest.Must(t, Joints, whole()); out.First != ([Count]Failing{}) || out.FoundLoose != "" {
		t.Errorf("of a sound line: %+v", out.First)
	}
	in = whole()
	in.ShaftTorque, in.AsternTorque, in.PeakTorque = 300, 290, 290 // the taper just holds
	if out = parttest.Must(t, Joints, in); out.Joints[3].Ahead != 1 || out.First != ([Count]Failing{}) {
		t.Errorf("of a line that just holds: %+v", out.First)
	}
	in = whole()
	in.HubFlanks = quantity.Torque(math.NaN()) // its friction is below the torque, and tells nothing
	if out = parttest.Must(t, Joints, in); out.First != ([Count]Failing{}) {
		t.Errorf("of one that is not known: %+v", out.First)
	}
}

// A joint found loose goes before all others, has no margin, and is not ranked; the
// play of a coupling does not tell which of its two joints moves.
func TestWhatWasFoundLooseGoesFirst(t *testing.T) {
	for _, c := range []struct {
		found         Loose
		named, first  string
		moves         [Count]bool
		weakest, sure string
	}{
		{Loose{Taper: true}, Taper, Taper, [Count]bool{3: true}, Hub, OfOthers},
		{Loose{Hub: true}, Hub, Hub, [Count]bool{true}, Taper, OfOthers},
		{Loose{Coupling: true}, Coupling, Coupling, [Count]bool{1: true, 2: true}, Taper, OfOthers},
		{Loose{Hub: true, Taper: true}, Several, Hub, [Count]bool{0: true, 3: true}, Bore, AlikeOfOther},
		{Loose{Coupling: true, Taper: true}, Several, Coupling, [Count]bool{1: true, 2: true, 3: true}, Hub, OfOthers},
	} {
		in := whole()
		in.FacesAhead, in.FacesAstern = 510, 490                   // as weak as the bore
		in.BoreAstern, in.PeakTorque, in.TaperAstern = 300, 310, 0 // and it holds less than a shock
		out, err := JointsFound(in, c.found)
		if err != nil {
			t.Fatal(err)
		}
		if out.FoundLoose != c.named || out.First[0] != (Failing{c.first, IsLoose, NoPower}) || out.WeakestAhead != c.weakest || out.SureAhead != c.sure {
			t.Errorf("%+v: %s, %+v, %s %s", c.found, out.FoundLoose, out.First, out.WeakestAhead, out.SureAhead)
		}
		for i, j := range out.Joints {
			if moves := j.StandAhead == StandsLoose && j.StandShock == StandsLoose && math.IsNaN(float64(j.Ahead)) && math.IsNaN(float64(j.HeldAstern)) && j.Wanted == WantsTight; moves != c.moves[i] {
				t.Errorf("%+v: %+v", c.found, j)
			}
		}
		for _, f := range out.First[1:] {
			if f.Joint == c.first {
				t.Errorf("%+v: twice in %+v", c.found, out.First)
			}
		}
	}
	nan := quantity.Torque(math.NaN())
	out, err := JointsFound(JointsInput{HubFriction: nan, HubFlanks: nan, HubPullMargin: quantity.Ratio(math.NaN()), FacesAhead: nan, FacesAstern: nan, BoreAhead: nan, BoreAstern: nan,
		TaperAhead: 300, TaperAstern: 290, BoreByFriction: nan, TaperByFriction: nan, CouplingKey: nan, PropellerKey: nan}, Loose{Taper: true})
	if err != nil || out.WeakestAhead != NoneKnown || out.Joints[3].StandAhead != StandsLoose || out.First[0].Joint != Taper {
		t.Errorf("the only one known moves: %v, %+v", err, out)
	}
}

// Of an output flange of which one way to hold is known the other is wanted, and the
// pull where only that leaves open what it holds astern.
func TestTheOutputFlangeWantsWhatItLacks(t *testing.T) {
	nan := quantity.Torque(math.NaN())
	for _, c := range []struct {
		friction, flanks quantity.Torque
		pull             quantity.Ratio
		wanted           string
	}{{nan, nan, 30, WantsFriction}, {90, nan, 30, WantsFlanks}, {nan, 400, 30, WantsFriction}, {90, 400, 30, WantsNothing}, {500, 400, quantity.Ratio(math.NaN()), WantsPull}} {
		in := whole()
		in.HubFriction, in.HubFlanks, in.HubPullMargin = c.friction, c.flanks, c.pull
		if got := parttest.Must(t, Joints, in).Joints[0].Wanted; got != c.wanted {
			t.Errorf("%+v: %s", c, got)
		}
	}
}

// Beside a joint that a look found loose the line holds nothing that counts: the margin
// of the others is one of those known, what falls short stays so, and what is calculated
// of the loose joint counts where it falls short.
func TestALineBesideALooseJoint(t *testing.T) {
	nan := quantity.Torque(math.NaN())
	in := JointsInput{ShaftTorque: 100, AsternTorque: 80, PeakTorque: 150, HubDrive: DriveNone, HubFriction: 300, HubFlanks: nan, HubPullMargin: 10, FacesAhead: 400, FacesAstern: 390, BoreAhead: 350, BoreAstern: 340,
		TaperAhead: 320, TaperAstern: 310, BoreByFriction: nan, TaperByFriction: nan, CouplingKey: nan, PropellerKey: nan}
	for _, c := range []struct {
		faces, taper quantity.Torque
		found        Loose
		least, known float64 // ahead
	}{
		{400, 320, Loose{Faces: true, Looked: true}, math.NaN(), 3}, {50, 320, Loose{Faces: true, Looked: true}, 0.5, math.NaN()}, {400, 60, Loose{Faces: true, Looked: true}, 0.6, math.NaN()},
		{50, 60, Loose{Faces: true, Looked: true}, 0.5, math.NaN()}, {400, 320, Loose{Coupling: true}, 3, math.NaN()},
		{100, 320, Loose{Faces: true, Looked: true}, math.NaN(), 3}, {400, 100, Loose{Faces: true, Looked: true}, math.NaN(), 1},
	} {
		in.FacesAhead, in.TaperAhead = c.faces, c.taper
		out, err := JointsFound(in, c.found)
		same := func(got quantity.Ratio, want float64) bool {
			return math.IsNaN(want) && math.IsNaN(float64(got)) || math.Abs(float64(got)-want) < 1e-12
		}
		if err != nil || !same(out.LeastAhead, c.least) || !same(out.LeastKnownAhead, c.known) {
			t.Errorf("%+v: %g, of those known %g, %v", c, out.LeastAhead, out.LeastKnownAhead, err)
		}
	}
}
