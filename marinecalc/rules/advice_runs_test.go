package rules

import (
	"regexp"
	"testing"
)

// Advice that lets her run, if only gently, or asks for a reading under way, is
// marked so: where something keeps the shaft still, that stands before it. “Idle
// before each shift” beside another sheet's “do not run under power” is an
// instruction to run.
func TestAdviceToRunGentlyIsMarked(t *testing.T) {
	gently := regexp.MustCompile(`(?i)idle before each|at idle only|no more than idle|astern gently|fewer revolutions|take off (power|speed)|keep the shaft below|stay clearly under|raise the idle|read again now|count again after|take it along|on the next run|before she goes far|next long run|do not cruise`)
	met := 0
	for _, a := range Standard().AllAdvice().All() {
		if !gently.MatchString(a.Text) {
			continue
		}
		met++
		if !a.Runs {
			t.Errorf("%s: %q, and it is not marked as something for which the shaft turns", a.ID, a.Text)
		}
	}
	if met < 30 {
		t.Errorf("%d pieces of advice let her run gently", met)
	}
}

// Advice that forbids power hangs on a limit that keeps the shaft still: else another
// sheet of the boat, its procedures and its plan would run her.
func TestAdviceThatForbidsPowerStopsTheShaft(t *testing.T) {
	forbids := regexp.MustCompile(`(?i)^(do not run under power|no power|leave the lever in neutral)|\bno power\b|do not run under power before`)
	limits, met := map[string]Limit{}, 0
	for _, l := range Standard().AllLimits().All() {
		limits[l.Calculation+"/"+l.ID] = l
	}
	for _, a := range Standard().AllAdvice().All() {
		if a.Limit == "" || !forbids.MatchString(a.Text) {
			continue
		}
		met++
		of := a.Limit
		if !regexp.MustCompile("/").MatchString(of) {
			of = a.Calculation + "/" + of
		}
		if l, is := limits[of]; !is || l.Stops.Len() == 0 {
			t.Errorf("%s forbids power, and its limit %s does not keep the shaft still", a.ID, of)
		}
	}
	if met < 10 {
		t.Errorf("%d pieces of advice forbid power", met)
	}
}
