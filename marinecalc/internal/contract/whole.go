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
	r, err := openReader(name + suffix)
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
		return ObjectOf(members), nil
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

func (r *reader) wholeMembers(text json.RawMessage, root *reader) ([]Member, error) {
	own, err := MembersOf(text)
	if err != nil {
		return nil, err
	}
	var out []Member
	put := func(m Member) {
		if i := slices.IndexFunc(out, func(o Member) bool { return o.Name == m.Name }); i >= 0 {
			out[i] = m
			return
		}
		out = append(out, m)
	}
	for _, m := range own {
		var ref string
		if m.Name == "$ref" && json.Unmarshal(m.Value, &ref) == nil {
			of, target, err := r.follow(ref)
			if err != nil {
				return nil, err
			}
			if of != root {
				before := out
				if out, err = of.wholeMembers(target, root); err != nil {
					return nil, err
				}
				for _, m := range before {
					put(m)
				}
				continue
			}
		}
		if m.Value, err = r.whole(m.Value, root); err != nil {
			return nil, err
		}
		put(m)
	}
	return out, nil
}
