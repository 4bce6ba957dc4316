// Verdicts on a range and a limit (JCGM 106).

package spread

import (
	"math"
	"slices"

	"example.org/driveline/marinecalc/sheet"
)

// The probabilities of meeting the limit from which on, and up to which, a
// judgement is given: those that go with a 95 % interval wholly on one side of
// the limit, so that no word denies the interval beside it.
const (
	Sure = 0.975
	Lost = 0.025
)

// DefaultNear is the part of a limit beyond which a result counts as near it.
// Common practice, no source.
const DefaultNear = 0.9

// Limit is what a result must not go above, not go below, or both, in the
// unit of the result. NaN = no such limit.
type Limit struct {
	Max, Min float64
	Near     float64 // above 0, at most 1; anything else means DefaultNear
	Zero     float64 // what shares are counted from, of a quantity whose own zero is arbitrary: for temperatures that of the sea
	Scale    float64 // what there is on the right side of a limit of zero, such as a part when new; above 0, anything else is not known
}

// AtMost is the limit that a value must not go above.
func AtMost(max float64) Limit { return Limit{Max: max, Min: math.NaN()} }

// AtLeast is the limit that a value must not go below.
func AtLeast(min float64) Limit { return Limit{Max: math.NaN(), Min: min} }

// Judgement is how a result stands to a limit.
type Judgement struct {
	Word        sheet.Word
	Probability float64 // that the true value meets the limit, 0 … 1; NaN when it cannot be said
}

// Judge says how a result stands to a limit, by the probability that its true
// value meets the limit (conformance probability, JCGM 106:2012, clause 7):
// 0.975 and more is within, 0.025 and less is beyond, between them one cannot
// tell. The probability is the part of the trials that meet the limit. Without
// a range (r nil) it is 1 or 0, as the estimate meets it or not. Trials that
// failed are left out, unless counting them in, at the edge of where the model
// applies, makes it less sure.
// Beyond must hold too with the trials moved so that the estimate is their
// median: those of a size lie above what was read, the further the coarser the
// gauge, which tells nothing of the true size.
//
// Within becomes near the limit when the estimate uses more than the part
// Near of it: above Near·Max, or below Min/Near. For a limit below zero the
// mirror image holds (above Max/Near, below Near·Min); a limit of zero is near
// where less than 1-Near of its Scale is left, and never without one. With both Max and Min: when the distance from the middle is more than
// Near of half the distance between them.
//
// Rounding rule: a value beyond a bound by no more than 1e-9 of the bound, or
// of the standard deviation if that is larger, counts as meeting it, so that a
// value calculated to lie on the bound is judged alike on every platform.
//
// An estimate that meets the limit itself is never beyond: a size read as
// nothing with a coarse gauge lies above its limit in nearly all trials, since
// none lies below nothing, and yet nothing was found. There one cannot tell.
//
// When the range is not usable, the estimate is not finite, or the limit has
// neither Max nor Min, one cannot tell, with a probability of NaN.
func Judge(estimate float64, r *Range, l Limit) Judgement {
	p := l.probability(estimate, r)
	least, most := p, p
	if r != nil && !math.IsNaN(p) {
		low, high, _ := l.bounds()
		least, most = r.surelyBetween(low, high)
	}
	word := sheet.CannotTell
	switch {
	case least >= Sure && l.isNear(estimate):
		word = sheet.NearLimit
	case least >= Sure:
		word = sheet.Within
	case most <= Lost && l.probability(estimate, nil) == 0 && l.centred(estimate, r) <= Lost:
		word = sheet.Beyond
	}
	if p > 0.5 {
		p = least
	} else if p <= 0.5 {
		p = most
	}
	return Judgement{Word: word, Probability: p}
}

// AmplyMet tells whether a limit is met so far off that more trials would make no
// other word of it: not even half as far out again as the farthest of them, from
// their mean, lies any past it, nor with them moved as far as the estimate. Were
// one in forty past it, which is what words ask, not one of 256 came two thirds of
// the way there.
func AmplyMet(estimate float64, r *Range, l Limit) bool {
	low, high := estimate, estimate
	if r != nil {
		if !r.Usable || len(r.edge) > 0 || r.lost > 0 {
			return false
		}
		low = r.Mean - 1.5*(r.Mean-slices.Min(r.trials)) - max(r.Mean-estimate, 0)
		high = r.Mean + 1.5*(slices.Max(r.trials)-r.Mean) + max(estimate-r.Mean, 0)
	}
	least, most, _ := l.bounds()
	return least <= low && high <= most
}

// MostLost is the probability up to which a limit is beyond that is within from
// least on: as far from nothing as that is from one, and what the subtraction loses.
func MostLost(least float64) float64 { return 1 - least + 1e-12 }

// JudgeChance judges by a probability of meeting a limit that was found without
// trials: least, above a half, and more is within, 1 − least and less beyond.
// NaN: one cannot tell.
func JudgeChance(p, least float64) Judgement {
	switch {
	case p >= least:
		return Judgement{sheet.Within, p}
	case p <= MostLost(least):
		return Judgement{sheet.Beyond, p}
	}
	return Judgement{sheet.CannotTell, p}
}

// bounds gives Min and Max with infinity for none; ok is false with neither.
func (l Limit) bounds() (low, high float64, ok bool) {
	low, high = l.Min, l.Max
	if math.IsNaN(low) {
		low = math.Inf(-1)
	}
	if math.IsNaN(high) {
		high = math.Inf(1)
	}
	return low, high, !math.IsInf(low, -1) || !math.IsInf(high, 1)
}

// probability of meeting the limit.
func (l Limit) probability(estimate float64, r *Range) float64 {
	low, high, ok := l.bounds()
	switch {
	case !ok || !finite(estimate):
		return math.NaN()
	case r != nil:
		return r.probabilityBetween(low, high)
	case estimate > high && estimate-high > slack(high, 0), estimate < low && low-estimate > slack(low, 0):
		return 0
	}
	return 1
}

// centred is the probability of meeting the limit with the trials moved so that
// the estimate is their median.
func (l Limit) centred(estimate float64, r *Range) float64 {
	if r == nil {
		return 0
	}
	v := slices.Clone(r.trials)
	off := orderStatistic(v, len(v)/2) - estimate
	low, high, _ := l.bounds()
	return r.probabilityBetween(low+off, high+off)
}

// At tells whether a value stands at the limit.
func (l Limit) At(v float64) bool {
	return math.Abs(v-l.Max) <= slack(l.Max, 0) || math.Abs(v-l.Min) <= slack(l.Min, 0)
}

// isNear says whether little of the limit is left for the estimate.
func (l Limit) isNear(estimate float64) bool {
	near := l.Near
	if !(near > 0 && near <= 1) {
		near = DefaultNear
	}
	low, high, _ := l.bounds()
	low, high, estimate = low-l.Zero, high-l.Zero, estimate-l.Zero
	if !math.IsInf(low, 0) && !math.IsInf(high, 0) {
		middle, half := low+(high-low)/2, (high-low)/2
		bound := near * half
		return math.Abs(estimate-middle)-bound > slack(bound, max(math.Abs(low), math.Abs(high)))
	}
	switch {
	case (high == 0 || low == 0) && l.Scale > 0:
		return math.Abs(estimate) < (1-near)*l.Scale*(1-1e-9)
	case !math.IsInf(high, 0) && high != 0:
		bound := near * high
		if high < 0 {
			bound = high / near
		}
		return estimate-bound > slack(bound, 0)
	case !math.IsInf(low, 0) && low != 0:
		bound := low / near
		if low < 0 {
			bound = low * near
		}
		return bound-estimate > slack(bound, 0)
	}
	return false
}

// slack is how far past a bound a value still counts as on it.
func slack(bound, scale float64) float64 {
	return 1e-9 * max(math.Abs(bound), scale)
}
