package catalogue_test

import (
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
)

const (
	evenGaps  = `{"clock": "0°", "gap": "0.4 mm"}, {"clock": "90°", "gap": "0.4 mm"}, {"clock": "180°", "gap": "0.4 mm"}, {"clock": "270°", "gap": "0.4 mm"}`
	openGaps  = `{"clock": "0°", "gap": "0.6 mm"}, {"clock": "90°", "gap": "0.4 mm"}, {"clock": "180°", "gap": "0.2 mm"}, {"clock": "270°", "gap": "0.4 mm"}`
	quarterOn = `, {"clock": "0°", "gap": "0.4 mm", "turn": "90°"}, {"clock": "90°", "gap": "0.4 mm", "turn": "90°"}, {"clock": "180°", "gap": "0.4 mm", "turn": "90°"}, {"clock": "270°", "gap": "0.4 mm", "turn": "90°"}`
)

// dialled is a rim read with a dial, the engine flange so much too high.
func dialled(high string) string {
	return `, "rimGauge": "dial-indicator", "rimReadings": [{"clock": "0°", "step": "` + high + `"}, {"clock": "90°", "step": "0 mm"}, {"clock": "180°", "step": "-` + high + `"}, {"clock": "270°", "step": "0 mm"}]`
}

// A rigid coupling is called good enough to bolt up only when gap and offset
// are within and the shaft was turned: parallel faces alone do not line up two
// shafts.
func TestBoltingUpAsksForAllThree(t *testing.T) {
	const boltUp, readRim, turn, whole = "good enough to bolt up", "now read the rim offset", "only that tells a crooked flange", "Move the whole engine over"
	for _, c := range []struct {
		what, gaps, rest, offset string
		wanted, unwanted         []string
	}{
		{"5 mm misaligned", evenGaps, dialled("5 mm"), "beyond", []string{whole, turn}, []string{boltUp, readRim}},
		{"5 mm misaligned, turned", evenGaps + quarterOn, dialled("5 mm"), "beyond", []string{whole}, []string{boltUp, readRim, turn}},
		{"0.1 mm misaligned, turned", evenGaps + quarterOn, dialled("0.1 mm"), "beyond", []string{whole}, []string{boltUp}},
		{"no rim read", evenGaps, "", "not measured", []string{readRim, turn}, []string{boltUp}},
		{"no rim read, turned", evenGaps + quarterOn, "", "not measured", []string{readRim}, []string{boltUp, turn}},
		{"in line, not turned", evenGaps, dialled("0.01 mm"), "within", []string{turn}, []string{boltUp, readRim}},
		{"in line, turned", evenGaps + quarterOn, dialled("0.01 mm"), "within", []string{boltUp}, []string{readRim, turn}},
		{"in line, faces open", openGaps, dialled("0.01 mm"), "within", nil, []string{boltUp, readRim}},
		{"in line, turned, but not for the rule chosen", evenGaps + quarterOn, dialled("0.01 mm") + `, "toleranceTable": "army-feeler", "gapGauge": "straight-edge"`, "within", nil, []string{boltUp}},
	} {
		s := testboat.Run(t, "coupling-alignment", `{"couplingKind": "rigid", "couplingDiameter": "102 mm", "readings": [`+c.gaps+`]`+c.rest+`}`, marinecalc.Options{})
		if v := s.Verdict("rigid-flange-offset"); v == nil || string(v.Word.Plain()) != c.offset {
			t.Errorf("%s: the offset is %+v", c.what, v)
		}
		advises(t, c.what, s, c.wanted, c.unwanted)
	}
}

// The gap difference printed as allowed is the one that the limit asks for.
func TestGapAllowedIsTheLimit(t *testing.T) {
	s := testboat.Run(t, "coupling-alignment", `{"couplingKind": "rigid", "couplingDiameter": "102 mm", "readings": [`+openGaps+`]}`, marinecalc.Options{NoRanges: true})
	limit := -1.0
	for _, l := range s.Verdicts {
		if l.Limit == testboat.Limit(t, "coupling-alignment", "gapPerDiameter", 0.001) {
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
	const lift, taken = "Lift the free shaft end by its droop", "The droop is taken off the readings already"
	const choose, speed, above = "Choose the tolerance table", "Type the shaft speed", "turns faster than this table goes"
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
