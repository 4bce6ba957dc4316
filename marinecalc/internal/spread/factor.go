// Uncertain inputs and their distributions.

package spread

import (
	"fmt"
	"math"
)

// Shape is the distribution that stands for what is known of a factor
// (JCGM 101:2008, 6.4).
type Shape uint8

// The shapes a factor can have.
const (
	Exact       Shape = iota // the estimate and nothing else; no draw is made
	Rectangular              // anywhere from Low to High, equally likely (JCGM 101 6.4.2)
	Triangular               // from Low to High, likeliest at Estimate, which need not be in the middle
	Normal                   // bell-shaped, with its median at Estimate and Low and High as its 95 % limits (JCGM 101 6.4.7); each half has the width of its own side
	Counted                  // the rate behind a count of events, see Count
	Listed                   // as the trials of an earlier result lie, see List
)

// String names the shape in lower case, as the rule data spell it.
func (s Shape) String() string {
	switch s {
	case Exact:
		return "exact"
	case Rectangular:
		return "rectangular"
	case Triangular:
		return "triangular"
	case Normal:
		return "normal"
	case Counted:
		return "counted"
	case Listed:
		return "listed"
	}
	return fmt.Sprintf("shape %d", uint8(s))
}

// z95 is the 0.975 quantile of the standard normal distribution: 95 % of it
// lies within ±z95 (tabulated as 1.96).
const z95 = 1.959963984540054

// Factor is one input of a calculation with what is known about its value, in
// any one unit. For every shape but Exact: Low ≤ Estimate ≤ High, all finite.
// Low equal to High is the same as Exact.
type Factor struct {
	Estimate  float64 // best estimate; the mode of a triangular factor
	Low, High float64 // limits; not looked at for Exact
	Shape     Shape
	One       float64 // Counted: what one event more would have added to Estimate
	List      *List   // Listed: how its trials lie; Low and High are then their 95 % interval
}

// StdDev is the standard uncertainty of the factor, in its own unit:
// half-width/√3 for rectangular (JCGM 100:2008, 4.3.7), half-width/√6 for
// symmetric triangular (4.3.9), half-width/1.96 for normal, 0 for exact. A
// normal factor whose sides differ is two half normal distributions that meet
// at the estimate.
func (f Factor) StdDev() float64 {
	width := f.High - f.Low
	switch f.Shape {
	case Rectangular:
		return width / math.Sqrt(12)
	case Triangular:
		a, b := f.Estimate-f.Low, f.High-f.Estimate
		return math.Sqrt((a*a + a*b + b*b) / 18)
	case Normal:
		low, high := (f.Estimate-f.Low)/z95, (f.High-f.Estimate)/z95
		mean := (high - low) / math.Sqrt(2*math.Pi) // from the estimate
		return math.Sqrt((low*low+high*high)/2 - mean*mean)
	case Counted:
		return f.One * math.Sqrt(f.Estimate/f.One+0.5)
	case Listed:
		return f.List.stdDev()
	}
	return 0
}

// Sides are how far the 95 % range of the factor goes below and above its
// estimate: what a normal of the same width on that side has, and never more than
// where the values end.
func (f Factor) Sides() (below, above float64) {
	part := 1.0
	switch f.Shape {
	case Exact:
		return 0, 0
	case Triangular:
		part = z95 / math.Sqrt(6)
	case Counted:
		both := z95 * f.StdDev()
		return min(both, f.Estimate), both
	}
	return part * (f.Estimate - f.Low), part * (f.High - f.Estimate)
}

// varies says whether the factor needs draws.
func (f Factor) varies() bool { return f.Shape != Exact && f.Low < f.High }

// check refuses a factor that cannot be drawn from.
func (f Factor) check(index int) error {
	if !finite(f.Estimate) {
		return fmt.Errorf("spread: factor %d: the estimate is not a finite number", index)
	}
	if f.Shape == Exact {
		return nil
	}
	if f.Shape > Listed || f.Shape == Listed && f.List == nil || f.Shape == Counted && !(f.One > 0 && f.Estimate >= 0) {
		return fmt.Errorf("spread: factor %d: unknown %v", index, f.Shape)
	}
	if !finite(f.Low) || !finite(f.High) || !finite(f.High-f.Low) {
		return fmt.Errorf("spread: factor %d: the limits are not finite numbers", index)
	}
	if f.Low > f.Estimate || f.Estimate > f.High {
		return fmt.Errorf("spread: factor %d: the estimate %g is outside its limits %g to %g", index, f.Estimate, f.Low, f.High)
	}
	return nil
}

func finite(v float64) bool { return v-v == 0 }
