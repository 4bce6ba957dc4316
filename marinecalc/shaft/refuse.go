package shaft

import (
	"fmt"
	"math"

	"example.org/driveline/marinecalc/problem"
)

// above asks for a finite number above zero.
func above(faults *problem.List, where, name string, v float64) {
	if !(v > 0) || math.IsInf(v, 1) {
		faults.Add(where, "the "+name+" is missing, negative or not a number", "above 0", "")
	}
}

// notNegative asks for a finite number of zero or more.
func notNegative(faults *problem.List, where, name string, v float64) {
	if !(v >= 0) || math.IsInf(v, 1) {
		faults.Add(where, "the "+name+" is negative or not a number", "0 for not given, or above 0", "")
	}
}

// boreFits asks for a bore smaller than the shaft.
func boreFits(faults *problem.List, where string, bore, diameter float64) {
	notNegative(faults, where, "bore", bore)
	if bore > 0 && bore >= diameter {
		faults.Add(where, fmt.Sprintf("a bore of %s leaves nothing of a shaft of %s", mm(bore), mm(diameter)), "less than "+mm(diameter), "0 for a solid shaft")
	}
}

// mm writes a length for a message.
func mm(v float64) string { return fmt.Sprintf("%.4g mm", 1000*v) }
