package verdict

import (
	"testing"

	"example.org/driveline/marinecalc/internal/calc/conflict"
	"example.org/driveline/marinecalc/internal/calc/inputs"
	"example.org/driveline/marinecalc/internal/calc/results"
	"example.org/driveline/marinecalc/internal/spread"
	"example.org/driveline/marinecalc/sheet"
)

// Trials that draw from those of an earlier sheet are asked to be twice as sure: half
// of the 2.5 % that a word may be wrong by on either side.
func TestTrialsOfTrialsAreAskedToBeTwiceAsSure(t *testing.T) {
	for _, c := range []struct {
		shape spread.Shape
		doubt float64
		told  bool
	}{{spread.Normal, 0.02, true}, {spread.Listed, 0.02, false}, {spread.Listed, 0.013, false}, {spread.Listed, 0.012, true}} {
		r := Judgement{Finder: conflict.Finder{Run: &results.Run{In: &inputs.Inputs{}}}}
		r.In.Variates = []inputs.Variate{{Factor: spread.Factor{Shape: spread.Normal}}, {Factor: spread.Factor{Shape: c.shape}}}
		for word, probability := range map[sheet.Word]float64{sheet.Within: 1 - c.doubt, sheet.Beyond: c.doubt} {
			got := r.noSurer(spread.Judgement{Word: word, Probability: probability}).Word
			if told := got == word; told != c.told || !told && got != sheet.CannotTell {
				t.Errorf("%s, doubt %g: %s of %s", c.shape, c.doubt, got, word)
			}
		}
	}
}

// Few trials leave no doubt only where the mean of what is spare lies seven deviations
// off nothing, and none where one failed.
func TestFewTrialsLeaveNoDoubtFarOff(t *testing.T) {
	for _, c := range []struct {
		mean   float64
		failed int
		usable bool
		sure   bool
	}{{7.1, 0, true, true}, {-7.1, 0, true, true}, {6.9, 0, true, false}, {9, 1, true, false}, {9, 0, false, false}} {
		out := spread.Outcome{Failed: c.failed, Results: []spread.Range{{Usable: c.usable, Mean: c.mean, StdDev: 1}}}
		if got := sureSide(c.mean, clearTrials, &out); got != c.sure {
			t.Errorf("%+v: %v", c, got)
		}
	}
}
