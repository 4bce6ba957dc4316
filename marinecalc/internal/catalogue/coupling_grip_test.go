package catalogue_test

import (
	"fmt"
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

// Two grades at the bolt's own size: 1-8 UNC of SAE J429 has 85 ksi of proof in
// grade 5 and 33 ksi in grade 2, whatever the small sizes have.
func TestTheLowerGradeIsLookedUpAtTheBoltsSize(t *testing.T) {
	const flange = `{"boltCount":6,"boltCircle":"8 in","faces":"steel-dry","preload":"30 kN","shaftTorque":"2 kN·m","grade":"j429-5","lowerGrade":"j429-2","thread":`
	for thread, want := range map[string]float64{`"1-8 UNC"}`: 33. / 85, `"3/4-10 UNC"}`: 55. / 85} {
		s := testboat.Run(t, "coupling-grip", flange+thread, marinecalc.Options{NoRanges: true})
		if r := s.Result("gradeRatio"); r == nil || math.Abs(*r.SI-want) > 1e-12 {
			t.Errorf("%s: %+v, want %v", thread, r, want)
		}
		if in := s.Input("yieldStrength"); in == nil || math.Abs(*in.SI/6.894757293e6-92) > 1e-6 {
			t.Errorf("%s: the lower grade fills the bolt's own: %+v", thread, in)
		}
	}
	_, err := marinecalc.Run("coupling-grip", []byte(strings.Replace(flange, "j429-2", "j429-8", 1)+`"1-8 UNC"}`), marinecalc.Options{NoRanges: true})
	if err == nil || !strings.Contains(err.Error(), "/lowerGrade") {
		t.Errorf("a stronger grade as the lower one: %v", err)
	}
}

// The margin that is wanted is held against when it is typed: 4 bolts of 25 kN
// at 0.15 on 82.5 mm hold 618.75 N·m by Coulomb's law, 1.82 times 340 N·m.
func TestTheWantedMargin(t *testing.T) {
	for wanted, word := range map[string]string{"1.5": "within", "2": "beyond"} {
		s := testboat.Run(t, "coupling-grip", `{"boltCount":4,"boltCircle":"82.5 mm","faceFriction":0.15,"preload":"25 kN","shaftTorque":"170 N·m","peakTorque":"340 N·m","thrustOnCoupling":0,"wantedMargin":`+wanted+`}`, marinecalc.Options{NoRanges: true})
		if v := s.Verdict("grip-wanted"); v == nil || string(v.Word) != word {
			t.Errorf("%s wanted: %+v", wanted, v)
		}
	}
}

// Bolts in tapped holes clamp no more than strips their threads: the slip torque and
// the weakest joint of the line go by the lesser of the two, and fall to nothing where
// no turn bears.
func TestSlipTorqueGoesByTheThreadThatStrips(t *testing.T) {
	boat := func(length string) string {
		return fmt.Sprintf(`{"name":"Knot","units":"metric","engine":{"power":"20 kW","speed":"3000 rpm"},"gearbox":{"ratioAhead":"2.5","ratioAstern":"2.5"},"coupling":{"boltCount":4,"boltCircle":"80 mm","faces":"steel-dry","bolts":{"thread":"M10x1.5","grade":"iso-8.8","finish":"oiled","grip":"12 mm"},"tapped":{"metal":"aluminium-cast","engagementLength":"%s","condition":"sound","fastener":"bolt"}}}`, length)
	}
	held := map[string]float64{}
	for _, length := range []string{"1 mm", "4 mm", "25 mm"} {
		s := testboat.RunOn(t, boat(length), "coupling-grip", `{}`)
		held[length] = *s.Result("frictionCapacity").SI
		strips := *testboat.RunOn(t, boat(length), "thread-engagement", `{}`).Result("strippingLoad").SI
		used := *s.Result("clampUsed").SI
		if want := min(*s.Input("preload").SI, max(strips, 1e-6)); used > want*1.0001 || used < want*0.9999 {
			t.Errorf("%s: %g N used, want %g", length, used, want)
		}
		line := testboat.RunOn(t, boat(length), "line-joints", `{}`)
		if ahead := line.Result("leastAhead"); length != "25 mm" && (ahead == nil || *ahead.SI > 1) || length == "25 mm" && ahead != nil && ahead.SI != nil && *ahead.SI < 1 {
			t.Errorf("%s: the line holds %+v ahead", length, ahead)
		}
	}
	if !(held["1 mm"] < 0.1 && held["4 mm"] < held["25 mm"]/2) {
		t.Errorf("held: %v", held)
	}
}
