package contract

import (
	"bytes"
	"encoding/json"
	"fmt"
	"maps"
	"strings"
	"sync"

	"example.org/driveline/schemas"
)

// reader turns the text of one schema document into properties. It follows
// references inside the document, and to other documents of the same folder
// ("boat-shaft.schema.json#/$defs/shaft/properties/diameter").
type reader struct {
	file    string
	text    json.RawMessage
	objects map[string]map[string]json.RawMessage // by JSON pointer, those read so far
}

// readers keeps the documents that were opened, by file name, and what was
// looked up in them: most schemas refer to the same few of the boat.
var (
	reading sync.Mutex
	readers = map[string]*reader{}
)

// openReader reads a schema document by its file's name.
func openReader(file string) (*reader, error) {
	reading.Lock()
	defer reading.Unlock()
	if r, has := readers[file]; has {
		return r, nil
	}
	text, err := schemas.Read(strings.TrimSuffix(file, suffix))
	if err != nil {
		return nil, fmt.Errorf("there is no schema %q", file)
	}
	r := &reader{file: file, text: text, objects: map[string]map[string]json.RawMessage{}}
	readers[file] = r
	return r, nil
}

// follow returns what a reference points to, and the reader of the document
// in which that stands.
func (r *reader) follow(ref string) (of *reader, target json.RawMessage, err error) {
	file, pointer, _ := strings.Cut(ref, "#")
	of = r
	if file != "" {
		if of, err = openReader(file); err != nil {
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
	reading.Lock()
	defer reading.Unlock()
	return r.find(pointer)
}

func (r *reader) find(pointer string) (json.RawMessage, error) {
	cut := strings.LastIndexByte(pointer, '/')
	if cut < 0 {
		return r.text, nil
	}
	object, has := r.objects[pointer[:cut]]
	if !has {
		text, err := r.find(pointer[:cut])
		if err != nil {
			return nil, err
		}
		names, values, err := split(text)
		if err != nil {
			return nil, err
		}
		object = make(map[string]json.RawMessage, len(names))
		for i, name := range names {
			object[name] = values[i]
		}
		r.objects[pointer[:cut]] = object
	}
	value, has := object[pointer[cut+1:]]
	if !has {
		return nil, fmt.Errorf("nothing stands at %s", pointer)
	}
	return value, nil
}

// bundle writes the document with all that it refers to in other documents
// among its own $defs, and nothing else of those. It leaves out what the
// validator has no use for, the words for people and the results, since it
// takes most of its time to read what it is given.
func (r *reader) bundle() ([]byte, error) {
	var document map[string]any
	if err := decodeInto(&document, r.text); err != nil {
		return nil, err
	}
	own, _ := document["$defs"].(map[string]any)
	delete(own, "result")
	b := bundler{root: r, defs: map[string]any{}}
	if err := b.gather(r, document); err != nil {
		return nil, err
	}
	maps.Copy(b.defs, own)
	document["$defs"] = b.defs
	return json.Marshal(document)
}

// forPeople lists the keywords that no value is held against.
var forPeople = map[string]bool{"title": true, "description": true, "examples": true, "enumTitles": true, "units": true, "symbol": true,
	"boat": true, "unkept": true, "after": true, "readBy": true, "bare": true, "level": true, "usual": true, "likeRow": true, "rows": true, "fills": true, "needs": true, "setting": true, "difference": true, "counted": true, "instrument": true}

type bundler struct {
	root *reader
	defs map[string]any
}

// gather turns every reference below a value of one document into one inside
// the bundle.
func (b *bundler) gather(of *reader, value any) error {
	switch v := value.(type) {
	case []any:
		for _, child := range v {
			if err := b.gather(of, child); err != nil {
				return err
			}
		}
	case map[string]any:
		for keyword, child := range v {
			if _, described := child.(map[string]any); !described && forPeople[keyword] { // a member may bear such a name too
				delete(v, keyword)
				continue
			}
			if err := b.gather(of, child); err != nil {
				return err
			}
		}
		if ref, is := v["$ref"].(string); is {
			name, err := b.place(of, ref)
			if err != nil {
				return err
			}
			v["$ref"] = name
		}
	}
	return nil
}

// place puts what a reference points to into the bundle, once, and returns
// the reference to it there.
func (b *bundler) place(from *reader, ref string) (string, error) {
	of, text, err := from.follow(ref)
	if err != nil || of == b.root {
		return ref, err
	}
	_, pointer, _ := strings.Cut(ref, "#")
	name := of.file + strings.ReplaceAll(pointer, "/", ".")
	if _, has := b.defs[name]; !has {
		var target map[string]any
		if err := decodeInto(&target, text); err != nil {
			return "", err
		}
		b.defs[name] = target
		if err := b.gather(of, target); err != nil {
			return "", err
		}
	}
	return "#/$defs/" + name, nil
}

// decodeInto keeps numbers as they are written.
func decodeInto(to *map[string]any, text []byte) error {
	d := json.NewDecoder(bytes.NewReader(text))
	d.UseNumber()
	return d.Decode(to)
}
