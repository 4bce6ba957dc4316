package survey_test

import (
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/sheet"
)

// What failed on the sea trial is how its part stands until it is read again, and the
// sheet that goes by older readings says so; a part of which a whole sheet lacks its
// inputs is OK only as far as it was measured.
func TestAPartSaysWhatTheTrialFound(t *testing.T) {
	const boat = `{"name": "Tern", "shaft": {"diameter": "32 mm", "alloy": "s31600-annealed"}, "gland": {"boxBore": "50 mm", "packedLength": "36 mm", "packing": "flax"}, "gearbox": {"ratio": "2"}, "engine": {"power": "30 kW", "speed": "2800 rpm", "idleSpeed": "800 rpm"},
		"readings": [{"date": "2026-05-01", "dripRate": "5 drips/min", "glandTemperature": "20 °C", "waterTemperature": "15 °C"}%LATER],
		"seaTrial": {"date": "2026-06-01", "by": "me (invented)", "runs": [{"stage": "cruise", "engineSpeed": "2000 rpm", "glandTemperature": "%WARM", "glandBefore": "%WARM", "waterTemperature": "15 °C", "dripRate": "6 drips/min"}]}}`
	for _, c := range []struct{ warm, later, reads, told string }{
		{"75 °C", "", "failed on the sea trial of 2026-06-01", "75 °C at cruising speed, which is newer"},
		{"75 °C", `, {"date": "2026-06-03", "dripRate": "5 drips/min", "glandTemperature": "20 °C", "waterTemperature": "15 °C"}`, "OK as far as it was measured", ""},
		{"20 °C", "", "OK as far as it was measured", ""},
	} {
		s := testboat.Check(t, testboat.Read(t, strings.NewReplacer("%WARM", c.warm, "%LATER", c.later).Replace(boat)), marinecalc.Options{})
		for _, p := range s.Parts {
			if p.Part == "gland" && p.Reads != c.reads {
				t.Errorf("%s%s: %s, %s", c.warm, c.later, p.Reads, p.Sentence)
			}
		}
		told := ""
		for _, one := range testboat.Page(t, s, "gland-heat").Conflicts {
			told += one.Text
		}
		if c.told == "" && strings.Contains(told, "Gland temperature") || !strings.Contains(told, c.told) {
			t.Errorf("%s%s: %s", c.warm, c.later, told)
		}
	}
}

// Play read at the coupling counts for the coupling, at the taper for the propeller and
// at the output flange for the gearbox, though one sheet has them all.
func TestPlayCountsForThePartItIsOf(t *testing.T) {
	places := []string{"backlashOutputShaft", "backlashFlange", "backlashShaft", "backlashPropeller"}
	for after, part := range map[int]string{1: "gearbox", 2: "coupling", 3: "propeller"} {
		readings := ""
		for i, place := range places {
			readings += `, "` + place + `": "` + map[bool]string{true: "5° ± 0.05°", false: "1° ± 0.05°"}[i >= after] + `"`
		}
		s := testboat.Check(t, testboat.Read(t, `{"name": "Tern", "outputFlange": {"nutTorque": "200 N·m"}, "coupling": {"bore": {"holdMethod": "clamp"}}, "readings": [{"date": "2026-05-01"`+readings+`}]}`), marinecalc.Options{})
		for _, p := range s.Parts {
			if over := p.Word.Plain() == sheet.Beyond; over != (p.Part == part) {
				t.Errorf("play at the %s: the %s is %s, %s", part, p.Part, p.Reads, p.Sentence)
			}
		}
	}
}
