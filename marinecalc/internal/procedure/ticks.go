package procedure

import (
	"cmp"
	"encoding/json"
	"fmt"
	"slices"
	"strings"
	"time"

	"example.org/driveline/marinecalc/internal/boat"
	"example.org/driveline/marinecalc/internal/calc"
	"example.org/driveline/marinecalc/internal/day"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/rules"
)

// Tick is when a step was ticked off.
type Tick struct {
	Date string `json:"date"`           // year-month-day
	Time string `json:"time,omitempty"` // of the day, 14:05
}

func (t *Tick) at() string { return t.Date + " " + t.Time }

// TickRequest is what happened at one step.
type TickRequest struct {
	Remedies []string // that are being worked through
	Step     string   // id
	Done     *bool    // ticked off, or the tick taken back; nil leaves it
	Day      string   // year-month-day
	Time     string   // of the day, such as 14:05; "" where it is not told
	Note     *string  // nil leaves it
	Record   []Noted
}

// Noted is something written down at a step.
type Noted struct {
	Title string // of the step's record
	Value any    // as decoded; nil takes it away
}

// boatStep is a step as the boat file keeps it.
type boatStep struct {
	boat.KeptStep
	Time   string      `json:"time,omitempty"`
	Note   string      `json:"note,omitempty"`
	Record []boatNoted `json:"record,omitempty"`
}

func newStep(id string) boatStep { return boatStep{KeptStep: boat.KeptStep{Step: id}} }

// boatNoted is something written down at a step, as the boat file keeps it.
// What is a list stands among the readings alone.
type boatNoted struct {
	Title   string `json:"title"`
	Date    string `json:"date,omitempty"`
	Reading string `json:"reading,omitempty"`
	Value   any    `json:"value,omitempty"`
}

func (s *boatStep) tick() *Tick {
	if s.Done == "" {
		return nil
	}
	return &Tick{s.Done, s.Time}
}

func (s *boatStep) noted(title string) *boatNoted {
	for i := range s.Record {
		if s.Record[i].Title == title {
			return &s.Record[i]
		}
	}
	return nil
}

// stepsKept reads what the boat file keeps of steps.
func stepsKept(b *boat.Boat) (list []boatStep) {
	raw, _, _, ok := b.Find(boat.PlaceOfSteps)
	if !ok {
		return nil
	}
	if text, err := json.Marshal(raw); err == nil {
		_ = json.Unmarshal(text, &list) // the boat's schema let it through
	}
	return list
}

// readTicks takes over what belongs to the remedies.
func (m *maker) readTicks(b *boat.Boat, remedies []string) {
	for _, s := range stepsKept(b) {
		if s.Belongs(remedies) {
			m.ticks = append(m.ticks, s)
		}
	}
}

// ticked is what is kept of a step, or nil.
func (m *maker) ticked(id string) *boatStep {
	for i := range m.ticks {
		if m.ticks[i].Step == id {
			return &m.ticks[i]
		}
	}
	return nil
}

// tickBesides shows steps as ticked off that the boat file does not keep.
func (m *maker) tickBesides(ids []string, today string) error {
	var list problem.List
	for i, id := range ids {
		if refuseStep(&list, fmt.Sprintf("/done/%d", i), id, m.steps) {
			continue
		}
		t := m.ticked(id)
		if t == nil {
			m.ticks = append(m.ticks, newStep(id))
			t = &m.ticks[len(m.ticks)-1]
		}
		if t.Done == "" {
			t.Done = cmp.Or(today, m.out.Made.Day, "earlier")
		}
	}
	return list.Err()
}

// refuseStep refuses an id that is none of the steps.
func refuseStep(list *problem.List, where, id string, steps []rules.Step) bool {
	var known []string
	for _, s := range steps {
		if s.ID == id {
			return false
		}
		known = append(known, s.ID)
	}
	*list = append(*list, problem.Problem{Where: where, What: fmt.Sprintf("this work has no step %q", id), Allowed: strings.Join(known, ", "),
		Hint: problem.DidYouMean(id, known), Kind: problem.Unknown})
	return true
}

// KeepTick returns the boat with what happened at a step: its tick, or the
// tick taken back, its note, and what was read there. Readings of the boat are
// also kept among its dated readings; one that was read before the same day,
// at another step, stays there beside it. The error is a *problem.Error;
// nothing is kept then.
func KeepTick(book *rules.Book, b *boat.Boat, r TickRequest) (*boat.Boat, error) {
	book = calc.BookFor(book, b)
	rows, err := choose(book, r.Remedies)
	if err != nil {
		return nil, err
	}
	steps, err := stepsOf(book, rows)
	if err != nil {
		return nil, err
	}
	var list problem.List
	if _, err := day.Parse(r.Day); err != nil {
		list.Add("/date", err.Error(), "year-month-day", "")
	}
	if at, err := time.Parse("15:04", r.Time); err == nil {
		r.Time = at.Format("15:04")
	} else if r.Time != "" {
		list.Add("/time", fmt.Sprintf("%q is not a time of day", r.Time), "hours and minutes, such as 14:05", "")
	}
	if refuseStep(&list, "/step", r.Step, steps) {
		return nil, list.Err()
	}
	row := steps[slices.IndexFunc(steps, func(s rules.Step) bool { return s.ID == r.Step })]
	titles := make([]string, row.Record.Len())
	for i, t := range row.Record.All() {
		titles[i] = t.Title
	}
	for i, n := range r.Record {
		if !slices.Contains(titles, n.Title) {
			list = append(list, problem.Problem{Where: fmt.Sprintf("/record/%d/title", i), What: fmt.Sprintf("nothing called %q is written down at this step", n.Title),
				Allowed: strings.Join(titles, ", "), Hint: problem.DidYouMean(n.Title, titles), Kind: problem.Unknown})
		}
	}
	if len(list) > 0 {
		return nil, list.Err()
	}
	kept := stepsKept(b)
	at := slices.IndexFunc(kept, func(s boatStep) bool { return s.Step == r.Step && s.Belongs(r.Remedies) })
	if at < 0 {
		at = len(kept)
		kept = append(kept, newStep(r.Step))
	}
	for _, remedy := range rows {
		if rules.Contains(remedy.Steps, r.Step) && !slices.Contains(kept[at].Remedies, remedy.ID) {
			kept[at].Remedies = append(kept[at].Remedies, remedy.ID)
		}
	}
	switch {
	case r.Done == nil:
	case *r.Done:
		kept[at].Done, kept[at].Time = r.Day, r.Time
	default:
		kept[at].Done, kept[at].Time = "", ""
	}
	if r.Note != nil {
		kept[at].Note = strings.TrimSpace(*r.Note)
	}
	for i, n := range r.Record {
		reading := row.Record.At(slices.Index(titles, n.Title)).Reading
		if readingOf(reading) != nil {
			if b, err = b.KeepReading(r.Day, r.Time, reading, turnOf(b, kept, at, n.Title, reading, r.Day), n.Value); err != nil {
				return nil, below(err, fmt.Sprintf("/record/%d/value", i))
			}
		} else {
			reading = ""
		}
		kept[at].note(n, reading, r.Day)
	}
	return keepSteps(b, kept, r.Day)
}

// note writes down or takes away what was noted at a step.
func (s *boatStep) note(n Noted, reading, day string) {
	s.Record = slices.DeleteFunc(s.Record, func(old boatNoted) bool { return n.Value == nil && old.Title == n.Title })
	if n.Value == nil {
		return
	}
	made := boatNoted{Title: n.Title, Date: day, Reading: reading}
	switch n.Value.(type) {
	case []any, map[string]any:
	default:
		made.Value = n.Value
	}
	if old := s.noted(n.Title); old != nil {
		*old = made
	} else {
		s.Record = append(s.Record, made)
	}
}

// turnOf is which of a day's entries with a reading belongs to a step: those
// of the steps come last, in the order in which they were written down. A step
// that has not written it down yet gets an entry of its own.
func turnOf(b *boat.Boat, kept []boatStep, at int, title, reading, day string) int {
	entries := 0
	for e := range b.Readings() {
		if _, has := e.Value(reading); has && e.Date == day {
			entries++
		}
	}
	before, all, own := 0, 0, false
	for i := range kept {
		for _, n := range kept[i].Record {
			if n.Reading != reading || n.Date != day {
				continue
			}
			if i == at && n.Title == title {
				own, before = true, all
			}
			all++
		}
	}
	if !own {
		return entries
	}
	return max(0, entries-all) + before
}

// keepSteps writes what is kept of steps into the boat.
func keepSteps(b *boat.Boat, kept []boatStep, day string) (*boat.Boat, error) {
	kept = slices.DeleteFunc(kept, func(s boatStep) bool { return s.Done == "" && s.Note == "" && len(s.Record) == 0 })
	if kept == nil {
		kept = []boatStep{}
	}
	b, err := b.Keep([]boat.Typed{{Input: "step", Pointer: boat.PlaceOfSteps, Value: kept}}, day)
	return b, err
}

// below puts problems at a place of the request.
func below(err error, where string) error {
	list := problem.Of(err)
	for i := range list {
		list[i].Where = where
	}
	return list.Err()
}
