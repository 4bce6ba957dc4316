package catalogue_test

import (
	"encoding/json"
	"os"
	"slices"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/sheet"
)

// A propeller whose nut is drawn with little holds by its key, or its hub is pulled
// off and it does not hold at all: half of the trials lie at nothing and half at what
// the key bears. What its own sheet says of a shock, the sheet of the line says too.
func TestJointThatHoldsOrHoldsNothingIsHandedOnAsItIs(t *testing.T) {
	for _, torque := range []string{"10 N·m", "15 N·m", "18 N·m", "25 N·m"} {
		for _, name := range []string{"kittiwake", "juniper"} {
			text, err := os.ReadFile(testboat.Root("testdata", "boats", name+".json"))
			if err != nil {
				t.Fatal(err)
			}
			var file map[string]any
			if err := json.Unmarshal(text, &file); err != nil {
				t.Fatal(err)
			}
			file["propeller"].(map[string]any)["nutTorque"] = torque
			boat := testboat.Read(t, testboat.Text(t, file))
			own := testboat.Run(t, "propeller-taper", "{}", marinecalc.Options{Boat: boat})
			line := testboat.Run(t, "line-joints", "{}", marinecalc.Options{Boat: boat})
			if line.Result("weakestShock").Text != "propeller on its taper" {
				t.Errorf("%s, %s: weakest is %s", name, torque, line.Result("weakestShock").Text)
				continue
			}
			a, b := verdictsOf(own)["taper-torque-peak"], verdictsOf(line)["line-shock"]
			if a.Probability == nil || b.Probability == nil { // the brackets decide
				if a.Word == sheet.CannotTell && b.Word != sheet.CannotTell && b.Word != sheet.NotMeasured { // a joint that is not known could be weaker
					t.Errorf("%s, %s: %s; on the line %s", name, torque, a.Sentence, b.Sentence)
				}
				continue
			}
			words := []sheet.Word{a.Word, sheet.CannotTell} // never more than the joint's own sheet
			if off := *a.Probability - *b.Probability; off > 0.02 || off < -0.02 || !slices.Contains(words, b.Word) {
				t.Errorf("%s, %s: %s; on the line %s", name, torque, a.Sentence, b.Sentence)
			}
		}
	}
}
