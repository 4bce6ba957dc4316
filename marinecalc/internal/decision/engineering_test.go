package decision_test

import (
	"encoding/json"
	"os"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/rules"
	"example.org/driveline/marinecalc/sheet"
)

// choiceOf is the sheet of a boat with these symptoms and this choice.
func choiceOf(t *testing.T, symptoms, choice string) *sheet.Sheet {
	t.Helper()
	b := testboat.Read(t, `{"name": "Test", "lies": "afloat", "symptoms": [`+symptoms+`], "choice": {`+choice+`}}`)
	return testboat.Run(t, "repair-or-replace", `{}`, marinecalc.Options{Boat: b, NoRanges: true})
}

func says(s *sheet.Sheet, result string) string {
	if r := s.Result(result); r != nil {
		return r.Text
	}
	return ""
}

// Without a price the engineering is said, and which figures would decide in
// money; where there is one way, or where it is no matter of money, that.
func TestTheEngineeringNeedsNoPrice(t *testing.T) {
	for _, c := range []struct {
		name, symptoms, choice string
		money                  string
		causes                 []string
	}{
		{"one way", `{"evidence": "damper-seen", "answer": "yes"}, {"evidence": "clatter-at-idle", "answer": "yes"}`, ``,
			"“Change the damper plate” is the one way to cure it", []string{"Damper plate worn, springs loose or broken"}},
		{"two ways", `{"evidence": "shaft-runout", "answer": "yes"}, {"evidence": "after-touching", "answer": "yes"}`, ``,
			"the price of “Change the propeller shaft”, delivered and with all that goes with it; the price of “Have the shaft straightened”; how many seasons", []string{"Shaft bent"}},
		{"one figure lacks", `{"evidence": "shaft-runout", "answer": "yes"}`, `"repairParts": "200 EUR", "seasons": 4`,
			"One figure more weighs it in money: the price of “Change the propeller shaft”", []string{"Shaft bent"}},
		{"no matter of money", `{"evidence": "gland-ease", "answer": "yes"}, {"evidence": "gland-hot", "answer": "yes"}`, ``,
			"Not a matter of money", []string{"Gland too tight"}},
		{"a suspicion", `{"evidence": "clatter-at-idle", "answer": "yes"}, {"evidence": "knock-in-gear", "answer": "yes"}`, ``, "looked at first", nil},
	} {
		s := choiceOf(t, c.symptoms, c.choice)
		if text := says(s, "inMoney"); !strings.Contains(text, c.money) {
			t.Errorf("%s: %q", c.name, text)
		}
		for _, result := range []string{"cheapest", "saving", "repairExpected", "replacingCheaperChance", "breakEvenFails"} {
			if says(s, result) != "" {
				t.Errorf("%s: %s is %s without a price", c.name, result, says(s, result))
			}
		}
		for n, cause := range c.causes {
			for _, column := range []string{"renew", "keep", "when"} {
				if cell := s.Cell("engineering", n, column); cell == nil || cell.Text == "" || s.Cell("engineering", n, "cause").Text != cause {
					t.Errorf("%s: nothing to %s for %s", c.name, column, cause)
				}
			}
		}
		if s.Cell("engineering", len(c.causes), "cause") != nil {
			t.Errorf("%s: more than %v", c.name, c.causes)
		}
	}
	rope := `{"name": "Test", "symptoms": [{"evidence": "rope-seen", "answer": "yes"}]}`
	if got := says(testboat.Run(t, "repair-or-replace", `{}`, marinecalc.Options{Boat: testboat.Read(t, rope), NoRanges: true}), "inMoney"); got != "Nothing is weighed: “Clear the propeller” is the one way to cure it." {
		t.Errorf("rope that was found: %s", got)
	}
	b := testboat.Read(t, `{"name": "Test"}`)
	_, err := marinecalc.Run("repair-or-replace", []byte(`{}`), marinecalc.Options{Boat: b})
	if list := problem.Of(err); len(list) != 1 || list[0].Kind != problem.Missing || list[0].Where != "/repairParts" {
		t.Errorf("nothing is known: %v", err)
	}
}

// Work that cures different troubles is no choice: each is decided by itself.
func TestWorkForDifferentTroublesIsNotCompared(t *testing.T) {
	const prices = `"seasons": 8, "repairParts": "60 EUR", "replaceParts": "290 EUR", `
	for _, c := range []struct {
		repairs, replaces string
		compared          bool
	}{
		{"repack-gland", "replace-stern-bearing", false},
		{"tighten-mounts", "replace-shaft", false},
		{"straighten-shaft", "replace-shaft", true},
		{"tighten-mounts", "replace-mounts", true},
	} {
		s := choiceOf(t, "", prices+`"repairWork": "`+c.repairs+`", "replaceWork": "`+c.replaces+`"`)
		apart := strings.Contains(says(s, "weighs"), "cure different troubles") && strings.Contains(says(s, "weighs"), "each is decided by itself")
		if apart == c.compared || (says(s, "cheapest") != "") != c.compared || (says(s, "saving") != "") != c.compared {
			t.Errorf("%s, %s: %q, %q, %q", c.repairs, c.replaces, says(s, "weighs"), says(s, "cheapest"), says(s, "saving"))
		}
	}
}

// Every cause that can be cured by a new part says what must be new and what
// need not, and no word of it is without the others.
func TestCausesSayWhatMustBeNew(t *testing.T) {
	kinds := map[string]string{}
	for _, r := range rules.Standard().Remedies().All() {
		kinds[r.ID] = r.Kind
	}
	n := 0
	for _, c := range rules.Standard().Causes().All() {
		two := c.Remedies.Len() > 1
		if said := c.Renew != ""; said != (c.Keep != "") || said != (c.When != "") || two && !said {
			t.Errorf("%s: %q, %q, %q", c.ID, c.Renew, c.Keep, c.When)
		}
		if c.Renew != "" {
			n++
		}
	}
	if n < 35 {
		t.Errorf("only %d causes", n)
	}
	// The six whole jobs are decided without a price.
	for _, name := range []string{"bent-shaft-after-grounding", "dry-gland", "failed-damper-plate", "loose-coupling", "two-faults", "worn-output-bearing"} {
		var job struct {
			Boat map[string]any
			Days []struct{ On, Stage string }
		}
		text, err := os.ReadFile(testboat.Root("testdata", "jobs", name+".json"))
		if err != nil {
			t.Fatal(err)
		}
		if err := json.Unmarshal(text, &job); err != nil {
			t.Fatal(err)
		}
		for _, d := range job.Days {
			if d.Stage != "looked" {
				continue
			}
			var until []any
			for _, r := range job.Boat["readings"].([]any) {
				if r.(map[string]any)["date"].(string) <= d.On {
					until = append(until, r)
				}
			}
			job.Boat["readings"] = until
			s := testboat.Run(t, "repair-or-replace", `{}`, marinecalc.Options{Boat: testboat.Read(t, testboat.Text(t, job.Boat)), NoRanges: true})
			if s.Cell("engineering", 0, "renew") == nil || says(s, "inMoney") == "" {
				t.Errorf("%s: no word of the engineering", name)
			}
		}
	}
}
