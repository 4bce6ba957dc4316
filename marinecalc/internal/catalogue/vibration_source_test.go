package catalogue_test

import (
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/sheet"
)

// The codes of the typed function are put into the words and names of the rows:
// what a sound engine makes too is said to be so, ties are named together, and
// what is not listed has its words.
func TestSourcesOfVibrationInWords(t *testing.T) {
	for _, c := range []struct{ frequency, best, parting string }{
		{"45 Hz", "; or as likely: ", "A sound drivetrain has this frequency too"},
		{"400 Hz", "Something not listed here", "None of the parts listed makes this frequency."},
		{"15 Hz", "haft", "."},
	} {
		s := testboat.Run(t, "vibration-source", `{"engineSpeed": "1800 rpm", "cylinders": 3, "strokes": "four-stroke", "gear": "ahead", "gearRatioAhead": 2, "blades": 3, "frequency": "`+c.frequency+`"}`, marinecalc.Options{NoRanges: true})
		if got := s.Result("bestMatch").Text; !strings.Contains(got, c.best) || strings.Contains(got, "not-listed") {
			t.Errorf("%s: %s", c.frequency, got)
		}
		if got := s.Result("parting").Text; !strings.Contains(got, c.parting) || !strings.HasSuffix(got, ".") {
			t.Errorf("%s: %s", c.frequency, got)
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
