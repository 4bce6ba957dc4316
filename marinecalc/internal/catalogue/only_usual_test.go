package catalogue_test

import (
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/rules"
	"example.org/driveline/marinecalc/sheet"
)

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
