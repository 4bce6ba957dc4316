package calc

import (
	"strings"
	"testing"

	"example.org/driveline/marinecalc/rules"
	"example.org/driveline/marinecalc/sheet"
)

// A chance is never all or nothing: near either it is told as more or less
// than a hundredth away.
func TestNoChanceIsAllOrNothing(t *testing.T) {
	l := &rules.Limit{Title: "It lasts", Why: "Mend it."}
	for _, c := range []struct {
		chance float64
		word   sheet.Word
		want   string
	}{
		{0, sheet.Beyond, "It lasts: no, the chance is less than 1 %. Mend it."},
		{0.03, sheet.Beyond, "It lasts: no, the chance is 3.0 %. Mend it."},
		{0.45, sheet.CannotTell, "It lasts: the chance is 45 %, which is neither a yes nor a no."},
		{0.96, sheet.Within, "It lasts: yes, the chance is 96.0 %."},
		{1, sheet.Within, "It lasts: yes, the chance is more than 99 %."},
	} {
		if got := chanceSentence(l, c.chance, c.word); got != c.want {
			t.Errorf("%g: %s", c.chance, got)
		}
	}
	for p := 0.0; p <= 1; p += 0.0005 {
		if s := percent(p); strings.HasPrefix(s, "0") || strings.HasPrefix(s, "100") {
			t.Errorf("%g is told as %s", p, s)
		}
	}
}

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
