package survey_test

import (
	"fmt"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
)

// joined is a boat whose four joints hold 400, 610, 480 and 300 N·m ahead by
// what its makers say, or as the test has it.
const joined = `{"name": "Tern", "engine": {"power": "21 kW", "speed": "2800 rpm"}, "gearbox": {"ratioAhead": "2", "ratioAstern": "2"}, "outputFlange": {"drive": "none"},
	"makersFigures": [%s]}`

func figures(list ...string) string {
	for i, f := range list {
		of, value, _ := strings.Cut(f, " ")
		list[i] = fmt.Sprintf(`{"of": "line-joints/%s", "value": "%s", "source": {"document": "Invented manual"}}`, of, value)
	}
	return strings.Join(list, ", ")
}

// The summary names the weakest joint with its margins, the joints that are not
// known beside it, and never the weakest of some as that of all.
func TestSummaryNamesTheWeakestJoint(t *testing.T) {
	whole := []string{"hubFriction 400 ± 10 N·m", "hubPullMargin 1000", "facesAhead 610 ± 10 N·m", "facesAstern 610 ± 10 N·m", "boreAhead 480 ± 10 N·m", "boreAstern 480 ± 10 N·m"}
	for _, c := range []struct {
		figures        []string
		head, has, not string
	}{
		{append([]string{"taperAhead 300 ± 10 N·m", "taperAstern 300 ± 10 N·m"}, whole...), "Weakest joint", "propeller on its taper", "?"},
		{append([]string{"taperAhead 395 ± 10 N·m", "taperAstern 395 ± 10 N·m"}, whole...), "Weakest, not told apart", "propeller on its taper; output flange on its shaft", "?"},
		{whole, "Weakest of those known", "propeller on its taper?", "ahead 2"},
		{append([]string{"taperAhead 100 ± 10 N·m", "taperAstern 100 ± 10 N·m"}, whole[2:]...), "Weakest of those known", "shock 0.36", ""},
	} {
		survey := testboat.Check(t, testboat.Read(t, fmt.Sprintf(joined, figures(c.figures...))), marinecalc.Options{})
		found := false
		for _, l := range survey.Summary {
			if l.Code == "joints" {
				found = true
				if l.Head != c.head || !strings.Contains(l.Text, c.has) || c.not != "" && strings.Contains(l.Text, c.not) {
					t.Errorf("%v: %s: %s", c.figures, l.Head, l.Text)
				}
			}
		}
		if !found {
			t.Errorf("%v: no line on joints in %+v", c.figures, survey.Summary)
		}
	}
	for _, l := range testboat.Check(t, testboat.Read(t, `{"name": "Bare"}`), marinecalc.Options{NoRanges: true}).Summary {
		if l.Code == "joints" {
			t.Errorf("nothing is known, and it says %s: %s", l.Head, l.Text)
		}
	}
}
