package catalogue_test

import (
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/sheet"
)

// A pilot of which nobody said where it was may hide an offset: a small one that
// was read is not enough to tell, a large one is over its limit all the same. Said
// to be clear, or of a flexible coupling, which has none, nothing is hidden.
func TestAPilotNobodySpokeOfMayHideTheOffset(t *testing.T) {
	feeler := `"couplingDiameter": "102 mm", "couplingKind": "rigid", "offsetAllowance": "0.1 mm", "readings": [` + evenGaps + quarterOn + `]`
	dial := byDial([5]float64{}, [5]float64{}) + strings.Replace(trueRun, `, "pilot": "parted"`, "", 1) + `, "offsetAllowance": "0.1 mm"`
	apart := byDial([5]float64{}, [5]float64{0, -60, -120, -60, 0}) + strings.Replace(trueRun, `, "pilot": "parted"`, "", 1) + `, "offsetAllowance": "0.1 mm"`
	soft := func(s string) string { return strings.Replace(s, `"rigid"`, `"flexible"`, 1) }
	small, large := feeler+dialled("0.01 mm", "90°"), feeler+dialled("0.6 mm", "90°")
	for _, c := range []struct{ id, input, limit, word string }{
		{"coupling-alignment", small, "rigid-flange-offset", "cannot tell"},
		{"coupling-alignment", small + `, "pilot": "parted"`, "rigid-flange-offset", "within"},
		{"coupling-alignment", small + `, "pilot": "none"`, "rigid-flange-offset", "within"},
		{"coupling-alignment", small + `, "pilotDepth": "0.1 mm"`, "rigid-flange-offset", "within"}, // the faces were further apart
		{"coupling-alignment", small + `, "hiddenOffset": "0.01 mm"`, "rigid-flange-offset", "within"},
		{"coupling-alignment", large, "rigid-flange-offset", "beyond"},
		{"coupling-alignment", soft(small), "flexible-offset", "within"},
		{"coupling-alignment", soft(small) + `, "pilot": "engaged"`, "flexible-offset", "not measured"},
		{"dial-alignment", dial, "rigid-flange-offset", "cannot tell"},
		{"dial-alignment", dial + `, "pilot": "parted"`, "rigid-flange-offset", "within"},
		{"dial-alignment", apart, "rigid-flange-offset", "beyond"},
		{"dial-alignment", soft(dial), "flexible-offset", "within"},
	} {
		s := testboat.Run(t, c.id, "{"+c.input+"}", marinecalc.Options{})
		v := s.Verdict(c.limit)
		if v == nil || string(v.Word) != c.word {
			t.Errorf("%s of %s: %+v, want %q", c.limit, c.input, v, c.word)
			continue
		}
		asked := c.word == "cannot tell"
		if asked && (len(v.Awaits) == 0 || !strings.Contains(v.Sentence, "offset that the pilot hides")) {
			t.Errorf("%s: %s", c.id, v.Sentence)
		}
		if asked && !advised(s, "Tell whether the pilot was clear") {
			t.Errorf("%s: nobody is asked for the pilot", c.limit)
		}
	}
}

// Two readings of one coupling that stood: what the gaps say holds, the offset may
// have moved behind a pilot that nobody spoke of. A gap that moved is a move.
func TestAPilotNobodySpokeOfMayHideAMove(t *testing.T) {
	before := strings.Replace(dialled("0.01 mm"), "rimReadings", "stepsBefore", 1)
	now := strings.Replace(strings.Replace(before, "stepsBefore", "stepsNow", 1), `, "rimGauge": "dial-indicator"`, "", 1)
	same := `"couplingDiameter": "102 mm", "samePosition": "same", "gapsBefore": [` + evenGaps + `]` + before + now
	for _, c := range []struct{ rest, word, reads string }{
		{`, "gapsNow": [` + evenGaps + `]`, "about the guide", "Tell whether it was clear both times"},
		{`, "gapsNow": [` + evenGaps + `], "pilot": "parted"`, "inside the guide", ""},
		{`, "gapsNow": [` + evenGaps + `], "couplingKind": "flexible"`, "inside the guide", ""},
		{`, "gapsNow": [` + evenGaps + `], "couplingKind": "flexible", "pilot": "engaged"`, "not measured", "part the faces until it is clear"},
		{`, "gapsNow": [` + evenGaps + `], "pilot": "engaged"`, "not measured", "part the faces until it is clear"},
		{`, "gapsNow": [` + openGaps + `]`, "outside the guide", ""},
	} {
		s := testboat.Run(t, "alignment-change", "{"+same+c.rest+"}", marinecalc.Options{})
		v := s.Verdict("coupling-stands")
		if v == nil || string(v.Word) != c.word || !strings.Contains(v.Sentence, c.reads) || v.Moot != (c.word == "not measured") {
			t.Errorf("%s: %+v, want %q", c.rest, v, c.word)
		}
	}
}

// A gap that was read with the pilot in its recess, or while the shaft touches, is not
// "not measured": the sheet says what stands in its way and how to clear it.
func TestAGapReadWithThePilotInIsNoGapThatNobodyRead(t *testing.T) {
	const gaps, dials = `{"readings": [{"clock": "12 o'clock", "gap": "0.10 mm"}, {"clock": "3 o'clock", "gap": "0.10 mm"}, {"clock": "6 o'clock", "gap": "0.14 mm"}, {"clock": "9 o'clock", "gap": "0.14 mm"}]`,
		`{"dialReadings": [{"clock": "12 o'clock", "rim": "0 mm", "face": "0 mm"}, {"clock": "3 o'clock", "rim": "0.02 mm", "face": "0.01 mm"}, {"clock": "6 o'clock", "rim": "0.05 mm", "face": "0.02 mm"}, {"clock": "9 o'clock", "rim": "0.03 mm", "face": "0.01 mm"}], "dialRadius": "42 mm", "swept": "together"`
	for id, input := range map[string]string{"coupling-alignment": gaps, "dial-alignment": dials} {
		for _, in := range []string{`"pilot": "engaged"`, `"pilot": "parted", "shaftCentred": "touching"`} {
			s := testboat.Run(t, id, input+`, "couplingDiameter": "102 mm", "couplingKind": "rigid", "toleranceTable": "engine-bulletin", `+in+`}`, marinecalc.Options{})
			for _, limit := range []string{"rigid-gap-per-diameter", "engine-bulletin-gap"} {
				if v := s.Verdict(limit); v == nil || v.Word != sheet.CannotTell && !v.Moot {
					t.Errorf("%s, %s: %+v", id, in, v)
				}
			}
		}
	}
}
