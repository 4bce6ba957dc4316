// Schemas as TypeScript declarations.

package main

import (
	"bytes"
	_ "embed"
	"encoding/json"
	"errors"
	"fmt"
	"slices"
	"strings"
)

//go:embed head.d.ts
var head string

// documents are the schemas that types are made of. The title of a document
// and the names of its $defs are the names of types.
var documents = []string{"sheet", "survey", "comparison", "line", "procedure", "problem"}

// writtenByHand are the schemas whose types stand in head.d.ts.
var writtenByHand = map[string]string{
	"annotations.schema.json":                    "Schema",
	"annotations.schema.json#/$defs/calculation": "CalculationSchema",
	"annotations.schema.json#/$defs/document":    "Schema",
}

// writer writes declarations, and gathers what cannot be written.
type writer struct {
	bytes.Buffer
	object string          // the type of an object of which nothing is known
	titles map[string]bool // the types written
	errs   []error
}

// declarations is the whole file of types.
func declarations() ([]byte, error) {
	w := &writer{titles: map[string]bool{}}
	w.WriteString(head)
	request, err := read("request")
	if err != nil {
		return nil, err
	}
	reply, err := read("reply")
	if err != nil {
		return nil, err
	}
	w.object = "object"
	w.requests(request)
	w.object = "Json"
	w.replies(request, reply)
	for _, name := range documents {
		s, err := read(name)
		if err != nil {
			return nil, err
		}
		w.declare(s.Title, s)
		for _, d := range s.Defs {
			w.declare(pascal(d.name), d.schema)
		}
	}
	return w.Bytes(), errors.Join(w.errs...)
}

// asks are the rules of the request's schema, one for each ask, by its name.
func asks(request *schema) members {
	var list members
	for i := range request.AllOf {
		rule := &request.AllOf[i]
		name, _ := rule.If.Properties.find("ask").Const.(string)
		list = append(list, member{name, rule})
	}
	return list
}

// requests writes a type for what each ask takes, and their union.
func (w *writer) requests(request *schema) {
	var names []string
	for _, ask := range asks(request) {
		name := pascal(ask.name) + "Request"
		names = append(names, name)
		w.open(name, ask.Description, "")
		w.member("ask", true, &schema{Description: request.Properties.find("ask").Description, Const: ask.name})
		for _, m := range ask.Then.Names.Enum {
			if m := m.(string); m != "ask" {
				w.member(m, slices.Contains(ask.Then.Required, m), request.Properties.find(m))
			}
		}
		w.WriteString("}\n")
	}
	w.alias(request.Title, request.Description, strings.Join(names, " | "))
	for _, d := range request.Defs {
		w.declare(pascal(d.name), d.schema)
	}
}

// replies writes a type for the reply to each ask, and which is whose.
func (w *writer) replies(request, reply *schema) {
	of := map[string]string{} // asks by the name of the definition of their reply
	for _, ask := range asks(request) {
		name := pascal(ask.name) + "Reply"
		of[strings.ToLower(name[:1])+name[1:]] = ask.name
	}
	for _, d := range reply.Defs {
		if d.Names == nil {
			w.declare(pascal(d.name), d.schema)
			continue
		}
		description := d.Description
		if ask := of[d.name]; ask != "" {
			description = "The reply to a request for " + ask + "."
		}
		w.open(pascal(d.name), description, w.bases(d.schema))
		for _, m := range d.Names.Enum {
			m := m.(string)
			s := d.Properties.find(m)
			if s == nil && m == "ok" {
				continue // that of its base
			}
			if s == nil {
				s = reply.Properties.find(m)
			}
			w.member(m, slices.Contains(d.Required, m), s)
		}
		w.WriteString("}\n")
	}
	w.open("Replies", "The reply to each ask that could be answered.", "")
	for _, ask := range asks(request) {
		fmt.Fprintf(w, "  '%s': %sReply;\n", ask.name, pascal(ask.name))
	}
	w.WriteString("}\n")
}

// declare writes a schema as a type of that name.
func (w *writer) declare(name string, s *schema) {
	if len(s.Properties) == 0 {
		w.alias(name, s.Description, w.typeOf(s))
		return
	}
	w.open(name, s.Description, w.bases(s))
	for _, p := range s.Properties {
		w.member(p.name, slices.Contains(s.Required, p.name), p.schema)
	}
	w.WriteString("}\n")
}

// bases are the types that an object's members are added to.
func (w *writer) bases(s *schema) string {
	var names []string
	if s.Ref != "" {
		names = append(names, w.name(s.Ref))
	}
	for i := range s.AllOf {
		names = append(names, w.name(s.AllOf[i].Ref))
	}
	return strings.Join(names, ", ")
}

func (w *writer) open(name, description, bases string) {
	w.once(name)
	if bases != "" {
		name += " extends " + bases
	}
	fmt.Fprintf(w, "\n%sexport interface %s {\n", comment("", description), name)
}

func (w *writer) alias(name, description, is string) {
	w.once(name)
	fmt.Fprintf(w, "\n%sexport type %s = %s;\n", comment("", description), name, is)
}

func (w *writer) once(name string) {
	if w.titles[name] {
		w.fail("there are two types %s", name)
	}
	w.titles[name] = true
}

func (w *writer) member(name string, required bool, s *schema) {
	if s == nil {
		w.fail("there is no member %s", name)
		return
	}
	mark := "?"
	if required {
		mark = ""
	}
	fmt.Fprintf(w, "%s  %s%s: %s;\n", comment("  ", s.Description), name, mark, w.typeOf(s))
}

func (w *writer) fail(format string, values ...any) {
	w.errs = append(w.errs, fmt.Errorf(format, values...))
}

func comment(indent, description string) string {
	if description == "" {
		return ""
	}
	return indent + "/** " + strings.ReplaceAll(description, "*/", "* /") + " */\n"
}

// name is the type that a reference points to.
func (w *writer) name(ref string) string {
	if name, is := writtenByHand[ref]; is {
		return name
	}
	document, inside, _ := strings.Cut(ref, "#")
	if name, is := strings.CutPrefix(inside, "/$defs/"); is {
		return pascal(name)
	}
	s, err := read(strings.TrimSuffix(document, ".schema.json"))
	if err != nil {
		w.fail("%s: %w", ref, err)
		return "unknown"
	}
	return s.Title
}

// typeOf is a schema as a TypeScript type.
func (w *writer) typeOf(s *schema) string {
	switch {
	case s.Ref != "":
		return w.name(s.Ref)
	case s.Enum != nil:
		words := make([]string, len(s.Enum))
		for i, v := range s.Enum {
			words[i] = literal(v)
		}
		return strings.Join(words, " | ")
	case s.Const != nil:
		return literal(s.Const)
	}
	types := make([]string, len(s.Type))
	for i, t := range s.Type {
		types[i] = w.plain(t, s)
	}
	if len(types) == 0 {
		w.fail("%q has no type", s.Description)
	}
	return strings.Join(types, " | ")
}

func (w *writer) plain(name string, s *schema) string {
	switch name {
	case "string", "boolean", "number", "null":
		return name
	case "integer":
		return "number"
	case "array":
		if s.Items == nil {
			break
		}
		of := w.typeOf(s.Items)
		if strings.Contains(of, " ") {
			of = "(" + of + ")"
		}
		return of + "[]"
	case "object":
		if s.Values != nil {
			return "{ [name: string]: " + w.typeOf(s.Values) + " }"
		}
		if len(s.Properties) == 0 {
			return w.object
		}
	}
	w.fail("%q: a type %s is not understood here", s.Description, name)
	return "unknown"
}

// literal is a JSON value as a type; texts stand in single quotes.
func literal(v any) string {
	if text, is := v.(string); is && !strings.ContainsAny(text, `'\`) {
		return "'" + text + "'"
	}
	text, _ := json.Marshal(v) // what was decoded can be written again
	return string(text)
}
