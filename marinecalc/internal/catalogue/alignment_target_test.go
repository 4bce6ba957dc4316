package catalogue_test

import (
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
)

const belowTheLine = `"couplingDiameter": "100 mm", "couplingKind": "rigid", "settles": "9 day", "mounts": [
	{"name": "a", "forward": "700 mm", "starboard": "-200 mm", "up": "-200 mm"}, {"name": "b", "forward": "700 mm", "starboard": "200 mm", "up": "-200 mm"},
	{"name": "c", "forward": "200 mm", "starboard": "-200 mm", "up": "-200 mm"}, {"name": "d", "forward": "200 mm", "starboard": "200 mm", "up": "-200 mm"}]`

// Both limits of the cold target on both sides, and what nobody knows leaves
// them open.
func TestLimitsOfTheColdTarget(t *testing.T) {
	const known = `, "expansion": 1.1e-5, "usualDeflection": "4 mm", "creepPerDecade": "4 %", "drivingShare": "0 %"`
	for _, c := range []struct{ limit, what, rest, word string }{
		{"target-offset-needed", "old mounts, cool feet", known + `, "standing": "5 year", "frontRise": "5 K", "aftRise": "5 K"`, "within"},
		{"target-offset-needed", "new mounts", known + `, "standing": "1 h", "frontRise": "5 K", "aftRise": "5 K"`, "beyond"},
		{"target-offset-needed", "nothing known", ``, "cannot tell"},
		{"target-gap-needed", "warmed alike", known + `, "standing": "5 year", "frontRise": "20 K", "aftRise": "20 K"`, "within"},
		{"target-gap-needed", "hot front on tall brackets", known + `, "standing": "5 year", "frontRise": "110 K", "aftRise": "5 K", "afloatGapVertical": "-0.2 mm"`, "beyond"},
		{"target-gap-needed", "set ashore", known + `, "standing": "5 year", "frontRise": "20 K", "aftRise": "20 K", "setWhere": "ashore"`, "cannot tell"},
	} {
		s := testboat.Run(t, "alignment-target", "{"+belowTheLine+c.rest+"}", marinecalc.Options{})
		if got := wordOf(s, c.limit); got != c.word {
			t.Errorf("%s, %s: %q, want %q", c.limit, c.what, got, c.word)
		}
	}
}

// Moves aim at the target that stands in the boat file, go by dial or feeler,
// whichever was read later, and are judged by what is left against it.
func TestMovesGoByTheNewerReadingToTheTarget(t *testing.T) {
	const boat = `{"name": "Tern", "coupling": {"kind": "rigid", "diameter": "100 mm", "target": {"offsetVertical": "-0.2 mm"}, "dial": {"radius": "45 mm", "swept": "together", "barSagRim": "0 mm", "barSagFace": "0 mm"}},
		"mounts": [{"name": "a", "forward": "700 mm", "starboard": "-200 mm", "threadPitch": "0.5 mm"}, {"name": "b", "forward": "700 mm", "starboard": "200 mm", "threadPitch": "0.5 mm"},
			{"name": "c", "forward": "200 mm", "starboard": "-200 mm", "threadPitch": "0.5 mm"}, {"name": "d", "forward": "200 mm", "starboard": "200 mm", "threadPitch": "0.5 mm"}],
		"readings": [{"date": "%DIAL%", "couplingDial": [{"clock": "0°", "face": "0 mm", "rim": "0 mm"}, {"clock": "90°", "face": "0 mm", "rim": "-0.1 mm"}, {"clock": "180°", "face": "0 mm", "rim": "-0.2 mm"}, {"clock": "270°", "face": "0 mm", "rim": "-0.1 mm"}]},
			{"date": "2026-05-02", "couplingGaps": [` + evenGaps + `], "couplingSteps": [{"clock": "0°", "step": "0.3 mm"}, {"clock": "90°", "step": "0 mm"}, {"clock": "180°", "step": "-0.3 mm"}, {"clock": "270°", "step": "0 mm"}]}]}`
	for day, high := range map[string]float64{"2026-06-01": 0.1e-3, "2026-04-01": 0.3e-3, "2026-05-02": 0.1e-3} {
		b := testboat.Read(t, strings.Replace(boat, "%DIAL%", day, 1))
		s := testboat.Run(t, "mount-moves", `{}`, marinecalc.Options{Boat: b})
		if raise := *s.Cell("moves", 0, "raise").SI; raise > -(high+0.2e-3)+0.05e-3 || raise < -(high+0.2e-3)-0.05e-3 {
			t.Errorf("dials of %s: raised by %.3f mm, want about %.3f", day, 1e3*raise, -1e3*(high+0.2e-3))
		}
		if left := s.Result("offsetAfter"); *left.SI > 0.05e-3 {
			t.Errorf("dials of %s: %.3f mm left against the target", day, 1e3**left.SI)
		}
	}
}
