// The line through readings.

package series

import (
	"math"
	"slices"
)

// Fit is a straight line laid robustly through readings, with how far a next
// reading may lie from it.
type Fit struct {
	Readings int     // laid through
	Slope    float64 // rise of the value for one of the axis
	Middle   float64 // mean place on the axis
	Height   float64 // of the line there
	Scatter  float64 // standard deviation of one reading about the line
	Factor   float64 // of Student's t for 95 %; infinite where nothing is left to judge the scatter by

	spread  float64 // sum of the squared distances from Middle
	freedom int     // degrees of freedom of Scatter; 0 where Factor is infinite
}

// TheilSen lays a line through points: its slope is the median of the slopes
// between every two of them with different x, its height at x = 0 the median
// of what is left (Theil 1950; Sen, Journal of the American Statistical
// Association 63 (1968) 1379-1389; from memory). Up to 29 % of the points may
// be wild without carrying it away. It gives NaN where all x are the same.
func TheilSen(x, y []float64) (slope, intercept float64) {
	var slopes []float64
	for i := range x {
		for j := range i {
			if x[i] != x[j] {
				slopes = append(slopes, (y[i]-y[j])/(x[i]-x[j]))
			}
		}
	}
	slope = median(slopes)
	rest := make([]float64, len(x))
	for i := range x {
		rest[i] = y[i] - slope*x[i]
	}
	return slope, median(rest)
}

// A reading is wild that is farther off than so many scales, the more of them
// the fewer readings there are to take a scale from: with 4.5 alone a twentieth
// of runs of five readings lost one, and their bands held 43 in 100.
const (
	wild = 4.5
	few  = 2.0
)

// Lay lays the line and judges the scatter about it. Of the residuals r the
// two smallest say nothing, as the line is laid through points: a first scale
// is 1.4826·median|r| of the others (the normalised median of what is left of
// a robust line: Maronna, Martin and Yohai, Robust Statistics, 2006, ch. 4,
// from memory). Readings farther off than four and a half of it, and more where
// there are few, are left out of the scatter (not of the line), which is
// √(Σr²/(m − 2)) of the m that are left, after the reweighting of Rousseeuw and
// Leroy (Robust Regression and Outlier Detection, 1987, ch. 5, from memory; they
// cut at 2.5, which takes too much off few readings: a test holds that the band
// so made keeps 93 to 97 in 100 of the next readings). It is never taken as less than that of
// the gauge, accuracy/√3 (JCGM 100:2008, 4.3.7).
//
// x and y have at least three places, not all of one x.
func Lay(x, y []float64, accuracy float64) Fit {
	f := Fit{Readings: len(x)}
	slope, intercept := TheilSen(x, y)
	f.Slope, f.Middle = slope, mean(x)
	f.Height = intercept + slope*f.Middle
	off := make([]float64, len(x))
	for i := range x {
		f.spread += (x[i] - f.Middle) * (x[i] - f.Middle)
		off[i] = math.Abs(y[i] - f.At(x[i]))
	}
	slices.Sort(off)
	first := 1.4826 * median(slices.Clone(off[2:]))
	sum, kept := 0.0, 0
	for _, r := range off {
		if r <= wild*(1+few/float64(len(x)-2))*first {
			sum += r * r
			kept++
		}
	}
	f.Factor = math.Inf(1)
	if kept > 2 {
		f.Scatter = math.Sqrt(sum / float64(kept-2))
		f.freedom = kept - 2
		f.Factor = Student(0.975, f.freedom)
	}
	f.Scatter = max(f.Scatter, accuracy/math.Sqrt(3))
	return f
}

// At is the line's height.
func (f *Fit) At(x float64) float64 { return f.Height + f.Slope*(x-f.Middle) }

// The variances of the median and of the Theil-Sen slope under normal
// scatter, over those of least squares (Sen 1968: efficiencies 2/π and 3/π).
const (
	medianLoss = math.Pi / 2
	slopeLoss  = math.Pi / 3
)

// Half is half the width of the 95 % prediction interval of one more reading:
// t·s·√(1 + 1/n + (x − x̄)²/Σ(x_i − x̄)²), the interval of a straight line by
// least squares (Montgomery and Peck, Introduction to Linear Regression
// Analysis, ch. 2, from memory), with the greater variances of a robust line.
func (f *Fit) Half(x float64) float64 {
	u := x - f.Middle
	return f.Factor * f.Scatter * math.Sqrt(1+medianLoss/float64(f.Readings)+slopeLoss*u*u/f.spread)
}

// SlopeHalf is half the width of the 95 % interval of the slope.
func (f *Fit) SlopeHalf() float64 { return f.Factor * f.Scatter * math.Sqrt(slopeLoss/f.spread) }

// short is the chance that one more reading at x falls short of a level.
func (f *Fit) short(level, x float64, rising bool) float64 {
	if math.IsInf(f.Factor, 1) {
		return 0.5
	}
	room := level - f.At(x)
	if !rising {
		room = -room
	}
	width := f.Half(x) / f.Factor
	switch {
	case room == 0:
		return 0.5
	case width == 0 && room > 0:
		return 1
	case width == 0:
		return 0
	}
	return studentBelow(room/width, f.freedom)
}

// Reaches gives where on the axis, not before from, the line reaches a level,
// and the earliest and latest place by the prediction interval: where its
// bounds do. rising says that the level is met from below. +Inf stands for
// never; from where it is reached or passed already.
func (f *Fit) Reaches(level, from float64, rising bool) (at, earliest, latest float64) {
	sign := 1.0
	if !rising {
		sign = -1
	}
	at = f.crossing(level, from, sign, 0)
	return at, f.crossing(level, from, sign, 1), f.crossing(level, from, sign, -1)
}

// crossing is the first place from there on at which the line, moved toward
// the level by so many half-widths, meets it.
func (f *Fit) crossing(level, from, sign, halves float64) float64 {
	short := sign * (level - f.At(from))
	if halves != 0 {
		if math.IsInf(f.Factor, 1) {
			short = math.Inf(int(-halves)) // nothing is known of the scatter: at once, or never
		} else {
			short -= halves * f.Half(from)
		}
	}
	b, c, k := sign*f.Slope, sign*(f.Height-level), halves*f.Factor*f.Scatter
	switch {
	case short <= 0:
		return from
	case math.IsInf(short, 1):
		return short
	case halves == 0 || k == 0:
		if b <= 0 {
			return math.Inf(1)
		}
		return f.Middle - c/b
	}
	// (c + b·u)² = k²·(wide + per·u²), with u the distance from the middle.
	// The discriminant is put so that a narrow band does not cancel in it.
	wide, per := 1+medianLoss/float64(f.Readings), slopeLoss/f.spread
	d := b*b*wide + c*c*per - k*k*wide*per
	if d < 0 {
		return math.Inf(1)
	}
	q := -b*c + math.Copysign(k*math.Sqrt(d), -b*c)
	best := math.Inf(1)
	for _, u := range [...]float64{q / (b*b - k*k*per), (c*c - k*k*wide) / q} {
		// Of the two bounds, which one meets the level there?
		if x := f.Middle + u; x > from && x < best && (c+b*u)*halves <= 0 {
			best = x
		}
	}
	return best
}

// median sorts its argument.
func median(v []float64) float64 {
	n := len(v)
	if n == 0 {
		return math.NaN()
	}
	slices.Sort(v)
	if n%2 == 1 {
		return v[n/2]
	}
	return (v[n/2-1] + v[n/2]) / 2
}

func mean(v []float64) float64 {
	sum := 0.0
	for _, x := range v {
		sum += x
	}
	return sum / float64(len(v))
}
