package catalogue_test

import (
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/sheet"
)

const measuredTaper = `{"shaftDiameter": "30 mm", "taperStandard": "STANDARD", "taperLength": "70 mm", "hubDiameter": "60 mm", "hubMetal": "manganese-bronze", "shaftAlloy": "s31600-annealed",
	"taperSurfaces": "bronze-dry", "contactShare": "80 %", "nutThread": "M20x2", "nutTorque": "100 N·m", "nutFactor": 0.2, "boreFriction": 0.15, "keyed": "no", "shaftTorque": "100 N·m", "smallEndDiameter": "SMALL"}`

// A small end of 25.6 mm at 70 mm from 30 mm is 4.4 in 70, 1 in 16 (SAE J755, 3/4 in
// per foot), and no 1 in 10 (ISO 4566), whose small end is 23 mm: what rests on
// the taper is not judged, what does not, such as the nut's thread, is. Readings
// to a twentieth of a millimetre on 70 mm by a rule do not tell 0.1 from 0.1007.
func TestTaperThatIsNotTheOnePicked(t *testing.T) {
	for _, c := range []struct {
		standard, small, is string // is: the standard that it is; "-" for none; "" where it agrees
	}{
		{"iso-4566", "25.6 mm", "1 in 16 (SAE J755"}, {"iso-4566", "23.00 mm", ""}, {"iso-4566", "22.95 mm", ""}, {"iso-4566", "22.0 mm", "-"},
		{"j755", "25.6 mm", ""}, {"j755", "23.00 mm", "1 in 10 (ISO 4566"}, {"one-in-12", "26.5 mm", "1 in 20"},
	} {
		s := runInput(t, "propeller-taper", strings.NewReplacer("STANDARD", c.standard, "SMALL", c.small).Replace(measuredTaper), "metric")
		var told *sheet.Conflict
		for i := range s.Conflicts {
			if s.Conflicts[i].On == "taperMeasured" {
				told = &s.Conflicts[i]
			}
		}
		v := verdictsOf(s)
		ahead, thread := v["taper-torque-ahead"].Word.Plain(), v["taper-thread-yields"].Word.Plain()
		if (told != nil) != (c.is != "") || (ahead == sheet.CannotTell) != (c.is != "") {
			t.Errorf("%s, %s: %+v; %s", c.standard, c.small, told, v["taper-torque-ahead"].Sentence)
			continue
		}
		if thread != sheet.Within {
			t.Errorf("%s, %s: %s", c.standard, c.small, v["taper-thread-yields"].Sentence)
		}
		if told == nil {
			continue
		}
		is, chosen, _ := strings.Cut(told.Text, "does not agree")
		if c.is == "-" && strings.Contains(is, " in ") || c.is != "-" && !strings.Contains(is, c.is) || !strings.Contains(chosen, "1 in 1") {
			t.Errorf("%s, %s: %s", c.standard, c.small, told.Text)
		}
	}
}

// SAE J755: a 2 in shaft is 2 in at the large end, 5.75 in long and 1.641 in at the
// small one. A row fills the diameter; one that is typed goes before it.
func TestShaftEndFillsItsDiameter(t *testing.T) {
	for diameter, want := range map[string]float64{"": 1.641 * 0.0254, `"shaftDiameter": "51.5 mm", `: 0.0515 - 5.75/16*0.0254} {
		s := runInput(t, "propeller-taper", `{`+diameter+`"shaftEndTable": "j755-2", "hubDiameter": "6 in", "nutTorque": "180 N·m", "nutThread": "M20x2", "shaftTorque": "100 N·m"}`, "metric")
		small := *s.Result("smallEnd").SI
		if !(small > want-3e-5 && small < want+3e-5) {
			t.Errorf("small end %g m, want %g", small, want)
		}
	}
	_, err := marinecalc.Run("propeller-taper", []byte(`{"taperStandard": "j755", "taperLength": "5 in", "hubDiameter": "6 in", "nutTorque": "180 N·m", "nutThread": "M20x2", "shaftTorque": "100 N·m"}`), marinecalc.Options{})
	if err == nil || !strings.Contains(strings.ToLower(err.Error()), "shaft diameter") {
		t.Errorf("without a size: %v", err)
	}
}

// 100 N·m on M20 with a nut factor of 0.2 push 25 kN. On the ring of 27.7 mm over 23 mm,
// 187 mm², that is 134 MPa: under the yield strength of manganese bronze, 25 ksi, and
// nothing sinks. On 24.2 over 23 mm, 44.5 mm², it is 562 MPa, and any bronze gives. Between
// yield and tensile strength it is not known, and said from where on. A nut that sinks
// holds no cone on.
func TestNutThatSinksIntoTheHub(t *testing.T) {
	for face, c := range map[string]struct {
		word sheet.Word
		told string
	}{"27.7 mm": {sheet.Within, ""}, "24.2 mm": {sheet.Beyond, "on the bare hub"}, "25.6 mm": {sheet.CannotTell, "such a ring"}} {
		s := runInput(t, "propeller-taper", strings.NewReplacer("STANDARD", "iso-4566", "SMALL", "23 mm", `"keyed"`, `"nutFaceDiameter": "`+face+`", "nutFactor": "0.2 ± 1 %", "keyed"`, `"nutFactor": 0.2, `, "").Replace(measuredTaper), "metric")
		v := verdictsOf(s)["taper-nut-sinks"]
		if v.Word != c.word || (v.Turns != nil) != (c.word == sheet.CannotTell) {
			t.Errorf("%s: %s", face, v.Sentence)
		}
		said := false
		for _, n := range s.Next {
			said = said || c.told != "" && strings.Contains(n.Text, c.told)
		}
		if said != (c.told != "") {
			t.Errorf("%s: %v", face, s.Next)
		}
		if ahead := verdictsOf(s)["taper-torque-ahead"].Word; (ahead == sheet.Within) != (c.word != sheet.Beyond) {
			t.Errorf("%s: ahead %s", face, verdictsOf(s)["taper-torque-ahead"].Sentence)
		}
	}
}

// A count of eyes that no gauge reads says how surely it must be found, and
// found so surely it is told, on either side of the guide of 70 %.
func TestAShareOfTheConeSaysHowSurelyItMustBeFound(t *testing.T) {
	for share, want := range map[string]struct {
		word   sheet.Word
		settle string
	}{
		"80 %":       {sheet.About, "± 10 %"},
		"80 % ± 9 %": {sheet.Within.ByGuide(), ""},
		"64 %":       {sheet.About, "± 6 %"},
		"64 % ± 5 %": {sheet.Outside, ""},
	} {
		s := testboat.Run(t, "propeller-taper", `{"shaftDiameter":"25 mm","taperStandard":"iso-4566","hubDiameter":"52 mm","shaftTorque":"150 N·m","pushUp":"0.6 mm","taperLength":"54 mm","contactShare":"`+share+`"}`, marinecalc.Options{})
		v := s.Verdict("taper-contact")
		if v == nil || v.Word != want.word || !strings.Contains(v.Settle, want.settle) || (v.Settle == "") != (want.settle == "") {
			t.Errorf("%s: %+v", share, v)
		}
	}
}
