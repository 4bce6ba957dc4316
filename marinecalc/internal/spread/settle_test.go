package spread

import (
	"math"
	"testing"

	"example.org/driveline/marinecalc/sheet"
)

// Expected values follow by hand from the calculation written at Settle, with
// z = 1.960 (the 0.975 quantile of the standard normal distribution) and the law of propagation,
// JCGM 100:2008, 5.1.2.

// cloudy is a result of mean 9 whose variance is 1, with the shares given.
func cloudy(shares ...float64) *Range {
	return &Range{Usable: true, Mean: 9, StdDev: 1, Shares: shares}
}

func TestSettle(t *testing.T) {
	// At most 10: settled when u ≤ 1/1.960 = 0.510, a variance of 0.2603.
	limit := AtMost(10)
	gauges := []float64{0.01, 0.2, 0.5, 0.8, 2}
	for _, c := range []struct {
		what     string
		r        *Range
		limit    Limit
		measured []Measured
		want     Settlement
	}{
		{"one factor does all: u 0.5 will do, 0.8 will not; 4 readings give 0.5",
			cloudy(1), limit, []Measured{{Factor: 0, InHand: 1, Gauges: gauges}},
			Settlement{GaugeFactor: 0, Gauge: 2, RepeatFactor: 0, Readings: 4, Blocker: -1}},
		{"share 0.85: left 0.15 + 0.85k² ≤ 0.2603 needs k ≤ 0.360; n ≥ 7.7",
			cloudy(0.15, 0.85), limit, []Measured{{Factor: 1, InHand: 1, Gauges: gauges}},
			Settlement{GaugeFactor: 1, Gauge: 1, RepeatFactor: 1, Readings: 8, Blocker: -1}},
		{"a scale error is not read away",
			cloudy(0.15, 0.85), limit, []Measured{{Factor: 1, InHand: 1, Gauges: gauges, Fixed: true}},
			Settlement{GaugeFactor: 1, Gauge: 1, RepeatFactor: -1, Blocker: -1}},
		{"only readings: no finer gauge available",
			cloudy(0.15, 0.85), limit, []Measured{{Factor: 1, InHand: 1, Gauges: []float64{1, 3}}},
			Settlement{GaugeFactor: -1, Gauge: -1, RepeatFactor: 1, Readings: 8, Blocker: -1}},
		{"share 0.764: 30 readings leave 0.2615, 32 would do",
			cloudy(0.236, 0.764), limit, []Measured{{Factor: 1, InHand: 1}},
			Settlement{GaugeFactor: -1, Gauge: -1, RepeatFactor: -1, Blocker: 1}},
		{"two standard uncertainties off, told apart already: the part that matters, not the first",
			&Range{Usable: true, Mean: 8, StdDev: 1, Shares: []float64{0, 0.9}}, limit, []Measured{{Factor: 0, InHand: 1, Gauges: gauges}, {Factor: 1, InHand: 1, Gauges: gauges}},
			Settlement{GaugeFactor: 1, Gauge: 3, RepeatFactor: 1, Readings: 2, Blocker: -1}},
		{"the same, and nobody measures the part that matters",
			&Range{Usable: true, Mean: 8, StdDev: 1, Shares: []float64{0.1, 0.9}}, limit, []Measured{{Factor: 0, InHand: 1, Gauges: gauges}},
			Settlement{GaugeFactor: -1, Gauge: -1, RepeatFactor: -1, Blocker: 1}},
		{"the spread comes from a factor nobody measures",
			cloudy(0.6, 0.4), limit, []Measured{{Factor: 1, InHand: 1, Gauges: gauges}},
			Settlement{GaugeFactor: -1, Gauge: -1, RepeatFactor: -1, Blocker: 0}},
		{"two gauges together: neither alone",
			cloudy(0.2, 0.4, 0.4), limit, []Measured{{Factor: 1, InHand: 1, Gauges: gauges}, {Factor: 2, InHand: 5, Gauges: gauges}},
			Settlement{GaugeFactor: -1, Gauge: -1, RepeatFactor: -1, Together: true, Blocker: -1}},
		{"the spread is interplay",
			cloudy(0.2, 0.2), limit, []Measured{{Factor: 1, InHand: 1, Gauges: gauges}},
			Settlement{GaugeFactor: -1, Gauge: -1, RepeatFactor: -1, Blocker: -1}},
		{"of two factors the one that asks for less: 0.5/1 against 0.8/2",
			cloudy(0.5, 0.5), AtMost(9 + 1.96*0.8), []Measured{{Factor: 0, InHand: 1, Gauges: []float64{0.5}}, {Factor: 1, InHand: 2, Gauges: []float64{0.8}}},
			Settlement{GaugeFactor: 0, Gauge: 0, RepeatFactor: 0, Readings: 4, Blocker: -1}}, // 0.5 + 0.5/n ≤ 0.64 needs n ≥ 3.6
		{"a minimum, from above",
			cloudy(1), AtLeast(8), []Measured{{Factor: 0, InHand: 1, Gauges: gauges}},
			Settlement{GaugeFactor: 0, Gauge: 2, RepeatFactor: 0, Readings: 4, Blocker: -1}},
		{"beyond a maximum settles too",
			cloudy(1), AtMost(8), []Measured{{Factor: 0, InHand: 1, Gauges: gauges}},
			Settlement{GaugeFactor: 0, Gauge: 2, RepeatFactor: 0, Readings: 4, Blocker: -1}},
		{"in the middle of a window both sides count: 2Φ(1/u) - 1 ≥ 0.975 needs u ≤ 1/2.2414 = 0.446",
			cloudy(1), Limit{Min: 8, Max: 10}, []Measured{{Factor: 0, InHand: 1, Gauges: []float64{0.6, 0.44, 0.1}}},
			Settlement{GaugeFactor: 0, Gauge: 1, RepeatFactor: 0, Readings: 6, Blocker: -1}},
		{"shares that add to 1.1: 0.0909 + 0.909/n ≤ 0.2603 needs n ≥ 5.37, k ≤ 0.43",
			cloudy(0.1, 1.0), limit, []Measured{{Factor: 1, InHand: 1, Gauges: gauges}},
			Settlement{GaugeFactor: 1, Gauge: 1, RepeatFactor: 1, Readings: 6, Blocker: -1}},
		{"entries that say nothing",
			cloudy(1), limit, []Measured{{Factor: 4, InHand: 1, Gauges: gauges}, {Factor: -1, InHand: 1}, {Factor: 0, Gauges: gauges}, {Factor: 0, InHand: math.NaN(), Gauges: gauges}},
			Settlement{GaugeFactor: -1, Gauge: -1, RepeatFactor: -1, Blocker: 0}},
		{"nothing measured", cloudy(0.9, 0.1), limit, nil,
			Settlement{GaugeFactor: -1, Gauge: -1, RepeatFactor: -1, Blocker: 0}},
	} {
		got := Settle(c.r, c.limit, c.measured)
		low, high, _ := c.limit.bounds()
		agree(t, c.what+": needed", got.Needed, min(math.Abs(c.r.Mean-low), math.Abs(c.r.Mean-high))/1.959964, 1e-6)
		c.want.Needed = got.Needed
		if got != c.want {
			t.Errorf("%s:\n got %+v\nwant %+v", c.what, got, c.want)
		}
	}
}

func TestSettleWithNothingToSettle(t *testing.T) {
	for _, r := range []*Range{nil, {}, {Usable: true, Mean: 1, Shares: []float64{0}}} {
		s := Settle(r, AtMost(1), nil)
		if s.Gauge >= 0 || s.Readings > 0 || s.Together || s.Blocker >= 0 || !math.IsNaN(s.Needed) {
			t.Errorf("%+v: %+v", r, s)
		}
	}
	if s := Settle(cloudy(1), Limit{Max: math.NaN(), Min: math.NaN()}, nil); !math.IsNaN(s.Needed) {
		t.Errorf("no limit: %+v", s)
	}
}

// What Settle promises must come true when the factor is propagated anew.
func TestSettleKeepsItsPromise(t *testing.T) {
	f := []Factor{normal(3, 0.4), normal(6, 0.9)}
	limit := AtMost(10)
	r := mustPropagate(t, f, 1, Plan{}, sum).Results[0]
	if j := Judge(9, &r, limit); j.Word != sheet.CannotTell {
		t.Fatalf("%+v is no case for Settle", j)
	}
	gauges := []float64{0.7, 0.3, 0.1}
	s := Settle(&r, limit, []Measured{{Factor: 1, InHand: 0.9, Gauges: gauges}})
	if s.GaugeFactor != 1 || s.Gauge != 1 || s.Readings == 0 {
		t.Fatalf("%+v", s)
	}
	for _, u := range []float64{gauges[s.Gauge], 0.9 / math.Sqrt(float64(s.Readings))} {
		f[1] = normal(6, u)
		r = mustPropagate(t, f, 1, Plan{}, sum).Results[0]
		// 0.5 % is left to the sampling, of trials and of shares.
		if j := Judge(9, &r, limit); j.Probability < Sure-0.005 {
			t.Errorf("with u = %g still %+v", u, j)
		}
	}
	f[1] = normal(6, gauges[0])
	r = mustPropagate(t, f, 1, Plan{}, sum).Results[0]
	if j := Judge(9, &r, limit); j.Word != sheet.CannotTell {
		t.Errorf("the coarser gauge settles it too: %+v", j)
	}
}
