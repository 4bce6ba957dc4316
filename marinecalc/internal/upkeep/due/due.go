// Package due finds when a piece of care of a boat falls due: by engine hours,
// by the calendar, or by where its readings lead, whichever comes first. It
// knows no documents. Days are counted from 1970-01-01, engine hours in hours.
package due

import (
	"math"
	"sort"
)

// Mark is one reading of the hour meter.
type Mark struct {
	Day   int
	Hours float64
}

// Log is the hour meter over time.
type Log []Mark

// Meters puts the marks by day and parts them where the meter ran back, or on by
// more hours than there were: it was renewed or misread there, and no hours are
// counted across. The last part is the meter as it stands; nil with no mark.
func (l Log) Meters() (parts []Log) {
	out := append(Log{}, l...)
	sort.SliceStable(out, func(i, j int) bool { return out[i].Day < out[j].Day })
	for i, m := range out {
		if i == 0 || m.Hours < out[i-1].Hours || m.Hours-out[i-1].Hours > 24*float64(m.Day-out[i-1].Day+1) {
			parts = append(parts, nil)
		}
		parts[len(parts)-1] = append(parts[len(parts)-1], m)
	}
	return parts
}

// At is what the meter showed on a day: between two marks in proportion, and
// before the first or after the last at so many hours a day; NaN with no mark.
// Before the first it may be less than nothing, of a meter that was renewed.
func (l Log) At(day int, perDay float64) float64 {
	if len(l) == 0 {
		return math.NaN()
	}
	i := sort.Search(len(l), func(i int) bool { return l[i].Day >= day })
	switch {
	case i == len(l):
		last := l[i-1]
		return last.Hours + perDay*float64(day-last.Day)
	case i == 0 && l[0].Day != day:
		return l[0].Hours - perDay*float64(l[0].Day-day)
	case l[i].Day == day:
		return l[i].Hours
	}
	a, b := l[i-1], l[i]
	return a.Hours + (b.Hours-a.Hours)*float64(day-a.Day)/float64(b.Day-a.Day)
}

// DayOf is the day on which the meter came, or will come, to so many hours; NaN
// where it never does or that is not known.
func (l Log) DayOf(hours, perDay float64) float64 {
	if len(l) == 0 {
		return math.NaN()
	}
	for i, m := range l {
		if m.Hours < hours {
			continue
		}
		if i == 0 {
			return float64(m.Day) - (m.Hours-hours)/perDay
		}
		a := l[i-1]
		return float64(a.Day) + float64(m.Day-a.Day)*(hours-a.Hours)/(m.Hours-a.Hours)
	}
	if perDay <= 0 || math.IsNaN(perDay) {
		return math.NaN()
	}
	last := l[len(l)-1]
	return float64(last.Day) + (hours-last.Hours)/perDay
}

// PerDay is how many hours a day the engine ran over the last so many days, or
// over all that there is where that is shorter; NaN for less than a month.
func (l Log) PerDay(days int) float64 {
	if len(l) < 2 {
		return math.NaN()
	}
	last := l[len(l)-1]
	from := max(l[0].Day, last.Day-days)
	if last.Day-from < 30 {
		return math.NaN()
	}
	return (last.Hours - l.At(from, 0)) / float64(last.Day-from)
}

// Care is one thing to do at intervals, and when it was last done.
type Care struct {
	EveryHours float64 // NaN: not by hours
	EveryDays  float64 // NaN: not by the calendar
	Done       bool    // it is known when it was last done
	Day        int     // of the last time
	Hours      float64 // on the meter then; NaN: not known
	Wear       float64 // day from which its readings may be at their limit; NaN: none
}

// Use is how the boat is used.
type Use struct {
	Today  int
	Hours  float64 // on the meter today; NaN: not known
	PerDay float64 // hours run in a day; NaN: not known
}

// By says what a due day goes by.
type By string

// What a due day can go by.
const (
	ByHours By = "hours"
	ByDate  By = "date"
	ByWear  By = "wear"
)

// When is when something falls due.
type When struct {
	Day       float64 // the sooner of all; NaN: not known
	HoursLeft float64 // until its hours are run, minus where they are; NaN: not by hours
	By        By
}

// Next finds when a care falls due. What was never done has no day by hours or
// date; its readings may still lead to one.
func (c *Care) Next(u Use) When {
	w := When{Day: math.NaN(), HoursLeft: math.NaN()}
	sooner := func(day float64, by By) {
		if !math.IsNaN(day) && !(w.Day <= day) {
			w.Day, w.By = day, by
		}
	}
	if c.Done {
		sooner(float64(c.Day)+c.EveryDays, ByDate)
		if w.HoursLeft = c.Hours + c.EveryHours - u.Hours; w.HoursLeft <= 0 {
			sooner(float64(u.Today), ByHours)
		} else if u.PerDay > 0 {
			sooner(float64(u.Today)+w.HoursLeft/u.PerDay, ByHours)
		}
	}
	sooner(c.Wear, ByWear)
	return w
}

// State is how pressing something is.
type State string

// How pressing something can be. Fault is what was looked at and found at fault,
// Never what nobody has done, as far as is known; Open is what was done and has no day.
const (
	Fault   State = "fault"
	Never   State = "never"
	Overdue State = "overdue"
	Soon    State = "soon"
	Later   State = "later"
	Open    State = "open"
)

// StateOf is how pressing a care is, looking so many days ahead.
func (c *Care) StateOf(w When, u Use, ahead float64) State {
	switch {
	case !math.IsNaN(w.Day) && w.Day <= float64(u.Today), w.HoursLeft <= 0:
		return Overdue
	case !c.Done:
		return Never
	case math.IsNaN(w.Day):
		return Open
	case w.Day <= float64(u.Today)+ahead:
		return Soon
	}
	return Later
}
