package catalogue_test

import (
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
)

// Gaps read with a tape, good for a millimetre: what leaves the verdict open is
// the tape and not the gap allowed, so that the tape is blamed.
func TestTheTapeIsBlamedForWhatItLeavesOpen(t *testing.T) {
	const even = `"readings": [{"clock": "12 o'clock", "gap": "0.5 mm"}, {"clock": "3 o'clock", "gap": "0.5 mm"}, {"clock": "6 o'clock", "gap": "0.5 mm"}, {"clock": "9 o'clock", "gap": "0.5 mm"}],
		"couplingDiameter": "100 mm", "couplingKind": "rigid", "pilot": "parted", "knownFaceRunOut": "0.02 mm", "knownRimRunOut": "0.02 mm"`
	s := testboat.Run(t, "coupling-alignment", `{"gapGauge": "tape-measure", `+even+`}`, marinecalc.Options{})
	v := s.Verdict("rigid-gap-per-diameter")
	if said := v.Sentence + v.Settle; wordOf(s, "rigid-gap-per-diameter") != "cannot tell" || strings.Contains(said, "gap allowed") || !strings.Contains(said, "Gaps between the coupling faces") || !strings.Contains(said, "finer gauge") {
		t.Errorf("%s %s", v.Sentence, v.Settle)
	}
}

// Rim readings that do not come back to their zero by 0.3 mm tell the offset no
// closer than they scatter: the root of what is left of five readings over two of
// freedom, to each of two (least squares).
func TestRimThatDoesNotCloseWidensTheOffset(t *testing.T) {
	width := func(last string) float64 {
		s := testboat.Run(t, "dial-alignment", `{"dialReadings": [{"clock": "12 o'clock", "face": "0 mm", "rim": "0 mm"}, {"clock": "3 o'clock", "face": "0.03 mm", "rim": "0.1 mm"}, {"clock": "6 o'clock", "face": "0.06 mm", "rim": "0.2 mm"},
			{"clock": "9 o'clock", "face": "0.03 mm", "rim": "0.1 mm"}, {"clock": "12 o'clock", "face": "0 mm", "rim": "`+last+`"}], "dialRadius": "50 mm", "swept": "together", "couplingDiameter": "100 mm", "couplingKind": "rigid", "pilot": "parted", "barSagRim": "0 mm", "barSagFace": "0 mm"}`, marinecalc.Options{})
		low, high, ok := s.Result("offsetVertical").Range()
		if !ok {
			t.Fatal("no range")
		}
		return high - low
	}
	if sound, torn := width("0 mm"), width("0.3 mm"); torn < 10*sound || torn < 0.2e-3 {
		t.Errorf("a rim that closes: %g, one that does not: %g", sound, torn)
	}
}
