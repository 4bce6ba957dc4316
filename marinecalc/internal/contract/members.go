package contract

import (
	"bytes"
	"encoding/json"
)

// Member is a member of an object, with its value as it is written.
type Member struct {
	Name  string
	Value json.RawMessage
}

// MembersOf takes an object apart, in the order in which it is written.
func MembersOf(text json.RawMessage) ([]Member, error) {
	d := json.NewDecoder(bytes.NewReader(text))
	if _, err := d.Token(); err != nil { // the brace
		return nil, err
	}
	var list []Member
	for d.More() {
		name, err := d.Token()
		if err != nil {
			return nil, err
		}
		m := Member{Name: name.(string)}
		if err := d.Decode(&m.Value); err != nil {
			return nil, err
		}
		list = append(list, m)
	}
	return list, nil
}

// ObjectOf writes an object of its members, in their order.
func ObjectOf(members []Member) json.RawMessage {
	var out bytes.Buffer
	out.WriteByte('{')
	for i, m := range members {
		if i > 0 {
			out.WriteByte(',')
		}
		name, _ := json.Marshal(m.Name) // a text always can
		out.Write(name)
		out.WriteByte(':')
		out.Write(m.Value)
	}
	out.WriteByte('}')
	return out.Bytes()
}

// names lists a property's members in the order of the document.
func (p *Property) names() []string {
	names := make([]string, len(p.Properties))
	for i, c := range p.Properties {
		names[i] = c.Name
	}
	return names
}
