// Checks of ranges that the fluids share.

package fluid

import (
	"fmt"
	"math"
	"strconv"

	"example.org/driveline/marinecalc/problem"
)

// bound is the allowed range of one field, in SI; orNone lets 0 and NaN pass
// as not given.
type bound struct {
	where, name string
	value       float64
	lo, hi      float64
	allowed     string
	orNone      bool
}

// add names the field when it is out of its range.
func (b *bound) add(bad *problem.List) {
	if b.orNone && (b.value == 0 || math.IsNaN(b.value)) || problem.Within(b.value, b.lo, b.hi) && !math.IsInf(b.value, 0) {
		return
	}
	what := fmt.Sprintf("the %s is out of range", b.name)
	if b.value == 0 || math.IsNaN(b.value) {
		what = fmt.Sprintf("the %s is missing", b.name)
	}
	bad.Add(b.where, what, b.allowed, "")
}

// appendNumber writes a number with three significant digits.
func appendNumber(to []byte, v float64) []byte {
	if v >= 1000 {
		return strconv.AppendFloat(to, v, 'f', 0, 64)
	}
	return strconv.AppendFloat(to, v, 'g', 3, 64)
}
