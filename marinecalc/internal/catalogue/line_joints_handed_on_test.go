package catalogue_test

import (
	"encoding/json"
	"os"
	"slices"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/sheet"
)

// The line is told weak only where the sheet of one of its joints tells that
// joint weak, and told strong only where none of them leaves it open: each
// result carries the whole bracket behind it from sheet to sheet.
func TestTheLineTellsNoMoreThanItsJoints(t *testing.T) {
	pairs := map[string][]string{
		"line-ahead":  {"grip-ahead", "bore-torque-ahead", "taper-torque-ahead"},
		"line-astern": {"grip-astern", "bore-torque-astern", "taper-torque-astern"},
		"line-shock":  {"grip-peak", "bore-torque-peak", "taper-torque-peak"},
	}
	told := 0
	for _, file := range [...]string{"boats/kittiwake", "boats/juniper", "cases/weak-split-clamp", "cases/loose-bolts", "cases/nothing-wrong"} {
		text, err := os.ReadFile(testboat.Root("testdata", file+".json"))
		if err != nil {
			t.Fatal(err)
		}
		if file == "cases/weak-split-clamp" { // 48 N·m of 82: weak by its interval, and not by what friction and clamp factor can be
			text = []byte(strings.Replace(string(text), `"28 kW"`, `"10 kW"`, 1))
		}
		b := testboat.Read(t, string(text))
		words := map[string]string{}
		for _, id := range [...]string{"coupling-grip", "coupling-bore", "propeller-taper", "line-joints"} {
			s, err := marinecalc.Run(id, nil, marinecalc.Options{Boat: b})
			if err != nil {
				continue // what the boat does not allow is told by no one
			}
			for _, v := range s.Verdicts {
				words[v.Limit] = string(v.Word)
			}
		}
		for line, joints := range pairs {
			weak, open := false, ""
			for _, j := range joints {
				weak = weak || words[j] == "beyond"
				if words[j] == "cannot tell" {
					open = j
				}
			}
			switch words[line] {
			case "beyond":
				told++
				if !weak {
					t.Errorf("%s: %s is beyond, and none of its joints is: %v", file, line, words)
				}
			case "within", "near the limit":
				told++
				if open != "" {
					t.Errorf("%s: %s is %s, and %s cannot be told", file, line, words[line], open)
				}
			}
		}
	}
	if told < 3 {
		t.Errorf("only %d verdicts on a line were told", told)
	}
}

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
