package marinecalc_test

import (
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/binding"
	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/sheet"
)

// leavesUntold are the inputs of which another value is one more thing not read.
var leavesUntold = map[string]string{
	"line-joints/hubFriction":             "friction that holds by itself asks nothing of spline or key; less of it does",
	"line-joints/shaftTorque":             otherJoints,
	"line-joints/asternTorque":            otherJoints,
	"line-joints/peakTorque":              otherJoints,
	"line-joints/facesAhead":              otherJoints,
	"line-joints/boreAhead":               otherJoints,
	"line-joints/hubFlanks":               otherJoints,
	"line-joints/taperAhead":              otherJoints,
	"line-joints/taperAstern":             otherJoints,
	"bolt-preload/nominalDiameter":        "a size that the grade does not come in leaves what breaks it unknown",
	"sea-trial/engineSpeed":               otherRuns,
	"sea-trial/runs/engineSpeed":          otherRuns,
	"sea-trial/runs/dripRate":             otherRuns,
	"sea-trial/runs/vibrationVelocity":    otherRuns,
	"coupling-alignment/readings/turn":    hardlyTurned,
	"coupling-alignment/rimReadings/turn": hardlyTurned,
	"alignment-change/gapsBefore/turn":    hardlyTurned,
	"alignment-change/gapsNow/turn":       hardlyTurned,
}

const (
	otherJoints  = "a joint that is weaker, or no longer the weakest, leaves the margin to one of which something is not known"
	otherRuns    = "one reading over its limit fails the trial by itself; that none does is told only when all are taken"
	hardlyTurned = "a shaft turned by a degree is as good as not turned, and one turned otherwise was not read alike"
)

// doubted tells whether a verdict may be "not measured" of a milder reading: that
// something falls short is told without what would only make it worse, that it
// holds is not.
func doubted(v *sheet.Verdict) bool { return severity(v.Word) <= severity(sheet.CannotTell) }

// A reading that is another, and not left out, never makes a verdict "not
// measured": where the state of things leaves nothing to judge, as of a bolt
// that is broken, the verdict says that state and asks for no reading.
func TestAnotherReadingNeverMakesAVerdictNotMeasured(t *testing.T) {
	alone(t)
	runs, states := 0, 0
	eachInput(t, func(f *binding.Form, input map[string]any) {
		o := marinecalc.Options{NoRanges: true}
		whole := worked(f, input, o)
		eachNumber(f, func(name string, p, part *contract.Property) {
			if leavesUntold[name] != "" {
				return
			}
			for _, by := range []float64{0.01, 0.1, 0.4, 2.5, 10, 100} {
				other := put(input, p, part, func(_ *contract.Property, si float64) any { return si * by })
				if other == nil {
					return
				}
				s := worked(f, other, o)
				if s == nil {
					continue
				}
				runs++
				for _, v := range s.Verdicts {
					was := whole.Verdict(v.Limit)
					if was == nil || was.Word == sheet.NotMeasured || v.Word != sheet.NotMeasured {
						continue
					}
					if states++; v.Reads == "not measured" && !doubted(was) {
						t.Errorf("%s by %g: %s; before: %s", name, by, v.Sentence, was.Sentence)
					}
				}
			}
		})
	})
	t.Logf("%d runs, %d states", runs, states)
}
