package calc_test

import (
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
)

// With a feeler gauge the reading is too near the limit to tell; the sheet
// names what would settle it.
func TestAGaugeTooCoarseIsNamed(t *testing.T) {
	s := testboat.Run(t, "coupling-alignment", `{"couplingKind": "rigid", "couplingDiameter": "102 mm", "readings": [{"clock": "0°", "gap": "0.385 mm"}, {"clock": "90°", "gap": "0.35 mm"}, {"clock": "180°", "gap": "0.30 mm"}, {"clock": "270°", "gap": "0.35 mm"}]}`, marinecalc.Options{})
	v := s.Verdict(testboat.Limit(t, "coupling-alignment", "gapPerDiameter", 0.001))
	if v.Word != "cannot tell" || !strings.Contains(v.Settle, "dial") && !strings.Contains(v.Settle, "mean of") {
		t.Errorf("got %+v", v)
	}
}
