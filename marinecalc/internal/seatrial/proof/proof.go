// Package proof holds the readings of a sea trial against what they may be:
// limits, guides and the boat's own baseline. It knows no documents.
package proof

import "math"

// Word says how a reading, or the whole trial, came out.
type Word string

// What a reading can come to. Noted is read with nothing to hold it against.
const (
	Pass      Word = "pass"
	Fail      Word = "fail"
	LookAgain Word = "look-again"
	NotRead   Word = "not-read"
	Noted     Word = "noted"
)

// Reading is a value with its standard uncertainty, both in one unit. A value
// of NaN was not read. Counted is a rate of events that were counted.
type Reading struct {
	Value, Uncertainty float64
	Counted            bool
}

// Above is how far a reading lies above another.
func (r Reading) Above(other Reading) Reading {
	return Reading{Value: r.Value - other.Value, Uncertainty: math.Hypot(r.Uncertainty, other.Uncertainty)}
}

// coverage times the standard uncertainty is half the 95 % interval of a
// normal distribution (JCGM 100:2008, G.1.3).
const coverage = 1.959964

// Interval is the 95 % interval of a reading. Of a count of n it is that of a
// gamma distribution of shape n+1/2, whose variance is n+1/2 events squared, by
// its cube root (Abramowitz and Stegun, Handbook of Mathematical Functions,
// 26.4.17).
func (r Reading) Interval() (low, high float64) {
	if one := math.Sqrt(r.Value*r.Value+2*r.Uncertainty*r.Uncertainty) - r.Value; r.Counted && one > 0 {
		shape := r.Value/one + 0.5
		at := func(z float64) float64 {
			root := max(0, 1-1/(9*shape)+z/(3*math.Sqrt(shape)))
			return one * shape * root * root * root
		}
		return min(at(-coverage), r.Value), at(coverage)
	}
	return r.Value - coverage*r.Uncertainty, r.Value + coverage*r.Uncertainty
}

// Bound is one thing that a reading is held against. The side that does not
// bind is NaN. What is over a guide is looked at again and has not failed,
// unless it is surely more than twice the most (common practice, no source);
// Own, the boat's own baseline, never fails a reading.
type Bound struct {
	Most, Fewest float64
	Guide, Own   bool
}

// Broken tells whether a value by itself is past the bound.
func (b Bound) Broken(value float64) bool { return value > b.Most || value < b.Fewest }

// Hold holds a reading against a bound: it passes, or fails, where its whole
// 95 % interval lies on one side. In between, and past a guide, it is to be
// looked at again; doubt says that it is the gauge that cannot tell.
func (b Bound) Hold(r Reading) (word Word, doubt bool) {
	if math.IsNaN(r.Value) {
		return NotRead, false
	}
	low, high := r.Interval()
	slack := 1e-9 * (math.Abs(b.Most) + math.Abs(r.Value)) // what is met to the last digit is met
	in, out := high <= b.Most+slack, low > b.Most+slack
	if math.IsNaN(b.Most) {
		slack = 1e-9 * (math.Abs(b.Fewest) + math.Abs(r.Value))
		in, out = low >= b.Fewest-slack, high < b.Fewest-slack
	}
	switch {
	case in:
		return Pass, false
	case out && !b.Guide, !b.Own && b.Most > 0 && low > 2*b.Most:
		return Fail, false
	}
	return LookAgain, !out
}

// gravity orders the words by what outweighs what on one reading or trial.
var gravity = map[Word]int{Fail: 5, LookAgain: 4, NotRead: 3, Pass: 2, Noted: 1}

// Worse is the graver of two words.
func Worse(a, b Word) Word {
	if gravity[b] > gravity[a] {
		return b
	}
	return a
}

// Steady tells whether two readings of one place agree: their difference is no
// more than allowed. NaN, not read, is not steady.
func Steady(now, before, allowed float64) bool {
	return math.Abs(now-before) <= allowed*(1+1e-9)
}

// Count is how many readings came to each word.
type Count struct{ Passed, Failed, Again, NotRead, Noted int }

// Add counts a word.
func (c *Count) Add(w Word) {
	switch w {
	case Pass:
		c.Passed++
	case Fail:
		c.Failed++
	case LookAgain:
		c.Again++
	case NotRead:
		c.NotRead++
	case Noted:
		c.Noted++
	}
}

// Whole is how the trial came out: one failure fails it, and it has passed
// only when everything was read, nothing is left to look at again, and
// something was held against a bound.
func (c *Count) Whole() Word {
	switch {
	case c.Failed > 0:
		return Fail
	case c.Again > 0:
		return LookAgain
	case c.NotRead > 0 || c.Passed == 0:
		return NotRead
	}
	return Pass
}

// Speed is the engine speed that lies that share of the way from idle to
// rated.
func Speed(idle, rated, share float64) float64 { return idle + share*(rated-idle) }
