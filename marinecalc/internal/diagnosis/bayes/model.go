// Package bayes ranks what can be wrong by what was seen. One cause is taken
// to be at work, and answers are taken to be independent of each other once
// the cause is known, so that each answer moves the odds between two causes
// by the ratio of its probabilities under them (Bayes). Causes and questions
// are numbered; their names and their probabilities are the caller's.
package bayes

import (
	"math"
	"strconv"

	"example.org/driveline/marinecalc/problem"
)

// Answer is what was said to a question. The zero value is "don't know".
type Answer int8

// The answers.
const (
	Unknown Answer = 0
	Yes     Answer = 1
	No      Answer = -1
)

// Model is what is known of causes and questions before any answer.
type Model struct {
	// Prior is how common each cause is beside the others: over 0, on any
	// scale.
	Prior []float64
	// Yes[c][q] is the probability of a yes to question q when c is the
	// cause, over 0 and under 1.
	Yes [][]float64
}

// Check refuses a model with nothing to choose from, a weight that is not
// over 0, or a probability that is not over 0 and under 1. The error is a
// *problem.Error whose places are "/prior/<cause>" and "/yes/<cause>/<question>".
func (m Model) Check() error {
	var list problem.List
	if len(m.Prior) == 0 || len(m.Yes) != len(m.Prior) {
		list.Add("/prior", "causes and their probabilities do not match", "one row of probabilities for each cause, one cause at least", "")
		return list.Err()
	}
	for c, w := range m.Prior {
		place := "/" + strconv.Itoa(c)
		if !(w > 0) || math.IsInf(w, 1) {
			list.Add("/prior"+place, "the prior weight is not over 0", "a number over 0", "")
		}
		if len(m.Yes[c]) != len(m.Yes[0]) {
			list.Add("/yes"+place, "a probability is missing", "one for each question", "")
		}
		for q, p := range m.Yes[c] {
			if !(p > 0 && p < 1) {
				list.Add("/yes"+place+"/"+strconv.Itoa(q), "the probability is not between 0 and 1", "over 0 and under 1", "nothing is quite sure: write 0.01 or 0.99")
			}
		}
	}
	return list.Err()
}

// likelihood is the probability of the answer to question q under cause c;
// 1 for "don't know".
func (m Model) likelihood(c, q int, a Answer) float64 {
	switch a {
	case Yes:
		return m.Yes[c][q]
	case No:
		return 1 - m.Yes[c][q]
	}
	return 1
}

// Posterior gives the probability of each cause after the answers, answers[q]
// to question q; they sum to 1. It is worked out on logarithms, so that many
// answers do not run out of digits.
//
// Bayes' theorem for one of several causes: P(c|a) ∝ P(c)·Π P(a_q|c).
func (m Model) Posterior(answers []Answer) []float64 {
	p := m.logJoint(answers)
	total := logSum(p)
	for c := range p {
		p[c] = math.Exp(p[c] - total)
	}
	return p
}

// logJoint is ln P(c and the answers), for each cause.
func (m Model) logJoint(answers []Answer) []float64 {
	sum := 0.0
	for _, w := range m.Prior {
		sum += w
	}
	joint := make([]float64, len(m.Prior))
	for c, w := range m.Prior {
		l := math.Log(w / sum)
		for q, a := range answers {
			if a != Unknown {
				l += math.Log(m.likelihood(c, q, a))
			}
		}
		joint[c] = l
	}
	return joint
}

// logSum is ln Σ exp(l), without overflow.
func logSum(l []float64) float64 {
	most := math.Inf(-1)
	for _, v := range l {
		most = max(most, v)
	}
	sum := 0.0
	for _, v := range l {
		sum += math.Exp(v - most)
	}
	return most + math.Log(sum)
}

// Odds turns a probability into odds, p/(1−p).
func Odds(p float64) float64 { return p / (1 - p) }
