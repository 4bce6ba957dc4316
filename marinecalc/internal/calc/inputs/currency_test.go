package inputs_test

import (
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/problem"
)

// Money keeps to one currency, and the results are in it.
func TestOneCurrency(t *testing.T) {
	b := testboat.Read(t, `{"name": "Test", "prices": {"yardHour": "85 EUR"}}`)
	s := testboat.Run(t, "repair-or-replace", `{"seasons": 5, "repairParts": "100 EUR", "replaceParts": 300, "repairYardTime": "2 h"}`, marinecalc.Options{Boat: b})
	for _, name := range []string{"repairFirstCost", "replaceExpected", "saving"} {
		if r := s.Result(name); !strings.HasSuffix(r.Text, " EUR") || r.Low != nil && !strings.HasSuffix(r.Interval, " EUR") {
			t.Errorf("%s is %q, %v", name, r.Text, r.Spread)
		}
	}
	if c := s.Result("replacingCheaperChance"); c == nil || *c.SI <= 0 || *c.SI >= 1 {
		t.Errorf("the chance is %+v", c)
	}
	if !strings.Contains(s.Drawings[0].SVG, "EUR") || testboat.WellFormed(s.Drawings[0].SVG) != "" {
		t.Error("the drawing has no currency, or is not well formed")
	}
	_, err := marinecalc.Run("repair-or-replace", []byte(`{"seasons": 5, "repairParts": "100 USD", "replaceParts": "300 USD"}`), marinecalc.Options{Boat: b})
	list := problem.Of(err)
	if len(list) != 1 || list[0].Where != "/boat/prices/yardHour" {
		t.Errorf("two currencies: %v", err)
	}
	if s := testboat.Run(t, "repair-or-replace", `{"seasons": 5, "repairParts": "100 EUR", "replaceParts": "300 EUR"}`, marinecalc.Options{NoRanges: true}); s.Result("replacingCheaperChance") != nil {
		t.Error("a chance without trials")
	}
}

// A range whose ends both print as its value does is left out; its numbers
// stay, for what comes after.
func TestNoRangeThatSaysNothing(t *testing.T) {
	for accuracy, want := range map[string]string{"0.1 mm": "", "20 mm": "(-1309 to -1271 mm)"} {
		s := testboat.Run(t, "shaft-withdrawal", `{"task":"coupling-off","roomAft":"110 mm ± `+accuracy+`","socketDepth":"1400 mm ± 0 %","workingClearance":"0 mm"}`, marinecalc.Options{Trials: 512})
		r, v := s.Result("roomSpare"), s.Verdict("withdrawal-room")
		if r.Low == nil || !(*r.Low < *r.High) || (r.Interval == "") != (want == "") {
			t.Errorf("± %s: %+v", accuracy, r.Spread)
		}
		if got := strings.Contains(v.Sentence, r.Text+" ("); got != (want != "") || !strings.Contains(v.Sentence, want) {
			t.Errorf("± %s: %s", accuracy, v.Sentence)
		}
	}
}
