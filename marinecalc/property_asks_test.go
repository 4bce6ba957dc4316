package marinecalc_test

import (
	"maps"
	"slices"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/catalogue"
	"example.org/driveline/marinecalc/sample"
	"example.org/driveline/marinecalc/sheet"
)

// saidOtherwise are inputs for which a verdict asks in words that are not those of
// their title.
var saidOtherwise = map[string]string{
	"bolt-fit/reuseRule":             "whose limit goes for used nuts",
	"coupling-alignment/rimReadings": "a straight edge across both rims",
	"gland-drip/switchVolume":        "up to where the pump starts",
	"gland-drip/pumpPower":           "its amperes off the plate",
	"bearing-clearance/liftTravel":   "lift again",
	"bearing-clearance/newClearance": "measure shaft and bore before the bearing goes in",
	"bearing-clearance/secondTravel": "by two pulls",
	"bearing-life/bearing":           "the static rating from the maker's page",
	"shaft-strength/shaftAlloy":      "the metal",
	"backlash/atPropeller":           "one reading at each place",
	"backlash/atFlange":              "one reading at each place",
	"mount-moves/offsetVertical":     "rim offset",
	"mount-moves/offsetHorizontal":   "rim offset",
	"output-flange/hubDiameter":      "hub",
	"output-flange/standOff":         "how far the bar stands off",
}

// A verdict that one input takes away asks for that input, and not for others that
// were given.
func TestAVerdictAsksForWhatItLacks(t *testing.T) {
	alone(t)
	asked := 0
	for _, c := range catalogue.Calculations {
		f, err := c.Form()
		if err != nil {
			t.Fatal(err)
		}
		for _, of := range []func(string) (map[string]any, error){sample.Every, sample.Typed} {
			input, err := of(f.ID)
			if err != nil {
				t.Fatal(err)
			}
			o := marinecalc.Options{NoRanges: true}
			whole := worked(f, input, o)
			if whole == nil || len(whole.Conflicts) > 0 {
				continue // with one of two that disagree left out nothing disagrees
			}
			for _, name := range slices.Sorted(maps.Keys(input)) {
				less := maps.Clone(input)
				delete(less, name)
				s := worked(f, less, o)
				if s == nil {
					continue
				}
				for _, v := range s.Verdicts {
					if was := whole.Verdict(v.Limit); was == nil || was.Word == sheet.NotMeasured || v.Word != sheet.NotMeasured {
						continue
					}
					asked++
					other, says := saidOtherwise[f.ID+"/"+name], strings.ToLower(v.Sentence[len(v.Title):])
					if !names(says, f.Input.Child(name).Title) && (other == "" || !strings.Contains(says, other)) {
						t.Errorf("%s without %s: %s", f.ID, name, v.Sentence)
					}
				}
			}
		}
	}
	if asked < 50 {
		t.Errorf("only %d verdicts went", asked)
	}
}

// names tells whether a sentence has a word of a title.
func names(sentence, title string) bool {
	return slices.ContainsFunc(strings.Fields(strings.ToLower(title)), func(word string) bool {
		return len(word) > 3 && strings.Contains(sentence, strings.TrimRight(word, "s,."))
	})
}
