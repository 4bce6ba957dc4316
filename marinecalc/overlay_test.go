package marinecalc_test

import (
	"encoding/json"
	"fmt"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
)

const misspelt = `{"title": "Yard",
 "limits": [{"id": "ours", "calculation": "gland-heat", "on": "mesuredRise", "title": "Ours", "max": "15 K",
  "source": {"document": "Yard sheet 7"}, "basis": "maker"}]}`

// A name that leads nowhere is refused by every way in, with its line.
func TestMisspeltRulesAreRefusedEverywhere(t *testing.T) {
	const says = `did you mean "measuredRise"?`
	told := func(way string, list marinecalc.Problems, where string) {
		t.Helper()
		if len(list) != 1 || list[0].Where != where || list[0].Line != 2 || !strings.Contains(list[0].String(), says) {
			t.Errorf("%s: %v", way, list)
		}
	}
	_, err := marinecalc.Overlay([]byte(`{}`), []byte(misspelt))
	told("Overlay", marinecalc.ProblemsOf(err), "/1/limits/0/on")
	_, err = marinecalc.New(marinecalc.WithOverlays([]byte(misspelt)))
	told("WithOverlays", marinecalc.ProblemsOf(err), "/0/limits/0/on")
	report := marinecalc.CheckRules([]byte(misspelt), "yard.json")
	told("CheckRules", report.Problems, "/limits/0/on")
	if !strings.HasPrefix(report.Problems.String(), "yard.json:2: ") {
		t.Error(report.Problems)
	}
	var r struct {
		OK                 bool
		Problems, Warnings marinecalc.Problems
		Rules              *marinecalc.RulesReport
	}
	ask := func(request string) {
		t.Helper()
		r.OK, r.Problems, r.Warnings, r.Rules = false, nil, nil, nil
		if err := json.Unmarshal(marinecalc.Call([]byte(request)), &r); err != nil {
			t.Fatal(err)
		}
	}
	ask(fmt.Sprintf(`{"ask":"run","calculation":"gland-heat","overlays":[%s]}`, misspelt))
	told("an overlay of a request", r.Problems, "/overlays/0/limits/0/on")
	text, err := json.Marshal(misspelt)
	if err != nil {
		t.Fatal(err)
	}
	ask(fmt.Sprintf(`{"ask":"rules","file":"yard.json","text":%s}`, text))
	if !r.OK || r.Rules == nil {
		t.Fatalf("%+v", r)
	}
	told("the ask rules", r.Rules.Problems, "/limits/0/on")

	ask(fmt.Sprintf(`{"ask":"blank","calculation":"gland-heat","overlays":[%s]}`, strings.NewReplacer("mesured", "measured", `"15 K"`, "15").Replace(misspelt)))
	if !r.OK || len(r.Warnings) != 1 || r.Warnings[0].Where != "/overlays/0/limits/0/max" || r.Warnings[0].Line != 2 {
		t.Errorf("%+v", r)
	}
}
