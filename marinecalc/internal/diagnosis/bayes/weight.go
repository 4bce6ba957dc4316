// Evidence for and against a cause, and answers that nothing explains.

package bayes

import (
	"math"
	"slices"
)

// mostHolding is how many sets with a cause weigh the answers for it: what
// lies beyond moves a weight by hundredths of a deciban.
const mostHolding = 300

// Weight gives what one answer says for cause c, in decibans: 10·log10 of how
// many times more probable the answer is with c at work than without it, what
// else is at work staying as it is. Plus is evidence for the cause, minus against
// it; 0 is "don't know", and what another cause explains anyway.
//
// Source: Good, Probability and the Weighing of Evidence (1950), weight of
// evidence and deciban; from memory.
func (b *Belief) Weight(c, q int, a Answer) float64 {
	if a == Unknown {
		return 0
	}
	var with, without float64
	take := func(s Set) {
		yes, yesWithout := b.said(s, q), b.saidWithout(s, q, c)
		if a == No {
			yes, yesWithout = 1-yes, 1-yesWithout
		}
		with, without = with+s.Probability*yes, without+s.Probability*yesWithout
	}
	if slices.Contains(b.taken, c) {
		for _, s := range b.Sets[:min(len(b.Sets), mostHolding)] {
			take(s)
		}
	}
	for _, i := range b.holding[c] {
		take(b.Sets[i])
	}
	if with == 0 || without == 0 {
		return 0 // so improbable that no set with it was kept
	}
	return 10 * math.Log10(with/without)
}

// Surprise is how many standard deviations −ln P(answers | set) lies over what
// the set leads to expect, under the set in play where that is least, and the
// two answers that are least probable under the most probable set; first is −1
// without answers, second with one only.
//
// By Cantelli's inequality it is over k in at most 1/(1+k²) of the cases.
func (b *Belief) Surprise() (deviations float64, first, second int) {
	deviations, first, second = math.Inf(1), -1, -1
	for _, s := range b.living() {
		deviations = min(deviations, b.excess(s))
	}
	least, lesser := math.Inf(1), math.Inf(1)
	for q, a := range b.Answers {
		if a == Unknown || len(b.Sets) == 0 {
			continue
		}
		p := b.said(b.Sets[0], q)
		if a == No {
			p = 1 - p
		}
		switch {
		case p < least:
			least, lesser, first, second = p, least, q, first
		case p < lesser:
			lesser, second = p, q
		}
	}
	return deviations, first, second
}

// excess is how many standard deviations the surprise of the answers under a
// set lies over its mean. Without answers it is 0.
func (b *Belief) excess(s Set) float64 {
	over, variance := 0.0, 0.0
	for q, a := range b.Answers {
		if a == Unknown || b.Model.Settles[q] >= 0 && a == Yes {
			continue
		}
		p := b.said(s, q)
		yes, no := -math.Log(p), -math.Log(1-p)
		got := yes
		if a == No {
			got = no
		}
		over += got - (p*yes + (1-p)*no)
		variance += p * (1 - p) * (yes - no) * (yes - no)
	}
	if variance == 0 {
		return 0
	}
	return over / math.Sqrt(variance)
}
