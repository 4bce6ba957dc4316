package shaft

import (
	"errors"
	"math"
	"strings"
	"testing"

	"example.org/driveline/marinecalc/problem"
)

// Units of the printed examples, in SI: NIST SP 811, appendix B.8.
const (
	inch  = 0.0254
	pound = 0.45359237
	lbf   = pound * gravity
	psi   = lbf / (inch * inch)
	ksi   = 1000 * psi
	hp    = 550 * 12 * inch * lbf
	rpm   = 2 * math.Pi / 60
)

func near[T ~float64](t *testing.T, what string, got T, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(float64(got)-want) <= tolerance*math.Abs(want)) {
		t.Errorf("%s = %.10g, want %.10g within %g", what, float64(got), want, tolerance)
	}
}

func must[In, Out any](t *testing.T, f func(In) (Out, error), in In) Out {
	t.Helper()
	out, err := f(in)
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// refusals checks that each change of a sound input is refused at one place,
// with what is allowed and, where want is given, with the number in words.
type refusal[In any] struct {
	where, want string
	change      func(*In)
}

func refusals[In, Out any](t *testing.T, f func(In) (Out, error), sound func() In, list []refusal[In]) {
	t.Helper()
	must(t, f, sound())
	for _, r := range list {
		in := sound()
		r.change(&in)
		_, err := f(in)
		var got problem.List
		if !errors.As(err, &got) || len(got) != 1 || got[0].Where != r.where || got[0].What == "" || got[0].Allowed == "" {
			t.Errorf("%s: got %v", r.where, err)
			continue
		}
		if r.want != "" && !strings.Contains(got[0].What, r.want) {
			t.Errorf("%s: %q does not show %q", r.where, got[0].What, r.want)
		}
	}
}
