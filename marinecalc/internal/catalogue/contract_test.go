package catalogue

import (
	"bytes"
	"encoding/json"
	"io"
	"math"
	"reflect"
	"strings"
	"testing"

	"example.org/driveline/marinecalc/internal/binding"
	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/schemas"
	"github.com/santhosh-tekuri/jsonschema/v5"
)

func openAll(t *testing.T) []*binding.Form {
	t.Helper()
	var all []*binding.Form
	for _, c := range Calculations {
		k, err := c.Form()
		if err != nil {
			t.Fatalf("%s: %v", c.ID, err)
		}
		all = append(all, k)
	}
	return all
}

// Every schema is valid against draft 2020-12 (the compiler checks it), and
// those of calculations and of the boat use only the keywords of
// annotations.schema.json.
func TestSchemasKeepToTheirKeywords(t *testing.T) {
	strict := compileSchema(t, "annotations")
	for _, name := range schemas.Names() {
		compileSchema(t, name)
		if name == "annotations" || name == "rules" {
			continue
		}
		text, err := schemas.Read(name)
		if err != nil {
			t.Fatal(err)
		}
		value, problems := contract.Decode(text)
		if len(problems) > 0 {
			t.Errorf("%s: %v", name, problems)
			continue
		}
		if err := strict.Validate(value); err != nil {
			t.Errorf("%s: %#v", name, err)
		}
	}
}

// What a calculation asks first are at most six of its inputs, and none that
// only handbooks or gauges give.
func TestAskedInputsAreThere(t *testing.T) {
	for _, k := range openAll(t) {
		var schema struct {
			Defs struct {
				Input struct{ Asks []string }
			} `json:"$defs"`
		}
		text, err := schemas.Read(k.ID)
		if err != nil {
			t.Fatal(err)
		}
		if err := json.Unmarshal(text, &schema); err != nil {
			t.Fatal(err)
		}
		asks := schema.Defs.Input.Asks
		if len(asks) == 0 || len(asks) > 6 {
			t.Errorf("%s asks for %d inputs first", k.ID, len(asks))
		}
		for _, name := range asks {
			p := k.Input.Child(name)
			switch {
			case p == nil:
				t.Errorf("%s asks for %s, which is no input", k.ID, name)
			case p.Rows == "gauges" || p.Level == "detail" && k.ID != "fault-finding":
				t.Errorf("%s asks first for %s, which is a detail", k.ID, name)
			}
		}
	}
}

// The root of a calculation's schema is its input, for those who hold theirs
// against the file.
func TestTheRootOfASchemaIsItsInput(t *testing.T) {
	for _, k := range openAll(t) {
		root := compileSchema(t, k.ID)
		for _, wrong := range []any{map[string]any{"bogus": 1}, "text", nil} {
			if root.Validate(wrong) == nil {
				t.Errorf("%s accepts %v", k.ID, wrong)
			}
		}
		for _, p := range k.Input.Properties {
			for _, example := range p.Examples {
				if err := root.Validate(map[string]any{p.Name: example}); err != nil {
					t.Errorf("%s refuses its own example of %s: %v", k.ID, p.Name, err)
				}
			}
		}
	}
}

func TestAMisspelledKeywordIsRefused(t *testing.T) {
	strict := compileSchema(t, "annotations")
	text, err := schemas.Read("bolt-preload")
	if err != nil {
		t.Fatal(err)
	}
	value, problems := contract.Decode(bytes.Replace(text, []byte(`"minimum"`), []byte(`"minimun"`), 1))
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	if strict.Validate(value) == nil {
		t.Error(`"minimun" was let through`)
	}
}

func compileSchema(t *testing.T, name string) *jsonschema.Schema {
	t.Helper()
	c := jsonschema.NewCompiler()
	c.Draft = jsonschema.Draft2020
	c.LoadURL = func(url string) (io.ReadCloser, error) {
		text, err := schemas.Read(strings.TrimSuffix(strings.TrimPrefix(url, schemas.Base), ".schema.json"))
		return io.NopCloser(bytes.NewReader(text)), err
	}
	s, err := c.Compile(schemas.Base + name + ".schema.json")
	if err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	return s
}

// Every input and result of a schema meets the field of its name in the typed
// function, with the unit type of its kind, and every field is in the schema.
func TestSchemasMeetTheirFunctions(t *testing.T) {
	for _, k := range openAll(t) {
		meets(t, k.ID+" input", k.Input, k.Inputs, reflect.New(k.Inputs.Type).Elem(), true)
		meets(t, k.ID+" result", k.Result, k.Results, reflect.New(k.Results.Type).Elem(), false)
	}
}

func meets(t *testing.T, where string, p *contract.Property, s *binding.Shape, structure reflect.Value, picksMayLack bool) {
	t.Helper()
	for _, child := range p.Properties {
		f, ok := s.Field(structure, child)
		if !ok {
			if !picksMayLack || child.Rows == "" && !child.JudgedOnly {
				t.Errorf("%s: %s has no field %s", where, structure.Type(), child.Name)
			}
			continue
		}
		if child.JudgedOnly {
			t.Errorf("%s: %s is only judged by, and %s has a field for it", where, child.Name, structure.Type())
		}
		if child.Kind != nil && binding.JSONName(f.Type().Name()) != camel(child.Kind.Name) {
			t.Errorf("%s: %s is a %s in the schema and a %s in Go", where, child.Name, child.Kind.Name, f.Type())
		}
		if child.Items != nil {
			if want := map[bool]reflect.Kind{true: reflect.Slice, false: reflect.Array}[picksMayLack]; f.Kind() != want {
				t.Errorf("%s: %s is a list in the schema and a %s in Go, not a %s", where, child.Name, f.Type(), want)
				continue
			}
			meets(t, where+"/"+child.Name, child.Items, s.Places[child.Index].Entry, reflect.New(f.Type().Elem()).Elem(), picksMayLack)
		}
	}
	for i := range structure.NumField() {
		if tag := structure.Type().Field(i).Tag; tag.Get("spreadOf")+tag.Get("sidesOf")+tag.Get("readOf") != "" {
			of := tag.Get("spreadOf") + tag.Get("sidesOf") + tag.Get("readOf")
			if p.Child(of) == nil {
				t.Errorf("%s: %s has the spread, sides or reading of %s, which is not there", where, structure.Type(), of)
			}
			continue
		}
		if f := structure.Type().Field(i); !f.IsExported() {
			continue // no result of the sheet
		}
		if name := binding.JSONName(structure.Type().Field(i).Name); p.Child(name) == nil {
			t.Errorf("%s: the schema lacks %s.%s", where, structure.Type(), name)
		}
	}
}

func camel(kebab string) string {
	parts := strings.Split(kebab, "-")
	for i, p := range parts[1:] {
		parts[i+1] = strings.ToUpper(p[:1]) + p[1:]
	}
	return strings.Join(parts, "")
}

// A result that was not asked for is NaN in Go, which JSON cannot write: the
// results of every part write null for it.
func TestResultsOfPartsAreJSON(t *testing.T) {
	for _, k := range openAll(t) {
		output := reflect.New(k.Results.Type).Elem()
		fillNaN(output)
		if !strings.HasPrefix(output.Type().PkgPath(), "example.org/driveline/marinecalc/") || strings.Contains(output.Type().PkgPath(), "/internal/") {
			continue // of no part
		}
		if _, err := json.Marshal(output.Interface()); err != nil {
			t.Errorf("%s: %v", k.ID, err)
		}
	}
}

func fillNaN(v reflect.Value) {
	switch v.Kind() {
	case reflect.Float64:
		v.SetFloat(math.NaN())
	case reflect.Struct:
		for i := range v.NumField() {
			if v.Field(i).CanSet() {
				fillNaN(v.Field(i))
			}
		}
	case reflect.Array:
		for i := range v.Len() {
			fillNaN(v.Index(i))
		}
	}
}
