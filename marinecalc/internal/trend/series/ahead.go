// When the limit is reached.

package series

import (
	"iter"
	"math"
	"slices"
)

// deviation is how far the newest reading is off the line of those before it,
// over half the width of their band: without limit where that has no width.
func deviation(x, y []float64, accuracy float64) float64 {
	last := len(x) - 1
	if last < Fewest || slices.Max(x[:last]) == slices.Min(x[:last]) {
		return math.NaN()
	}
	before := Lay(x[:last], y[:last], accuracy)
	off, half := math.Abs(y[last]-before.At(x[last])), before.Half(x[last])
	switch {
	case math.IsInf(half, 1):
		return math.NaN()
	case off <= 1e-12*math.Abs(y[last]):
		return 0
	}
	return off / half
}

// surelyBent is the chance from which on the pace is said to grow.
const surelyBent = 0.95

// ahead finds when the limit is reached.
func (t *Trend) ahead(in *Series) {
	nan := math.NaN()
	t.Days, t.Hours = Ahead{nan, nan, nan}, Ahead{nan, nan, nan}
	t.SteadyDays, t.SureDays, t.NotReached = nan, nan, nan
	enough := len(t.Run) >= FewestAhead
	t.Quickens = enough && t.bent.bending(in.Rising) > surelyBent
	if math.IsNaN(in.Limit) {
		t.Outlook = NoLimit
		return
	}
	t.NotReached = t.newestShort(in)
	if t.reached(in) {
		t.Outlook = Reached
		t.Days, t.Hours, t.SteadyDays, t.SureDays = Ahead{}, Ahead{}, 0, 0
		return
	}
	if !enough {
		t.Outlook = TooFew
		if len(t.Run) >= Fewest { // no less than the range of the next reading says
			t.NotReached = min(t.NotReached, t.Fit.short(in.Limit, t.Place, in.Rising))
		}
		return
	}
	t.NotReached = min(t.NotReached, t.shortAt(in, t.Place))
	at, earliest, latest := t.Fit.Reaches(in.Limit, t.Place, in.Rising)
	own := Ahead{at - t.Place, earliest - t.Place, latest - t.Place}
	steady, sure := own.Expected, min(own.Earliest, t.bent.until(in.Limit, t.Place, 0.975, in.Rising)-t.Place)
	if t.Quickens {
		own = Ahead{t.bent.until(in.Limit, t.Place, 0.5, in.Rising) - t.Place, sure, t.bent.until(in.Limit, t.Place, 0.025, in.Rising) - t.Place}
	}
	if t.Deviation > 1 && !t.Quickens {
		sure = nan
	}
	switch {
	case own.Expected <= 0:
		t.Outlook = Passed
	case math.IsInf(own.Expected, 1):
		t.Outlook = Away
	default:
		t.Outlook = Toward
	}
	inDays, inHours := 1.0, t.HoursPerDay
	if t.ByHours {
		inDays, inHours = 1/t.HoursPerDay, 1
	}
	if inDays > 0 && !math.IsInf(inDays, 1) {
		t.Days, t.SteadyDays, t.SureDays = own.times(inDays), steady*inDays, sure*inDays
	}
	if inHours > 0 {
		t.Hours = own.times(inHours)
	}
}

// rooms yields by how much the readings of the newest day are short of the limit.
func (t *Trend) rooms(in *Series) iter.Seq[float64] {
	newest := in.Points[t.Run[len(t.Run)-1]].Day
	return func(yield func(float64) bool) {
		for _, place := range t.Run {
			p := &in.Points[place]
			if p.Day != newest {
				continue
			}
			room := in.Limit - (p.Value - p.Over)
			if !in.Rising {
				room = -room
			}
			if math.Abs(room) <= 1e-9*math.Abs(in.Limit) {
				room = 0
			}
			if !yield(room) {
				return
			}
		}
	}
}

// reached tells whether a reading of the newest day stands at the limit or over it.
func (t *Trend) reached(in *Series) bool {
	for room := range t.rooms(in) {
		if room <= 0 {
			return true
		}
	}
	return false
}

// newestShort is the chance that the reading of the newest day is short of the
// limit, by its gauge alone: a half where it stands at the limit. Of a count that
// has reached it, it is that of the rate behind the count.
func (t *Trend) newestShort(in *Series) float64 {
	chance := 1.0
	for room := range t.rooms(in) {
		switch {
		case room <= 0 && in.Counted > 0:
			read := in.Limit - room
			if !in.Rising {
				read = in.Limit + room
			}
			below := in.CountBelow(max(0, read), in.Counted, in.Limit)
			if !in.Rising {
				below = 1 - below
			}
			chance = min(chance, below)
		case room == 0:
			chance = min(chance, 0.5)
		case room < -in.Accuracy:
			return 0
		case room < in.Accuracy:
			chance = min(chance, 0.5+room/(2*in.Accuracy))
		}
	}
	return chance
}

// shortAt is the chance that a reading at a place of the axis falls short of
// the limit, by the straight line and by the bent ones: the lesser. Where the
// newest reading has left the band of the others neither is to be believed.
func (t *Trend) shortAt(in *Series, x float64) float64 {
	chance := min(t.Fit.short(in.Limit, x, in.Rising), t.bent.short(in.Limit, x, in.Rising))
	if t.Deviation > 1 {
		chance = min(chance, 0.5)
	}
	return chance
}

// At is where the readings lead at a place of the axis, and between what
// levels one more reading lies there in 95 of 100 cases.
func (t *Trend) At(x float64) (low, middle, high float64) {
	if t.Quickens {
		return t.bent.level(0.025, x), t.bent.level(0.5, x), t.bent.level(0.975, x)
	}
	at, half := t.Fit.At(x), t.Fit.Half(x)
	return at - half, at, at + half
}

// Lasts is the chance, 0 to 1, that a reading taken now and one taken so many
// days from now both fall short of the limit: the lesser of their two chances,
// by the straight line or the bent ones, whichever is the less. It is NaN
// without a limit, with fewer than FewestAhead readings, and where days cannot
// be turned into engine hours. Where the newest reading has reached the limit it
// is no more than the chance that the gauge leaves.
func (t *Trend) Lasts(in *Series, days float64) float64 {
	if t.ByHours {
		days *= t.HoursPerDay
	}
	switch {
	case t.Outlook == Reached && (math.IsNaN(days) || len(t.Run) < FewestAhead):
		return t.NotReached
	case t.Outlook == Reached:
		return min(t.NotReached, t.shortAt(in, t.Place), t.shortAt(in, t.Place+days))
	case math.IsNaN(days) || math.IsNaN(in.Limit) || t.Outlook == TooFew:
		return math.NaN()
	}
	return min(t.shortAt(in, t.Place), t.shortAt(in, t.Place+days))
}

func (a Ahead) times(by float64) Ahead { return Ahead{a.Expected * by, a.Earliest * by, a.Latest * by} }
