package catalogue_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/sheet"
)

// Friction that does not hold by itself, and a key that nobody told of: the
// verdict waits for the key, as a doubt and not as a reading that was left out.
// Friction that holds needs no key, and without a key it decides.
func TestAVerdictWaitsForAKeyThatNobodyToldOf(t *testing.T) {
	const (
		taper = `{"shaftDiameter": "25 mm", "taperStandard": "iso-4566", "taperLength": "54 mm", "hubDiameter": "52 mm", "hubMetal": "manganese-bronze", "taperSurfaces": "bronze-dry",
			"contactShare": 0.7, "pushUp": "%s", "shaftTorque": "170 N·m", "asternTorque": "150 N·m", "peakTorque": "340 N·m", "thrustAstern": "1 kN"%s}`
		bore = `{"holdMethod": "clamp", "shaftDiameter": "25 mm", "engagedLength": "40 mm", "pinchBolts": 2, "boreFriction": 0.15, "clampFactor": 2, "pinchClamp": "%s", "shaftTorque": "170 N·m", "asternTorque": "150 N·m",
			"peakTorque": "340 N·m", "thrustAstern": "1 kN"%s}`
	)
	for _, c := range []struct {
		id, input, little, much, with string
		limits                        []string
	}{
		{"propeller-taper", taper, "0.02 mm", "0.6 mm", `, "keyTorque": "500 N·m"`, []string{"taper-torque-ahead", "taper-torque-astern", "taper-torque-peak"}},
		{"coupling-bore", bore, "3 kN", "300 kN", `, "keyWidth": "8 mm", "keyHeight": "8 mm", "keySeat": "4 mm", "keyLength": "40 mm", "keyYieldStrength": "300 MPa", "shaftYieldStrength": "300 MPa", "hubYieldStrength": "300 MPa"`,
			[]string{"bore-torque-ahead", "bore-torque-astern", "bore-torque-peak"}},
	} {
		read := func(hold, rest string) map[string]sheet.Verdict {
			return verdictsOf(runInput(t, c.id, fmt.Sprintf(c.input, hold, rest), "metric"))
		}
		untold, holds := read(c.little, ""), read(c.much, "")
		none, unmeasured, keyed := read(c.little, `, "keyed": "no"`), read(c.little, `, "keyed": "yes"`), read(c.little, `, "keyed": "yes"`+c.with)
		for _, limit := range c.limits {
			v := untold[limit]
			if v.Word.Plain() != sheet.CannotTell || v.Moot || !slices.Equal(v.Awaits, []string{"Is there a key"}) || !strings.Contains(v.Sentence, "whether there is a key") {
				t.Errorf("%s, nobody told of a key: %s (%s, awaits %q)", limit, v.Sentence, v.Word, v.Awaits)
			}
			if v := unmeasured[limit]; v.Word.Plain() != sheet.CannotTell || len(v.Awaits) != 1 || strings.Contains(v.Sentence, "whether") {
				t.Errorf("%s, a key without its measures: %s (awaits %q)", limit, v.Sentence, v.Awaits)
			}
			if v := none[limit]; v.Word.Plain() != sheet.Beyond {
				t.Errorf("%s, no key: %s", limit, v.Sentence)
			}
			if v := holds[limit]; v.SI == nil || *v.SI < 1 {
				t.Errorf("%s, friction holds: %s", limit, v.Sentence)
			}
			if limit == "taper-torque-ahead" || limit == "bore-torque-ahead" {
				if v := keyed[limit]; v.SI == nil || *v.SI < 1 {
					t.Errorf("%s, the key holds: %s", limit, v.Sentence)
				}
			}
		}
	}
	// The same of a boat whose file has no word of a key.
	const boat = `{"name": "No word of a key", "shaft": {"diameter": "25 mm"}, "propeller": {"hubMetal": "manganese-bronze", "taper": "iso-4566", "taperLength": "54 mm", "hubDiameter": "52 mm", "taperSurfaces": "bronze-dry", "nutThread": "M16x1.5", "nutTorque": "3 N·m"}}`
	v := testboat.RunOn(t, boat, "propeller-taper", `{"shaftTorque": "900 N·m", "contactShare": 0.5}`).Verdict("taper-torque-ahead")
	if v == nil || v.Word.Plain() != sheet.CannotTell {
		t.Errorf("of a boat: %+v", v)
	}
}
