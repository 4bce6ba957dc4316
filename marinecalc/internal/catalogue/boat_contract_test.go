package catalogue

import (
	"slices"
	"strings"
	"testing"

	"example.org/driveline/marinecalc/internal/boat"
	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/schemas"
)

// inBoat is the place of the boat's schema that a keyword "boat" means.
func inBoat(file *contract.Document, pointer string) (at *contract.Property, whole bool) {
	return file.Root.At(contract.Tokens(boat.SchemaPointer(pointer)))
}

// meansElse lists the inputs that take a quantity of the boat for something
// that has another name there, and why.
var meansElse = map[string]string{
	"output-flange/earlierWear":          "the same reading, of another day",
	"output-flange/runningTime":          "the hours between two readings",
	"output-flange/hoursToHaulOut":       "a season's hours stand in for those to the next look",
	"flange-run-out/splineTeeth":         "a single key tells nothing of positions",
	"flange-run-out/faceReadDiameter":    "the dial stands near the rim",
	"backlash/earlierAtPropeller":        "the same reading, of another day",
	"backlash/runningTime":               "the hours between two readings",
	"backlash/couplingBore":              "a straight bore is as wide as its shaft",
	"backlash/couplingKeyed":             "one of the two keys of the line that stand here",
	"backlash/propellerKeyed":            "one of the two keys of the line that stand here",
	"alignment-change/gapsBefore":        "the same reading, of another day",
	"alignment-change/dialBefore":        "the same reading, of another day",
	"alignment-change/stepsBefore":       "the same reading, of another day",
	"alignment-change/gapsNow":           "the same reading, of two days apart by its name",
	"alignment-change/dialNow":           "the same reading, of two days apart by its name",
	"alignment-change/stepsNow":          "the same reading, of two days apart by its name",
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
	case !wide.Kind.Is(narrow.Kind) || !slices.Equal(wide.Types, narrow.Types):
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
