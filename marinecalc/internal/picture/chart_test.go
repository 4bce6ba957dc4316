package picture_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"example.org/driveline/marinecalc/internal/picture"
	"example.org/driveline/marinecalc/internal/testboat"
)

// The marks of an axis are round, inside it, and four to nine of them.
func TestStepsAreRound(t *testing.T) {
	for _, c := range []struct {
		low, high float64
		want      []float64
	}{
		{0, 8, []float64{0, 1, 2, 3, 4, 5, 6, 7, 8}},
		{0, 100, []float64{0, 20, 40, 60, 80, 100}},
		{-0.3, 0.3, []float64{-0.3, -0.2, -0.1, 0, 0.1, 0.2, 0.3}},
		{1, 1, nil}, {2, 1, nil}, {math.NaN(), 1, nil},
	} {
		if got := picture.Steps(c.low, c.high); !slices.Equal(got, c.want) {
			t.Errorf("%v to %v: %v", c.low, c.high, got)
		}
	}
	for high := 0.0011; high < 1e6; high *= 1.37 {
		got := picture.Steps(0, high)
		if len(got) < 4 || len(got) > 9 || got[0] != 0 || got[len(got)-1] > high*(1+1e-9) {
			t.Errorf("0 to %v: %v", high, got)
		}
		for _, v := range got {
			if v == 0 && math.Signbit(v) {
				t.Errorf("0 to %v: minus zero", high)
			}
		}
	}
}

// The ends of the axes lie at the ends of the plotting area, up is up, and a
// height beyond the chart is held at its edge.
func TestChartPlacesValues(t *testing.T) {
	p := picture.Begin(400, 300, "chart", "")
	c := &picture.Chart{Picture: p, Left: 50, Top: 20, Width: 300, Height: 200, X0: 10, X1: 20, Y0: -1, Y1: 1}
	for _, got := range [][2]float64{{c.AtX(10), 50}, {c.AtX(20), 350}, {c.AtX(15), 200}, {c.AtY(-1), 220}, {c.AtY(1), 20}, {c.AtY(0), 120}, {c.ClampY(5), 20}, {c.ClampY(-5), 220}, {c.ClampY(0), 120}} {
		if math.Abs(got[0]-got[1]) > 1e-9 {
			t.Errorf("%v, want %v", got[0], got[1])
		}
	}
	c.Axes("time <h>", "gap & step", 1, 0.5)
	svg := p.End()
	if fault := testboat.WellFormed(svg); fault != "" || !strings.Contains(svg, ">-2<") || !strings.Contains(svg, ">20<") { // -1 in halves is -2
		t.Errorf("%s: %s", fault, svg)
	}
}
