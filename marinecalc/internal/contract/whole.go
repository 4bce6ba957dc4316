package contract

import (
	"bytes"
	"encoding/json"
	"slices"
	"sync"
)

// wholes keeps the schemas that were asked for.
var wholes sync.Map // by name

// Whole is a schema document as hosts draw forms from it: whatever it refers
// to in other documents stands in it, with what stands beside the reference
// in force. Members keep their order, which is that of the form.
func Whole(name string) (json.RawMessage, error) {
	if text, known := wholes.Load(name); known {
		return text.(json.RawMessage), nil
	}
	r, err := openReader(name+suffix, map[string]*reader{})
	if err != nil {
		return nil, err
	}
	text, err := r.whole(r.text, r)
	if err != nil {
		return nil, err
	}
	wholes.Store(name, text)
	return text, nil
}

// member is a member of an object with its value as it is written.
type member struct {
	name  string
	value json.RawMessage
}

// whole writes a value of the reader's document with every reference that
// leads out of the document at root replaced by what it points to.
func (r *reader) whole(text json.RawMessage, root *reader) (json.RawMessage, error) {
	if !bytes.Contains(text, []byte(`"$ref"`)) { // as most values
		return text, nil
	}
	switch text = bytes.TrimSpace(text); text[0] {
	case '{':
		members, err := r.wholeMembers(text, root)
		if err != nil {
			return nil, err
		}
		return objectOf(members), nil
	case '[':
		var list []json.RawMessage
		if err := json.Unmarshal(text, &list); err != nil {
			return nil, err
		}
		for i := range list {
			var err error
			if list[i], err = r.whole(list[i], root); err != nil {
				return nil, err
			}
		}
		return json.Marshal(list)
	}
	return text, nil
}

func (r *reader) wholeMembers(text json.RawMessage, root *reader) ([]member, error) {
	own, err := membersOf(text)
	if err != nil {
		return nil, err
	}
	var out []member
	for _, m := range own {
		var ref string
		if m.name == "$ref" && json.Unmarshal(m.value, &ref) == nil {
			of, target, err := r.follow(ref)
			if err != nil {
				return nil, err
			}
			if of != root {
				if out, err = of.wholeMembers(target, root); err != nil {
					return nil, err
				}
				continue
			}
		}
		if m.value, err = r.whole(m.value, root); err != nil {
			return nil, err
		}
		if i := slices.IndexFunc(out, func(o member) bool { return o.name == m.name }); i >= 0 {
			out[i] = m
			continue
		}
		out = append(out, m)
	}
	return out, nil
}

// membersOf takes an object apart, in the order in which it is written.
func membersOf(text json.RawMessage) ([]member, error) {
	d := json.NewDecoder(bytes.NewReader(text))
	if _, err := d.Token(); err != nil { // the brace
		return nil, err
	}
	var list []member
	for d.More() {
		name, err := d.Token()
		if err != nil {
			return nil, err
		}
		m := member{name: name.(string)}
		if err := d.Decode(&m.value); err != nil {
			return nil, err
		}
		list = append(list, m)
	}
	return list, nil
}

func objectOf(members []member) json.RawMessage {
	var out bytes.Buffer
	out.WriteByte('{')
	for i, m := range members {
		if i > 0 {
			out.WriteByte(',')
		}
		name, _ := json.Marshal(m.name) // a text always can
		out.Write(name)
		out.WriteByte(':')
		out.Write(m.value)
	}
	out.WriteByte('}')
	return out.Bytes()
}
