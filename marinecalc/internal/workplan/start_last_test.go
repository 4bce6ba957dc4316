package workplan_test

import (
	"fmt"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/rules"
)

// The engine is started once hands are off: after whatever is looked at, opened,
// mended or closed in the plan, of its own work and of other work beside it.
func TestTheEngineStartsAfterAllWork(t *testing.T) {
	title := map[string]rules.Step{}
	for _, s := range rules.Standard().Steps().All() {
		title[s.Title] = s
	}
	for _, r := range rules.Standard().Remedies().All() {
		for _, beside := range []string{"", `,{"remedy":"clear-propeller"}`, `,{"remedy":"clean-propeller"}`, `,{"remedy":"set-fluid-level"}`} {
			s := testboat.Run(t, "work-plan", fmt.Sprintf(`{"today":"2026-03-02","lies":"afloat","remedies":[{"remedy":%q}%s]}`, r.ID, beside), marinecalc.Options{NoRanges: true})
			if now := s.Result("now"); now != nil && strings.Contains(now.Text, "First start; ") {
				if _, later, _ := strings.Cut(now.Text, "First start; "); strings.Contains(later, "Clear rope") || strings.Contains(later, "Set the fluid level") {
					t.Errorf("%s%s: what can be done now: %s", r.ID, beside, now.Text)
				}
			}
			started := ""
			for n := 0; s.Cell("schedule", n, "step") != nil; n++ {
				switch step := title[s.Cell("schedule", n, "step").Text]; {
				case step.ID == "first-start" || step.ID == "trial-run":
					started = step.ID
				case started != "" && (step.Phase == "work" || step.Phase == "open" || step.Phase == "close") && s.Cell("schedule", n, "start").Text != "":
					t.Errorf("%s%s: %q after the %s", r.ID, beside, step.Title, started)
				}
			}
		}
	}
}

// The gearbox is filled once every way into it is shut: no work on it comes after, but
// what needs the fluid in it.
func TestTheGearboxIsFilledAfterTheWorkOnIt(t *testing.T) {
	title, work := map[string]rules.Step{}, map[string]bool{"find-way-of-water": true, "shut-the-way-in": true, "flush-cooler": true, "swap-gearbox-cooler": true, "open-strainer": true}
	for _, s := range rules.Standard().Steps().All() {
		title[s.Title] = s
	}
	met := 0
	for _, r := range rules.Standard().Remedies().All() {
		for _, beside := range []string{"", `,{"remedy":"set-fluid-level"}`} {
			s := testboat.Run(t, "work-plan", fmt.Sprintf(`{"today":"2026-03-02","lies":"afloat","remedies":[{"remedy":%q}%s]}`, r.ID, beside), marinecalc.Options{NoRanges: true})
			filled := false
			for n := 0; s.Cell("schedule", n, "step") != nil; n++ {
				step := title[s.Cell("schedule", n, "step").Text]
				if filled && work[step.ID] {
					t.Errorf("%s%s: %q after the gearbox was filled", r.ID, beside, step.Title)
				}
				if step.ID == "refill-gearbox" {
					filled = true
					met++
				}
			}
		}
	}
	if met < 4 {
		t.Errorf("%d plans fill the gearbox", met)
	}
}
