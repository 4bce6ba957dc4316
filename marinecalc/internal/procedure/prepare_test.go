package procedure_test

import (
	"slices"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
)

// A boat of which little is known: what to measure stands in a few groups, each
// thing once, and none that a step reads itself or that only a step already
// ticked off needs.
func TestPrepareByWhatSettlesIt(t *testing.T) {
	o := marinecalc.Options{NoRanges: true}
	thin := testboat.Read(t, `{"name": "Thin"}`)
	p := made(t, thin, o, "replace-coupling")
	if n := len(p.Prepare); n < 3 || n > 6 {
		t.Errorf("%d groups: %+v", n, p.Prepare)
	}
	seen := map[string]int{}
	for _, g := range p.Prepare {
		for _, what := range g.What {
			seen[what]++
		}
		if !slices.IsSorted(g.Steps) || len(g.Steps) == 0 {
			t.Errorf("%s: steps %v", g.By, g.Steps)
		}
	}
	for what, n := range seen {
		if n > 1 {
			t.Errorf("%s stands in %d groups", what, n)
		}
	}
	if seen["Thread"] != 1 || seen["Room aft"] != 1 || seen["Gaps between the coupling faces"] != 0 { // step 9 reads the gaps
		t.Errorf("%v", seen)
	}
	var done []marinecalc.TickRequest
	for _, phase := range p.Phases {
		for _, s := range phase.Steps {
			if slices.ContainsFunc(s.Figures, func(f marinecalc.StepFigure) bool { return strings.HasPrefix(f.Of, "shaft-withdrawal/") }) {
				done = append(done, marinecalc.TickRequest{Remedies: []string{"replace-coupling"}, Step: s.ID, Done: &yes, Day: "2026-05-02"})
			}
		}
	}
	engine, err := marinecalc.New()
	if err != nil || len(done) == 0 {
		t.Fatalf("%v, %d steps", err, len(done))
	}
	for _, r := range done {
		if thin, err = engine.Tick(thin, r); err != nil {
			t.Fatal(err)
		}
	}
	for _, g := range made(t, thin, o, "replace-coupling").Prepare {
		if slices.Contains(g.What, "Room aft") {
			t.Error("the room aft is asked for behind the step that needs it")
		}
	}
}
