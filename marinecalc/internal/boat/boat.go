// Package boat is the boat file: what it holds and since when, its maker's
// figures, and its dated readings, in and out as a table (CSV).
package boat

import (
	"bytes"
	"encoding/json"
	"slices"
	"strconv"
	"strings"
	"sync"

	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/problem"
)

// Boat is a boat file: the drivetrain written down once, with its maker's
// figures and dated readings. A Boat is never changed after it is read.
type Boat struct {
	document map[string]any
	text     []byte // the document as the owner wrote it, or nil
	figures  []Figure
	entries  []*Entry
	dated    map[string][]reading // by name, the newest first
	warnings problem.List
}

// reading is one thing that was read on a day.
type reading struct {
	name  string
	value any
	entry *Entry // all that was read that day
}

// Figure is one maker's figure of the boat file.
type Figure struct {
	of     string // a limit's id, or "calculation/input or result"
	Value  any
	Source string
	Index  int
}

// Contract is the schema of the boat file.
var Contract = sync.OnceValues(func() (*contract.Document, error) { return contract.OpenDocument("boat") })

// Read reads a boat file (schemas/boat.schema.json). The error, when
// there is one, is a *problem.Error that names every fault by its place.
func Read(text []byte) (*Boat, error) {
	value, problems := contract.Decode(text)
	if len(problems) > 0 {
		return nil, problems.Err()
	}
	b, err := From(value)
	if err != nil {
		return nil, err
	}
	b.text = bytes.Clone(text)
	return b, nil
}

// From makes a boat of a document that was decoded already (contract.Decode).
func From(value any) (*Boat, error) {
	c, err := Contract()
	if err != nil {
		return nil, err
	}
	value, renamed := byNewNames(value, nil)
	if problems := c.Check(value); len(problems) > 0 {
		return nil, problems.Err()
	}
	b := &Boat{document: value.(map[string]any), warnings: append(renamed, c.Unknown(value)...)} // the schema lets only an object through
	b.readFigures()
	b.sortReadings()
	return b, nil
}

func (b *Boat) readFigures() {
	for i, m := range objects(b.document["makersFigures"]) {
		f := Figure{Index: i, Value: m["value"]}
		f.of, _ = m["of"].(string)
		if s, ok := m["source"].(map[string]any); ok {
			var parts []string
			for _, key := range []string{"document", "edition", "clause"} {
				if t, _ := s[key].(string); t != "" {
					parts = append(parts, t)
				}
			}
			f.Source = strings.Join(parts, ", ")
		}
		b.figures = append(b.figures, f)
	}
}

// sortReadings sorts the readings of each name, the newest first; of two on
// one day the one written later. Dates are written year-month-day (ISO 8601),
// so that their texts sort as the days do.
func (b *Boat) sortReadings() {
	b.dated = map[string][]reading{}
	for i, m := range objects(b.document["readings"]) {
		date, _ := m["date"].(string)
		b.entries = append(b.entries, &Entry{Index: i, Date: date, values: m})
	}
	for _, e := range slices.Backward(b.entries) {
		for name, value := range e.values {
			b.dated[name] = append(b.dated[name], reading{name: name, value: value, entry: e})
		}
	}
	for _, of := range b.dated {
		slices.SortStableFunc(of, func(x, y reading) int { return strings.Compare(y.entry.Date, x.entry.Date) })
	}
}

// Pointers of a schema's keyword "boat" that look among the dated readings:
// the newest of a name, the first one of its run, and the engine hours from
// that to the newest.
const (
	LatestReading = "/readings/latest/"
	firstReading  = "/readings/first-of-run/"
	hoursOfRun    = "/readings/hours-of-run/"
)

// SchemaPointer is where the schema of the boat file describes what a pointer
// of the keyword "boat" finds.
func SchemaPointer(pointer string) string {
	for _, prefix := range []string{LatestReading, firstReading} {
		if name, is := strings.CutPrefix(pointer, prefix); is {
			return "/readings/0/" + name
		}
	}
	if strings.HasPrefix(pointer, hoursOfRun) {
		return "/readings/0/engineHours"
	}
	return pointer
}

// Find returns what the boat file holds at a pointer of a schema's keyword
// "boat", where it stands, and the date of the reading if it is one. A
// section of the boat that stands in a dated reading too holds from that day
// on, member by member: what it leaves out stays as it was.
func (b *Boat) Find(pointer string) (value any, where, date string, ok bool) {
	if b == nil || pointer == "" {
		return nil, "", "", false
	}
	if name, is := strings.CutPrefix(pointer, LatestReading); is {
		if of := b.dated[name]; len(of) > 0 {
			return of[0].found(nil)
		}
		return nil, "", "", false
	}
	if name, is := strings.CutPrefix(pointer, firstReading); is {
		if r, _ := b.run(name); r != nil {
			return r.found(nil)
		}
		return nil, "", "", false
	}
	if name, is := strings.CutPrefix(pointer, hoursOfRun); is {
		r, seconds := b.run(name)
		if r == nil {
			return nil, "", "", false
		}
		_, where, date, ok = b.dated[name][0].found(nil)
		return json.Number(strconv.FormatFloat(seconds, 'g', -1, 64)), where, date, ok
	}
	tokens := contract.Tokens(pointer)
	for _, r := range b.dated[tokens[0]] {
		if value, where, date, ok = r.found(tokens[1:]); ok {
			return value, where, date, true
		}
	}
	value, ok = contract.Resolve(b.document, tokens)
	return value, "/boat" + pointer, "", ok
}

// found is what stands in a reading at a place inside it.
func (r *reading) found(inside []string) (value any, where, date string, ok bool) {
	value, ok = contract.Resolve(r.value, inside)
	pointer := append([]string{"boat", "readings", strconv.Itoa(r.entry.Index), r.name}, inside...)
	return value, contract.Pointer(pointer), r.entry.Date, ok
}

// run is the first reading of that name since the part was last renewed or
// adjusted, and how long the engine ran from it to the newest one, in
// seconds: nil where there is no such pair with an hour of running between.
func (b *Boat) run(name string) (first *reading, seconds float64) {
	of := b.dated[name]
	if len(of) == 0 {
		return nil, 0
	}
	until, known := of[0].entry.EngineHours()
	renewed := b.renewed(name, of[0].entry.Date)
	for i := range of {
		r := &of[i]
		if r.entry.Date < renewed {
			break
		}
		if since, ok := r.entry.EngineHours(); ok && known && until-since >= 3600 {
			first, seconds = r, until-since
		}
		if r.entry.Changed() {
			break
		}
	}
	return first, seconds
}

// renewed is the day of the last event up to a day that began a new run of a
// reading; "" when there is none.
func (b *Boat) renewed(name, upTo string) (last string) {
	for e := range b.Events() {
		if e.Renews == name && e.Date <= upTo {
			last = max(last, e.Date)
		}
	}
	return last
}

// FigureOf returns the maker's figure of that name, or nil.
func (b *Boat) FigureOf(name string) *Figure {
	if b == nil {
		return nil
	}
	for i := range b.figures {
		if b.figures[i].of == name {
			return &b.figures[i]
		}
	}
	return nil
}

// Name is the boat's name as its file has it.
func (b *Boat) Name() string {
	name, _ := b.document["name"].(string)
	return name
}

// Units is the boat's own choice of units, "" when it makes none.
func (b *Boat) Units() string {
	if b == nil {
		return ""
	}
	u, _ := b.document["units"].(string)
	return u
}

// Warnings names what the boat file holds that this version does not know, each
// by its place with the closest name that it does know. It is kept, and nothing
// is calculated from it.
func (b *Boat) Warnings() []problem.Problem {
	if b == nil {
		return nil
	}
	return slices.Clone(b.warnings)
}
