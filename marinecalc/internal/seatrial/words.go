package seatrial

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"example.org/driveline/marinecalc/internal/seatrial/proof"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/rules"
	"example.org/driveline/marinecalc/sheet"
)

// words says how the trial came out.
func (t *trial) words() {
	out := &t.out
	whole := t.count.Whole()
	still, found, since := t.waits()
	stands := whole == proof.Pass && still == "" && found == "" && since == "" && len(t.left) == 0
	if whole == proof.Pass && !stands {
		whole = proof.LookAgain
	}
	switch {
	case still != "":
		out.hazards = []string{rules.StopNow}
	case !stands:
		out.hazards = t.hazards(since != "" || found != "")
	}
	out.Outcome = string(whole)
	out.Fails = quantity.Ratio(math.NaN())
	open := fmt.Sprintf("%d of %d readings were not taken", t.count.NotRead, out.ReadingsWanted)
	switch {
	case out.ReadingsTaken == 0 && still != "":
		out.Says = "Not to be run now: the shaft stands. " + still + " This is the protocol for after the cure."
	case out.ReadingsTaken == 0 && found != "":
		out.Says = "Not run yet, and first comes the cure. Found: " + found + ". This is the protocol for after it."
	case out.ReadingsTaken == 0:
		out.Says = "Not run yet: this is the protocol to take along."
	case whole == proof.Fail:
		out.Fails = quantity.Ratio(t.count.Failed)
		out.Says = "Not in service. Failed: " + strings.Join(t.failed, "; ") + "."
	case whole == proof.LookAgain && len(t.again) == 0:
		out.Says = "Every reading was taken and met what it was held against, but it proves nothing as it stands."
	case whole == proof.LookAgain:
		out.Says = "Not passed yet. To look at again: " + strings.Join(t.again, "; ") + "."
	case whole == proof.NotRead:
		out.Says = "Nothing failed, but it is not passed either: " + open + "."
	default:
		out.Fails = 0
		out.Says = "Passed: every reading was taken and met what it was held against."
		if t.count.Noted > 0 {
			out.Says = fmt.Sprintf("Passed, with %d readings that nothing was there to hold against.", t.count.Noted)
		}
	}
	if whole == proof.Fail || whole == proof.LookAgain {
		if t.count.NotRead > 0 {
			out.Says += " " + problem.Capital(open) + "."
		}
	}
	if out.ReadingsTaken > 0 {
		switch {
		case still != "":
			out.Says += " Not to be run again now: the shaft stands. " + still
		case found != "":
			out.Says += " Found, and not cured as far as the boat file tells: " + found + "."
		}
		if since != "" {
			out.Says += " After it came " + since + ": run it again from its first stage."
		}
	}
	if len(t.left) > 0 {
		out.Says += " Left out of it: " + strings.Join(t.left, "; ") + "."
	}
	out.PitchSays = t.pitch()
	out.Signature = "Name ____________  Day ____________  Engine hours ________"
	if t.in.By != "" && t.in.Date != "" {
		out.Signature = t.in.By + ", " + t.in.Date
	}
}

// hazards are the cautions of the stages that are open: one with a reading that
// did not pass, or every one where the whole is run again.
func (t *trial) hazards(again bool) (ids []string) {
	for _, stage := range t.stages() {
		open := again && !slices.Contains(t.left, stage.Name)
		for i := range t.out.Checks {
			c := &t.out.Checks[i]
			open = open || c.Stage == stage.Name && c.Word != string(proof.Pass) && c.Word != string(proof.Noted)
		}
		for _, id := range stage.Hazards() {
			if open && !slices.Contains(ids, id) {
				ids = append(ids, id)
			}
		}
	}
	return ids
}

// pitch says what the speed at full throttle tells of the propeller: a code.
func (t *trial) pitch() string {
	run := t.runs[fullThrottle]
	if run == nil || math.IsNaN(float64(run.EngineSpeed)) {
		return "not-read"
	}
	r := run.reading("engineSpeed")
	share := proof.Reading{Value: r.Value / float64(t.in.EngineSpeed), Uncertainty: r.Uncertainty / float64(t.in.EngineSpeed)}
	for _, side := range []struct{ limit, code string }{{"trial-full-speed-low", "too-few"}, {"trial-full-speed-high", "too-many"}} {
		held, ok := t.session.LimitOf("sea-trial", side.limit)
		if !ok {
			continue
		}
		b := proof.Bound{Most: held.SI, Fewest: nanValue}
		if held.Side == sheet.AtLeast {
			b.Most, b.Fewest = nanValue, held.SI
		}
		switch word, doubt := b.Hold(share); {
		case doubt:
			return "not-sure"
		case word == proof.Fail:
			return side.code
		}
	}
	return "right"
}
