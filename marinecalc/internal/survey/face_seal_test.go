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
