package catalogue_test

import (
	"math"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
)

// A scrap limit of another size than the bolt's is not used.
func TestReuseLimitOfAnotherSizeIsRefused(t *testing.T) {
	_, err := marinecalc.Run("bolt-fit", []byte(`{"thread":"M10x1.5","headFlangeThickness":"12 mm","nutFlangeThickness":"12 mm","plainNut":"hex-nut","reuseRule":"faa-7/16-14","measuredPrevailingTorque":"1 N·m"}`), marinecalc.Options{NoRanges: true})
	if err == nil || !strings.Contains(err.Error(), "/reuseRule") {
		t.Errorf("%v", err)
	}
}

// The length is bought by the stack as it was measured. Where a hundredth
// decides, half of the stacks are thicker than thought, and the bolt is not
// exchanged for that: 24 mm, a nut of 8 mm and two threads of 1.5 mm take 35 mm.
func TestTheBoltIsBoughtOnce(t *testing.T) {
	s := testboat.Run(t, "bolt-fit", `{"thread":"M10x1.5","headFlangeThickness":"12 mm ± 0.1 mm","nutFlangeThickness":"12 mm ± 0.1 mm","nutHeight":"8 mm ± 0.1 mm"}`, marinecalc.Options{})
	if r := s.Result("chosenLength"); r == nil || math.Abs(*r.SI-0.035) > 1e-12 || r.Low != nil {
		t.Fatalf("chosen: %+v", r)
	}
	if v := s.Verdict("threads-beyond-nut"); v == nil || v.Word != "cannot tell" || v.Probability == nil || math.Abs(*v.Probability-0.5) > 0.03 {
		t.Errorf("two threads on the verge: %+v", v)
	}
	if r := s.Result("threadsBeyond"); *r.Low > 1.95 || *r.High < 2.05 {
		t.Errorf("threads: %+v", r)
	}
}
