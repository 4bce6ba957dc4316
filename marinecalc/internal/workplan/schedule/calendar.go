// Package schedule puts steps of work on a calendar: what comes before what, who
// has hands free, where the boat lies on which day, how long she lies without
// her drive, and which step holds up the rest. calendar.go is the days,
// network.go what comes before what, plan.go the two passes of the critical
// path, open.go the one interval in which she lies open, reserve.go the days kept
// free before she is moved.
package schedule

import (
	"strconv"

	"example.org/driveline/marinecalc/problem"
)

// Place is where the boat must lie for a step, or where she lies.
type Place uint8

// The places.
const (
	Anywhere Place = iota
	Afloat
	Ashore
)

// WindowKind is what a window says of its days.
type WindowKind uint8

// The kinds of windows. Where windows overlap, a lift wins over a time ashore
// and that over a time afloat; the others say nothing of where she lies.
const (
	AfloatDays WindowKind = iota
	AshoreDays
	LiftedDays
	Closed // nobody works
	Booked // lifted on the first day, afloat again as soon as the plan is better for it, the last day at the latest
	Ready  // no longer without her drive than Window.Most days
	NoLift // neither the boat nor anything in her is lifted
)

// Window is a run of days, both ends included, as days since 1970-01-01.
type Window struct {
	From, To int
	Kind     WindowKind
	Most     int // of a Ready window
}

// Calendar says when and where there can be work.
type Calendar struct {
	Today         int   // days since 1970-01-01
	Lies          Place // on days that no window names: Afloat or Ashore
	MinutesPerDay int   // of work by one person, 1 to 1440
	Hands         int   // people, each at a step of their own, 1 or more
	Windows       []Window
	Reserve       int // days of work kept free before she is moved, where that puts nothing off
}

// Horizon is how many days are looked ahead: four years.
const Horizon = 4*365 + 1

// mostReserve is how many days may be kept free before a move.
const mostReserve = 21

// Moment is a point in working time: day · MinutesPerDay + minute.
type Moment int64

// days is the calendar laid out day by day from today on.
type days struct {
	today   int
	first   Moment // of today
	perDay  Moment
	where   []Place
	stopped []bool
	noLift  []bool
	ready   []Window
	kept    []Place // by day: what needs this place is not done on it; nil where no day is kept free
}

// need is what a step asks of the days it is done on.
type need struct {
	place Place
	lift  bool
}

// validate says what is wrong with the calendar.
func (c *Calendar) validate() problem.List {
	var bad problem.List
	if c.MinutesPerDay < 1 || c.MinutesPerDay > 1440 {
		bad.Add("/hoursPerDay", "a day has no such hours of work", "1 minute to 24 h", "")
	}
	if c.Hands < 1 {
		bad.Add("/hands", "nobody is there to work", "1 or more", "")
	}
	if c.Lies != Afloat && c.Lies != Ashore {
		bad.Add("/lies", "the boat lies nowhere", "afloat, ashore", "")
	}
	if c.Reserve < 0 || c.Reserve > mostReserve {
		bad.Add("/reserve", "so many days are not kept free", "0 to "+strconv.Itoa(mostReserve)+" days", "")
	}
	for i, w := range c.Windows {
		if w.To < w.From {
			bad.Add(windowAt(i, "to"), "this window ends before it begins", "a last day on or after the first", "exchange the two days")
		}
		if w.Most < 0 {
			bad.Add(windowAt(i, "mostDays"), "no boat is without her drive for less than no day", "0 or more", "")
		}
	}
	return bad
}

func windowAt(i int, field string) string { return "/windows/" + strconv.Itoa(i) + "/" + field }

// layOut writes the windows day by day.
func (c *Calendar) layOut() *days {
	d := &days{today: c.Today, perDay: Moment(c.MinutesPerDay), where: make([]Place, Horizon), stopped: make([]bool, Horizon), noLift: make([]bool, Horizon)}
	d.first = Moment(c.Today) * d.perDay
	for i := range d.where {
		d.where[i] = c.Lies
	}
	for _, kind := range []WindowKind{AfloatDays, AshoreDays, LiftedDays, Booked, Closed, NoLift, Ready} {
		for _, w := range c.Windows {
			if w.Kind == kind {
				d.lay(w)
			}
		}
	}
	was := d.where[0]
	for i := range d.where { // she cannot be lifted on these days: she stays afloat until she can
		if was == Afloat && d.where[i] == Ashore && d.noLift[i] {
			d.where[i] = Afloat
		}
		was = d.where[i]
	}
	return d
}

// lay writes one window over those before it.
func (d *days) lay(w Window) {
	if w.Kind == Ready {
		d.ready = append(d.ready, w)
	}
	for day := max(w.From-d.today, 0); day <= min(w.To-d.today, Horizon-1); day++ {
		switch w.Kind {
		case AfloatDays:
			d.where[day] = Afloat
		case AshoreDays, LiftedDays, Booked:
			d.where[day] = Ashore
		case Closed:
			d.stopped[day] = true
		case NoLift:
			d.noLift[day] = true
		}
	}
}

// fits tells whether a step that needs that can go on that day.
func (d *days) fits(day int, n need) bool {
	if d.kept != nil && n.place != Anywhere && d.kept[day] == n.place {
		return false
	}
	return (n.place == Anywhere || d.where[day] == n.place) && !(n.lift && d.noLift[day])
}

// lies is where the boat lies at a moment; one before today counts as today.
func (d *days) lies(at Moment) Place {
	return d.where[min(max(int((at-d.first)/d.perDay), 0), len(d.where)-1)]
}

// earliest is the first time from a moment on at which a step of that length
// can be done without a break. Days without work are a break only when the
// boat is moved meanwhile; a step that fits in one day is not spread over two.
func (d *days) earliest(from Moment, length Moment, n need) (start, end Moment, ok bool) {
	from = max(from, d.first)
	day, minute := int((from-d.first)/d.perDay), (from-d.first)%d.perDay
	left, begun := length, false
	for ; day < Horizon; day, minute = day+1, 0 {
		switch {
		case !d.fits(day, n):
			left, begun = length, false
			continue
		case d.stopped[day], !begun && length <= d.perDay && d.perDay-minute < length:
			continue
		}
		base := d.first + Moment(day)*d.perDay
		if !begun {
			start, begun = base+minute, true
		}
		if free := d.perDay - minute; left > free {
			left -= free
			continue
		}
		return start, base + minute + left, true
	}
	return 0, 0, false
}

// latest is the last time at which a step can begin so as to end by a moment.
func (d *days) latest(by Moment, length Moment, n need) (start, end Moment, ok bool) {
	day := int((by - 1 - d.first) / d.perDay)
	until := by - d.first - Moment(day)*d.perDay // minutes of that day that may be used
	left, begun := length, false
	for ; day >= 0; day, until = day-1, d.perDay {
		if day >= Horizon {
			continue
		}
		switch {
		case !d.fits(day, n):
			left, begun = length, false
			continue
		case d.stopped[day], !begun && length <= d.perDay && until < length:
			continue
		}
		base := d.first + Moment(day)*d.perDay
		if !begun {
			end, begun = base+until, true
		}
		if left > until {
			left -= until
			continue
		}
		return base + until - left, end, true
	}
	return 0, 0, false
}
