package bearing

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

// optional asks for a finite number of zero (not given) or more and tells
// whether it is one.
func optional(faults *problem.List, where, name string, v float64) bool {
	if v >= 0 && !math.IsInf(v, 1) {
		return true
	}
	faults.Add(where, "the "+name+" is negative or not a number", "0 for not given, or above 0", "")
	return false
}

// between asks for a number from low to high.
func between(faults *problem.List, where, name string, v, low, high float64, allowed, hint string) {
	if !(v >= low && v <= high) {
		faults.Add(where, fmt.Sprintf("the %s is out of range (%.4g in SI)", name, v), allowed, hint)
	}
}

// orNaN turns "not given" into NaN, which then marks all that rests on it.
func orNaN(v float64) float64 {
	if v == 0 {
		return math.NaN()
	}
	return v
}
