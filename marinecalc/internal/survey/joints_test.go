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

// A joint that was found loose is named first and without a margin, and the weakest
// is that of the others; of joints that hold less than the torque each is named.
func TestSummaryNamesWhatMovesAndWhatFailsFirst(t *testing.T) {
	whole := []string{"hubFriction 400 ± 10 N·m", "hubPullMargin 1000", "facesAhead 610 ± 10 N·m", "facesAstern 610 ± 10 N·m", "boreAhead 480 ± 10 N·m", "boreAstern 480 ± 10 N·m"}
	lines := func(readings string, of ...string) (all []string) {
		boat := fmt.Sprintf(strings.TrimSuffix(joined, "}")+readings+"}", figures(append(of, whole...)...))
		for _, l := range testboat.Check(t, testboat.Read(t, boat), marinecalc.Options{}).Summary {
			if strings.HasPrefix(l.Code, "joints") {
				all = append(all, l.Head+": "+l.Text)
			}
		}
		return all
	}
	sound := []string{"taperAhead 300 ± 10 N·m", "taperAstern 300 ± 10 N·m"}
	got := lines(`, "coupling": {"bore": {"holdMethod": "clamp"}}, "readings": [{"date": "2026-05-01", "backlashPropeller": "2.4° ± 0.1°", "backlashShaft": "2.4° ± 0.1°", "backlashFlange": "0.5° ± 0.1°"}]`, sound...)
	if len(got) != 2 || got[0] != "Found loose: coupling, at its faces or on its shaft" || !strings.HasPrefix(got[1], "Weakest of the others: propeller on its taper") {
		t.Errorf("a coupling that turns: %q", got)
	}
	got = lines(`, "readings": [{"date": "2026-05-01", "backlashPropeller": "2.4° ± 0.1°", "backlashShaft": "0.5° ± 0.1°", "backlashFlange": "0.5° ± 0.1°"}]`, sound...)
	if len(got) != 2 || got[0] != "Found loose: propeller on its taper" || !strings.HasPrefix(got[1], "Weakest of the others: output flange") {
		t.Errorf("a loose propeller: %q", got)
	}
	whole[1] = "hubPullMargin 0.5"
	if got = lines("", "taperAhead 300 ± 10 N·m", "taperAstern 0 N·m"); len(got) != 2 || got[0] != "Joints to put right: output flange on its shaft; propeller on its taper" {
		t.Errorf("two that hold nothing astern: %q", got)
	}
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
		{append([]string{"taperAhead 300 ± 10 N·m", "taperAstern 395 ± 10 N·m"}, whole...), "Weakest, alike in a shock and astern", "propeller on its taper", "?"},
		{append([]string{"taperAhead 395 ± 10 N·m", "taperAstern 300 ± 10 N·m"}, whole...), "Weakest, alike ahead", "propeller on its taper; output flange on its shaft", "?"},
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
