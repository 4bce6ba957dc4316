package marinecalc

import (
	"encoding/json"
	"strings"
	"sync"

	"example.org/driveline/marinecalc/contract"
)

// Boat is a boat file: the drivetrain written down once, with its maker's
// figures and dated readings. A Boat is never changed after it is read.
type Boat struct {
	document map[string]any
	figures  []figure
	latest   map[string]reading // newest dated reading of each name
}

// reading is where a reading stands in the boat file, and what it is.
type reading struct {
	pointer []string
	value   any
	date    string
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
	b := &Boat{document: value.(map[string]any), latest: map[string]reading{}} // the schema lets only an object through
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

// readReadings finds the newest reading of each name. Dates are written
// year-month-day (ISO 8601), so that their texts sort as the days do.
func (b *Boat) readReadings() {
	list, _ := b.document["readings"].([]any)
	for i, item := range list {
		m, _ := item.(map[string]any)
		date, _ := m["date"].(string)
		for name, value := range m {
			if old, has := b.latest[name]; !has || date >= old.date {
				b.latest[name] = reading{pointer: []string{"readings", itoa(i), name}, value: value, date: date}
			}
		}
	}
}

const latestReading = "/readings/latest/"

// find returns what the boat file holds at a pointer of a schema's keyword
// "boat", where it stands, and the date of the reading if it is one.
func (b *Boat) find(pointer string) (value any, where, date string, ok bool) {
	if b == nil || pointer == "" {
		return nil, "", "", false
	}
	if name, is := strings.CutPrefix(pointer, latestReading); is {
		r, ok := b.latest[name]
		return r.value, "/boat" + contract.Pointer(r.pointer), r.date, ok
	}
	value, ok = contract.Resolve(b.document, contract.Tokens(pointer))
	return value, "/boat" + pointer, "", ok
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

// MarshalJSON writes the boat file as it was read.
func (b *Boat) MarshalJSON() ([]byte, error) { return json.Marshal(b.document) }
