// Checks and words that the shaft calculations share.

package shaft

import (
	"fmt"

	"example.org/driveline/marinecalc/problem"
)

// boreFits asks for a bore smaller than the shaft.
func boreFits(faults *problem.List, where string, bore, diameter float64) {
	faults.NotNegative(where, "bore", bore)
	if bore > 0 && bore >= diameter {
		faults.Add(where, fmt.Sprintf("a bore of %s leaves nothing of a shaft of %s", problem.Millimetres(bore), problem.Millimetres(diameter)), "less than "+problem.Millimetres(diameter), "0 for a solid shaft")
	}
}
