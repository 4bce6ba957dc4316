package catalogue_test

import (
	"math"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
)

// Under the nut of the output flange and of a coupling's taper the pressure is held against
// what the hub bears, as under the propeller's: by the ring that the nut covers; of a taper's
// nut that nobody measured by a usual one; and no figure of memory says that it is too much alone.
func TestPressureUnderTheNutOfFlangeAndTaper(t *testing.T) {
	const (
		flange = `{"thread": "M24x2", "finish": "oiled", "nutTorque": "%", "seatDiameter": "28 mm", "hubLength": "40 mm", "hubDiameter": "46 mm"@}`
		taper  = `{"holdMethod": "taper", "shaftTorque": "100 N·m", "shaftDiameter": "30 mm", "engagedLength": "60 mm", "taperRatio": 0.1, "hubDiameter": "60 mm", "hubMetal": "#", "pinchThread": "M16x1.5", "pinchClamp": "%"@}`
	)
	with := func(json string, of ...string) string {
		for i := 0; i < len(of); i += 2 {
			json = strings.Replace(json, of[i], of[i+1], 1)
		}
		return json
	}
	for name, c := range map[string]struct {
		calculation, limit, input string
		clamp                     string  // the result that presses
		outside, hole             float64 // of the ring, in m
		word                      string
	}{
		"flange, wide":           {"output-flange", "flange-nut-sinks", with(flange, "%", "210 N·m", "@", `, "nutFaceDiameter": "44 mm"`), "fittedClamp", 0.044, 0.028, "within"},
		"flange, not measured":   {"output-flange", "flange-nut-sinks", with(flange, "%", "210 N·m", "@", ``), "fittedClamp", 0, 0, "not measured"},
		"flange, narrow":         {"output-flange", "flange-nut-sinks", with(flange, "%", "210 N·m", "@", `, "nutFaceDiameter": "31 mm"`), "fittedClamp", 0.031, 0.028, "cannot tell"},
		"flange, hardly":         {"output-flange", "flange-nut-sinks", with(flange, "%", "210 N·m", "@", `, "nutFaceDiameter": "28.5 mm"`), "fittedClamp", 0.0285, 0.028, "beyond"},
		"flange, by a figure":    {"output-flange", "flange-nut-sinks", with(flange, "%", "210 N·m", "@", `, "nutFaceDiameter": "31 mm", "permittedBearingStress": "180 MPa"`), "fittedClamp", 0.031, 0.028, "beyond"},
		"taper, wide":            {"coupling-bore", "bore-nut-sinks", with(taper, "#", "mild-steel", "%", "30 kN", "@", `, "nutFaceDiameter": "34 mm"`), "clampUsed", 0.034, 0.024, "within"},
		"taper, hardly":          {"coupling-bore", "bore-nut-sinks", with(taper, "#", "mild-steel", "%", "40 kN", "@", `, "nutFaceDiameter": "25 mm"`), "clampUsed", 0.025, 0.024, "beyond"},
		"taper, usual nut":       {"coupling-bore", "bore-nut-sinks", with(taper, "#", "mild-steel", "%", "30 kN", "@", ``), "clampUsed", 0, 0, "cannot tell"},
		"taper, metal not known": {"coupling-bore", "bore-nut-sinks", with(taper, `, "hubMetal": "#"`, "", "%", "30 kN", "@", `, "nutFaceDiameter": "34 mm"`), "clampUsed", 0.034, 0.024, "not measured"},
	} {
		s := testboat.Run(t, c.calculation, c.input, marinecalc.Options{})
		v := s.Verdict(c.limit)
		if v == nil || string(v.Word.Plain()) != c.word {
			t.Errorf("%s: %+v", name, v)
		}
		if c.outside == 0 {
			continue
		}
		want := *s.Result(c.clamp).SI / (math.Pi / 4 * (c.outside - c.hole) * (c.outside + c.hole))
		if got := *s.Result("faceStress").SI; math.Abs(got-want) > 1e-9*want {
			t.Errorf("%s: %v, want %v", name, got, want)
		}
	}
}
