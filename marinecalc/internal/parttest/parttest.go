// Package parttest is what the tests of the machine parts share: comparison of
// numbers, refusals of bad input, allocations, and what the schemas say
// of the parts.
package parttest

import (
	"encoding/json"
	"math"
	"slices"
	"strings"
	"testing"

	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/schemas"
)

// Near reports a number that is further from what is wanted than the
// tolerance, in its own unit. NaN is near nothing.
func Near[T ~float64](t testing.TB, what string, got T, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(float64(got)-want) <= tolerance) {
		t.Errorf("%s = %.10g, want %.10g ± %g", what, float64(got), want, tolerance)
	}
}

// Within reports a number that is further from what is wanted than the given
// part of that: 0.01 is one per cent. NaN is within nothing.
func Within[T ~float64](t testing.TB, what string, got T, want, part float64) {
	t.Helper()
	if !(math.Abs(float64(got)-want) <= part*math.Abs(want)) {
		t.Errorf("%s = %.10g, want %.10g within %g %%", what, float64(got), want, 100*part)
	}
}

// Must gives what a calculation returns for an input that it has to take.
func Must[In, Out any](t testing.TB, f func(In) (Out, error), in In) Out {
	t.Helper()
	out, err := f(in)
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// RefusedAt asks that an error is a list of problems at exactly these places,
// in this order, each of which says what is wrong and what is allowed.
func RefusedAt(t testing.TB, err error, places ...string) {
	t.Helper()
	list := problem.Of(err)
	got := make([]string, len(list))
	for i, p := range list {
		got[i] = p.Where
		if p.What == "" || p.Allowed == "" {
			t.Errorf("%v does not say what is wrong and what is allowed", p)
		}
	}
	if len(places) == 0 || !slices.Equal(got, places) {
		t.Errorf("got %v, want problems at %q", err, places)
	}
}

// Says asks that an error says each of some words: figures among them, in the
// units that a person reads.
func Says(t testing.TB, err error, words ...string) {
	t.Helper()
	for _, w := range words {
		if err == nil || !strings.Contains(err.Error(), w) {
			t.Errorf("got %v, want it to say %q", err, w)
		}
	}
}

// NoAllocations asks that a function takes no memory of the heap.
func NoAllocations(t testing.TB, f func()) {
	t.Helper()
	if n := testing.AllocsPerRun(100, f); n != 0 {
		t.Errorf("%g allocations", n)
	}
}

// Property is what tests read of an input or result of a schema: its kind of quantity, its
// bounds in SI, its words, and the columns of a list.
type Property struct {
	Quantity           string
	Minimum, Maximum   *float64
	MinItems, MaxItems int
	Enum, EnumTitles   []string
	Items              struct{ Properties map[string]Property }
}

// Input gives the input of the calculation of that id, by name.
func Input(t testing.TB, id string) map[string]Property {
	t.Helper()
	return read(t, id).Input.Properties
}

// SameCodes asks that a result's codes in the schema are these, each with its
// words. A column of a list is named "moves/stop".
func SameCodes(t testing.TB, id, result string, codes ...string) {
	t.Helper()
	list, column, isColumn := strings.Cut(result, "/")
	p := read(t, id).Result.Properties[list]
	if isColumn {
		p = p.Items.Properties[column]
	}
	if !slices.Equal(p.Enum, codes) || len(p.EnumTitles) != len(codes) || slices.Contains(p.EnumTitles, "") {
		t.Errorf("%s/%s: the schema has the codes %q and the words %q, the part the codes %q", id, result, p.Enum, p.EnumTitles, codes)
	}
}

type sides struct {
	Input, Result struct{ Properties map[string]Property }
}

func read(t testing.TB, id string) sides {
	t.Helper()
	text, err := schemas.Read(id)
	if err != nil {
		t.Fatal(err)
	}
	var document struct {
		Defs sides `json:"$defs"`
	}
	if err := json.Unmarshal(text, &document); err != nil {
		t.Fatal(err)
	}
	if len(document.Defs.Input.Properties) == 0 || len(document.Defs.Result.Properties) == 0 {
		t.Fatalf("the schema of %s describes no input or no result", id)
	}
	return document.Defs
}
