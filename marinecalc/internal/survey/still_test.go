package survey_test

import (
	"encoding/json"
	"fmt"
	"os"
	"slices"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/survey"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/sheet"
)

// While the shaft must stand the survey says so first, and asks for no reading
// for which it would run; where nobody has felt or measured the gland it asks for the same reading.
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
				delete(one, "glandTemperature")     // hot, it keeps her still with nobody asked
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

// What a sheet advises for which the shaft stands still keeps it so on the whole boat,
// though no verdict is sure: a gland too hot for the hand that nobody was asked about.
// Once it is read cool she may run.
func TestAdviceToStopHoldsOnTheWholeBoat(t *testing.T) {
	const boat = `{"name": "Plover", "gland": {"shaftDiameter": "1 in", "packing": "flax"}, "readings": [%s
		{"date": "2026-11-29", "glandTemperature": "63 °C", "waterTemperature": "16 °C", "dripRate": "8 drips/min"}]}`
	const cool = `{"date": "2026-11-30", "glandTemperature": "24 °C", "waterTemperature": "16 °C", "dripRate": "8 drips/min"},`
	for first, still := range map[string]bool{"": true, cool: false} {
		s := testboat.Check(t, testboat.Read(t, fmt.Sprintf(boat, first)).AsOf("2026-11-30"), marinecalc.Options{})
		if leads := s.Summary[0].Code == "still" && s.Found[0].Kind == survey.FoundStill && strings.Contains(s.Still, "too hot to keep a hand on"); leads != still {
			t.Errorf("%q: %+v %q", first, s.Summary[0], s.Still)
		}
		for _, m := range s.Measure {
			if still && strings.HasPrefix(m.Title, "Drips under way") {
				t.Errorf("while she must stand it asks for %s", m.Title)
			}
		}
		gland := s.Sheets[slices.IndexFunc(s.Sheets, func(one *sheet.Sheet) bool { return one.Calculation == "gland-heat" })]
		said := 0
		for _, n := range gland.Next {
			if strings.Contains(n.Text, "oo hot to keep a hand on") {
				said++
			}
		}
		if want := map[bool]int{true: 1}[still]; said != want {
			t.Errorf("%q: the sheet says it %d times, for %d", first, said, want)
		}
	}
}

// Whether she may run does not hang on whether any question of the fault finding was
// answered: with one answered that says nothing, each boat stands or runs as without,
// and one with the face of her output flange worn past its limit stands.
func TestWhetherSheRunsIsTheSameWithNothingAnswered(t *testing.T) {
	boats := map[string]map[string]any{}
	read := func(name string) (boat map[string]any) {
		if err := json.Unmarshal(testboat.File(t, "testdata", "cases", name+".json"), &boat); err != nil {
			t.Fatal(err)
		}
		return boat
	}
	for _, name := range []string{"milky-fluid", "dry-gland", "hot-gland", "weak-split-clamp", "unlocked-propeller-nut", "loose-bolts", "broken-damper", "rope-round-shaft", "backlash-doubled", "offset-only", "nothing-wrong"} {
		boats[name] = read(name)
	}
	for _, wear := range []string{"0 mm", "0.03 mm", "0.045 mm", "0.06 mm", "0.1 mm"} {
		boat := read("worn-flange-face")
		boat["readings"].([]any)[0].(map[string]any)["outputFaceWear"] = wear
		boats["wear "+wear] = boat
	}
	still := map[string]string{}
	for name, boat := range boats {
		delete(boat, "symptoms")
		for _, r := range boat["readings"].([]any) {
			delete(r.(map[string]any), "symptoms")
		}
		var why [2]string
		for i := range why {
			why[i] = testboat.Check(t, testboat.Read(t, testboat.Text(t, boat)), marinecalc.Options{}).Still
			boat["symptoms"] = []any{map[string]any{"evidence": "smokes-more", "answer": "no"}}
		}
		if (why[0] == "") != (why[1] == "") {
			t.Errorf("%s: with nothing answered %q, with one answer %q", name, why[0], why[1])
		}
		still[name] = why[0]
	}
	if still["wear 0 mm"] != "" || !strings.Contains(still["milky-fluid"], "yes, reading of") || !strings.Contains(still["wear 0.045 mm"], "verdict: Share of the clamp left: under the minimum") {
		t.Errorf("%q", still)
	}
}
