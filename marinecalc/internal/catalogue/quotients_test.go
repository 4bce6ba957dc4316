package catalogue_test

import (
	"encoding/json"
	"errors"
	"math"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
)

// A result that is called a quotient is one, of the input it is for, and the
// sentence of its limit tells the whole too: 0.002 of 100 mm is 0.2 mm.
func TestQuotientsAreTold(t *testing.T) {
	seen := 0
	for _, id := range []string{"coupling-alignment", "dial-alignment", "mount-moves", "alignment-target"} {
		s := testboat.Run(t, id, testboat.Typed(t, id), marinecalc.Options{})
		text, err := marinecalc.Schema(id)
		var schema struct {
			Defs struct {
				Result struct {
					Properties map[string]struct{ QuotientOf []string }
				}
			} `json:"$defs"`
		}
		if err := errors.Join(err, json.Unmarshal(text, &schema)); err != nil {
			t.Fatal(err)
		}
		for name, p := range schema.Defs.Result.Properties {
			if p.QuotientOf == nil {
				continue
			}
			quotient, whole, of := s.Result(name), s.Result(p.QuotientOf[0]), s.Input(p.QuotientOf[1])
			if quotient == nil || whole == nil || of == nil || quotient.SI == nil || whole.SI == nil {
				continue // as run-out where the shaft was not turned
			}
			seen++
			if got := *quotient.SI * *of.SI; !(math.Abs(got-*whole.SI) <= 1e-9+1e-6*math.Abs(got)) {
				t.Errorf("%s %s: %g of %g is %g, not %g", id, name, *quotient.SI, *of.SI, got, *whole.SI)
			}
			said := "(here "
			if len(p.QuotientOf) > 2 && s.Result(p.QuotientOf[2]).Text != whole.Text {
				said = "(" + s.Result(p.QuotientOf[2]).Text + " as read, at worst " // the reading stands first
			}
			for _, v := range s.Verdicts {
				if v.On == name && v.Value != "" && v.BoundSI != nil && !strings.Contains(v.Sentence, said+whole.Text+", and at most ") {
					t.Errorf("%s %s: %s", id, v.Limit, v.Sentence)
				}
			}
		}
	}
	if seen < 7 {
		t.Errorf("only %d quotients", seen)
	}
}
