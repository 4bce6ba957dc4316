package catalogue_test

import (
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/problem"
)

// ISO 281 has X, Y and e by thrust over static rating: 0.5 kN on the 16.6 kN of
// a 6208 is 0.030, between the rows 0.028 and 0.056; the row 0.56 makes the
// life three times too long.
func TestAxialRowMustBeNextToTheThrust(t *testing.T) {
	input := func(row, thrust string) []byte {
		return []byte(`{"bearing":"6208","radialLoad":"0.9 kN","thrust":"` + thrust + `","axialFactors":"` + row + `","shaftSpeed":"1200 rpm","wantedLife":"5000 h"}`)
	}
	for _, c := range []struct{ row, thrust, allowed string }{
		{"0.028", "0.5 kN", ""}, {"0.056", "0.5 kN", ""}, {"0.56", "0.5 kN", "0.028 or 0.056"}, {"0.014", "0.5 kN", "0.028 or 0.056"},
		{"0.014", "0.1 kN", ""}, {"0.028", "0.1 kN", "0.014"}, {"0.56", "12 kN", ""}, {"0.42", "12 kN", "0.56"}, {"0.56", "0 kN", ""},
	} {
		_, err := marinecalc.Run("bearing-life", input(c.row, c.thrust), marinecalc.Options{NoRanges: true})
		if list := problem.Of(err); c.allowed == "" && err != nil || c.allowed != "" && (len(list) != 1 || list[0].Where != "/axialFactors" || list[0].Allowed != c.allowed) {
			t.Errorf("row %s, thrust %s: %v, want %q", c.row, c.thrust, err, c.allowed)
		}
	}
	// A thrust known to a third may stray past the rows in its trials.
	if s := testboat.Run(t, "bearing-life", string(input("0.028", "0.5 kN ± 0.17 kN")), marinecalc.Options{}); s.Result("adjustedLife").Low == nil {
		t.Errorf("no range: %q", s.Notes)
	}
}
