// Evidence for and against a cause.

package bayes

import "math"

// Against gives the weight of one answer for cause c against all the others,
// in decibans: 10·log10 of how many times more probable the answer is under
// the cause than under the others, these mixed by their priors. Plus speaks
// for the cause, minus against it, 0 is "don't know". With more than two
// causes these weights do not add up exactly; those of Between do.
//
// Source: Good, Probability and the Weighing of Evidence (1950), weight of
// evidence and deciban; from memory.
func (m Model) Against(c, q int, a Answer) float64 {
	if a == Unknown {
		return 0
	}
	others, weight := 0.0, 0.0
	for d, w := range m.Prior {
		if d != c {
			others += w * m.likelihood(d, q, a)
			weight += w
		}
	}
	if weight == 0 {
		return 0 // nothing to be against
	}
	return decibans(m.likelihood(c, q, a) * weight / others)
}

// Between gives the weight of one answer for cause c against cause d, in
// decibans. These add up: prior odds and the weights of all answers together
// give the odds between the two causes.
func (m Model) Between(c, d, q int, a Answer) float64 {
	return decibans(m.likelihood(c, q, a) / m.likelihood(d, q, a))
}

func decibans(ratio float64) float64 { return 10 * math.Log10(ratio) }
