package catalogue_test

import (
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
)

// The nut of an output flange is judged on its upper side too, set by torque or by
// turn; where the shaft's strength is not known the verdict names it and tells from
// which it would be right. No clamp of a thread that yields is OK.
func TestOutputNutHasAnUpperSide(t *testing.T) {
	const stack = `"nominalDiameter":"24 mm","pitch":"1.5 mm","threadForm":"metric","seatDiameter":"30 mm","hubLength":"42 mm","hubDiameter":"46 mm","ringLength":"18 mm","ringDiameter":"46 mm","faceWear":"0 mm","pullAstern":"2 kN",`
	for _, c := range []struct{ set, word, says string }{
		{`"finish":"oiled","nutTorque":"100 N·m"`, "within", "yield strength of the output shaft"},
		{`"finish":"oiled","nutTorque":"900 N·m"`, "cannot tell", "yield strength of the output shaft"},
		{`"finish":"oiled","nutTorque":"1500 N·m"`, "beyond", "over the limit"},
		{`"finish":"oiled","nutTorque":"240 N·m","shaftYieldStrength":"600 MPa"`, "within", ""},
		{`"finish":"oiled","nutTorque":"900 N·m","shaftYieldStrength":"450 MPa"`, "beyond", "over the limit"},
		{`"nutTurn":"10°","shaftYieldStrength":"600 MPa"`, "within", "nut factor"},
		{`"nutTurn":"60°","shaftYieldStrength":"500 MPa"`, "beyond", ""},
	} {
		s := testboat.Run(t, "output-flange", "{"+stack+c.set+"}", marinecalc.Options{})
		v := s.Verdict("flange-thread")
		if v == nil || wordOf(s, "flange-thread") != c.word || !strings.Contains(v.Sentence, c.says) {
			t.Errorf("%s: %+v", c.set, v)
		}
		if pull := wordOf(s, "flange-pull"); (c.word == "beyond") != (pull == "cannot tell") {
			t.Errorf("%s: the pull astern reads %s", c.set, pull)
		}
		advised := false
		for _, n := range s.Next {
			advised = advised || strings.Contains(n.Text, "Never that torque or turn.") || strings.Contains(n.Text, "Ask the maker before it is tightened")
		}
		if advised != (c.word != "within") {
			t.Errorf("%s: %+v", c.set, s.Next)
		}
	}
}

// A hub that nothing but friction turns, and that slips, forbids power.
func TestHubThatSlipsForbidsPower(t *testing.T) {
	s := testboat.Run(t, "output-flange", `{"nominalDiameter":"24 mm","pitch":"1.5 mm","threadForm":"metric","seatDiameter":"30 mm","hubLength":"42 mm","hubDiameter":"46 mm","faceWear":"0 mm","finish":"oiled","nutTorque":"240 N·m","drive":"none","faceFriction":0.1,"peakTorque":"900 N·m"}`, marinecalc.Options{})
	if wordOf(s, "flange-friction-only") != "beyond" || len(s.Next) == 0 || !strings.HasPrefix(s.Next[0].Text, "No power, ahead or astern") {
		t.Errorf("%+v", s.Next)
	}
}
