// How much an answer would tell.

package bayes

import "math"

// Information is what the answer to question q is expected to tell about the
// cause, in bits: the entropy of the causes now less the mean of their
// entropy after a yes and after a no. probability is of each cause now, as
// Posterior gives it; any weights that sum to 1 over some of the causes serve
// as well. It is never under 0, and at most 1.
//
// Source: Lindley, On a measure of the information provided by an experiment
// (1956); entropy after Shannon (1948); from memory.
func (m Model) Information(probability []float64, q int) float64 {
	// The same as the mutual information of cause and answer, which needs no
	// posteriors: H(answer) − Σ P(c)·H(answer|c).
	yes, within := 0.0, 0.0
	for c, p := range probability {
		yes += p * m.Yes[c][q]
		within += p * bits(m.Yes[c][q])
	}
	return max(0, bits(yes)-within)
}

// Parting is what the answer to question q is expected to tell between causes
// c and d alone, in bits.
func (m Model) Parting(probability []float64, c, d, q int) float64 {
	total := probability[c] + probability[d]
	if !(total > 0) {
		return 0
	}
	pc := probability[c] / total
	yes := pc*m.Yes[c][q] + (1-pc)*m.Yes[d][q]
	return max(0, bits(yes)-pc*bits(m.Yes[c][q])-(1-pc)*bits(m.Yes[d][q]))
}

// bits is the entropy of a yes-or-no with that probability of a yes.
func bits(p float64) float64 {
	if !(p > 0 && p < 1) {
		return 0
	}
	return -(p*math.Log2(p) + (1-p)*math.Log2(1-p))
}
