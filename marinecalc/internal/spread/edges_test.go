package spread

import (
	"math"
	"testing"

	"example.org/driveline/marinecalc/sheet"
)

func TestShareOfTrialsWithoutAValue(t *testing.T) {
	if (*Range)(nil).Lost() != 0 || (&Range{trials: []float64{1, 2}}).Lost() != 0 {
		t.Error("none is lost")
	}
	agree(t, "one of five", (&Range{trials: []float64{1, 2, 3}, edge: []float64{4}, lost: 1}).Lost(), 0.2, 1e-15)
}

func TestAtALimit(t *testing.T) {
	both := Limit{Min: 5, Max: 20}
	for v, want := range map[float64]bool{20: true, 5: true, 12: false, 20 + 1e-9: true, 5 - 1e-9: true, 20.001: false, 4.999: false} {
		if both.At(v) != want {
			t.Errorf("%g: %v", v, !want)
		}
	}
	if !AtMost(20).At(20) || AtMost(20).At(0) || !AtLeast(5).At(5) || AtLeast(5).At(0) {
		t.Error("a limit of one side")
	}
}

// Half as far out again as the farthest trial, and moved as far as the estimate lies
// off the mean: on both sides of it.
func TestAmplyMetOnBothSides(t *testing.T) {
	trials := func() *Range { return &Range{Usable: true, Mean: 10, StdDev: 1, trials: []float64{9, 10, 11}} }
	for _, c := range []struct {
		estimate float64
		limit    Limit
		want     bool
	}{
		{10, AtMost(11.5), true}, {10, AtMost(11.49), false}, {10, AtLeast(8.5), true}, {10, AtLeast(8.51), false},
		{8, AtLeast(6.5), true}, {8, AtLeast(6.51), false}, {12, AtMost(13.5), true}, {12, AtMost(13.49), false},
		{8, AtMost(11.5), true}, {12, AtLeast(8.5), true}, // to the other side it does not move them
	} {
		if got := AmplyMet(c.estimate, trials(), c.limit); got != c.want {
			t.Errorf("%g, %+v: %v", c.estimate, c.limit, got)
		}
	}
	for what, spoil := range map[string]func(*Range){
		"not usable": func(r *Range) { r.Usable = false }, "one at the edge": func(r *Range) { r.edge = []float64{10} }, "one lost": func(r *Range) { r.lost = 1 },
	} {
		r := trials()
		if spoil(r); AmplyMet(10, r, AtMost(100)) {
			t.Errorf("%s: amply met", what)
		}
	}
	if !AmplyMet(10, nil, AtMost(10)) || AmplyMet(10.001, nil, AtMost(10)) {
		t.Error("without trials by the estimate")
	}
}

func TestWordsOfAChance(t *testing.T) {
	for p, want := range map[float64]sheet.Word{0.975: sheet.Within, 0.974: sheet.CannotTell, 0.026: sheet.CannotTell, MostLost(0.975): sheet.Beyond, 0: sheet.Beyond, 1: sheet.Within} {
		if got := JudgeChance(p, 0.975); got.Word != want || got.Probability != p {
			t.Errorf("%g: %+v", p, got)
		}
	}
	if got := JudgeChance(math.NaN(), 0.975).Word; got != sheet.CannotTell {
		t.Errorf("no chance: %s", got)
	}
}

// A list that rises evenly is a rectangle: its quantile is in proportion, and its
// standard deviation the width over √12 (JCGM 101:2008, 6.4.2).
func TestEvenList(t *testing.T) {
	var l List
	for i := range l {
		l[i] = float64(i)
	}
	for _, u := range []float64{0, 0.1037, 0.5, 0.9, 0.99999, 1} {
		agree(t, "quantile", l.at(u), u*cells, 1e-9)
	}
	agree(t, "standard deviation", l.stdDev(), cells/math.Sqrt(12), 1e-9)
}

// A value that does not spread is settled off its bounds and open on one of them.
func TestSettledWithoutASpread(t *testing.T) {
	for mean, want := range map[float64]bool{-1: true, 0: false, 3: true, 5: false, 6: true} {
		if got := settled(mean, 0, 0, 5); got != want {
			t.Errorf("%g between 0 and 5: %v", mean, got)
		}
	}
}
