package catalogue_test

import (
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
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

// Firing of three cylinders and three blades at 2:1 pass at one frequency: neither
// is called the likelier, and their chances are in whole per cent.
func TestSourcesAsLikely(t *testing.T) {
	s := testboat.Run(t, "vibration-source", `{"engineSpeed":"1800 rpm","gear":"ahead","gearRatioAhead":2,"cylinders":3,"blades":3,"frequency":"45 Hz"}`, marinecalc.Options{})
	if got := s.Result("bestMatch").Text; !strings.Contains(got, "Firing") || !strings.Contains(got, "Propeller blades") {
		t.Errorf("likeliest: %s", got)
	}
	for name, want := range map[string]string{"bestShare": "50 %", "runnerUpShare": "less than 1 %"} {
		if got := s.Result(name).Text; got != want {
			t.Errorf("%s: %s, want %s", name, got, want)
		}
	}
	if got := s.Cell("sources", 5, "share").Text; got != "0 %" {
		t.Errorf("one far off: %s", got)
	}
}
