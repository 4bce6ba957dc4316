package catalogue_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/stat/distuv"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/sheet"
)

// A count is one draw of what comes at random: the probability that the fluid
// meets a code is that of a gamma distribution of shape n + 1/2 (Jeffreys),
// here of a general statistics library. 19 particles of 14 µm in 1 mL meet
// "at most 20" with 0.57, and the more fluid was counted the surer it is.
func TestAVerdictOnFewParticlesIsNotSure(t *testing.T) {
	for _, c := range []struct {
		input         string
		n, most, code float64
	}{
		{`{"count14": 19, "sampleVolume": "1 mL", "wantedCode14": 11}`, 19, 20, 11},
		{`{"count14": 1900, "sampleVolume": "100 mL", "countedVolume": "1 mL", "wantedCode14": 11}`, 19, 20, 11},
		{`{"count14": 1900, "sampleVolume": "100 mL", "countedVolume": "10 mL", "wantedCode14": 11}`, 190, 200, 11},
		{`{"count14": 1900, "sampleVolume": "100 mL", "wantedCode14": 11}`, 1900, 2000, 11},
		{`{"count14": 25, "sampleVolume": "1 mL", "wantedCode14": 11}`, 25, 20, 12},
	} {
		s := testboat.Run(t, "fluid-cleanliness", c.input, marinecalc.Options{})
		v := s.Verdict("clean-14")
		want := distuv.Gamma{Alpha: c.n + 0.5, Beta: 1}.CDF(c.most)
		if v == nil || v.Probability == nil || math.Abs(*v.Probability-want) > 0.004 {
			t.Errorf("%s: %+v, want a probability of %.4g", c.input, v, want)
			continue
		}
		if *v.SI != c.code || (v.Word == sheet.Within) != (want >= 0.975) && v.Word != sheet.NearLimit {
			t.Errorf("%s: %s", c.input, v.Sentence)
		}
	}
}
