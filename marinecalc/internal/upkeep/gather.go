package upkeep

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"strings"

	"example.org/driveline/marinecalc/internal/boat"
	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/internal/day"
	"example.org/driveline/marinecalc/internal/upkeep/due"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/quantity"
)

const (
	secondsPerDay  = 86400
	secondsPerHour = 3600
	daysPerYear    = 365.25
	recent         = 400 // days over which the log says how much she is run
)

// gather reads days, the hour meter and how much she is run, and refuses what
// cannot be.
func (k *keeper) gather() error {
	var list problem.List
	read := func(where, date string) int {
		n, err := day.Parse(date)
		if err != nil {
			list.Add(where, err.Error(), "year-month-day", "")
		}
		return n
	}
	k.today = read("/today", k.in.Today)
	items := map[string]bool{}
	for _, row := range k.session.Book.Table("service-intervals").Rows.All() {
		items[row.Pick] = true
	}
	known := func(where, what, id string, of map[string]bool) {
		if of[id] {
			return
		}
		hint := ""
		names := slices.Sorted(maps.Keys(of))
		if best, ok := contract.Closest(id, names); ok {
			hint = fmt.Sprintf("did you mean %q?", best)
		}
		list.Add(where, fmt.Sprintf("there is no %s %q", what, id), strings.Join(names, ", "), hint)
	}
	for i, d := range k.in.Done {
		known(fmt.Sprintf("/done/%d/item", i), "care", d.Item, items)
		read(fmt.Sprintf("/done/%d/date", i), d.Date)
	}
	for i, m := range k.in.Intervals {
		where := fmt.Sprintf("/intervals/%d", i)
		known(where+"/item", "care", m.Item, items)
		if math.IsNaN(float64(m.Hours)) && math.IsNaN(float64(m.Within)) {
			list.Add(where, "the interval has neither hours nor a time", "hours, a time, or both", "")
		}
	}
	for i, w := range k.in.Without {
		known(fmt.Sprintf("/without/%d/item", i), "care", w.Item, items)
	}
	parts := map[string]bool{}
	for _, p := range k.session.Book.Parts().All() {
		parts[p.ID] = true
	}
	for i, s := range k.in.Spares {
		known(fmt.Sprintf("/spares/%d/part", i), "part", s.Part, parts)
	}
	k.readLog()
	return list.Err()
}

// readLog reads the hour meter of the boat file, of what was done, and of
// today, and finds the hours of a year: the larger of what was typed and what
// the log says, so that nothing is due later than by either.
func (k *keeper) readLog() {
	for e := range k.session.Boat.Readings() {
		if seconds, ok := e.EngineHours(); ok {
			k.mark(e.Date, seconds)
		}
	}
	for _, d := range k.in.Done {
		k.mark(d.Date, float64(d.EngineHours))
	}
	k.log = k.log.Sort()
	byLog := k.log.PerDay(recent)
	typed := float64(k.in.HoursPerYear) / secondsPerHour / daysPerYear
	perDay := byLog
	if !(byLog >= typed) && !math.IsNaN(typed) {
		perDay = typed
	}
	k.use = due.Use{Today: k.today, Hours: float64(k.in.HoursNow) / secondsPerHour, PerDay: perDay}
	at := k.log.At(k.today, nothing(perDay))
	if !(k.use.Hours >= at) && !math.IsNaN(at) { // the newest reading is of an earlier day
		k.use.Hours = at
	}
	if !math.IsNaN(k.use.Hours) {
		k.log = append(k.log, due.Mark{Day: k.today, Hours: k.use.Hours}).Sort()
	}
	k.out.MeterToday = quantity.Time(k.use.Hours * secondsPerHour)
	k.out.YearUsed = quantity.Time(perDay * daysPerYear * secondsPerHour)
	k.out.YearByLog = quantity.Time(byLog * daysPerYear * secondsPerHour)
}

func (k *keeper) mark(date string, seconds float64) {
	if n, err := day.Parse(date); err == nil && !math.IsNaN(seconds) && n <= k.today {
		k.log = append(k.log, due.Mark{Day: n, Hours: seconds / secondsPerHour})
	}
}

// nothing is what is not known counted as none.
func nothing(v float64) float64 {
	if math.IsNaN(v) {
		return 0
	}
	return v
}

// known gives what rows of care ask of the boat.
func (k *keeper) known(name string) (float64, string, bool) {
	pointer := map[string]string{"packing": "/gland/packing", "couplingKind": "/coupling/kind", "use": "/use"}[name]
	raw, _, _, ok := k.session.Boat.Find(pointer)
	word, is := raw.(string)
	return 0, word, ok && is
}

// looked is the newest reading of one of the names, up to today.
func (k *keeper) looked(names []string) (newest *boat.Entry) {
	for e := range k.session.Boat.Readings() {
		if d, err := day.Parse(e.Date); err != nil || d > k.today || newest != nil && e.Date < newest.Date {
			continue
		}
		for _, name := range names {
			if v, has := e.Value(name); has && v != false {
				newest = e
			}
		}
	}
	return newest
}

// trial is the day of the boat's sea trial, where one of the names was read on
// it; "" where none was, or it is still to come.
func (k *keeper) trial(names []string) string {
	date, _, _, _ := k.session.Boat.Find("/seaTrial/date")
	runs, _, _, _ := k.session.Boat.Find("/seaTrial/runs")
	on, _ := date.(string)
	if d, err := day.Parse(on); err != nil || d > k.today {
		return ""
	}
	list, _ := runs.([]any)
	for _, r := range list {
		run, _ := r.(map[string]any)
		for _, name := range names {
			if _, has := run[name]; has {
				return on
			}
		}
	}
	return ""
}
