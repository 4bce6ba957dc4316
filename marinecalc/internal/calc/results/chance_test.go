package results

import (
	"testing"
)

// A share of the trials is told in tenths, and as a guess where it rests on one.
func TestSharesOfTrialsAreTenths(t *testing.T) {
	for p, want := range map[float64]string{0: "less than 1 in 20", 0.049: "less than 1 in 20", 0.05: "about 1 in 10", 0.14: "about 1 in 10", 0.5: "about 5 in 10",
		0.9067: "about 9 in 10", 0.95: "about 9 in 10", 0.9924: "more than 19 in 20"} {
		if got := inTen(p, false); got != want {
			t.Errorf("%g: %q, want %q", p, got, want)
		}
		if got := inTen(p, true); got != want+", if the guesses hold" {
			t.Errorf("%g of guesses: %q", p, got)
		}
	}
}
