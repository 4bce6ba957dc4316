package marinecalc_test

import (
	"encoding/json"
	"maps"
	"reflect"
	"slices"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/sheet"
	"example.org/driveline/schemas"
)

// node is a schema as it stands in its document.
type node struct {
	document string // its name
	is       map[string]any
}

func openNode(t *testing.T, document, inside string) node {
	t.Helper()
	text, err := schemas.ReadReply(document)
	if err != nil {
		t.Fatal(err)
	}
	var root map[string]any
	if err := json.Unmarshal(text, &root); err != nil {
		t.Fatal(err)
	}
	for _, name := range strings.Split(strings.TrimPrefix(inside, "/"), "/") {
		if name == "" {
			continue
		}
		next, ok := root[name].(map[string]any)
		if !ok {
			t.Fatalf("schema %s has no %s", document, inside)
		}
		root = next
	}
	return node{document, root}
}

// follow is the schema that a $ref points to.
func (n node) follow(t *testing.T, ref string) node {
	file, inside, _ := strings.Cut(ref, "#")
	document := strings.TrimSuffix(file, ".schema.json")
	if document == "" {
		document = n.document
	}
	return openNode(t, document, inside)
}

// members are the properties of an object with those of the schemas that it
// is built on, and the names of those that are always there.
func (n node) members(t *testing.T) (properties map[string]node, required []string) {
	properties = map[string]node{}
	bases := []any{n.is}
	if all, is := n.is["allOf"].([]any); is {
		bases = append(bases, all...)
	}
	for _, b := range bases {
		if ref, is := b.(map[string]any)["$ref"].(string); is {
			more, names := n.follow(t, ref).members(t)
			maps.Copy(properties, more)
			required = append(required, names...)
		}
	}
	own, _ := n.is["properties"].(map[string]any)
	for name, p := range own {
		properties[name] = node{n.document, p.(map[string]any)}
	}
	return properties, append(required, texts(n.is["required"])...)
}

func texts(list any) []string {
	var out []string
	entries, _ := list.([]any)
	for _, v := range entries {
		out = append(out, v.(string))
	}
	return out
}

// memberSchemas are the members that the schema at a place of a document has.
func memberSchemas(t *testing.T, document, inside string) map[string]node {
	t.Helper()
	members, _ := openNode(t, document, inside).members(t)
	return members
}

// enumOf lists the words of one member of a document.
func enumOf(t *testing.T, document, member string) []string {
	t.Helper()
	return texts(memberSchemas(t, document, "")[member].is["enum"])
}

// askMembers lists what a request of an ask takes and what it needs, by the
// request's schema.
func askMembers(t *testing.T, ask string) (takes, needs []string) {
	t.Helper()
	for _, rule := range openNode(t, "request", "").is["allOf"].([]any) {
		var r struct {
			If struct {
				Properties struct{ Ask struct{ Const string } }
			}
			Then struct {
				Required      []string
				PropertyNames struct{ Enum []string }
			}
		}
		text, _ := json.Marshal(rule)
		if err := json.Unmarshal(text, &r); err != nil {
			t.Fatal(err)
		}
		if r.If.Properties.Ask.Const == ask {
			return r.Then.PropertyNames.Enum, r.Then.Required
		}
	}
	t.Fatalf("no rule of the request's schema is for %s", ask)
	return nil, nil
}

// What Go writes and what the schemas describe have the same members, always
// there in the one where they always are in the other.
func TestReplySchemasHaveTheMembersOfTheStructs(t *testing.T) {
	w := &walk{T: t, seen: map[reflect.Type]bool{}}
	w.meets("reply", openNode(t, "reply", ""), marinecalc.ReplyType)
	for _, of := range []any{marinecalc.Sheet{}, marinecalc.Survey{}, marinecalc.Comparison{}, marinecalc.Problem{}, marinecalc.Entry{}, marinecalc.Choice{}, sheet.Made{}, sheet.Verdict{}} {
		if !w.seen[reflect.TypeOf(of)] {
			t.Errorf("%T was not reached", of)
		}
	}
	var words []string
	for _, w := range sheet.Words() {
		words = append(words, string(w))
	}
	if in := texts(openNode(t, "sheet", "/$defs/word").is["enum"]); !slices.Equal(in, words) {
		t.Errorf("the words of verdicts are %q, in the schema %q", words, in)
	}
}

type walk struct {
	*testing.T
	seen map[reflect.Type]bool
}

// meets holds a schema and a Go type together, and all that is inside them.
func (w *walk) meets(where string, n node, of reflect.Type) {
	w.Helper()
	if of.Kind() == reflect.Pointer {
		of = of.Elem()
	}
	if of == reflect.TypeFor[json.RawMessage]() || of == reflect.TypeFor[marinecalc.Boat]() {
		return // documents with schemas of their own
	}
	if of.Kind() != reflect.Struct {
		if ref, is := n.is["$ref"].(string); is {
			n = n.follow(w.T, ref)
		}
	}
	want := ""
	switch of.Kind() {
	case reflect.Struct:
		w.struc(where, n, of)
		return
	case reflect.Slice:
		items, _ := n.is["items"].(map[string]any)
		w.meets(where+"[]", node{n.document, items}, of.Elem())
		want = "array"
	case reflect.Map:
		values, _ := n.is["additionalProperties"].(map[string]any)
		w.meets(where+"{}", node{n.document, values}, of.Elem())
		want = "object"
	case reflect.String:
		if of.PkgPath() != "" && n.is["enum"] == nil {
			w.Errorf("%s is one of the words of %s, and its schema lists none", where, of)
		}
		want = "string"
	case reflect.Interface: // as it stands in the boat file, where lists have objects
		want = "object"
	case reflect.Bool:
		want = "boolean"
	case reflect.Float64:
		want = "number"
	case reflect.Int, reflect.Uint64:
		want = "integer"
	default:
		w.Errorf("%s: a %s is not known to this test", where, of)
	}
	if n.is["enum"] == nil && n.is["type"] != want {
		w.Errorf("%s is a %s in Go and %v in the schema", where, of, n.is["type"])
	}
}

func (w *walk) struc(where string, n node, of reflect.Type) {
	if w.seen[of] {
		return
	}
	w.seen[of] = true
	properties, required := n.members(w.T)
	fields := map[string]bool{}
	for _, f := range reflect.VisibleFields(of) {
		name, option, _ := strings.Cut(f.Tag.Get("json"), ",")
		if f.Anonymous && name == "" || name == "-" || !f.IsExported() {
			continue
		}
		fields[name] = true
		p, has := properties[name]
		switch {
		case !has:
			w.Errorf("%s: the schema has no %s of %s", where, name, of)
			continue
		case slices.Contains(required, name) == strings.HasPrefix(option, "omit"):
			w.Errorf("%s.%s: required is %v in the schema, the field has %q", where, name, slices.Contains(required, name), option)
		case p.is["description"] == nil && p.is["$ref"] == nil:
			w.Errorf("%s.%s has no description", where, name)
		}
		w.meets(where+"."+name, p, f.Type)
	}
	for name := range properties {
		if !fields[name] {
			w.Errorf("%s: %s has no field for %s", where, of, name)
		}
	}
}
