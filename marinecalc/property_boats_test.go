package marinecalc_test

import (
	"encoding/json"
	"fmt"
	"hash/fnv"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/binding"
	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/sheet"
)

// A testBoat is one of the demonstration boats or of the invented ones.
type testBoat struct {
	name string
	boat *marinecalc.Boat
	doc  map[string]any
}

// testBoats are both demonstration boats and every case, in the order of their names.
var testBoats = sync.OnceValues(func() (list []testBoat, err error) {
	files, err := filepath.Glob(testboat.Root("testdata", "boats", "*.json"))
	if err != nil {
		return nil, err
	}
	cases, err := filepath.Glob(testboat.Root("testdata", "cases", "*.json"))
	if err != nil {
		return nil, err
	}
	if len(files) == 0 || len(cases) == 0 {
		return nil, fmt.Errorf("%d demonstration boats, %d cases", len(files), len(cases))
	}
	for _, file := range append(files, cases...) {
		text, err := os.ReadFile(file)
		if err != nil {
			return nil, err
		}
		one := testBoat{name: strings.TrimSuffix(filepath.Base(file), ".json")}
		if one.boat, err = marinecalc.ReadBoat(text); err != nil {
			return nil, err
		}
		if err := json.Unmarshal(text, &one.doc); err != nil {
			return nil, err
		}
		list = append(list, one)
	}
	return list, nil
})

// typedOf is what a boat gives a calculation, its earlier results among it,
// written as somebody would type it: the properties are then tried on one input
// at a time. It is nil where the calculation cannot do without the boat.
func (b *testBoat) typedOf(f *binding.Form) map[string]any {
	s, err := marinecalc.Run(f.ID, []byte("{}"), marinecalc.Options{Boat: b.boat, NoRanges: true, Brief: true})
	if err != nil {
		return nil
	}
	input := map[string]any{}
	for _, p := range f.Input.Properties {
		in := s.Input(p.Name)
		if in == nil || !slices.Contains([]sheet.Origin{sheet.FromBoat, sheet.Earlier, sheet.MakersFigure}, in.Origin) {
			continue
		}
		switch {
		case p.Items != nil:
			if list, ok := at(b.doc, p.Boat).([]any); ok {
				input[p.Name] = known(list, p.Items)
			}
		case in.SI != nil && p.Kind != nil:
			input[p.Name] = number(*in.SI) + " " + p.Kind.SIUnit()
		case in.SI != nil:
			input[p.Name] = *in.SI
		case slices.Contains(p.Types, "boolean"):
			input[p.Name] = in.Word == "yes"
		case in.Word != "":
			input[p.Name] = in.Word
		}
	}
	if worked(f, input, marinecalc.Options{NoRanges: true}) == nil {
		return nil
	}
	return input
}

// known is a list with the columns that the calculation takes.
func known(list []any, item *contract.Property) []any {
	out := make([]any, 0, len(list))
	for _, one := range list {
		entry, is := one.(map[string]any)
		if !is {
			return list
		}
		kept := map[string]any{}
		for _, part := range item.Properties {
			if v, has := entry[part.Name]; has {
				kept[part.Name] = v
			}
		}
		out = append(out, kept)
	}
	return out
}

// at is what stands in a boat file, of readings the newest that has it.
func at(doc map[string]any, pointer string) any {
	var here any = doc
	steps := strings.Split(strings.TrimPrefix(pointer, "/"), "/")
	if len(steps) == 3 && steps[0] == "readings" {
		list, _ := doc["readings"].([]any)
		for _, one := range slices.Backward(list) {
			if entry, _ := one.(map[string]any); entry[steps[2]] != nil {
				return entry[steps[2]]
			}
		}
		return nil
	}
	for _, step := range steps {
		member, _ := here.(map[string]any)
		here = member[step]
	}
	return here
}

// boatInputs are the inputs that boats give a calculation: of all of them where
// MARINECALC_INPUTS asks for the long run, otherwise of one, another one for
// each calculation and always the same.
func boatInputs(t *testing.T, f *binding.Form) (list []map[string]any) {
	t.Helper()
	boats, err := testBoats()
	if err != nil {
		t.Fatal(err)
	}
	whole := os.Getenv("MARINECALC_INPUTS") != ""
	draw := fnv.New32a()
	draw.Write([]byte(f.ID))
	from := int(draw.Sum32()) % len(boats)
	for i := range boats {
		b := &boats[(from+i)%len(boats)]
		input := b.typedOf(f)
		if input == nil || slices.ContainsFunc(list, func(other map[string]any) bool { return alikeInput(other, input) }) {
			continue
		}
		if list = append(list, input); !whole {
			return list
		}
	}
	return list
}

func alikeInput(a, b map[string]any) bool {
	x, errX := json.Marshal(a)
	y, errY := json.Marshal(b)
	return errX == nil && errY == nil && string(x) == string(y)
}
