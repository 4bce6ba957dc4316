package schedule

import (
	"math/rand/v2"
	"slices"
	"testing"
)

// anyCalendar has windows of every kind.
func anyCalendar(r *rand.Rand) Calendar {
	c := Calendar{Today: 100 + r.IntN(50), Lies: []Place{Afloat, Ashore}[r.IntN(2)], MinutesPerDay: 3 + r.IntN(6), Hands: 1 + r.IntN(3)}
	for range r.IntN(7) {
		from := 90 + r.IntN(90)
		w := Window{From: from, To: from + r.IntN(25), Kind: WindowKind(r.IntN(7))}
		if w.Kind == Closed {
			w.To = from + r.IntN(4)
		}
		if w.Kind == Ready {
			w.Most = r.IntN(4)
		}
		c.Windows = append(c.Windows, w)
	}
	return c
}

func anyTasks(r *rand.Rand, c Calendar) []Task {
	tasks := randomTasks(r, 1+r.IntN(12))
	for i := range tasks {
		t := &tasks[i]
		t.Minutes, t.Place, t.Wait, t.Ready, t.Lift = 1+r.IntN(6), Place(r.IntN(3)), r.IntN(3)/2, c.Today+r.IntN(10), r.IntN(8) == 0
		if r.IntN(3) > 0 {
			t.Place = Anywhere
		}
		switch n := r.IntN(8); {
		case n < 2:
			t.Stage = Opens
		case n == 2 && i < min(3, len(tasks)-2): // before any trial
			t.Stage = AsFound
		case n == 3:
			t.LaysUp = true
		case i >= len(tasks)-2:
			t.Stage = Trial
		}
	}
	return tasks
}

// opened is which tasks belong to the open interval, by the words of the rule:
// what opens, and what comes after that until the trial.
func opened(tasks []Task) []bool {
	in, tried := make([]bool, len(tasks)), make([]bool, len(tasks))
	for i := range tasks { // a task's predecessors stand before it
		in[i] = tasks[i].Stage == Opens || tasks[i].LaysUp
		for _, b := range tasks[i].After {
			before := in[b] && !(tasks[i].Stage == AsFound && tasks[i].Place == Afloat && tasks[b].Stage == Opens)
			in[i] = in[i] || before
			tried[i] = tried[i] || tasks[i].Stage != Trial && (tried[b] || tasks[b].Stage == Trial)
		}
		in[i] = in[i] && !tried[i]
	}
	return in
}

// lying is where she lies on each day, read off the windows by the words of
// their kinds; a booked lift may end early, so that it holds no task to a place.
func lying(c Calendar, day int) (place Place, booked, closed, noLift bool) {
	place = c.Lies
	for _, kind := range []WindowKind{AfloatDays, AshoreDays, LiftedDays} {
		for _, w := range c.Windows {
			if w.Kind == kind && w.From <= day && day <= w.To {
				place = map[bool]Place{true: Afloat, false: Ashore}[kind == AfloatDays]
			}
		}
	}
	for _, w := range c.Windows {
		if w.From > day || day > w.To {
			continue
		}
		booked, closed, noLift = booked || w.Kind == Booked, closed || w.Kind == Closed, noLift || w.Kind == NoLift
	}
	return place, booked, closed, noLift
}

// Derived: three hundred random plans against the rules, each by a check of
// its own that knows nothing of how plans are made.
func TestPlansKeepTheRules(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 6))
	intervals, refused, moves := 0, 0, 0
	for n := range 300 {
		c := anyCalendar(r)
		tasks := anyTasks(r, c)
		p := mustMake(t, tasks, c)
		keepsOrder(t, n, tasks, c, &p)
		keepsHands(t, n, tasks, c, &p)
		keepsDays(t, n, tasks, c, &p)
		switch {
		case p.Open.Any && p.Open.Why == Dated:
			intervals++
			moves += keepsInterval(t, n, tasks, c, &p)
		case p.Open.Any:
			refused++
			for i, in := range opened(tasks) {
				if in && p.Tasks[i].Why == Dated {
					t.Fatalf("plan %d opens nothing, but dates task %d of it", n, i)
				}
			}
		}
		if !slices.ContainsFunc(p.Order, func(i int) bool { return p.Tasks[i].Critical }) && len(p.Order) > 0 {
			t.Fatalf("plan %d: nothing is critical", n)
		}
	}
	if intervals < 100 || refused < 20 || moves < 10 {
		t.Fatalf("%d open intervals, %d refused, %d plans with a move: too few to tell", intervals, refused, moves)
	}
}

func keepsOrder(t *testing.T, n int, tasks []Task, c Calendar, p *Plan) {
	t.Helper()
	for i, task := range tasks {
		at := p.Tasks[i]
		if at.Why != Dated {
			continue
		}
		if at.Start < Moment(task.Ready)*p.PerDay {
			t.Fatalf("plan %d: task %d starts before its parts are there", n, i)
		}
		if at.LateStart < at.Start || at.Critical != (at.LateStart == at.Start) || at.End > p.Finish {
			t.Fatalf("plan %d: task %d: %+v", n, i, at)
		}
		for _, b := range task.After {
			before := p.Tasks[b]
			if task.Stage == AsFound && task.Place == Afloat && tasks[b].Stage == Opens || before.Why == Missed {
				continue // read before the run to the lift
			}
			if before.Why != Dated || at.Start < before.End+Moment(tasks[b].Wait)*p.PerDay {
				t.Fatalf("plan %d: task %d starts at %d, %d before it is %+v", n, i, at.Start, b, before)
			}
		}
	}
}

func keepsHands(t *testing.T, n int, tasks []Task, c Calendar, p *Plan) {
	t.Helper()
	worked := map[int]int{}
	for i := range tasks {
		sum := 0
		for _, s := range p.Sittings(i) {
			if s.From < 0 || s.To > c.MinutesPerDay || s.From >= s.To {
				t.Fatalf("plan %d: task %d from minute %d to %d of a day of %d", n, i, s.From, s.To, c.MinutesPerDay)
			}
			worked[s.Day] += s.To - s.From
			sum += s.To - s.From
		}
		if p.Tasks[i].Why == Dated && sum != tasks[i].Minutes {
			t.Fatalf("plan %d: task %d is worked at for %d of %d minutes", n, i, sum, tasks[i].Minutes)
		}
	}
	for day, minutes := range worked {
		if minutes > c.Hands*c.MinutesPerDay {
			t.Fatalf("plan %d: %d minutes on day %d by %d people of %d", n, minutes, day, c.Hands, c.MinutesPerDay)
		}
	}
	for _, i := range p.Order { // never more at once than people
		busy := 0
		for _, j := range p.Order {
			if p.Tasks[j].Start <= p.Tasks[i].Start && p.Tasks[i].Start < p.Tasks[j].End {
				busy++
			}
		}
		if busy > c.Hands {
			t.Fatalf("plan %d: %d steps at once for %d people", n, busy, c.Hands)
		}
	}
}

func keepsDays(t *testing.T, n int, tasks []Task, c Calendar, p *Plan) {
	t.Helper()
	for i, task := range tasks {
		sittings := p.Sittings(i)
		if task.Minutes <= c.MinutesPerDay && len(sittings) > 1 {
			t.Fatalf("plan %d: task %d fits in a day and is spread over %d", n, i, len(sittings))
		}
		for _, s := range sittings {
			place, booked, closed, noLift := lying(c, s.Day)
			if s.Day < c.Today || closed || task.Lift && noLift {
				t.Fatalf("plan %d: task %d on day %d: closed %v, no lift %v", n, i, s.Day, closed, noLift)
			}
			if at := p.Lies(s.Day); task.Place != Anywhere && at != task.Place {
				t.Fatalf("plan %d: task %d on day %d, when she lies elsewhere", n, i, s.Day)
			} else if at == Ashore && place == Afloat && !booked {
				t.Fatalf("plan %d: she lies ashore on day %d, which no window says", n, s.Day)
			}
		}
	}
}

// keepsInterval holds the open interval against its rules, and tells whether
// she is moved before it.
func keepsInterval(t *testing.T, n int, tasks []Task, c Calendar, p *Plan) (moves int) {
	t.Helper()
	in := opened(tasks)
	start, end := Moment(1<<40), Moment(0)
	for i := range tasks {
		if in[i] && p.Tasks[i].Why == Dated {
			start, end = min(start, p.Tasks[i].Start), max(end, p.Tasks[i].End)
		}
	}
	if p.Open.Start != start || p.Open.End != end {
		t.Fatalf("plan %d says it is open from %d to %d, it is from %d to %d", n, p.Open.Start, p.Open.End, start, end)
	}
	first, last := int(start/p.PerDay), int((end-1)/p.PerDay)
	for day := first; day <= last; day++ {
		if _, _, closed, _ := lying(c, day); closed {
			t.Fatalf("plan %d: open from day %d to %d over day %d without work", n, first, last, day)
		}
		if day > first && p.Lies(day) == Ashore && p.Lies(day-1) == Afloat {
			t.Fatalf("plan %d: she is moved under power on day %d, open from %d to %d", n, day, first, last)
		}
	}
	for day := c.Today + 1; day <= first; day++ {
		if p.Lies(day) == Ashore && p.Lies(day-1) == Afloat {
			moves = 1
		}
	}
	for _, w := range c.Windows {
		if w.Kind == Ready && min(last, w.To)-max(first, w.From)+1 > w.Most && max(first, w.From) <= min(last, w.To) {
			t.Fatalf("plan %d: open from day %d to %d in %+v", n, first, last, w)
		}
	}
	for i, task := range tasks {
		if in[i] && Moment(task.Ready)*p.PerDay > start-start%p.PerDay {
			t.Fatalf("plan %d: opened on day %d, the parts of task %d come on day %d", n, first, i, task.Ready)
		}
		if task.Stage == AsFound && !in[i] && p.Tasks[i].Why == Dated && p.Tasks[i].End > start {
			t.Fatalf("plan %d: as found is read at %d, opened at %d", n, p.Tasks[i].End, start)
		}
		if !in[i] && p.Tasks[i].Why == Dated && p.Tasks[i].End+Moment(task.Wait)*p.PerDay > start {
			for j := range tasks {
				if in[j] && slices.Contains(tasks[j].After, i) {
					t.Fatalf("plan %d: she is opened before task %d, for which task %d waits, is answered", n, i, j)
				}
			}
		}
	}
	return moves
}

// Derived: for a chain of tasks and one person, whether there is a time at all,
// on which day it ends, and that she lies open no longer than she must, by
// trying every day.
func TestOpenNoLongerThanMust(t *testing.T) {
	r := rand.New(rand.NewPCG(8, 1))
	could := 0
	for n := range 300 {
		c := anyCalendar(r)
		c.Hands = 1
		c.Windows = slices.DeleteFunc(c.Windows, func(w Window) bool { return w.Kind == Booked })
		var tasks []Task
		for i := range 2 + r.IntN(5) {
			task := Task{Name: "step", Minutes: 1 + r.IntN(5), Wait: r.IntN(4) / 3, Ready: c.Today + r.IntN(6), Place: Place(r.IntN(3))}
			if i > 0 {
				task.After = []int{i - 1}
			}
			tasks = append(tasks, task)
		}
		tasks[0].Stage, tasks[0].Place, tasks[len(tasks)-1].Stage = Opens, Anywhere, Trial
		begin, finish, ok := everyDay(tasks, c)
		p := mustMake(t, tasks, c)
		if dated := p.Open.Why == Dated; dated != ok {
			t.Fatalf("chain %d: planned %v (%d), trying every day %v", n, dated, p.Open.Why, ok)
		}
		if !ok {
			continue
		}
		could++
		if got := p.LastDay(p.Open.End); got != finish {
			t.Fatalf("chain %d ends on day %d, by trying on %d", n, got, finish)
		}
		if got := p.FirstDay(p.Open.Start); got < begin {
			t.Fatalf("chain %d is opened on day %d, day %d would do", n, got, begin)
		}
	}
	if could < 100 {
		t.Fatalf("only %d chains could be planned", could)
	}
}

// everyDay tries to begin a chain on each day: the first day on which it can
// end, and the last on which it can begin for that.
func everyDay(tasks []Task, c Calendar) (begin, finish int, ok bool) {
	return tryEveryDay(tasks, c, func(*days, int, Place) bool { return false })
}

// tryEveryDay leaves out the days that are struck out for what needs a place.
func tryEveryDay(tasks []Task, c Calendar, struck func(*days, int, Place) bool) (begin, finish int, ok bool) {
	d := c.layOut()
	for day := c.Today; day < c.Today+Horizon-200; day++ {
		at := Moment(day) * d.perDay
		var start Moment
		whole := true
		for i, task := range tasks {
			if day < task.Ready {
				whole = false
				break
			}
			for ; ; at++ { // minute by minute
				if at >= d.first+Moment(Horizon-1)*d.perDay {
					return begin, finish, ok
				}
				if end, can := work(d, at, Moment(task.Minutes), task.Place, struck); can {
					if i == 0 {
						start = at
					}
					at = end + Moment(task.Wait)*d.perDay
					break
				}
			}
		}
		end := at - Moment(tasks[len(tasks)-1].Wait)*d.perDay
		first, last := int(start/d.perDay), int((end-1)/d.perDay)
		if ok && last > finish {
			return begin, finish, ok
		}
		if whole && first == day && mayLieOpen(d, c, first, last) {
			begin, finish, ok = first, last, true
		}
	}
	return begin, finish, ok
}

func mayLieOpen(d *days, c Calendar, first, last int) bool {
	for day := first; day <= last; day++ {
		if d.stopped[day-c.Today] || day > first && d.where[day-c.Today] == Ashore && d.where[day-1-c.Today] == Afloat {
			return false
		}
	}
	return !slices.ContainsFunc(c.Windows, func(w Window) bool {
		from, to := max(first, w.From), min(last, w.To)
		return w.Kind == Ready && from <= to && to-from+1 > w.Most
	})
}
