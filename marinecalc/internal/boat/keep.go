// What was typed for a calculation, kept with the boat.

package boat

import (
	"encoding/json"
	"strconv"
	"strings"

	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/problem"
)

// Typed is the value that was typed for an input.
type Typed struct {
	Input   string // its name
	Pointer string // of the schema's keyword "boat"
	Value   any    // as decoded
}

// Keeps tells whether the boat file has a place for one value at a pointer of
// the keyword "boat": not for the first reading of a run or its hours, which
// follow from the dates, nor for the date itself.
func Keeps(pointer string) bool {
	name, latest := strings.CutPrefix(pointer, LatestReading)
	return pointer != "" && (!strings.HasPrefix(pointer, "/readings/") || latest && name != "date")
}

// Keep returns the boat with what was typed at its places. Readings stand
// under the day (ISO 8601, year-month-day); so does the part of a section
// that a dated reading has changed before, since the newest holds.
//
// The error is a *problem.Error when the boat's schema does not take it;
// nothing is kept then. Its places are those of the inputs, "/<input>", and
// "/boat/…" for anything else.
func (b *Boat) Keep(list []Typed, day string) (*Boat, error) {
	if b == nil {
		return nil, noBoatToKeep()
	}
	text, err := b.MarshalJSON()
	if err != nil {
		return nil, err
	}
	row := 0 // the reading of that day, or a new one behind the others
	for row < len(b.entries) && b.entries[row].Date != day {
		row++
	}
	at := make([]string, len(list)) // the places in the boat
	for i, t := range list {
		value, err := json.Marshal(t.Value)
		if err != nil {
			return nil, err
		}
		tokens := contract.Tokens(t.Pointer)
		name, latest := strings.CutPrefix(t.Pointer, LatestReading)
		if latest {
			tokens = []string{name}
		}
		if latest || b.changes(tokens) {
			text, err = withReading(text, row, day, tokens, value)
			tokens = append([]string{"readings", strconv.Itoa(row)}, tokens...)
		} else {
			text, err = withValue(text, tokens, value)
		}
		if err != nil {
			return nil, err
		}
		at[i] = contract.Pointer(tokens)
	}
	kept, err := Read(text)
	problems := problem.Of(err)
	for i := range problems {
		p := &problems[i]
		where := "/boat" + p.Where
		for j, place := range at {
			if inside, is := strings.CutPrefix(p.Where, place); is && (inside == "" || inside[0] == '/') {
				where = "/" + list[j].Input + inside
			}
		}
		p.Where = where
	}
	return kept, problems.Sorted().Err()
}

// changes tells whether a dated reading has changed that place of a section.
func (b *Boat) changes(tokens []string) bool {
	for _, e := range b.entries {
		if _, has := contract.Resolve(e.values, tokens); has {
			return true
		}
	}
	return false
}

// withReading puts a value into a reading, which is new and of that day where
// there are only so many.
func withReading(text []byte, row int, day string, tokens []string, value json.RawMessage) ([]byte, error) {
	return withReadings(text, func(rows []json.RawMessage) (_ []json.RawMessage, err error) {
		if row == len(rows) {
			rows = append(rows, json.RawMessage(`{"date":`+strconv.Quote(day)+`}`))
		}
		rows[row], err = withValue(rows[row], tokens, value)
		return rows, err
	})
}
