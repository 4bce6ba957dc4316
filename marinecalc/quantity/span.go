// Ranges printed with one unit.

package quantity

import "math"

// spanDigits is how many significant digits the ends of a range are given.
const spanDigits = 3

// PrintSpan gives a range in the units of a system, the unit written once:
// "45.2 to 75.4 N·m". Units are chosen as in [Shown.Print], by the larger end;
// inches are always decimals here.
func (v Shown) PrintSpan(low, high float64, s System) string {
	if v.kind == nil {
		return bare(low) + " to " + bare(high)
	}
	var buf [128]byte
	out := buf[:0]
	size := max(math.Abs(low), math.Abs(high))
	if math.IsNaN(low+high) || math.IsInf(low+high, 0) {
		return unknown
	}
	if s == US {
		return string(appendSpan(out, low, high, v.kind.sized(size, v.us)))
	}
	m := v.kind.sized(size, v.metric)
	out = appendSpan(out, low, high, m)
	if s == Both {
		if u := v.kind.sized(size, v.us); m.name != u.name {
			out = append(out, " ("...)
			out = appendSpan(out, low, high, u)
			out = append(out, ')')
		}
	}
	return string(out)
}

func appendSpan(dst []byte, low, high float64, u printed) []byte {
	dst = appendEnd(dst, low, high, u.unit)
	dst = append(dst, " to "...)
	dst = appendEnd(dst, high, low, u.unit)
	return appendUnit(dst, u.name)
}

// appendEnd writes one end of a range. An end that is small beside the other
// gets no more decimals than the range has use for.
func appendEnd(dst []byte, si, other float64, u *unit) []byte {
	x, y := u.fromSI(si), u.fromSI(other)
	switch u.style {
	case clock, currency, degrees:
		return appendValue(dst, x, u.style, false)
	}
	if largest := math.Max(math.Abs(x), math.Abs(y)); largest > 0 && math.Abs(x) < 0.1*largest {
		place := math.Pow(10, math.Floor(math.Log10(largest))-spanDigits+1)
		x = math.Round(x/place)*place + 0 // + 0: no minus zero
	}
	return appendSignificant(dst, x, spanDigits)
}
