package proof

import (
	"math"
	"math/rand/v2"
	"testing"
)

var none = math.NaN()

// Both sides of every word: the interval just in, across and just out.
func TestAReadingIsHeldByItsWholeInterval(t *testing.T) {
	half := coverage * 0.5
	for _, c := range []struct {
		name  string
		b     Bound
		v     float64
		want  Word
		doubt bool
	}{
		{"in", Bound{Most: 20, Fewest: none}, 20 - half - 1e-6, Pass, false},
		{"just across from inside", Bound{Most: 20, Fewest: none}, 20 - half + 1e-6, LookAgain, true},
		{"at it", Bound{Most: 20, Fewest: none}, 20, LookAgain, true},
		{"just across from outside", Bound{Most: 20, Fewest: none}, 20 + half - 1e-6, LookAgain, true},
		{"out", Bound{Most: 20, Fewest: none}, 20 + half + 1e-6, Fail, false},
		{"out of a guide", Bound{Most: 20, Fewest: none, Guide: true}, 20 + half + 1e-6, LookAgain, false},
		{"enough", Bound{Most: none, Fewest: 1}, 1 + half + 1e-6, Pass, false},
		{"not surely enough", Bound{Most: none, Fewest: 1}, 1 + half - 1e-6, LookAgain, true},
		{"too few", Bound{Most: none, Fewest: 1}, 1 - half - 1e-6, Fail, false},
		{"too few for a guide", Bound{Most: none, Fewest: 1, Guide: true}, 1 - half - 1e-6, LookAgain, false},
		{"not read", Bound{Most: 20, Fewest: none}, none, NotRead, false},
	} {
		if word, doubt := c.b.Hold(Reading{Value: c.v, Uncertainty: 0.5}); word != c.want || doubt != c.doubt {
			t.Errorf("%s: %s, doubt %v", c.name, word, doubt)
		}
	}
	if word, _ := (Bound{Most: 20, Fewest: none}).Hold(Reading{Value: 20}); word != Pass {
		t.Error("what is met exactly is met")
	}
	if word, _ := (Bound{Most: 20, Fewest: none}).Hold(Reading{Value: 19, Uncertainty: math.Inf(1)}); word != LookAgain {
		t.Error("a reading without any accuracy passes")
	}
}

// A trial simulated here: a true rise, read by two thermometers. Where it says
// pass, the truth is over the limit in no more than 2.5 of 100; likewise where
// it says fail (independent of the code: plain draws of normal errors).
func TestWordsAreAsSureAsTheySay(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 5))
	const limit, u = 20.0, 0.7
	for _, far := range []float64{-2.5, -1, 0, 1, 2.5} {
		truth, wrong := limit+far*u*math.Sqrt2, 0
		const n = 20000
		for range n {
			gland := Reading{Value: truth + 10 + u*r.NormFloat64(), Uncertainty: u}
			sea := Reading{Value: 10 + u*r.NormFloat64(), Uncertainty: u}
			word, _ := (Bound{Most: limit, Fewest: none}).Hold(gland.Above(sea))
			if word == Pass && truth > limit || word == Fail && truth < limit {
				wrong++
			}
		}
		if share := float64(wrong) / n; share > 0.028 {
			t.Errorf("truth %g standard uncertainties off: wrong in %.2f %%", far, 100*share)
		}
	}
}

func TestSilenceDoesNotPass(t *testing.T) {
	for _, c := range []struct {
		words []Word
		want  Word
	}{
		{nil, NotRead},
		{[]Word{Noted}, NotRead},
		{[]Word{Pass, NotRead}, NotRead},
		{[]Word{Pass, Noted}, Pass},
		{[]Word{Pass, LookAgain, NotRead}, LookAgain},
		{[]Word{Pass, LookAgain, NotRead, Fail}, Fail},
	} {
		var n Count
		for _, w := range c.words {
			n.Add(w)
		}
		if got := n.Whole(); got != c.want {
			t.Errorf("%v: %s, want %s", c.words, got, c.want)
		}
	}
}

func TestWorseAndSteady(t *testing.T) {
	order := []Word{Noted, Pass, NotRead, LookAgain, Fail}
	for i, a := range order {
		for j, b := range order {
			if got := Worse(a, b); got != order[max(i, j)] {
				t.Errorf("%s and %s: %s", a, b, got)
			}
		}
	}
	if !Steady(301, 300, 1) || Steady(301.001, 300, 1) || Steady(299, 300, 0.9) || Steady(300, none, 1) {
		t.Error("steady")
	}
	if Speed(850, 2800, 0.7) != 850+0.7*1950 || Speed(850, 2800, 1) != 2800 {
		t.Error("speed")
	}
}

// Quantiles of chi-squared with 2n+1 degrees of freedom, halved: Abramowitz and
// Stegun, table 26.8, at 0.975 and 0.025 (9 degrees 2.70039 and 19.0228, 21
// degrees 10.2829 and 35.4789, 41 degrees 25.2145 and 60.5606; from memory).
func TestACountHasTheIntervalOfItsEvents(t *testing.T) {
	for _, c := range []struct{ n, low, high float64 }{{4, 2.70039 / 2, 19.0228 / 2}, {10, 10.2829 / 2, 35.4789 / 2}, {20, 25.2145 / 2, 60.5606 / 2}} {
		const one = 0.25
		low, high := Reading{Value: c.n * one, Uncertainty: one * math.Sqrt(c.n+0.5), Counted: true}.Interval()
		if math.Abs(low/(c.low*one)-1) > 0.03 || math.Abs(high/(c.high*one)-1) > 0.01 {
			t.Errorf("%g events: %g to %g, want %g to %g", c.n, low/one, high/one, c.low, c.high)
		}
	}
	if low, high := (Reading{Value: 0, Uncertainty: math.Sqrt(0.5), Counted: true}).Interval(); low != 0 || high < 2 || high > 3.7 { // exact: 2.51
		t.Errorf("none counted: %g to %g", low, high)
	}
}
