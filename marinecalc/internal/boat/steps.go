// What is written down while work is done, kept with the boat.

package boat

import (
	"encoding/json"
	"slices"

	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/problem"
)

// KeepReading returns the boat with one reading of a day (ISO 8601,
// year-month-day) and time (hour:minute, "" where it is not told) written down.
// turn counts the day's entries that hold this reading from 0; where there are
// no more than turn, it goes into an entry of the day that has none yet, or
// into a new one, so that what was read before stays and this one is the
// newest. A nil value takes the reading of that turn away. The error is a
// *problem.Error when the boat's schema does not take it.
func (b *Boat) KeepReading(day, time, name string, turn int, value any) (*Boat, error) {
	if b == nil {
		return nil, noBoatToKeep()
	}
	text, err := b.MarshalJSON()
	if err != nil {
		return nil, err
	}
	row, free, latest := -1, -1, ""
	for _, e := range b.entries {
		if e.Date != day {
			continue
		}
		if _, has := e.values[name]; has {
			if turn == 0 {
				row = e.Index
			}
			turn--
			free, latest = -1, max(latest, e.Time) // of two at one time the one written later is the newer
		} else if free < 0 && e.Time >= latest && (e.Time == time || e.Time == "" || time == "") {
			free = e.Index
		}
	}
	switch {
	case row < 0 && value == nil:
		return b, nil
	case row < 0 && free >= 0 && b.entries[free].Time >= latest:
		row = free
	case row < 0:
		row = len(b.entries)
		if at := max(time, latest); at != "" {
			raw, _ := json.Marshal(at) // a text always can
			if text, err = withReading(text, row, day, []string{"time"}, raw); err != nil {
				return nil, err
			}
		}
	}
	if value == nil {
		text, err = withoutReading(text, row, name)
	} else {
		var raw []byte
		if raw, err = json.Marshal(value); err == nil {
			text, err = withReading(text, row, day, []string{name}, raw)
		}
	}
	if err != nil {
		return nil, err
	}
	return Read(text)
}

// withoutReading takes a reading out of an entry, and the entry with it where
// it holds nothing else.
func withoutReading(text []byte, row int, name string) ([]byte, error) {
	return withReadings(text, func(rows []json.RawMessage) ([]json.RawMessage, error) {
		members, err := contract.MembersOf(rows[row])
		if err != nil {
			return nil, err
		}
		var left []contract.Member
		for _, m := range members {
			if m.Name != name {
				left = append(left, m)
			}
		}
		if !slices.ContainsFunc(left, func(m contract.Member) bool { return m.Name != "date" && m.Name != "time" }) {
			return append(rows[:row:row], rows[row+1:]...), nil
		}
		rows[row] = contract.ObjectOf(left)
		return rows, nil
	})
}

// AddEvent returns the boat with an event written behind the others. renews is
// the reading that starts afresh with it, or "".
func (b *Boat) AddEvent(day, what, renews string) (*Boat, error) {
	if b == nil {
		return nil, noBoatToKeep()
	}
	text, err := b.MarshalJSON()
	if err != nil {
		return nil, err
	}
	text, err = withMember(text, "events", func(old json.RawMessage) (json.RawMessage, error) {
		var events []json.RawMessage
		if old != nil {
			if err := json.Unmarshal(old, &events); err != nil {
				return nil, err
			}
		}
		event, err := json.Marshal(struct {
			Date   string `json:"date"`
			What   string `json:"what"`
			Renews string `json:"renews,omitempty"`
		}{day, what, renews})
		if err != nil {
			return nil, err
		}
		return json.Marshal(append(events, event))
	})
	if err != nil {
		return nil, err
	}
	return Read(text)
}

func noBoatToKeep() error {
	return problem.List{{Where: "/boat", What: "there is no boat to keep it with", Allowed: "a boat file", Kind: problem.Missing}}.Err()
}
