package catalogue_test

import (
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/rules"
	"example.org/driveline/marinecalc/sheet"
)

// The nut factor of a nut of which nobody said what is on its thread is that of the
// table of finishes, dry stainless among them where the metal is not known either.
func TestNutFactorsOfOneTable(t *testing.T) {
	for id, c := range map[string]struct{ row, input string }{
		"coupling-bore":   {"not-known-any-metal", `{"holdMethod": "clamp", "clampKind": "two-halves", "shaftDiameter": "30 mm", "engagedLength": "70 mm", "hubDiameter": "65 mm", "surfaces": "bronze-dry", "shaftTorque": "200 N·m", "pinchThread": "M12x1.75", "pinchBolts": 4, "pinchTorque": "60 N·m", "pinchGrade": "iso-8.8", "splitGap": "2 mm"}`},
		"propeller-taper": {"not-known-any-metal", `{"shaftDiameter": "30 mm", "hubDiameter": "65 mm", "hubMetal": "manganese-bronze", "taperStandard": "iso-4566", "taperLength": "70 mm", "nutThread": "M20x2", "nutTorque": "150 N·m", "taperSurfaces": "bronze-dry", "shaftTorque": "200 N·m"}`},
		"output-flange":   {"not-known-shigley", `{"nominalDiameter": "24 mm", "pitch": "2 mm", "threadForm": "metric", "seatDiameter": "28 mm", "nutTorque": "210 N·m"}`},
	} {
		row := rules.Standard().Table("thread-finishes").Find(c.row, nil)
		v, _ := row.Values.Find("nutFactor")
		s := testboat.Run(t, id, c.input, marinecalc.Options{})
		if k := s.Input("nutFactor"); k == nil || k.SI == nil || *k.SI != v.SI || k.Source != row.Source.String() || k.Origin != sheet.UsualValue {
			t.Errorf("%s: %+v, not %g to %g", id, k, v.Low, v.High)
		}
	}
}

// Where a pinch bolt may yield at one end of a figure, nothing is known of the margin
// there: the verdict names that figure and where it turns, and no other.
func TestAFigureWithWhichNothingIsKnownIsNamed(t *testing.T) {
	s := testboat.Run(t, "coupling-bore", `{"holdMethod": "clamp", "clampKind": "two-halves", "shaftDiameter": "30 mm", "engagedLength": "70 mm", "hubDiameter": "65 mm", "surfaces": "bronze-dry", "shaftTorque": "100 N·m", "asternTorque": "100 N·m", "thrustAstern": "2 kN",
		"keyWidth": "8 mm", "keyHeight": "7 mm", "keyLength": "60 mm", "keyYieldStrength": "600 MPa", "shaftYieldStrength": "600 MPa", "hubYieldStrength": "600 MPa", "pinchThread": "M12x1.75", "pinchBolts": 4, "pinchTorque": "80 N·m", "pinchGrade": "iso-8.8", "splitGap": "2 mm"}`, marinecalc.Options{})
	v := s.Verdict("bore-torque-astern")
	if v.Word != sheet.CannotTell || v.Turns == nil || !strings.Contains(v.Sentence, "nut factor of pinch bolt or nut is at least") {
		t.Errorf("%s %+v", v.Sentence, v.Turns)
	}
}

// A nut factor of 0.2 typed beside coefficients of 0.15 is that of Shigley's table 8-15
// for all sizes, within a tenth, and passes. Beside 0.08, which come to about 0.12, one of
// the two is not of this thread: nothing rests on either, whichever is used. A nut factor
// that only comes with the finish is no second figure, and neither is one coefficient.
func TestNutFactorBesideCoefficients(t *testing.T) {
	for _, c := range []struct{ id, input, both, limit string }{
		{"bolt-preload", `{"thread": "M10x1.5", "grade": "iso-8.8", "finish": "oiled"`, `"threadFriction": 0.08, "headFriction": 0.08`, "bolt-proof-load"},
		{"bolt-preload", `{"thread": "M10x1.5", "grade": "iso-8.8", "finish": "oiled", "method": "long"`, `"threadFriction": 0.08, "headFriction": 0.08`, "bolt-proof-load"},
		{"output-flange", `{"nominalDiameter": "24 mm", "pitch": "2 mm", "threadForm": "metric", "seatDiameter": "28 mm", "nutTorque": "210 N·m", "pullAstern": "2 kN", "shaftYieldStrength": "900 MPa"`, `"threadFriction": 0.08, "nutFriction": 0.08`, "flange-thread"},
	} {
		one, _, _ := strings.Cut(c.both, ",")
		for _, with := range []struct {
			more string
			told bool
		}{
			{`"nutFactor": 0.2, ` + c.both, true}, {`"nutFactor": 0.2, ` + strings.ReplaceAll(c.both, "0.08", "0.15"), false},
			{c.both, false}, {`"nutFactor": 0.2, ` + one, false}, {`"nutFactor": 0.2`, false},
		} {
			if with.more == `"nutFactor": 0.2, `+one && strings.Contains(c.input, "long") {
				continue // which takes both or none
			}
			s := testboat.Run(t, c.id, c.input+", "+with.more+"}", marinecalc.Options{})
			told := false
			for _, conflict := range s.Conflicts {
				told = told || conflict.On == "frictionsFactor" && strings.Contains(conflict.Text, "belong together") && !strings.Contains(conflict.Text, "“")
			}
			v := s.Verdict(c.limit)
			if told != with.told || (v.Word.Plain() == sheet.Within) == told || strings.Contains(v.Sentence, "belong together") != told {
				t.Errorf("%s, %s: %v; %s", c.id, with.more, s.Conflicts, v.Sentence)
			}
		}
	}
}
