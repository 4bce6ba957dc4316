package quantity

import (
	"math"
	"testing"

	"example.org/driveline/marinecalc/problem"
)

// FuzzParse: no text makes Parse panic, what it takes is finite and comes back
// from Exact, what it refuses is a whole Problem.
func FuzzParse(f *testing.F) {
	for _, s := range []string{
		"32 mm", "1-11/16 in", "0,05 mm ± 0.02 mm", "45 lbf·ft +/- 5 %", "3 o'clock", "-40 °F", "1e-99 m",
		"75 % ± 5 %", "120 EUR", "0.6 W/(m·K)", "7/16/2", "1½ \"", "2.5:1", "1e100 kip", "", "±", "(((", "5 m^", "\xff",
	} {
		for i := range kinds {
			f.Add(uint8(i), s)
		}
	}
	f.Fuzz(func(t *testing.T, which uint8, text string) {
		k := kinds[int(which)%len(kinds)]
		_, _ = k.ParseAccuracy(text, 1)
		r, err := k.Parse(text)
		if err != nil {
			if p, ok := err.(problem.Problem); !ok || p.What == "" || p.Allowed == "" || p.Hint == "" {
				t.Fatalf("%s %q: %#v", k.Name, text, err)
			}
			return
		}
		if math.IsNaN(r.SI) || math.IsInf(r.SI, 0) || math.IsNaN(r.Accuracy) || math.IsInf(r.Accuracy, 0) || r.Accuracy < 0 {
			t.Fatalf("%s %q: %+v", k.Name, text, r)
		}
		k.Print(r.SI, Both, r.Unit, "")
		exact := k.Exact(r.SI, r.Unit)
		again, err := k.Parse(exact)
		if err != nil {
			t.Fatalf("%s %q: Exact %q: %v", k.Name, text, exact, err)
		}
		if k.Name == "temperature" {
			if math.Abs(again.SI-r.SI) > 1e-12*max(r.SI, 273) {
				t.Fatalf("%s %q: Exact %q = %.17g, not %.17g", k.Name, text, exact, again.SI, r.SI)
			}
		} else if ulps(again.SI, r.SI) > 1 {
			t.Fatalf("%s %q: Exact %q = %.17g, not %.17g", k.Name, text, exact, again.SI, r.SI)
		}
	})
}
