// How much an answer would tell, and which question to ask next.
//
// Source: Lindley, On a measure of the information provided by an experiment
// (1956); entropy after Shannon (1948); from memory.

package bayes

import (
	"math"
	"slices"
	"sort"
)

// Check is a question still open, and what asking it is expected to bring.
type Check struct {
	Question int
	Bits     float64 // of information on what is at work
	Rate     float64 // bits for each minute of cost
}

// alive is how much of all that is probable the sets before it hold, mostAlive
// how many they are: what lies beyond changes no order.
const (
	alive     = 0.995
	mostAlive = 600
)

// living are the sets worth asking about.
func (b *Belief) living() []Set {
	sum := 0.0
	for i, s := range b.Sets {
		if sum += s.Probability; sum >= alive || i+1 >= mostAlive {
			return b.Sets[:i+1]
		}
	}
	return b.Sets
}

// said is the probability of an answer of yes under a set.
func (b *Belief) said(s Set, q int) float64 {
	return b.saidBy(b.beside[q].with(b.effects[q], s.Causes, -1), q)
}

// saidWithout is the same with one cause less.
func (b *Belief) saidWithout(s Set, q, less int) float64 {
	row := b.effects[q]
	return b.saidBy(effect{1, b.Model.leak(q)}.with(row, b.taken, less).with(row, s.Causes, less), q)
}

// saidBy is the probability of an answer of yes under all that causes do.
func (b *Belief) saidBy(all effect, q int) float64 {
	there := 1 - (1-all.low)*all.spares
	if b.Model.Absence[q] {
		there = 1 - there
	}
	return b.Model.answered(there, q, Yes)
}

// Information is what the answer to question q is expected to tell of which of
// these causes are at work, in bits: H(answer) − Σ P(which)·H(answer | which),
// which is their entropy now less its mean after the answer.
func (b *Belief) Information(q int, of []int) float64 {
	return b.about(of).information(func(s Set) float64 { return b.said(s, q) })
}

// groups are the living sets, by which of some causes are in them.
type groups struct {
	sets  []Set
	group []int // of each set
	count int
}

func (b *Belief) about(of []int) groups {
	g := groups{sets: b.living()}
	number := map[string]int{}
	for _, s := range g.sets {
		var key []byte
		for _, c := range s.Causes {
			if slices.Contains(of, c) {
				key = append(key, byte(c), byte(c>>8))
			}
		}
		n, ok := number[string(key)]
		if !ok {
			n = len(number)
			number[string(key)] = n
		}
		g.group = append(g.group, n)
	}
	g.count = len(number)
	return g
}

func (g groups) information(said func(Set) float64) float64 {
	weight, yes := make([]float64, g.count), make([]float64, g.count)
	total, all, within := 0.0, 0.0, 0.0
	for i, s := range g.sets {
		p := s.Probability * said(s)
		weight[g.group[i]] += s.Probability
		yes[g.group[i]] += p
		total, all = total+s.Probability, all+p
	}
	for i, w := range weight {
		within += w / total * entropyOf(yes[i]/w)
	}
	return max(0, entropyOf(all/total)-within)
}

// After gives the probability of each cause after an answer to question q, and
// of that answer. A look that settles a cause is taken at its rate of wrong
// answers here.
func (b *Belief) After(q int, a Answer) (cause []float64, answer float64) {
	cause = make([]float64, len(b.Cause))
	total := 0.0
	for _, s := range b.living() {
		p := b.said(s, q)
		if a == No {
			p = 1 - p
		}
		p *= s.Probability
		total, answer = total+s.Probability, answer+p
		for _, c := range s.Causes {
			cause[c] += p
		}
	}
	for c := range cause {
		cause[c] /= answer
	}
	for _, c := range b.Found {
		cause[c] = 1
	}
	return cause, answer / total
}

// Next lists the open questions, the one that is expected to tell most of
// these causes for its cost first. cost[q] is in minutes; a cost of 0 or less means that
// the question cannot be asked now. Equals stay in the order of the questions.
func (b *Belief) Next(cost []float64, of []int) []Check {
	var list []Check
	about := b.about(of)
	for q, minutes := range cost {
		if b.Answers[q] != Unknown || minutes <= 0 {
			continue
		}
		bits := about.information(func(s Set) float64 { return b.said(s, q) })
		list = append(list, Check{Question: q, Bits: bits, Rate: bits / minutes})
	}
	sort.SliceStable(list, func(x, y int) bool { return list[y].Rate < list[x].Rate })
	return list
}

// Apart gives how probable it is that c is at work without d, d without c, and
// both.
func (b *Belief) Apart(c, d int) (onlyC, onlyD, both float64) {
	for _, s := range b.Sets {
		switch hasC, hasD := slices.Contains(s.Causes, c), slices.Contains(s.Causes, d); {
		case hasC && hasD:
			both += s.Probability
		case hasC:
			onlyC += s.Probability
		case hasD:
			onlyD += s.Probability
		}
	}
	return onlyC, onlyD, both
}

// Parting is what the answer to question q is expected to tell, in bits,
// between the sets with c and without d and those with d and without c.
func (b *Belief) Parting(c, d, q int) float64 { return b.parting(b.either(c, d), q) }

// either are the sets with c and without d, and those with d and without c.
func (b *Belief) either(c, d int) (sides [2][]Set) {
	for _, s := range b.living() {
		switch hasC, hasD := slices.Contains(s.Causes, c), slices.Contains(s.Causes, d); {
		case hasC && !hasD:
			sides[0] = append(sides[0], s)
		case hasD && !hasC:
			sides[1] = append(sides[1], s)
		}
	}
	return sides
}

func (b *Belief) parting(sides [2][]Set, q int) float64 {
	var weight, yes [2]float64
	for i, side := range sides {
		for _, s := range side {
			weight[i] += s.Probability
			yes[i] += s.Probability * b.said(s, q)
		}
	}
	total := weight[0] + weight[1]
	if !(weight[0] > 0 && weight[1] > 0) {
		return 0
	}
	within := (weight[0]*entropyOf(yes[0]/weight[0]) + weight[1]*entropyOf(yes[1]/weight[1])) / total
	return max(0, entropyOf((yes[0]+yes[1])/total)-within)
}

// Part finds the open question that is expected to tell most between causes c
// and d, and how much, in bits. It is −1 when none is open.
func (b *Belief) Part(open []bool, c, d int) (question int, most float64) {
	question = -1
	sides := b.either(c, d)
	for q, is := range open {
		if !is || b.Answers[q] != Unknown {
			continue
		}
		if bits := b.parting(sides, q); question < 0 || bits > most {
			question, most = q, bits
		}
	}
	return question, most
}

// Doubt is the entropy of what may be at work, in bits.
func (b *Belief) Doubt() float64 {
	sum := 0.0
	for _, s := range b.Sets {
		sum -= s.Probability * math.Log2(s.Probability)
	}
	return max(0, sum)
}
