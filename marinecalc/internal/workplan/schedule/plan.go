// The plan of steps: network, resources, critical path.

package schedule

import (
	"slices"
	"strings"

	"example.org/driveline/marinecalc/problem"
)

// Task is one step of the work.
type Task struct {
	Name    string
	Minutes int   // of one person, 1 or more
	Wait    int   // days that must pass after it
	Place   Place // where the boat must lie
	After   []int // tasks that come before it, by their place in the list
	Ready   int   // day from which its parts are on board
	Stage   Stage
	LaysUp  bool // she has no drive meanwhile, even where nothing was opened before
	Lift    bool // a hoist or crane lifts something in it
}

// Why says why a task has no date.
type Why uint8

// The reasons.
const (
	Dated        Why = iota
	NoWindow         // the boat never lies where it needs her
	TooShort         // she does, but never long enough
	AfterAnother     // it waits for a task that has no date
	ForNothing       // it is done for tasks of which none has a date
	Missed           // a reading as found, of a boat that does not lie there before the work
	Due              // a task afterwards
	AcrossClosed     // of the open interval: she would lie open over days on which nobody works
	NotReady         // likewise: longer than a Ready window allows
	MovedOpen        // likewise: she would have to be moved under power meanwhile
)

// Dates is when a task is done. Late dates are those that do not put off the
// end of the whole, people kept in their order.
type Dates struct {
	Start, End         Moment
	LateStart, LateEnd Moment
	Critical           bool // any delay puts off the end
	Why                Why
}

// Plan is every task on the calendar.
type Plan struct {
	Tasks  []Dates
	Order  []int  // the dated tasks in the order of their start
	Finish Moment // of the dated tasks, their waiting not counted
	PerDay Moment
	Open   Interval
	days   *days
	moves  []move
	places []Place // by task: where it is done
}

// Interval is the time from the first task that opens to the end of the trial.
type Interval struct {
	Any        bool // something lays her open
	Start, End Moment
	Why        Why // why it cannot be; Dated where it can
	Window     int // of the calendar, that stands in its way; -1 for none
}

// FirstDay is the day on which a span of work begins.
func (p *Plan) FirstDay(start Moment) int { return int(start / p.PerDay) }

// LastDay is the day on which a span of work ends.
func (p *Plan) LastDay(end Moment) int { return int((end - 1) / p.PerDay) }

// Slack is how many whole days a task may begin later.
func (p *Plan) Slack(task int) int {
	t := &p.Tasks[task]
	return int((t.LateStart - t.Start) / p.PerDay)
}

// Whole tells whether everything that is to be dated has a date.
func (p *Plan) Whole() bool {
	for i := range p.Tasks {
		if w := p.Tasks[i].Why; w != Dated && w != Missed && w != Due {
			return false
		}
	}
	return true
}

// Sitting is the part of a task that is done in one day: minutes of its
// working time.
type Sitting struct{ Day, From, To int }

// Sittings are the days on which a dated task is worked at.
func (p *Plan) Sittings(task int) []Sitting {
	t := &p.Tasks[task]
	if t.Why != Dated {
		return nil
	}
	var list []Sitting
	for day := p.FirstDay(t.Start); day <= p.LastDay(t.End); day++ {
		if at := day - p.days.today; at < 0 || at >= Horizon || p.days.stopped[at] {
			continue
		}
		base := Moment(day) * p.PerDay
		list = append(list, Sitting{day, int(max(t.Start-base, 0)), int(min(t.End-base, p.PerDay))})
	}
	return list
}

// Lies is where she lies on a day, as the plan has it.
func (p *Plan) Lies(day int) Place { return p.days.lies(Moment(day) * p.PerDay) }

// Make plans the tasks by the critical path method (Kelley and Walker,
// Critical-path planning and scheduling, 1959): forward for the earliest
// dates, backward from the end for the latest; what has no slack between them
// is critical. Where there are fewer people than tasks, each person takes the
// task that can begin first, of several the one with the longest chain behind
// it (list scheduling), and the order in which people take them counts as a
// dependency in the backward pass. Windows, waiting and parts are kept by both
// passes, and what opens her belongs to one interval: see placeOpen.
//
// The error is a *problem.Error: a calendar that cannot be, a task without
// length, a task that comes before itself.
func Make(tasks []Task, c Calendar) (Plan, error) {
	bad := c.validate()
	for i := range tasks {
		if tasks[i].Minutes < 1 {
			bad.Add("", "the step “"+tasks[i].Name+"” takes no time", "1 minute or more", "")
		}
	}
	if ring := cycle(tasks); ring != nil {
		inACircle(&bad, ring)
	}
	if len(bad) > 0 {
		return Plan{}, bad.Err()
	}
	return withReserve(newNetwork(tasks), c), nil
}

// bestLaunch plans with a booked haul-out ended on that day with which the
// whole ends first; of several on the last.
func bestLaunch(net *network, c Calendar, moves []move, free []int) Plan {
	booked := slices.IndexFunc(c.Windows, func(w Window) bool { return w.Kind == Booked && w.To >= c.Today })
	best := planOn(net, c, moves, free)
	if booked < 0 {
		return best
	}
	c.Windows = slices.Clone(c.Windows)
	w := &c.Windows[booked]
	for w.To--; w.To >= max(w.From, c.Today); w.To-- {
		p := planOn(net, c, moves, free)
		if !p.Whole() {
			break // a shorter lift takes no more work
		}
		if !best.Whole() || p.LastDay(p.Finish) < best.LastDay(best.Finish) {
			best = p
		}
	}
	return best
}

func planOn(net *network, c Calendar, moves []move, free []int) Plan {
	m := &making{network: net, calendar: &c, days: c.layOut(), hands: make([]hand, c.Hands), settled: make([]Why, len(net.tasks))}
	m.days.keepFree(moves, free)
	m.tails()
	m.reset()
	for i := range net.tasks {
		if net.tasks[i].Stage == Afterwards {
			m.settled[i] = Due
		}
	}
	if net.opens() {
		m.placeOpen()
	} else {
		m.forward()
		m.plan.Open.Window = -1
	}
	m.days.kept = nil // what is kept free is slack
	m.backward()
	m.plan.days, m.plan.places = m.days, m.places
	return m.plan
}

// inACircle refuses tasks of which one comes before itself.
func inACircle(bad *problem.List, ring []string) {
	bad.Add("", "the steps go round in a circle: "+strings.Join(ring, ", then "), "steps that end somewhere", "take one of these dependencies out of the rule data")
}

// hand is a person.
type hand struct {
	free Moment
	last int // task done last, or -1
}

type making struct {
	*network
	calendar *Calendar
	days     *days
	hands    []hand
	tail     []Moment // length of the longest chain from a task's start to the end
	next     []int    // task that the same person takes after this one, or -1
	plan     Plan

	openFrom  int      // day before which she is not opened
	places    []Place  // where each task is done; Anywhere where it does not matter
	notBefore []Moment // of tasks that are held back
	settled   []Why    // of tasks that get no date, whatever the others do
}

// reset holds nothing back.
func (m *making) reset() {
	m.notBefore, m.places = make([]Moment, len(m.tasks)), make([]Place, len(m.tasks))
	for i := range m.tasks {
		m.places[i] = m.tasks[i].Place
	}
}

func (m *making) need(i int) need { return need{m.places[i], m.tasks[i].Lift} }

// tails finds the longest chain behind each task.
func (m *making) tails() {
	m.tail = make([]Moment, len(m.tasks))
	for _, i := range slices.Backward(m.order) {
		m.tail[i] += Moment(m.tasks[i].Minutes) + Moment(m.tasks[i].Wait)*m.days.perDay
		for _, before := range m.after[i] {
			m.tail[before] = max(m.tail[before], m.tail[i])
		}
	}
}

// forward gives every task its earliest dates.
func (m *making) forward() {
	m.plan = Plan{Tasks: make([]Dates, len(m.tasks)), PerDay: m.days.perDay}
	for i := range m.hands {
		m.hands[i] = hand{free: m.days.first, last: -1}
	}
	m.next = slices.Repeat([]int{-1}, len(m.tasks))
	done := make([]bool, len(m.tasks))
	for range m.tasks {
		best, start, end := -1, Moment(0), Moment(0)
		who := m.firstFree()
		for i := range m.tasks {
			if done[i] || !m.canBegin(i, done) {
				continue
			}
			s, e, why := m.place(i, m.hands[who].free)
			if why != Dated { // it gets no date, whoever is free
				m.plan.Tasks[i].Why = why
				best, end = i, 0
				break
			}
			if best < 0 || s < start || s == start && m.tail[i] > m.tail[best] {
				best, start, end = i, s, e
			}
		}
		done[best] = true
		if end == 0 {
			continue
		}
		m.plan.Tasks[best].Start, m.plan.Tasks[best].End = start, end
		m.plan.Order = append(m.plan.Order, best)
		m.plan.Finish = max(m.plan.Finish, end)
		h := &m.hands[who]
		if h.last >= 0 {
			m.next[h.last] = best
		}
		h.free, h.last = end, best
	}
	slices.SortStableFunc(m.plan.Order, func(a, b int) int { return int(m.plan.Tasks[a].Start - m.plan.Tasks[b].Start) })
}

func (m *making) firstFree() int {
	who := 0
	for i := range m.hands {
		if m.hands[i].free < m.hands[who].free {
			who = i
		}
	}
	return who
}

// canBegin tells whether all that comes before a task is done.
func (m *making) canBegin(i int, done []bool) bool {
	for _, before := range m.after[i] {
		if !done[before] {
			return false
		}
	}
	return true
}

// place finds the first free time for a task.
func (m *making) place(i int, free Moment) (start, end Moment, why Why) {
	t := &m.tasks[i]
	if m.settled[i] != Dated {
		return 0, 0, m.settled[i]
	}
	from := max(free, Moment(t.Ready)*m.days.perDay, m.notBefore[i])
	if m.open[i] {
		from = max(from, Moment(m.openFrom)*m.days.perDay)
	}
	for _, before := range m.after[i] {
		switch m.plan.Tasks[before].Why {
		case Missed, Due:
			continue
		case Dated:
		default:
			return 0, 0, AfterAnother
		}
		from = max(from, m.plan.Tasks[before].End+Moment(m.tasks[before].Wait)*m.days.perDay)
	}
	start, end, ok := m.days.earliest(from, Moment(t.Minutes), m.need(i))
	if ok {
		return start, end, Dated
	}
	if _, _, short := m.days.earliest(from, 1, m.need(i)); short {
		return 0, 0, TooShort
	}
	return 0, 0, NoWindow
}

// backward gives every dated task its latest dates.
func (m *making) backward() {
	then := make([][]int, len(m.tasks))
	for i := range m.tasks {
		for _, before := range m.after[i] {
			then[before] = append(then[before], i)
		}
	}
	for _, i := range slices.Backward(m.plan.Order) {
		t := &m.plan.Tasks[i]
		by := m.plan.Finish
		for _, next := range then[i] {
			if n := &m.plan.Tasks[next]; n.Why == Dated {
				by = min(by, n.LateStart-Moment(m.tasks[i].Wait)*m.days.perDay)
			}
		}
		if n := m.next[i]; n >= 0 {
			by = min(by, m.plan.Tasks[n].LateStart)
		}
		var ok bool
		if t.LateStart, t.LateEnd, ok = m.days.latest(by, Moment(m.tasks[i].Minutes), m.need(i)); !ok || t.LateStart < t.Start {
			t.LateStart, t.LateEnd = t.Start, t.End
		}
		t.Critical = t.LateStart == t.Start
	}
}
