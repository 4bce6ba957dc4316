package boat

import (
	"encoding/json"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"example.org/driveline/marinecalc/problem"
)

// Reading is one reading to put into the log.
type Reading struct {
	Reading  string `json:"reading"` // by its name: dripRate, own/oilPressure, mountHeights/front port, gland/followerDepth
	Value    string `json:"value"`   // with its unit
	Date     string `json:"date"`
	Time     string `json:"time"`
	Source   string `json:"source"`
	Gauge    string `json:"gauge"`
	Baseline bool   `json:"baseline"`
	Note     string `json:"note"`
}

// Log returns the boat with a reading put into the entry of that day, time and
// source that does not have it yet, or into a new one. The error is a
// *problem.Error with the places of the reading's members.
func (b *Boat) Log(r Reading) (*Boat, error) {
	if b == nil {
		return nil, problem.List{{Where: "/boat", What: "there is no boat to keep it with", Allowed: "a boat file", Kind: problem.Missing}}.Err()
	}
	q, known := b.Describe(r.Reading)
	tokens := tokensOf(r.Reading)
	list := ""
	if len(tokens) == 2 {
		if p := entryMember(tokens[0]); p != nil && p.Items != nil {
			list = tokens[0]
			known = known || list == "mountHeights"
		}
	}
	switch {
	case !known:
		return nil, problem.List{{Where: "/reading", What: fmt.Sprintf("the boat file has no reading %q that is one number", r.Reading), Allowed: strings.Join(b.Loggable(), ", "), Kind: problem.Unknown}}.Err()
	case list != "" && list != "own" && list != "mountHeights" || len(tokens) > 2 && entryMember(tokens[0]).Items != nil:
		return nil, problem.List{{Where: "/reading", What: "it is one of a list that is read as a whole", Hint: "write the whole list down with the boat"}}.Err()
	}
	text, err := b.MarshalJSON()
	if err != nil {
		return nil, err
	}
	row := slices.IndexFunc(b.entries, func(e *Entry) bool {
		for _, p := range e.read(b.OwnReadings()) {
			if p.of.Name == r.Reading {
				return false
			}
		}
		return e.Date == r.Date && e.Time == r.Time && e.Source() == r.Source && e.Baseline() == r.Baseline && !e.Changed() && !e.FluidChanged()
	})
	if row < 0 {
		row = len(b.entries)
	}
	text, err = withReadings(text, func(rows []json.RawMessage) ([]json.RawMessage, error) {
		if row == len(rows) {
			rows = append(rows, json.RawMessage(`{"date":`+strconv.Quote(r.Date)+`}`))
		}
		var err error
		put := func(value any, at ...string) {
			if err == nil {
				var raw []byte
				if raw, err = json.Marshal(value); err == nil {
					rows[row], err = withValue(rows[row], at, raw)
				}
			}
		}
		for _, m := range []struct{ name, value string }{{"time", r.Time}, {"source", r.Source}, {"note", r.Note}} {
			if m.value != "" {
				put(m.value, m.name)
			}
		}
		if r.Baseline {
			put(true, "baseline")
		}
		if list == "" {
			put(valueFor(q, r.Value), tokens...)
		} else {
			put(append(b.listOf(row, list), pairOf(list, tokens[1], r.Value)), list)
		}
		if r.Gauge != "" {
			name := tokens[0]
			if list == "" {
				name = r.Reading
			}
			put(append(b.listOf(row, "gauges"), map[string]any{"reading": name, "gauge": r.Gauge}), "gauges")
		}
		return rows, err
	})
	if err != nil {
		return nil, err
	}
	kept, err := Read(text)
	problems := problem.Of(err)
	for i := range problems {
		p := &problems[i]
		inside, is := strings.CutPrefix(p.Where, fmt.Sprintf("/readings/%d/", row))
		switch {
		case !is:
			p.Where = "/boat" + p.Where
		case inside == "date" || inside == "time" || inside == "source" || inside == "note":
			p.Where = "/" + inside
		case strings.HasPrefix(inside, "gauges"):
			p.Where = "/gauge"
		default:
			p.Where = "/value"
		}
	}
	if err := problems.Sorted().Err(); err != nil {
		return nil, err
	}
	point := Point{}
	if !point.take(q.Kind, r.Value) && q.Kind != nil {
		_, err := q.Kind.Parse(r.Value)
		return nil, problem.List{{Where: "/value", What: fmt.Sprintf("%s: %v", q.Title, err), Allowed: strings.Join(q.Kind.Units(), ", ")}}.Err()
	}
	return kept, nil
}

// valueFor writes a value as its place takes it: a whole number as a number.
func valueFor(q Quantity, text string) any {
	if slices.Contains(q.Types, "integer") {
		if _, err := strconv.Atoi(text); err == nil {
			return json.Number(text)
		}
	}
	return text
}

func pairOf(list, key, value string) map[string]any {
	if list == "own" {
		return map[string]any{"reading": key, "value": value}
	}
	return map[string]any{"mount": key, "height": value}
}

// listOf is a list of an entry, empty where the entry is new or has none.
func (b *Boat) listOf(row int, name string) []any {
	if row >= len(b.entries) {
		return []any{}
	}
	list, _ := b.entries[row].values[name].([]any)
	return slices.Clip(list)
}

// Loggable are the names of all readings that can be put into the log one at a
// time.
func (b *Boat) Loggable() []string {
	var names []string
	c, err := Contract()
	if err != nil {
		return nil
	}
	for _, p := range c.Root.Child("readings").Items.Properties {
		if numeric(p) {
			names = append(names, p.Name)
		}
	}
	value, _, _, _ := b.Find("/mounts")
	for _, m := range Objects(value) {
		if name, _ := m["name"].(string); name != "" {
			names = append(names, "mountHeights/"+name)
		}
	}
	for _, q := range b.OwnReadings() {
		names = append(names, "own/"+q.Name)
	}
	return names
}
