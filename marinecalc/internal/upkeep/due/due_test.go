package due

import (
	"math"
	"math/rand/v2"
	"testing"
)

var nan = math.NaN()

func near(a, b float64) bool {
	return math.Abs(a-b) < 1e-9*(1+math.Abs(b)) || math.IsNaN(a) && math.IsNaN(b)
}

// A meter that was renewed, and one that was misread high, part the log.
func TestMetersOfALog(t *testing.T) {
	for _, c := range []struct {
		log  Log
		want []int
	}{
		{Log{{0, 10}, {50, 20}}, []int{2}},
		{Log{{0, 1500}, {20, 1520}, {60, 2}, {80, 22}}, []int{2, 2}},
		{Log{{0, 1500}, {20, 15200}, {60, 1541}, {80, 1560}}, []int{1, 1, 2}},
		{Log{{0, 0}, {1, 48}}, []int{2}}, // two days of running all day
		{nil, nil},
	} {
		parts := c.log.Meters()
		if len(parts) != len(c.want) {
			t.Errorf("%v: %v", c.log, parts)
			continue
		}
		for i, p := range parts {
			if len(p) != c.want[i] {
				t.Errorf("%v: %v", c.log, parts)
			}
		}
	}
}

func TestHourMeterBetweenItsMarks(t *testing.T) {
	log := Log{{100, 50}, {0, 10}, {50, 20}}.Meters()[0]
	if len(log) != 3 {
		t.Fatalf("%v", log)
	}
	for _, c := range []struct {
		day  int
		want float64
	}{{0, 10}, {25, 15}, {50, 20}, {75, 35}, {100, 50}, {110, 55}, {-4, 8}, {-100, -40}} {
		if got := log.At(c.day, 0.5); !near(got, c.want) {
			t.Errorf("day %d: %g, want %g", c.day, got, c.want)
		}
	}
	for _, c := range []struct{ hours, perDay, want float64 }{{10, 0.5, 0}, {15, 0.5, 25}, {35, 0.5, 75}, {55, 0.5, 110}, {55, nan, nan}, {8, 0.5, -4}} {
		if got := log.DayOf(c.hours, c.perDay); !near(got, c.want) {
			t.Errorf("%g h: day %g, want %g", c.hours, got, c.want)
		}
	}
	if got := log.PerDay(50); !near(got, 0.6) {
		t.Errorf("%g h a day", got)
	}
	if got := log.PerDay(1000); !near(got, 0.4) {
		t.Errorf("%g h a day", got)
	}
	if !math.IsNaN(Log{{0, 1}, {29, 9}}.PerDay(400)) || math.IsNaN(Log{{0, 1}, {30, 9}}.PerDay(400)) || !math.IsNaN(Log{}.At(3, 1)) {
		t.Error("too little to tell")
	}
}

// The sooner counts, held against walking day by day with a meter that runs:
// an independent simulation.
func TestDueDayAgainstWalkingDayByDay(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for range 500 {
		c := Care{EveryHours: 20 + 300*r.Float64(), EveryDays: float64(30 + r.IntN(900)), Done: true, Day: r.IntN(200), Hours: 100 * r.Float64(), Wear: nan}
		u := Use{Today: c.Day + r.IntN(400), PerDay: 0.05 + 2*r.Float64()}
		u.Hours = c.Hours + 0.3*float64(u.Today-c.Day)*r.Float64()
		if r.IntN(3) == 0 {
			c.Wear = float64(u.Today + r.IntN(300))
		}
		w := c.Next(u)
		if u.Hours-c.Hours >= c.EveryHours {
			if w.Day > float64(u.Today) || c.StateOf(w, u, 30) != Overdue {
				t.Fatalf("hours are run: %+v %+v %+v", c, u, w)
			}
			continue
		}
		hours, day := u.Hours, float64(u.Today)
		for hours-c.Hours < c.EveryHours-1e-9 && day-float64(c.Day) < c.EveryDays-1e-9 && !(day >= c.Wear) {
			hours, day = hours+u.PerDay, day+1
		}
		if day > float64(u.Today) && !(w.Day <= day && w.Day > day-1) {
			t.Fatalf("walked to %g: %+v %+v %+v", day, c, u, w)
		}
		if day == float64(u.Today) && w.Day > day {
			t.Fatalf("due today: %+v %+v %+v", c, u, w)
		}
	}
}

func TestStatesOnBothSides(t *testing.T) {
	u := Use{Today: 1000, Hours: 500, PerDay: 0.5}
	for _, c := range []struct {
		name string
		care Care
		want State
		by   By
	}{
		{"never", Care{EveryHours: 100, EveryDays: 365, Wear: nan}, Never, ""},
		{"never looked at, and worn", Care{EveryHours: 100, EveryDays: 365, Wear: 990}, Overdue, ByWear},
		{"by date, the day before", Care{EveryHours: nan, EveryDays: 365, Done: true, Day: 636, Hours: nan, Wear: nan}, Soon, ByDate},
		{"by date, the day", Care{EveryHours: nan, EveryDays: 365, Done: true, Day: 635, Hours: nan, Wear: nan}, Overdue, ByDate},
		{"by hours, one left", Care{EveryHours: 100, EveryDays: nan, Done: true, Day: 900, Hours: 401, Wear: nan}, Soon, ByHours},
		{"by hours, run", Care{EveryHours: 100, EveryDays: nan, Done: true, Day: 900, Hours: 400, Wear: nan}, Overdue, ByHours},
		{"by hours, in 30 days", Care{EveryHours: 100, EveryDays: nan, Done: true, Day: 900, Hours: 415, Wear: nan}, Soon, ByHours},
		{"by hours, in 32 days", Care{EveryHours: 100, EveryDays: nan, Done: true, Day: 900, Hours: 416, Wear: nan}, Later, ByHours},
		{"the readings come first", Care{EveryHours: 100, EveryDays: 365, Done: true, Day: 990, Hours: 499, Wear: 1010}, Soon, ByWear},
		{"hours not known", Care{EveryHours: 100, EveryDays: nan, Done: true, Day: 990, Hours: nan, Wear: nan}, Open, ""},
	} {
		w := c.care.Next(u)
		if got := c.care.StateOf(w, u, 30); got != c.want || w.By != c.by {
			t.Errorf("%s: %s by %q, %+v", c.name, got, w.By, w)
		}
	}
	run := Care{EveryHours: 100, EveryDays: nan, Done: true, Day: 900, Hours: 399, Wear: nan} // overdue with a meter, though nobody knows the pace
	if got := run.StateOf(run.Next(Use{1000, 500, nan}), Use{1000, 500, nan}, 30); got != Overdue {
		t.Error(got)
	}
}

// A sump simulated hour by hour: debris comes in at a steady rate, a change
// takes it out, and the method looks every hour.
func TestFirstShownAgainstASumpHourByHour(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 4))
	for range 300 {
		rate := 1e-8 * (1 + 9*r.Float64())
		m := Method{Threshold: 1e-6 * (1 + 20*r.Float64()), Sees: 0.05 + 0.9*r.Float64()}
		from := math.Floor(500 * r.Float64())
		changes := []float64{}
		for at := from + float64(20+r.IntN(300)); len(changes) < r.IntN(6); at += float64(20 + r.IntN(300)) {
			changes = append(changes, at)
		}
		share, hour := 0.0, from
		for next := 0; share*m.Sees < m.Threshold; hour++ {
			if next < len(changes) && hour == changes[next] {
				share, next = 0, next+1
			}
			share += rate
		}
		if got := m.FirstShown(rate, from, changes); !(got <= hour+1e-6 && got > hour-1-1e-6) {
			t.Fatalf("shown at %g, in the sump at %g (rate %g, %+v, from %g, %v)", got, hour, rate, m, from, changes)
		}
	}
}

// The share of each part is what it adds to the longest lead time, on average
// over every order: worked out here by going through all orders.
func TestWaitIsSharedAsOverEveryOrder(t *testing.T) {
	for _, lead := range [][]float64{{14}, {14, 14}, {30, 10}, {14, 7, 3, 3, 3}, {0, 0, 5}, nil} {
		want, orders := make([]float64, len(lead)), 0
		var walk func(left []int, longest float64, add []float64)
		walk = func(left []int, longest float64, add []float64) {
			if len(left) == 0 {
				orders++
				for i, a := range add {
					want[i] += a
				}
				return
			}
			for n, i := range left {
				rest := append(append([]int{}, left[:n]...), left[n+1:]...)
				more := append([]float64{}, add...)
				more[i] = max(0, lead[i]-longest)
				walk(rest, max(longest, lead[i]), more)
			}
		}
		all := make([]int, len(lead))
		for i := range all {
			all[i] = i
		}
		walk(all, 0, make([]float64, len(lead)))
		for i, got := range Waiting(lead) {
			if !near(got, want[i]/float64(orders)) {
				t.Errorf("%v: part %d bears %g, want %g", lead, i, got, want[i]/float64(orders))
			}
		}
	}
}
