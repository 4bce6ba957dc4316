package diagnosis_test

import (
	"encoding/json"
	"math"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/diagnosis"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/rules"
)

// The sheet's tables agree with the engine: probabilities fall and sum to at
// most 1, the second causes' weights add up to the odds of the first two.
func TestSheetOfTheFaultFinding(t *testing.T) {
	answers := yes("knock-into-gear", "red-dust", "gone-in-neutral")
	text, err := json.Marshal(map[string]any{"answers": symptomsJSON(answers)})
	if err != nil {
		t.Fatal(err)
	}
	s, err := marinecalc.Run(diagnosis.FaultFinding, text, marinecalc.Options{})
	if err != nil {
		t.Fatal(err)
	}
	total, last := 0.0, 1.0
	for i := 0; s.Cell("ranking", i, "probability") != nil; i++ {
		p := *s.Cell("ranking", i, "probability").SI
		if total += p; p > last {
			t.Errorf("row %d is more probable than the one before", i)
		}
		last = p
	}
	if total > 1.01 || total < 0.8 {
		t.Errorf("the first twelve sum to %v", total)
	}
	// The weights against the second cause and what is known of both beforehand
	// add up to the odds of the first two (Good, weight of evidence).
	prior := func(title string) float64 {
		for _, c := range rules.Standard().Causes().All() {
			if c.Title == title {
				return c.Prior
			}
		}
		return math.NaN()
	}
	first, second := s.Cell("ranking", 0, "name").Text, s.Cell("ranking", 1, "name").Text
	sum := 10 * math.Log10(prior(first)/prior(second))
	for i := 0; s.Cell("weights", i, "second") != nil; i++ {
		sum += *s.Cell("weights", i, "second").SI
	}
	p1, p2 := *s.Cell("ranking", 0, "probability").SI, *s.Cell("ranking", 1, "probability").SI
	// Each weight is rounded to a tenth, each probability to a thousandth.
	if want, off := 10*math.Log10(p1/p2), 0.05*3+10/math.Ln10*0.0005/p2; math.Abs(sum-want) > off {
		t.Errorf("weights add up to %v, the odds are %v decibans", sum, want)
	}
	if len(s.Drawings) != 1 || !strings.Contains(s.Drawings[0].Description, s.Result("leadingCause").Text) {
		t.Errorf("drawings: %+v", s.Drawings)
	} else if what := testboat.WellFormed(s.Drawings[0].SVG); what != "" {
		t.Error(what)
	}
}

func symptomsJSON(answers []diagnosis.Symptom) []map[string]string {
	list := []map[string]string{}
	for _, a := range answers {
		list = append(list, map[string]string{"evidence": a.Evidence, "answer": a.Answer})
	}
	return list
}
