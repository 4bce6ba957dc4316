package calc_test

import (
	"math"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
	"github.com/google/go-cmp/cmp"
)

// The same seed gives the same numbers; another seed moves only the ranges,
// and those little.
func TestSeeds(t *testing.T) {
	const input = `{"thread": "M10x1.5", "grade": "iso-8.8", "finish": "oiled"}`
	a, again := testboat.Run(t, "bolt-preload", input, marinecalc.Options{Seed: 5}), testboat.Run(t, "bolt-preload", input, marinecalc.Options{Seed: 5})
	if diff := cmp.Diff(a, again); diff != "" {
		t.Error(diff)
	}
	b := testboat.Run(t, "bolt-preload", input, marinecalc.Options{Seed: 6}).Result("achievedPreload")
	r := a.Result("achievedPreload")
	if *r.SI != *b.SI || *r.Low == *b.Low || math.Abs(*r.Low-*b.Low) > 0.02**r.SI {
		t.Errorf("%v and %v", r.Low, b.Low)
	}
}

// The trials of a size that was read as nothing all lie above it; its interval
// holds what was read all the same.
func TestNoIntervalExcludesItsEstimate(t *testing.T) {
	even := `{"couplingDiameter":"102 mm","couplingKind":"rigid","readings":[
	 {"clock":"12 o'clock","gap":"0.30 mm"},{"clock":"3 o'clock","gap":"0.30 mm"},{"clock":"6 o'clock","gap":"0.30 mm"},{"clock":"9 o'clock","gap":"0.30 mm"}]}`
	s := testboat.RunOn(t, "", "coupling-alignment", even)
	if r := s.Result("gapDifference"); r == nil || r.Low == nil || *r.Low > *r.SI {
		t.Errorf("%+v", r)
	}
	for _, r := range s.Results {
		if r.SI != nil && r.Low != nil && (*r.SI < *r.Low || *r.SI > *r.High) {
			t.Errorf("%s: %g is not within %g to %g", r.Name, *r.SI, *r.Low, *r.High)
		}
	}
}
