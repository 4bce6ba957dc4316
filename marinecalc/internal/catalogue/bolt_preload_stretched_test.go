package catalogue_test

import (
	"strings"
	"testing"

	"example.org/driveline/marinecalc/sheet"
)

// A clamp past what its bolt bears is over the limit, and no margin on it is OK.
// ISO 898-1: proof load of M10 of 8.8 33.7 kN.
func TestMarginsOfAStretchedBoltAreNotOK(t *testing.T) {
	const flange = `{"boltCount":4,"boltCircle":"82.5 mm","faces":"steel-dry","thread":"M10x1.5","grade":"iso-8.8","shaftTorque":"170 N·m","peakTorque":"340 N·m","thrust":"2.5 kN","preload":"`
	v := verdictsOf(runInput(t, "coupling-grip", flange+`36 kN ± 1 kN"}`, "metric"))
	if v["grip-clamp-proof"].Word != sheet.Beyond || v["grip-ahead"].Word != sheet.NotMeasured || !v["grip-ahead"].Moot {
		t.Errorf("%+v, %+v", v["grip-clamp-proof"], v["grip-ahead"])
	}
	v = verdictsOf(runInput(t, "coupling-grip", flange+`30 kN"}`, "metric"))
	if _, judged := v["grip-clamp-proof"]; judged || v["grip-ahead"].Word != sheet.Within {
		t.Errorf("%+v", v["grip-ahead"])
	}
}

// A bolt turned or stretched past its proof load is over the limit whatever the
// wrench setting gives; the share of the target is judged only of one that is whole.
func TestABoltTurnedTooFarIsOverTheLimit(t *testing.T) {
	const bolt = `{"thread": "M10x1.5", "grade": "iso-8.8", "finish": "zinc-shigley", "gripLength": "24 mm", `
	for _, c := range []struct {
		rest         string
		proof, loose sheet.Word
		clamp        bool
	}{
		{`"turnMeasured": "200°"}`, sheet.Beyond, sheet.NotMeasured, false},
		{`"stretchMeasured": "200 µm"}`, sheet.Beyond, sheet.NotMeasured, false},
		{`"turnMeasured": "20 ± 1°"}`, sheet.Within, sheet.Within, true},
		{`"turnMeasured": "5 ± 1°"}`, sheet.Within, sheet.Beyond, true},
	} {
		s := runInput(t, "bolt-preload", bolt+c.rest, "metric")
		v := verdictsOf(s)
		if v["bolt-measured-proof"].Word != c.proof || v["bolt-measured-loose"].Word != c.loose || (s.Result("jointClamp") != nil) != c.clamp {
			t.Errorf("%s: %s, %s, clamp %v", c.rest, v["bolt-measured-proof"].Word, v["bolt-measured-loose"].Word, s.Result("jointClamp"))
		}
	}
}

// What is typed is not asked for; what lacks is.
func TestTheSentenceAsksForWhatLacks(t *testing.T) {
	for _, c := range []struct{ calculation, input, limit, asks, not string }{
		{"bolt-fit", `{"thread":"M10x1.5","headFlangeThickness":"12 mm","nutFlangeThickness":"12 mm","nutHeight":"8.4 mm","measuredPrevailingTorque":"0.1 N·m"}`, "lock-nut-reuse", "whose limit", "dial or beam"},
		{"shaft-strength", `{"shaftDiameter":"25 mm","shaftPower":"20 kW","shaftSpeed":"1200 rpm","shaftAlloy":"s31600-annealed"}`, "shaft-fatigue", "what water reaches", "Choose the metal"},
		{"shaft-strength", `{"shaftDiameter":"25 mm","shaftPower":"20 kW","shaftSpeed":"1200 rpm","fatigueStrength":"95 MPa"}`, "shaft-fatigue", "Type the bending moment", "fatigue strength"},
		{"shaft-strength", `{"shaftDiameter":"25 mm","shaftPower":"20 kW","shaftSpeed":"1200 rpm","bendingMoment":"20 N·m"}`, "shaft-fatigue", "Choose the metal", "Type the bending moment"},
	} {
		v, judged := verdictsOf(runInput(t, c.calculation, c.input, "metric"))[c.limit]
		if !judged || !strings.Contains(v.Sentence, c.asks) || strings.Contains(v.Sentence, c.not) {
			t.Errorf("%s: %q", c.input, v.Sentence)
		}
	}
}
