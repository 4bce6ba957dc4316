package rules

import (
	"fmt"
	"reflect"
	"testing"

	"example.org/driveline/marinecalc/quantity"
)

// Whoever edits what a book hands out edits a copy: the book and the sheets of
// others stay as they were.
func TestWhatABookHandsOutIsNotTheBook(t *testing.T) {
	book, err := Standard().Overlay([]byte(`{"title": "Yard", "limits": [{"id": "yard-proof", "calculation": "bolt-preload", "on": "proofUse", "title": "Yard",
		"max": {"of": "yieldUse"}, "how": "-", "why": "-", "source": {"document": "Yard rules"}, "basis": "maker"}]}`))
	if err != nil {
		t.Fatal(err)
	}
	for name, b := range map[string]*Book{"the standard book": Standard(), "a book with an overlay": book} {
		before := written(b)
		v := vandal{seen: map[string]bool{}}
		v.edit(reflect.ValueOf(b))
		for _, kind := range []string{"Limit", "Shared", "Caution", "Advice", "Table", "Row", "Cell", "Bound", "Source",
			"Cause", "Evidence", "VerdictAnswers", "ReadingAnswers", "Sign", "Chain", "Remedy", "Step", "PartNeed", "StepCase", "Part", "OtherThan"} {
			if !v.seen[kind] {
				t.Errorf("the test came by no %s", kind)
			}
		}
		if v.edits < 10000 {
			t.Errorf("only %d edits were tried", v.edits)
		}
		if written(b) != before {
			t.Errorf("%s was changed from outside", name)
		}
	}
}

// written is everything a book holds, as text.
func written(b *Book) string {
	text := fmt.Sprintf("%+v %+v %+v", b.overlays, *b.all(), *b.job())
	for _, name := range b.Tables() {
		text += fmt.Sprintf("%+v", *b.table(name))
	}
	for _, file := range filesIn("data") {
		text += fmt.Sprintf("%+v", *b.of(nameOf(file)))
	}
	return text
}

// vandal calls every method by which rows are had, and sets every field, item
// and map entry that the language lets it set from outside of the package.
type vandal struct {
	seen  map[string]bool
	edits int
}

func (d *vandal) edit(v reflect.Value) {
	if v.Type() == reflect.TypeFor[*quantity.Kind]() {
		return // belongs to package quantity, not to the book
	}
	switch v.Kind() {
	case reflect.Pointer:
		if !v.IsNil() {
			d.edit(v.Elem())
		}
	case reflect.Struct:
		d.seen[v.Type().Name()] = true
		if v.CanAddr() {
			d.call(v.Addr())
		}
		for i := range v.NumField() {
			if v.Field(i).CanSet() {
				d.edit(v.Field(i))
			}
		}
	case reflect.Slice:
		for i := range v.Len() {
			d.edit(v.Index(i))
		}
	case reflect.Map:
		for _, key := range v.MapKeys() {
			d.edits++
			v.SetMapIndex(key, reflect.Value{})
		}
	case reflect.String:
		d.edits++
		v.SetString("edited")
	case reflect.Float64:
		d.edits++
		v.SetFloat(-1)
	case reflect.Int:
		d.edits++
		v.SetInt(-1)
	case reflect.Bool:
		d.edits++
		v.SetBool(!v.Bool())
	case reflect.Func:
	default:
		panic("what to do with a " + v.Type().String())
	}
}

// call edits what the methods of v return that need nothing, a name of the
// book's, or a number of an item.
func (d *vandal) call(v reflect.Value) {
	names := append([]string{"edited"}, Standard().Tables()...)
	for _, file := range filesIn("data") {
		names = append(names, nameOf(file))
	}
	for i := range v.NumMethod() {
		method, name := v.Method(i), v.Type().Method(i).Name
		kind := method.Type()
		switch {
		case name == "String" || name == "Error":
		case kind.NumIn() == 0:
			d.results(method.Call(nil))
		case kind.NumIn() == 1 && kind.In(0).Kind() == reflect.String && v.Type() == reflect.TypeFor[*Book]():
			for _, name := range names {
				d.results(method.Call([]reflect.Value{reflect.ValueOf(name)}))
			}
		case name == "At":
			for i := range v.MethodByName("Len").Call(nil)[0].Int() {
				d.results(method.Call([]reflect.Value{reflect.ValueOf(int(i))}))
			}
		case name == "Find" && kind.NumIn() == 2:
			for _, r := range v.Interface().(*Table).Rows.All() {
				known := Known(func(string) (float64, string, bool) { return 0, "", false })
				d.results(method.Call([]reflect.Value{reflect.ValueOf(r.Pick), reflect.ValueOf(known)}))
			}
		}
	}
}

// results edits what a method returned, in a variable of its own.
func (d *vandal) results(list []reflect.Value) {
	for _, r := range list {
		if r.Kind() == reflect.Interface || r.Kind() == reflect.Func {
			continue
		}
		own := reflect.New(r.Type()).Elem()
		own.Set(r)
		d.edit(own)
	}
}
