package catalogue_test

import (
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/sheet"
)

const (
	boreLoads  = `"shaftDiameter": "40 mm", "engagedLength": "60 mm", "hubDiameter": "80 mm", "hubMetal": "mild-steel", "shaftAlloy": "s31600-annealed", "shaftTorque": "300 N·m", "asternTorque": "200 N·m", "peakTorque": "450 N·m", "keyed": "no"`
	coneOfBore = `{"holdMethod": "taper", "taperRatio": 0.1, "pinchTorque": "200 N·m", "boreFriction": 0.1, "nutFactor": 0.2, ` + boreLoads
)

// What is said of a taper is of its nut and cone: the nut holds going astern, with
// the nut lost the cone is alone, and set screws are not spoken of. The nut's
// thread of which nothing is known is asked for.
func TestTaperOfACouplingHoldsByItsNut(t *testing.T) {
	const key = `"keyed": "yes", "keyWidth": "12 mm", "keyHeight": "8 mm", "keyLength": "55 mm", "keyYieldStrength": "400 MPa"`
	s := runInput(t, "coupling-bore", strings.Replace(coneOfBore, `"keyed": "no"`, key, 1)+`, "pinchThread": "M24x2", "thrustAstern": "24 kN"}`, "metric")
	if got := wordOf(s, "bore-pull-astern"); got != "within" {
		t.Errorf("nut in place: %s", got)
	}
	without := runInput(t, "coupling-bore", coneOfBore+`, "pinchThread": "M24x2", "thrustAstern": "24 kN"}`, "metric")
	if got := wordOf(without, "bore-pull-astern"); got == "within" { // with no key it turns under the nut
		t.Errorf("nut in place, no key: %s", got)
	}
	if got := wordOf(s, "bore-taper-bare"); got == "within" {
		t.Errorf("nut lost: %s", got)
	}
	s = runInput(t, "coupling-bore", strings.Replace(coneOfBore, `"pinchTorque": "200 N·m"`, `"pinchClamp": "40 kN"`, 1)+`, "thrustAstern": "24 kN"}`, "metric")
	if v := s.Verdict("bore-pull-astern"); v.Word != sheet.CannotTell || !strings.Contains(v.Sentence, "Choose its thread") {
		t.Errorf("thread not known: %s", v.Sentence)
	}
	for _, n := range s.Next {
		if strings.Contains(n.Text, "set screw") {
			t.Errorf("of a taper: %s", n.Text)
		}
	}
}

// A clearance is no interference fit; a boss that yields holds less than Lamé's
// equations say, and no margin on it is OK.
func TestFitThatIsNoneOrYields(t *testing.T) {
	fit := func(interference string) *sheet.Sheet {
		return runInput(t, "coupling-bore", `{"holdMethod": "interference", "surfaces": "steel-dry", "thrustAstern": "4 kN", "interference": "`+interference+`", `+boreLoads+`}`, "metric")
	}
	loose := fit("-10 µm")
	if wordOf(loose, "bore-torque-ahead") != "beyond" || wordOf(loose, "bore-pull-astern") != "beyond" || !advised(loose, "no thicker than its bore") {
		t.Errorf("a clearance: %s, %s", wordOf(loose, "bore-torque-ahead"), wordOf(loose, "bore-pull-astern"))
	}
	sound := fit("40 µm")
	if wordOf(sound, "bore-boss-yields") != "within" || wordOf(sound, "bore-pull-astern") != "within" || advised(sound, "no thicker than its bore") {
		t.Errorf("40 µm: boss %s, pull %s", wordOf(sound, "bore-boss-yields"), wordOf(sound, "bore-pull-astern"))
	}
	split := fit("300 µm")
	for _, limit := range []string{"bore-torque-ahead", "bore-torque-astern", "bore-torque-peak", "bore-pull-astern"} {
		if got := wordOf(split, limit); got != "cannot tell" {
			t.Errorf("a boss past its yield, %s: %s", limit, got)
		}
	}
}

// A propeller whose hub sits on its key is not on its cone, and nothing that rests
// on the cone is OK; its nut holds going astern as far as the thread bears.
func TestPropellerOnItsKey(t *testing.T) {
	const on = `{"shaftDiameter": "30 mm", "taperRatio": 0.1, "taperLength": "75 mm", "hubDiameter": "62 mm", "hubMetal": "manganese-bronze", "shaftAlloy": "s31600-annealed", "boreFriction": 0.15, "contactShare": 0.8, "nutTorque": "100 N·m", "nutThread": "M20x2", "nutFactor": 0.2, "shaftTorque": "170 N·m", "asternTorque": "100 N·m", "peakTorque": "300 N·m", "keyed": "yes", "keyTorque": "600 N·m", "thrustAstern": "1.5 kN", "markWithoutKey": "10 mm", "markWithKey": "`
	for mark, sits := range map[string]bool{"10.02 mm": false, "11 mm": true} {
		s := runInput(t, "propeller-taper", on+mark+`"}`, "metric")
		for _, limit := range []string{"taper-torque-ahead", "taper-torque-astern", "taper-torque-peak"} {
			if got := wordOf(s, limit); (got == "cannot tell") != sits {
				t.Errorf("key holds off %v, %s: %s", sits, limit, got)
			}
		}
		if got := wordOf(s, "taper-nut-holds"); got != "within" {
			t.Errorf("M20 against 1.5 kN: %s", got)
		}
	}
	s := runInput(t, "propeller-taper", strings.Replace(on, `"1.5 kN"`, `"90 kN"`, 1)+`10 mm"}`, "metric")
	if got := wordOf(s, "taper-nut-holds"); got != "beyond" {
		t.Errorf("M20 of 316 against 90 kN: %s", got)
	}
}

// What is advised where a flange does not hold names what it has: pinch bolts of a
// clamp, the nut of a taper, the fit of an interference, the key where there is one.
func TestAdviceNamesWhatTheJointHas(t *testing.T) {
	const common = `"shaftDiameter": "30 mm", "engagedLength": "60 mm", "hubDiameter": "60 mm", "hubMetal": "mild-steel", "surfaces": "steel-oily", "shaftAlloy": "s31600-annealed", "shaftTorque": "TORQUE", "peakTorque": "9000 N·m", "asternTorque": "10 N·m", "thrustAstern": "100 N", "keyed": "no"`
	for _, torque := range []string{"9000 N·m", "5 N·m"} {
		for method, c := range map[string]struct {
			rest          string
			says, unasked []string
		}{
			"clamp":        {`, "clampKind": "split-one-side", "pinchBolts": 2, "pinchThread": "M8x1.25", "pinchTorque": "15 N·m", "pinchGrade": "iso-8.8"`, []string{"inch bolts"}, []string{"the nut", "Measure bore and shaft"}},
			"interference": {`, "interference": "25 µm"`, []string{"Measure bore and shaft"}, []string{"inch bolts", "the nut", "pinch"}},
			"taper":        {`, "taperRatio": 0.1, "pinchThread": "M20x1.5", "pinchTorque": "60 N·m"`, []string{"nut"}, []string{"inch bolts", "pinch"}},
			"set-screws":   {`, "setScrewSize": "3/8", "setScrews": 2`, []string{"hold no torque"}, []string{"inch bolts", "the nut", "fit of its bore by"}},
		} {
			s := runInput(t, "coupling-bore", `{"holdMethod": "`+method+`", `+strings.Replace(common, "TORQUE", torque, 1)+c.rest+`}`, "metric")
			if w := wordOf(s, "bore-torque-peak"); w != "beyond" {
				t.Errorf("%s: %s", method, w)
			}
			advises(t, method+" "+torque, s, c.says, append(c.unasked, "key: tight at its sides"))
		}
	}
}

// 2 mm on a shaft of 30 mm is no fit, 20 µm is one.
func TestAnInterferenceThatNoMetalBears(t *testing.T) {
	for interference, refused := range map[string]bool{"2 mm": true, "0.31 mm": true, "20 µm": false} {
		_, err := marinecalc.Run("coupling-bore", []byte(`{"holdMethod": "interference", "shaftDiameter": "30 mm", "engagedLength": "60 mm", "hubDiameter": "60 mm", "hubMetal": "mild-steel", "surfaces": "steel-dry", "shaftAlloy": "s31600-annealed", "shaftTorque": "150 N·m", "interference": "`+interference+`"}`), marinecalc.Options{NoRanges: true})
		if (err != nil) != refused || refused && !strings.Contains(err.Error(), "more than any metal bears") {
			t.Errorf("%s: %v", interference, err)
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

// A taper's nut past yield: nothing of its thread is said to break below its tensile
// strength, no margin is OK, and the next step forbids power.
func TestTaperNutPastYieldForbidsPower(t *testing.T) {
	for torque, breaks := range map[string]bool{"50 N·m": false, "90 N·m": true} {
		s := runInput(t, "coupling-bore", `{"shaftDiameter":"25 mm","engagedLength":"60 mm","hubDiameter":"58 mm","hubMetal":"mild-steel","surfaces":"steel-dry","holdMethod":"taper","taperRatio":0.1,"pinchThread":"M12x1.75","pinchTorque":"`+torque+`","shaftAlloy":"s31600-annealed","keyed":"no","shaftTorque":"40 N·m","asternTorque":"40 N·m","peakTorque":"60 N·m","thrust":"2 kN"}`, "metric")
		if wordOf(s, "bore-pinch-yields") != "beyond" || wordOf(s, "bore-torque-ahead") == "within" || wordOf(s, "bore-pull-astern") == "within" {
			t.Errorf("%s: %s, ahead %s, astern %s", torque, wordOf(s, "bore-pinch-yields"), wordOf(s, "bore-torque-ahead"), wordOf(s, "bore-pull-astern"))
		}
		if v := s.Verdict("bore-pull-astern"); strings.Contains(v.Sentence, "can break") != breaks {
			t.Errorf("%s: %s", torque, v.Sentence)
		}
		if len(s.Next) == 0 || !strings.Contains(s.Next[0].Text, "no power, ahead or astern") {
			t.Errorf("%s: next %+v", torque, s.Next)
		}
	}
}
