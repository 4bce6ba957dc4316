// Rates behind a count of events that come at random.

package spread

import (
	"math"
	"sync"
)

// Count is the factor for a rate of which so much was counted, in steps of
// one event: eight drips in a minute are Count(8/min, 1/min), two in a quarter
// of a minute Count(8/min, 4/min).
//
// Events that come independently at a steady rate are spread as Poisson found;
// what is then known of the rate after n of them is a gamma distribution of
// shape n+1/2 (Jeffreys, Theory of Probability, 3rd ed. 1961, 3.1 and 3.6;
// Brown, Cai and DasGupta, Statistica Sinica 13 (2003) 19-49, whose interval
// it is; from memory). Low and High are its 95 % limits. A steady drip is more
// even than that, so the limits are wide rather than narrow.
func Count(rate, one float64) Factor {
	f := Factor{Estimate: rate, Shape: Counted, One: one}
	f.Low = min(rate, one*gammaQuantile(rate/one+0.5, 0.025))
	f.High = max(rate, one*gammaQuantile(rate/one+0.5, 0.975))
	return f
}

// many is the count from which on a gamma distribution is taken in the form of
// Wilson and Hilferty, whose error in the quantiles is then under 1e-4.
const many = 200

// knots are how many quantiles of a gamma distribution are calculated.
const knots = 128

// knotAt is the probability at a knot: sin² puts many at both ends.
func knotAt(i int) float64 {
	s := math.Sin(math.Pi / 2 * (float64(i) + 0.5) / (knots + 1))
	return s * s
}

// gamma is the quantiles of the distribution of one shape and scale one, at the
// knots. Nobody changes it.
type gamma struct {
	shape float64
	at    [knots + 1]float64
}

// mostGammas is how many of them are kept, about 1 kB each: a count is read once and
// drawn in every sheet that takes it, in each of its runs.
const mostGammas = 16

var gammas struct {
	sync.Mutex
	list []*gamma
}

// gammaFor gives the quantiles for a shape.
func gammaFor(shape float64) *gamma {
	gammas.Lock()
	defer gammas.Unlock()
	for _, g := range gammas.list {
		if g.shape == shape {
			return g
		}
	}
	g := &gamma{shape: shape}
	for i := range g.at {
		g.at[i] = gammaQuantile(shape, knotAt(i))
	}
	if len(gammas.list) == mostGammas { // the oldest makes room
		gammas.list = append(gammas.list[:0], gammas.list[1:]...)
	}
	gammas.list = append(gammas.list, g)
	return g
}

// placeCounted turns places among the strata, 0 to n, into rates. The
// quantiles are calculated at knots and taken as straight between them, closer
// together where the distribution has its tails.
func placeCounted(f *Factor, sorted []float64) {
	n := float64(len(sorted))
	g := gammaFor(f.Estimate/f.One + 0.5)
	from, to := 0.0, knotAt(0)
	low, high := 0.0, f.One*g.at[0]
	knot := 0
	for s, place := range sorted {
		for u := place / n; u > to && knot < knots; {
			knot++
			from, low = to, high
			to = knotAt(knot)
			high = f.One * g.at[knot]
		}
		u := min(place/n, to)
		sorted[s] = low + (high-low)*(u-from)/(to-from)
	}
}

// CountBelow is the probability that the rate behind a count lies below a level:
// of Count(rate, one).
func CountBelow(rate, one, level float64) float64 {
	if level <= 0 {
		return 0
	}
	shape := rate/one + 0.5
	return gammaBelow(shape, level/one, lgamma(shape+1))
}

// gammaQuantile is the value that a gamma distribution of this shape and scale
// one stays below with probability u.
func gammaQuantile(shape, u float64) float64 {
	// Wilson and Hilferty, PNAS 17 (1931) 684-688: the cube root is nearly normal.
	z := math.Sqrt2 * math.Erfinv(2*u-1)
	root := 1 - 1/(9*shape) + z/(3*math.Sqrt(shape))
	guess := shape * root * root * root
	if shape > many {
		return guess
	}
	low, high := 0.0, shape+20*math.Sqrt(shape)+40
	if !(guess > low && guess < high) {
		guess = math.Exp((math.Log(u) + lgamma(shape+1)) / shape) // what little of it is near nothing
		guess = min(max(guess, 1e-300), high/2)
	}
	norm, above := lgamma(shape), lgamma(shape+1)
	for range 60 { // Newton's steps, kept between what is known to be too low and too high
		miss := gammaBelow(shape, guess, above) - u
		if miss > 0 {
			high = guess
		} else {
			low = guess
		}
		density := math.Exp((shape-1)*math.Log(guess) - guess - norm)
		next := guess - miss/density
		if !(next > low && next < high) {
			next = low + (high-low)/2
		}
		if math.Abs(next-guess) <= 1e-12*guess {
			return next
		}
		guess = next
	}
	return guess
}

// gammaBelow is the probability that a gamma distribution of this shape and
// scale one lies below x: the series of the incomplete gamma function
// (Abramowitz and Stegun, Handbook of Mathematical Functions, 6.5.29). norm is
// lgamma(shape+1).
func gammaBelow(shape, x, norm float64) float64 {
	term := math.Exp(shape*math.Log(x) - x - norm)
	sum := term
	for k := shape + 1; term > 1e-17*sum; k++ {
		term *= x / k
		sum += term
		if sum > 1 {
			return 1
		}
	}
	return sum
}

func lgamma(x float64) float64 {
	l, _ := math.Lgamma(x)
	return l
}
