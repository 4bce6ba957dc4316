package verdict_test

import (
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/calc/inputs"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/rules"
)

// With a feeler gauge the reading is too near the limit to tell; the sheet
// names what would settle it.
func TestAGaugeTooCoarseIsNamed(t *testing.T) {
	const read = `{"clock": "0°", "gap": "0.385 mm"}, {"clock": "90°", "gap": "0.35 mm"}, {"clock": "180°", "gap": "0.30 mm"}, {"clock": "270°", "gap": "0.35 mm"}`
	s := testboat.Run(t, "coupling-alignment", `{"couplingKind": "rigid", "couplingDiameter": "102 mm", "gapAllowance": 0.001, "readings": [`+read+`, `+strings.ReplaceAll(read, `"}`, `", "turn": "180°"}`)+`]}`, marinecalc.Options{})
	v := s.Verdict("rigid-gap-per-diameter")
	if v.Word != "cannot tell" || !strings.Contains(v.Settle, "dial") && !strings.Contains(v.Settle, "use the mean of") {
		t.Errorf("got %+v", v)
	}
}

// Each gauge reads some kind of quantity, by an accuracy of that kind, and not
// each reads all.
func TestGaugesReadTheirKinds(t *testing.T) {
	kinds := quantity.Kinds()
	for _, gauge := range rules.Standard().Table(inputs.Gauges).Rows.All() {
		reads := 0
		for _, k := range kinds {
			if !inputs.ReadsKind(gauge, k) {
				continue
			}
			reads++
			if _, err := k.ParseAccuracy(gauge.Values.Of("accuracy").Text, 1); err != nil {
				t.Errorf("%s reads a %s: %v", gauge.Pick, k.Name, err)
			}
		}
		if reads == 0 || reads == len(kinds) {
			t.Errorf("%s reads %d kinds of %d", gauge.Pick, reads, len(kinds))
		}
	}
}
