package drawing_test

import (
	"encoding/json"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
)

// Every drawing is well-formed XML with words for those who cannot see it.
func TestDrawingsAreWellFormed(t *testing.T) {
	s := testboat.Check(t, testboat.Demo(t, "kittiwake"), marinecalc.Options{NoRanges: true})
	drawings := 0
	for _, one := range s.Sheets {
		for _, d := range one.Drawings {
			drawings++
			if problem := testboat.WellFormed(d.SVG); problem != "" {
				t.Errorf("%s: %s", d.Name, problem)
			}
			if d.Description == "" || !strings.Contains(d.SVG, "<desc>") || strings.Contains(d.SVG, "style=") {
				t.Errorf("%s: no description, or inline style", d.Name)
			}
		}
	}
	if drawings < 2 {
		t.Errorf("only %d drawings", drawings)
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
		s := testboat.RunOn(t, "", c[0], c[1])
		if len(s.Drawings) == 0 {
			t.Errorf("%s draws nothing on %s", c[0], c[1])
		}
		for _, d := range s.Drawings {
			if fault := testboat.WellFormed(d.SVG); fault != "" || d.Description == "" {
				t.Errorf("%s: %s", c[0], fault)
			}
		}
		if _, err := json.Marshal(s); err != nil {
			t.Error(err)
		}
	}
}

// Every calculation's drawings, on its own examples and in every unit system,
// are well formed and have words for those who cannot see them.
func TestDrawingsOfTheExamples(t *testing.T) {
	drawings := map[string]bool{}
	for _, entry := range marinecalc.Calculations() {
		input := []byte(testboat.Typed(t, entry.ID))
		for _, units := range []string{"metric", "us", "both"} {
			s, err := marinecalc.Run(entry.ID, input, marinecalc.Options{NoRanges: true, Units: units})
			if err != nil {
				continue // some need more than stands in the open; those that draw are counted below
			}
			for _, d := range s.Drawings {
				drawings[d.Name] = true
				if fault := testboat.WellFormed(d.SVG); fault != "" {
					t.Errorf("%s %s in %s: %s", entry.ID, d.Name, units, fault)
				}
				if d.Description == "" || !strings.Contains(d.SVG, "<desc>") || strings.Contains(d.SVG, "style=") {
					t.Errorf("%s %s in %s: no description, or inline style", entry.ID, d.Name, units)
				}
			}
		}
	}
	if len(drawings) < 20 {
		t.Errorf("only %d drawings: %v", len(drawings), drawings)
	}
}
