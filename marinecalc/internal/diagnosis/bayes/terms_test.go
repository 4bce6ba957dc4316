package bayes

import (
	"math"
	"testing"
)

// The answers least expected are those that the likeliest set makes least
// probable, whichever way they were given: a no to what nearly always shows
// before a yes to what seldom does.
func TestLeastExpectedAnswers(t *testing.T) {
	m := sharp([]float64{0.5, 0.001}, [][]float64{{0.95, 0.2, 0.6}, {0.5, 0.5, 0.5}}, []float64{0.01, 0.01, 0.01})
	b := m.Believe([]Answer{No, Yes, Yes})
	if len(b.Sets) == 0 || len(b.Sets[0].Causes) != 1 || b.Sets[0].Causes[0] != 0 {
		t.Fatalf("the likeliest set is %+v", b.Sets)
	}
	if _, first, second := b.Surprise(); first != 0 || second != 1 {
		t.Errorf("least expected are %d and %d", first, second)
	}
	b = m.Believe([]Answer{Yes, Yes, No})
	if _, first, second := b.Surprise(); first != 1 || second != 2 {
		t.Errorf("least expected are %d and %d", first, second)
	}
	if k, first, second := m.Believe([]Answer{Unknown, Unknown, Unknown}).Surprise(); first != -1 || second != -1 || k != 0 {
		t.Errorf("without answers %d and %d surprise by %g", first, second, k)
	}
}

// Seven causes are taken apart: each arose or was brought on by one of the others,
// worked out for every way in which the seven come about one by one.
func TestManyCausesApart(t *testing.T) {
	var arises []float64
	var yes [][]float64
	for i := range 7 {
		arises, yes = append(arises, 0.05+0.1*float64(i)), append(yes, []float64{0.5})
	}
	m := sharp(arises, yes, []float64{0.1})
	for c := range 7 {
		for d := range 7 {
			if c != d {
				m.Brings[c][d] = 0.02 * float64(1+(c+2*d)%5)
			}
		}
	}
	p := newPriors(m)
	want := 1.0
	for c := range 7 {
		none := 1 - arises[c]
		for d := range 7 {
			none *= 1 - m.Brings[d][c]
		}
		want *= 1 - none
	}
	if got := p.apart([]int{0, 1, 2, 3, 4, 5, 6}); math.Abs(got-want) > 1e-12 {
		t.Errorf("%g, want %g", got, want)
	}
}

// A yes and a no share out what was believed before: their chances add up to
// one, and each cause is the mean of both, but for the sets that are too
// improbable to be gone through.
func TestYesAndNoShareOutTheBelief(t *testing.T) {
	m := sharp([]float64{0.2, 0.1, 0.05}, [][]float64{{0.9, 0.3}, {0.2, 0.6}, {0.4, 0.1}}, []float64{0.05, 0.02})
	b := m.Believe([]Answer{Yes, Unknown})
	yes, p := b.After(1, Yes)
	no, q := b.After(1, No)
	near(t, "yes or no", p+q, 1)
	for c := range yes {
		if got := p*yes[c] + q*no[c]; math.Abs(got-b.Cause[c]) > 0.01 {
			t.Errorf("cause %d: %g of both, %g before", c, got, b.Cause[c])
		}
	}
	if !(yes[1] > no[1]) {
		t.Errorf("a sign of the second cause makes it %g, its want %g", yes[1], no[1])
	}
}
