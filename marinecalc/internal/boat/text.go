package boat

import (
	"encoding/json"
	"slices"

	"example.org/driveline/marinecalc/internal/contract"
)

// MarshalJSON writes the boat file as it was read, with its members in the
// owner's order.
func (b Boat) MarshalJSON() ([]byte, error) {
	if b.text != nil {
		return slices.Clone(b.text), nil
	}
	return json.Marshal(b.document)
}

// UnmarshalJSON reads a boat file as Read does. A null leaves the boat as it
// is.
func (b *Boat) UnmarshalJSON(text []byte) error {
	if string(text) == "null" {
		return nil
	}
	read, err := Read(text)
	if err != nil {
		return err
	}
	*b = *read
	return nil
}

// withReadings writes the text of a boat file anew with its readings changed;
// every other member stands where the owner wrote it.
func withReadings(text []byte, change func(rows []json.RawMessage) ([]json.RawMessage, error)) ([]byte, error) {
	return withMember(text, "readings", func(old json.RawMessage) (json.RawMessage, error) {
		var rows []json.RawMessage
		if old != nil {
			if err := json.Unmarshal(old, &rows); err != nil {
				return nil, err
			}
		}
		rows, err := change(rows)
		if err != nil {
			return nil, err
		}
		return json.Marshal(rows)
	})
}

// withMember writes the text of an object anew with one member changed, which
// stands where it stood, or last where it is new (old is nil then). The empty
// text stands for an object without members.
func withMember(text []byte, name string, change func(old json.RawMessage) (json.RawMessage, error)) ([]byte, error) {
	if len(text) == 0 {
		text = []byte("{}")
	}
	members, err := contract.MembersOf(text)
	if err != nil {
		return nil, err
	}
	i := slices.IndexFunc(members, func(m contract.Member) bool { return m.Name == name })
	if i < 0 {
		i = len(members)
		members = append(members, contract.Member{Name: name})
	}
	if members[i].Value, err = change(members[i].Value); err != nil {
		return nil, err
	}
	return contract.ObjectOf(members), nil
}

// withValue writes the text of an object anew with a value put at a place
// inside it, and the objects on the way there where they are missing.
func withValue(text []byte, tokens []string, value json.RawMessage) ([]byte, error) {
	if len(tokens) == 0 {
		return value, nil
	}
	return withMember(text, tokens[0], func(old json.RawMessage) (json.RawMessage, error) {
		return withValue(old, tokens[1:], value)
	})
}
