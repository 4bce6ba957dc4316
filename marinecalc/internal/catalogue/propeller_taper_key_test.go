package catalogue_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/rules"
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

// Of a key that nobody told of, friction alone is the least that holds. The range of a
// margin that friction meets as it is estimated goes on below 1, where a trial has less,
// and is said to be the least; the verdict stays open, as it does where the estimate
// itself lies below 1. With "no" it is a plain figure, and with a pull that nobody told
// the range goes on above 1.
func TestRangeOfFrictionAloneDoesNotEndAtOne(t *testing.T) {
	taper := strings.NewReplacer("STANDARD", "iso-4566", `, "smallEndDiameter": "SMALL"`, "", `"nutFactor": 0.2, "boreFriction": 0.15, "keyed": "no", `, "").Replace(measuredTaper)
	below := 0
	for _, torque := range []string{"60 N·m", "100 N·m", "140 N·m", "190 N·m", "220 N·m", "300 N·m"} {
		input := strings.Replace(taper, `"shaftTorque": "100 N·m"`, `"shaftTorque": "`+torque+`"`, 1)
		s := testboat.Run(t, "propeller-taper", input, marinecalc.Options{})
		m, v := s.Result("marginAhead"), s.Verdict("taper-torque-ahead")
		no := testboat.Run(t, "propeller-taper", strings.Replace(input, `"nutTorque"`, `"keyed": "no", "nutTorque"`, 1), marinecalc.Options{})
		if m == nil {
			if v.Word != sheet.CannotTell || !strings.Contains(v.Sentence, "Look whether there is a key") {
				t.Errorf("%s: %s", torque, v.Sentence)
			}
			continue
		}
		low, _, ok := m.Range()
		plain, _, _ := no.Result("marginAhead").Range()
		if !ok || low < plain-1e-9 || low > plain+1e-9 || !strings.Contains(m.Help, "At least this much") || s.Result("heldBy").Text[:8] != "friction" {
			t.Errorf("%s: from %g with a key that is not known, %g without one", torque, low, plain)
		}
		if low < 1 {
			below++
		}
		if w := no.Verdict("taper-torque-ahead").Word; v.Word != w {
			t.Errorf("%s: %s; without a key %s", torque, v.Sentence, w)
		}
	}
	if below < 1 {
		t.Error("no range goes on below 1")
	}
}

// What is usual of others is no reading of this boat: a limit on an input that
// nobody read is not measured, whatever is usual of it. Of every limit that stands
// on an input with a usual value, and on one boat by its words.
func TestNothingUsualIsJudgedAsARead(t *testing.T) {
	held := 0
	for _, l := range rules.Standard().AllLimits().All() {
		doc, err := contract.OpenCalculation(l.Calculation)
		if err != nil {
			t.Fatal(err)
		}
		p := doc.Input.Child(l.On)
		if p == nil || p.Typical == "" || doc.Result.Child(l.On) != nil {
			continue
		}
		if strings.HasPrefix(l.ID, "dial-sag-") { // judged where it is odd, which the usual one is not: TestABarSagThatNoBarHas
			continue
		}
		held++
		if l.ID != "taper-contact" {
			t.Errorf("%s stands on a usual value: add an input to this test", l.ID)
		}
	}
	if held != 1 {
		t.Errorf("%d limits", held)
	}
	input := strings.NewReplacer("STANDARD", "iso-4566", `, "smallEndDiameter": "SMALL"`, "", `"contactShare": "80 %", `, "").Replace(measuredTaper)
	v := verdictsOf(testboat.Run(t, "propeller-taper", input, marinecalc.Options{}))
	if c := v["taper-contact"]; c.Word != sheet.NotMeasured || c.SI != nil || !strings.Contains(c.Sentence, "Marking blue") {
		t.Errorf("%s", c.Sentence)
	}
	if c := v["taper-hub-yields"]; c.Word == sheet.NotMeasured { // what follows from it holds over its bracket, or says where it turns
		t.Errorf("%s", c.Sentence)
	}
	v = verdictsOf(testboat.Run(t, "propeller-taper", strings.Replace(input, `"nutTorque"`, `"contactShare": "80 %", "nutTorque"`, 1), marinecalc.Options{}))
	if c := v["taper-contact"]; c.Word.Plain() != sheet.Within && c.Word.Plain() != sheet.CannotTell || c.SI == nil {
		t.Errorf("%s", c.Sentence)
	}
}
