package diagnosis_test

import (
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/diagnosis"
	"example.org/driveline/marinecalc/internal/testboat"
)

// A rumble aft in a bearing within its limit: what a look would leave names no cause that
// is as likely on any boat, and some per cent are no suspicion.
func TestSomePerCentAreNoSuspicion(t *testing.T) {
	s := testboat.Run(t, diagnosis.FaultFinding, `{"lies":"ashore","answers":[{"evidence":"rumble-aft","answer":"yes"},{"evidence":"bearing-play","answer":"no"}]}`, marinecalc.Options{NoRanges: true})
	p := s.Result("probability")
	if p == nil || p.SI == nil || *p.SI >= 0.1 {
		t.Fatalf("%+v", p)
	}
	if how := s.Result("howSure").Text; strings.Contains(how, "Suspected") || !strings.Contains(how, "Nothing is suspected yet") {
		t.Error(how)
	}
	for n := 0; s.Cell("nextChecks", n, "ifNo") != nil; n++ {
		if text := s.Cell("nextChecks", n, "ifNo").Text; strings.Contains(text, "acking") {
			t.Errorf("packing does not rumble: %s", text)
		}
	}
	if s.Cell("nextChecks", 0, "ifNo") == nil {
		t.Error("no look is proposed")
	}
}
