// Mean, interval and probabilities of one result.

package spread

import "math"

// Coverage is the probability that the interval Low … High of a Range is said
// to hold the value with.
const Coverage = 0.95

// still is the relative standard deviation below which a result counts as
// constant: it is rounding, not spread.
const still = 1e-12

// Range is what the trials say about one result, in the unit of the result.
// Trials that failed are left out of it: what is not possible did not happen.
type Range struct {
	Usable    bool      // false: fewer than a tenth of the trials are left, or their squares are too large to hold; the figures below are then NaN, the shares 0
	Mean      float64   // mean of the trials (JCGM 101:2008, 7.6, eq. 16)
	StdDev    float64   // standard uncertainty (eq. 17); 0 when the result does not vary
	Low, High float64   // probabilistically symmetric 95 % interval (JCGM 101 7.7)
	Shares    []float64 // first-order share of each factor in the variance, 0 … 1, by the factor's index; exact factors 0

	trials []float64 // the values of the trials in no order; a single one when the result does not vary
	edge   []float64 // for each trial that the model refused, the value at the edge of where it applies
	lost   int       // trials without any value
}

// Lost is the share of trials that have no value; 0 where there are no trials.
func (r *Range) Lost() float64 {
	if r == nil || r.lost == 0 {
		return 0
	}
	return float64(r.lost) / float64(r.lost+len(r.trials)+len(r.edge))
}

// summarise takes the mean, and the sum of squares about it, from v in one
// pass, eight values a round (see scatter). A value that is not finite makes
// neither finite.
func summarise(v []float64) (mean, squares float64) {
	first := v[0] // taking differences from one of the values keeps the digits
	sum, more := 0.0, 0.0
	i := 0
	for ; i <= len(v)-8; i += 8 {
		y := (*[8]float64)(v[i:])
		a, b, c, d := y[0]-first, y[1]-first, y[2]-first, y[3]-first
		sum += (a + b) + (c + d)
		squares += (a*a + b*b) + (c*c + d*d)
		a, b, c, d = y[4]-first, y[5]-first, y[6]-first, y[7]-first
		sum += (a + b) + (c + d)
		more += (a*a + b*b) + (c*c + d*d)
	}
	for ; i < len(v); i++ {
		d := v[i] - first
		sum += d
		squares += d * d
	}
	off := sum / float64(len(v))
	return first + off, max(squares+more-sum*off, 0)
}

// symmetricInterval gives the end points of the probabilistically symmetric
// coverage interval as order statistics of the trials (JCGM 101:2008, 7.7.2).
// mean and sd are those of v; scratch is as long as v.
func symmetricInterval(v, scratch []float64, mean, sd float64) (low, high float64) {
	m := len(v)
	if m < 2 {
		return v[0], v[0]
	}
	q := int(Coverage*float64(m) + 0.5)
	q = min(q, m-1)
	r := (m - q + 1) / 2 // counted from 1
	r = min(r, m-q)

	// Both end points are mostly farther than this from the mean, so that
	// they can be looked for among few values.
	scratch = scratch[:m]
	below, above := tails(v, scratch, mean, 1.5*sd)
	if r <= below {
		low = orderStatistic(scratch[:below], r-1)
	}
	after := m - (r + q) // how many values come after the upper end point
	if after < above {
		high = orderStatistic(scratch[m-above:], above-1-after)
	}
	if r > below {
		low = orderStatistic(scratch[:copy(scratch, v)], r-1)
	}
	if after >= above {
		high = orderStatistic(scratch[:copy(scratch, v)], r+q-1)
	}
	return low, high
}

// tails gathers the values farther than distance from the middle: those below
// at the beginning of scratch, those above at its end.
func tails(v, scratch []float64, middle, distance float64) (below, above int) {
	one := func(y float64) {
		if math.Abs(y-middle) <= distance {
			return
		}
		if y < middle {
			scratch[below] = y
			below++
		} else {
			above++
			scratch[len(scratch)-above] = y
		}
	}
	i := 0
	for ; i <= len(v)-4; i += 4 { // four a round (see scatter)
		y := (*[4]float64)(v[i:])
		one(y[0])
		one(y[1])
		one(y[2])
		one(y[3])
	}
	for ; i < len(v); i++ {
		one(v[i])
	}
	return below, above
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
	if !r.Usable || math.IsNaN(low) || math.IsNaN(high) {
		return math.NaN()
	}
	low -= slack(low, r.StdDev)
	high += slack(high, r.StdDev)
	return float64(countBetween(r.trials, low, high)) / float64(len(r.trials))
}

// surelyBetween bounds the probability with the trials that failed counted in,
// at the edge of where the model applies, and those without a value counted
// against either answer.
func (r *Range) surelyBetween(low, high float64) (least, most float64) {
	p := r.probabilityBetween(low, high)
	if len(r.edge) == 0 && r.lost == 0 || math.IsNaN(p) {
		return p, p
	}
	kept := float64(len(r.trials))
	if kept == 1 { // one stands for all
		kept = float64(len(r.edge) + r.lost)
	}
	all := kept + float64(len(r.edge)+r.lost)
	meet := p*kept + float64(countBetween(r.edge, low-slack(low, r.StdDev), high+slack(high, r.StdDev)))
	return min(p, meet/all), max(p, (meet+float64(r.lost))/all)
}

func countBetween(values []float64, low, high float64) (count int) {
	for _, v := range values {
		if low <= v && v <= high {
			count++
		}
	}
	return count
}
