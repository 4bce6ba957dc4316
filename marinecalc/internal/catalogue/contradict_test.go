package catalogue_test

import (
	"fmt"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
)

// fourGaps are gaps at 12, 3, 6 and 9 o'clock, in millimetres.
func fourGaps(top, starboard, bottom, port float64) string {
	return fmt.Sprintf(`[{"clock": "12 o'clock", "gap": "%g mm"}, {"clock": "3 o'clock", "gap": "%g mm"}, {"clock": "6 o'clock", "gap": "%g mm"}, {"clock": "9 o'clock", "gap": "%g mm"}]`, top, starboard, bottom, port)
}

// Opposite gaps of flat faces add to one sum (geometry): one gap misread makes the day's
// readings contradict each other, and then nothing is told, neither that the coupling
// moved nor that it stands. What a feeler explains, 0.02 mm on each of four, is let pass.
func TestMisreadGapTellsNoChange(t *testing.T) {
	for _, c := range []struct{ gaps, seen, closes string }{
		{fourGaps(1.40, 0.40, 0.40, 0.40), "contradict each other", "over the limit"},
		{fourGaps(0.55, 0.40, 0.40, 0.40), "contradict each other", "over the limit"},
		{fourGaps(0.46, 0.40, 0.40, 0.40), "no change", "OK"},
		{fourGaps(0.70, 0.40, 0.10, 0.40), "it moved", "OK"}, // the sums agree
	} {
		for _, day := range []string{"Before", "Now"} {
			gaps := map[string]string{"Before": fourGaps(0.40, 0.40, 0.40, 0.40), "Now": fourGaps(0.40, 0.40, 0.40, 0.40)}
			gaps[day] = c.gaps
			s := testboat.Run(t, "alignment-change", `{"couplingDiameter": "100 mm", "samePosition": "same", "gapsBefore": `+gaps["Before"]+`, "gapsNow": `+gaps["Now"]+`}`, marinecalc.Options{NoRanges: true})
			v := s.Verdict("change-" + strings.ToLower(day) + "-closes")
			if seen := s.Result("seen").Text; !strings.Contains(seen, c.seen) || v == nil || v.Reads != c.closes {
				t.Errorf("%s %s: %q, %+v", day, c.gaps, seen, v)
			}
			if told := s.Verdict("coupling-stands"); strings.Contains(c.seen, "contradict") && (told == nil || !told.Moot) {
				t.Errorf("%s %s: the coupling is judged all the same: %+v", day, c.gaps, told)
			}
		}
	}
}

// At one time: a disagreement past what the gauge explains is told, and what is past
// three times that takes back every verdict on the coupling.
func TestMisreadGapMovesNoMount(t *testing.T) {
	for _, c := range []struct {
		top   float64
		reads string
		moot  bool
	}{{0.40, "OK", false}, {0.47, "OK", false}, {0.55, "over the limit", false}, {0.63, "over the limit", false}, {0.65, "over the limit", true}, {1.40, "over the limit", true}} {
		s := testboat.Run(t, "coupling-alignment", `{"couplingDiameter": "100 mm", "couplingKind": "rigid", "knownFaceRunOut": "0 mm", "readings": `+fourGaps(c.top, 0.40, 0.40, 0.40)+`}`, marinecalc.Options{})
		if v := s.Verdict("coupling-closes"); v == nil || v.Reads != c.reads {
			t.Errorf("%g mm: %+v, want %s", c.top, v, c.reads)
		}
		if v := s.Verdict("rigid-gap-per-diameter"); v == nil || v.Moot != c.moot || (s.Result("worstGap") == nil) != c.moot {
			t.Errorf("%g mm: %+v", c.top, v)
		}
		for _, a := range s.Next {
			if c.reads != "OK" && strings.Contains(a.Text, "Move the mounts") {
				t.Errorf("%g mm: %s", c.top, a.Text)
			}
		}
	}
}

// By torque of a nut that came loose at 20 N·m hardly any clamp was left, though a face that
// is hardly worn would have left nearly all of it: settling, thread and creep take clamp and
// wear nothing, so the lower figure stands, and a verdict under the minimum stays there. The
// loosening torque is an upper figure: it convicts, and never acquits.
func TestNutFoundLoose(t *testing.T) {
	run := func(more string) *marinecalc.Sheet {
		return testboat.Run(t, "output-flange", `{"nominalDiameter": "24 mm", "pitch": "1.5 mm", "threadForm": "metric", "nutFactor": 0.2, "nutTorque": "180 N·m", "seatDiameter": "30 mm", "hubLength": "40 mm", "hubDiameter": "48 mm",
			"ringLength": "18 mm", "ringDiameter": "47 mm", "drive": "none", "pullAstern": "1.5 kN", "peakTorque": "30 N·m", "hoursToHaulOut": "100 h", "runningTime": "100 h"`+more+`}`, marinecalc.Options{})
	}
	loose, tight := run(`, "faceWear": "0.001 mm", "looseningTorque": "20 N·m"`), run(`, "faceWear": "0.001 mm", "looseningTorque": "170 N·m"`)
	for _, id := range []string{"flange-clamp-loose", "flange-clamp-by-loosening", "flange-friction-only"} {
		if v := loose.Verdict(id); v == nil || v.Reads != "under the minimum" {
			t.Errorf("%s of a nut found loose: %+v", id, v)
		}
	}
	if len(loose.Conflicts) > 0 || loose.Verdict("flange-clamp-gone").Reads != "OK" {
		t.Errorf("a face that is not worn: %+v, %+v", loose.Verdict("flange-clamp-gone"), loose.Conflicts)
	}
	if untouched := run(`, "faceWear": "0.001 mm"`); *loose.Result("timeToLoss").SI > 0.3**untouched.Result("timeToLoss").SI {
		t.Errorf("so little clamp lasts %s", loose.Result("timeToLoss").Text)
	}
	for _, id := range []string{"flange-clamp-gone", "flange-clamp-loose", "flange-pull"} {
		if v := tight.Verdict(id); v == nil || v.Reads != "OK" {
			t.Errorf("%s of a nut found tight: %+v", id, v)
		}
	}
	const alone = "flange-clamp-by-loosening"
	if v := run(`, "looseningTorque": "20 N·m"`).Verdict(alone); v == nil || v.Reads != "under the minimum" {
		t.Errorf("loosening torque alone: %+v", v)
	}
	if v := run(`, "looseningTorque": "170 N·m"`).Verdict(alone); v != nil {
		t.Errorf("an upper figure acquits: %+v", v)
	}
}
