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
