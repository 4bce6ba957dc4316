// Package overview is the boat part by part, engine to propeller: line.go the
// drawing with what is known of each part and how old its newest reading is,
// part.go one part with its state, readings, sheets and work, known.go what is
// asked of a part and known, age.go how long ago in words, due.go what is due,
// find.go and words.go what people type and what it leads to.
package overview

import (
	"context"
	"encoding/json"
	"math"
	"strconv"
	"strings"

	"example.org/driveline/marinecalc/internal/boat"
	"example.org/driveline/marinecalc/internal/calc"
	"example.org/driveline/marinecalc/internal/drawing/wholeline"
	"example.org/driveline/marinecalc/internal/survey"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/rules"
	"example.org/driveline/marinecalc/sheet"
)

// Line is the boat at one look: drawn, with what is known of each part, and
// what is due. How each part stands, [PartOf] says.
type Line struct {
	Boat    string        `json:"boat,omitempty"` // its name; absent where there is no boat
	Drawing sheet.Drawing `json:"drawing"`        // each part a group "part-" and its id
	Caption string        `json:"caption"`        // what the boat is, in a line; "" where nothing is known
	Parts   []Part        `json:"parts"`          // engine to propeller
	Due     []Due         `json:"due"`            // the most pressing care, three at most
	MoreDue int           `json:"moreDue"`        // of it
}

// Part is a part of the line and what is known of it.
type Part struct {
	ID    string   `json:"id"`
	Title string   `json:"title"`
	About string   `json:"about"`
	Known int      `json:"known"` // of what its calculations ask of the boat
	Asked int      `json:"asked"`
	Asks  []Ask    `json:"asks"`  // in the order in which they are read off
	Holds []string `json:"holds"` // places of the boat file
	Names []string `json:"names"` // that causes have for it
	Newest
}

// Newest is the day of a part's newest reading and how long ago that is.
type Newest struct {
	Read  string `json:"read,omitempty"` // day; absent where it never was
	Age   string `json:"age"`            // in words: "3 weeks"; "never"
	Ago   string `json:"ago"`            // the same as people say it: "3 weeks ago", "today"
	Brief string `json:"brief"`          // the same for a small place: "3 wk"
	Fresh Fresh  `json:"fresh"`
}

// PartsState is how every part stands, with what was found on it.
type PartsState struct {
	Parts []survey.PartState `json:"parts"`
	Still string             `json:"still,omitempty"` // why the shaft must not run
}

// Parts says how every part of a boat stands, as the survey has it.
func Parts(ctx context.Context, b *boat.Boat, o calc.Options) (*PartsState, error) {
	parts, still, err := survey.CheckParts(ctx, b, o)
	return &PartsState{parts, still}, err
}

// Of says it of a boat, which may be nil; today is year-month-day.
func Of(ctx context.Context, b *boat.Boat, o calc.Options, today string) (*Line, error) {
	book := bookOf(o)
	o.Day = ""
	out := &Line{Boat: b.Name(), Drawing: wholeline.Line(sizesOf(b)), Caption: caption(b), Parts: []Part{}, Due: []Due{}}
	for _, row := range book.Table(survey.PartsTable).Rows.All() {
		asks, err := asksOf(&row, book, b)
		if err != nil {
			return nil, err
		}
		out.Parts = append(out.Parts, partOf(&row, asks, b, today))
	}
	if b == nil {
		return out, nil
	}
	all, err := cares(ctx, b, o, today)
	if err != nil {
		return nil, err
	}
	out.Due = all[:min(len(all), mostDue)]
	out.MoreDue = len(all) - len(out.Due)
	return out, nil
}

func bookOf(o calc.Options) *rules.Book {
	if o.Rules == nil {
		return rules.Standard()
	}
	return o.Rules
}

func partOf(row *rules.Row, asks []Ask, b *boat.Boat, today string) Part {
	p := Part{ID: row.ID, Title: row.Name, About: row.Note, Asked: len(asks), Asks: asks, Holds: strings.Fields(row.Values.Of("holds").Text), Names: survey.NamesOf(row), Newest: newest(b.NewestOf(membersOf(row)), today)}
	for _, a := range asks {
		if a.Known {
			p.Known++
		}
	}
	return p
}

// membersOf are the members of a dated entry that tell of a part.
func membersOf(row *rules.Row) []string {
	names := strings.Fields(row.Values.Of("readings").Text)
	for _, pointer := range strings.Fields(row.Values.Of("holds").Text) {
		names = append(names, strings.TrimPrefix(pointer, "/"))
	}
	return names
}

// length is a length of the boat in metres, NaN where it is not known.
func length(b *boat.Boat, pointer string) float64 { return number(b, pointer, "length") }

func number(b *boat.Boat, pointer, kind string) float64 {
	value, _, _, ok := b.Find(pointer)
	k, known := quantity.Lookup(kind)
	if !ok || !known {
		return math.NaN()
	}
	switch v := value.(type) {
	case string:
		if r, err := k.Parse(v); err == nil {
			return r.SI
		}
	case json.Number:
		if f, err := v.Float64(); err == nil {
			return f
		}
	}
	return math.NaN()
}

func sizesOf(b *boat.Boat) wholeline.LineSizes {
	s := wholeline.LineSizes{
		EngineLength: length(b, "/engine/length"), EngineHeight: length(b, "/engine/height"),
		CouplingDiameter: length(b, "/coupling/diameter"), CouplingLen: length(b, "/coupling/length"),
		ShaftDiameter: length(b, "/shaft/diameter"), ShaftLength: shaftLength(b), FreeLength: length(b, "/shaft/freeLength"),
		Incline: number(b, "/shaft/incline", "angle") * 180 / math.Pi, BearingLength: length(b, "/sternBearing/length"),
		PropellerDiameter: length(b, "/propeller/diameter"), HubLength: length(b, "/propeller/hubLength"),
	}
	if n := number(b, "/propeller/blades", "ratio"); !math.IsNaN(n) {
		s.Blades = int(n)
	}
	return s
}

// shaftLength is the sum of the sections, or what lies inside.
func shaftLength(b *boat.Boat) float64 {
	value, _, _, _ := b.Find("/shaft/sections")
	list, _ := value.([]any)
	sum := 0.0
	for i := range list {
		sum += length(b, "/shaft/sections/"+strconv.Itoa(i)+"/length")
	}
	if sum > 0 {
		return sum
	}
	return length(b, "/shaft/inboard")
}

// caption is what the boat is, in the owner's own figures.
func caption(b *boat.Boat) string {
	var words []string
	for _, c := range []struct{ before, pointer, after string }{
		{"", "/engine/power", ""}, {"ratio ", "/gearbox/ratioAhead", ""}, {"shaft ", "/shaft/diameter", ""}, {"propeller ", "/propeller/diameter", ""}, {"", "/propeller/blades", " blades"},
	} {
		value, _, _, ok := b.Find(c.pointer)
		text := ""
		switch v := value.(type) {
		case string:
			text = v
		case json.Number:
			text = v.String()
		}
		if ok && text != "" {
			words = append(words, c.before+text+c.after)
		}
	}
	return strings.Join(words, " · ")
}
