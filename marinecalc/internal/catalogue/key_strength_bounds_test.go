package catalogue_test

import (
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/sheet"
)

// A key of which the metal of the shaft was not told holds no more than its own
// crushing bears: what fails by that fails whatever the shaft is, and the sheet does
// not ask whether there is a key. 205 MPa over 18 by 4 mm at a mean diameter of 31 mm
// hold 229 N·m.
func TestAMissingMetalMakesNoVerdictOfAKeyMilder(t *testing.T) {
	const (
		key   = `{"shaftDiameter": "35 mm", "keyWidth": "10 mm", "keyHeight": "8 mm", "keyLength": "18 mm", "keySeat": "4 mm", "keyYieldStrength": "205 MPa", "hubYieldStrength": "210 MPa", "shaftTorque": "TORQUE"`
		taper = `, "taperStandard": "iso-4566", "taperLength": "80 mm"}`
		bore  = `, "asternTorque": "10 N·m", "holdMethod": "set-screws", "engagedLength": "70 mm"}`
		cone  = `{"shaftDiameter": "35 mm", "taperStandard": "iso-4566", "taperLength": "80 mm", "hubDiameter": "70 mm", "hubMetal": "manganese-bronze", "taperSurfaces": "greased", "contactShare": "45 %", "nutForce": "10 kN", "shaftTorque": "TORQUE", "keyTorqueMost": "229 N·m"}`
	)
	for _, c := range []struct{ id, input, limit string }{
		{"key-strength", key + taper, "key-known-yields"}, {"coupling-key", key + bore[:1] + ` "holdMethod": "set-screws"}`, "coupling-key-known-yields"},
		{"coupling-bore", key + bore, "bore-torque-ahead"}, {"propeller-taper", cone, "taper-torque-ahead"},
	} {
		for torque, fails := range map[string]bool{"326 N·m": true, "150 N·m": false} {
			s := testboat.Run(t, c.id, strings.Replace(c.input, "TORQUE", torque, 1), marinecalc.Options{})
			v := s.Verdict(c.limit)
			if fails != (v != nil && v.Word.Plain() == sheet.Beyond) {
				t.Errorf("%s, %s: %+v", c.id, torque, v)
			}
			for _, v := range s.Verdicts {
				if strings.Contains(v.Sentence, "Look whether there is a key") || strings.HasPrefix(v.Limit, "bore-torque") && v.Word.Plain() == sheet.Within {
					t.Errorf("%s, %s: %s", c.id, torque, v.Sentence)
				}
			}
			for _, n := range s.Next {
				if strings.Contains(n.Text, "Look whether there is a key") {
					t.Errorf("%s, %s: %s", c.id, torque, n.Text)
				}
			}
		}
	}
}

// A small end that is not that of the taper chosen is one fact on both sheets: 31 mm at
// 80 mm from 35 mm is 1 in 20, and no 1 in 10. No verdict of the key goes by either.
func TestKeyAndTaperHaveOneDoubtOfTheTaper(t *testing.T) {
	const key = `{"shaftDiameter": "35 mm", "keyWidth": "10 mm", "keyHeight": "8 mm", "keyLength": "50 mm", "keySeat": "4 mm", "keyYieldStrength": "205 MPa", "hubYieldStrength": "210 MPa", "shaftAlloy": "s31600-annealed",
		"shaftTorque": "400 N·m", "peakTorque": "480 N·m", "taperStandard": "iso-4566", "taperLength": "80 mm", "smallEndDiameter": "SMALL"}`
	for small, agrees := range map[string]bool{"31 mm": false, "27 mm": true} {
		s := testboat.Run(t, "key-strength", strings.Replace(key, "SMALL", small, 1), marinecalc.Options{})
		if (len(s.Conflicts) == 0) != agrees {
			t.Errorf("%s: %+v", small, s.Conflicts)
		}
		for _, limit := range []string{"key-at-peak", "key-at-full-power", "key-yields-at-full-power"} {
			if v := s.Verdict(limit); (v.Word.Plain() != sheet.CannotTell) != agrees {
				t.Errorf("%s: %s", small, v.Sentence)
			}
		}
	}
}

// The small end of the row picked is no measurement of it: a 1 in shaft typed as 25 mm
// has the row's taper all the same, and 23 mm measured at its small end has not.
func TestARowIsNoMeasurementOfItself(t *testing.T) {
	const key = `{"shaftDiameter": "25 mm", "keyWidth": "6.35 mm", "keyLength": "50 mm", "keyYieldStrength": "205 MPa", "shaftTorque": "100 N·m", "shaftEndTable": "j755-1"`
	for more, agrees := range map[string]bool{`}`: true, `, "smallEndDiameter": "21.03 mm"}`: true, `, "smallEndDiameter": "23 mm"}`: false} {
		if s := testboat.Run(t, "key-strength", key+more, marinecalc.Options{}); (len(s.Conflicts) == 0) != agrees {
			t.Errorf("%s: %+v", more, s.Conflicts)
		}
	}
}
