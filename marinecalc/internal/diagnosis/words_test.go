package diagnosis_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/diagnosis"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/rules"
)

func TestContradictoryAnswersAreShown(t *testing.T) {
	var all []string
	for _, e := range rules.Standard().Evidence().All() {
		if e.Kind == "symptom" {
			all = append(all, e.ID)
		}
	}
	out := found(t, marinecalc.Options{}, yes(all...)...)
	if !strings.Contains(out.Contradiction, "No listed causes together") || !strings.Contains(out.Contradiction, "The least likely") {
		t.Errorf("everything at once: %q, surprise %v", out.Contradiction, out.Surprise)
	}
	_, err := marinecalc.Run(diagnosis.FaultFinding, []byte(`{"answers": [{"evidence": "fluid-low", "answer": "yes"}, {"evidence": "fluid-low", "answer": "no"}]}`), marinecalc.Options{})
	if list := problem.Of(err); len(list) == 0 || list[0].Where != "/answers/1" || !strings.Contains(list[0].What, "both") {
		t.Errorf("yes and no to one question: %v", err)
	}
}

// Two causes with the same answers so far are said to be not parted, with the
// question that parts them; ashore another one may.
func TestWhatCannotBePartedIsSaid(t *testing.T) {
	out := found(t, marinecalc.Options{}, yes("after-touching", "came-suddenly", "shake-grows", "gone-in-neutral")...)
	if !strings.Contains(out.CannotPart, "cannot be told apart") || !strings.Contains(out.CannotPart, "part them best") {
		t.Errorf("%q", out.CannotPart)
	}
	// A yard's cause that shows like another in everything is never parted.
	twin := `{"causes": [{"id": "twin", "part": "damper plate", "title": "Twin of the damper", "text": "The same.", "prior": 5, "confirm": "damper-seen", "remedies": ["replace-damper-plate"], "source": {"document": "Yard"}, "basis": "common-practice"}], "signs": [`
	first := true
	for _, s := range rules.Standard().Signs().All() {
		if s.Cause != "damper-worn" {
			continue
		}
		if !first {
			twin += ","
		}
		first = false
		twin += fmt.Sprintf(`{"id": "twin/%s", "cause": "twin", "evidence": "%s", "weight": "%s", "source": {"document": "Yard"}, "basis": "common-practice"}`, s.Evidence, s.Evidence, s.Weight)
	}
	out = found(t, marinecalc.Options{Rules: testboat.Overlay(t, twin+`]}`)}, textbook(rules.Standard(), "damper-worn")...)
	if !strings.Contains(out.CannotPart, "No question left parts them") {
		t.Errorf("twins: %q", out.CannotPart)
	}
}

// Nothing but no points nowhere, and names no cause.
func TestOnlyNoPointsNowhere(t *testing.T) {
	var all []string
	for _, e := range rules.Standard().Evidence().All() {
		if e.Kind == "symptom" {
			all = append(all, e.ID)
		}
	}
	for _, answers := range [][]diagnosis.Symptom{no("rumble-aft", "shake-grows", "gland-drips-much", "gland-hot"), no(all...)} {
		out := found(t, marinecalc.Options{}, answers...)
		if out.Cause != "" || out.LeadingCause != diagnosis.NothingPoints || !math.IsNaN(float64(out.Probability)) || out.Remedies != "" || !strings.Contains(out.HowSure, "points anywhere") {
			t.Errorf("after %d times no: %q %v, %s", len(answers), out.LeadingCause, out.Probability, out.HowSure)
		}
	}
	if out := found(t, marinecalc.Options{}, append(no("rumble-aft", "shake-grows"), yes("gland-hot")...)...); out.Cause == "" {
		t.Error("with one yes no cause is named")
	}
}

func TestNothingAnsweredIsSaid(t *testing.T) {
	out := found(t, marinecalc.Options{})
	if !strings.Contains(out.HowSure, "Nothing is answered yet") || !math.IsNaN(out.Surprise) {
		t.Errorf("%q, %v", out.HowSure, out.Surprise)
	}
}

// Under even odds nothing is said to lead.
func TestUnderEvenOddsNothingLeads(t *testing.T) {
	for _, answers := range [][]diagnosis.Symptom{yes("knock-into-gear"), yes("gland-hot", "gland-no-drip", "gland-drawn-up"), yes("damper-seen")} {
		out := found(t, marinecalc.Options{}, answers...)
		even := out.Known == "found" || float64(out.Probability) >= 0.5
		if clear := !strings.HasPrefix(out.LeadingCause, "not clear yet"); clear != even || !strings.Contains(out.LeadingCause, out.Ranking[0].Name) {
			t.Errorf("%v: %q with %v", answers, out.LeadingCause, out.Probability)
		}
	}
}
