package catalogue_test

import (
	"testing"

	"example.org/driveline/marinecalc/internal/testboat"
)

// Sources keep their rows when their numbers have ranges.
func TestSourcesWithRanges(t *testing.T) {
	s := testboat.RunOn(t, "", "vibration-source", `{"engineSpeed":"1800 rpm ± 5 %","gear":"ahead","gearRatioAhead":"2.15","cylinders":3,"blades":3,"frequency":"43 Hz"}`)
	if s.Trials == 0 {
		t.Fatal("no trials were run")
	}
	for i := range 12 {
		name, f := s.Cell("sources", i, "name"), s.Cell("sources", i, "frequency")
		if name == nil || f == nil || f.SI == nil || f.Low == nil {
			continue
		}
		if *f.Low < 0.94**f.SI || *f.High > 1.06**f.SI {
			t.Errorf("%s: %g from %g to %g", name.Text, *f.SI, *f.Low, *f.High)
		}
	}
}
