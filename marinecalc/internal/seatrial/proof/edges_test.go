package proof

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/stat/distuv"
)

// The last digit, on both sides of both bounds: a billionth of the figures is room
// for rounding, and no more.
func TestWhatIsMetToTheLastDigitIsMet(t *testing.T) {
	half := coverage * 0.5
	for _, c := range []struct {
		name  string
		b     Bound
		r     Reading
		want  Word
		doubt bool
	}{
		{"over by rounding", Bound{Most: 20, Fewest: none}, Reading{Value: 20 + 3e-8}, Pass, false},
		{"over by more", Bound{Most: 20, Fewest: none}, Reading{Value: 20 + 4.2e-8}, Fail, false},
		{"its interval begins just below", Bound{Most: 20, Fewest: none}, Reading{Value: 20 + half - 2e-8, Uncertainty: 0.5}, LookAgain, true},
		{"as few as there must be", Bound{Most: none, Fewest: 100}, Reading{Value: 100}, Pass, false},
		{"fewer by rounding", Bound{Most: none, Fewest: 100}, Reading{Value: 100 - 1.5e-7}, Pass, false},
		{"fewer by more", Bound{Most: none, Fewest: 100}, Reading{Value: 100 - 2.1e-7}, Fail, false},
		{"its interval ends just above", Bound{Most: none, Fewest: 100}, Reading{Value: 100 - half + 1e-7, Uncertainty: 0.5}, LookAgain, true},
		{"twice a guide", Bound{Most: 20, Fewest: none, Guide: true}, Reading{Value: 40}, LookAgain, false},
		{"surely more than twice a guide", Bound{Most: 20, Fewest: none, Guide: true}, Reading{Value: 40 + half + 1e-6, Uncertainty: 0.5}, Fail, false},
		{"two and a half times a guide of a half", Bound{Most: 0.5, Fewest: none, Guide: true}, Reading{Value: 1.25}, Fail, false},
		{"more than none, by a guide", Bound{Most: 0, Fewest: none, Guide: true}, Reading{Value: 1}, LookAgain, false},
		{"thrice the boat's own", Bound{Most: 20, Fewest: none, Guide: true, Own: true}, Reading{Value: 60}, LookAgain, false},
	} {
		if word, doubt := c.b.Hold(c.r); word != c.want || doubt != c.doubt {
			t.Errorf("%s: %s, doubt %v", c.name, word, doubt)
		}
	}
}

func TestBrokenOnEitherSide(t *testing.T) {
	for _, c := range []struct {
		b     Bound
		value float64
		want  bool
	}{
		{Bound{Most: 20, Fewest: none}, 20, false}, {Bound{Most: 20, Fewest: none}, 20.1, true},
		{Bound{Most: none, Fewest: 1}, 1, false}, {Bound{Most: none, Fewest: 1}, 0.9, true},
		{Bound{Most: 20, Fewest: 1}, 10, false}, {Bound{Most: 20, Fewest: 1}, 21, true}, {Bound{Most: 20, Fewest: 1}, 0.5, true},
	} {
		if got := c.b.Broken(c.value); got != c.want {
			t.Errorf("%g of %+v: %v", c.value, c.b, got)
		}
	}
}

// Of many events the interval is that of gonum's gamma distribution to a part in
// ten thousand, where the cube root is good to less than that.
func TestManyEventsHaveTheQuantilesOfAGamma(t *testing.T) {
	for _, n := range []float64{150, 400} {
		low, high := Reading{Value: n, Uncertainty: math.Sqrt(n + 0.5), Counted: true}.Interval()
		d := distuv.Gamma{Alpha: n + 0.5, Beta: 1}
		if wantLow, wantHigh := d.Quantile(0.025), d.Quantile(0.975); math.Abs(low/wantLow-1) > 1e-4 || math.Abs(high/wantHigh-1) > 1e-4 {
			t.Errorf("%g events: %g to %g, want %g to %g", n, low, high, wantLow, wantHigh)
		}
	}
	if low, high := (Reading{Value: 5, Counted: true}).Interval(); low != 5 || high != 5 {
		t.Errorf("a count without any uncertainty: %g to %g", low, high)
	}
}

func TestCountsAndSteadiness(t *testing.T) {
	var n Count
	for _, w := range []Word{Pass, Pass, Fail, LookAgain, NotRead, NotRead, NotRead, Noted} {
		n.Add(w)
	}
	if want := (Count{Passed: 2, Failed: 1, Again: 1, NotRead: 3, Noted: 1}); n != want {
		t.Errorf("%+v", n)
	}
	if !Steady(5, 5, 0) || Steady(1+1.05e-9, 0, 1) {
		t.Error("steady to the last digit")
	}
}
