package diagnosis_test

import (
	"encoding/json"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
)

// What was read is a fault with nothing answered as with one question that says
// nothing: found or suspected, to be cured, planned, and before the trial. A boat of
// which nothing is read that points anywhere has no fault finding.
func TestWhatWasReadIsAFaultThoughNothingWasAnswered(t *testing.T) {
	for name, cause := range map[string]string{"misaligned-coupling": "coupling-misaligned", "crooked-flange": "coupling-crooked", "worn-bearing": "bearing-worn",
		"leaking-gland": "gland-packing-worn", "nothing-wrong": "", "offset-only": ""} {
		var boat map[string]any
		if err := json.Unmarshal(testboat.File(t, "testdata", "cases", name+".json"), &boat); err != nil {
			t.Fatal(err)
		}
		delete(boat, "symptoms")
		for _, r := range boat["readings"].([]any) {
			delete(r.(map[string]any), "symptoms")
		}
		s := testboat.Check(t, testboat.Read(t, testboat.Text(t, boat)), marinecalc.Options{})
		got, planned := "", false
		for _, one := range s.Sheets {
			if c := one.Result("cause"); c != nil && one.Calculation == "fault-finding" {
				got = c.Text
			}
			planned = planned || one.Calculation == "work-plan"
		}
		if got != cause || planned != (cause != "") {
			t.Errorf("%s: %q for %q, planned %t", name, got, cause, planned)
		}
	}
}
