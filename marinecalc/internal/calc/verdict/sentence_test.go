package verdict

import (
	"math"
	"strings"
	"testing"

	"example.org/driveline/marinecalc/internal/calc/inputs"
	"example.org/driveline/marinecalc/internal/spread"
	"example.org/driveline/marinecalc/rules"
	"example.org/driveline/marinecalc/sheet"
)

func TestProbabilitiesInWords(t *testing.T) {
	for p, want := range map[float64]string{0.75: "75 %", 0.9: "90 %", 0.1: "10 %", 0.0975: "9.8 %", 0.975: "97.5 %", 0.025: "2.5 %", 0.5: "50 %"} {
		if got := inputs.Percent(p); got != want {
			t.Errorf("%g: %q, want %q", p, got, want)
		}
	}
}

// How much of a limit is taken up is said of a maximum above nothing, by a
// value above nothing, and not where the limit is 1: there the value says it.
func TestNearnessInWords(t *testing.T) {
	none := math.NaN()
	for _, c := range []struct {
		si    float64
		limit spread.Limit
		want  string
	}{
		{19, spread.AtMost(20), ", 95 % of the limit is taken up"},
		{0.95, spread.AtMost(1), ""},
		{365.15, spread.Limit{Max: 373.15, Min: none, Zero: 288.15}, ", 91 % of the rise from the sea to the limit is taken up"}, // 92 °C of 100 °C, sea of 15 °C
		{0, spread.AtMost(20), ""},
		{285.15, spread.Limit{Max: 373.15, Min: none, Zero: 288.15}, ""}, // colder than the sea
		{288.15, spread.Limit{Max: 373.15, Min: none, Zero: 288.15}, ""},
		{365.15, spread.Limit{Max: 373.15, Min: 280, Zero: 288.15}, ""},
		{295, spread.Limit{Max: 288.15, Min: none, Zero: 288.15}, ""},
		{290, spread.Limit{Max: none, Min: 285, Zero: 288.15}, ""},
		{-1, spread.AtMost(20), ""},
		{19, spread.Limit{Max: 20, Min: 1}, ""},
		{-19, spread.AtMost(-18), ""},
		{0, spread.AtMost(0), ""},
		{1.05, spread.Limit{Max: none, Min: 1}, ""},
	} {
		if got := nearness(c.si, c.limit, ""); got != c.want {
			t.Errorf("%g against %+v: %q, want %q", c.si, c.limit, got, c.want)
		}
	}
}

// A chance is never all or nothing: near either it is told as more or less
// than a hundredth away.
func TestNoChanceIsAllOrNothing(t *testing.T) {
	l := &rules.Limit{Title: "It lasts", Why: "Mend it.", Min: rules.BoundAt(0.95)}
	for _, c := range []struct {
		chance float64
		word   sheet.Word
		want   string
	}{
		{0, sheet.Beyond, "It lasts: no, the chance is less than 1 %. Mend it."},
		{0.02, sheet.Beyond, "It lasts: no, the chance is 2.0 %. Mend it."},
		{0.084, sheet.CannotTell, "It lasts: almost certainly no, the chance is 8.4 %: act as on a no. Mend it."},
		{0.9, sheet.CannotTell, "It lasts: almost certainly yes, the chance is 90 %, too little to count on."},
		{0.45, sheet.CannotTell, "It lasts: the chance is 45 %, which is neither a yes nor a no."},
		{0.5, sheet.CannotTell, "It lasts: not enough to tell, the readings say neither yes nor no."},
		{0.98, sheet.Within, "It lasts: yes, the chance is 98.0 %."},
		{1, sheet.Within, "It lasts: yes, the chance is more than 99 %."},
	} {
		if got := chanceSentence(l, c.chance, c.word, ""); got != c.want {
			t.Errorf("%g: %s", c.chance, got)
		}
	}
	for p := 0.0; p <= 1; p += 0.0005 {
		if s := inputs.Percent(p); strings.HasPrefix(s, "0") || strings.HasPrefix(s, "100") {
			t.Errorf("%g is told as %s", p, s)
		}
	}
}
