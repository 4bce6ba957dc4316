package catalogue

import (
	"bytes"
	"encoding/json"
	"io"
	"math"
	"reflect"
	"slices"
	"strings"
	"testing"

	"example.org/driveline/marinecalc/internal/binding"
	"example.org/driveline/marinecalc/internal/boat"
	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/rules"
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
		if of := structure.Type().Field(i).Tag.Get("spreadOf"); of != "" {
			if p.Child(of) == nil {
				t.Errorf("%s: %s has the spread of %s, which is not there", where, structure.Type(), of)
			}
			continue
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

// What an annotation points to is there: tables, usual values, places in the
// boat file, earlier results, gauges, needs.
func TestAnnotationsPointSomewhere(t *testing.T) {
	file, err := boat.Contract()
	if err != nil {
		t.Fatal(err)
	}
	book := rules.Standard()
	all := openAll(t)
	for _, k := range all {
		for _, name := range k.Input.Needs {
			if k.Input.Child(name) == nil {
				t.Errorf("%s needs %s, which is no input", k.ID, name)
			}
		}
		for _, p := range k.Input.Properties {
			pointsSomewhere(t, k, p, all, file, book)
		}
		for _, p := range k.Result.Properties {
			for _, name := range p.DependsOn {
				if k.Input.Child(name) == nil && k.Result.Child(name) == nil {
					t.Errorf("%s: %s rests on %s, which is not there", k.ID, p.Name, name)
				}
			}
		}
	}
}

func pointsSomewhere(t *testing.T, k *binding.Form, p *contract.Property, all []*binding.Form, file *contract.Document, book *rules.Book) {
	t.Helper()
	where := k.ID + "/" + p.Name
	if p.Rows != "" && book.Table(p.Rows) == nil {
		t.Errorf("%s: there is no table %s", where, p.Rows)
	}
	if word, ok := p.Default.(string); ok && p.Rows != "" {
		if picks, _ := book.Table(p.Rows).Picks(); !slices.Contains(picks, word) {
			t.Errorf("%s: its default %q is not in table %s", where, word, p.Rows)
		}
	}
	if p.Default != nil && p == k.Input.Child(p.Name) {
		// What stands in for an input that nobody gave is not checked in a run.
		if faults := k.CheckInput(map[string]any{p.Name: p.Default}); len(faults) > 0 {
			t.Errorf("%s: its default is refused: %v", where, faults)
		}
	}
	if p.Typical != "" {
		found := false
		for _, r := range book.Usual(k.ID).Rows.All() {
			_, has := r.Values.Find(p.Name)
			found = found || r.Pick == p.Typical && has
		}
		if !found {
			t.Errorf("%s: the usual value %s is not there or does not fill it", where, p.Typical)
		}
	}
	if p.ReadBy != "" {
		if g := k.Input.Child(p.ReadBy); g == nil || g.Rows != "gauges" {
			t.Errorf("%s: its gauge %s is not an input picked from the gauges", where, p.ReadBy)
		}
	}
	if p.Boat != "" {
		at, whole := file.Root.At(contract.Tokens(boat.SchemaPointer(p.Boat)))
		switch {
		case !whole:
			t.Errorf("%s: the boat file has no %s", where, p.Boat)
		case at.Kind != p.Kind || at.Rows != p.Rows || !slices.Equal(at.Enum, p.Enum):
			t.Errorf("%s: the boat's %s is of another kind, table or choice", where, p.Boat)
		}
	}
	if p.After != "" {
		id, result, _ := strings.Cut(p.After, "/")
		i := slices.IndexFunc(all, func(c *binding.Form) bool { return c.ID == id })
		if i < 0 || all[i].Result.Child(result) == nil || all[i].Result.Child(result).Kind != p.Kind {
			t.Errorf("%s: the earlier result %s is not there or of another kind", where, p.After)
		}
	}
	if p.Items != nil {
		for _, part := range p.Items.Properties {
			pointsSomewhere(t, k, part, all, file, book)
		}
	}
}

// inBoat is the place of the boat's schema that a keyword "boat" means.
func inBoat(file *contract.Document, pointer string) (at *contract.Property, whole bool) {
	return file.Root.At(contract.Tokens(boat.SchemaPointer(pointer)))
}

// meansElse lists the inputs that take a quantity of the boat for something
// that has another name there, and why.
var meansElse = map[string]string{
	"bearing-clearance/hoursToHaulOut":   "a season's hours stand in for those to the next haul-out",
	"bearing-clearance/earlierClearance": "the same reading, of another day",
	"bearing-clearance/runningTime":      "the hours between two readings",
	"vibration-source/vibrationBaseline": "the first reading since the last repair",
	"service-schedule/today":             "the day of the newest reading stands in for today",
	"work-plan/today":                    "the day of the newest reading stands in for the day of the plan",
}

// What a sheet accepts, the boat accepts, under the same name: else what is
// kept with the boat would make its file one that is refused.
func TestTheBoatTakesWhatASheetTakes(t *testing.T) {
	file, err := boat.Contract()
	if err != nil {
		t.Fatal(err)
	}
	held := 0
	for _, k := range openAll(t) {
		for _, p := range k.Input.Properties {
			if p.Boat == "" {
				continue
			}
			at, _ := inBoat(file, p.Boat)
			where := k.ID + "/" + p.Name
			if _, apart := meansElse[where]; !apart && p.Title != at.Title {
				t.Errorf("%s is called %q, and %q in the boat file", where, p.Title, at.Title)
			}
			if !strings.HasPrefix(p.Boat, "/readings/hours-of-run/") { // which is calculated, not kept
				takes(t, where, at, p)
			}
			held++
		}
	}
	if held < 200 {
		t.Errorf("only %d inputs point into the boat file", held)
	}
}

// takes tells where a wide place refuses what a narrow one accepts.
func takes(t *testing.T, where string, wide, narrow *contract.Property) {
	t.Helper()
	below := func(x, y *float64) bool { return x != nil && (y == nil || *y < *x) }
	above := func(x, y *float64) bool { return x != nil && (y == nil || *y > *x) }
	switch {
	case wide.Kind != narrow.Kind || !slices.Equal(wide.Types, narrow.Types):
		t.Errorf("%s is of another kind or type in the boat file", where)
	case below(wide.Minimum, narrow.Minimum) || above(wide.Maximum, narrow.Maximum):
		t.Errorf("%s has narrower bounds in the boat file", where)
	case wide.MinItems > narrow.MinItems || wide.MaxItems > 0 && (narrow.MaxItems == 0 || narrow.MaxItems > wide.MaxItems):
		t.Errorf("%s may have fewer entries in the boat file", where)
	case wide.MaxLength > 0 && (narrow.MaxLength == 0 || narrow.MaxLength > wide.MaxLength) || wide.MinLength > narrow.MinLength:
		t.Errorf("%s may be shorter in the boat file", where)
	case len(wide.Enum) > 0 && (len(narrow.Enum) == 0 || slices.ContainsFunc(narrow.Enum, func(w string) bool { return !slices.Contains(wide.Enum, w) })):
		t.Errorf("%s has fewer words in the boat file", where)
	case wide.Rows != narrow.Rows:
		t.Errorf("%s is picked from another table in the boat file", where)
	}
	for _, name := range wide.Required {
		if !slices.Contains(narrow.Required, name) {
			t.Errorf("%s/%s is required in the boat file", where, name)
		}
	}
	for _, part := range narrow.Properties {
		if child := wide.Child(part.Name); child == nil {
			t.Errorf("%s/%s is not in the boat file", where, part.Name)
		} else {
			takes(t, where+"/"+part.Name, child, part)
		}
	}
	if narrow.Items != nil {
		takes(t, where, wide.Items, narrow.Items)
	}
}

// Every input, and every place of the boat file, has a title and a help;
// entries of a list are told by the list.
func TestPlacesAreDescribed(t *testing.T) {
	file, err := boat.Contract()
	if err != nil {
		t.Fatal(err)
	}
	describedBelow(t, "boat", file.Root)
	for _, k := range openAll(t) {
		describedBelow(t, k.ID, k.Input)
	}
}

func describedBelow(t *testing.T, where string, p *contract.Property) {
	t.Helper()
	for _, child := range p.Properties {
		if child.Title == "" || child.Description == "" {
			t.Errorf("%s/%s lacks a title or a help", where, child.Name)
		}
		describedBelow(t, where+"/"+child.Name, child)
	}
	if p.Items != nil {
		describedBelow(t, where, p.Items)
	}
}

// Bounds beside a reference repeat the quantity, since a text is held against
// the bounds that stand with it.
func TestBoundsBesideAReferenceBindTexts(t *testing.T) {
	for _, name := range schemas.Names() {
		text, err := schemas.Read(name)
		if err != nil {
			t.Fatal(err)
		}
		value, problems := contract.Decode(text)
		if len(problems) > 0 {
			t.Fatal(problems)
		}
		if name != "annotations" && name != "rules" {
			besideReferences(t, name, value)
		}
	}
}

func besideReferences(t *testing.T, where string, value any) {
	t.Helper()
	switch v := value.(type) {
	case []any:
		for _, child := range v {
			besideReferences(t, where, child)
		}
	case map[string]any:
		if _, is := v["$ref"].(string); is {
			for _, keyword := range []string{"minimum", "maximum"} {
				if v[keyword] != nil && v["quantity"] == nil {
					t.Errorf("%s: %s stands beside %v without the quantity", where, keyword, v["$ref"])
				}
			}
		}
		for name, child := range v {
			besideReferences(t, where+"/"+name, child)
		}
	}
}

// Rule data speaks of calculations, inputs and results that are there.
func TestRuleDataPointsSomewhere(t *testing.T) {
	all := map[string]*binding.Form{}
	kinds := map[string]string{}
	for _, k := range openAll(t) {
		all[k.ID] = k
		for _, side := range []*contract.Property{k.Input, k.Result} {
			for _, p := range side.Properties {
				if p.Kind == nil {
					continue
				}
				if old, has := kinds[p.Name]; has && old != p.Kind.Name {
					t.Errorf("%s is a %s here and a %s elsewhere", p.Name, p.Kind.Name, old)
				}
				kinds[p.Name] = p.Kind.Name
			}
		}
	}
	there := func(where, id string, names ...string) {
		k := all[id]
		if k == nil {
			t.Errorf("%s: there is no calculation %s", where, id)
			return
		}
		for _, n := range names {
			if k.Input.Child(n) == nil && k.Result.Child(n) == nil {
				t.Errorf("%s: %s has neither input nor result %s", where, id, n)
			}
		}
	}
	book := rules.Standard()
	limits := map[string]bool{}
	for _, l := range book.AllLimits().All() {
		limits[l.ID] = true
		names := []string{l.On}
		for _, b := range []rules.Bound{l.Max, l.Min, l.Scale} {
			if b.Of != "" {
				names = append(names, b.Of)
			}
		}
		for name := range l.Valid.Names() {
			names = append(names, name)
		}
		there("limit "+l.ID, l.Calculation, names...)
	}
	for _, s := range book.AllShared().All() {
		for of, on := range s.On() {
			there("shared limits of "+s.LimitsOf, s.LimitsOf, of)
			there("shared limits of "+s.LimitsOf, s.Calculation, on)
		}
		for _, l := range book.Limits(s.Calculation).All() {
			for name := range l.Valid.Names() {
				there("shared limit "+l.ID, s.Calculation, name)
			}
		}
	}
	for _, c := range book.AllCautions().All() {
		for _, id := range c.Calculations.All() {
			there("caution "+c.ID, id)
		}
	}
	for _, a := range book.AllAdvice().All() {
		there("advice "+a.ID, a.Calculation)
		for name := range a.Valid.Names() {
			there("advice "+a.ID, a.Calculation, name)
		}
		for limit := range a.OtherVerdicts.Limits() {
			if !limits[limit] {
				t.Errorf("advice %s: there is no limit %s", a.ID, limit)
			}
		}
		if a.Limit != "" && !limits[a.Limit] {
			t.Errorf("advice %s: there is no limit %s", a.ID, a.Limit)
		}
	}
	for _, name := range book.Tables() {
		for _, r := range book.Table(name).Rows.All() {
			for _, v := range r.Values.All() {
				column := v.Column
				is, _ := book.Table(name).Kind(column)
				if kind, has := kinds[column]; has && kind != is {
					t.Errorf("table %s: column %s is a %s, the input a %s", name, column, is, kind)
				}
			}
		}
	}
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
