package schedule

import (
	"math/rand/v2"
	"slices"
	"testing"
)

// Derived: three hundred random plans with days asked for before each move:
// nothing is put off, no date is lost, she lies open for those days longer at
// most, and what needs a place is done with so many days left as the plan says.
func TestReservePutsNothingOff(t *testing.T) {
	r := rand.New(rand.NewPCG(11, 4))
	freed := 0
	for n := range 300 {
		c := anyCalendar(r)
		from := c.Today + r.IntN(20)
		c.Windows = append(c.Windows, Window{From: from, To: from + 5 + r.IntN(15), Kind: []WindowKind{LiftedDays, Booked}[r.IntN(2)]})
		tasks := anyTasks(r, c)
		without := mustMake(t, tasks, c)
		c.Reserve = 1 + r.IntN(4)
		with := mustMake(t, tasks, c)
		for i := range tasks {
			if with.Tasks[i].Why != without.Tasks[i].Why {
				t.Fatalf("plan %d: task %d: %d with a reserve, %d without", n, i, with.Tasks[i].Why, without.Tasks[i].Why)
			}
		}
		if len(with.Order) > 0 && with.LastDay(with.Finish) > without.LastDay(without.Finish) {
			t.Fatalf("plan %d ends on day %d with a reserve, on %d without", n, with.LastDay(with.Finish), without.LastDay(without.Finish))
		}
		if with.Open.Any && with.Open.Why == Dated {
			long, short := with.LastDay(with.Open.End)-with.FirstDay(with.Open.Start), without.LastDay(without.Open.End)-without.FirstDay(without.Open.Start)
			if long > short+c.Reserve {
				t.Fatalf("plan %d: open over %d nights with %d days of reserve, over %d without", n, long, c.Reserve, short)
			}
			keepsInterval(t, n, tasks, c, &with)
		}
		keepsOrder(t, n, tasks, c, &with)
		keepsHands(t, n, tasks, c, &with)
		keepsDays(t, n, tasks, c, &with)
		for _, s := range with.Stops() {
			left := 0
			for day := with.LastDay(with.Tasks[s.Task].End) + 1; day < s.Day; day++ {
				if _, _, closed, _ := lying(c, day); !closed {
					left++
				}
			}
			if left != s.Left {
				t.Fatalf("plan %d: %d days are left before day %d, it says %d", n, left, s.Day, s.Left)
			}
		}
		if least(with.Stops()) > least(without.Stops()) {
			freed++
		}
	}
	if freed < 10 {
		t.Fatalf("only %d of 300 plans have more days left: too few to tell", freed)
	}
}

func least(stops []Stop) int {
	least := 1 << 20
	for _, s := range stops {
		least = min(least, s.Left)
	}
	return least
}

// Derived: for a chain of tasks and one person, by trying every day with the
// last days in each place struck out: no more days could have been kept free,
// and she is opened no earlier than that asks.
func TestReserveIsAsAskedWhereItCanBe(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 9))
	kept := map[int]int{}
	for n := range 300 {
		c := anyCalendar(r)
		c.Hands, c.Reserve = 1, 2
		c.Windows = slices.DeleteFunc(c.Windows, func(w Window) bool { return w.Kind == Booked })
		from := c.Today + r.IntN(4)
		c.Windows = append(c.Windows, Window{From: from, To: from + 2 + r.IntN(8), Kind: LiftedDays})
		tasks := []Task{
			{Name: "open", Minutes: 1 + r.IntN(3), Stage: Opens, Ready: c.Today + r.IntN(4)},
			{Name: "mend", Minutes: 1 + r.IntN(8), Place: Ashore, After: []int{0}, Wait: r.IntN(3) / 2},
			{Name: "close", Minutes: 1, Place: Ashore, After: []int{1}},
			{Name: "trial", Minutes: 1, Place: Afloat, After: []int{2}, Stage: Trial},
		}
		begin, finish, ok := everyDay(tasks, c)
		if !ok {
			continue
		}
		p := mustMake(t, tasks, c)
		free := map[int]int{}
		for day := c.Today + 1; day <= finish+2; day++ { // the moves one after the other
			if p.Lies(day) == p.Lies(day-1) {
				continue
			}
			for free[day] = 2; free[day] > 0; free[day]-- {
				if first, last, can := everyDayBut(tasks, c, free); can && last <= finish && first >= begin-2 {
					break
				}
			}
			kept[free[day]]++
		}
		if first, last, _ := everyDayBut(tasks, c, free); p.FirstDay(p.Open.Start) != first || p.LastDay(p.Open.End) != last {
			t.Fatalf("chain %d with %v days to keep: open from day %d to %d, by trying from %d to %d", n, free, p.FirstDay(p.Open.Start), p.LastDay(p.Open.End), first, last)
		}
	}
	if kept[0] < 15 || kept[1] < 10 || kept[2] < 40 {
		t.Fatalf("%v chains kept 0, 1, 2 days free: too few to tell", kept)
	}
}

// everyDayBut tries every day with the last days of work in a place struck out
// for what needs that place: so many before each day on which she is moved.
func everyDayBut(tasks []Task, c Calendar, free map[int]int) (begin, finish int, ok bool) {
	struck := func(d *days, day int, place Place) bool {
		between := 1 // days of work up to the move, this one among them
		for next := day + 1; next < Horizon; next++ {
			if d.where[next] != d.where[day] {
				return d.where[day] == place && between <= free[next+c.Today]
			}
			if !d.stopped[next] {
				between++
			}
		}
		return false
	}
	return tryEveryDay(tasks, c, struck)
}

// With a lift from day 10 to 20: she is opened so that two days are left before
// the launch, one where that is all there is, and none where the part comes too
// late; the lift is no day to have the reading afloat on either.
func TestReserveBeforeLiftAndLaunch(t *testing.T) {
	c := Calendar{Today: 0, Lies: Afloat, MinutesPerDay: 10, Hands: 1, Reserve: 2, Windows: []Window{{From: 10, To: 20, Kind: LiftedDays}}}
	tasks := []Task{
		{Name: "as found", Minutes: 5, Stage: AsFound, Place: Afloat},
		{Name: "open", Minutes: 5, Stage: Opens},
		{Name: "mend", Minutes: 15, Place: Ashore, After: []int{1}},
		{Name: "trial", Minutes: 5, Place: Afloat, After: []int{2}, Stage: Trial},
	}
	for _, one := range []struct{ ready, read, opened, left int }{
		{0, 7, 17, 2}, {17, 7, 17, 2}, {18, 7, 18, 1}, {19, 7, 19, 0},
	} {
		tasks[2].Ready = one.ready
		p := mustMake(t, tasks, c)
		stops := p.Stops()
		if len(stops) != 2 {
			t.Fatalf("parts on day %d: %d stops", one.ready, len(stops))
		}
		if read, opened := p.FirstDay(p.Tasks[0].Start), p.FirstDay(p.Open.Start); read != one.read || opened != one.opened || stops[1].Left != one.left || stops[0].Left != 9-read {
			t.Errorf("parts on day %d: read on %d, opened on %d, stops %+v; want %+v", one.ready, read, opened, stops, one)
		}
		if p.LastDay(p.Finish) != 21 {
			t.Errorf("parts on day %d: done on %d", one.ready, p.LastDay(p.Finish))
		}
	}
	c.Reserve = -1
	if _, err := Make(tasks, c); err == nil {
		t.Error("less than no day is kept free")
	}
	if c.Reserve = mostReserve + 1; true {
		if _, err := Make(tasks, c); err == nil {
			t.Errorf("%d days are kept free", c.Reserve)
		}
	}
}
