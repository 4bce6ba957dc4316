package catalogue_test

import (
	"os"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
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
