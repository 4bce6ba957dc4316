// Package bayes ranks what can be wrong by what was seen. Several causes may
// be at work at once: each arises by itself or is brought on by another, and
// each makes its signs on its own (noisy-or), beside a leak that stands for
// everything else. Answers are wrong at a rate of their own. Causes and
// questions are numbered; their names and probabilities are the caller's.
//
// Source: Pearl, Probabilistic Reasoning in Intelligent Systems (1988),
// noisy-or; Henrion, Some practical issues in constructing belief networks
// (1989), leak; from memory.
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
	// Arises is the probability that cause c is at work by itself.
	Arises []float64
	// Brings[c][d] is the probability that cause c, at work, has brought on d.
	Brings [][]float64
	// Yes[c][q] is the probability of a true yes to question q when c alone
	// is at work.
	Yes [][]float64
	// Leak[q] is the same when no cause that bears on q is at work.
	Leak []float64
	// Absence[q]: a yes says that something is not there, so that with several
	// causes at work it is their noes that add up.
	Absence []bool
	// Settles[q] is the cause that a yes to q shows to be there, −1 for none.
	// No other cause makes such a yes.
	Settles []int
	// Wrong[q] is the probability that the answer is not the true one.
	Wrong []float64
	// Trust is the probability from which a cause that a look showed to be
	// there is taken to be at work; 0 takes each at its look's word.
	Trust float64
}

// Check refuses a model with nothing to choose from, or a probability out of
// its range. The error is a *problem.Error whose places are "/arises/<cause>",
// "/brings/<cause>/<cause>", "/yes/<cause>/<question>" and "/wrong/<question>".
func (m *Model) Check() error {
	var list problem.List
	n := len(m.Arises)
	if n == 0 || len(m.Yes) != n || len(m.Brings) != n {
		list.Add("/arises", "causes and their probabilities do not match", "one row of probabilities for each cause, one cause at least", "")
		return list.Err()
	}
	inside := func(p float64) bool { return p > 0 && p < 1 }
	for c, b := range m.Arises {
		place := "/" + strconv.Itoa(c)
		if !inside(b) {
			list.Add("/arises"+place, "the probability is not between 0 and 1", "over 0 and under 1", "")
		}
		if len(m.Yes[c]) != len(m.Leak) || len(m.Brings[c]) != n {
			list.Add("/yes"+place, "a probability is missing", "one for each question and cause", "")
			continue
		}
		for q, p := range m.Yes[c] {
			if !inside(p) {
				list.Add("/yes"+place+"/"+strconv.Itoa(q), "the probability is not between 0 and 1", "over 0 and under 1", "nothing is quite sure: write 0.01 or 0.99")
			}
		}
		for d, l := range m.Brings[c] {
			if !(l >= 0 && l < 1) {
				list.Add("/brings"+place+"/"+strconv.Itoa(d), "the probability is not between 0 and 1", "0 or more and under 1", "")
			}
		}
	}
	for q, w := range m.Wrong {
		if !(w > 0 && w < 0.5) {
			list.Add("/wrong/"+strconv.Itoa(q), "the share of wrong answers is not between 0 and a half", "over 0 and under 0.5", "")
		}
	}
	return list.Err()
}

// leak is the probability that what q asks after is there though no cause
// makes it; with Absence that it is there means a no.
func (m *Model) leak(q int) float64 {
	switch {
	case m.Settles[q] >= 0:
		return 0
	case m.Absence[q]:
		return 1 - m.Leak[q]
	}
	return m.Leak[q]
}

// effect is what cause c does to question q: spares is the probability that c
// does not make the sign, low the leak while c is at work.
//
// A cause under which the sign is rarer than the leak makes none; it says that
// the leak is smaller, and with several causes the smallest counts.
func (m *Model) effect(c, q int) (spares, low float64) {
	leak := m.leak(q)
	if s := m.Settles[q]; s >= 0 {
		if s == c {
			return 1 - m.Yes[c][q], leak
		}
		return 1, leak
	}
	there := m.Yes[c][q]
	if m.Absence[q] {
		there = 1 - there
	}
	if there >= leak {
		return (1 - there) / (1 - leak), leak
	}
	return 1, there
}

// Shown is the probability of a true yes to question q while exactly these
// causes are at work: 1 − (1 − leak)·Π (1 − s), noisy-or with a leak.
func (m *Model) Shown(causes []int, q int) float64 {
	spares, low := 1.0, m.leak(q)
	for _, c := range causes {
		s, l := m.effect(c, q)
		spares, low = spares*s, min(low, l)
	}
	there := 1 - (1-low)*spares
	if m.Absence[q] {
		return 1 - there
	}
	return there
}

// answered turns the probability of a true yes into that of the answer.
func (m *Model) answered(yes float64, q int, a Answer) float64 {
	said := m.Wrong[q] + (1-2*m.Wrong[q])*yes
	if a == No {
		return 1 - said
	}
	return said
}

// Found lists the causes whose settling question is answered with yes.
func (m *Model) Found(answers []Answer) []int {
	var found []int
	for q, a := range answers {
		if c := m.Settles[q]; c >= 0 && a == Yes {
			found = append(found, c)
		}
	}
	return found
}

// entropyOf is the entropy of a yes-or-no with that probability, in bits.
func entropyOf(p float64) float64 {
	if !(p > 0 && p < 1) {
		return 0
	}
	return -(p*math.Log2(p) + (1-p)*math.Log2(1-p))
}
