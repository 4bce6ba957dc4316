package contract

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"math/rand/v2"
	"net/url"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v5"

	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/schemas"
)

// reference is a validator of the whole standard, which knows our own keyword
// from here.
func reference(t *testing.T, name, fragment string) *jsonschema.Schema {
	t.Helper()
	c := jsonschema.NewCompiler()
	c.Draft = jsonschema.Draft2020
	c.AssertFormat = true
	c.RegisterExtension("quantity", nil, quantityKeyword{})
	c.LoadURL = func(url string) (io.ReadCloser, error) {
		text, err := schemas.Read(strings.TrimSuffix(strings.TrimPrefix(url, schemas.Base), suffix))
		return io.NopCloser(bytes.NewReader(text)), err
	}
	s, err := c.Compile(schemas.Base + name + suffix + fragment)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

type quantityKeyword struct{}

func (quantityKeyword) Compile(_ jsonschema.CompilerContext, m map[string]any) (jsonschema.ExtSchema, error) {
	name, has := m["quantity"].(string)
	if !has {
		return nil, nil
	}
	kind, ok := quantity.Lookup(name)
	if !ok {
		return nil, fmt.Errorf("no kind %q", name)
	}
	number := func(keyword string) *float64 {
		n, has := m[keyword].(json.Number)
		if !has {
			return nil
		}
		f, _ := n.Float64()
		return &f
	}
	return quantityRule{kind, bound(number("minimum"), -1), bound(number("maximum"), 1)}, nil
}

// Validate is quantityRule's for the reference.
func (q quantityRule) Validate(ctx jsonschema.ValidationContext, v any) error {
	if text, is := v.(string); is && !q.allows(text) {
		return ctx.Error("quantity", "not an allowed quantity")
	}
	return nil
}

// leaves lists what the reference finds, as "place keyword".
func leaves(err error) []string {
	if err == nil {
		return nil
	}
	var list []string
	var walk func(e *jsonschema.ValidationError)
	walk = func(e *jsonschema.ValidationError) {
		for _, c := range e.Causes {
			walk(c)
		}
		if len(e.Causes) > 0 {
			return
		}
		keyword := e.KeywordLocation[strings.LastIndexByte(e.KeywordLocation, '/')+1:]
		if strings.Contains(e.KeywordLocation, "/dependentRequired/") {
			keyword = "dependentRequired"
		}
		where, _ := url.PathUnescape(e.InstanceLocation)
		list = append(list, where+" "+keyword)
	}
	walk(err.(*jsonschema.ValidationError))
	slices.Sort(list)
	return slices.Compact(list)
}

// What is found is what a validator of the whole standard finds: by every input
// of every calculation with its examples and values of every odd kind, and by
// boat files and rule files that are spoilt at random.
func TestFindingsAreThoseOfTheStandard(t *testing.T) {
	odd := []any{nil, true, false, "", " ", "x", "yes", "5 kg", "12 mm", "3 o'clock", "1-11/16 in ± 5 %", "-1 mm", "1e300 m", "1e400 m", "nan", "2026-02-30", "2026-02-28", "25:00", strings.Repeat("x", 3000),
		json.Number("0"), json.Number("3"), json.Number("0.03"), json.Number("-2"), json.Number("1e300"), json.Number("2.5"), json.Number("1"),
		[]any{}, []any{nil}, []any{"x"}, []any{"x", "x"}, []any{map[string]any{}}, map[string]any{}, map[string]any{"x": "y"}, map[string]any{"~/ %": "y"}}
	let, refused := 0, 0
	agree := func(name string, s *schema, whole *jsonschema.Schema, value any) {
		t.Helper()
		want := leaves(whole.Validate(value))
		var got []string
		for _, f := range s.faults(value, 1000) {
			got = append(got, Pointer(f.where)+" "+f.keyword)
		}
		slices.Sort(got)
		if got = slices.Compact(got); !slices.Equal(got, want) || s.holds(value) != (len(want) == 0) {
			text, _ := json.Marshal(value)
			t.Errorf("%s: found %q, the standard's validator %q, in %s", name, got, want, Shorten(string(text)))
		}
		if len(want) == 0 {
			let++
		} else {
			refused++
		}
	}
	for _, id := range schemas.Names() {
		c, err := OpenCalculation(id)
		if err != nil {
			continue // a schema of another kind
		}
		whole := reference(t, id, "#/$defs/input")
		for _, v := range odd {
			agree(id, c.check, whole, v)
			agree(id, c.check, whole, map[string]any{"noSuchName": v})
		}
		for _, p := range c.Input.Properties {
			values := append(p.Examples, odd...)
			for _, word := range p.Enum {
				values = append(values, word, word+" ", strings.ToUpper(word))
			}
			for _, v := range values {
				agree(id, c.check, whole, map[string]any{p.Name: v})
			}
			if p.Items == nil {
				continue
			}
			entry := map[string]any{}
			for _, part := range p.Items.Properties {
				if len(part.Examples) > 0 {
					entry[part.Name] = part.Examples[0]
				}
			}
			for _, part := range p.Items.Properties {
				for _, v := range append(part.Examples, odd...) {
					spoilt := map[string]any{}
					for name, good := range entry {
						spoilt[name] = good
					}
					spoilt[part.Name] = v
					agree(id, c.check, whole, map[string]any{p.Name: []any{spoilt}})
					agree(id, c.check, whole, map[string]any{p.Name: []any{entry, entry, entry, entry, spoilt}})
				}
			}
		}
	}
	seeded := rand.New(rand.NewPCG(7, 11))
	for name, folder := range map[string]string{"boat": "../../../testdata/boats/*.json", "rules": "../../rules/data/*.json"} {
		d, err := OpenDocument(name)
		if err != nil {
			t.Fatal(err)
		}
		whole := reference(t, name, "")
		files, _ := filepath.Glob(folder)
		if len(files) == 0 {
			t.Fatal("no files in", folder)
		}
		for _, file := range files {
			text, err := os.ReadFile(file)
			if err != nil {
				t.Fatal(err)
			}
			for range 1 + 400/len(files) {
				value, problems := Decode(text) // anew: spoil changes it
				if len(problems) > 0 {
					t.Fatal(file, problems)
				}
				agree(name, d.check, whole, value)
				for range 1 + seeded.IntN(3) {
					value = spoil(seeded, value, odd)
				}
				agree(name, d.check, whole, value)
			}
		}
	}
	if let < 500 || refused < 500 {
		t.Errorf("%d values were let through and %d refused: too few to tell", let, refused)
	}
}

// spoil puts an odd value into a random place of another.
func spoil(r *rand.Rand, value any, odd []any) any {
	switch v := value.(type) {
	case map[string]any:
		if len(v) > 0 && r.IntN(5) > 0 {
			names := make([]string, 0, len(v))
			for name := range v {
				names = append(names, name)
			}
			slices.Sort(names)
			name := names[r.IntN(len(names))]
			switch r.IntN(12) {
			case 0:
				delete(v, name)
			case 1:
				v[name+strconv.Itoa(r.IntN(3))] = copied(v[name])
			default:
				v[name] = spoil(r, v[name], odd)
			}
			return v
		}
	case []any:
		if len(v) > 0 && r.IntN(5) > 0 {
			at := r.IntN(len(v))
			if r.IntN(6) == 0 {
				return append(v, copied(v[at]))
			}
			v[at] = spoil(r, v[at], odd)
			return v
		}
	}
	return copied(odd[r.IntN(len(odd))])
}

// copied is a value that shares nothing with another, so that none comes to hold
// itself.
func copied(value any) any {
	switch v := value.(type) {
	case map[string]any:
		out := map[string]any{}
		for name, member := range v {
			out[name] = copied(member)
		}
		return out
	case []any:
		out := make([]any, len(v))
		for i := range v {
			out[i] = copied(v[i])
		}
		return out
	}
	return value
}

// A keyword of the standard that is not read does not load: it would let
// through what it should refuse.
func TestKeywordsThatAreNotReadDoNotLoad(t *testing.T) {
	for _, text := range []string{`{"not": {}}`, `{"type": "object", "properties": {"x": {"allOf": []}}}`, `{"items": {"format": "email"}}`, `{"quantity": "lenght"}`, `{"pattern": "("}`} {
		r := &reader{text: json.RawMessage(text), objects: map[string]map[string]json.RawMessage{}}
		if _, err := compile("test", r, ""); err == nil {
			t.Errorf("%s was loaded", text)
		}
	}
}
