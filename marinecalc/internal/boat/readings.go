package boat

import (
	"fmt"
	"iter"
	"slices"
	"sort"
	"strings"

	"example.org/driveline/marinecalc/internal/day"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/quantity"
)

// Entry is one dated entry of the readings: everything that was read, or that
// a repair changed, on one day.
type Entry struct {
	Index  int    // in the boat file
	Date   string // year-month-day
	Time   string // hour:minute; "" for none
	values map[string]any
}

// When sorts as the entries were read; one without a time comes before the
// others of its day.
func (e *Entry) When() string { return e.Date + e.Time }

// flag tells whether a member that is yes or no is yes.
func (e *Entry) flag(name string) bool {
	yes, _ := e.values[name].(bool)
	return yes
}

// Value is what was read under a name, as it is written in the file: a text
// with a unit, a bare number (json.Number), a word, true or false, a list or
// a section of the boat. A list or a section is the boat's own, to be read and
// not changed.
func (e *Entry) Value(name string) (value any, ok bool) {
	value, ok = e.values[name]
	return value, ok
}

// EngineHours is the reading of the hour meter in seconds.
func (e *Entry) EngineHours() (seconds float64, ok bool) { return e.Number("engineHours", "time") }

// Number is a reading of a kind of quantity, in SI.
func (e *Entry) Number(name, kind string) (si float64, ok bool) {
	k, _ := quantity.Lookup(kind)
	return Number(k, e.values[name])
}

// Changed tells whether what the entry's readings tell about was renewed or
// adjusted just before them, so that a new run begins.
func (e *Entry) Changed() bool { return e.flag("changed") }

// FluidChanged tells whether the fluid was drained and filled afresh after the
// entry's readings.
func (e *Entry) FluidChanged() bool { return e.flag("fluidChanged") }

// Baseline tells whether the boat was sound when they were read.
func (e *Entry) Baseline() bool { return e.flag("baseline") }

// Source is who read it, or which laboratory; "" where that is not written.
func (e *Entry) Source() string {
	source, _ := e.values["source"].(string)
	return source
}

// Gauge is what a reading of the entry was read with; "" where that is not
// written.
func (e *Entry) Gauge(reading string) string {
	list, _ := e.values["gauges"].([]any)
	for _, one := range list {
		if m, _ := one.(map[string]any); m["reading"] == reading {
			gauge, _ := m["gauge"].(string)
			return gauge
		}
	}
	return ""
}

// GaugeOf is what a quantity was read with, by its name or that of the member
// that it stands in; "" where that is not written.
func (e *Entry) GaugeOf(name string) string {
	if gauge := e.Gauge(name); gauge != "" {
		return gauge
	}
	return e.Gauge(head(name))
}

// Written is the point as it was written down; a bare number in its unit.
func (p *Point) Written(kind *quantity.Kind) string { return p.WrittenIn(kind, quantity.Metric) }

// WrittenIn is the same in a system of units.
func (p *Point) WrittenIn(kind *quantity.Kind, system quantity.System) string {
	if slices.Contains(counts, p.of.Name) || kind == nil || strings.ContainsAny(p.Text, " /\"%") {
		return p.of.Shown.Print(p.SI, system)
	}
	return p.Text
}

// Readings yields copies of the dated entries in the order of the file.
func (b *Boat) Readings() iter.Seq[*Entry] {
	return func(yield func(*Entry) bool) {
		if b == nil {
			return
		}
		for _, e := range b.entries {
			if entry := *e; !yield(&entry) {
				return
			}
		}
	}
}

// Ahead names every dated entry that is of a day after today, but for the next
// one, which it may be elsewhere: with a wrong year it stays the newest reading.
func (b *Boat) Ahead(today string) (list problem.List) {
	now, err := day.Parse(today)
	if b == nil || err != nil {
		return nil
	}
	tomorrow := day.Text(now + 1)
	for _, e := range b.entries {
		if e.Date > tomorrow { // year-month-day, which sorts as text
			list.Add(fmt.Sprintf("/readings/%d/date", e.Index), e.Date+" is after today, "+today+", and counts as the newest reading", "a day up to today", "is a year or a month wrong?")
		}
	}
	return list
}

// Answered tells whether the newest answer to a question of the fault finding
// is this one.
func (b *Boat) Answered(question, answer string) bool { return b.Said(question, "") == answer }

// Said is the newest answer to a question of the fault finding, of whatever day, but for
// those known in a way that is left out; "" where there is none.
func (b *Boat) Said(question, without string) (answer string) {
	if b == nil {
		return ""
	}
	day := ""
	take := func(symptoms any, on string) {
		for a := range Answers(symptoms) {
			if a.Question == question && on >= day && (without == "" || a.By != without) {
				answer, day = a.Answer, on
			}
		}
	}
	take(b.document["symptoms"], "")
	for e := range b.Readings() {
		take(e.values["symptoms"], e.When())
	}
	return answer
}

// Answer is one of the fault finding's questions with what was said to it.
type Answer struct {
	Question, Answer, By string // By is how it is known; "" where that is not written
}

// Answers yields those of a list as the boat file holds it.
func Answers(symptoms any) iter.Seq[Answer] {
	return func(yield func(Answer) bool) {
		for _, m := range Objects(symptoms) {
			var a Answer
			a.Question, _ = m["evidence"].(string)
			a.Answer, _ = m["answer"].(string)
			a.By, _ = m["by"].(string)
			if !yield(a) {
				return
			}
		}
	}
}

// FaceSealed tells whether the shaft is said to be sealed by a face or lip seal,
// with no packing.
func (b *Boat) FaceSealed() bool { return b.Answered("seal-kind", "yes") }

// Event is something that happened to the boat on a day.
type Event struct {
	Date   string
	What   string // was done
	Renews string // the reading of which a new run begins; "" for none
}

// Begins tells whether a new run of a reading begins with the event, by whatever gauge
// its quantity is read.
func (e *Event) Begins(reading string) bool {
	return e.Renews == reading || slices.Contains(alike(reading), e.Renews)
}

// Events yields the events in the order of the file, then of what care renewed.
func (b *Boat) Events() iter.Seq[Event] {
	return func(yield func(Event) bool) {
		if b == nil {
			return
		}
		for _, e := range b.events {
			if e.What != "" && !yield(e) {
				return
			}
		}
	}
}

// readEvents reads those of the file.
func (b *Boat) readEvents() {
	for _, m := range Objects(b.document["events"]) {
		var e Event
		e.Date, _ = m["date"].(string)
		e.What, _ = m["what"].(string)
		e.Renews, _ = m["renews"].(string)
		b.events = append(b.events, e)
	}
}

// Dates lists every day with a reading, oldest first.
func (b *Boat) Dates() []string {
	if b == nil {
		return nil
	}
	var days []string
	for _, e := range b.entries {
		days = append(days, e.Date)
	}
	slices.Sort(days)
	return slices.Compact(days)
}

// NewestDay is the day of the newest reading, "" where there is none.
func (b *Boat) NewestDay() string {
	newest := ""
	if b != nil {
		for _, e := range b.entries {
			newest = max(newest, e.Date)
		}
	}
	return newest
}

// Objects yields the objects of a list that the schema has let through.
func Objects(list any) iter.Seq2[int, map[string]any] {
	return func(yield func(int, map[string]any) bool) {
		items, _ := list.([]any)
		for i, item := range items {
			if m, ok := item.(map[string]any); ok && !yield(i, m) {
				return
			}
		}
	}
}

// Points are all readings of every quantity by its name, each in the order of
// time: one pass over the log, where [Boat.Series] makes one for each name.
func (b *Boat) Points() map[string][]Point {
	all := map[string][]Point{}
	if b == nil {
		return all
	}
	own := b.OwnReadings()
	for _, e := range b.entries {
		first := map[string]int{} // of each name in this entry, one more than how often
		for _, p := range e.read(own) {
			list := all[p.of.Name]
			if n := first[p.of.Name]; n > 0 { // the mean of several, as Series has it
				last := &list[len(list)-1]
				last.SI += (p.SI - last.SI) / float64(n+1)
			} else {
				list = append(list, p)
			}
			first[p.of.Name]++
			all[p.of.Name] = list
		}
	}
	for _, list := range all {
		sort.SliceStable(list, func(i, j int) bool { return list[i].When() < list[j].When() })
	}
	return all
}

// NewestOf is the newest day on which one of these was read or written down:
// members of a dated entry by their names. "" where there is none.
func (b *Boat) NewestOf(names []string) (day string) {
	if b == nil {
		return ""
	}
	for _, e := range b.entries {
		for _, name := range names {
			if _, has := e.values[name]; has && e.Date > day {
				day = e.Date
			}
		}
	}
	return day
}
