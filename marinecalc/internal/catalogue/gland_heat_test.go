package catalogue_test

import (
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
)

// A measured gland decides: first on the sheet is its rise, and no drip rate is
// recommended that is more than a gland should leak (packed pumps run at 40 to 60 drops a
// minute: general texts on packed pumps).
func TestAHotGlandIsNotCooledByATap(t *testing.T) {
	const stop, ease, tap, small, unknown, far = "stop the shaft as soon as", "Back both gland nuts off by one flat, evenly, wait ten minutes", "no drip holds the rise while", "smaller than drips can hold", "drip rate found here", "far hotter than ordinary friction"
	for _, c := range []struct {
		what, rest       string
		first            string
		wanted, unwanted []string
	}{
		{"90 °C", `, "measuredGlandTemperature": "90 °C"`, "measuredRise", []string{stop, tap, far}, []string{ease, small, unknown}},
		{"45 °C", `, "measuredGlandTemperature": "45 °C"`, "measuredRise", []string{ease, tap}, []string{stop, small, unknown, far}},
		{"25 °C", `, "measuredGlandTemperature": "25 °C"`, "measuredRise", []string{"Leave the nuts alone"}, []string{stop, ease, tap, small, unknown, far}},
		{"25 °C, 3 °C wanted", `, "measuredGlandTemperature": "25 °C", "wantedRise": "3 °C"`, "measuredRise", []string{small}, []string{stop, ease, tap, unknown, far}},
		{"not measured", `, "wantedRise": "5 °C"`, "temperatureRise", []string{unknown}, []string{stop, ease, tap, small, far}},
	} {
		s := testboat.Run(t, "gland-heat", `{"shaftDiameter": "32 mm", "boxBore": "50 mm", "packedLength": "36 mm", "shaftSpeed": "1200 rpm", "dripRate": "8 drips/min", "waterTemperature": "18 °C", "packing": "ptfe", "shaftAlloy": "s31600-annealed"`+c.rest+`}`, marinecalc.Options{})
		advises(t, c.what, s, c.wanted, c.unwanted)
		if s.Results[0].Name != c.first {
			t.Errorf("%s: first comes %s", c.what, s.Results[0].Name)
		}
		if rate, words := *s.Result("dripRateForRise").SI, s.Result("whatHoldsIt").Text; rate > 1 != strings.HasPrefix(words, "no drip does") {
			t.Errorf("%s: %g drips a second, %q", c.what, rate, words)
		}
	}
}
