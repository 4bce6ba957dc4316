package catalogue_test

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/sheet"
)

// A joint that some of the bolts would hold shut and others not is not called
// shut: Shigley ch. 8, F_i/(1 − C), goes by the preload that is in the bolt.
func TestJointIsJudgedByTheClampReached(t *testing.T) {
	s := testboat.Run(t, "bolt-preload", `{"thread":"7/16-14 UNC","grade":"j429-5","finish":"zinc-shigley","nut":"ne-7/16-14","gripLength":"26 mm","externalLoad":"34 kN"}`, marinecalc.Options{})
	opens, reached, share := s.Result("separationLoad"), s.Result("achievedPreload"), s.Result("loadShare")
	for _, pair := range [][2]float64{{*opens.SI, *reached.SI}, {*opens.Low, *reached.Low}, {*opens.High, *reached.High}} {
		if want := pair[1] / (1 - *share.SI); math.Abs(pair[0]-want) > 0.005*want { // the share of the pull has a little spread of its own
			t.Errorf("opens at %v N, want %v", pair[0], want)
		}
	}
	if v := s.Verdict("joint-stays-closed"); v == nil || v.Word != "cannot tell" {
		t.Errorf("34 kN on a joint that opens somewhere from %v to %v N: %+v", opens.Low, opens.High, v)
	}
}

// The sheet says whether the wrench setting holds the prevailing torque of the
// nut. US Army TM 5-2330-325-13&P: by its rule it does from a third of the
// target on; on a 1/4-20 at a target of 70 lbf·in that is 23.3 lbf·in.
func TestPrevailingTorqueIsSaidToBeInTheSettingOrNot(t *testing.T) {
	for prevailing, want := range map[string]string{"0 N·m": "", "23 lbf·in": "nothing was added", "24 lbf·in": "add nothing more"} {
		s := testboat.Run(t, "bolt-preload", `{"nominalDiameter":"1/4 in","pitch":"1/20 in","threadForm":"inch","proofStrength":"85 ksi","yieldStrength":"92 ksi","nutFactor":0.2,"proofFraction":0.5176,"prevailingRule":"from-a-third","prevailingTorque":"`+prevailing+`"}`, marinecalc.Options{NoRanges: true})
		said := ""
		for _, step := range s.Next {
			for _, words := range []string{"nothing was added", "add nothing more"} {
				if strings.Contains(step.Text, words) {
					said += words
				}
			}
		}
		if said != want {
			t.Errorf("%s: the sheet says %q, want %q", prevailing, said, want)
		}
	}
}

// One wrench setting for nuts that turn as they like: 1/4-20 A4-50 with a lock
// nut of 1.5 to 40 lbf·in (ASME B18.16.6). At the ends of that the clamp is, by
// hand, 4.96 N·m less 0.17 or 4.52 N·m over 0.15 times 6.35 mm.
func TestTheSettingIsOneFigure(t *testing.T) {
	const input = `{"thread":"1/4-20 UNC","grade":"iso-a4-50","finish":"oiled","nut":"ne-1/4-20"`
	s := testboat.Run(t, "bolt-preload", input+`}`, marinecalc.Options{})
	set, clamp := s.Result("wrenchSetting"), s.Result("achievedPreload")
	if set.Low != nil {
		t.Errorf("the setting has a range: %+v", set)
	}
	least, most := (*set.SI-4.519)/(0.15*0.00635), (*set.SI-0.1695)/(0.15*0.00635)
	if *clamp.Low > least*1.4 || *clamp.High < most {
		t.Errorf("clamp %v to %v N, nuts alone make it %v to %v N", *clamp.Low, *clamp.High, least, most)
	}
	for _, limit := range []string{"bolt-proof-load", "bolt-yield", "bolt-tightening-stress", "bolt-too-loose"} {
		if v := s.Verdict(limit); v == nil || v.Word != "cannot tell" {
			t.Errorf("%s: %+v", limit, v)
		}
	}
	measured := testboat.Run(t, "bolt-preload", input+`,"prevailingTorque":"20 lbf·in"}`, marinecalc.Options{})
	for _, limit := range []string{"bolt-proof-load", "bolt-too-loose"} {
		if v := measured.Verdict(limit); v == nil || v.Word != "within" {
			t.Errorf("%s of a measured nut: %+v", limit, v)
		}
	}
}

// A torque typed as the question gives the clamp that the same torque gives as
// the setting, range and all.
func TestTheTorqueInQuestionIsTreatedAsTheSetting(t *testing.T) {
	for _, finish := range []string{"zinc-shigley", "oiled", "cadmium-shigley"} {
		s := testboat.Run(t, "bolt-preload", `{"thread":"7/16-14 UNC","grade":"j429-5","finish":"`+finish+`"}`, marinecalc.Options{})
		used := strconv.FormatFloat(*s.Result("wrenchSetting").SI, 'f', -1, 64) + " N·m ± 0.001 N·m"
		s = testboat.Run(t, "bolt-preload", `{"thread":"7/16-14 UNC","grade":"j429-5","finish":"`+finish+`","torqueUsed":"`+used+`"}`, marinecalc.Options{})
		a, b := s.Result("achievedPreload"), s.Result("preloadFromTorqueUsed")
		for _, pair := range [][2]*float64{{a.SI, b.SI}, {a.Low, b.Low}, {a.High, b.High}} {
			if math.Abs(*pair[0]-*pair[1]) > 0.002**pair[0] {
				t.Errorf("%s: %v N at the setting, %v N in question", finish, *pair[0], *pair[1])
			}
		}
		if x, y := s.Verdict("bolt-proof-load").Word, s.Verdict("bolt-torque-in-question").Word; x != y {
			t.Errorf("%s: %q at the setting, %q in question", finish, x, y)
		}
	}
}

// Both sides of a torque: M10 8.8, oiled, wants 37.8 N·m. An eighth of the
// clamp is a loose bolt; what the tensile strength cannot bear breaks it, as 120
// N·m do by nearly twice over, and a broken bolt clamps nothing.
func TestTorquesTooSmallAndTooGreat(t *testing.T) {
	for used, want := range map[string]map[string]string{
		"5 N·m":   {"torque-in-question-too-loose": "beyond", "bolt-torque-in-question": "within", "bolt-breaks": "within"},
		"38 N·m":  {"torque-in-question-too-loose": "within", "bolt-torque-in-question": "within", "bolt-breaks": "within"},
		"120 N·m": {"torque-in-question-too-loose": "not measured", "bolt-torque-in-question": "beyond", "bolt-breaks": "beyond"},
	} {
		s := testboat.Run(t, "bolt-preload", `{"thread":"M10x1.5","grade":"iso-8.8","finish":"oiled","torqueUsed":"`+used+`"}`, marinecalc.Options{})
		for limit, word := range want {
			if v := s.Verdict(limit); v == nil || string(v.Word) != word {
				t.Errorf("%s: %s: want %s, got %+v", used, limit, word, v)
			}
		}
		if clamp := s.Result("preloadFromTorqueUsed"); (clamp != nil) != (used != "120 N·m") {
			t.Errorf("%s: clamps %+v", used, clamp)
		} else if clamp != nil && *clamp.SI > *s.Result("breakingLoad").SI {
			t.Errorf("%s: a bolt that breaks at %v N clamps %v N", used, *s.Result("breakingLoad").SI, *clamp.SI)
		}
	}
}

// What the joint needs is held against when it is typed.
func TestTheClampThatTheJointNeeds(t *testing.T) {
	for needed, want := range map[string]string{"10 kN": "within", "40 kN": "beyond"} {
		s := testboat.Run(t, "bolt-preload", `{"thread":"M10x1.5","grade":"iso-8.8","finish":"oiled","torqueUsed":"38 N·m","clampNeeded":"`+needed+`"}`, marinecalc.Options{})
		for _, limit := range []string{"bolt-clamp-needed", "torque-in-question-needed"} {
			if v := s.Verdict(limit); v == nil || string(v.Word) != want {
				t.Errorf("%s needed: %s: %+v", needed, limit, v)
			}
		}
	}
}

// One rule for stainless bolts, whose standards publish no proof stress: 0.85
// of yield (Shigley ch. 8). Equal strengths get equal torques by ISO 3506 and
// ASTM F593.
func TestStainlessHasOneProofRule(t *testing.T) {
	for _, grade := range []string{"iso-a2-50", "iso-a4-70", "iso-a4-80", "f593c", "f593g"} {
		s := testboat.Run(t, "bolt-preload", `{"thread":"1/2-13 UNC","grade":"`+grade+`","finish":"oiled"}`, marinecalc.Options{NoRanges: true})
		if got := *s.Result("proofStress").SI / *s.Input("yieldStrength").SI; math.Abs(got-0.85) > 1e-12 {
			t.Errorf("%s: proof is %v of yield", grade, got)
		}
	}
}

// What was measured at the bolts is kept in the boat file, in a dated reading
// too, and comes back: the newest torque and prevailing torque, with the day.
func TestTorquesOfTheBoltsAreKept(t *testing.T) {
	s := testboat.RunOn(t, `{"name": "Tern", "coupling": {"bolts": {"thread": "M10x1.5", "grade": "iso-8.8", "finish": "oiled", "torqueUsed": "30 N·m", "prevailingTorque": "2 N·m"}},
		"readings": [{"date": "2026-03-01", "coupling": {"bolts": {"torqueUsed": "46 N·m", "prevailingTorque": "4 N·m"}}}]}`, "bolt-preload", `{}`)
	for name, want := range map[string]float64{"torqueUsed": 46, "prevailingTorque": 4} {
		in := s.Input(name)
		if in == nil || in.SI == nil || *in.SI != want || in.Origin != "boat" {
			t.Errorf("%s: %+v", name, in)
		}
	}
	if v := s.Verdict("bolt-torque-in-question"); v == nil || v.Word == "not measured" {
		t.Errorf("the torque that was used is not judged: %+v", v)
	}
}

// Growth and settling are judged on both sides, and the way that measures goes
// before the way that estimates.
func TestBoltReadingsAreJudgedOnBothSides(t *testing.T) {
	const bolt = `{"thread": "M10x1.5", "grade": "iso-8.8", "finish": "oiled", "gripLength": "24 mm", `
	for _, c := range []struct {
		rest, limit string
		want        sheet.Word
	}{
		{`"freeLengthNew": "46.400 ± 0.002 mm", "freeLength": "46.403 ± 0.002 mm"}`, "bolt-grown", sheet.Within},
		{`"freeLengthNew": "46.400 ± 0.002 mm", "freeLength": "46.43 ± 0.002 mm"}`, "bolt-grown", sheet.Beyond},
		{`"freeLengthNew": "46.400 ± 0.002 mm", "freeLength": "46.396 ± 0.002 mm"}`, "bolt-shrunk", sheet.Within},
		{`"freeLengthNew": "46.400 ± 0.002 mm", "freeLength": "46.37 ± 0.002 mm"}`, "bolt-shrunk", sheet.Beyond},
		{`"clampedFaces": 1, "stretchMeasured": "70 µm"}`, "bolt-settled", sheet.Within},
		{`"clampedFaces": 1, "stretchMeasured": "20 µm"}`, "bolt-settled", sheet.Beyond},
		{`"clampedFaces": 1, "retorque": "not-yet", "stretchMeasured": "70 µm"}`, "bolt-settled-not-yet", sheet.Within},
		{`"clampedFaces": 1, "retorque": "not-yet", "stretchMeasured": "20 µm"}`, "bolt-settled-not-yet", sheet.Beyond},
	} {
		s := runInput(t, "bolt-preload", bolt+c.rest, "metric")
		if got := verdictsOf(s)[c.limit].Word; got != c.want && !(c.want == sheet.Within && got == sheet.NearLimit) {
			t.Errorf("%s of %s: %s, want %s", c.limit, c.rest, got, c.want)
		}
	}
	s := runInput(t, "bolt-preload", `{"thread": "M10x1.5", "grade": "iso-8.8", "finish": "oiled", "gripLength": "24 mm", "clampedFaces": 1, "retorque": "done"}`, "metric")
	if _, judged := verdictsOf(s)["bolt-settled"]; judged {
		t.Error("what was taken up is judged as lost")
	}
}

// Stretch and torque of one bolt that tell of different clamps are told to disagree, and
// nothing that rests on one of them is OK; where they agree nothing is told.
func TestStretchAndTorqueOfOneBolt(t *testing.T) {
	for stretch, agrees := range map[string]bool{"0.15 mm": false, "0.085 mm": true} {
		s := runInput(t, "bolt-preload", `{"thread":"M10x1.5","grade":"iso-8.8","finish":"oiled","gripLength":"24 mm","torqueUsed":"35 N·m","stretchMeasured":"`+stretch+`"}`, "metric")
		if (len(s.Conflicts) == 0) != agrees {
			t.Errorf("%s: %+v", stretch, s.Conflicts)
		}
		for _, limit := range []string{"bolt-torque-in-question", "torque-in-question-too-loose", "bolt-measured-proof"} {
			if v := s.Verdict(limit); !agrees && v != nil && v.Word == sheet.Within {
				t.Errorf("%s: %s", stretch, v.Sentence)
			}
		}
		if v := s.Verdict("bolt-yield"); v.Word != sheet.Within {
			t.Errorf("%s: the target %s", stretch, v.Sentence)
		}
	}
}

// Nothing typed where something must have been read is refused with what to do:
// Hooke's law makes a bolt without stretch one without clamp.
func TestNothingReadIsExplained(t *testing.T) {
	for input, says := range map[string]string{`"stretchMeasured": "0 mm"`: "A bolt without stretch clamps nothing", `"turnMeasured": "0°"`: "clamps nothing: tighten it", `"gripLength": "0 mm"`: "leave it out where it was not measured"} {
		_, err := marinecalc.Run("bolt-preload", []byte(`{"thread": "M10", "grade": "iso-8.8", "finish": "oiled", `+input+`}`), marinecalc.Options{})
		if err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%s: %v", input, err)
		}
	}
}
