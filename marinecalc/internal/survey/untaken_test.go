package survey_test

import (
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/survey"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/sheet"
)

// A reading that no sheet takes is held against what there is: the sea trial's limit, that
// of a sheet which lacks other figures, the owner's. A guide stays one, a newer trial goes
// before, and what was renewed since counts no more.
func TestReadingsThatNoSheetTakesAreJudged(t *testing.T) {
	for _, c := range []struct {
		name, boat, limit string
		word              sheet.Word // "" where no such verdict is to be drawn
		says              string
	}{
		{"gearbox too hot", `"readings": [{"date": "2026-05-01", "gearboxTemperature": "98 °C"}]`, "trial-gearbox-temperature", sheet.Outside, "guide at most 90 °C"},
		{"gearbox, open by its gauge", `"readings": [{"date": "2026-05-01", "gearboxTemperature": "90.3 °C"}]`, "trial-gearbox-temperature", sheet.About, ""},
		{"gearbox cool", `"readings": [{"date": "2026-05-01", "gearboxTemperature": "60 °C"}]`, "trial-gearbox-temperature", sheet.Inside, ""},
		{"gearbox cooled down since", `"readings": [{"date": "2026-05-01", "gearboxTemperature": "98 °C"}, {"date": "2026-06-01", "gearboxTemperature": "60 °C"}]`, "trial-gearbox-temperature", sheet.Inside, ""},
		{"by the maker's figure", `"makersFigures": [{"of": "trial-gearbox-temperature", "value": "120 °C", "source": {"document": "the gearbox manual"}}], "readings": [{"date": "2026-05-01", "gearboxTemperature": "98 °C"}]`, "trial-gearbox-temperature", sheet.Within, "at most 120 °C"},
		{"shaken, speed not read", `"readings": [{"date": "2026-05-01", "vibrationVelocity": "30 mm/s"}]`, "trial-vibration", sheet.Outside, "18 mm/s"},
		{"shaken little", `"readings": [{"date": "2026-05-01", "vibrationVelocity": "3 mm/s"}]`, "trial-vibration", "", ""},
		{"engine speed of no trial", `"readings": [{"date": "2026-05-01", "engineSpeed": "1500 rpm"}]`, "trial-full-speed-low", "", ""},
		{"bent, power not known", `"shaft": {"diameter": "30 mm"}, "readings": [{"date": "2026-05-01", "shaftRunOut": "0.4 mm"}]`, "shaft-run-out", sheet.Beyond, ""},
		{"gland hot, sea not read", `"readings": [{"date": "2026-05-01", "glandTemperature": "70 °C"}]`, "gland-too-hot-to-hold", sheet.Outside, ""},
	} {
		s := testboat.Check(t, testboat.Read(t, `{"name": "Knot", `+c.boat+`}`), marinecalc.Options{})
		var got *survey.Finding
		for i := range s.Findings {
			if s.Findings[i].Verdict.Limit == c.limit {
				if got != nil {
					t.Errorf("%s: twice", c.name)
				}
				got = &s.Findings[i]
			}
		}
		switch {
		case got == nil && c.word == "":
			continue
		case got == nil:
			t.Errorf("%s: not judged", c.name)
			continue
		case got.Verdict.Word != c.word || !strings.Contains(got.Verdict.Sentence, c.says):
			t.Errorf("%s: %s: %s", c.name, got.Verdict.Word, got.Verdict.Sentence)
		}
		found := false
		for _, f := range s.Found {
			found = found || f.Limit == c.limit && f.Kind == survey.FoundMeasured
		}
		if found != (c.word == sheet.Beyond) {
			t.Errorf("%s: found is %v", c.name, found)
		}
		if c.word.Plain() == sheet.Beyond && strings.Contains(s.Nothing, "Nothing") && !strings.Contains(s.Nothing, "outside a guide") {
			t.Errorf("%s: %s", c.name, s.Nothing)
		}
		for _, p := range s.Parts {
			if p.Part == "gearbox" && strings.HasPrefix(c.limit, "trial-gearbox") && p.Word != c.word {
				t.Errorf("%s: the gearbox is %s", c.name, p.Word)
			}
		}
	}
}

// What the trial read later goes before a reading kept earlier.
func TestATrialGoesBeforeAnOlderReading(t *testing.T) {
	boat := `{"name": "Knot", "engine": {"speed": "3000 rpm", "idleSpeed": "800 rpm"}, "seaTrial": {"date": "2026-06-01", "runs": [{"stage": "cruise", "gearboxTemperature": "60 °C"}]}, "readings": [{"date": "2026-05-01", "gearboxTemperature": "98 °C"}]}`
	for date, want := range map[string]sheet.Word{"2026-05-01": sheet.Inside, "2026-07-01": sheet.Outside} {
		s := testboat.Check(t, testboat.Read(t, strings.Replace(boat, "2026-05-01", date, 1)), marinecalc.Options{})
		for _, f := range s.Findings {
			if f.Verdict.Limit == "trial-gearbox-temperature" {
				if f.Verdict.Word != want {
					t.Errorf("read on %s: %s", date, f.Verdict.Sentence)
				}
				break // the most urgent
			}
		}
	}
}
