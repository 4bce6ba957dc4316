package catalogue_test

import (
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/sheet"
)

// Of a key that nobody told of, friction alone is the least that holds. The range of a
// margin that friction meets as it is estimated goes on below 1, where a trial has less,
// and is said to be the least; the verdict stays open, as it does where the estimate
// itself lies below 1. With "no" it is a plain figure, and with a pull that nobody told
// the range goes on above 1.
func TestRangeOfFrictionAloneDoesNotEndAtOne(t *testing.T) {
	taper := strings.NewReplacer("STANDARD", "iso-4566", `, "smallEndDiameter": "SMALL"`, "", `"nutFactor": 0.2, "boreFriction": 0.15, "keyed": "no", `, "").Replace(measuredTaper)
	below := 0
	for _, torque := range []string{"60 N·m", "100 N·m", "140 N·m", "190 N·m", "220 N·m", "300 N·m"} {
		input := strings.Replace(taper, `"shaftTorque": "100 N·m"`, `"shaftTorque": "`+torque+`"`, 1)
		s := testboat.Run(t, "propeller-taper", input, marinecalc.Options{})
		m, v := s.Result("marginAhead"), s.Verdict("taper-torque-ahead")
		no := testboat.Run(t, "propeller-taper", strings.Replace(input, `"nutTorque"`, `"keyed": "no", "nutTorque"`, 1), marinecalc.Options{})
		if m == nil {
			if v.Word != sheet.CannotTell || !strings.Contains(v.Sentence, "Look whether there is a key") {
				t.Errorf("%s: %s", torque, v.Sentence)
			}
			continue
		}
		low, _, ok := m.Range()
		plain, _, _ := no.Result("marginAhead").Range()
		if !ok || low < plain-1e-9 || low > plain+1e-9 || !strings.Contains(m.Help, "At least this much") || s.Result("heldBy").Text[:8] != "friction" {
			t.Errorf("%s: from %g with a key that is not known, %g without one", torque, low, plain)
		}
		if low < 1 {
			below++
		}
		if w := no.Verdict("taper-torque-ahead").Word; v.Word != w {
			t.Errorf("%s: %s; without a key %s", torque, v.Sentence, w)
		}
	}
	if below < 1 {
		t.Error("no range goes on below 1")
	}
}
