package survey_test

import (
	"encoding/json"
	"os"
	"slices"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/survey"
	"example.org/driveline/marinecalc/internal/testboat"
)

// While the shaft must stand the survey says so first, and asks for no reading
// for which it would run; where nobody has felt the gland it asks for the same reading.
func TestShaftThatMustStandLeads(t *testing.T) {
	text, err := os.ReadFile(testboat.Root("testdata", "jobs", "dry-gland.json"))
	if err != nil {
		t.Fatal(err)
	}
	var job struct{ Boat map[string]any }
	if err := json.Unmarshal(text, &job); err != nil {
		t.Fatal(err)
	}
	for _, still := range []bool{true, false} {
		if !still {
			for _, r := range job.Boat["readings"].([]any) {
				one := r.(map[string]any)
				delete(one, "symptoms")
				if _, has := one["dripRate"]; has { // none is dry and told; at the least it is counted longer
					one["dripRate"] = "1 drips/min"
				}
			}
		}
		text, _ := json.Marshal(job.Boat)
		b := testboat.Read(t, string(text)).AsOf("2025-07-05")
		s := testboat.Check(t, b, marinecalc.Options{})
		if leads := s.Summary[0].Code == "still" && len(s.Found) > 0 && s.Found[0].Kind == survey.FoundStill; leads != still {
			t.Errorf("%t: %+v %+v", still, s.Summary[0], s.Found)
		}
		asks := slices.ContainsFunc(s.Measure, func(m survey.Measure) bool { return strings.HasPrefix(m.Title, "Drips under way") })
		if asks == still {
			t.Errorf("%t: drips under way are asked for: %t", still, asks)
		}
	}
}

// A verdict that forbids power leads the survey as a finding does, and no reading
// under way is asked for while it stands.
func TestAVerdictThatForbidsPowerLeads(t *testing.T) {
	for name, still := range map[string]bool{"weak-split-clamp": true, "worn-flange-face": true, "offset-only": false} {
		text, err := os.ReadFile(testboat.Root("testdata", "cases", name+".json"))
		if err != nil {
			t.Fatal(err)
		}
		s := testboat.Check(t, testboat.Read(t, string(text)), marinecalc.Options{})
		leads := s.Summary[0].Code == "still" && s.Found[0].Kind == survey.FoundStill && s.Found[0].Sheet != "" && s.Still != ""
		if leads != still {
			t.Errorf("%s: %+v %+v", name, s.Summary[0], s.Found)
		}
		asks := slices.ContainsFunc(s.Measure, func(m survey.Measure) bool { return strings.HasPrefix(m.Title, "Drips under way") })
		if asks == still {
			t.Errorf("%s: drips under way are asked for: %t", name, asks)
		}
	}
}
