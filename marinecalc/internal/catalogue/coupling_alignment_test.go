package catalogue_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
)

const (
	evenGaps  = `{"clock": "0°", "gap": "0.4 mm"}, {"clock": "90°", "gap": "0.4 mm"}, {"clock": "180°", "gap": "0.4 mm"}, {"clock": "270°", "gap": "0.4 mm"}`
	openGaps  = `{"clock": "0°", "gap": "0.6 mm"}, {"clock": "90°", "gap": "0.4 mm"}, {"clock": "180°", "gap": "0.2 mm"}, {"clock": "270°", "gap": "0.4 mm"}`
	quarterOn = `, {"clock": "0°", "gap": "0.4 mm", "turn": "90°"}, {"clock": "90°", "gap": "0.4 mm", "turn": "90°"}, {"clock": "180°", "gap": "0.4 mm", "turn": "90°"}, {"clock": "270°", "gap": "0.4 mm", "turn": "90°"}`
)

// dialled is a rim read with a dial, the engine flange so much too high, in as
// many positions of the shaft as turns names.
func dialled(high string, turns ...string) string {
	var steps []string
	for _, turn := range append([]string{"0°"}, turns...) {
		for clock, step := range map[string]string{"0°": high, "90°": "0 mm", "180°": "-" + high, "270°": "0 mm"} {
			steps = append(steps, `{"clock": "`+clock+`", "step": "`+step+`", "turn": "`+turn+`"}`)
		}
	}
	return `, "rimGauge": "dial-indicator", "rimReadings": [` + strings.Join(steps, ", ") + `]`
}

// A rigid coupling is called good enough to bolt up only when gap, offset and
// run-out are within and the shaft was turned: parallel faces alone do not line
// up two shafts, and one position of the shaft hides a crooked flange.
func TestBoltingUpAsksForAll(t *testing.T) {
	const boltUp, readRim, turn, whole = "good enough to bolt up", "read the rim offset too", "only that tells a crooked flange", "Move the whole engine over"
	for _, c := range []struct {
		what, gaps, rest, offset string
		wanted, unwanted         []string
	}{
		{"5 mm misaligned", evenGaps, dialled("5 mm"), "beyond", []string{whole, turn}, []string{boltUp, readRim}},
		{"5 mm misaligned, turned", evenGaps + quarterOn, dialled("5 mm"), "beyond", []string{whole}, []string{boltUp, readRim, turn}},
		{"0.1 mm misaligned, turned", evenGaps + quarterOn, dialled("0.1 mm"), "cannot tell", nil, []string{boltUp}}, // over what one maker allows, not over what a manual prints
		{"0.2 mm misaligned, turned", evenGaps + quarterOn, dialled("0.2 mm"), "beyond", []string{whole}, []string{boltUp}},
		{"no rim read", evenGaps, "", "not measured", []string{readRim, turn}, []string{boltUp}},
		{"no rim read, turned", evenGaps + quarterOn, "", "not measured", []string{readRim}, []string{boltUp, turn}},
		{"in line, not turned", evenGaps, dialled("0.01 mm"), "cannot tell", []string{turn}, []string{boltUp, readRim}},
		{"in line, the rim not turned", evenGaps + quarterOn, dialled("0.01 mm"), "cannot tell", nil, []string{boltUp, readRim, turn}},
		{"in line, turned", evenGaps + quarterOn, dialled("0.01 mm", "90°"), "within", []string{boltUp}, []string{readRim, turn}},
		{"in line, faces open", openGaps, dialled("0.01 mm", "90°"), "within", nil, []string{boltUp, readRim}},
		{"in line, turned, but not for the rule chosen", evenGaps + quarterOn, dialled("0.01 mm", "90°") + `, "toleranceTable": "army-feeler", "gapGauge": "straight-edge"`, "within", nil, []string{boltUp}},
		{"in line, by a straight edge", evenGaps + quarterOn, strings.Replace(dialled("0.02 mm", "90°"), "dial-indicator", "straight-edge", 1), "cannot tell", []string{"only at exactly nothing"}, []string{boltUp}},
	} {
		s := testboat.Run(t, "coupling-alignment", `{"couplingKind": "rigid", "couplingDiameter": "102 mm", "pilot": "parted", "readings": [`+c.gaps+`]`+c.rest+`}`, marinecalc.Options{})
		if v := s.Verdict("rigid-flange-offset"); v == nil || string(v.Word) != c.offset {
			t.Errorf("%s: the offset is %+v", c.what, v)
		}
		advises(t, c.what, s, c.wanted, c.unwanted)
	}
}

// crooked is a coupling read at four places in four positions of the shaft,
// with no misalignment and so much run-out of face and rim in all.
func crooked(face, rim float64) string {
	var gaps, steps []string
	for turn := range 4 {
		for clock := range 4 {
			way := math.Cos(float64(clock-turn) * math.Pi / 2)
			at := fmt.Sprintf(`{"clock": "%d°", "turn": "%d°", `, 90*clock, 90*turn)
			gaps = append(gaps, at+fmt.Sprintf(`"gap": "%.3f mm"}`, 0.6+face/2*way))
			steps = append(steps, at+fmt.Sprintf(`"step": "%.3f mm"}`, rim/2*way))
		}
	}
	return `{"couplingKind": "rigid", "couplingDiameter": "102 mm", "pilot": "parted", "rimGauge": "dial-indicator", "readings": [` + strings.Join(gaps, ", ") + `], "rimReadings": [` + strings.Join(steps, ", ") + `]}`
}

// A flange that wobbles is not bolted up, however true the engine stands, and
// it is the flange that is to be trued, not the engine moved.
func TestCrookedFlange(t *testing.T) {
	const boltUp, move, true1, true2 = "good enough to bolt up", "Move the mounts", "have the flange faced on its shaft", "Hold a dial to the shaft itself"
	for _, c := range []struct {
		face, rim        float64
		words            map[string]string
		wanted, unwanted []string
	}{
		{0.3, 0.4, map[string]string{"face-run-out": "beyond", "rim-run-out": "beyond", "rigid-gap-per-diameter": "beyond", "rigid-flange-offset": "beyond"}, []string{true1, true2}, []string{boltUp, move}},
		{0.3, 0, map[string]string{"face-run-out": "beyond", "rim-run-out": "within", "rigid-gap-per-diameter": "beyond", "rigid-flange-offset": "within"}, []string{true1}, []string{boltUp, move, true2}},
		{0, 0.4, map[string]string{"face-run-out": "within", "rim-run-out": "beyond", "rigid-gap-per-diameter": "within", "rigid-flange-offset": "beyond"}, []string{true2}, []string{boltUp, move, true1}},
		{0.02, 0.02, map[string]string{"face-run-out": "within", "rim-run-out": "within", "rigid-gap-per-diameter": "within", "rigid-flange-offset": "within"}, []string{boltUp}, []string{move, true1, true2}},
	} {
		what := fmt.Sprintf("%g and %g mm", c.face, c.rim)
		s := testboat.Run(t, "coupling-alignment", crooked(c.face, c.rim), marinecalc.Options{})
		for limit, word := range c.words {
			if v := s.Verdict(limit); v == nil || string(v.Word) != word {
				t.Errorf("%s: %s is %+v, want %s", what, limit, v, word)
			}
		}
		advises(t, what, s, c.wanted, c.unwanted)
	}
}

// What the maker allows is what is held against, looser and stricter.
func TestTypedAllowanceIsTheLimit(t *testing.T) {
	for allowance, word := range map[string]string{"0.0003": "beyond", "0.009": "within"} {
		s := testboat.Run(t, "coupling-alignment", `{"couplingKind": "rigid", "couplingDiameter": "102 mm", "pilot": "parted", "gapAllowance": `+allowance+`, "knownFaceRunOut": "0.01 mm", "readings": [`+openGaps+`]}`, marinecalc.Options{})
		if v := s.Verdict("rigid-gap-per-diameter"); v == nil || string(v.Word) != word {
			t.Errorf("allowed %s: %+v", allowance, v)
		}
	}
	for allowance, word := range map[string]string{"0.05 mm": "beyond", "0.3 mm": "within"} {
		s := testboat.Run(t, "coupling-alignment", `{"couplingKind": "rigid", "couplingDiameter": "102 mm", "pilot": "parted", "offsetAllowance": "`+allowance+`", "readings": [`+evenGaps+`]`+dialled("0.15 mm", "90°")+`}`, marinecalc.Options{})
		if v := s.Verdict("rigid-flange-offset"); v == nil || string(v.Word) != word {
			t.Errorf("allowed %s: %+v", allowance, v)
		}
	}
}

// A flexible coupling is never passed over in silence: without its maker's
// figure the sheet says what is missing, with it both sides are told. General
// tables compare and no more.
func TestFlexibleCouplingIsJudged(t *testing.T) {
	run := func(rest string) *marinecalc.Sheet {
		return testboat.Run(t, "coupling-alignment", `{"couplingKind": "flexible", "couplingDiameter": "102 mm", "knownFaceRunOut": "0.01 mm", "readings": [`+openGaps+`]`+dialled("0.1 mm", "90°")+rest+`}`, marinecalc.Options{})
	}
	for _, c := range []struct{ rest, gap, offset string }{
		{``, "not measured", "not measured"},
		{`, "toleranceTable": "short-flexible"`, "not measured", "not measured"},
		{`, "gapAllowance": 0.01, "offsetAllowance": "0.5 mm"`, "within", "within"},
		{`, "gapAllowance": 0.001, "offsetAllowance": "0.05 mm"`, "beyond", "beyond"},
	} {
		s := run(c.rest)
		for limit, word := range map[string]string{"flexible-gap": c.gap, "flexible-offset": c.offset} {
			if v := s.Verdict(limit); v == nil || string(v.Word) != word {
				t.Errorf("%s: %s is %+v, want %s", c.rest, limit, v, word)
			}
		}
	}
	v := run(`, "toleranceTable": "short-flexible", "shaftSpeed": "1000 rpm"`).Verdict("short-flexible-acceptable-gap-1200")
	if v == nil || !v.Guide {
		t.Errorf("the general table: %+v", v)
	}
}

// Readings that disagree, and a shaft turned the other way than it was typed,
// are said so.
func TestReadingsSpeakOfThemselves(t *testing.T) {
	const disagree, otherWay, once = "disagree by more than the gauge explains", "fit far better turned the other way", "do not show which way it was turned"
	turned := crooked(0.3, 0.02)
	backward := strings.NewReplacer(`"turn": "90°"`, `"turn": "270°"`, `"turn": "270°"`, `"turn": "90°"`).Replace(turned)
	two := `{"couplingKind": "rigid", "couplingDiameter": "102 mm", "pilot": "parted", "readings": [` + evenGaps + strings.Replace(quarterOn, "0.4 mm", "0.6 mm", 1) + `]}`
	slip := `{"couplingKind": "rigid", "couplingDiameter": "102 mm", "pilot": "parted", "readings": [` + strings.Replace(evenGaps, "0.4 mm", "0.6 mm", 1) + `]}`
	for what, c := range map[string]struct {
		input            string
		wanted, unwanted []string
	}{
		"as typed":      {turned, nil, []string{disagree, otherWay, once}},
		"the other way": {backward, []string{otherWay, disagree}, []string{once}},
		"two positions": {two, []string{once}, []string{otherWay}},
		"one slip":      {slip, []string{disagree}, []string{otherWay, once}},
	} {
		advises(t, what, testboat.Run(t, "coupling-alignment", c.input, marinecalc.Options{}), c.wanted, c.unwanted)
	}
}

// The gap difference printed as allowed is the one that the limit asks for.
func TestGapAllowedIsTheLimit(t *testing.T) {
	s := testboat.Run(t, "coupling-alignment", `{"couplingKind": "rigid", "couplingDiameter": "102 mm", "pilot": "parted", "readings": [`+openGaps+`]}`, marinecalc.Options{NoRanges: true})
	limit := -1.0
	for _, l := range s.Verdicts {
		if l.Limit == "rigid-gap-per-diameter" {
			limit = *s.Result("gapPerDiameter").SI / *s.Result("gapDifference").SI * *s.Result("gapAllowed").SI
		}
	}
	if !(limit > 0.001*(1-1e-9) && limit < 0.001*(1+1e-9)) {
		t.Errorf("the gap allowed is %g of the diameter", limit)
	}
}

// A droop that is taken off the readings is not lifted out as well, and what a
// tolerance table needs is asked for only while it is missing.
func TestAlignmentAdviceKnowsWhatWasDone(t *testing.T) {
	const lift, taken = "still held up by its droop", "The droop is taken off the readings already"
	const choose, speed, above = "General tables, of which one can be chosen", "Type the shaft speed", "turns faster than this table goes"
	for _, c := range []struct {
		what, rest       string
		wanted, unwanted []string
	}{
		{"held up, no table", ``, []string{lift, choose}, []string{taken, speed, above}},
		{"hanging free", `, "shaftEnd": "hanging-free", "droopSlope": "0.1 mm/m"`, []string{taken}, []string{lift}},
		{"table without speed", `, "toleranceTable": "spacer"`, []string{speed}, []string{choose, above}},
		{"table and speed", `, "toleranceTable": "spacer", "shaftSpeed": "6000 rpm"`, nil, []string{choose, speed, above}},
		{"above the spacer table", `, "toleranceTable": "spacer", "shaftSpeed": "6100 rpm"`, []string{above}, []string{choose, speed}},
		{"above the bands", `, "toleranceTable": "speed-bands", "shaftSpeed": "7100 rpm"`, []string{above}, []string{choose, speed}},
		{"above the short couplings", `, "toleranceTable": "short-flexible-excellent", "shaftSpeed": "9000 rpm"`, []string{above}, []string{choose, speed}},
		{"a feeler rule", `, "toleranceTable": "engine-bulletin"`, nil, []string{choose, speed, above}},
	} {
		s := testboat.Run(t, "coupling-alignment", `{"couplingKind": "flexible", "couplingDiameter": "102 mm", "readings": [`+evenGaps+`]`+c.rest+`}`, marinecalc.Options{NoRanges: true})
		advises(t, c.what, s, c.wanted, c.unwanted)
	}
}

// Faces that are parallel within their gauge open to no side that could be told,
// and neither words nor drawing name one; faces that are not open where the
// widest gap was read.
func TestADirectionIsToldWhereThereIsOne(t *testing.T) {
	for gap, want := range map[string]string{"0.31 mm": "no direction can be told", "0.45 mm": "about 3 o'clock"} {
		other := map[string]string{"0.31 mm": "0.29 mm", "0.45 mm": "0.15 mm"}[gap]
		s := testboat.Run(t, "coupling-alignment", `{"couplingKind": "rigid", "couplingDiameter": "102 mm", "pilot": "parted", "readings": [{"clock": "12 o'clock", "gap": "0.30 mm"},
			{"clock": "3 o'clock", "gap": "`+gap+`"}, {"clock": "6 o'clock", "gap": "0.30 mm"}, {"clock": "9 o'clock", "gap": "`+other+`"}]}`, marinecalc.Options{})
		at, told := s.Result("widestAt"), want != "no direction can be told"
		if got := s.Result("widest").Text; got != want {
			t.Errorf("%s: %q, want %q", gap, got, want)
		}
		if _, _, ranged := at.Range(); ranged != told || !told && at.Text != want {
			t.Errorf("%s: %q %q", gap, at.Text, at.Interval)
		}
		if got := strings.Contains(s.Drawings[0].SVG, ">widest<"); got != told {
			t.Errorf("%s: the drawing names the widest gap: %v", gap, got)
		}
	}
}

// Gaps read in one position of the shaft do not tell its flange's run-out; what a
// dial read of it and somebody typed is heard all the same, and what is only usual is
// not taken for it. 0.2 mm of 102 mm is past the gap allowed of a rigid coupling
// (1 in 1000 of its diameter), 0.01 mm is not.
func TestRunOutThatIsTypedIsHeard(t *testing.T) {
	for typed, want := range map[string][2]string{
		``:                               {"not measured", "not measured"},
		`, "knownFaceRunOut": "0.20 mm"`: {"beyond", "not measured"},
		`, "knownRimRunOut": "0.20 mm"`:  {"not measured", "beyond"},
		`, "knownFaceRunOut": "0.01 mm", "knownRimRunOut": "0.01 mm"`: {"within", "within"},
	} {
		s := testboat.Run(t, "coupling-alignment", `{"couplingDiameter": "102 mm", "couplingKind": "rigid", "pilot": "parted", "gapAllowance": 0.001, "readings": `+fourGaps(0.40, 0.40, 0.40, 0.40)+`,
			"rimReadings": [{"clock": "12 o'clock", "step": "0.02 mm"}, {"clock": "3 o'clock", "step": "0 mm"}, {"clock": "6 o'clock", "step": "-0.02 mm"}, {"clock": "9 o'clock", "step": "0 mm"}]`+typed+`}`, marinecalc.Options{})
		if face, rim := wordOf(s, "face-run-out"), wordOf(s, "rim-run-out"); face != want[0] || rim != want[1] {
			t.Errorf("%q: face %s, rim %s", typed, face, rim)
		}
	}
}
