// What would settle a doubtful verdict.

package spread

import "math"

// MaxReadings is the most repeat readings that Settle proposes. Common
// practice, no source: nobody reads a gap forty times.
const MaxReadings = 30

// Measured is one factor that is read with a gauge, and the gauges available
// for it. Standard uncertainties are in the unit of the factor; a rectangular
// half-width a gives a/√3 (see Factor.StdDev).
type Measured struct {
	Factor int       // index of the factor
	InHand float64   // standard uncertainty with the gauge in hand, as it was propagated; above 0
	Gauges []float64 // standard uncertainties with the gauges available, in any order
	Fixed  bool      // the error is the same at each reading (a scale error), so that repeating does not help
}

// Settlement says what would turn a "cannot tell" into a verdict.
type Settlement struct {
	// The coarsest gauge that settles it by itself: the factor to read with
	// it and its index among that factor's Gauges; -1 and -1 when none does.
	GaugeFactor, Gauge int

	// The fewest repeat readings, with the gauge in hand, of a single factor
	// that settle it: the factor and the number of readings, 2 … 30; -1 and 0
	// when none do.
	RepeatFactor, Readings int

	// No single change settles it, but the finest gauge for each measured
	// factor, all together, does.
	Together bool

	// Nothing available settles it: the factor that carries the largest part
	// of the spread that would still be there with the finest gauges. -1 when
	// something settles it, or when more of that spread belongs to the
	// interplay of factors than to any one of them.
	Blocker int

	// The standard uncertainty of the result, in its own unit, with which
	// its present mean would be told from the nearer bound.
	Needed float64
}

// Settle looks for what would settle a judgement of "cannot tell".
//
// It uses a normal distribution about the mean of the range, whose
// variance is V·(1 - Σ sᵢ + Σ sᵢ·kᵢ): V the variance of the range, sᵢ the share
// of a factor, kᵢ the part of that factor's own variance that is left, which is
// (u new / u in hand)² with another gauge and 1/n with the mean of n readings
// (JCGM 100:2008, 4.2.3 and 5.1.2). It is settled when the probability of
// meeting the limit comes to at least 0.975 or at most 0.025; for a one-sided
// limit that is a distance of 1.96 standard uncertainties. The value is taken
// to come out the same when it is read again. The model is taken as nearly
// linear over the spread of each factor.
//
// Coarsest means the greatest u new / u in hand; only gauges finer than the one
// in hand are looked at. Entries of measured without a usable Factor or InHand
// are passed over. With a range that is not usable or does not vary, or a limit
// with neither Max nor Min, nothing is proposed and Needed is NaN.
func Settle(r *Range, l Limit, measured []Measured) Settlement {
	s := Settlement{GaugeFactor: -1, Gauge: -1, RepeatFactor: -1, Blocker: -1, Needed: math.NaN()}
	low, high, ok := l.bounds()
	if !ok || r == nil || !r.Usable || !(r.StdDev > 0) {
		return s
	}
	s.Needed = min(math.Abs(r.Mean-low), math.Abs(r.Mean-high)) / z95

	// Shares are estimates; where they add up to more than the whole they
	// are scaled back to it.
	sum := 0.0
	for _, share := range r.Shares {
		sum += share
	}
	scale := 1 / max(sum, 1)
	settles := func(variancePart float64) bool {
		return settled(r.Mean, r.StdDev*math.Sqrt(max(variancePart, 0)), low, high)
	}

	left := make([]float64, len(r.Shares)) // with the finest gauges
	for i, share := range r.Shares {
		left[i] = share * scale
	}
	// A range that leaves no doubt of a normal distribution, but does in its
	// trials, says nothing of how much finer: only its largest part is looked at.
	most, near := 0, settles(1)
	for i, part := range left {
		if part > left[most] {
			most = i
		}
	}
	coarsest := 0.0
	for _, m := range measured {
		if m.Factor < 0 || m.Factor >= len(left) || !(m.InHand > 0) || math.IsInf(m.InHand, 0) || near && m.Factor != most {
			continue
		}
		share := r.Shares[m.Factor] * scale
		for g, u := range m.Gauges {
			ratio := u / m.InHand
			if !(ratio >= 0 && ratio < 1) {
				continue
			}
			kept := share * ratio * ratio
			left[m.Factor] = min(left[m.Factor], kept)
			if (s.Gauge < 0 || ratio > coarsest) && settles(1-share+kept) {
				coarsest, s.GaugeFactor, s.Gauge = ratio, m.Factor, g
			}
		}
		for n := 2; n <= MaxReadings && !m.Fixed && (s.Readings == 0 || n < s.Readings); n++ {
			if settles(1 - share + share/float64(n)) {
				s.RepeatFactor, s.Readings = m.Factor, n
				break
			}
		}
	}
	if s.Gauge >= 0 || s.Readings > 0 {
		return s
	}
	rest := max(1-sum, 0) // what no factor explains by itself
	remaining := rest
	for _, part := range left {
		remaining += part
	}
	if remaining < 1-1e-9 && settles(remaining) && !near {
		s.Together = true
		return s
	}
	largest := rest
	for i, part := range left {
		if part > largest {
			largest, s.Blocker = part, i
		}
	}
	return s
}

// settled says whether a normally distributed value can be told to meet, or
// not to meet, the bounds.
func settled(mean, sd, low, high float64) bool {
	if sd == 0 {
		return mean != low && mean != high
	}
	p := below((high-mean)/sd) - below((low-mean)/sd)
	return p >= Sure-1e-9 || p <= Lost+1e-9
}

// below is the standard normal distribution function.
func below(z float64) float64 { return 0.5 * math.Erfc(-z/math.Sqrt2) }
