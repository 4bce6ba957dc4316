// The one interval in which the boat lies open.

package schedule

import "slices"

// placeOpen finds when she is opened: not before all parts of the interval are
// on board and all that it waits for is there; so that nobody leaves her open
// over days without work; no longer than a Ready window allows; and without a
// run to the lift under power in between. Of all such times it takes the one
// with which the work ends first, and then begins it as late as that allows:
// she lies open no longer than she must.
func (m *making) placeOpen() {
	from := m.days.today
	for i := range m.tasks {
		if m.open[i] {
			from = max(from, m.tasks[i].Ready)
		}
	}
	m.miss(from)
	begin, open := m.firstFit(from)
	if open.Why != Dated {
		m.refuse(open)
		return
	}
	last := m.plan.LastDay(open.End)
	fits := func(day int) bool {
		m.openFrom = day
		m.forward()
		open := m.interval()
		return open.Why == Dated && m.plan.LastDay(open.End) <= last
	}
	for low, high := begin+1, last; low <= high; { // the last day with which it ends no later
		mid := (low + high) / 2
		if fits(mid) {
			begin, low = mid, mid+1
		} else {
			high = mid - 1
		}
	}
	fits(begin)
	for _, unmoved := range []bool{true, false} {
		if !m.holdBack(unmoved) {
			break
		}
		if fits(begin) {
			break
		}
		m.reset()
		fits(begin)
	}
	m.plan.Open = m.interval()
}

// miss settles readings as found that no day before the work allows: she does
// not lie there then, and nobody moves her for a reading.
func (m *making) miss(from int) {
	var all []int
	for i := range m.tasks {
		if m.tasks[i].Stage == AsFound && m.tasks[i].Place != Anywhere {
			m.settled[i] = Missed
			all = append(all, i)
		}
	}
	if all == nil {
		return
	}
	_, open := m.firstFit(from)
	last := m.days.today
	if open.Why == Dated {
		last = m.plan.FirstDay(open.Start)
	}
	for _, i := range all {
		for day := range min(last-m.days.today+1, Horizon) {
			if m.days.fits(day, m.need(i)) && !m.days.stopped[day] {
				m.settled[i] = Dated
				break
			}
		}
	}
}

// firstFit is the first day from which on the interval can be, as far as a
// later day can help; or what stands in its way.
func (m *making) firstFit(from int) (day int, open Interval) {
	var first Interval // what stands in the way of the first try says most
	for day = from; day < m.days.today+Horizon; {
		m.openFrom = day
		m.forward()
		open, next := m.judge()
		if open.Why == Dated {
			return m.plan.FirstDay(open.Start), open
		}
		if !first.Any {
			first = open
		}
		if next <= day {
			break
		}
		day = next
	}
	return day, first
}

// interval is the open interval of the plan in hand.
func (m *making) interval() Interval {
	open, _ := m.judge()
	return open
}

// judge says whether the open interval of the plan in hand can be, and if not,
// why, and from which day on it might.
func (m *making) judge() (open Interval, next int) {
	open = Interval{Any: true, Window: -1}
	for i, t := range m.plan.Tasks {
		switch {
		case !m.open[i] || t.Why == Missed:
		case t.Why != Dated:
			if open.Why == Dated || open.Why == AfterAnother {
				open.Why = t.Why
			}
		default:
			if open.Start == 0 && open.End == 0 || t.Start < open.Start {
				open.Start = t.Start
			}
			open.End = max(open.End, t.End)
		}
	}
	if open.Why != Dated {
		return open, 0
	}
	first, last := m.plan.FirstDay(open.Start)-m.days.today, m.plan.LastDay(open.End)-m.days.today
	for day := first; day <= last; day++ {
		switch {
		case m.days.stopped[day]:
			open.Why, open.Window = AcrossClosed, m.window(Closed, day)
			for day < Horizon && m.days.stopped[day] {
				day++
			}
			return open, day + m.days.today
		case day > first && m.days.where[day] == Ashore && m.days.where[day-1] == Afloat:
			open.Why = MovedOpen
			return open, day + m.days.today
		}
	}
	for _, w := range m.days.ready {
		from, to := max(w.From-m.days.today, first), min(w.To-m.days.today, last)
		if to-from+1 > w.Most && from <= to {
			open.Why, open.Window = NotReady, slices.Index(m.calendar.Windows, w)
			return open, max(first+1, w.From-m.days.today) + m.days.today
		}
	}
	return open, 0
}

// window is the first window of a kind that holds a day.
func (m *making) window(kind WindowKind, day int) int {
	return slices.IndexFunc(m.calendar.Windows, func(w Window) bool {
		return w.Kind == kind && w.From <= day+m.days.today && day+m.days.today <= w.To
	})
}

// refuse leaves the interval without a date: nobody opens what cannot be
// closed again.
func (m *making) refuse(open Interval) {
	why := make([]Why, len(m.tasks))
	for i := range m.tasks {
		switch t := m.plan.Tasks[i]; {
		case !m.open[i] && m.tasks[i].Stage != AsFound || t.Why == Missed:
			continue
		case t.Why == NoWindow || t.Why == TooShort:
			why[i] = t.Why
		case m.tasks[i].Stage == Opens || m.tasks[i].Stage == AsFound:
			why[i] = ForNothing
		default:
			why[i] = AfterAnother
		}
	}
	for i, w := range why {
		if w != Dated {
			m.settled[i] = w
		}
	}
	m.forward()
	m.plan.Open = Interval{Any: true, Why: open.Why, Window: open.Window}
}

// holdBack finds from when on each task that opens her, and each reading as
// found, is wanted: the last day on which it can end before what follows it.
// Where unmoved is asked for, what opens her or lays her up and can be done
// anywhere is done where she lies for what follows, and what is read as found
// after a run is read before she is moved. It tells whether anything
// changes.
func (m *making) holdBack(unmoved bool) (any bool) {
	wanted := make([]Moment, len(m.tasks)) // start of the first task that follows
	for _, i := range slices.Backward(m.order) {
		t, dates := &m.tasks[i], &m.plan.Tasks[i]
		if dates.Why != Dated {
			continue
		}
		begin := dates.Start
		by := wanted[i] - Moment(t.Wait)*m.days.perDay
		moved := unmoved && t.LaysUp && t.Place == Anywhere && m.days.lies(dates.Start) != m.days.lies(by)
		if (t.Stage == Opens || t.Stage == AsFound && t.Wait == 0 || moved) && wanted[i] > 0 { // an answer to wait for is asked for at once
			switch {
			case !unmoved || t.Place != Anywhere:
			case t.Stage != AsFound:
				m.places[i], any = m.days.lies(by), true
			case m.followsRun(i):
				m.places[i], any = Afloat, true
			}
			if late, _, ok := m.days.latest(by, Moment(t.Minutes), m.need(i)); ok && late > begin {
				begin = late
				m.notBefore[i], any = late/m.days.perDay*m.days.perDay, true
			}
		}
		for _, before := range m.after[i] {
			if wanted[before] == 0 || begin < wanted[before] {
				wanted[before] = begin
			}
		}
	}
	return any
}

// followsRun tells whether a task comes after a reading as found that is taken
// afloat, as a sample does that is drawn warm from the run before.
func (m *making) followsRun(i int) bool {
	return slices.ContainsFunc(m.after[i], func(b int) bool {
		t := &m.tasks[b]
		return t.Stage == AsFound && t.Place == Afloat && m.plan.Tasks[b].Why == Dated
	})
}
