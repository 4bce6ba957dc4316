package catalogue_test

import (
	"testing"

	"example.org/driveline/marinecalc/sheet"
)

// Stretch and torque of one bolt that tell of different clamps are told to disagree, and
// nothing that rests on one of them is OK; where they agree nothing is told.
func TestStretchAndTorqueOfOneBolt(t *testing.T) {
	for stretch, agrees := range map[string]bool{"0.15 mm": false, "0.085 mm": true} {
		s := runInput(t, "bolt-preload", `{"thread":"M10x1.5","grade":"iso-8.8","finish":"oiled","gripLength":"24 mm","torqueUsed":"35 N·m","stretchMeasured":"`+stretch+`"}`, "metric")
		if (len(s.Conflicts) == 0) != agrees {
			t.Errorf("%s: %+v", stretch, s.Conflicts)
		}
		for _, limit := range []string{"bolt-torque-in-question", "torque-in-question-too-loose", "bolt-measured-proof"} {
			if v := s.Verdict(limit); !agrees && v != nil && v.Word == sheet.Within {
				t.Errorf("%s: %s", stretch, v.Sentence)
			}
		}
		if v := s.Verdict("bolt-yield"); v.Word != sheet.Within {
			t.Errorf("%s: the target %s", stretch, v.Sentence)
		}
	}
}
