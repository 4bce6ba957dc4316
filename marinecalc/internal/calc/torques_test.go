package calc_test

import (
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/sheet"
)

// A joint's only maker's torque is the maker's figure of its sheet where none was typed.
func TestMakersTorqueReachesItsSheet(t *testing.T) {
	const flange = `"outputFlange": {"thread": "M24x2", "finish": "oiled", "seatDiameter": "28 mm", "hubLength": "40 mm", "hubDiameter": "46 mm"%}, "torques": [{"joint": "output-nut", "torque": "210 N·m", "source": "Book (invented), p. 30"}]`
	for typed, origin := range map[string]sheet.Origin{``: sheet.MakersFigure, `, "nutTorque": "200 N·m"`: sheet.FromBoat} {
		b := testboat.Read(t, `{"name": "Tern", `+strings.Replace(flange, "%", typed, 1)+`}`)
		s, err := marinecalc.Run("output-flange", nil, marinecalc.Options{Boat: b, NoRanges: true})
		if err != nil {
			t.Fatal(err)
		}
		in := s.Input("nutTorque")
		if in == nil || in.Origin != origin || (in.Source == "Book (invented), p. 30") != (typed == "") {
			t.Errorf("%q: %+v", typed, in)
		}
	}
}
