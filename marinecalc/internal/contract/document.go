package contract

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"maps"
	"slices"
	"strconv"
	"strings"
	"sync"

	"github.com/santhosh-tekuri/jsonschema/v5"

	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/schemas"
)

// Calculation is the contract of one calculation: its title, what it
// answers, its inputs and its results in the order in which people meet them.
type Calculation struct {
	ID      string
	Title   string
	Answers string
	Input   *Property
	Result  *Property

	Formulas *Formulas
	check    func() (*jsonschema.Schema, error) // made when the first input comes: most callers only read the contract
}

// OpenCalculation reads the contract of a calculation by its id.
func OpenCalculation(id string) (*Calculation, error) {
	_, top, r, err := open(id)
	if err != nil {
		return nil, err
	}
	c := &Calculation{ID: id, Title: top.Title, Answers: top.Description}
	for name, to := range map[string]**Property{"input": &c.Input, "result": &c.Result} {
		raw, err := r.at("/$defs/" + name)
		if err != nil {
			return nil, fmt.Errorf("schema %s: %w", id, err)
		}
		if *to, err = r.property(name, raw); err != nil {
			return nil, fmt.Errorf("schema %s: %w", id, err)
		}
	}
	for _, p := range c.Result.Properties {
		p.IsResult = true
	}
	for _, p := range slices.Concat(c.Input.Properties, c.Result.Properties) {
		p.Pointer, p.Path = "/"+p.Name, id+"/"+p.Name
	}
	c.check = sync.OnceValues(func() (*jsonschema.Schema, error) { return compile(id, r, "#/$defs/input") })
	c.Formulas = c.formulas()
	return c, nil
}

// Heading is what stands at the head of a calculation's schema.
type Heading struct {
	Title   string
	Answers string
	Onward  []string // ids of the calculations whose sheets one opens after it
}

// HeadingOf reads the head of a calculation's schema, no further than that: a
// list of all calculations should not open them all.
func HeadingOf(id string) (h Heading, err error) {
	text, err := schemas.Read(id)
	if err != nil {
		return h, fmt.Errorf("there is no schema %q", id)
	}
	d := json.NewDecoder(bytes.NewReader(text))
	if _, err = d.Token(); err != nil { // the brace
		return h, err
	}
	for d.More() {
		key, err := d.Token()
		if err != nil {
			return h, err
		}
		var other json.RawMessage
		var into any = &other
		switch key {
		case "title":
			into = &h.Title
		case "description":
			into = &h.Answers
		case "onward":
			into = &h.Onward
		case "$ref": // the head ends
			return h, nil
		}
		if err = d.Decode(into); err != nil {
			return h, err
		}
	}
	return h, nil
}

// Names lists the inputs and results of a calculation in the order of its
// schema, without opening the whole of it.
func Names(id string) (names []string, err error) {
	_, _, r, err := open(id)
	for _, of := range []string{"input", "result"} {
		var raw json.RawMessage
		if err == nil {
			raw, err = r.at("/$defs/" + of + "/properties")
		}
		var some []string
		if err == nil {
			some, _, err = split(raw)
		}
		if err != nil {
			return nil, fmt.Errorf("schema %s: %w", id, err)
		}
		names = append(names, some...)
	}
	return names, nil
}

// CheckInput holds an input, as Decode gives it, against the contract and
// returns the list of every problem in it, empty where there is none.
func (c *Calculation) CheckInput(input any) problem.List {
	s, err := c.check()
	if err != nil {
		return one("", err.Error(), "", "")
	}
	return check(s, c.Input, input, false)
}

// Document is the contract of a whole document, such as the boat file.
type Document struct {
	Name  string
	Title string
	Root  *Property

	check *jsonschema.Schema
}

// OpenDocument reads the contract of a document by the schema's name.
func OpenDocument(name string) (*Document, error) {
	text, top, r, err := open(name)
	if err != nil {
		return nil, err
	}
	root, err := r.property("", text)
	if err != nil {
		return nil, fmt.Errorf("schema %s: %w", name, err)
	}
	d := &Document{Name: name, Title: top.Title, Root: root}
	if d.check, err = compile(name, r, ""); err != nil {
		return nil, err
	}
	return d, nil
}

// Check holds a decoded document against the contract and returns the list of
// every problem in it, empty where there is none. A member that the contract does not know is none; Unknown
// names those. Of a format later than the contract's nothing more is said:
// what stands in it may mean something else.
func (d *Document) Check(value any) problem.List {
	if later := d.later(value); later != nil {
		return later
	}
	return check(d.check, d.Root, value, true)
}

// CheckStrict is Check, with every member that the contract does not know as a
// problem too.
func (d *Document) CheckStrict(value any) problem.List { return check(d.check, d.Root, value, false) }

// later refuses a document whose member "format" is beyond what the contract
// reads.
func (d *Document) later(value any) problem.List {
	object, _ := value.(map[string]any)
	format := d.Root.Child("format")
	number, _ := object["format"].(json.Number)
	n, err := number.Int64()
	if format == nil || format.Maximum == nil || err != nil || float64(n) <= *format.Maximum {
		return nil
	}
	return one("/format", fmt.Sprintf("this file is written in format %d, and this version reads up to format %g", n, *format.Maximum),
		AllowedRange(format), "use a newer version of the program, or save the file in the older format with the one that wrote it")
}

// Unknown names every member of a decoded document that the contract does not
// know, with the closest name that it does know there. They are warnings: such
// a member is kept, and nothing is calculated from it. What is alike in many
// entries of a list is named once.
func (d *Document) Unknown(value any) problem.List {
	var found Alike
	unknown(&found, nil, d.Root, value)
	return found.List()
}

func unknown(found *Alike, path []string, p *Property, value any) {
	switch v := value.(type) {
	case map[string]any:
		for _, name := range slices.Sorted(maps.Keys(v)) {
			where := append(slices.Clip(path), name)
			if child := p.Child(name); child != nil {
				unknown(found, where, child, v[name])
			} else if len(p.Properties) > 0 {
				found.Add(where, func() problem.Problem { return unknownMember(name, p.names()) })
			}
		}
	case []any:
		for i, entry := range v {
			if p.Items != nil {
				unknown(found, append(slices.Clip(path), strconv.Itoa(i)), p.Items, entry)
			}
		}
	}
}

// unknownMember says of a member that it is not used. The names that are known
// there are told where none of them comes close.
func unknownMember(name string, known []string) problem.Problem {
	p := problem.Problem{What: fmt.Sprintf("%q is not a name known here; it is kept, and nothing is calculated from it", Shorten(name)), Hint: problem.DidYouMean(name, known)}
	if p.Hint == "" {
		p.Allowed = strings.Join(known, ", ")
	}
	return p
}

// suffix ends the file name of every schema document.
const suffix = ".schema.json"

func refuseToLoad(string) (io.ReadCloser, error) {
	return nil, errors.New("nothing is loaded from outside")
}

func open(name string) (text []byte, top written, r *reader, err error) {
	if r, err = openReader(name + suffix); err != nil {
		return nil, top, nil, err
	}
	w, err := readWritten(r.text)
	if err != nil {
		return nil, top, nil, fmt.Errorf("schema %s: %w", name, err)
	}
	return r.text, *w, r, nil
}

// compile readies the validator for the part of a schema document that the
// fragment names. It never reads a file or the network.
func compile(name string, r *reader, fragment string) (*jsonschema.Schema, error) {
	text, err := r.bundle()
	if err != nil {
		return nil, fmt.Errorf("schema %s: %w", name, err)
	}
	c := jsonschema.NewCompiler()
	c.Draft = jsonschema.Draft2020
	c.AssertFormat = true
	c.LoadURL = refuseToLoad
	c.RegisterExtension("quantity", nil, quantityKeyword{})
	url := schemas.Base + name + suffix
	if err := c.AddResource(url, bytes.NewReader(text)); err != nil {
		return nil, fmt.Errorf("schema %s: %w", name, err)
	}
	s, err := c.Compile(url + fragment)
	if err != nil {
		return nil, fmt.Errorf("schema %s: %w", name, err)
	}
	return s, nil
}
