package catalogue_test

import (
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
)

// Gaps read in one position of the shaft do not tell its flange's run-out; what a
// dial read of it and somebody typed is heard all the same, and what is only usual is
// not taken for it. 0.2 mm of 102 mm is past the gap allowed of a rigid coupling
// (1 in 1000 of its diameter), 0.01 mm is not.
func TestRunOutThatIsTypedIsHeard(t *testing.T) {
	for typed, want := range map[string][2]string{
		``:                               {"not measured", "not measured"},
		`, "knownFaceRunOut": "0.20 mm"`: {"beyond", "not measured"},
		`, "knownRimRunOut": "0.20 mm"`:  {"not measured", "beyond"},
		`, "knownFaceRunOut": "0.01 mm", "knownRimRunOut": "0.01 mm"`: {"within", "within"},
	} {
		s := testboat.Run(t, "coupling-alignment", `{"couplingDiameter": "102 mm", "couplingKind": "rigid", "pilot": "parted", "gapAllowance": 0.001, "readings": `+fourGaps(0.40, 0.40, 0.40, 0.40)+`,
			"rimReadings": [{"clock": "12 o'clock", "step": "0.02 mm"}, {"clock": "3 o'clock", "step": "0 mm"}, {"clock": "6 o'clock", "step": "-0.02 mm"}, {"clock": "9 o'clock", "step": "0 mm"}]`+typed+`}`, marinecalc.Options{})
		if face, rim := wordOf(s, "face-run-out"), wordOf(s, "rim-run-out"); face != want[0] || rim != want[1] {
			t.Errorf("%q: face %s, rim %s", typed, face, rim)
		}
	}
}
