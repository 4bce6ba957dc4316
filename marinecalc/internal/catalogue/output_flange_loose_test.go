package catalogue_test

import (
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
)

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
