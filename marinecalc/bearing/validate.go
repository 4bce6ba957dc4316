// The check of ranges that both bearings share.

package bearing

import (
	"example.org/driveline/marinecalc/problem"
)

// between asks for a number from low to high, and tells whether it is.
func between(faults *problem.List, where, name string, v, low, high float64, allowed, hint string) bool {
	if !(v >= low && v <= high) {
		faults.Add(where, "the "+name+" is out of range", allowed, hint)
		return false
	}
	return true
}
