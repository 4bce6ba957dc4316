package results_test

import (
	"math"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/sheet"
)

// Torque at the flange is 9549.3·20 kW/1200 rpm = 159.155 N·m, and its peak
// that times the shock factor, a figure that nobody confirms: 1.3 to 3, so that
// the peak lies from 206.9 to 477.5 N·m. A limit on it is told where it holds
// over all of that, and elsewhere with the factor at which it turns, which is
// the limit over 159.155 N·m.
func TestUnverifiedFiguresBracket(t *testing.T) {
	const input = `{"enginePower": "20 kW", "engineSpeed": "2400 rpm", "gearRatioAhead": 2, "gearboxEfficiency": "1 ± 0 %"}`
	for _, c := range []struct {
		limit, basis string
		word         sheet.Word
		turns        float64
		side         sheet.Side
	}{
		{`"max": "600 N·m"`, "maker", sheet.Within, 0, ""},
		{`"max": "490 N·m"`, "maker", sheet.NearLimit, 0, ""},
		{`"max": "200 N·m"`, "maker", sheet.Beyond, 0, ""},
		{`"max": "400 N·m"`, "maker", sheet.CannotTell, 400 / 159.155, sheet.AtMost},
		{`"min": "300 N·m"`, "maker", sheet.CannotTell, 300 / 159.155, sheet.AtLeast},
		{`"max": "600 N·m"`, "common-practice", sheet.Inside, 0, ""},
		{`"max": "200 N·m"`, "common-practice", sheet.Outside, 0, ""},
		{`"max": "400 N·m"`, "from-memory", sheet.About, 400 / 159.155, sheet.AtMost},
	} {
		book := testboat.Overlay(t, `{"limits": [{"id": "tried", "calculation": "shaft-torque", "on": "peakTorque", "title": "Tried", "how": "Measure it.", "why": "It would break.", `+c.limit+`, "source": {"document": "Test"}, "basis": "`+c.basis+`"}]}`)
		for _, o := range []marinecalc.Options{{Rules: book}, {Rules: book, NoRanges: true}} {
			v := testboat.Run(t, "shaft-torque", input, o).Verdict("tried")
			if v == nil || v.Word != c.word || (v.Turns != nil) != (c.turns != 0) {
				t.Errorf("%s by %s: %+v, want %s", c.limit, c.basis, v, c.word)
				continue
			}
			if c.turns == 0 {
				over := map[bool]string{true: "at the worst", false: "for all"}[v.Word == sheet.NearLimit]
				if !strings.Contains(v.Sentence, over+" of what is usual (shock factor 1.3 to 3.0)") {
					t.Error(v.Sentence)
				}
				continue
			}
			if v.Turns.Figure != "shaft-torque/shockFactor" || v.Turns.Side != c.side || math.Abs(v.Turns.SI/c.turns-1) > 0.01 ||
				!strings.Contains(v.Sentence, " while shock factor is "+string(c.side)+" "+v.Turns.Text+"; 1.3 to 3.0 is usual") {
				t.Errorf("%s by %s turns at %+v, want %g: %s", c.limit, c.basis, v.Turns, c.turns, v.Sentence)
			}
		}
	}
}

// What rests on figures whose bracket reaches past a limit on both sides is
// left untold.
func TestUnsureFiguresAreNotJudged(t *testing.T) {
	overlay := testboat.Overlay(t, `{"limits": [{"id": "test-rise", "calculation": "gland-heat", "on": "temperatureRise", "title": "Computed rise", "max": "20 K", "how": "-", "why": "-", "source": {"document": "Test"}, "basis": "maker"}]}`)
	v := testboat.Run(t, "gland-heat", `{}`, marinecalc.Options{Boat: testboat.Demo(t, "kittiwake"), Rules: overlay}).Verdict("test-rise")
	if v == nil || v.Word != "cannot tell" || len(v.Awaits) == 0 {
		t.Errorf("got %+v", v)
	}
}

// A maker's figure typed for the unverified one lets the verdict be told.
func TestTypedFigureIsTold(t *testing.T) {
	book := testboat.Overlay(t, `{"limits": [{"id": "tried", "calculation": "shaft-torque", "on": "peakTorque", "title": "Tried", "max": "400 N·m", "how": "-", "why": "-", "source": {"document": "Test"}, "basis": "maker"}]}`)
	v := testboat.Run(t, "shaft-torque", `{"enginePower": "20 kW", "engineSpeed": "2400 rpm", "gearRatioAhead": 2, "shockFactor": 2}`, marinecalc.Options{Rules: book}).Verdict("tried")
	if v == nil || v.Word != sheet.Within || len(v.Awaits) > 0 {
		t.Errorf("%+v", v)
	}
}
