package catalogue_test

import (
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
)

// A value inside the range that a guide itself has is about it, as how hot a casting may
// be made, and engagement beside its rule of thumb.
func TestAValueWithinAGuidesOwnRangeIsAboutIt(t *testing.T) {
	const hot = `{"holdMethod": "interference", "shaftTorque": "100 N·m", "shaftDiameter": "40 mm", "engagedLength": "65 mm", "hubDiameter": "62 mm", "interference": "%", "surfaces": "steel-dry", "keyed": "no", "hubMetal": "aluminium-cast", "shaftAlloy": "s31600-annealed"}`
	for fit, word := range map[string]string{"5 µm ± 1 µm": "inside the guide", "18 µm ± 1 µm": "about the guide", "140 µm ± 1 µm": "outside the guide"} {
		s := testboat.Run(t, "coupling-bore", strings.Replace(hot, "%", fit, 1), marinecalc.Options{})
		if v := s.Verdict("bore-heat"); v == nil || string(v.Word) != word {
			t.Errorf("%s: %+v", fit, v)
		}
	}
}

// A nut that hardly draws a coupling onto its cone leaves every turn to the key, and the
// sheet says so as that of the propeller does.
func TestNutOfACouplingsTaperDrawnTooLittle(t *testing.T) {
	const taper = `{"holdMethod": "taper", "shaftTorque": "140 N·m", "shaftDiameter": "35 mm", "engagedLength": "60 mm", "taperRatio": 0.1, "hubDiameter": "65 mm", "hubMetal": "mild-steel", "surfaces": "steel-oily", "pinchThread": "M20x1.5", "pinchTorque": "%", "nutFactor": 0.18, "shaftAlloy": "s31600-annealed"}`
	for torque, word := range map[string]string{"15 N·m": "outside the guide", "150 N·m": "inside the guide"} {
		s := testboat.Run(t, "coupling-bore", strings.Replace(taper, "%", torque, 1), marinecalc.Options{})
		v, advice := s.Verdict("bore-cone-carries"), ""
		for _, n := range s.Next {
			advice += n.Text
		}
		if v == nil || string(v.Word) != word || strings.Contains(advice, "drawn home at all") != (word == "outside the guide") {
			t.Errorf("%s: %+v", torque, v)
		}
	}
}

// What is not known of a joint astern is the pull, where ahead all of it is known.
func TestLineSaysWhatIsNotKnownOfTheTaper(t *testing.T) {
	const known = `{"shaftTorque": "100 N·m", "asternTorque": "90 N·m", "facesAhead": "600 N·m", "facesAstern": "500 N·m", "boreAhead": "400 N·m", "boreAstern": "300 N·m", "hubFriction": "200 N·m"%}`
	for taper, says := range map[string]string{`, "taperAhead": "300 N·m"`: "What the pull astern leaves of the propeller on its taper is not known", ``: "The propeller's taper is not known"} {
		v := testboat.Run(t, "line-joints", strings.Replace(known, "%", taper, 1), marinecalc.Options{}).Verdict("line-astern")
		if v == nil || !strings.Contains(v.Sentence, says) || strings.Count(v.Sentence, "taper") != 1 {
			t.Errorf("%s: %+v", taper, v)
		}
	}
}
