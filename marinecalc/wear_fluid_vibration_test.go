package marinecalc

import (
	"encoding/json"
	"fmt"
	"testing"
)

// The reference's negative test: a particle of 0.5 mm in water lies outside
// Stokes's law, and the sheet says so; one of 10 µm gets no such verdict.
func TestStokesOutOfReachIsSaid(t *testing.T) {
	const water = `{"standingTime":"1 h","sumpDepth":"100 mm","dipDepth":"20 mm","metalDensity":2500,"fluidDensity":997,"fluidTemperature":"25 °C","fluidViscosity":8.927e-7,"particleSize":%q}`
	if v := runOn(t, "", "fluid-settling", fmt.Sprintf(water, "0.5 mm")).Verdict("stokes-law"); v == nil || v.Word != "beyond" {
		t.Errorf("%+v", v)
	}
	if v := runOn(t, "", "fluid-settling", fmt.Sprintf(water, "10 µm")).Verdict("stokes-law"); v != nil {
		t.Errorf("%+v", v)
	}
}

// Sizes of one's own replace those of the rule data.
func TestOwnSizes(t *testing.T) {
	s := runOn(t, "", "fluid-settling", `{"standingTime":"1 h","sumpDepth":"100 mm","dipDepth":"20 mm","fluid":"iso-vg-32","sizes":[{"name":"mesh","size":"25 µm"}]}`)
	if c := s.Cell("bySize", 0, "name"); c == nil || c.Text != "mesh" || s.Cell("bySize", 1, "name") != nil {
		t.Errorf("%+v", c)
	}
}

// Sources keep their rows when their numbers have ranges.
func TestSourcesWithRanges(t *testing.T) {
	s := runOn(t, "", "vibration-source", `{"engineSpeed":"1800 rpm ± 5 %","gear":"ahead","gearRatioAhead":"2.15","cylinders":3,"blades":3,"frequency":"43 Hz"}`)
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

// Every drawing of this family is well formed XML, with and without what is
// optional.
func TestDrawingsOfWearFluidAndVibration(t *testing.T) {
	for _, c := range [][2]string{
		{"wear-debris", `{"wearDepth":"0.2 mm","wearLength":"40 mm","wearWidth":"8 mm","metal":"brass","partThickness":"5 mm","wearLimit":"0.3 mm"}`},
		{"fluid-settling", `{"standingTime":"1 s","sumpDepth":"100 mm","dipDepth":"20 mm","fluid":"atf"}`},
		{"fluid-settling", `{"standingTime":"9 years","sumpDepth":"3 m","dipDepth":"1 mm","fluid":"sae-50"}`},
		{"fluid-cleanliness", `{"count6":500,"count14":20,"wantedCode14":12}`},
		{"fluid-flush", `{"fluidVolume":"2 L","leftVolume":"1.9 L","plannedChanges":50}`},
		{"vibration-source", `{"engineSpeed":"800 rpm"}`},
		{"vibration-source", `{"engineSpeed":"800 rpm","gear":"neutral","frequency":"13 Hz"}`},
	} {
		s := runOn(t, "", c[0], c[1])
		if len(s.Drawings) == 0 {
			t.Errorf("%s draws nothing on %s", c[0], c[1])
		}
		for _, d := range s.Drawings {
			if fault := wellFormed(d.SVG); fault != "" || d.Description == "" {
				t.Errorf("%s: %s", c[0], fault)
			}
		}
		if _, err := json.Marshal(s); err != nil {
			t.Error(err)
		}
	}
}
