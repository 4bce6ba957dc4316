// What makes a trend one that is not to be trusted, and the other side of it.

package trend

import (
	"math"
	"slices"
	"strings"

	"example.org/driveline/marinecalc/internal/day"
	"example.org/driveline/marinecalc/internal/trend/series"
	"example.org/driveline/marinecalc/quantity"
)

// Why a trend is not looked ahead by. "" is a sound one.
const (
	wentBack    = "went-back"
	contradicts = "contradicts"
	jumped      = "jump"
	stopped     = "stopped"
)

// jumpsBy is how many times the largest step before it a step is that is no
// trend (common practice, no source).
const jumpsBy = 3

// doubt finds why the readings are not to be looked ahead by, the gravest first.
func (t *follower) doubt(reading string) string {
	f, newest := &t.found, &t.series.Points[t.newest()]
	if t.newestVoid != "" {
		t.why = t.newestVoid
		return voided
	}
	if from, to := t.backward(reading); from != nil {
		t.why = "Wear does not go back, and the readings do: " + t.show(from.Value-from.Over) + " on " + day.Text(from.Day) + ", " + t.show(to.Value-to.Over) + " on " + day.Text(to.Day) +
			". A renewal that was not entered, a bearing that swelled, or a slip. No trend is to be trusted: read again."
		return wentBack
	}
	if f.Deviation > 1 {
		switch {
		case !t.leapt() && f.Outlook != series.NoLimit && f.Outlook != series.Away:
			t.why = "The newest reading, " + t.show(newest.Value-newest.Over) + ", contradicts the others. It cannot be told: read again."
			return contradicts
		case t.steps():
			t.why = "A jump, no trend: to " + t.show(newest.Value-newest.Over) + " at once. Read again; if it stands, look for what broke or came loose."
			return jumped
		}
	}
	first := &t.series.Points[f.Run[0]]
	if silent := t.series.Today - newest.Day; silent > newest.Day-first.Day {
		t.why = "Nothing was read since " + day.Text(newest.Day) + ", longer than the readings go back: how it stands today is not known. Read it now."
		return stopped
	}
	return ""
}

// leapt tells whether the newest reading has left the band of the others toward the
// limit.
func (t *follower) leapt() bool {
	newest := &t.series.Points[t.newest()]
	if !(t.found.Deviation > 1) {
		return false
	}
	before := t.before()
	return t.worse(newest.Value, before.At(t.axis(newest))) > 0
}

// axis is the place of a point on the axis of the line.
func (t *follower) axis(p *series.Point) float64 {
	if t.found.ByHours {
		return p.Hours
	}
	return float64(p.Day) + p.Time
}

// before is the line of all readings but the newest.
func (t *follower) before() series.Fit {
	var x, y []float64
	for _, place := range t.found.Run[:len(t.found.Run)-1] {
		p := &t.series.Points[place]
		x, y = append(x, t.axis(p)), append(y, p.Value)
	}
	return series.Lay(x, y, t.series.Accuracy)
}

// steps tells whether the last step is so much larger than those before it that
// it is none of a trend.
func (t *follower) steps() bool {
	run, largest := t.found.Run, 2*t.series.Accuracy
	step := func(i int) float64 {
		return math.Abs(t.series.Points[run[i]].Value - t.series.Points[run[i-1]].Value)
	}
	last := len(run) - 1
	long := t.axis(&t.series.Points[run[last]]) - t.axis(&t.series.Points[run[last-1]])
	for i := 1; i < last; i++ {
		s := step(i)
		if short := t.axis(&t.series.Points[run[i]]) - t.axis(&t.series.Points[run[i-1]]); short > 0 && long > short {
			s *= long / short
		}
		largest = max(largest, s)
	}
	return step(last) > jumpsBy*largest
}

// backward finds two readings of the run between which a quantity that wears
// one way only went the other, by more than two readings may differ. Readings
// that are named as odd are passed over, but for the newest.
func (t *follower) backward(reading string) (from, to *series.Point) {
	sign := 0.0
	for _, row := range t.session.Book.Table("trend-readings").Rows.All() {
		if row.Pick == reading {
			sign = map[string]float64{"up": 1, "down": -1}[row.Values.Of("wears").Text]
		}
	}
	if sign == 0 {
		return nil, nil
	}
	for _, place := range t.found.Run {
		p := &t.series.Points[place]
		if place != t.newest() && slices.ContainsFunc(t.found.Flags, func(f series.Flag) bool { return f.Place == place }) {
			continue
		}
		if from == nil || sign*(p.Value-from.Value) > 0 {
			from = p
		} else if sign*(from.Value-p.Value) > 2*t.series.Accuracy*(1+1e-9) {
			return from, p
		}
	}
	return nil, nil
}

// withhold takes back what is not to be trusted: dates, and chances but for a
// limit that the newest reading itself has reached.
func (t *follower) withhold() {
	nan := math.NaN()
	f, out := &t.found, &t.out
	if f.Outlook != series.Reached {
		for _, chance := range []*quantity.Ratio{&out.ChanceItLasts, &out.ChanceNotReached} {
			if !math.IsNaN(float64(*chance)) {
				*chance = 0.5
			}
		}
		f.Days, f.Hours = series.Ahead{Expected: nan, Earliest: nan, Latest: nan}, series.Ahead{Expected: nan, Earliest: nan, Latest: nan}
		f.SteadyDays = nan
	}
	f.SureDays = nan
	if t.doubted == voided || t.doubted == wentBack && f.Deviation <= 1 {
		f.Deviation = nan
	}
}

// at is where the readings lead, and no further than the quantity can be.
func (t *follower) at(x float64) (low, middle, high float64) {
	low, middle, high = t.found.At(x)
	if least := t.property.Minimum; least != nil && !t.lessOther {
		low, middle, high = max(low, *least), max(middle, *least), max(high, *least)
	}
	return low, middle, high
}

// floored is the series toward the limit under which the readings must not
// fall, on the other side of that which they are followed to; ok is false for none.
func (t *follower) floored() (low series.Series, ok bool) {
	low = t.series
	low.Limit, low.Rising = t.floor, false
	return low, t.series.Rising && !math.IsNaN(t.floor)
}

// ranDry tells whether the newest reading is at that limit or under it, however
// few there are.
func (t *follower) ranDry() bool {
	low, ok := t.floored()
	if !ok {
		return false
	}
	found, err := series.Follow(low)
	return err == nil && found.Outlook == series.Reached
}

// falls holds the readings against that limit. Where nothing leads there nothing
// is said; nor by their line where the newest has left it toward the limit on the
// other side, or is there.
func (t *follower) falls(days float64) {
	t.out.ChanceAboveFloor = quantity.Ratio(math.NaN())
	low, ok := t.floored()
	if !ok {
		return
	}
	found, err := series.Follow(low)
	if err != nil {
		return
	}
	newest := &t.series.Points[t.newest()]
	switch lasts := found.Lasts(&low, days); {
	case found.Outlook == series.Reached:
		t.out.FloorOutlook = string(series.Reached)
		t.out.ChanceAboveFloor = quantity.Ratio(found.NotReached)
		t.out.ChanceItLasts = min(t.out.ChanceItLasts, t.out.ChanceAboveFloor)
		t.out.FloorSays = "the newest reading, " + t.show(newest.Value) + ", is not above the least of " + t.show(t.floor)
	case t.doubted == "" && t.found.Outlook != series.Reached && !t.leapt() && lasts < 0.95 && found.Fit.Slope+found.Fit.SlopeHalf() < 0:
		t.out.FloorOutlook = string(series.Toward)
		t.out.ChanceAboveFloor = quantity.Ratio(lasts)
		t.out.FloorSays = strings.TrimSuffix("it is falling to nothing: to the least of "+t.show(t.floor)+" about "+t.date(max(0, found.Days.Expected)), " about ")
	}
}
