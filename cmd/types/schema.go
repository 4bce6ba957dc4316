// The keywords of JSON Schema that the schemas of requests and replies use.

package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"strings"

	"example.org/driveline/schemas"
)

// schema is a schema with every keyword that is understood here; a document
// with any other is refused.
type schema struct {
	Dialect     string   `json:"$schema"`
	ID          string   `json:"$id"`
	Title       string   `json:"title"`
	Description string   `json:"description"`
	Type        oneOrAny `json:"type"`
	Ref         string   `json:"$ref"`
	Defs        members  `json:"$defs"`
	Required    []string `json:"required"`
	Properties  members  `json:"properties"`
	Items       *schema  `json:"items"`
	Values      *schema  `json:"additionalProperties"` // of an object whose members have any name
	Open        *bool    `json:"unevaluatedProperties"`
	Enum        []any    `json:"enum"`
	Const       any      `json:"const"`
	AllOf       []schema `json:"allOf"`
	OneOf       []schema `json:"oneOf"`
	If          *schema  `json:"if"`
	Then        *schema  `json:"then"`
	Names       *schema  `json:"propertyNames"`
	Minimum     *float64 `json:"minimum"`
	Maximum     *float64 `json:"maximum"`
	MinItems    *int     `json:"minItems"`
	MaxItems    *int     `json:"maxItems"`
	Pattern     string   `json:"pattern"`
}

// oneOrAny is the keyword type: one name, or a list of them.
type oneOrAny []string

func (o *oneOrAny) UnmarshalJSON(text []byte) error {
	var one string
	if json.Unmarshal(text, &one) == nil {
		*o = oneOrAny{one}
		return nil
	}
	return json.Unmarshal(text, (*[]string)(o))
}

// member is a schema by its name.
type member struct {
	name string
	*schema
}

// members are schemas by name, in the order of the document.
type members []member

func (m *members) UnmarshalJSON(text []byte) error {
	d := strict(text)
	if _, err := d.Token(); err != nil { // the brace
		return err
	}
	for d.More() {
		name, err := d.Token()
		if err != nil {
			return err
		}
		one := member{fmt.Sprint(name), new(schema)}
		if err := d.Decode(one.schema); err != nil {
			return fmt.Errorf("%s: %w", one.name, err)
		}
		*m = append(*m, one)
	}
	return nil
}

// find returns the member of that name, or nil.
func (m members) find(name string) *schema {
	for _, one := range m {
		if one.name == name {
			return one.schema
		}
	}
	return nil
}

func strict(text []byte) *json.Decoder {
	d := json.NewDecoder(bytes.NewReader(text))
	d.DisallowUnknownFields()
	return d
}

// read reads a schema document by its name.
func read(name string) (*schema, error) {
	text, err := schemas.ReadReply(name)
	if err != nil {
		return nil, err
	}
	s := new(schema)
	if err := strict(text).Decode(s); err != nil {
		return nil, fmt.Errorf("schema %s: %w", name, err)
	}
	return s, nil
}

// pascal is the name of a type for a name with small letters and hyphens.
func pascal(name string) string {
	var b strings.Builder
	for _, word := range strings.Split(name, "-") {
		b.WriteString(strings.ToUpper(word[:1]) + word[1:])
	}
	return b.String()
}
