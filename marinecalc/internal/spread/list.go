// Distributions that are no bell: the trials of an earlier result.

package spread

import (
	"math"
	"slices"
)

// cells is how many parts of equal probability a List has.
const cells = 256

// List is how the trials of a result lie where no bell stands for them, as of a
// joint that holds by its key or, its hub pulled off, not at all: the ends of parts
// of equal probability, from the least to the greatest (JCGM 101:2008, 6.5 and 7.5:
// the distribution function found by sorting).
type List [cells + 1]float64

// unlike is how far the distribution function of a bell may lie from that of the
// trials for the bell still to stand for them.
const unlike = 0.1

// List lists the trials of a result whose interval is low to high where a bell of
// that interval about the estimate is no picture of them, and is nil where it is, or
// where nothing was tried.
func (r *Range) List(estimate, low, high float64) *List {
	if r == nil || !r.Usable || len(r.trials) < cells || !(low < high) {
		return nil
	}
	as := Factor{Estimate: estimate, Low: low, High: high, Shape: Normal}
	mean := estimate + (high+low-2*estimate)/z95/math.Sqrt(2*math.Pi)
	if sd := as.StdDev(); math.Abs(r.Mean-mean) < 0.1*r.StdDev && r.StdDev < 1.25*sd && sd < 1.25*r.StdDev {
		return nil // by mean and width, as most are, without a look at each trial
	}
	off := 0.0
	for _, z := range [...]float64{-1.28, -0.67, -0.25, 0.25, 0.67, 1.28} {
		x := estimate + z*(high-estimate)/z95
		if z < 0 {
			x = estimate + z*(estimate-low)/z95
		}
		share := float64(countBetween(r.trials, math.Inf(-1), x)) / float64(len(r.trials))
		off = max(off, math.Abs(share-bell(z)))
	}
	if off < unlike {
		return nil
	}
	sorted := slices.Clone(r.trials)
	slices.Sort(sorted)
	l := new(List)
	for i := range l {
		l[i] = sorted[i*(len(sorted)-1)/cells]
	}
	return l
}

// bell is the distribution function of the standard normal.
func bell(z float64) float64 { return (1 + math.Erf(z/math.Sqrt2)) / 2 }

// at is the quantile of u, 0 to 1.
func (l *List) at(u float64) float64 {
	i := min(int(u*cells), cells-1)
	return l[i] + (u*cells-float64(i))*(l[i+1]-l[i])
}

// stdDev is the standard deviation of the list, evenly spread in each part.
func (l *List) stdDev() float64 {
	sum, squares := 0.0, 0.0
	middle := l[cells/2]
	for i := range cells {
		a, b := l[i]-middle, l[i+1]-middle
		sum += (a + b) / 2
		squares += (a*a + a*b + b*b) / 3
	}
	mean := sum / cells
	return math.Sqrt(max(0, squares/cells-mean*mean))
}
