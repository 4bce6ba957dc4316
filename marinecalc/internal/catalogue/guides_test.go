package catalogue_test

import (
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/sheet"
)

// A hundredth of metal in a fluid is outside what a sample has: 0.4 mm off a
// palm of steel in two litres is, a tenth of that is not.
func TestMetalThatAFluidCanHave(t *testing.T) {
	for depth, want := range map[string]sheet.Word{"0.1 mm ± 0.001 mm": sheet.Inside, "2 mm ± 0.001 mm": sheet.Outside} {
		s := testboat.Run(t, "wear-debris", `{"wearDepth":"`+depth+`","wearLength":"60 ± 1 mm","wearWidth":"60 ± 1 mm","metal":"carbon-steel","fluidVolume":"2 L","fluidDensity":"870 kg/m³"}`, marinecalc.Options{})
		if v := s.Verdict("debris-possible"); v == nil || v.Word != want {
			t.Errorf("%s: %+v", depth, v)
		}
	}
	for share, want := range map[string]sheet.Word{"500 ppm": sheet.Inside, "5 %": sheet.Outside} {
		s := testboat.Run(t, "fluid-flush", `{"fluidVolume":"2 L","leftVolume":"0.5 L","debrisShare":"`+share+`"}`, marinecalc.Options{})
		if v := s.Verdict("flush-debris-possible"); v == nil || v.Word != want {
			t.Errorf("%s: %+v", share, v)
		}
	}
}

// A vibration is held against the boat's own: doubled and more is outside the
// guide, and 8 mm/s on soft mounts by itself is over no limit.
func TestVibrationAgainstTheBoatsOwn(t *testing.T) {
	for _, c := range []struct {
		now  string
		want sheet.Word
	}{{"3 mm/s", sheet.Inside}, {"8 mm/s", sheet.Outside}, {"4 mm/s", sheet.About}} {
		s := testboat.Run(t, "vibration-source", `{"engineSpeed":"1800 rpm","cylinders":3,"enginePower":"21 kW","vibrationVelocity":"`+c.now+`","vibrationBaseline":"2 mm/s"}`, marinecalc.Options{})
		if v := s.Verdict("vibration-growth"); v == nil || v.Word != c.want {
			t.Errorf("%s: %+v", c.now, v)
		}
		for _, v := range s.Verdicts {
			if v.Word == sheet.Beyond {
				t.Errorf("%s: %s", c.now, v.Sentence)
			}
		}
	}
	s := testboat.Run(t, "vibration-source", `{"engineSpeed":"1800 rpm","cylinders":3,"vibrationVelocity":"8 mm/s"}`, marinecalc.Options{})
	if v := s.Verdict("vibration-growth"); v == nil || v.Word != sheet.NotMeasured {
		t.Errorf("without a baseline: %+v", v)
	}
	if v := s.Verdict("vibration-damage"); v == nil || v.Word != sheet.NotMeasured {
		t.Errorf("without a class or a power: %+v", v)
	}
}
