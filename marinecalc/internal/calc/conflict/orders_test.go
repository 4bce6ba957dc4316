package conflict_test

import (
	"encoding/json"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/sheet"
)

// What cannot be less than another, and is, is told, and no verdict rests on
// either; as far as their accuracies reach nothing is said.
func TestWhatCannotStandInThatOrder(t *testing.T) {
	taper := `{"shaftDiameter":"30 mm","taperLength":"60 mm","hubDiameter":"60 mm","hubMetal":"manganese-bronze","taperRatio":"1/12","nutThread":"M20x1.5","nutTorque":"80 N·m","shaftTorque":"150 N·m"`
	for _, c := range []struct {
		what, calculation, input, limit string
		told                            bool
		says                            string
	}{
		{"a hub that goes farther on with its key", "propeller-taper", taper + `,"markWithoutKey":"12 mm","markWithKey":"8 mm"}`, "taper-key-holds-off", true,
			"mark with the key 8 mm is less than mark without the key 12 mm, which cannot be"},
		{"marks that differ by a calliper's reading", "propeller-taper", taper + `,"markWithoutKey":"12 mm","markWithKey":"11.97 mm"}`, "taper-key-holds-off", false, ""},
		{"a peak under the steady torque", "key-strength", `{"shaftDiameter":"30 mm","shaftTorque":"300 N·m","peakTorque":"100 N·m","keyWidth":"8 mm","keyLength":"50 mm","keyYieldStrength":"300 MPa","shaftAlloy":"s31600-annealed","hubYieldStrength":"200 MPa"}`, "", true,
			""},
		{"the same, and the grip", "coupling-grip", `{"boltCount":4,"boltCircle":"80 mm","preload":"20 kN","faceFriction":0.15,"shaftTorque":"300 N·m","peakTorque":"100 N·m","thrustAstern":"2 kN","asternTorque":"200 N·m"}`, "grip-peak", true,
			"nothing to judge, peak torque 100 N·m is less than"},
		{"an idle over the full speed", "mount-load", ``, "isolation-at-idle", true, "nothing to judge, "},
		{"the most of a new clearance under the least", "bearing-clearance", `{"shaftDiameter":"30 mm","bearingClearance":"0.3 mm","newClearance":"0.2 mm","leastNewClearance":"0.15 mm","mostNewClearance":"0.1 mm"}`, "new-clearance-most", true, "is less than"},
	} {
		input := c.input
		if input == "" {
			input = idleOverFull(t)
		}
		s := testboat.Run(t, c.calculation, input, marinecalc.Options{Trials: 500})
		v, told := s.Verdict(c.limit), false
		for _, x := range s.Conflicts {
			told = told || x.Code == sheet.TwoFigures
		}
		switch {
		case c.limit == "": // judged at the harder of the two
			if told != c.told {
				t.Errorf("%s: told %v", c.what, told)
			}
		case v == nil:
			t.Errorf("%s: no verdict %s", c.what, c.limit)
		case told != c.told || !strings.Contains(v.Sentence, c.says):
			t.Errorf("%s: told %v: %s", c.what, told, v.Sentence)
		case c.told && v.Word.Plain() != sheet.CannotTell && !v.Moot:
			t.Errorf("%s: %s", c.what, v.Sentence)
		}
	}
}

// idleOverFull is the schema's own example of mounts, with an engine speed below
// its idle.
func idleOverFull(t *testing.T) string {
	var input map[string]any
	if err := json.Unmarshal([]byte(testboat.Typed(t, "mount-load")), &input); err != nil {
		t.Fatal(err)
	}
	input["idleSpeed"], input["engineSpeed"] = "850 rpm", "300 rpm"
	return testboat.Text(t, input)
}
