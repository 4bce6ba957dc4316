package calc_test

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

// A pick that is not in its table is refused with the closest one, and one of
// which no row covers the case says so.
func TestPicksThatFindNoRow(t *testing.T) {
	for _, c := range []struct{ calculation, input, where, says string }{
		{"bolt-preload", `{"thread": "M10x1.6", "grade": "iso-8.8", "finish": "oiled"}`, "/thread", `did you mean "M10x1.5"?`},
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

// A figure of the usual values is the last but the default to be taken.
func TestUsualValuesStandIn(t *testing.T) {
	const drive = `"enginePower": "20 kW", "engineSpeed": "2400 rpm", "gearRatioAhead": 2`
	usual := testboat.Run(t, "shaft-torque", `{`+drive+`}`, marinecalc.Options{NoRanges: true}).Input("gearboxEfficiency")
	if usual == nil || usual.Origin != sheet.UsualValue || usual.Range == "" {
		t.Errorf("nobody gave it: %+v", usual)
	}
	typed := testboat.Run(t, "shaft-torque", `{`+drive+`, "gearboxEfficiency": 0.9}`, marinecalc.Options{NoRanges: true}).Input("gearboxEfficiency")
	if typed == nil || typed.Origin != sheet.Typed || *typed.SI != 0.9 || typed.Range != "" {
		t.Errorf("typed: %+v", typed)
	}
}
