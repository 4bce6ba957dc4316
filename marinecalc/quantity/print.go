// Values printed for people.
package quantity

import (
	"cmp"
	"math"
	"strconv"
	"strings"
)

// digits is how many significant digits are printed.
const digits = 4

// dust is the number below which what is printed is what rounding left of
// nothing. Units are chosen so that real values lie far above it.
const dust = 1e-9

// unknown stands for a value that is not finite.
const unknown = "not known"

// Shown is how values of a kind are printed: in which units. See [Kind.In].
type Shown struct {
	kind       *Kind
	metric, us printed
}

// printed is a unit under the name that it is printed with.
type printed struct {
	*unit
	name string
}

// In readies printing in the preferred units, named by metric and us; "" or a
// name the kind has not means its usual ones. Money needs its currency code as
// preferred unit.
func (k *Kind) In(metric, us string) Shown {
	if !k.defined() {
		return Shown{}
	}
	return Shown{kind: k, metric: k.preferred(metric, k.metric), us: k.preferred(us, k.us)}
}

// Print gives an SI value in the units of a system: [Shown.Print] of [Kind.In].
func (k *Kind) Print(si float64, s System, metric, us string) string {
	return k.In(metric, us).Print(si, s)
}

// Print gives an SI value in the units of a system, to four significant
// digits: "11.11 mm", and for [Both] "11.11 mm (7/16 in)". Times and lengths
// that make an odd number of the preferred unit are printed in one of their
// own size: 0.07 min as 4.2 s, 4000 days as years, 0.0005 mm as µm; hours of
// running stay hours. Inches that are a binary fraction down to 1/64 are
// printed as one.
func (v Shown) Print(si float64, s System) string { return v.PrintTo(si, 0, s) }

// PrintTo prints as [Shown.Print] does, and gives a value known to ± half no
// more digits than two of half: 75.3 ± 26 as 75.
func (v Shown) PrintTo(si, half float64, s System) string {
	var buf [96]byte
	return string(v.AppendTo(buf[:0], si, half, s))
}

// AppendTo appends what [Shown.PrintTo] prints to dst.
func (v Shown) AppendTo(dst []byte, si, half float64, s System) []byte {
	return v.append(dst, si, half, 0, s)
}

// PrintFigures is [Shown.Print] to so many significant digits at most, and
// without fractions of an inch.
func (v Shown) PrintFigures(si float64, figures int, s System) string {
	var buf [96]byte
	return string(v.append(buf[:0], si, 0, figures, s))
}

// AppendFigures appends what [Shown.Print] prints to dst, to so many significant
// digits, and without fractions of an inch.
func (v Shown) AppendFigures(dst []byte, si float64, figures int, s System) []byte {
	return v.append(dst, si, 0, figures, s)
}

// PrintConverted prints a figure that was written in another unit, as it is said in
// this one: to two digits below ten and to three from there on, no finer than any
// gauge on a boat reads, and without fractions of an inch. 0.003 in is 0.076 mm,
// and 0.01 mm is 0.0004 in.
func (v Shown) PrintConverted(si float64, s System) string {
	var buf [96]byte
	return string(v.append(buf[:0], si, 0, converted, s))
}

// converted stands for the digits of a figure that was converted.
const converted = -1

// ofConverted is how many digits it has.
func (u *unit) ofConverted(x float64) int {
	x = math.Abs(x)
	n := 2
	if x >= 10 {
		n = 3
	}
	if u.least > 0 && x > 0 {
		n = min(n, int(math.Floor(math.Log10(x)))-decade(u.least)+2)
	}
	return max(n, 1)
}

// sizeOf is by what a value's unit is chosen: nothing to ± 0.04 mm, with what
// dust a difference leaves of it, stands in millimetres and not in micrometres.
func sizeOf(si, half float64) float64 {
	if si != 0 && math.Abs(si) < 0.1*half && !math.IsInf(half, 0) {
		return half
	}
	return si
}

// append writes a value in the units of a system: to so many figures, or with
// 0 figures as one known to ± half.
func (v Shown) append(dst []byte, si, half float64, figures int, s System) []byte {
	switch {
	case math.IsNaN(si) || math.IsInf(si, 0):
		return append(dst, unknown...)
	case v.kind == nil:
		return appendSignificant(dst, si, cmp.Or(max(figures, 0), digits))
	case s == US:
		return appendTo(dst, si, half, figures, v.kind.sized(sizeOf(si, half), v.us))
	}
	m := v.kind.sized(sizeOf(si, half), v.metric)
	dst = appendTo(dst, si, half, figures, m)
	if s == Both {
		if u := v.kind.sized(sizeOf(si, half), v.us); m.name != u.name {
			dst = append(dst, " ("...)
			dst = appendTo(dst, si, half, figures, u)
			dst = append(dst, ')')
		}
	}
	return dst
}

// appendTo writes a value to so many figures, or with 0 figures as one known to
// ± half, 0 for all its digits.
func appendTo(dst []byte, si, half float64, figures int, u printed) []byte {
	if figures == converted {
		figures = u.ofConverted(u.fromSI(si))
	}
	if figures > 0 {
		return appendUnits(appendSignificant(dst, u.fromSI(si), figures), u.name)
	}
	x, off := u.fromSI(si), math.Abs(u.fromSI(si+half)-u.fromSI(si))
	if u.style == currency && off >= 1 && !math.IsInf(off, 0) { // nobody expects cents of a guess
		return appendUnits(appendRounded(dst, x, max(off, 10, threeDigits(x)), amountDigits), u.name)
	}
	if !(off > 0) || math.IsInf(off, 0) || u.style == currency || u.style == clock {
		return appendQuantity(dst, si, u, true)
	}
	if u.style == workshop {
		if n, ok := sixtyFourths(x); ok && math.Abs(off) < 1.0/64 {
			return appendUnits(appendFraction(dst, n), u.name)
		}
	}
	return appendUnits(appendRounded(dst, x, u.finest(off), digits), u.name)
}

// threeDigits is the accuracy that leaves an amount three digits: those held against
// one another, as the ways out of a repair are, are then printed alike.
func threeDigits(x float64) float64 {
	if x == 0 {
		return 0
	}
	return math.Pow10(decade(math.Abs(x)) - 1)
}

// amountDigits is how many digits an amount of money has at most where it is
// rounded.
const amountDigits = 15

// finest is the accuracy to whose second digit a unit is printed at the most, as no
// gauge on a boat reads finer: thou to a tenth, millimetres to a thousandth, inches to
// a ten-thousandth; but where an accuracy of less than half of that would leave no
// range, to the first digit of that accuracy.
func (u *unit) finest(half float64) float64 {
	if half*(1+1e-9) >= u.least/20 {
		return max(half, u.least)
	}
	return 10 * half
}

// appendRounded writes x to the second digit of half, and to no more than most
// digits; to those where half is nothing.
func appendRounded(dst []byte, x, half float64, most int) []byte {
	if !(half > 0) || x == 0 {
		return appendSignificant(dst, x, most)
	}
	place := decade(half) - 1
	if math.Abs(x) < 0.5*math.Pow10(place) {
		return append(dst, '0')
	}
	if math.Abs(x) < 1e-4 && half >= 1e-5 { // beside a range that is written so
		return strconv.AppendFloat(dst, x, 'f', -place, 64)
	}
	n := int(math.Floor(math.Log10(math.Abs(x)))) - place + 1
	if n < 1 && place < 0 { // rounded up to that decimal, as the ends of its range are
		return appendSignificant(dst, math.Copysign(math.Pow10(place), x), 1)
	}
	return appendSignificant(dst, x, min(max(n, 1), most))
}

// decade is the place of the first digit of an accuracy: 0 of 3, -2 of 0.01. One that
// lacks a power of ten by the last bits of a difference is that power, so that no
// platform prints a digit more than another.
func decade(accuracy float64) int { return int(math.Floor(math.Log10(accuracy * (1 + 1e-9)))) }

// Format gives an SI value in the named unit as a decimal number of four
// significant digits, without exponent from 1e-4 up to 1e7. Thou are given to
// a tenth, temperatures to a hundredth, money to two decimals. A unit the kind
// has not is replaced by the usual metric one.
func (k *Kind) Format(si float64, unit string) string {
	if !k.defined() {
		return bare(si)
	}
	if math.IsNaN(si) || math.IsInf(si, 0) {
		return unknown
	}
	var buf [64]byte
	return string(appendQuantity(buf[:0], si, k.preferred(unit, k.metric), false))
}

// sized gives the unit in which a value of that SI size is printed where that
// unit is asked for: itself, or the one that its steps lead to. Nothing, and
// what is not finite, stays in it.
func (k *Kind) sized(si float64, u printed) printed {
	if si == 0 || math.IsNaN(si) || math.IsInf(si, 0) {
		return u
	}
	for {
		x, name := math.Abs(u.fromSI(si)), ""
		switch {
		case u.smaller.unit != "" && x < u.smaller.at:
			name = u.smaller.unit
		case u.larger.unit != "" && x >= u.larger.at:
			name = u.larger.unit
		default:
			return u
		}
		u = printed{k.spellings[name], name}
	}
}

// preferred gives the named unit, or else the usual one.
func (k *Kind) preferred(name, usual string) printed {
	if k.isMoney() {
		return printed{&moneyUnit, name}
	}
	if name != "" {
		if u, ok := k.find(name); ok {
			return printed{u, u.name}
		}
	}
	return printed{k.spellings[usual], usual}
}

func appendQuantity(dst []byte, si float64, u printed, fractions bool) []byte {
	dst = appendValue(dst, u.fromSI(si), u.style, fractions)
	return appendUnits(dst, u.name)
}

// appendUnit writes a unit after its number; the degree of arc alone stands
// close (SI Brochure, 5.4.3).
func appendUnit(dst []byte, name string) []byte {
	switch name {
	case "":
		return dst
	case "°":
	default:
		dst = append(dst, ' ')
	}
	return append(dst, name...)
}

// appendUnits writes a unit after its number; one that is a word in the plural
// that goes with the number.
func appendUnits(dst []byte, name string) []byte {
	n := len(dst)
	one := n > 0 && dst[n-1] == '1' && (n == 1 || dst[n-2] == '(' || dst[n-2] == ' ')
	if one && strings.HasPrefix(name, "drips/") {
		return append(appendUnit(dst, "drip"), name[len("drips"):]...)
	}
	dst = appendUnit(dst, name)
	if !one && (name == "day" || name == "week" || name == "month" || name == "year") {
		dst = append(dst, 's')
	}
	return dst
}

func appendValue(dst []byte, x float64, how style, fractions bool) []byte {
	switch how {
	case workshop:
		if n, ok := sixtyFourths(x); ok && fractions {
			return appendFraction(dst, n)
		}
	case coarse:
		return appendSignificant(dst, x, tenths(x))
	case degrees:
		x = math.Round(x*100) / 100
	case clock:
		if x = math.Round(x*100) / 100; x < 1 {
			x += 12
		}
	case currency:
		return appendMoney(dst, x)
	}
	return appendSignificant(dst, x, digits)
}

// tenths gives the significant digits that show x to a tenth, at least 2.
func tenths(x float64) int {
	switch x = math.Abs(x); {
	case x < 10:
		return 2
	case x < 100:
		return 3
	}
	return digits
}

// sixtyFourths tells whether x is a number of 64ths but not whole, within 1e-9
// of its size, and gives that number.
func sixtyFourths(x float64) (int, bool) {
	y := x * 64
	if math.Abs(y) > 1e6 {
		return 0, false
	}
	n := math.Round(y)
	return int(n), int(n)%64 != 0 && math.Abs(y-n) <= 1e-9*math.Abs(y)
}

// appendFraction writes n 64ths in lowest terms: "7/16", "-1-11/16".
func appendFraction(dst []byte, n int) []byte {
	if n < 0 {
		dst = append(dst, '-')
		n = -n
	}
	if n >= 64 {
		dst = strconv.AppendInt(dst, int64(n/64), 10)
		dst = append(dst, '-')
	}
	top, bottom := n%64, 64
	for top%2 == 0 {
		top, bottom = top/2, bottom/2
	}
	dst = strconv.AppendInt(dst, int64(top), 10)
	dst = append(dst, '/')
	return strconv.AppendInt(dst, int64(bottom), 10)
}

// appendMoney writes an amount to the hundredth, whole amounts without decimals.
func appendMoney(dst []byte, x float64) []byte {
	if math.Abs(x) >= 1e15 {
		return appendSignificant(dst, x, digits)
	}
	x = math.Round(x*100)/100 + 0 // + 0: no minus zero
	if x == math.Trunc(x) {
		return strconv.AppendFloat(dst, x, 'f', 0, 64)
	}
	return strconv.AppendFloat(dst, x, 'f', 2, 64)
}
