package calc_test

import (
	"testing"

	"example.org/driveline/marinecalc/internal/calc"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/rules"
)

// Each gauge reads some kind of quantity, by an accuracy of that kind, and not
// each reads all.
func TestGaugesReadTheirKinds(t *testing.T) {
	kinds := quantity.Kinds()
	for _, gauge := range rules.Standard().Table(calc.Gauges).Rows.All() {
		reads := 0
		for _, k := range kinds {
			if !calc.ReadsKind(gauge, k) {
				continue
			}
			reads++
			if _, err := k.ParseAccuracy(gauge.Values.Of("accuracy").Text, 1); err != nil {
				t.Errorf("%s reads a %s: %v", gauge.Pick, k.Name, err)
			}
		}
		if reads == 0 || reads == len(kinds) {
			t.Errorf("%s reads %d kinds of %d", gauge.Pick, reads, len(kinds))
		}
	}
}
