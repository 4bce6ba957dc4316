package catalogue_test

import (
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/sheet"
)

// One reading at its limit reads alike on its own sheet and on that of its trend,
// with the chance that its gauge leaves.
func TestAtTheLimitReadsAlike(t *testing.T) {
	one := testboat.Run(t, "bearing-clearance", `{"shaftDiameter":"30 mm","bearingClearance":"0.76 mm","bladeWidth":"0 mm","wornLimit":"0.76 mm"}`, marinecalc.Options{})
	other := testboat.Run(t, "reading-trend", `{"reading":"bearingClearance","limit":"0.76 mm","readings":[{"date":"2026-01-01","value":"0.5 mm"},{"date":"2026-03-01","value":"0.76 mm"}]}`, marinecalc.Options{})
	for _, v := range []*sheet.Verdict{one.Verdict("worn-limit"), other.Verdict("trend-not-reached")} {
		if v == nil || v.Reads != "at the limit" || v.Probability == nil || *v.Probability < 0.45 || *v.Probability > 0.55 {
			t.Errorf("%+v", v)
		}
	}
}
