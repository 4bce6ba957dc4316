// Decimal figures of a number.

package quantity

import (
	"math"
	"strconv"
)

// appendSignificant writes x rounded to n significant digits (an exact tie to
// the even digit, as ISO 80000-1 rule A), without the zeros after the last decimal, and with an exponent only below 1e-4 and from
// 1e7.
func appendSignificant(dst []byte, x float64, n int) []byte {
	if math.Abs(x) < dust {
		return append(dst, '0')
	}
	if x < 0 {
		dst, x = append(dst, '-'), -x
	}
	whole, exponent, ok := figures(x, n)
	if !ok {
		return appendTies(dst, x, n)
	}
	var buf [17]byte
	at := len(buf)
	for ; whole > 0; whole /= 10 {
		at--
		buf[at] = byte('0' + whole%10)
	}
	return layOut(dst, withoutZeros(buf[at:]), exponent)
}

// tens are the powers of ten that a float holds exactly.
var tens = func() (list [23]float64) {
	for i := range list {
		list[i] = math.Pow10(i)
	}
	return list
}()

// figures gives the first n digits of x, which is positive, as a whole number,
// and the power of ten of the first. It is three times as quick as strconv, and
// is not ok where the rounding errors on the way could tell, as at a tie.
func figures(x float64, n int) (whole uint64, exponent int, ok bool) {
	if !(x >= dust && x < 1e15) || n > 6 {
		return 0, 0, false
	}
	exponent = (int(math.Float64bits(x)>>52) - 1023) * 77 >> 8 // log10 2 is 77/256 and a little; one too low at most
	if x >= math.Pow10(exponent+1) {
		exponent++
	}
	y := 0.0
	if shift := n - 1 - exponent; shift >= 0 {
		y = x * tens[shift]
	} else {
		y = x / tens[-shift]
	}
	whole = uint64(y)
	switch rest := y - float64(whole); {
	case math.Abs(rest-0.5) < 1e-6:
		return 0, 0, false
	case rest > 0.5:
		whole++
	}
	if float64(whole) == tens[n] { // 9.9996 to four digits
		return whole / 10, exponent + 1, true
	}
	return whole, exponent, true
}

// appendTies is appendSignificant of a positive number, as strconv rounds it.
func appendTies(dst []byte, x float64, n int) []byte {
	var buf [32]byte
	e := strconv.AppendFloat(buf[:0], x, 'e', n-1, 64) // d.ddde±xx
	var figures [17]byte
	count, exponent := 0, 0
	for i, c := range e {
		if c == 'e' {
			for _, d := range e[i+2:] {
				exponent = 10*exponent + int(d-'0')
			}
			if e[i+1] == '-' {
				exponent = -exponent
			}
			break
		}
		if c != '.' {
			figures[count] = c
			count++
		}
	}
	return layOut(dst, withoutZeros(figures[:count]), exponent)
}

// withoutZeros takes the zeros off the end, but for a single one.
func withoutZeros(figures []byte) []byte {
	n := len(figures)
	for n > 1 && figures[n-1] == '0' {
		n--
	}
	return figures[:n]
}

// layOut writes d.ddd·10^exponent, given its figures.
func layOut(dst, figures []byte, exponent int) []byte {
	switch {
	case exponent < -4 || exponent >= 7:
		dst = append(dst, figures[0])
		if len(figures) > 1 {
			dst = append(dst, '.')
			dst = append(dst, figures[1:]...)
		}
		dst = append(dst, 'e')
		return strconv.AppendInt(dst, int64(exponent), 10)
	case exponent < 0:
		dst = append(dst, "0."...)
		for range -exponent - 1 {
			dst = append(dst, '0')
		}
		return append(dst, figures...)
	}
	for i := range max(len(figures), exponent+1) {
		if i == exponent+1 {
			dst = append(dst, '.')
		}
		if i < len(figures) {
			dst = append(dst, figures[i])
		} else {
			dst = append(dst, '0')
		}
	}
	return dst
}
