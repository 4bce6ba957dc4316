package boat

import (
	"bytes"
	"encoding/json"
)

// MarshalJSON writes the boat file as it was read, with its members in the
// owner's order.
func (b *Boat) MarshalJSON() ([]byte, error) {
	if b == nil {
		return []byte("null"), nil
	}
	if b.text != nil {
		return b.text, nil
	}
	return json.Marshal(b.document)
}

// UnmarshalJSON reads a boat file as Read does.
func (b *Boat) UnmarshalJSON(text []byte) error {
	read, err := Read(text)
	if err != nil {
		return err
	}
	*b = *read
	return nil
}

// withReadings writes the text of a boat file anew with entries added after
// its own readings; every other member stands where the owner wrote it.
func withReadings(text []byte, added []map[string]any) ([]byte, error) {
	d := json.NewDecoder(bytes.NewReader(text))
	if _, err := d.Token(); err != nil { // the brace
		return nil, err
	}
	var out bytes.Buffer
	out.WriteByte('{')
	found := false
	member := func(name string, value []byte) error {
		if out.Len() > 1 {
			out.WriteByte(',')
		}
		key, err := json.Marshal(name)
		out.Write(key)
		out.WriteByte(':')
		out.Write(value)
		return err
	}
	readings := func(old []json.RawMessage) ([]byte, error) {
		for _, row := range added {
			text, err := json.Marshal(row)
			if err != nil {
				return nil, err
			}
			old = append(old, text)
		}
		return json.Marshal(old)
	}
	for d.More() {
		name, err := d.Token()
		if err != nil {
			return nil, err
		}
		var value json.RawMessage
		if err := d.Decode(&value); err != nil {
			return nil, err
		}
		if name == "readings" {
			found = true
			var old []json.RawMessage
			if err := json.Unmarshal(value, &old); err != nil {
				return nil, err
			}
			if value, err = readings(old); err != nil {
				return nil, err
			}
		}
		if err := member(name.(string), value); err != nil {
			return nil, err
		}
	}
	if !found {
		value, err := readings(nil)
		if err != nil {
			return nil, err
		}
		if err := member("readings", value); err != nil {
			return nil, err
		}
	}
	out.WriteByte('}')
	return out.Bytes(), nil
}
