package marinecalc_test

import (
	"os"
	"strconv"
	"sync"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/binding"
	"example.org/driveline/marinecalc/internal/catalogue"
	"example.org/driveline/marinecalc/sample"
)

// propertyInputs is how many random inputs of a calculation are tried besides
// the examples.
func propertyInputs() int {
	if n, err := strconv.Atoi(os.Getenv("MARINECALC_INPUTS")); err == nil {
		return n
	}
	return 1
}

// takenInputs are inputs of a calculation that it takes: both examples of its
// schema, some random ones, and what boats give it. They are looked for once for all tests.
func takenInputs(t *testing.T, f *binding.Form) []map[string]any {
	t.Helper()
	if list, have := inputsTaken.Load(f.ID); have {
		return list.([]map[string]any)
	}
	source, err := sample.New(f.ID, 11)
	if err != nil {
		t.Fatal(err)
	}
	var list []map[string]any
	try := func(input map[string]any, err error) {
		if err != nil {
			t.Fatal(err)
		}
		if worked(f, input, marinecalc.Options{NoRanges: true}) != nil {
			list = append(list, input)
		}
	}
	try(sample.Typed(f.ID))
	try(sample.Every(f.ID))
	for n, most := 0, propertyInputs(); n < 20*most && len(list) < 2+most; n++ {
		try(source.Next(), nil)
	}
	list = append(list, boatInputs(t, f)...)
	if len(list) == 0 {
		t.Errorf("%s: no input was taken", f.ID)
	}
	inputsTaken.Store(f.ID, list)
	return list
}

var inputsTaken sync.Map // by calculation

// eachInput calls with inputs that a calculation takes.
func eachInput(t *testing.T, with func(f *binding.Form, input map[string]any)) {
	t.Helper()
	for _, c := range catalogue.Calculations {
		f, err := c.Form()
		if err != nil {
			t.Fatal(err)
		}
		for _, input := range takenInputs(t, f) {
			with(f, input)
		}
	}
}

// eachCalculation does so in tests of their own that run beside each other.
func eachCalculation(t *testing.T, with func(t *testing.T, f *binding.Form, input map[string]any)) {
	t.Helper()
	for _, c := range catalogue.Calculations {
		f, err := c.Form()
		if err != nil {
			t.Fatal(err)
		}
		t.Run(f.ID, func(t *testing.T) {
			t.Parallel()
			for _, input := range takenInputs(t, f) {
				with(t, f, input)
			}
		})
	}
}
