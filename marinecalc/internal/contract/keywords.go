package contract

import (
	"encoding/json"
	"fmt"
	"regexp"
	"slices"
	"strings"

	"example.org/driveline/marinecalc/quantity"
)

// schema is a JSON Schema (draft 2020-12) ready to hold values against: the
// keywords that our documents use, and "quantity" of our own. One that needs
// another keyword of the standard does not load. A test holds what it finds
// against a validator of the whole standard.
type schema struct {
	ref      *schema
	types    jsonType // 0 is any
	constant []any    // one, or none
	enum     []any
	oneOf    []*schema
	text     *textRules // nil where nothing is asked of texts, and so on
	number   *numberRules
	list     *listRules
	object   *objectRules
}

type textRules struct {
	least, most int // letters; most is -1 where there is no bound
	pattern     *regexp.Regexp
	isDate      bool
	quantity    *quantityRule
}

// quantityRule is the keyword "quantity": a text in its place must be a quantity
// of that kind, inside minimum and maximum.
type quantityRule struct {
	kind     *quantity.Kind
	min, max float64
}

type numberRules struct{ min, max, above, below float64 } // infinite where there is no bound

type listRules struct {
	least, most int
	unique      bool
	items       *schema
}

type objectRules struct {
	least    int
	required []string
	members  map[string]*schema
	names    *schema
	closed   bool                // no other members
	others   *schema             // what other members are
	together map[string][]string // with a member, which others must be there
}

// jsonType is a set of JSON types.
type jsonType uint8

const (
	isNull jsonType = 1 << iota
	isBool
	isNumber
	isInteger
	isText
	isList
	isObject
)

var jsonTypes = map[string]jsonType{"null": isNull, "boolean": isBool, "number": isNumber, "integer": isInteger, "string": isText, "array": isList, "object": isObject}

// notKnown are the keywords of the standard that are not read here. A schema
// with one of them would let through what it should refuse.
var notKnown = []string{"not", "allOf", "anyOf", "if", "then", "else", "dependentSchemas", "patternProperties", "unevaluatedProperties", "maxProperties",
	"prefixItems", "contains", "minContains", "maxContains", "unevaluatedItems", "multipleOf", "contentEncoding", "contentMediaType", "contentSchema",
	"$anchor", "$dynamicAnchor", "$dynamicRef", "dependencies", "definitions"}

// compiler reads the schemas of one opening, what is referred to once.
type compiler struct{ done map[place]*schema }

// place is where a schema stands.
type place struct {
	file    *reader
	pointer string
}

// rulesWritten are the keywords that values are held against, as they stand in
// the file.
type rulesWritten struct {
	Ref       string                     `json:"$ref"`
	Type      json.RawMessage            `json:"type"`
	Const     json.RawMessage            `json:"const"`
	Enum      json.RawMessage            `json:"enum"`
	OneOf     []json.RawMessage          `json:"oneOf"`
	MinLength int                        `json:"minLength"`
	MaxLength *int                       `json:"maxLength"`
	Pattern   string                     `json:"pattern"`
	Format    string                     `json:"format"`
	Quantity  string                     `json:"quantity"`
	Minimum   *float64                   `json:"minimum"`
	Maximum   *float64                   `json:"maximum"`
	Above     *float64                   `json:"exclusiveMinimum"`
	Below     *float64                   `json:"exclusiveMaximum"`
	MinItems  int                        `json:"minItems"`
	MaxItems  *int                       `json:"maxItems"`
	Unique    bool                       `json:"uniqueItems"`
	Items     json.RawMessage            `json:"items"`
	Least     int                        `json:"minProperties"`
	Required  []string                   `json:"required"`
	Members   map[string]json.RawMessage `json:"properties"`
	Names     json.RawMessage            `json:"propertyNames"`
	Others    json.RawMessage            `json:"additionalProperties"`
	Together  map[string][]string        `json:"dependentRequired"`
}

// at compiles what stands at a JSON pointer of a document.
func (c *compiler) at(r *reader, pointer string) (*schema, error) {
	here := place{r, pointer}
	if s, has := c.done[here]; has {
		return s, nil
	}
	s := new(schema)
	c.done[here] = s // before it is read: it may lead back to itself
	text, err := r.at(pointer)
	if err != nil {
		return nil, err
	}
	return s, c.read(s, r, text)
}

// read reads a schema of a document into s.
func (c *compiler) read(s *schema, r *reader, text json.RawMessage) error {
	var w rulesWritten
	if err := json.Unmarshal(text, &w); err != nil {
		return err
	}
	if err := refuseOthers(text); err != nil {
		return err
	}
	if w.Ref != "" {
		of, _, err := r.follow(w.Ref)
		if err != nil {
			return err
		}
		_, pointer, _ := strings.Cut(w.Ref, "#")
		if s.ref, err = c.at(of, pointer); err != nil {
			return err
		}
	}
	types, err := typeNames(w.Type)
	if err != nil {
		return err
	}
	for _, name := range types {
		s.types |= jsonTypes[name]
	}
	if len(w.Const) > 0 {
		value, _ := Decode(w.Const) // the document was read as JSON before
		s.constant = []any{value}
	}
	if len(w.Enum) > 0 {
		list, _ := Decode(w.Enum)
		s.enum, _ = list.([]any)
	}
	for _, one := range w.OneOf {
		of := new(schema)
		if err := c.read(of, r, one); err != nil {
			return err
		}
		s.oneOf = append(s.oneOf, of)
	}
	s.number = w.numbers()
	if s.text, err = w.texts(); err != nil {
		return err
	}
	if s.list, err = c.lists(&w, r); err != nil {
		return err
	}
	s.object, err = c.objects(&w, r)
	return err
}

// refuseOthers refuses a schema with a keyword that is not read here.
func refuseOthers(text json.RawMessage) error {
	keys, _, err := members(text)
	if err != nil {
		return err
	}
	for _, key := range keys {
		if slices.Contains(notKnown, key) {
			return fmt.Errorf("the keyword %q is not read here", key)
		}
	}
	return nil
}

func (w *rulesWritten) numbers() *numberRules {
	if w.Minimum == nil && w.Maximum == nil && w.Above == nil && w.Below == nil {
		return nil
	}
	return &numberRules{bound(w.Minimum, -1), bound(w.Maximum, 1), bound(w.Above, -1), bound(w.Below, 1)}
}

func (w *rulesWritten) texts() (*textRules, error) {
	if w.MinLength == 0 && w.MaxLength == nil && w.Pattern == "" && w.Format == "" && w.Quantity == "" {
		return nil, nil
	}
	t := &textRules{least: w.MinLength, most: most(w.MaxLength), isDate: w.Format == "date"}
	if w.Format != "" && !t.isDate {
		return nil, fmt.Errorf("the format %q is not read here", w.Format)
	}
	if w.Pattern != "" {
		var err error
		if t.pattern, err = regexp.Compile(w.Pattern); err != nil {
			return nil, err
		}
	}
	if w.Quantity != "" {
		kind, ok := quantity.Lookup(w.Quantity)
		if !ok {
			return nil, fmt.Errorf("quantity: %q is not a kind of quantity", w.Quantity)
		}
		t.quantity = &quantityRule{kind, bound(w.Minimum, -1), bound(w.Maximum, 1)}
	}
	return t, nil
}

func (c *compiler) lists(w *rulesWritten, r *reader) (l *listRules, err error) {
	if w.MinItems == 0 && w.MaxItems == nil && !w.Unique && len(w.Items) == 0 {
		return nil, nil
	}
	l = &listRules{least: w.MinItems, most: most(w.MaxItems), unique: w.Unique}
	l.items, err = c.part(r, w.Items)
	return l, err
}

func (c *compiler) objects(w *rulesWritten, r *reader) (o *objectRules, err error) {
	if w.Least == 0 && len(w.Required) == 0 && len(w.Members) == 0 && len(w.Names) == 0 && len(w.Others) == 0 && len(w.Together) == 0 {
		return nil, nil
	}
	o = &objectRules{least: w.Least, required: w.Required, members: make(map[string]*schema, len(w.Members)), together: w.Together}
	for name, text := range w.Members {
		if o.members[name], err = c.part(r, text); err != nil {
			return nil, fmt.Errorf("%s: %w", name, err)
		}
	}
	if o.names, err = c.part(r, w.Names); err != nil {
		return nil, err
	}
	if o.closed = string(w.Others) == "false"; !o.closed {
		o.others, err = c.part(r, w.Others)
	}
	return o, err
}

// part compiles a schema inside another; nil where there is none, or one that
// lets all through.
func (c *compiler) part(r *reader, text json.RawMessage) (*schema, error) {
	if len(text) == 0 || string(text) == "true" {
		return nil, nil
	}
	s := new(schema)
	return s, c.read(s, r, text)
}

func most(n *int) int {
	if n == nil {
		return -1
	}
	return *n
}
