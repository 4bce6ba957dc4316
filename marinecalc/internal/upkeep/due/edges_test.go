package due

import (
	"math"
	"testing"
)

// Where the meter is parted and where it is not, on both sides.
func TestMetersArePartedAtTheirEdges(t *testing.T) {
	for _, c := range []struct {
		what string
		log  Log
		want int
	}{
		{"an engine that did not run", Log{{0, 10}, {5, 10}}, 1},
		{"two readings of one day, as they came", Log{{5, 10}, {5, 12}}, 1},
		{"a day and a day, all round the clock", Log{{100, 0}, {101, 48}}, 1},
		{"half an hour more than that", Log{{100, 0}, {101, 48.5}}, 2},
	} {
		if parts := c.log.Meters(); len(parts) != c.want {
			t.Errorf("%s: %v", c.what, parts)
		}
	}
}

func TestHourMeterAtItsEdges(t *testing.T) {
	if got := (Log{{5, 10}}).At(5, 1); got != 10 {
		t.Errorf("at the only mark %g", got)
	}
	if got := (Log{{5, 10}}).DayOf(20, 1); got != 15 {
		t.Errorf("from the only mark on: day %g", got)
	}
	stood := Log{{0, 10}, {5, 10}, {10, 20}}
	if got := stood.DayOf(10, 1); got != 0 {
		t.Errorf("it came to 10 h on day %g", got)
	}
	for _, perDay := range []float64{0, -1} {
		if got := stood.DayOf(60, perDay); !math.IsNaN(got) {
			t.Errorf("at %g h a day it comes to 60 h on day %g", perDay, got)
		}
	}
	if got := (Log{{100, 1}, {120, 9}}).PerDay(400); !math.IsNaN(got) {
		t.Errorf("twenty days tell %g h a day", got)
	}
}

func TestWhatIsDueAtItsEdges(t *testing.T) {
	both := Care{EveryHours: 100, EveryDays: 110, Done: true, Day: 900, Hours: 405, Wear: nan} // day 1010 either way
	if w := both.Next(Use{Today: 1000, Hours: 500, PerDay: 0.5}); w.Day != 1010 || w.By != ByDate {
		t.Errorf("on one day by date and hours: %+v", w)
	}
	run := Care{EveryHours: 100, EveryDays: nan, Done: true, Day: 900, Hours: 400, Wear: nan}
	if w := run.Next(Use{Today: 1000, Hours: 500, PerDay: nan}); w.Day != 1000 || w.By != ByHours {
		t.Errorf("the hours are just run, at a pace nobody knows: %+v", w)
	}
	if w := run.Next(Use{Today: 1000, Hours: 450, PerDay: 0}); !math.IsNaN(w.Day) {
		t.Errorf("an engine that never runs: %+v", w)
	}
	if got := run.StateOf(When{Day: nan, HoursLeft: 0}, Use{Today: 1000}, 30); got != Overdue {
		t.Errorf("no hours left: %s", got)
	}
}

// A change just when the debris would show comes too late to hide it.
func TestShownAtTheChange(t *testing.T) {
	m := Method{Threshold: 8, Sees: 1}
	if got := m.FirstShown(1, 0, []float64{8, 30}); got != 8 {
		t.Errorf("shown at %g h", got)
	}
}
