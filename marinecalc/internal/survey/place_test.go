package survey_test

import (
	"slices"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/survey"
	"example.org/driveline/marinecalc/internal/testboat"
)

// A bearing is measured ashore and drips are counted afloat: what cannot be
// done where she lies is said with its place, after what can.
func TestMeasuringRespectsThePlace(t *testing.T) {
	const line = `"shaft": {"diameter": "30 mm"}, "bearing": {"wornLimit": "1.2 mm"}, "gland": {"boxBore": "50 mm", "packedLength": "36 mm", "packing": "flax"}, "engine": {"power": "20 kW", "speed": "3000 rpm"}, "gearbox": {"ratio": 2.5}`
	for _, c := range []struct{ lies, input, place string }{
		{"afloat", "bearing-clearance/bearingClearance", "ashore"},
		{"ashore", "bearing-clearance/bearingClearance", ""},
	} {
		s := testboat.Check(t, testboat.Read(t, `{"name": "Plover", "lies": "`+c.lies+`", `+line+`}`), marinecalc.Options{NoRanges: true})
		i := slices.IndexFunc(s.Measure, func(m survey.Measure) bool { return m.Input == c.input })
		if i < 0 {
			t.Fatalf("%s: %s is not to be measured: %+v", c.lies, c.input, s.Measure)
		}
		m := s.Measure[i]
		if m.Place != c.place || strings.Contains(m.Text, "next ashore") != (c.place == "ashore") {
			t.Errorf("%s: %q, %s", c.lies, m.Place, m.Text)
		}
		elsewhere := false
		for _, m := range s.Measure {
			if elsewhere && m.Place == "" {
				t.Errorf("%s: %s stands after what cannot be done here", c.lies, m.Title)
			}
			elsewhere = elsewhere || m.Place != ""
		}
		has := slices.ContainsFunc(s.Summary, func(l survey.Line) bool { return l.Code == "ashore" })
		if has != (c.place == "ashore") {
			t.Errorf("%s: a line of what to measure ashore: %v", c.lies, has)
		}
	}
}

// A part of which something was read, and nothing judged, is not called unmeasured.
func TestAPartThatWasReadSaysSo(t *testing.T) {
	s := testboat.Check(t, testboat.Read(t, `{"name": "Plover", "readings": [{"date": "2026-11-29", "wearIron": "10 mg/kg"}]}`), marinecalc.Options{NoRanges: true})
	for _, p := range s.Parts {
		if read := strings.HasPrefix(p.Reads, "read,"); read != (p.Part == "gearbox") {
			t.Errorf("%s reads %q", p.Part, p.Reads)
		}
	}
}

// Nothing is planned, and care that is overdue stands beside it.
func TestNothingPlannedTellsOverdueCare(t *testing.T) {
	b := testboat.Read(t, `{"name": "Plover", "work": {"remedies": []}, "service": {"done": [{"item": "mounts-renew", "date": "2016-04-11"}]}, "readings": [{"date": "2026-11-29", "engineHours": "1100 h"}]}`)
	if s := testboat.CheckOn(t, b, "2026-11-29"); s.Choice == nil || !strings.Contains(s.Choice.Text, "care overdue: ") {
		t.Errorf("%+v", s.Choice)
	}
}

// What was counted or felt at the gland is judged without the sizes of shaft, box and
// packing, which only what is computed wants. Where nothing says that she has packing,
// no drip is outside a guide, which asks, and over no limit.
func TestAGlandIsJudgedWithoutItsSizes(t *testing.T) {
	for reading, want := range map[string]string{
		`"dripRate": "120 drips/min"`:                                "Drips under way",
		`"dripRateAtRest": "40 drips/min"`:                           "Drips at rest",
		`"glandTemperature": "63 °C", "waterTemperature": "17 °C"`:   "Gland above the sea's temperature; Gland temperature, to keep a hand on",
		`"dripRate": "5 drips/min"`:                                  "",
		`"dripRate": "0 drips/min"`:                                  "Drips under way, packing or face seal not named",
		`"dripRate": "5 drips/min", "dripRateAtRest": "1 drips/min"`: "",
		`"waterTemperature": "17 °C"`:                                "",
	} {
		s := testboat.Check(t, testboat.Read(t, `{"name": "Plover", "readings": [{"date": "2026-11-29", `+reading+`}]}`), marinecalc.Options{})
		told := ""
		for _, l := range s.Summary[:min(3, len(s.Summary))] {
			if l.Code == "outside" || l.Code == "measured" || l.Code == "computed" {
				told += l.Text
			}
		}
		if told != want {
			t.Errorf("%s: %q, want %q", reading, told, want)
		}
	}
}
