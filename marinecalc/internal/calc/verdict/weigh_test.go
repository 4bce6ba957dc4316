package verdict

import (
	"math"
	"testing"

	"example.org/driveline/marinecalc/internal/calc/conflict"
	"example.org/driveline/marinecalc/internal/calc/inputs"
	"example.org/driveline/marinecalc/internal/calc/results"
	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/internal/spread"
	"example.org/driveline/marinecalc/quantity"
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
		left := spread.Range{Usable: c.usable, Mean: c.mean, StdDev: 1}
		if got := sureSide(c.mean, clearTrials, c.failed, &left); got != c.sure {
			t.Errorf("%+v: %v", c, got)
		}
	}
}

// A range keeps a limit where it lies wholly on its side, ends that stand on the limit
// among it, and is past it where it lies wholly on the other.
func TestARangeAgainstItsLimit(t *testing.T) {
	none := math.NaN()
	for _, c := range []struct {
		low, high, least, most float64
		short, past            bool
	}{
		{1, 2, none, 3, true, false}, {1, 3, none, 3, true, false}, {1, 3.1, none, 3, false, false}, {3.1, 4, none, 3, false, true},
		{2, 3, 2, none, true, false}, {1.9, 3, 2, none, false, false}, {1, 1.9, 2, none, false, true}, {2, 2, none, 3, false, false},
	} {
		j, limit := judged{low: c.low, high: c.high}, spread.Limit{Min: c.least, Max: c.most}
		if got := [2]bool{j.short(limit), j.past(limit)}; got != [2]bool{c.short, c.past} {
			t.Errorf("%+v: keeps it %v, past it %v", c, got[0], got[1])
		}
	}
	for _, c := range []struct{ si, least, most, want float64 }{{1, 0, none, 1}, {1, none, 3.5, 2.5}, {1, 0.5, 3, 0.5}, {2, none, 2, none}, {2, none, none, none}} {
		if got := narrower(c.si, spread.Limit{Min: c.least, Max: c.most}); got != c.want && !(math.IsNaN(got) && math.IsNaN(c.want)) {
			t.Errorf("%+v: %g", c, got)
		}
	}
}

// A bound that was converted has three figures at the most, and one that was written
// with more keeps them.
func TestFiguresOfABound(t *testing.T) {
	for text, want := range map[string]int{"0.0508 mm": 3, "-12.5 °C": 3, "20 K": 2, "1.2345 in (31.36 mm)": 5} {
		if got := figuresIn(text); got != want {
			t.Errorf("%s: %d figures", text, got)
		}
	}
	for text, want := range map[string]bool{"0.0508 mm": false, "0.05083 mm": true, "2 in (50.8 mm)": false, "2 in (50.83 mm)": true, "2.345 in (59.6 mm)": true} {
		if tooFine(text) != want {
			t.Errorf("%s: too fine %v", text, !want)
		}
	}
	length := &contract.Property{Kind: &quantity.Kind{}}
	for _, c := range []struct {
		text, written string
		p             *contract.Property
		want          bool
	}{
		{"1.2345 in", "1.2345 in", length, true}, {"31.356 mm", "1.2345 in", length, false}, {"31.356 mm", "", length, true}, {"31.356", "1.2", length, true},
		{"1.2345 in (31.36 mm)", "1.2345 in", length, false}, {"1.2345 in (31.4 mm)", "1.2345 in", length, true}, {"31.356 mm", "1.2345 in", &contract.Property{}, true},
	} {
		if got := asWritten(c.p, c.text, c.written); got != c.want {
			t.Errorf("%s, written %q: %v", c.text, c.written, got)
		}
	}
}
