package survey_test

import (
	"encoding/json"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
)

// A shaft with a face seal is asked for nothing of a packed gland, whatever is
// still written of one; the same boat without that answer is.
func TestAFaceSealIsAskedForNoPacking(t *testing.T) {
	asks := func(answer string) (of string) {
		b := testboat.Read(t, `{"name":"Wigeon","shaft":{"diameter":"30 mm"},"engine":{"power":"20 kW","speed":"2800 rpm"},"gearbox":{"ratioAhead":"2.2"},
			"readings":[{"date":"2026-05-01","symptoms":[{"evidence":"seal-kind","answer":"`+answer+`"}]},{"date":"2026-05-02","engineHours":"400 h","dripRate":"0 drips/min"}]}`)
		s := testboat.Check(t, b, marinecalc.Options{})
		for _, list := range []any{s.Missing, s.Open, s.Measure} {
			text, err := json.Marshal(list)
			if err != nil {
				t.Fatal(err)
			}
			of += string(text)
		}
		due := testboat.Run(t, "service-schedule", `{"today":"2026-06-01"}`, marinecalc.Options{Boat: b}).Table("schedule")
		for _, r := range due.Rows {
			of += due.Reader(r)("what")
		}
		return of
	}
	packed := []string{"gland-heat", "gland-packing", "packing ring", "oxBore"}
	with, without := asks("no"), asks("yes")
	if !strings.Contains(with, "gland-packing") || !strings.Contains(with, "gland-heat") {
		t.Error("a packed gland is not asked for either")
	}
	for _, word := range packed {
		if strings.Contains(strings.ToLower(without), strings.ToLower(word)) {
			t.Errorf("a face seal is asked for %s", word)
		}
	}
}

// Drips counted at a face seal are seen though no sheet of a packed gland is hers, and no
// sheet tells her to turn gland nuts.
func TestDripsOfAFaceSealAreSeen(t *testing.T) {
	for drips, seen := range map[string]bool{"0 drips/min": false, "120 drips/min": true} {
		b := testboat.Read(t, `{"name":"Auk","shaft":{"diameter":"30 mm"},"readings":[{"date":"2026-05-02","dripRate":"0 drips/min","dripRateAtRest":"`+drips+`","symptoms":[{"evidence":"seal-kind","answer":"yes"}]}]}`)
		s := testboat.Check(t, b, marinecalc.Options{})
		is := false
		for _, f := range s.Found {
			is = is || f.Row == "gland-drips-much"
		}
		if is != seen {
			t.Errorf("%s: %+v", drips, s.Found)
		}
		for _, n := range testboat.Run(t, "gland-heat", `{}`, marinecalc.Options{Boat: b}).Next {
			if strings.Contains(n.Text, "gland nuts") {
				t.Errorf("%s: %s", drips, n.Text)
			}
		}
	}
}
