package catalogue_test

import (
	"strings"
	"testing"
)

// The all-clear on whirling is given below half the critical speed only
// (Shigley, Mechanical Engineering Design, 9th ed., sec. 7-6, from memory), and
// never beside a speed that is beyond it.
func TestNoAllClearAboveHalfTheCriticalSpeed(t *testing.T) {
	for speed, clear := range map[string]bool{"600 rpm": true, "1200 rpm": false, "2400 rpm": false} {
		s := runInput(t, "shaft-whirl", `{"sections":[{"diameter":"30 mm","length":"2700 mm"}],"bearings":[{"at":"0 mm"},{"at":"1250 mm"},{"at":"2550 mm"}],
			"shaftSpeed":"`+speed+`","propellerMass":"9 kg","shaftAlloy":"s31600-annealed","couplingMass":"3 kg"}`, "metric")
		if got := verdictsOf(s)["whirl-half-critical"].Word.Plain() == "within"; got != clear {
			t.Errorf("%s: below half the critical speed: %v", speed, got)
		}
		allClear, thin := false, false
		for _, n := range s.Next {
			allClear = allClear || strings.Contains(n.Text, "another cause")
			thin = thin || strings.Contains(n.Text, "no all-clear")
		}
		if allClear != clear || thin != (speed == "1200 rpm") {
			t.Errorf("%s: all-clear %v, thin margin told %v", speed, allClear, thin)
		}
	}
}
