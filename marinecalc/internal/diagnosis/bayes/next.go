// Which question to ask next.

package bayes

import (
	"cmp"
	"slices"
)

// Check is a question still open, and what asking it is expected to bring.
type Check struct {
	Question int
	Bits     float64 // of information on the cause
	Rate     float64 // bits for each minute of cost
}

// Next lists the open questions, the one with the most expected information
// for its cost first. cost[q] is in minutes, already raised for access and
// hazard; a cost of 0 or less means that the question cannot be asked now.
// Equals stay in the order of the questions.
func (m Model) Next(probability []float64, answers []Answer, cost []float64) []Check {
	var list []Check
	for q, minutes := range cost {
		if answers[q] != Unknown || minutes <= 0 {
			continue
		}
		b := m.Information(probability, q)
		list = append(list, Check{Question: q, Bits: b, Rate: b / minutes})
	}
	slices.SortStableFunc(list, func(a, b Check) int { return cmp.Compare(b.Rate, a.Rate) })
	return list
}

// Part finds the open question that is expected to tell most between causes c
// and d, and how much, in bits. It is −1 when none is open.
func (m Model) Part(probability []float64, answers []Answer, open []bool, c, d int) (question int, most float64) {
	question = -1
	for q, is := range open {
		if !is || answers[q] != Unknown {
			continue
		}
		if b := m.Parting(probability, c, d, q); question < 0 || b > most {
			question, most = q, b
		}
	}
	return question, most
}

// Rank lists the causes, the most probable first; equals stay in their order.
func Rank(probability []float64) []int {
	order := make([]int, len(probability))
	for c := range order {
		order[c] = c
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(probability[b], probability[a]) })
	return order
}
