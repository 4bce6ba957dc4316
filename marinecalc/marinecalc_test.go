package marinecalc_test

import (
	"errors"
	"slices"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/problem"
)

// A program tells what is missing, unknown or too large by the error alone.
func TestErrorsTellTheirKind(t *testing.T) {
	for input, want := range map[string]error{
		`{}`: problem.ErrMissing, `{"thread": 5}`: nil, strings.Repeat(" ", contract.MaxBytes+1): problem.ErrTooLarge,
	} {
		_, err := marinecalc.Run("bolt-preload", []byte(input), marinecalc.Options{})
		if again := err; err == nil || err != again || want != nil && !errors.Is(err, want) {
			t.Errorf("%.20s: %v", input, err)
		}
	}
	if _, err := marinecalc.Run("no-such", []byte(`{}`), marinecalc.Options{}); !errors.Is(err, problem.ErrUnknown) || errors.Is(err, problem.ErrMissing) {
		t.Errorf("an unknown calculation: %v", err)
	}
	var e *marinecalc.Error
	_, err := marinecalc.Run("bolt-preload", []byte(`{}`), marinecalc.Options{})
	if !errors.As(err, &e) || !slices.ContainsFunc(e.Problems, func(p marinecalc.Problem) bool { return p.Where == "/pitch" && p.Choose == "thread" }) {
		t.Errorf("the pitch comes with the thread: %#v", e)
	}
}
