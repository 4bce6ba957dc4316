package catalogue_test

import (
	"strings"
	"testing"
)

// A taper's nut past yield: nothing of its thread is said to break below its tensile
// strength, no margin is OK, and the next step forbids power.
func TestTaperNutPastYieldForbidsPower(t *testing.T) {
	for torque, breaks := range map[string]bool{"50 N·m": false, "90 N·m": true} {
		s := runInput(t, "coupling-bore", `{"shaftDiameter":"25 mm","engagedLength":"60 mm","hubDiameter":"58 mm","hubMetal":"mild-steel","surfaces":"steel-dry","holdMethod":"taper","taperRatio":0.1,"pinchThread":"M12x1.75","pinchTorque":"`+torque+`","shaftAlloy":"s31600-annealed","keyed":"no","shaftTorque":"40 N·m","asternTorque":"40 N·m","peakTorque":"60 N·m","thrust":"2 kN"}`, "metric")
		if wordOf(s, "bore-pinch-yields") != "beyond" || wordOf(s, "bore-torque-ahead") == "within" || wordOf(s, "bore-pull-astern") == "within" {
			t.Errorf("%s: %s, ahead %s, astern %s", torque, wordOf(s, "bore-pinch-yields"), wordOf(s, "bore-torque-ahead"), wordOf(s, "bore-pull-astern"))
		}
		if v := s.Verdict("bore-pull-astern"); strings.Contains(v.Sentence, "can break") != breaks {
			t.Errorf("%s: %s", torque, v.Sentence)
		}
		if len(s.Next) == 0 || !strings.Contains(s.Next[0].Text, "no power, ahead or astern") {
			t.Errorf("%s: next %+v", torque, s.Next)
		}
	}
}
