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
	"line-joints/shaftTorque":             otherJoints,
	"line-joints/asternTorque":            otherJoints,
	"line-joints/peakTorque":              otherJoints,
	"line-joints/facesAhead":              otherJoints,
	"line-joints/boreAhead":               otherJoints,
	"line-joints/hubFlanks":               otherJoints,
	"line-joints/taperAhead":              otherJoints,
	"coupling-key/shaftDiameter":          yieldsByItself,
	"coupling-key/shaftTorque":            yieldsByItself,
	"coupling-key/keyYieldStrength":       yieldsByItself,
	"coupling-key/keyWidth":               yieldsByItself,
	"coupling-key/keyHeight":              yieldsByItself,
	"coupling-key/keySeat":                yieldsByItself,
	"coupling-key/keyLength":              yieldsByItself,
	"key-strength/shaftDiameter":          yieldsByItself,
	"key-strength/shaftTorque":            yieldsByItself,
	"key-strength/keyYieldStrength":       yieldsByItself,
	"key-strength/keyWidth":               yieldsByItself,
	"key-strength/keyHeight":              yieldsByItself,
	"key-strength/keySeat":                yieldsByItself,
	"key-strength/keyLength":              yieldsByItself,
	"coupling-bore/asternTorque":          shortByItself,
	"coupling-bore/peakTorque":            shortByItself,
	"coupling-grip/peakTorque":            shortByItself,
	"coupling-grip/preload":               shortByItself,
	"coupling-grip/strippingLoad":         shortByItself,
	"mount-load/engineMass":               shortByItself,
	"mount-load/mounts/ratedLoad":         shortByItself,
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
	otherJoints    = "one joint that is over is told by itself; that the weakest of all is not, only where all are known"
	shortByItself  = "that it falls short is told without the pull astern or the thrust, which only make it worse; that it holds is told only with them"
	yieldsByItself = "that a key yields at the steady torque is told without a peak torque, which only makes it worse; that it holds is told only with one"
	otherRuns      = "one reading over its limit fails the trial by itself; that none does is told only when all are taken"
	hardlyTurned   = "a shaft turned by a degree is as good as not turned, and one turned otherwise was not read alike"
)

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
					if states++; v.Reads == "not measured" {
						t.Errorf("%s by %g: %s", name, by, v.Sentence)
					}
				}
			}
		})
	})
	t.Logf("%d runs, %d states", runs, states)
}
