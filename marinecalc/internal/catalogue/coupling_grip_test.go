package catalogue_test

import (
	"math"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
)

// The pull astern on the coupling is that on the engine's mounts: two
// calculations of one boat do not differ. Where nobody knows it, the grip
// astern is not measured; without a peak torque nor is that in a shock, and
// the sheet says what the rest goes by.
func TestGripAsternCountsThePull(t *testing.T) {
	o := marinecalc.Options{Boat: testboat.Demo(t, "kittiwake"), NoRanges: true}
	grip, mounts := testboat.Run(t, "coupling-grip", `{}`, o), testboat.Run(t, "mount-load", `{}`, o)
	pull := 1.0
	for _, name := range []string{"thrust", "asternThrust"} {
		a, b := grip.Input(name), mounts.Input(name)
		if a == nil || b == nil || *a.SI != *b.SI || a.Origin != b.Origin || a.Source != b.Source {
			t.Fatalf("%s: %+v at the coupling, %+v at the mounts", name, a, b)
		}
		pull *= *a.SI
	}
	if r := grip.Result("pullAstern"); r == nil || math.Abs(*r.SI-pull) > 1e-9*pull {
		t.Errorf("pull astern %+v, want %g N", r, pull)
	}
	if !(*grip.Result("capacityAstern").SI < *grip.Result("frictionCapacity").SI) {
		t.Error("the pull takes nothing of the grip")
	}

	s := runInput(t, "coupling-grip", `{"boltCount":4,"boltCircle":"82.5 mm","faces":"steel-dry","preload":"25 kN","shaftTorque":"170 N·m","asternTorque":"150 N·m"}`, "metric")
	for limit, says := range map[string]string{"grip-astern": "propeller's thrust", "grip-peak": "peak torque"} {
		if v := verdictsOf(s)[limit]; v.Word != "not measured" || !strings.Contains(v.Sentence, says) {
			t.Errorf("%s: %+v", limit, v)
		}
	}
	if r := s.Result("hardestCase"); r == nil || r.Text != "the steady torque ahead" {
		t.Errorf("the sheet says of its hardest torque: %+v", r)
	}
	if v := verdictsOf(s)["grip-one-loose"]; !strings.Contains(v.Title, "hardest torque known") {
		t.Errorf("%+v", v)
	}
}

// A flange that nobody can drill is refused at the place of the boat file it
// came from, with the figure that shows it.
func TestImpossibleFlangeOfTheBoatIsBlamedOnTheBoat(t *testing.T) {
	boat := testboat.Read(t, strings.Replace(boltedBoat, `"boltCircle":"82.5 mm"`, `"boltCircle":"34 mm"`, 1))
	_, err := marinecalc.Run("coupling-grip", []byte(`{}`), marinecalc.Options{Boat: boat, NoRanges: true})
	if err == nil || !strings.Contains(err.Error(), "/boat/coupling/boltCircle") || !strings.Contains(err.Error(), "36 mm") {
		t.Errorf("%v", err)
	}
}
