package contract

import (
	"encoding/json"
	"fmt"
	"strings"

	"example.org/driveline/schemas"
)

// reader turns the text of one schema document into properties. It follows
// references inside the document, and to other documents of the same folder
// ("boat-shaft.schema.json#/$defs/shaft/properties/diameter").
type reader struct {
	file    string
	text    json.RawMessage
	objects map[string]map[string]json.RawMessage // by JSON pointer, those read so far
	others  map[string]*reader                    // by file name; shared by all readers of one opening
}

// openReader reads a schema document by its file's name.
func openReader(file string, others map[string]*reader) (*reader, error) {
	if r, has := others[file]; has {
		return r, nil
	}
	text, err := schemas.Read(strings.TrimSuffix(file, suffix))
	if err != nil {
		return nil, fmt.Errorf("there is no schema %q", file)
	}
	r := &reader{file: file, text: text, objects: map[string]map[string]json.RawMessage{}, others: others}
	others[file] = r
	return r, nil
}

// follow returns what a reference points to, and the reader of the document
// in which that stands.
func (r *reader) follow(ref string) (of *reader, target json.RawMessage, err error) {
	file, pointer, _ := strings.Cut(ref, "#")
	of = r
	if file != "" {
		if of, err = openReader(file, r.others); err != nil {
			return nil, nil, err
		}
	}
	if target, err = of.at(pointer); err != nil {
		return nil, nil, fmt.Errorf("reference %q: %w", ref, err)
	}
	return of, target, nil
}

// at returns the text at a JSON pointer of objects.
func (r *reader) at(pointer string) (json.RawMessage, error) {
	cut := strings.LastIndexByte(pointer, '/')
	if cut < 0 {
		return r.text, nil
	}
	object, has := r.objects[pointer[:cut]]
	if !has {
		text, err := r.at(pointer[:cut])
		if err != nil {
			return nil, err
		}
		if err := json.Unmarshal(text, &object); err != nil {
			return nil, err
		}
		r.objects[pointer[:cut]] = object
	}
	value, has := object[pointer[cut+1:]]
	if !has {
		return nil, fmt.Errorf("nothing stands at %s", pointer)
	}
	return value, nil
}
