package survey_test

import (
	"os"
	"slices"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/calc"
	"example.org/driveline/marinecalc/internal/catalogue"
	"example.org/driveline/marinecalc/internal/survey"
	"example.org/driveline/marinecalc/internal/testboat"
)

// thinEnds has so little of either end of its shaft that the survey asks for most of it.
const thinEnds = `{"name": "Test", "engine": {"power": "30 kW", "speed": "2600 rpm"}, "gearbox": {"ratioAhead": "2.3"}, "shaft": {"diameter": "30 mm", "alloy": "s31600-annealed", "key": {"fitted": "yes"}},
	"coupling": {"kind": "rigid", "diameter": "110 mm", "bolts": {"thread": "M10x1.5", "grade": "iso-8.8", "nut": "plain-nut"}, "bore": {"holdMethod": "clamp", "hubDiameter": "62 mm", "hubMetal": "mild-steel", "engagedLength": "60 mm", "surfaces": "steel-dry", "clampKind": "split-one-side", "pinchBolts": 2, "pinchThread": "M8x1.25", "pinchTorque": "20 N·m"}},
	"propeller": {"taperRatio": 0.1, "hubDiameter": "60 mm", "hubMetal": "manganese-bronze", "contactShare": "80 %", "nutThread": "M20x1.5", "nutTorque": "90 N·m"},
	"outputFlange": {"thread": "M24x2", "seatDiameter": "32 mm"}}`

// What a survey asks an owner to measure can be kept in the boat file; what follows
// from other sheets is read where those ask for it.
func TestWhatTheSurveyAsksForCanBeKept(t *testing.T) {
	boats := map[string]*marinecalc.Boat{"kittiwake": testboat.Demo(t, "kittiwake"), "juniper": testboat.Demo(t, "juniper"), "thin": testboat.Read(t, thinEnds)}
	for _, name := range []string{"weak-split-clamp", "worn-flange-face", "short-thread", "short-key", "hardly-measured", "loose-bolts"} {
		text, err := os.ReadFile(testboat.Root("testdata", "cases", name+".json"))
		if err != nil {
			t.Fatal(err)
		}
		boats[name] = testboat.Read(t, string(text))
	}
	asked := map[string]bool{}
	for name, b := range boats {
		for _, m := range testboat.Check(t, b, marinecalc.Options{NoRanges: true}).Measure {
			calculation, input, _ := strings.Cut(m.Input, "/")
			asked[input] = true
			at := slices.IndexFunc(catalogue.Calculations, func(c calc.Calculation) bool { return c.ID == calculation })
			form, err := catalogue.Calculations[at].Form()
			if err != nil {
				t.Fatal(err)
			}
			p := form.Input.Child(input)
			if m.Do == survey.DoMeasure && p.Boat == "" && p.After == "" {
				t.Errorf("%s: %q (%s) has no place in the boat file", name, m.Title, m.Input)
			}
		}
	}
	for _, input := range []string{"splitGap", "markWithKey", "markWithoutKey"} {
		if !asked[input] {
			t.Errorf("no survey asks for %s", input)
		}
	}
}
