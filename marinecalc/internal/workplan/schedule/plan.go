// The plan of steps: network, resources, critical path.

package schedule

import (
	"slices"
	"strconv"
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
	LaysUp  bool  // from it on the boat cannot be used
}

// Why says why a task has no date.
type Why uint8

// The reasons.
const (
	Dated        Why = iota
	NoWindow         // the boat never lies where it needs her
	TooShort         // she does, but never long enough
	AfterAnother     // it waits for a task that has no date
	ForNothing       // it lays the boat up for tasks of which none has a date
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

// Make plans the tasks by the critical path method (Kelley and Walker,
// Critical-path planning and scheduling, 1959): forward for the earliest
// dates, backward from the end for the latest; what has no slack between them
// is critical. Where there are fewer people than tasks, each person takes the
// task that can begin first, of several the one with the longest chain behind
// it (list scheduling), and the order in which people take them counts as a
// dependency in the backward pass. A task that lays the boat up is held back
// until a day before what it is done for, even where people had time before, and
// is done where she lies then: she is not moved with her line open, unless there
// is no other way. Windows, waiting and parts are kept by both passes.
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
	m := &making{tasks: tasks, days: c.layOut(), hands: make([]hand, c.Hands)}
	m.tails()
	m.begin()
	dated := len(m.plan.Order)
	if idle, any := m.holdBack(true); any {
		if m.forward(); len(m.plan.Order)+idle < dated { // no room where she lies then
			m.begin()
			m.holdBack(false)
			m.forward()
		}
	}
	m.backward()
	return m.plan, nil
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
	tasks []Task
	days  *days
	hands []hand
	tail  []Moment // length of the longest chain from a task's start to the end
	next  []int    // task that the same person takes after this one, or -1
	plan  Plan

	places    []Place  // where each task is done; Anywhere where it does not matter
	notBefore []Moment // of tasks that are held back
	settled   []Why    // of tasks that get no date, whatever the others do
}

// begin plans the tasks with nothing held back.
func (m *making) begin() {
	m.notBefore, m.settled, m.places = make([]Moment, len(m.tasks)), make([]Why, len(m.tasks)), make([]Place, len(m.tasks))
	for i := range m.tasks {
		m.places[i] = m.tasks[i].Place
	}
	m.forward()
}

// holdBack finds from when on each task that lays the boat up is wanted: it
// ends by what follows it, less a day of slack. One that is wanted for nothing
// gets no date. Where unmoved is asked for, one that can be done anywhere is
// done where she lies for what follows. It tells how many those are, and whether anything changes.
func (m *making) holdBack(unmoved bool) (idle int, any bool) {
	wanted := make([]Moment, len(m.tasks)) // start of the first task that follows
	follows := make([]bool, len(m.tasks))  // any at all, with a date or without
	for _, i := range slices.Backward(sorted(m.tasks)) {
		t, dates := &m.tasks[i], &m.plan.Tasks[i]
		for _, before := range t.After {
			follows[before] = true
		}
		if dates.Why != Dated {
			if dates.Why != AfterAnother {
				m.settled[i] = dates.Why
			}
			continue
		}
		if t.LaysUp && follows[i] && wanted[i] == 0 {
			m.settled[i], any = ForNothing, true
			idle++
			continue
		}
		begin := dates.Start
		if t.LaysUp && wanted[i] > 0 {
			by := wanted[i] - Moment(t.Wait)*m.days.perDay
			if unmoved && t.Place == Anywhere {
				m.places[i], any = m.days.lies(by), true
			}
			late, _, ok := m.days.latest(by, Moment(t.Minutes), m.places[i])
			if !ok && unmoved && t.Place == Anywhere {
				late, ok = by, true // she is moved that day: what follows goes after it
			}
			if ok && late-m.days.perDay > begin {
				begin, any = late, true
				m.notBefore[i] = late - m.days.perDay
			}
		}
		for _, before := range t.After {
			if wanted[before] == 0 || begin < wanted[before] {
				wanted[before] = begin
			}
		}
	}
	return idle, any
}

// tails finds the longest chain behind each task.
func (m *making) tails() {
	m.tail = make([]Moment, len(m.tasks))
	order := sorted(m.tasks)
	for _, i := range slices.Backward(order) {
		m.tail[i] += Moment(m.tasks[i].Minutes) + Moment(m.tasks[i].Wait)*m.days.perDay
		for _, before := range m.tasks[i].After {
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
			if done[i] || !m.open(i, done) {
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

// open tells whether all that comes before a task is done.
func (m *making) open(i int, done []bool) bool {
	for _, before := range m.tasks[i].After {
		if !done[before] {
			return false
		}
	}
	return true
}

// place finds the first room for a task.
func (m *making) place(i int, free Moment) (start, end Moment, why Why) {
	t := &m.tasks[i]
	if m.settled[i] != Dated {
		return 0, 0, m.settled[i]
	}
	from := max(free, Moment(t.Ready)*m.days.perDay, m.notBefore[i])
	for _, before := range t.After {
		if m.plan.Tasks[before].Why != Dated {
			return 0, 0, AfterAnother
		}
		from = max(from, m.plan.Tasks[before].End+Moment(m.tasks[before].Wait)*m.days.perDay)
	}
	start, end, ok := m.days.earliest(from, Moment(t.Minutes), m.places[i])
	if ok {
		return start, end, Dated
	}
	if _, _, short := m.days.earliest(from, 1, m.places[i]); short {
		return 0, 0, TooShort
	}
	return 0, 0, NoWindow
}

// backward gives every dated task its latest dates.
func (m *making) backward() {
	after := make([][]int, len(m.tasks))
	for i := range m.tasks {
		for _, before := range m.tasks[i].After {
			after[before] = append(after[before], i)
		}
	}
	for _, i := range slices.Backward(m.plan.Order) {
		t := &m.plan.Tasks[i]
		by := m.plan.Finish
		for _, next := range after[i] {
			if n := &m.plan.Tasks[next]; n.Why == Dated {
				by = min(by, n.LateStart-Moment(m.tasks[i].Wait)*m.days.perDay)
			}
		}
		if n := m.next[i]; n >= 0 {
			by = min(by, m.plan.Tasks[n].LateStart)
		}
		var ok bool
		if t.LateStart, t.LateEnd, ok = m.days.latest(by, Moment(m.tasks[i].Minutes), m.places[i]); !ok || t.LateStart < t.Start {
			t.LateStart, t.LateEnd = t.Start, t.End
		}
		t.Critical = t.LateStart == t.Start
	}
}

// sorted orders the tasks so that each comes after those it rests on; those
// in a circle are left out.
func sorted(tasks []Task) []int {
	before := make([]int, len(tasks))
	after := make([][]int, len(tasks))
	for i := range tasks {
		for _, b := range tasks[i].After {
			before[i]++
			after[b] = append(after[b], i)
		}
	}
	var order []int
	for i, n := range before {
		if n == 0 {
			order = append(order, i)
		}
	}
	for k := 0; k < len(order); k++ {
		for _, next := range after[order[k]] {
			if before[next]--; before[next] == 0 {
				order = append(order, next)
			}
		}
	}
	return order
}

// cycle names the tasks of one circle in their order, or gives nil.
func cycle(tasks []Task) []string {
	inOrder := make([]bool, len(tasks))
	for _, i := range sorted(tasks) {
		inOrder[i] = true
	}
	at := slices.Index(inOrder, false)
	if at < 0 {
		return nil
	}
	// Every task left has one left before it: going back must come round.
	var path []int
	for !slices.Contains(path, at) {
		path = append(path, at)
		for _, b := range tasks[at].After {
			if !inOrder[b] {
				at = b
				break
			}
		}
	}
	path = path[slices.Index(path, at):]
	slices.Reverse(path)
	names := make([]string, 0, len(path)+1)
	for _, i := range path {
		names = append(names, "“"+tasks[i].Name+"”")
	}
	return append(names, names[0])
}

func windowAt(i int, field string) string { return "/windows/" + strconv.Itoa(i) + "/" + field }
