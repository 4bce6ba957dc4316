package marinecalc

import (
	"encoding/json"
	"slices"
	"strconv"
	"strings"
	"sync"

	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/quantity"
)

// Boat is a boat file: the drivetrain written down once, with its maker's
// figures and dated readings. A Boat is never changed after it is read.
type Boat struct {
	document map[string]any
	figures  []figure
	dated    map[string][]reading // by name, the newest first
	warnings problem.List
}

// reading is where a reading stands in the boat file, and what it is.
type reading struct {
	pointer []string
	value   any
	date    string
	entry   map[string]any // all that was read that day
}

// figure is one maker's figure of the boat file.
type figure struct {
	of     string // a limit's id, or "calculation/input or result"
	value  any
	source string
	index  int
}

// boatContract is the schema of the boat file.
var boatContract = sync.OnceValues(func() (*contract.Document, error) { return contract.OpenDocument("boat") })

// ReadBoat reads a boat file (schemas/boat.schema.json). The error, when
// there is one, is a problem.List that names every fault by its place.
func ReadBoat(text []byte) (*Boat, error) {
	value, problems := contract.Decode(text)
	if len(problems) > 0 {
		return nil, problems
	}
	return boatFrom(value)
}

func boatFrom(value any) (*Boat, error) {
	c, err := boatContract()
	if err != nil {
		return nil, err
	}
	if problems := c.Check(value); len(problems) > 0 {
		return nil, problems
	}
	b := &Boat{document: value.(map[string]any), warnings: c.Unknown(value)} // the schema lets only an object through
	b.readFigures()
	b.readReadings()
	return b, nil
}

func (b *Boat) readFigures() {
	list, _ := b.document["makersFigures"].([]any)
	for i, item := range list {
		m, _ := item.(map[string]any)
		f := figure{index: i, value: m["value"]}
		f.of, _ = m["of"].(string)
		if s, ok := m["source"].(map[string]any); ok {
			var parts []string
			for _, key := range []string{"document", "edition", "clause"} {
				if t, _ := s[key].(string); t != "" {
					parts = append(parts, t)
				}
			}
			f.source = strings.Join(parts, ", ")
		}
		b.figures = append(b.figures, f)
	}
}

// readReadings sorts the readings of each name, the newest first; of two on
// one day the one written later. Dates are written year-month-day (ISO 8601),
// so that their texts sort as the days do.
func (b *Boat) readReadings() {
	b.dated = map[string][]reading{}
	list, _ := b.document["readings"].([]any)
	for i, item := range slices.Backward(list) {
		m, _ := item.(map[string]any)
		date, _ := m["date"].(string)
		for name, value := range m {
			b.dated[name] = append(b.dated[name], reading{pointer: []string{"readings", itoa(i), name}, value: value, date: date, entry: m})
		}
	}
	for _, of := range b.dated {
		slices.SortStableFunc(of, func(x, y reading) int { return strings.Compare(y.date, x.date) })
	}
}

// Pointers of a schema's keyword "boat" that look among the dated readings:
// the newest of a name, the first one of its run, and the engine hours from
// that to the newest.
const (
	latestReading = "/readings/latest/"
	firstReading  = "/readings/first-of-run/"
	hoursOfRun    = "/readings/hours-of-run/"
)

// find returns what the boat file holds at a pointer of a schema's keyword
// "boat", where it stands, and the date of the reading if it is one. A
// section of the boat that stands in a dated reading too holds from that day
// on, member by member: what it leaves out stays as it was.
func (b *Boat) find(pointer string) (value any, where, date string, ok bool) {
	if b == nil || pointer == "" {
		return nil, "", "", false
	}
	if name, is := strings.CutPrefix(pointer, latestReading); is {
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
	return value, "/boat" + contract.Pointer(append(slices.Clone(r.pointer), inside...)), r.date, ok
}

// run is the first reading of that name since the part was last renewed or
// adjusted, and how long the engine ran from it to the newest one, in
// seconds: nil where there is no such pair with an hour of running between.
func (b *Boat) run(name string) (first *reading, seconds float64) {
	of := b.dated[name]
	if len(of) == 0 {
		return nil, 0
	}
	until, known := meter(of[0].entry)
	renewed := b.renewed(name, of[0].date)
	for i := range of {
		r := &of[i]
		if r.date < renewed {
			break
		}
		if since, ok := meter(r.entry); ok && known && until-since >= 3600 {
			first, seconds = r, until-since
		}
		if changed, _ := r.entry["changed"].(bool); changed {
			break
		}
	}
	return first, seconds
}

// renewed is the day of the last event up to a day that began a new run of a
// reading; "" when there is none.
func (b *Boat) renewed(name, upTo string) (last string) {
	events, _ := b.document["events"].([]any)
	for _, item := range events {
		m, _ := item.(map[string]any)
		if day, _ := m["date"].(string); m["renews"] == name && day <= upTo {
			last = max(last, day)
		}
	}
	return last
}

// meter is the engine hours of an entry, in seconds.
func meter(entry map[string]any) (seconds float64, ok bool) {
	switch h := entry["engineHours"].(type) {
	case string:
		kind, _ := quantity.Lookup("time")
		r, err := kind.Parse(h)
		return r.SI, err == nil
	case json.Number:
		f, err := h.Float64()
		return f, err == nil
	}
	return 0, false
}

// figureOf returns the maker's figure of that name, or nil.
func (b *Boat) figureOf(name string) *figure {
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

// units is the boat's own choice of units, "" when it makes none.
func (b *Boat) units() string {
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

// MarshalJSON writes the boat file as it was read.
func (b *Boat) MarshalJSON() ([]byte, error) { return json.Marshal(b.document) }
