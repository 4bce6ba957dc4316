package survey_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/survey"
	"example.org/driveline/marinecalc/internal/testboat"
)

// torqued is a boat whose coupling bolts were tightened at a torque.
func torqued(t *testing.T, torque string) *survey.Survey {
	t.Helper()
	return testboat.Check(t, testboat.Read(t, fmt.Sprintf(`{"name": "Test",
		"engine": {"power": "30 kW", "speed": "2600 rpm"}, "gearbox": {"ratioAhead": "2"},
		"coupling": {"kind": "rigid", "diameter": "120 mm", "boltCount": 6, "boltCircle": "96 mm", "headFlangeThickness": "14 mm", "nutFlangeThickness": "14 mm", "faces": "steel-dry",
			"bolts": {"thread": "M10x1.5", "grade": "iso-8.8", "finish": "oiled", "nut": "plain-nut", "grip": "28 mm"}},
		"makersFigures": [{"of": "bolt-preload/torqueUsed", "value": %q, "source": {"document": "Invented"}}]}`, torque)), marinecalc.Options{Trials: 200})
}

// A bolt that its torque breaks has no clamp: nothing is to be measured for it.
// The same bolt at a torque that it bears has one.
func TestABrokenBoltHasNoClampToMeasure(t *testing.T) {
	s := torqued(t, "115 N·m")
	lacks := slices.IndexFunc(s.Missing, func(m survey.Missing) bool { return m.Calculation == "coupling-grip" })
	if lacks < 0 || !strings.Contains(s.Missing[lacks].Needs[0].How, "that torque breaks the weakest bolt of the grade, and what this one clamps then is not known. Put that right first.") {
		t.Errorf("the coupling's grip lacks %+v", s.Missing)
	}
	for _, m := range s.Measure {
		for _, waits := range slices.Concat(m.Settles, m.Helps) {
			if waits.Calculation == "coupling-grip" {
				t.Errorf("%s", m.Text)
			}
		}
		if slices.Contains(m.With, "Clamp of one bolt") || m.Title == "Clamp of one bolt" {
			t.Errorf("%s", m.Text)
		}
	}
	for _, m := range torqued(t, "35 N·m").Missing {
		if m.Calculation == "coupling-grip" {
			t.Errorf("with a torque that the bolt bears it lacks %+v", m.Needs)
		}
	}
}

// Where nothing of the bolts is known, what stands on their heads is asked for,
// and not the clamp that follows from it.
func TestAClampIsWorkedOutAndNotChosen(t *testing.T) {
	s := testboat.Check(t, testboat.Read(t, `{"name": "Test", "engine": {"power": "30 kW", "speed": "2600 rpm"}, "gearbox": {"ratioAhead": "2.3"}, "coupling": {"kind": "rigid", "diameter": "110 mm"}}`), marinecalc.Options{NoRanges: true})
	asked := map[string]bool{}
	for _, m := range s.Measure {
		asked[m.Title] = true
		if m.Title == "Clamp of one bolt" || slices.Contains(m.With, "Clamp of one bolt") {
			t.Errorf("%s", m.Text)
		}
	}
	if !asked["Thread"] || !asked["Grade"] {
		t.Errorf("it asks for %v", asked)
	}
}

// Of several things that a verdict wants it asks for those that are not known.
func TestWhatIsTypedIsNotAskedFor(t *testing.T) {
	const gaps = `[{"clock": "0°", "gap": "0.6 mm"}, {"clock": "90°", "gap": "0.4 mm"}, {"clock": "180°", "gap": "0.2 mm"}, {"clock": "270°", "gap": "0.4 mm"}]`
	for _, c := range []struct{ name, id, input, limit, asks, not string }{
		{"neither", "coupling-alignment", `{"couplingDiameter": "110 mm", "couplingKind": "flexible", "readings": ` + gaps + `}`, "flexible-offset", "Read the rim offset. Type the offset", "gap"},
		{"the allowance", "coupling-alignment", `{"couplingDiameter": "110 mm", "couplingKind": "flexible", "offsetAllowance": "0.5 mm", "readings": ` + gaps + `}`, "flexible-offset", "not measured. Read the rim offset.", "Type"},
		{"the gap", "coupling-alignment", `{"couplingDiameter": "110 mm", "couplingKind": "flexible", "readings": ` + gaps + `}`, "flexible-gap", "nothing to hold it against yet. Type the face gap that", "Part"},
		{"the pull", "bolt-preload", `{"thread": "M10x1.5", "grade": "iso-8.8", "finish": "oiled", "externalLoad": "1 kN"}`, "joint-stays-closed", "Measure the grip.", "Type"},
		{"the grip", "bolt-preload", `{"thread": "M10x1.5", "grade": "iso-8.8", "finish": "oiled", "gripLength": "28 mm"}`, "joint-stays-closed", "Type the pull on one bolt", "grip"},
		{"the clearance", "bearing-clearance", `{"shaftDiameter": "120 mm", "bearingClearance": "0.5 mm"}`, "worn-limit", "Type the bearing maker's worn limit", "Lift"},
		{"the moment", "shaft-strength", `{"shaftDiameter": "32 mm", "shaftPower": "20 kW", "shaftSpeed": "1000 rpm", "bendingMoment": "50 N·m"}`, "shaft-fatigue", "Choose the metal", "Type the bending"},
	} {
		v := testboat.Run(t, c.id, c.input, marinecalc.Options{NoRanges: true}).Verdict(c.limit)
		if v == nil || v.Word != "not measured" {
			t.Errorf("%s: %+v", c.name, v)
			continue
		}
		_, says, _ := strings.Cut(v.Sentence, ". ")
		if !strings.Contains(v.Sentence, c.asks) || strings.Contains(says, c.not) {
			t.Errorf("%s: %s", c.name, v.Sentence)
		}
	}
}

// The advice to type a maker's limits is left out once one is typed.
func TestMakersLimitsAreAskedForOnce(t *testing.T) {
	const gaps = `"couplingDiameter": "110 mm", "couplingKind": "flexible", "readings": [{"clock": "0°", "gap": "0.6 mm"}, {"clock": "90°", "gap": "0.4 mm"}, {"clock": "180°", "gap": "0.2 mm"}, {"clock": "270°", "gap": "0.4 mm"}]`
	for input, asks := range map[string]bool{`{` + gaps + `}`: true, `{"gapAllowance": 0.002, ` + gaps + `}`: false, `{"offsetAllowance": "0.3 mm", ` + gaps + `}`: false} {
		s := testboat.Run(t, "coupling-alignment", input, marinecalc.Options{NoRanges: true})
		if got := strings.Contains(testboat.Text(t, s.Next), "Type what the coupling's maker allows"); got != asks {
			t.Errorf("%s: asked for the maker's limits: %t", input, got)
		}
	}
}

// Where the clamp is lost in some trials because the bolt breaks in them, the
// verdict says so beside the range, which is of the others.
func TestATorqueThatMayBreakTheBolt(t *testing.T) {
	for torque, may := range map[string]bool{"60 N·m": true, "35 N·m": false} {
		s := testboat.Run(t, "bolt-preload", `{"thread": "M10x1.5", "grade": "iso-8.8", "finish": "oiled", "torqueUsed": "`+torque+`"}`, marinecalc.Options{Trials: 1000})
		v := s.Verdict("torque-in-question-too-loose")
		if v == nil || strings.Contains(v.Sentence, "that torque breaks the weakest bolt of the grade") != may || (v.Word == "within") == may {
			t.Errorf("%s: %+v", torque, v)
		}
	}
}
