package upkeep

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"strings"

	"example.org/driveline/marinecalc/internal/boat"
	"example.org/driveline/marinecalc/internal/day"
	"example.org/driveline/marinecalc/internal/upkeep/due"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/rules"
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
		if best, ok := problem.Closest(id, names); ok {
			hint = fmt.Sprintf("did you mean %q?", best)
		}
		list.Add(where, fmt.Sprintf("there is no %s %q", what, id), strings.Join(names, ", "), hint)
	}
	for i, d := range k.in.Done {
		known(fmt.Sprintf("/done/%d/item", i), "care", d.Item, items)
		if read(fmt.Sprintf("/done/%d/date", i), d.Date) > k.today && k.today > 0 {
			list.Add(fmt.Sprintf("/done/%d/date", i), d.Date+" is after today", "a day up to today", "what is still to be done is no care that was given")
		}
		if d.EngineHours > k.in.HoursNow && !(float64(d.EngineHours) <= k.mostRead()) { // never where one is not known
			list.Add(fmt.Sprintf("/done/%d/engineHours", i), "more hours stood on the meter then than now", "up to the engine hours now", "was the meter renewed, keep a reading of the old one in the log")
		}
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
	marks := k.log
	if now := float64(k.in.HoursNow) / secondsPerHour; slices.ContainsFunc(marks, func(m due.Mark) bool { return m.Hours > now }) {
		marks = append(marks, due.Mark{Day: k.today, Hours: now}) // less than stood on the meter before
	}
	meters := marks.Meters()
	byLog := math.NaN()
	for _, m := range meters { // of the meter as it stands, or of the last one that was read for long enough
		if perDay := m.PerDay(recent); !math.IsNaN(perDay) {
			byLog = perDay
		}
	}
	if n := len(meters); n > 0 {
		k.log = meters[n-1]
	}
	if n := len(meters); n > 1 {
		was, is := meters[n-2][len(meters[n-2])-1], k.log[0]
		k.meterOff = fmt.Sprintf("The hour meter stood at %.0f h on %s and at %.0f h on %s: it was renewed or misread. Hours before that are worked out by how much she is run; mend the log where it was misread.",
			was.Hours, day.Text(was.Day), is.Hours, day.Text(is.Day))
	}
	typed := float64(k.in.HoursPerYear) / secondsPerHour / daysPerYear
	perDay := byLog
	if !(byLog >= typed) && !math.IsNaN(typed) {
		perDay = typed
	}
	k.use = due.Use{Today: k.today, Hours: float64(k.in.HoursNow) / secondsPerHour, PerDay: perDay}
	at := k.hoursOn(k.today)
	if !(k.use.Hours >= at) && !math.IsNaN(at) { // the newest reading is of an earlier day
		k.use.Hours = at
	}
	if !math.IsNaN(k.use.Hours) && (len(k.log) == 0 || k.use.Hours >= k.log[len(k.log)-1].Hours) {
		k.log = append(k.log, due.Mark{Day: k.today, Hours: k.use.Hours})
	}
	k.out.MeterToday = quantity.Time(k.use.Hours * secondsPerHour)
	k.out.YearUsed = quantity.Time(perDay * daysPerYear * secondsPerHour)
	k.out.YearByLog = quantity.Time(byLog * daysPerYear * secondsPerHour)
}

// mostRead is the most that ever stood on the meter, by the readings, in seconds:
// more than now on one that was renewed since.
func (k *keeper) mostRead() (most float64) {
	for e := range k.session.Boat.Readings() {
		if seconds, ok := e.EngineHours(); ok {
			most = max(most, seconds)
		}
	}
	return most
}

// hoursOn is what the meter as it stands showed on a day, or would have shown:
// less than nothing before a meter that was renewed.
func (k *keeper) hoursOn(on int) float64 {
	at := k.log.At(on, nothing(k.use.PerDay))
	if k.meterOff == "" {
		at = max(0, at)
	}
	return at
}

// metered is what stood on the meter on a day, as it was written down: of an
// earlier or misread meter what the one as it stands would have shown.
func (k *keeper) metered(on int, seconds float64) float64 {
	if math.IsNaN(seconds) || k.meterOff != "" && on < k.log[0].Day {
		return k.hoursOn(on)
	}
	return seconds / secondsPerHour
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
	if name == "packing" && k.session.Boat.FaceSealed() { // what is still written of an earlier gland
		return 0, "", false
	}
	raw, _, _, ok := k.session.Boat.Find(pointer)
	word, is := raw.(string)
	return 0, word, ok && is
}

// looked is the newest entry, up to today, in which one of the names was read
// or one of the questions answered with no by who looked.
func (k *keeper) looked(names, ways, questions []string) (newest *boat.Entry) {
	for e := range k.session.Boat.Readings() {
		if d, err := day.Parse(e.Date); err != nil || d > k.today || newest != nil && e.Date < newest.Date {
			continue
		}
		if read(e, slices.DeleteFunc(slices.Clone(names), func(name string) bool { return k.void(e, name) != "" })) || lookedBy(e, ways) || answeredNo(e, questions) {
			newest = e
		}
	}
	return newest
}

// void says why a reading tells nothing: the newest of its name, of which its own
// sheet says that it contradicts another figure, or cannot be.
func (k *keeper) void(e *boat.Entry, name string) string {
	if _, has := e.Value(name); !has {
		return ""
	}
	for later := range k.session.Boat.Readings() {
		if _, has := later.Value(name); has && (later.Date > e.Date || later.Date == e.Date && (later.Time > e.Time || later.Time == e.Time && later.Index > e.Index)) {
			return ""
		}
	}
	return k.session.Void(name)
}

// voids names the readings that tell nothing of those that a care goes by.
func (k *keeper) voids(names []string) (says string) {
	for e := range k.session.Boat.Readings() {
		for _, name := range names {
			if k.void(e, name) != "" {
				says += "; that of " + e.Date + " tells nothing, as its own sheet says"
			}
		}
	}
	return says
}

// read tells whether one of the names was read.
func read(e *boat.Entry, names []string) bool {
	return slices.ContainsFunc(names, func(name string) bool {
		v, has := e.Value(name)
		return has && v != false
	})
}

// lookedBy tells whether the fluid was looked at by one of the ways: a clean dip
// tells nothing about metal, a jar does.
func lookedBy(e *boat.Entry, ways []string) bool {
	by, _ := e.Value("fluidLookBy")
	way, _ := by.(string)
	return slices.Contains(ways, way)
}

// answeredNo tells whether one of the questions was answered with no, and not
// by hearsay. A yes is a fault to cure, and no care that was taken.
func answeredNo(e *boat.Entry, questions []string) bool {
	list, _ := e.Value("symptoms")
	for a := range boat.Answers(list) {
		if slices.Contains(questions, a.Question) && a.Answer == "no" && a.By != rules.Hearsay {
			return true
		}
	}
	return false
}

// faulty is the newest day, up to today, on which one of the questions was
// answered with yes by who looked, and by which; none where a no came after.
func (k *keeper) faulty(questions []string) (date, title string) {
	if len(questions) == 0 {
		return "", ""
	}
	for _, q := range k.session.Book.Evidence().All() {
		if !slices.Contains(questions, q.ID) {
			continue
		}
		when, on, answer := "", "", ""
		for e := range k.session.Boat.Readings() {
			if d, err := day.Parse(e.Date); err != nil || d > k.today || e.When() < when {
				continue
			}
			list, _ := e.Value("symptoms")
			for a := range boat.Answers(list) {
				if a.Question == q.ID && a.Answer != "unknown" && a.By != rules.Hearsay {
					when, on, answer = e.When(), e.Date, a.Answer
				}
			}
		}
		if answer == "yes" && on >= date {
			date, title = on, q.Title
		}
	}
	return date, title
}

// firstAfterWork tells whether an entry is the first in which one of the names
// was read since work on what they tell about.
func (k *keeper) firstAfterWork(e *boat.Entry, names []string) bool {
	if e.Changed() {
		return true
	}
	before := ""
	for r := range k.session.Boat.Readings() {
		if r.Date < e.Date && read(r, names) {
			before = max(before, r.Date)
		}
	}
	for ev := range k.session.Boat.Events() {
		if slices.Contains(names, ev.Renews) && ev.Date <= e.Date && ev.Date > before {
			return true
		}
	}
	return false
}

// workedOn tells whether an entry of that day says that something was changed.
func (k *keeper) workedOn(date string) bool {
	for e := range k.session.Boat.Readings() {
		if e.Date == date && e.Changed() {
			return true
		}
	}
	return false
}

// perhaps is the newest event, up to today, with which a new run of one of the
// readings began: it may have been the care that is asked for, and the words
// of an event are not read by a program.
func (k *keeper) perhaps(names []string) (newest boat.Event) {
	for e := range k.session.Boat.Events() {
		if slices.Contains(names, e.Renews) && dayOf(e.Date) <= k.today && e.Date >= newest.Date {
			newest = e
		}
	}
	return newest
}

// trial is the day of the boat's sea trial, where one of the names was read on
// it; "" where none was, or it is still to come.
func (k *keeper) trial(names []string) string {
	on := k.session.Boat.TrialRead(names)
	if d, err := day.Parse(on); err != nil || d > k.today {
		return ""
	}
	return on
}
