package schedule

import "testing"

// She is opened when it is needed and where she lies then, not when there
// happens to be time; and a lift too short for the work leaves her closed: she
// cannot run to it with her line open.
func TestOpeningWaits(t *testing.T) {
	c := Calendar{Today: 0, Lies: Afloat, MinutesPerDay: 10, Hands: 1, Windows: []Window{{From: 30, To: 40, Kind: AshoreDays}}}
	tasks := []Task{
		{Name: "as found", Minutes: 5, Stage: AsFound, Place: Afloat},
		{Name: "open", Minutes: 5, Stage: Opens},
		{Name: "mend", Minutes: 5, Place: Ashore, After: []int{1}},
	}
	p := mustMake(t, tasks, c)
	for i, want := range []int{29, 30, 30} {
		if day := p.FirstDay(p.Tasks[i].Start); day != want {
			t.Errorf("“%s” on day %d, want %d", tasks[i].Name, day, want)
		}
	}
	tasks[2].Minutes = 10
	c.Windows[0].To = 30
	if p = mustMake(t, tasks, c); p.Open.Why != TooShort && p.Open.Why != MovedOpen && p.Open.Why != NoWindow {
		t.Errorf("in a lift of one day it is opened: %+v", p.Open)
	}
	c.Lies, c.Windows = Ashore, nil
	if p = mustMake(t, tasks, c); p.Tasks[0].Why != Missed || p.Tasks[1].Why != Dated || !p.Whole() {
		t.Errorf("a boat that lies ashore for good is not mended for want of a reading afloat: %+v", p.Tasks)
	}
}

// The run to the machinist's answer, and parts, come before she is opened.
func TestAnswersAndPartsComeFirst(t *testing.T) {
	p := mustMake(t, []Task{
		{Name: "ask the designer", Minutes: 1, Wait: 10},
		{Name: "open", Minutes: 1, Stage: Opens},
		{Name: "fit", Minutes: 1, After: []int{0, 1}, Ready: 4},
		{Name: "close", Minutes: 1, After: []int{2}, Ready: 15},
		{Name: "trial", Minutes: 1, Stage: Trial},
	}, Calendar{Today: 0, Lies: Afloat, MinutesPerDay: 10, Hands: 1})
	if day := p.FirstDay(p.Tasks[1].Start); day != 15 {
		t.Errorf("opened on day %d; the answer is there on day 10, the last part on day 15", day)
	}
	if p.FirstDay(p.Tasks[0].Start) != 0 || p.FirstDay(p.Finish-1) != 15 {
		t.Errorf("asked on day %d, done on %d", p.FirstDay(p.Tasks[0].Start), p.FirstDay(p.Finish-1))
	}
}

// Both sides of each window: what is just allowed, and what is just not.
func TestWindowsOfTheOpenInterval(t *testing.T) {
	tasks := []Task{{Name: "open", Minutes: 10, Stage: Opens}, {Name: "mend", Minutes: 10, After: []int{0}}, {Name: "trial", Minutes: 10, After: []int{1}, Stage: Trial}}
	for _, one := range []struct {
		name   string
		window Window
		begins int
		why    Why
	}{
		{"nothing in the way", Window{From: 50, To: 51, Kind: Closed}, 0, Dated},
		{"work ends the day before nobody works", Window{From: 3, To: 6, Kind: Closed}, 0, Dated},
		{"it would lie open over a day without work", Window{From: 2, To: 6, Kind: Closed}, 7, Dated},
		{"storm season, three days without drive allowed", Window{From: 0, To: 90, Kind: Ready, Most: 3}, 0, Dated},
		{"storm season, two days allowed", Window{From: 0, To: 90, Kind: Ready, Most: 2}, 89, Dated}, // one day in the season, or two at its end
		{"storm season, never without drive", Window{From: 0, To: 90, Kind: Ready, Most: 0}, 91, Dated},
		{"never without drive, ever", Window{From: 0, To: 5000, Kind: Ready, Most: 2}, -1, NotReady},
		{"nobody works after today", Window{From: 1, To: 5000, Kind: Closed}, -1, NoWindow},
	} {
		p := mustMake(t, tasks, Calendar{Today: 0, Lies: Afloat, MinutesPerDay: 10, Hands: 1, Windows: []Window{one.window}})
		if p.Open.Why != one.why || one.begins >= 0 && p.FirstDay(p.Open.Start) != one.begins {
			t.Errorf("%s: opened on day %d, why %d", one.name, p.FirstDay(p.Open.Start), p.Open.Why)
		}
		if one.why == NotReady && p.Open.Window != 0 {
			t.Errorf("%s: the window in the way is not named", one.name)
		}
	}
	c := Calendar{Today: 0, Lies: Afloat, MinutesPerDay: 10, Hands: 1}
	for day := 2; day < Horizon; day += 3 { // two days of work, one without
		c.Windows = append(c.Windows, Window{From: day, To: day, Kind: Closed})
	}
	if p := mustMake(t, tasks, c); p.Open.Why != AcrossClosed || p.Open.Window != 0 || p.Tasks[0].Why != ForNothing {
		t.Errorf("three days of work with every third day free: %+v", p.Open)
	}
	c.Hands, tasks[1].After = 2, nil
	if p := mustMake(t, tasks, c); p.Open.Why != Dated { // both on one day
		t.Errorf("two people make two days of it: %+v", p.Open)
	}
}

func TestLiftsAreBookedAndBarred(t *testing.T) {
	c := Calendar{Today: 0, Lies: Afloat, MinutesPerDay: 10, Hands: 1, Windows: []Window{{From: 10, To: 30, Kind: Booked}}}
	tasks := []Task{{Name: "open", Minutes: 5, Stage: Opens}, {Name: "mend", Minutes: 15, Place: Ashore, After: []int{0}}, {Name: "trial", Minutes: 5, Place: Afloat, After: []int{1}, Stage: Trial}}
	p := mustMake(t, tasks, c)
	if first, last := p.FirstDay(p.Open.Start), p.LastDay(p.Open.End); first != 10 || last != 12 {
		t.Errorf("lifted on day 10, open from %d to %d", first, last)
	}
	if p.Lies(11) != Ashore || p.Lies(12) != Afloat {
		t.Error("she is not launched when the work ashore is done")
	}
	c.Windows = []Window{{From: 10, To: 30, Kind: AshoreDays}, {From: 0, To: 19, Kind: NoLift}}
	if p = mustMake(t, tasks, c); p.FirstDay(p.Open.Start) < 20 || p.Open.Why != Dated {
		t.Errorf("lifted on day %d, not before 20 she can be", p.FirstDay(p.Open.Start))
	}
	c.Windows = []Window{{From: 0, To: 19, Kind: NoLift}}
	tasks[1].Place, tasks[1].Lift = Anywhere, true
	if p = mustMake(t, tasks, c); p.FirstDay(p.Tasks[1].Start) != 20 || p.FirstDay(p.Open.Start) < 19 {
		t.Errorf("the engine is lifted on day %d, opened on %d", p.FirstDay(p.Tasks[1].Start), p.FirstDay(p.Open.Start))
	}
}

// Nobody opens what cannot be mended.
func TestNothingIsOpenedForNothing(t *testing.T) {
	p := mustMake(t, []Task{
		{Name: "safe", Minutes: 1, Stage: Opens},
		{Name: "open", Minutes: 1, Stage: Opens, After: []int{0}},
		{Name: "mend", Minutes: 1, Place: Ashore, After: []int{1}},
		{Name: "close", Minutes: 1, After: []int{2}},
		{Name: "look", Minutes: 1},
	}, always(1))
	want := []Why{ForNothing, ForNothing, NoWindow, AfterAnother, Dated}
	for i, why := range want {
		if p.Tasks[i].Why != why {
			t.Errorf("task %d: %d, want %d", i, p.Tasks[i].Why, why)
		}
	}
	if p.Open.Why != NoWindow || p.Whole() {
		t.Errorf("%+v", p.Open)
	}
}

// A lift that has begun ends today at the soonest, and one to come the day it began.
func TestABookedLiftEndsNoSoonerThanItCan(t *testing.T) {
	trial := Task{Name: "trial", Minutes: 5, Place: Afloat}
	c := Calendar{Today: 10, Lies: Afloat, MinutesPerDay: 10, Hands: 1, Windows: []Window{{From: 5, To: 30, Kind: Booked}}}
	if p := mustMake(t, []Task{trial}, c); p.FirstDay(p.Tasks[0].Start) != 11 {
		t.Errorf("lifted since day 5, she is tried on day %d", p.FirstDay(p.Tasks[0].Start))
	}
	c.Windows[0].From = 12
	trial.After = []int{0}
	if p := mustMake(t, []Task{{Name: "paint", Minutes: 5, Place: Ashore}, trial}, c); p.FirstDay(p.Tasks[1].Start) != 13 {
		t.Errorf("painted on day 12, she is tried on day %d", p.FirstDay(p.Tasks[1].Start))
	}
}

// The window that stands in the way is named by its place in the calendar, among others
// of its kind and of other kinds; of a plan in whose way nothing stands none is.
func TestTheWindowInTheWayIsNamed(t *testing.T) {
	tasks := []Task{{Name: "open", Minutes: 10, Stage: Opens}, {Name: "mend", Minutes: 10, After: []int{0}}, {Name: "trial", Minutes: 10, After: []int{1}, Stage: Trial}}
	c := Calendar{Today: 100, Lies: Afloat, MinutesPerDay: 10, Hands: 1}
	if p := mustMake(t, tasks, c); p.Open.Why != Dated || p.Open.Window != -1 {
		t.Errorf("nothing is in the way: %+v", p.Open)
	}
	c.Windows = []Window{{From: 90, To: 110, Kind: AfloatDays}, {From: 50, To: 60, Kind: Closed}}
	for day := 102; day < 100+Horizon; day += 3 {
		c.Windows = append(c.Windows, Window{From: day, To: day, Kind: Closed})
	}
	if p := mustMake(t, tasks, c); p.Open.Why != AcrossClosed || p.Open.Window != 2 {
		t.Errorf("two days with work and one without: %+v", p.Open)
	}
}

// A sample that is drawn warm is drawn where she was run for it; and a reading afloat
// that no day before the work allows is missed, though she lies afloat again later.
func TestReadingsAsFound(t *testing.T) {
	c := Calendar{Today: 0, Lies: Afloat, MinutesPerDay: 10, Hands: 1, Windows: []Window{{From: 30, To: 40, Kind: AshoreDays}}}
	p := mustMake(t, []Task{
		{Name: "run", Minutes: 5, Stage: AsFound, Place: Afloat},
		{Name: "sample", Minutes: 5, Stage: AsFound, After: []int{0}},
		{Name: "open", Minutes: 5, Stage: Opens, After: []int{1}},
		{Name: "mend", Minutes: 5, Place: Ashore, After: []int{2}},
	}, c)
	for i, want := range []int{29, 29, 30, 30} {
		if day := p.FirstDay(p.Tasks[i].Start); day != want {
			t.Errorf("task %d on day %d, want %d", i, day, want)
		}
	}
	c.Lies, c.Windows = Ashore, []Window{{From: 50, To: 60, Kind: AfloatDays}}
	if p = mustMake(t, []Task{{Name: "run", Minutes: 5, Stage: AsFound, Place: Afloat}, {Name: "open", Minutes: 5, Stage: Opens}, {Name: "mend", Minutes: 5, Place: Ashore, After: []int{1}}}, c); p.Tasks[0].Why != Missed || p.FirstDay(p.Tasks[1].Start) != 0 {
		t.Errorf("ashore until day 50: run why %d, opened on day %d", p.Tasks[0].Why, p.FirstDay(p.Tasks[1].Start))
	}
}
