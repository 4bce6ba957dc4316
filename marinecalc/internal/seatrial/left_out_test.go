package seatrial_test

import (
	"slices"
	"strings"
	"testing"

	"example.org/driveline/marinecalc/internal/testboat"
)

// A stage that would turn the shaft near its critical speed or over it is left out
// of the protocol, idle in gear too, and the trial without it passes nothing.
func TestStagesAtTheCriticalSpeedAreLeftOut(t *testing.T) {
	inGear := []string{"Idle ahead, made fast", "Idle astern, made fast", "Under way, slow", "Under way, cruising", "Full throttle", "Under way, astern"}
	for _, c := range []struct {
		span, idle string
		out        []string
	}{
		{"1000 mm", "800 rpm", nil},
		{"2600 mm", "700 rpm", inGear[2:]}, // idle 280 rpm, the critical speed from 470 rpm
		{"3600 mm", "800 rpm", inGear},
	} {
		s := testboat.RunOn(t, `{"name":"Dunlin","engine":{"idleSpeed":"`+c.idle+`","speed":"3000 rpm","power":"20 kW"},"gearbox":{"ratioAhead":2.5,"ratioAstern":2.5},"gland":{"packing":"flax"},"propeller":{"mass":"8 kg"},
			"shaft":{"diameter":"30 mm","alloy":"s31600-annealed","sections":[{"length":"`+c.span+`","diameter":"30 mm"}],"bearings":[{"at":"0 mm"},{"at":"`+c.span+`"}]}}`, "sea-trial", `{}`)
		stages := testboat.Column(t, s, "protocol", "stage", "shaftSpeed")
		for _, stage := range inGear {
			if _, has := stages[stage]; has == slices.Contains(c.out, stage) {
				t.Errorf("span %s: %s in the protocol: %v", c.span, stage, has)
			}
		}
		if said := strings.Contains(s.Result("says").Text, "Left out"); said != (c.out != nil) {
			t.Errorf("span %s: %s", c.span, s.Result("says").Text)
		}
		if _, has := stages["Neutral, made fast"]; !has {
			t.Errorf("span %s: no neutral", c.span)
		}
		held := testboat.Column(t, s, "checks", "stage", "word")
		for _, stage := range c.out {
			if _, has := held[stage]; has {
				t.Errorf("span %s: a reading at %s", c.span, stage)
			}
		}
	}
}

// By its run-out a shaft is bent: the trial is for after the cure, says so, and is whole,
// for a straightened shaft is proved at full speed too.
func TestABentShaftIsTriedWholeOnceCured(t *testing.T) {
	s := testboat.RunOn(t, `{"name":"Knot","engine":{"idleSpeed":"800 rpm","speed":"3000 rpm","power":"20 kW"},"gearbox":{"ratioAhead":2.5,"ratioAstern":2.5},"gland":{"packing":"flax"},
		"shaft":{"diameter":"30 mm","alloy":"s31600-annealed"},"readings":[{"date":"2026-05-01","shaftRunOut":"2 mm"}]}`, "sea-trial", `{}`)
	if says := s.Result("says").Text; !strings.Contains(says, "first comes the cure") || !strings.Contains(says, "Shaft bent") || strings.Contains(says, "Left out") {
		t.Error(says)
	}
	if stages := testboat.Column(t, s, "protocol", "stage", "engineSpeed"); stages["Full throttle"] == "" {
		t.Errorf("%+v", stages)
	}
}
