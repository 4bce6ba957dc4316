package rules

import (
	"regexp"
	"testing"

	"example.org/driveline/marinecalc/sheet"
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

// Advice that forbids power keeps the shaft still, by its limit or by itself: else
// another sheet of the boat, its procedures and its plan would run her.
func TestAdviceThatForbidsPowerStopsTheShaft(t *testing.T) {
	forbids := regexp.MustCompile(`(?i)^(do not run under power)|\bno power\b|do not run under power before|(stay|stays|leave the lever) in neutral|stop the shaft|leave the berth, (until|before)|before she runs`)
	limits, met := map[string]Limit{}, 0
	for _, l := range Standard().AllLimits().All() {
		limits[l.Calculation+"/"+l.ID] = l
	}
	for _, a := range Standard().AllAdvice().All() {
		if !forbids.MatchString(a.Text) || a.Calculation == "line-joints" { // which gathers what the joints' own sheets forbid
			continue
		}
		met++
		of := a.Limit
		if !regexp.MustCompile("/").MatchString(of) {
			of = a.Calculation + "/" + of
		}
		sure := a.Words.Len() == 1 && a.Words.At(0) == sheet.Beyond
		if l, is := limits[of]; a.Stops.Len() == 0 && (!is || !sure || l.Stops.Len() == 0 || l.Basis.Guides()) {
			t.Errorf("%s forbids power, and neither it nor its limit %s past keeps the shaft still", a.ID, of)
		}
	}
	if met < 25 {
		t.Errorf("%d pieces of advice forbid power", met)
	}
}
