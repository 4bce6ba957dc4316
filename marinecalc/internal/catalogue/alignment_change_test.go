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
