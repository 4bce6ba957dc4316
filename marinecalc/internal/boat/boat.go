// Package boat is the boat file: what it holds and since when, its maker's
// figures, and its dated readings, in and out as a table (CSV).
package boat

import (
	"bytes"
	"slices"
	"strings"
	"sync"

	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/problem"
)

// Boat is a boat file: the drivetrain written down once, with its maker's
// figures and dated readings. A Boat is never changed after it is read. A nil
// one has nothing in it.
type Boat struct {
	document map[string]any
	text     []byte // the document as the owner wrote it, or nil
	figures  []Figure
	entries  []*Entry
	dated    map[string][]reading // by name, the newest first
	renewals map[string]string    // by reading, the last day on which it began afresh
	events   []Event              // and what care stands for (Under); it says not what where it only set something
	series   func() map[string][]Point
	warnings problem.List
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
	b.text = bytes.Clone(bytes.TrimPrefix(text, []byte(contract.Mark)))
	return b, nil
}

// From makes a boat of a document that was decoded already (contract.Decode).
func From(value any) (*Boat, error) {
	var older contract.Alike
	value, _ = byNewNames(value, nil, &older)
	return fromRenamed(value, &older)
}

// fromRenamed is From of a document that has the newer names already.
func fromRenamed(value any, older *contract.Alike) (*Boat, error) {
	c, err := Contract()
	if err != nil {
		return nil, err
	}
	if problems := c.Check(value); len(problems) > 0 {
		return nil, problems.Err()
	}
	b := &Boat{document: value.(map[string]any), warnings: append(older.List(), c.Unknown(value)...)} // the schema lets only an object through
	b.readFigures()
	b.readEvents()
	b.sortReadings()
	b.checkNames()
	return b, nil
}

func (b *Boat) readFigures() {
	for i, m := range Objects(b.document["makersFigures"]) {
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

// FigureOf returns the maker's figure of that name; ok is false where there is
// none.
func (b *Boat) FigureOf(name string) (figure Figure, ok bool) {
	if b == nil {
		return Figure{}, false
	}
	for i := range b.figures {
		if b.figures[i].of == name {
			return b.figures[i], true
		}
	}
	return Figure{}, false
}

// Name is the boat's name as its file has it.
func (b *Boat) Name() string {
	if b == nil {
		return ""
	}
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

// FiguresFor names what the maker's figures of the file are for, in their order.
func (b *Boat) FiguresFor() []string {
	if b == nil {
		return nil
	}
	var names []string
	for i := range b.figures {
		names = append(names, b.figures[i].of)
	}
	return names
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
