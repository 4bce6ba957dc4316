package picture

import (
	"example.org/driveline/marinecalc/quantity"
)

// brush gives the drawings the unit system and the currency in force.
type Brush struct {
	Units    quantity.System
	Currency string
}

// money prints an amount in the currency of the run.
func (b Brush) Money(amount quantity.Money) string {
	kind, _ := quantity.Lookup("money")
	return kind.Print(float64(amount), b.Units, b.Currency, b.Currency)
}

// single is the unit system for letters in a drawing that have no room for
// two.
func (b Brush) Single() quantity.System {
	if b.Units == quantity.Both {
		return quantity.Metric
	}
	return b.Units
}
