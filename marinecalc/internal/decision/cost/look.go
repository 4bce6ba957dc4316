// Look first, or just do it: what a look is worth before an act.

package cost

import (
	"math"

	"example.org/driveline/marinecalc/quantity"
)

// Prospect is an act that can be chosen before it is known how things stand,
// and a look that tells something of that.
type Prospect struct {
	Chance []float64   // of each state
	Cost   [][]float64 // by act, by state
	Says   [][]float64 // by what the look can say, by state: the probability that it does
}

// Look gives the expected cost of the best act as things are known now, which
// that is, and the expected cost when each answer of the look is followed by
// what is then best. Their difference is the expected value of sample
// information: a look that costs less than that is worth it (Raiffa, Decision
// Analysis, 1968; Howard, Information value theory, IEEE Transactions on
// Systems Science and Cybernetics 2, 1966).
func (p *Prospect) Look() (now float64, act int, after float64) {
	now, act = p.best(p.Chance)
	for _, says := range p.Says {
		var few [8]float64
		joint := few[:0] // of this answer and each state
		for i, chance := range p.Chance {
			joint = append(joint, chance*says[i])
		}
		least, _ := p.best(joint)
		after += least
	}
	return now, act, after
}

// best is the act that costs least under these weights, and what it costs.
func (p *Prospect) best(weight []float64) (least float64, act int) {
	least = math.Inf(1)
	for a, costs := range p.Cost {
		sum := 0.0
		for i, w := range weight {
			sum += w * costs[i]
		}
		if sum < least {
			least, act = sum, a
		}
	}
	return least, act
}

// The codes of LookFirst, for which the schema of repair-or-replace has the words.
const (
	LookFirst = "look-first"
	JustDoIt  = "just-do-it"
	NotYet    = "not-yet"
	Known     = "found"
)

// look weighs a look at the cause before the cheaper of the two jobs. Done
// while the cause is not at work, the job was for nothing; left undone while
// it is, it costs one failure. What is done in either case cancels.
func (in *Input) look(out *Result) {
	out.LookWorth, out.LookCosts, out.ActNowCosts, out.LookFirstCosts = none, none, none, none
	p, loss := chance(in.CauseAtWork), float64(out.FailureLoss)
	if p == 0 || loss == 0 {
		return
	}
	if p == 1 {
		out.LookFirst = Known
		return
	}
	if in.LookTime == 0 {
		return
	}
	job := min(float64(out.RepairFirstCost), float64(out.ReplaceFirstCost))
	misses, mistakes := chance(in.LookMisses), chance(in.LookMistakes)
	now, act, after := (&Prospect{
		Chance: []float64{p, 1 - p}, // at work, not
		Cost:   [][]float64{{0, job}, {loss, 0}},
		Says:   [][]float64{{1 - misses, mistakes}, {misses, 1 - mistakes}},
	}).Look()
	anHour := float64(in.OwnHourValue)
	if anHour == 0 {
		anHour = float64(in.YardHourCost)
	}
	costs := anHour * float64(in.LookTime) / hour
	out.ActNowCosts, out.LookFirstCosts = quantity.Money(now), quantity.Money(after+costs)
	out.LookWorth, out.LookCosts = quantity.Money(max(now-after, 0)), quantity.Money(costs)
	switch {
	case now-after > costs:
		out.LookFirst = LookFirst
	case act == 0:
		out.LookFirst = JustDoIt
	default:
		out.LookFirst = NotYet
	}
}

var none = quantity.Money(math.NaN())
