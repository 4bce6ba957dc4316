package shaft

import (
	"math"
	"strings"
	"testing"

	"example.org/driveline/marinecalc/internal/parttest"
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

// refusals checks that each change of a sound input is refused at one place,
// with what is allowed and, where want is given, with the number in words.
type refusal[In any] struct {
	where, want string
	change      func(*In)
}

func refusals[In, Out any](t *testing.T, f func(In) (Out, error), sound func() In, list []refusal[In]) {
	t.Helper()
	parttest.Must(t, f, sound())
	for _, r := range list {
		in := sound()
		r.change(&in)
		_, err := f(in)
		parttest.RefusedAt(t, err, r.where)
		if err != nil && !strings.Contains(err.Error(), r.want) {
			t.Errorf("%s: %v does not show %q", r.where, err, r.want)
		}
	}
}
