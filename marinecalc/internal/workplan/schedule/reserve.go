// Days kept free before she is moved, or before work must rest.

package schedule

// move is a day, counted from today, on which she lies elsewhere than the day
// before.
type move struct {
	day  int
	from Place
}

// moves are the days on which the calendar has her moved.
func (d *days) moves() (list []move) {
	for day := 1; day < len(d.where); day++ {
		if d.where[day] != d.where[day-1] {
			list = append(list, move{day, d.where[day-1]})
		}
	}
	return list
}

// keepFree gives the last days of work in a place, so many before each move, to
// nothing that needs that place.
func (d *days) keepFree(moves []move, free []int) {
	d.kept = make([]Place, len(d.where))
	for i, m := range moves {
		left := free[i]
		for day := m.day - 1; day >= 0 && left > 0; day-- {
			if !d.stopped[day] {
				d.kept[day] = m.from
				left--
			}
		}
	}
}

// withReserve plans with as many days kept free before each move as are asked
// for, or else as many as put nothing off: every task has its date as without,
// the whole ends no later, and she lies open for those days longer at most.
// A move after the end needs none kept: the work ends as early as it can.
func withReserve(net *network, c Calendar) Plan {
	moves := c.layOut().moves()
	free := make([]int, len(moves))
	without := bestLaunch(net, c, moves, free)
	best := without
	for i, m := range moves {
		if len(best.Order) == 0 || m.day+c.Today > best.LastDay(best.Finish)+c.Reserve {
			break
		}
		for free[i] = c.Reserve; free[i] > 0; free[i]-- {
			if p := bestLaunch(net, c, moves, free); p.asGood(&without, c.Reserve) {
				best = p
				break
			}
		}
	}
	best.moves = moves
	return best
}

// asGood tells whether a plan with days kept free is as good as the one
// without.
func (p *Plan) asGood(without *Plan, most int) bool {
	for i := range p.Tasks {
		if p.Tasks[i].Why != without.Tasks[i].Why {
			return false
		}
	}
	if len(p.Order) > 0 && p.LastDay(p.Finish) > without.LastDay(without.Finish) {
		return false
	}
	if !p.Open.Any || p.Open.Why != Dated {
		return true
	}
	return p.LastDay(p.Open.End) <= without.LastDay(without.Open.End) && p.openDays() <= without.openDays()+most
}

func (p *Plan) openDays() int { return p.LastDay(p.Open.End) - p.FirstDay(p.Open.Start) + 1 }

// Stop is a day by which work in one place has to be done.
type Stop struct {
	Day  int   // on which she lies elsewhere
	From Place // where the work was
	Task int   // the last of it
	Left int   // days of work between that and the move
}

// Stops are the moves that work has to be done before, each with the days left
// before it. One that a plan may put off, the end of a booked haul-out, counts
// at its last day.
func (p *Plan) Stops() (list []Stop) {
	before := 0
	for _, m := range p.moves {
		last := -1
		for _, i := range p.Order {
			t := &p.Tasks[i]
			if day := p.LastDay(t.End) - p.days.today; p.places[i] == m.from && before <= day && day < m.day && (last < 0 || t.End > p.Tasks[last].End) {
				last = i
			}
		}
		before = m.day
		if last < 0 {
			continue
		}
		first := p.LastDay(p.Tasks[last].End) + 1
		list = append(list, Stop{Day: m.day + p.days.today, From: m.from, Task: last, Left: p.WorkDays(first, m.day+p.days.today)})
	}
	return list
}

// WorkDays counts the days with work allowed, from one up to another that does
// not count.
func (p *Plan) WorkDays(from, to int) (n int) {
	for day := from - p.days.today; day < to-p.days.today; day++ {
		if day >= 0 && day < len(p.days.stopped) && !p.days.stopped[day] {
			n++
		}
	}
	return n
}
