package verdict_test

import (
	"fmt"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/sheet"
)

// Firing of two cylinders at idle, 12.5 Hz, near a natural frequency: what is
// passed on is greatest between the ends of the brackets and least outside them,
// so the ends alone tell too much. With stiffer mounts the range itself lies over
// the limit.
func TestAVerdictDoesNotOutdoItsRange(t *testing.T) {
	for stiffness, word := range map[string]string{"260 N/mm": "cannot tell", "450 N/mm": "beyond"} {
		var mounts []string
		for _, at := range [][2]string{{"650 mm", "-230 mm"}, {"650 mm", "230 mm"}, {"200 mm", "-230 mm"}, {"200 mm", "230 mm"}} {
			mounts = append(mounts, fmt.Sprintf(`{"name": "%s %s", "forward": %q, "starboard": %q, "up": "0 mm", "stiffness": %q}`, at[0], at[1], at[0], at[1], stiffness))
		}
		s := testboat.Run(t, "mount-load", `{"engineMass": "160 kg", "cylinders": 2, "idleSpeed": "750 rpm", "engineSpeed": "2800 rpm", "engineLength": "700 mm", "engineWidth": "480 mm", "engineHeight": "600 mm",
			"centreForward": "420 mm", "centreUp": "120 mm", "couplingDiameter": "110 mm", "couplingKind": "flexible", "mounts": [`+strings.Join(mounts, ",")+`]}`, marinecalc.Options{})
		v := s.Verdict("isolation-at-idle")
		if v == nil || string(v.Word) != word {
			t.Errorf("%s: %+v", stiffness, v)
			continue
		}
		if tells := strings.Contains(v.Sentence, "and turns between the ends of what is usual"); tells != (word == "cannot tell") || tells && len(v.Awaits) == 0 {
			t.Errorf("%s: %s", stiffness, v.Sentence)
		}
	}
}

// A range that lies wholly under a fixed limit, all of what is usual in it, is under
// it, though the far corner of every bracket at once would meet it. One that
// reaches over it stays in question.
func TestARangeWhollyUnderALimitIsUnderIt(t *testing.T) {
	for torque, word := range map[string]string{"20 lbf·ft": "beyond", "30 lbf·ft": "beyond", "80 lbf·ft": "cannot tell"} {
		s := testboat.Run(t, "propeller-taper", `{"shaftDiameter": "1 in", "taperStandard": "j755", "hubDiameter": "2.1 in", "hubLength": "2.5 in", "taperLength": "2.5 in", "nutThread": "3/4-10 UNC", "nutTorque": "`+torque+`",
			"shaftTorque": "100 lbf·ft", "peakTorque": "200 lbf·ft", "asternTorque": "80 lbf·ft", "thrust": "600 lbf", "keyed": "no"}`, marinecalc.Options{})
		v := s.Verdict("taper-torque-peak")
		_, high, _ := s.Result("marginPeak").Range()
		if v == nil || string(v.Word) != word || (v.Turns != nil) != (word == "cannot tell") || (high < 1) != (word == "beyond") {
			t.Errorf("%s, range up to %g: %+v", torque, high, v)
		}
	}
}

// A range that keeps its limit, and no OK: the sentence says that the range is
// not all there is, where a usual figure that nobody confirmed is what is in doubt.
func TestARangeThatKeepsItsLimitSaysWhyItIsNoOK(t *testing.T) {
	inside := 0
	for _, id := range []string{"shaft-whirl", "coupling-grip", "coupling-bore", "mount-load"} {
		s := testboat.Run(t, id, testboat.Typed(t, id), marinecalc.Options{})
		for _, v := range s.Verdicts {
			if v.Word != sheet.CannotTell || v.Turns == nil || v.Turns.Past || v.BoundSI == nil {
				continue
			}
			low, high, ranged := s.Result(v.On).Range()
			keeps := ranged && (v.Side == sheet.AtMost && high < *v.BoundSI || v.Side == sheet.AtLeast && low > *v.BoundSI)
			if keeps {
				inside++
			}
			if says := strings.Contains(v.Sentence, "at an end of what is usual the limit may be passed"); says != keeps {
				t.Errorf("%s, %g to %g: %s", v.Limit, low, high, v.Sentence)
			}
		}
	}
	if inside < 4 {
		t.Errorf("%d verdicts of the kind looked at", inside)
	}
}

// A verdict that turns beside an end of what is usual is told by that end, and by
// what side of it; no digit of the turn says more than is known of the end.
func TestATurnBesideAnEndIsToldByTheEnd(t *testing.T) {
	s := testboat.Run(t, "gland-drip", testboat.Typed(t, "gland-drip"), marinecalc.Options{})
	v := s.Verdict("battery-outlasts-absence")
	if v == nil || v.Turns == nil || v.Turns.SI == 0.4 || v.Turns.SI > 0.404 {
		t.Fatalf("%+v", v)
	}
	if !v.Turns.Strict || v.Turns.Text != "40 %" || !strings.Contains(v.Sentence, "OK while usable part of the battery is more than 40 %; 40 to 60 % is usual") {
		t.Errorf("%+v: %s", v.Turns, v.Sentence)
	}
}
