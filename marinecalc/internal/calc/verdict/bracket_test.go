package verdict_test

import (
	"fmt"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
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
