package marinecalc_test

import (
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/binding"
	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/sheet"
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
