// Package testboat reads boats and runs calculations for tests: what fails
// here fails the test. Only tests import it. It stands above the face, so
// tests below the face that use it are external (package calc_test).
package testboat

import (
	"encoding/json"
	"os"
	"path/filepath"
	"runtime"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/rules"
	"example.org/driveline/marinecalc/sample"
)

// Root is the path of a file or folder of the repository, given by its path
// from the root.
func Root(elem ...string) string {
	_, file, _, _ := runtime.Caller(0)
	return filepath.Join(append([]string{filepath.Dir(file), "..", "..", ".."}, elem...)...)
}

// File reads a file of the repository, given by its path from the root.
func File(t testing.TB, elem ...string) []byte {
	t.Helper()
	text, err := os.ReadFile(Root(elem...))
	if err != nil {
		t.Fatal(err)
	}
	return text
}

// Demo reads a demonstration boat: kittiwake or juniper.
func Demo(t testing.TB, name string) *marinecalc.Boat {
	t.Helper()
	return Read(t, string(File(t, "testdata", "boats", name+".json")))
}

// Read reads a boat file.
func Read(t testing.TB, text string) *marinecalc.Boat {
	t.Helper()
	b, err := marinecalc.ReadBoat([]byte(text))
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// Overlay lays one file over the standard rules.
func Overlay(t testing.TB, text string) *rules.Book {
	t.Helper()
	book, err := marinecalc.Overlay([]byte(text))
	if err != nil {
		t.Fatal(err)
	}
	return book
}

// Run runs a calculation on an input in JSON.
func Run(t testing.TB, id, input string, o marinecalc.Options) *marinecalc.Sheet {
	t.Helper()
	s, err := marinecalc.Run(id, []byte(input), o)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// RunOn runs a calculation on a boat file's text; "" is no boat.
func RunOn(t testing.TB, boat, id, input string) *marinecalc.Sheet {
	t.Helper()
	o := marinecalc.Options{}
	if boat != "" {
		o.Boat = Read(t, boat)
	}
	return Run(t, id, input, o)
}

// Check runs everything that the boat file allows.
func Check(t testing.TB, b *marinecalc.Boat, o marinecalc.Options) *marinecalc.Survey {
	t.Helper()
	s, err := marinecalc.Check(b, o)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// CheckOn runs everything that the boat file allowed on a day.
func CheckOn(t testing.TB, b *marinecalc.Boat, day string) *marinecalc.Survey {
	t.Helper()
	return Check(t, b.AsOf(day), marinecalc.Options{})
}

// Page is the sheet of one calculation in a survey.
func Page(t testing.TB, survey *marinecalc.Survey, id string) *marinecalc.Sheet {
	t.Helper()
	for _, s := range survey.Sheets {
		if s.Calculation == id {
			return s
		}
	}
	t.Fatalf("there is no sheet %s; missing %v, faults %v", id, survey.Missing, survey.Faults)
	return nil
}

// Column reads a column of a sheet's list, by the text in the column key.
func Column(t testing.TB, s *marinecalc.Sheet, table, key, name string) map[string]string {
	t.Helper()
	list := s.Table(table)
	if list == nil {
		t.Fatalf("there is no list %s", table)
	}
	out := map[string]string{}
	for _, r := range list.Rows {
		at := list.Reader(r)
		out[at(key)] = at(name)
	}
	return out
}

// Typed is the input of a calculation as a person types it, in JSON: the
// schema's own examples of what stands in the open on the form.
func Typed(t testing.TB, id string) string {
	t.Helper()
	input, err := sample.Typed(id)
	if err != nil {
		t.Fatal(err)
	}
	return Text(t, input)
}

// Text writes an input as JSON.
func Text(t testing.TB, input any) string {
	t.Helper()
	text, err := json.Marshal(input)
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

// Amount reads an expectation: a number in SI, or a quantity of the kind; nil
// is any kind.
func Amount(t testing.TB, v any, kind *quantity.Kind) float64 {
	t.Helper()
	switch v := v.(type) {
	case float64:
		return v
	case string:
		if kind == nil {
			r, _, err := quantity.Infer(v)
			if err != nil {
				t.Fatal(err)
			}
			return r.SI
		}
		r, err := kind.Parse(v)
		if err != nil {
			t.Fatal(err)
		}
		return r.SI
	}
	t.Fatalf("%v is no expectation", v)
	return 0
}

// Limit is the id of the limit of a calculation that holds a result to a most.
func Limit(t testing.TB, calculation, on string, most float64) string {
	t.Helper()
	for _, l := range rules.Standard().Limits(calculation).All() {
		if l.Max.Given() && l.Max.SI == most && l.On == on {
			return l.ID
		}
	}
	t.Fatalf("%s has no limit of %g on %s", calculation, most, on)
	return ""
}
