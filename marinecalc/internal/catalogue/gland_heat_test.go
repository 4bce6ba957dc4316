package catalogue_test

import (
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
)

// A measured gland decides: first on the sheet is its rise, and no drip rate is
// recommended that is more than a gland should leak (pumps are run at 40 to 60 drops a
// minute: common practice, no source).
func TestAHotGlandIsNotCooledByATap(t *testing.T) {
	const stop, ease, tap, small, unknown, far = "stop the shaft as soon as", "of a packed gland back both nuts off by one flat, evenly", "no drip holds the rise while", "smaller than drips can hold", "drip rate found here", "far hotter than ordinary friction"
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

// What is counted is judged on both sides, and a reading that cannot be is called that. Nothing
// of it is told to leave the nuts alone.
func TestWhatTheGlandShowsIsJudged(t *testing.T) {
	const leave, dry, leaks, again, dripless = "Leave the nuts alone", "It runs dry, or nearly", "More than a gland should leak", "Read gland and water again", "run without a drip"
	for _, c := range []struct {
		what, rest       string
		verdict, word    string
		wanted, unwanted []string
	}{
		{"dry flax, warm", `"packing": "flax", "dripRate": "0 drips/min", "dripGauge": "drip-count-long", "measuredGlandTemperature": "32 °C"`, "gland-drips", "beyond", []string{dry}, []string{leave, leaks, again, dripless}},
		{"no drip in a minute", `"packing": "flax", "dripRate": "0 drips/min", "measuredGlandTemperature": "20 °C"`, "gland-drips", "beyond", []string{dry}, []string{leave, leaks}},
		{"a tap", `"packing": "flax", "dripRate": "600 drips/min", "mostDrips": "60 drips/min", "measuredGlandTemperature": "19 °C"`, "gland-leaks", "beyond", []string{leaks}, []string{leave, dry}},
		{"the maker's most", `"packing": "flax", "dripRate": "30 drips/min", "mostDrips": "6 drips/min", "measuredGlandTemperature": "19 °C"`, "gland-leaks", "beyond", []string{leaks}, []string{leave, dry}},
		{"colder than the sea", `"packing": "flax", "dripRate": "8 drips/min", "measuredGlandTemperature": "15 °C"`, "gland-colder-than-sea", "beyond", []string{again}, []string{leave, dry, leaks}},
		{"PTFE, no drip", `"packing": "ptfe", "dripRate": "0 drips/min", "measuredGlandTemperature": "25 °C"`, "gland-drips", "", []string{dripless}, []string{leave, dry, leaks}},
		{"colder than the sea, its rise", `"packing": "flax", "dripRate": "8 drips/min", "measuredGlandTemperature": "15 °C"`, "gland-rise-measured", "about the guide", []string{again}, nil},
		{"colder than the sea, its heat", `"packing": "flax", "dripRate": "8 drips/min", "measuredGlandTemperature": "15 °C"`, "gland-too-hot-to-hold", "about the guide", []string{again}, nil},
		{"dry, and no tap", `"packing": "flax", "dripRate": "0 drips/min"`, "gland-leaks", "about the guide", []string{dry}, []string{leaks}},
		{"as it should be", `"packing": "flax", "dripRate": "8 drips/min", "measuredGlandTemperature": "25 °C"`, "gland-drips", "within", []string{leave}, []string{dry, leaks, again}},
		{"packing not named", `"frictionCoefficient": "0.2", "lateralRatio": "0.7", "dripRate": "0 drips/min", "dripGauge": "drip-count-long"`, "gland-drips-kind-unknown", "beyond", nil, []string{leave}},
		{"it boils", `"packing": "flax", "dripRate": "8 drips/min", "measuredGlandTemperature": "110 °C"`, "gland-boils", "beyond", []string{"stop the shaft"}, []string{leave}},
		{"hot, not boiling", `"packing": "flax", "dripRate": "8 drips/min", "measuredGlandTemperature": "70 °C"`, "gland-boils", "cannot tell", []string{"stop the shaft"}, []string{leave}},
	} {
		s := testboat.Run(t, "gland-heat", `{"shaftDiameter": "32 mm", "boxBore": "50 mm", "packedLength": "36 mm", "shaftSpeed": "1200 rpm", "waterTemperature": "18 °C", "shaftAlloy": "s31600-annealed", `+c.rest+`}`, marinecalc.Options{})
		word := ""
		if v := s.Verdict(c.verdict); v != nil {
			word = string(v.Word)
		}
		if word != c.word {
			t.Errorf("%s: %s is %q, want %q", c.what, c.verdict, word, c.word)
		}
		advises(t, c.what, s, c.wanted, c.unwanted)
	}
}

// Friction that is far too high does not heat the gland past boiling.
func TestNoGlandIsComputedPastBoiling(t *testing.T) {
	s := testboat.Run(t, "gland-heat", `{"shaftDiameter": "50 mm", "boxBore": "70 mm", "packedLength": "60 mm", "shaftSpeed": "5000 rpm", "waterTemperature": "18 °C", "shaftAlloy": "s31600-annealed", "packing": "flax", "glandStress": "5 MPa", "dripRate": "8 drips/min"}`, marinecalc.Options{})
	if got := *s.Result("glandTemperature").SI; got > 373.16 {
		t.Errorf("%g K", got)
	}
}

// A range that lies past its guide at both ends of what is usual is outside it,
// however skewed.
func TestADripRateFarPastItsGuide(t *testing.T) {
	for gland, word := range map[string]string{"75 °C": "outside the guide", "22 °C": "inside the guide"} {
		s := testboat.Run(t, "gland-heat", `{"shaftDiameter": "30 mm", "shaftSpeed": "1300 rpm", "waterTemperature": "20 °C", "measuredGlandTemperature": "`+gland+`", "dripRate": "10 drips/min", "packing": "flax", "packedLength": "40 mm", "boxBore": "50 mm", "shaftAlloy": "s31600-annealed"}`, marinecalc.Options{})
		if v := s.Verdict("drips-not-a-tap"); v == nil || string(v.Word) != word {
			t.Errorf("%s: %+v", gland, v)
		}
	}
}
