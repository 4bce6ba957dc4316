// Text that reads back as the same value.

package quantity

import (
	"math"
	"strconv"
)

// Exact gives the shortest text that [Kind.Parse] reads back as the same SI
// value, to one unit in the last place (temperatures: to 1e-12 of their value).
// The unit is kept as named; one the kind has not is replaced by the coherent
// SI unit. Clock positions come back within one round. Money needs its
// currency code as unit. A value that is not finite gives "".
func (k *Kind) Exact(si float64, unit string) string {
	if !k.defined() {
		return bare(si)
	}
	if math.IsNaN(si) || math.IsInf(si, 0) {
		return ""
	}
	u, ok := k.find(unit)
	if !ok {
		u, unit = k.fallback()
	}
	var buf [96]byte
	out := strconv.AppendFloat(buf[:0], u.closest(si), 'g', -1, 64)
	return string(appendUnit(out, unit))
}

func (k *Kind) fallback() (*unit, string) {
	if k.isMoney() {
		return &moneyUnit, ""
	}
	return &k.units[0], k.units[0].name
}

// closest gives the number of units, of the fewest digits, that converts to si,
// or else the one that comes nearest.
func (u *unit) closest(si float64) float64 {
	x := u.fromSI(si) + 0 // + 0: no minus zero
	if u.style == clock {
		si = u.toSI(x)
	}
	best, miss := x, math.Inf(1)
	try := func(y float64) bool {
		if d := math.Abs(u.toSI(y) - si); d < miss {
			best, miss = y, d
		}
		return miss == 0
	}
	start := 15
	if u.shift != 0 {
		start = 12 // the shift leaves noise in the last digits
	}
	for n := start; n <= 16; n++ {
		var buf [32]byte
		y, _ := strconv.ParseFloat(string(strconv.AppendFloat(buf[:0], x, 'e', n-1, 64)), 64)
		if try(y) {
			return best
		}
	}
	if !try(x) && !try(math.Nextafter(x, math.Inf(1))) {
		try(math.Nextafter(x, math.Inf(-1)))
	}
	return best
}
