package spread

import "math"

// Coverage is the probability that the interval Low … High of a Range is said
// to hold the value with.
const Coverage = 0.95

// still is the relative width below which a result counts as constant: it is
// rounding, not spread.
const still = 1e-12

// Range is what the trials say about one result, in the unit of the result.
type Range struct {
	Usable    bool      // false: too many trials failed, or their squares are too large to hold; the figures below are then NaN, the shares 0
	Mean      float64   // mean of the trials (JCGM 101:2008, 7.6, eq. 16)
	StdDev    float64   // standard uncertainty (eq. 17); 0 when the result does not vary
	Low, High float64   // probabilistically symmetric 95 % interval (JCGM 101 7.7)
	Shares    []float64 // first-order share of each factor in the variance, 0 … 1, by the factor's index; exact factors 0

	trials []float64 // the values of the trials in no order; a single one when the result does not vary
}

// summarise takes mean, spread and extent from v in one pass. constant is true
// when v does not vary beyond rounding.
func summarise(v []float64) (mean, sumOfSquares float64, constant bool) {
	first := v[0] // taking differences from one of the values keeps the digits
	low, high := first, first
	sum, squares := 0.0, 0.0
	for _, y := range v {
		d := y - first
		sum += d
		squares += d * d
		if y < low { // plain comparisons: min and max are slow in WebAssembly
			low = y
		}
		if y > high {
			high = y
		}
	}
	n := float64(len(v))
	mean = first + sum/n
	if high-low <= still*max(math.Abs(low), math.Abs(high)) {
		return mean, 0, true
	}
	return mean, max(squares-sum*sum/n, 0), false
}

// symmetricInterval gives the end points of the probabilistically symmetric
// coverage interval as order statistics of the trials (JCGM 101:2008, 7.7.2).
// It rearranges v.
func symmetricInterval(v []float64) (low, high float64) {
	m := len(v)
	if m < 2 {
		return v[0], v[0]
	}
	q := int(Coverage*float64(m) + 0.5)
	q = min(q, m-1)
	r := (m - q + 1) / 2 // counted from 1
	r = min(r, m-q)
	orderStatistic(v, 0, m-1, r-1)
	orderStatistic(v, r, m-1, r+q-1)
	return v[r-1], v[r+q-1]
}

// ProbabilityBelow is the probability, 0 … 1, that the value is at or below
// limit. A trial within a relative 1e-9 of the limit counts as at it (see
// Judge). NaN when the range is not usable or limit is NaN.
func (r *Range) ProbabilityBelow(limit float64) float64 {
	return r.probabilityBetween(math.Inf(-1), limit)
}

// ProbabilityAbove is the probability, 0 … 1, that the value is at or above
// limit, with the same rule for a trial on the limit.
func (r *Range) ProbabilityAbove(limit float64) float64 {
	return r.probabilityBetween(limit, math.Inf(1))
}

// probabilityBetween is the part of the trials from low to high, both
// included.
func (r *Range) probabilityBetween(low, high float64) float64 {
	if !r.Usable || len(r.trials) == 0 || math.IsNaN(low) || math.IsNaN(high) {
		return math.NaN()
	}
	if !math.IsInf(low, 0) {
		low -= slack(low, r.StdDev)
	}
	if !math.IsInf(high, 0) {
		high += slack(high, r.StdDev)
	}
	count := 0
	for _, v := range r.trials {
		if low <= v && v <= high {
			count++
		}
	}
	return float64(count) / float64(len(r.trials))
}
