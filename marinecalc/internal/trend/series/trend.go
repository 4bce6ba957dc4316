// Package series follows dated readings of one kind: the run since a part was
// changed, the line through it, when it reaches a limit, and whether the
// newest reading has left the band. It keeps every reading; what looks wrong
// is named.
//
// Days are counted from 1970-01-01. Engine hours are in hours.
package series

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"sort"

	"example.org/driveline/marinecalc/problem"
)

// Point is one reading.
type Point struct {
	Day     int     // of the reading
	Time    float64 // of that day, from 0 to 1; 0: not written down
	Hours   float64 // on the hour meter; NaN: not written down
	Value   float64 // in SI
	Over    float64 // by how much Value is above what was read, where it was brought to other surroundings
	Changed bool    // the part was changed or adjusted just before
}

// Series is what was read and what is asked. Points stand in the order in
// which they were written down.
type Series struct {
	Points   []Point
	Renewed  []int   // days on which a part was changed; a reading of that day counts as after it
	Today    int     // not before the newest reading, or that reading is named
	Limit    float64 // in SI; NaN: none
	Rising   bool    // the limit is met from below
	Accuracy float64 // half-width of one reading, in SI; 0: not known
	Counted  float64 // what one event counted more would have added to a reading; 0: read and not counted

	// CountBelow is the chance that the rate behind a count lies below a level, by
	// what one event counts; needed where Counted is above 0.
	CountBelow func(rate, one, level float64) float64

	Few     bool // fewer than Fewest readings are no error
	Shifted bool // the zero of the quantity is arbitrary (temperature): factors say nothing
}

// Fewest is how many readings of one run a trend needs, FewestAhead how many
// before it looks ahead.
const (
	Fewest      = 3
	FewestAhead = 5
)

// longest is how many readings of a run are used: the newest.
const longest = 400

// Kind says what looks wrong with a reading.
type Kind string

// What can look wrong.
const (
	OutOfOrder    Kind = "out-of-order"
	SameDate      Kind = "same-date"
	HoursBackward Kind = "hours-backward"
	HoursTooFast  Kind = "hours-too-fast"
	AfterToday    Kind = "after-today"
	Slip25        Kind = "25-times"
	Slip25Low     Kind = "25th"
	Slip1000      Kind = "1000-times"
	Slip1000Low   Kind = "1000th"
	OutsideBand   Kind = "outside-band"
)

// Flag names a reading that looks wrong, by its place in Series.Points. The
// reading is kept and used.
type Flag struct {
	Place int
	Kind  Kind
}

// Outlook says where a trend leads.
type Outlook string

// Where a trend can lead.
const (
	NoLimit Outlook = "no-limit"
	Reached Outlook = "reached" // by the newest reading, whatever the line says
	Passed  Outlook = "past"
	Toward  Outlook = "toward"
	Away    Outlook = "away"
	TooFew  Outlook = "too-few" // readings to look ahead
)

// Trend is where the readings lead. Times ahead are +Inf for never and NaN
// where they cannot be told.
type Trend struct {
	Run         []int // places of the readings of the present run, by date
	Since       int   // day of the first of them
	ByHours     bool  // the line runs over engine hours, otherwise over days
	Fit         Fit
	Place       float64 // of today on the line's axis
	HoursPerDay float64 // as the engine was run; NaN: not known
	MeterOff    int     // place of the newest reading of the run at which the hour meter went back, or on by more than the days have; −1: none
	Outlook     Outlook
	Days        Ahead   // until the limit
	Hours       Ahead   // the same in engine hours
	Quickens    bool    // the pace grows: then Days and Hours go by the bent lines
	SteadyDays  float64 // until the limit at a steady pace
	SureDays    float64 // until it can be reached at all, the pace may grow or not
	NotReached  float64 // chance that the limit is not reached yet; NaN without a limit
	Deviation   float64 // of the newest reading from where the earlier ones lead, over half the width of their band; NaN with fewer than 4
	Flags       []Flag

	bent curves // with FewestAhead readings
}

// Ahead is a time from today, with the earliest and latest of 95 %.
type Ahead struct{ Expected, Earliest, Latest float64 }

// Follow finds where a series leads.
//
// The run begins with the last reading before which the part was changed. The
// line is Lay's, over engine hours when every reading of the run has them,
// over days otherwise; hours and days are turned into one another by how much
// the engine was run (the Theil-Sen slope of its hours). The limit is reached
// where the line meets it, at the earliest and latest where the bounds of the
// prediction interval do; where the readings say that the pace grows, by the
// bent lines of layCurves. A newest reading at or over the limit is over it,
// whatever the line says. The newest reading is held against the line and
// band of those before it. With fewer than FewestAhead readings nothing is
// said of the time to come, with fewer than Fewest, or all of them of one day,
// nothing but that the newest has reached the limit.
//
// The error is a *problem.Error: fewer than Fewest readings in the run, or all
// on one day, and the newest has not reached the limit. Follow allocates.
func Follow(in Series) (Trend, error) {
	var out Trend
	out.order(in.Points)
	byDate := slices.Clone(out.Run)
	out.cut(&in)
	refused := out.tooFew(&in)
	if len(refused) > 0 && (len(out.Run) == 0 || !in.Few && !out.reached(&in)) {
		return Trend{}, refused.Err()
	}
	out.Since = in.Points[out.Run[0]].Day
	out.readMeter(in.Points)
	out.ByHours = out.MeterOff < 0
	for _, p := range out.Run {
		out.ByHours = out.ByHours && !math.IsNaN(in.Points[p].Hours)
	}
	x, y := out.axis(in.Points)
	if out.ByHours && slices.Max(x) == slices.Min(x) {
		out.ByHours = false
		x, y = out.axis(in.Points)
	}
	if out.use(in.Points, in.Today); len(refused) > 0 {
		out.Fit, out.Deviation = none, math.NaN()
		out.ahead(&in)
		out.name(&in, byDate, nil, nil)
		return out, nil
	}
	out.Fit = Lay(x, y, in.Accuracy)
	if len(out.Run) >= FewestAhead {
		out.bent = layCurves(x, y, in.Accuracy)
	}
	out.Deviation = deviation(x, y, in.Accuracy)
	out.ahead(&in)
	out.name(&in, byDate, x, y)
	return out, nil
}

// none is the line of too few readings.
var none = Fit{Slope: math.NaN(), Middle: math.NaN(), Height: math.NaN(), Factor: math.Inf(1)}

// tooFew says why no line can be laid.
func (t *Trend) tooFew(in *Series) problem.List {
	if len(t.Run) < Fewest {
		return problem.List{{Where: "/readings", What: "since the part was last changed there " + counted(len(t.Run)) + " of this kind",
			Allowed: fmt.Sprintf("at least %d", Fewest), Hint: "keep reading; a trend of two is none"}}
	}
	if in.Points[t.Run[0]].at() == in.Points[t.Run[len(t.Run)-1]].at() {
		return problem.List{{Where: "/readings", What: "all readings of this run are of one day", Allowed: "readings of different days", Hint: ""}}
	}
	return nil
}

// Run gives the places of the readings of the present run, by date.
func Run(in *Series) []int {
	var t Trend
	t.order(in.Points)
	t.cut(in)
	return t.Run
}

// order puts the places of the points by date; those of one date stay as
// they were written.
func (t *Trend) order(points []Point) {
	t.Run = make([]int, len(points))
	for i := range points {
		t.Run[i] = i
	}
	slices.SortStableFunc(t.Run, func(a, b int) int { return cmp.Compare(points[a].at(), points[b].at()) })
}

// cut keeps the readings since the last change.
func (t *Trend) cut(in *Series) {
	start := 0
	for i, place := range t.Run {
		p := &in.Points[place]
		fresh := p.Changed
		for _, day := range in.Renewed {
			fresh = fresh || p.Day >= day && (i == 0 || in.Points[t.Run[i-1]].Day < day)
		}
		if fresh {
			start = i
		}
	}
	t.Run = t.Run[start:]
	if len(t.Run) > longest {
		t.Run = t.Run[len(t.Run)-longest:]
	}
}

// at is the point's place over days.
func (p *Point) at() float64 { return float64(p.Day) + p.Time }

// axis gives the run's places on the axis and its values.
func (t *Trend) axis(points []Point) (x, y []float64) {
	for _, place := range t.Run {
		p := &points[place]
		if t.ByHours {
			x = append(x, p.Hours)
		} else {
			x = append(x, p.at())
		}
		y = append(y, p.Value)
	}
	return x, y
}

// readMeter looks for a meter that was renewed or misread.
func (t *Trend) readMeter(points []Point) {
	t.MeterOff = -1
	before := -1
	for _, place := range t.Run {
		if math.IsNaN(points[place].Hours) {
			continue
		}
		if before >= 0 && meterOff(&points[before], &points[place]) != "" {
			t.MeterOff = place
		}
		before = place
	}
}

func meterOff(a, b *Point) Kind { return MeterOff(a.at(), a.Hours, b.at(), b.Hours) }

// MeterOff tells what is wrong with the hour meter from one day and its hours to
// another; "" for nothing. On each day of a reading the engine may have run all
// day.
func MeterOff(day, hours, laterDay, later float64) Kind {
	switch ran := later - hours; {
	case ran < 0:
		return HoursBackward
	case ran > 24*(laterDay-day+1):
		return HoursTooFast
	}
	return ""
}

// use finds how much the engine was run, and where today is on the axis: with a
// meter that was renewed or misread in the run nobody knows.
func (t *Trend) use(points []Point, today int) {
	var days, hours []float64
	for _, place := range t.Run {
		if p := &points[place]; !math.IsNaN(p.Hours) {
			days, hours = append(days, p.at()), append(hours, p.Hours)
		}
	}
	t.HoursPerDay = math.NaN()
	if len(days) > 1 && t.MeterOff < 0 {
		if slope, _ := TheilSen(days, hours); slope >= 0 {
			t.HoursPerDay = slope
		}
	}
	t.Place = float64(today)
	if n := len(t.Run); n > 0 && points[t.Run[n-1]].Day == today {
		t.Place = points[t.Run[n-1]].at()
	}
	if t.ByHours {
		t.Place = hours[len(hours)-1]
		if ahead := float64(today) - days[len(days)-1]; ahead > 0 && t.HoursPerDay > 0 {
			t.Place += ahead * t.HoursPerDay
		}
	}
}

// name flags what looks wrong, of all readings by date and order, of the
// present run also by value.
func (t *Trend) name(in *Series, byDate []int, x, y []float64) {
	for i := range in.Points {
		p := &in.Points[i]
		if i > 0 && p.at() < in.Points[i-1].at() {
			t.flag(i, OutOfOrder)
		}
		if p.Day > in.Today {
			t.flag(i, AfterToday)
		}
	}
	metered := -1
	for i, place := range byDate {
		if i > 0 && in.Points[byDate[i-1]].at() == in.Points[place].at() {
			t.flag(place, SameDate)
		}
		if math.IsNaN(in.Points[place].Hours) {
			continue
		}
		if metered >= 0 {
			if kind := meterOff(&in.Points[metered], &in.Points[place]); kind != "" {
				t.flag(place, kind)
			}
		}
		metered = place
	}
	for i, place := range t.Run[:len(x)] {
		if kind, slipped := t.slip(in, x, y, i); slipped {
			t.flag(place, kind)
		}
	}
	sort.SliceStable(t.Flags, func(i, j int) bool { return t.Flags[i].Place < t.Flags[j].Place })
}

func (t *Trend) flag(place int, kind Kind) { t.Flags = append(t.Flags, Flag{place, kind}) }

// alike is how near to a factor, either way, a reading must lie to be taken
// for a slip of that factor.
const alike = 1.35

// slips are the factors that a mistaken unit brings.
var slips = [...]struct {
	factor float64
	kind   Kind
}{{25.4, Slip25}, {1 / 25.4, Slip25Low}, {1000, Slip1000}, {1.0 / 1000, Slip1000Low}}

// slip tells whether a reading of the run is off the line of the others, and
// whether by the factor of a unit. Where the others are too few to have a
// band, only a slip of the unit is told.
func (t *Trend) slip(in *Series, x, y []float64, i int) (Kind, bool) {
	ox, oy := slices.Delete(slices.Clone(x), i, i+1), slices.Delete(slices.Clone(y), i, i+1)
	if len(x) > 60 {
		ox, oy = near(ox, oy, i)
	}
	if slices.Max(ox) == slices.Min(ox) {
		return "", false
	}
	others := Lay(ox, oy, in.Accuracy)
	expected, half := others.At(x[i]), others.Half(x[i])
	if len(ox) <= Fewest {
		expected = median(slices.Clone(oy))
	}
	banded := len(ox) > Fewest && !math.IsInf(half, 1)
	if banded && math.Abs(y[i]-expected) <= half {
		return "", false
	}
	if ratio := y[i] / expected; ratio > 0 && !in.Shifted {
		for _, s := range slips {
			if r := ratio / s.factor; r < alike && r > 1/alike {
				return s.kind, true
			}
		}
	}
	return OutsideBand, banded
}

// near keeps the 40 readings about a place, for the cost of the medians.
func near(x, y []float64, i int) (nx, ny []float64) {
	from := min(max(0, i-20), len(x)-40)
	return x[from : from+40], y[from : from+40]
}

// counted says how many readings there are.
func counted(n int) string {
	switch n {
	case 0:
		return "is no reading"
	case 1:
		return "is one reading"
	}
	return fmt.Sprintf("are %d readings", n)
}
