// Ranges printed for people.

package quantity

import (
	"bytes"
	"math"
	"strconv"
)

// spanDigits is how many significant digits the ends of a range are given at
// most.
const spanDigits = 4

// PrintSpan gives a range in the units of a system, the unit written once:
// "45.2 to 75.4 N·m". Units are chosen as in [Shown.Print], by the larger end;
// inches are always decimals here.
func (v Shown) PrintSpan(low, high float64, s System) string {
	return v.PrintSpanOf(max(math.Abs(low), math.Abs(high)), low, high, s)
}

// PrintSpanOf gives the range of a value, in the unit in which the value
// itself is printed; that of nothing as [Shown.PrintSpan] does.
func (v Shown) PrintSpanOf(size, low, high float64, s System) string {
	if v.kind == nil {
		return bare(low) + " to " + bare(high)
	}
	var buf [128]byte
	return string(v.AppendSpanOf(buf[:0], size, low, high, s))
}

// AppendSpanOf appends what [Shown.PrintSpanOf] prints to dst.
func (v Shown) AppendSpanOf(dst []byte, size, low, high float64, s System) []byte {
	if v.kind == nil {
		return append(dst, v.PrintSpanOf(size, low, high, s)...)
	}
	if size == 0 {
		size = max(math.Abs(low), math.Abs(high))
	}
	size = sizeOf(size, math.Abs(high-low)/2)
	if math.IsNaN(low+high) || math.IsInf(low+high, 0) {
		return append(dst, unknown...)
	}
	if s == US {
		return appendSpan(dst, low, high, v.kind.sized(size, v.us))
	}
	m := v.kind.sized(size, v.metric)
	dst = appendSpan(dst, low, high, m)
	if s == Both {
		if u := v.kind.sized(size, v.us); m.name != u.name {
			dst = append(dst, " ("...)
			dst = appendSpan(dst, low, high, u)
			dst = append(dst, ')')
		}
	}
	return dst
}

func appendSpan(dst []byte, low, high float64, u printed) []byte {
	var buf [2][32]byte
	from, to := appendEnd(buf[0][:0], low, high, u.unit), appendEnd(buf[1][:0], high, low, u.unit)
	if low < high && bytes.Equal(from, to) {
		from, to = appendApart(from, to, low, high, u.unit)
	}
	for zeroAtEnd(from) && zeroAtEnd(to) && len(from)+len(to) > 2 {
		from, to = shorter(from), shorter(to)
	}
	dst = append(append(append(dst, from...), " to "...), to...)
	return appendUnits(dst, u.name)
}

// finestPlace is the last decimal that a range is written to: what differs
// further behind the point is left as it is, as float dust is.
const finestPlace = -6

// appendApart writes the ends of a range that come out alike, which would say
// that there is none, anew: to the first digit of half its width.
func appendApart(from, to []byte, low, high float64, u *unit) ([]byte, []byte) {
	if u.style == clock || u.style == currency {
		return from, to
	}
	x, y := u.fromSI(low), u.fromSI(high)
	place := decade(math.Abs(y-x) / 2)
	if place < finestPlace || place > 0 {
		return from, to
	}
	return strconv.AppendFloat(from[:0], x, 'f', -place, 64), strconv.AppendFloat(to[:0], y, 'f', -place, 64)
}

// zeroAtEnd tells whether a number is 0 or ends in a zero behind the point.
func zeroAtEnd(number []byte) bool {
	return len(number) == 1 && number[0] == '0' || bytes.IndexByte(number, '.') >= 0 && number[len(number)-1] == '0'
}

// shorter takes that zero off; 0 stays.
func shorter(number []byte) []byte {
	if len(number) == 1 {
		return number
	}
	return bytes.TrimSuffix(number[:len(number)-1], []byte("."))
}

// appendEnd writes one end of a range, with two digits of half its width: both
// ends to the same decimal, 101.0 to 102.1.
func appendEnd(dst []byte, si, other float64, u *unit) []byte {
	x, y := u.fromSI(si), u.fromSI(other)
	switch half := math.Abs(x-y) / 2; u.style {
	case clock:
		return appendValue(dst, x, u.style, false)
	case currency:
		if half < 1 || math.IsInf(half, 0) {
			return appendValue(dst, x, u.style, false)
		}
		return appendRounded(dst, x, max(half, 10), amountDigits)
	default:
		if half = u.finest(half); u.style == degrees {
			half = max(half, 0.1)
		}
		place, size := decade(half)-1, math.Log10(max(math.Abs(x), math.Abs(y)))
		if place = max(place, int(math.Floor(size))+1-spanDigits); half > 0 && place < 0 && size > -4 && math.Abs(x) >= 0.5*math.Pow10(place) {
			return strconv.AppendFloat(dst, x, 'f', -place, 64)
		}
		return appendRounded(dst, x, half, spanDigits)
	}
}
