package calc

import (
	"strings"

	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/rules"
)

// Gauges is the table whose rows are instruments.
const Gauges = "gauges"

// ReadsKind tells whether a gauge reads that kind of quantity.
func ReadsKind(gauge rules.Row, kind *quantity.Kind) bool {
	return strings.Contains(gauge.Values.Of("reads").Text, strings.ReplaceAll(kind.Name, "-", " "))
}
