package inputs_test

import (
	"slices"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/sheet"
)

// A picked row fills what nobody gave, with its source; what was typed stays.
func TestRowsFillWhatNobodyGave(t *testing.T) {
	s := testboat.Run(t, "bolt-preload", `{"thread": "M10x1.5", "grade": "iso-8.8", "finish": "oiled", "pitch": "1.25 mm"}`, marinecalc.Options{NoRanges: true})
	if in := s.Input("nominalDiameter"); in == nil || in.Origin != sheet.HandbookRow || in.Source == "" || *in.SI != 0.010 {
		t.Errorf("the diameter is %+v", in)
	}
	if in := s.Input("pitch"); in == nil || in.Origin != sheet.Typed || *in.SI != 0.00125 {
		t.Errorf("the pitch is %+v", in)
	}
}

// A pick that is not in its table is refused with the closest one, or
// with those that its words are said of, and one of
// which no row covers the case says so.
func TestPicksThatFindNoRow(t *testing.T) {
	for _, c := range []struct{ calculation, input, where, says string }{
		{"bolt-preload", `{"thread": "M10x1.6", "grade": "iso-8.8", "finish": "oiled"}`, "/thread", `did you mean "M10x1.5"?`},
		{"bolt-preload", `{"thread": "M10x1.5", "grade": "Grade 8, SAE", "finish": "oiled"}`, "/grade", `did you mean SAE J429 grade 8 ("j429-8")?`},
		{"bolt-preload", `{"thread": "M10x1.5", "grade": "8.8", "finish": "anti-seize"}`, "/grade", `class 8.8 ("iso-8.8")?`},
		{"bolt-preload", `{"thread": "M10x1.5", "grade": "iso-8.8", "finish": "Anti-seize"}`, "/finish", `("anti-seize-shigley") or Stainless with`},
		{"key-strength", `{"shaftDiameter": "20 in", "shaftTorque": "100 N·m", "keyLength": "50 mm", "keyYieldStrength": "200 MPa", "keyTable": "b17.1-square"}`, "/keyTable", "covers this size"},
	} {
		_, err := marinecalc.Run(c.calculation, []byte(c.input), marinecalc.Options{NoRanges: true})
		if !slices.ContainsFunc(problem.Of(err), func(p problem.Problem) bool {
			return p.Where == c.where && p.Allowed != "" && strings.Contains(p.What+p.Hint, c.says)
		}) {
			t.Errorf("%s: nothing at %s says %q: %v", c.calculation, c.where, c.says, err)
		}
	}
}

// A pick without a row for the case says what does not match, and what can be
// typed in its place; once that is known it hinders nothing.
func TestAMissingRowDoesNotBlock(t *testing.T) {
	const joint = `{"thread": "M10x1.5", "grade": "iso-8.8", "finish": "oiled", "nut": `
	for nut, says := range map[string]string{`"ne-7/16-14"`: "thread diameter 10.86 mm to 11.37 mm, here 10 mm", `"some-nut"`: "is not in the table"} {
		_, err := marinecalc.Run("bolt-preload", []byte(joint+nut+`}`), marinecalc.Options{NoRanges: true})
		if !slices.ContainsFunc(problem.Of(err), func(p problem.Problem) bool {
			return p.Where == "/nut" && strings.Contains(p.What, says) && strings.Contains(p.Hint, "type the prevailing torque of the nut")
		}) {
			t.Errorf("%s: %v", nut, err)
		}
		s := testboat.Run(t, "bolt-preload", joint+nut+`, "prevailingTorque": "4 N·m"}`, marinecalc.Options{NoRanges: true})
		if !slices.ContainsFunc(s.Notes, func(note string) bool { return strings.Contains(note, says) }) {
			t.Errorf("%s: the sheet does not say it: %q", nut, s.Notes)
		}
	}
}

// So it is with a nut of the boat's for which there is no row: preload, fit and
// slip torque go by the figures that stand beside it.
func TestABoatWithANutOfItsOwn(t *testing.T) {
	boat := func(figures string) marinecalc.Options {
		return marinecalc.Options{NoRanges: true, Boat: testboat.Read(t, `{"name": "Test", "coupling": {"boltCount": 4, "boltCircle": "82.5 mm", "headFlangeThickness": "12 mm", "nutFlangeThickness": "12 mm",
			"bolts": {"thread": "M10x1.5", "grade": "iso-8.8", "finish": "oiled", "nut": "all-metal-m10"`+figures+`}}}`)}
	}
	for id, input := range map[string]string{"bolt-preload": `{}`, "bolt-fit": `{}`, "coupling-grip": `{"shaftTorque": "100 N·m"}`} {
		if _, err := marinecalc.Run(id, []byte(input), boat("")); err == nil {
			t.Errorf("%s: a nut that nobody knows is used", id)
		}
		testboat.Run(t, id, input, boat(`, "prevailingTorque": "4 N·m", "nutHeight": "10 mm"`))
	}
}

// A figure of the usual values is the last but the default to be taken.
func TestUsualValuesStandIn(t *testing.T) {
	const drive = `"enginePower": "20 kW", "engineSpeed": "2400 rpm", "gearRatioAhead": 2`
	usual := testboat.Run(t, "shaft-torque", `{`+drive+`}`, marinecalc.Options{NoRanges: true}).Input("gearboxEfficiency")
	if usual == nil || usual.Origin != sheet.UsualValue || usual.Range == "" {
		t.Errorf("nobody gave it: %+v", usual)
	}
	typed := testboat.Run(t, "shaft-torque", `{`+drive+`, "gearboxEfficiency": "0.9 ± 0 %"}`, marinecalc.Options{NoRanges: true}).Input("gearboxEfficiency")
	if typed == nil || typed.Origin != sheet.Typed || *typed.SI != 0.9 || typed.Range != "" {
		t.Errorf("typed: %+v", typed)
	}
}
