// Lists of stock sizes, and bare numbers.

package stock

import (
	"math"
	"strings"

	"example.org/driveline/marinecalc/quantity"
)

// List is sizes from small to large with commas between them, each with its
// unit: mm or in, whole, decimal or fraction. A part of a list is a list.
type List string

// Cut takes the first size off a list: the size (NaN when it cannot be read),
// its words, and what is left. It does not allocate.
func (l List) Cut() (size quantity.Length, words string, rest List) {
	s := string(l)
	from := skip(s, 0)
	v, i := amount(s, from)
	i = skip(s, i)
	unit, to := math.NaN(), i
	if i+1 < len(s) {
		switch s[i : i+2] {
		case "mm":
			unit, to = 0.001, i+2
		case "in":
			unit, to = 0.0254, i+2
		}
	}
	i = skip(s, to)
	switch {
	case i == len(s):
		return quantity.Length(v * unit), s[from:to], ""
	case s[i] == ',':
		return quantity.Length(v * unit), s[from:to], List(s[skip(s, i+1):])
	}
	bad, after, _ := strings.Cut(s, ",")
	return quantity.Length(math.NaN()), strings.TrimSpace(bad), List(after[skip(after, 0):])
}

// Fault says what is wrong with a list, or "".
func (l List) Fault() string {
	last := quantity.Length(0)
	for rest := l; rest != ""; {
		var size quantity.Length
		var words string
		size, words, rest = rest.Cut()
		switch {
		case math.IsNaN(float64(size)):
			return "\"" + words + "\" is no size"
		case !(size > last):
			return "the sizes do not rise at \"" + words + "\""
		}
		last = size
	}
	return ""
}

// skip goes past spaces.
func skip(s string, i int) int {
	for i < len(s) && s[i] == ' ' {
		i++
	}
	return i
}

// Amount reads a bare number as people write it, "12", "12.5", "3/4" or
// "1-3/4"; NaN when it is none.
func Amount(words string) float64 {
	if v, end := amount(words, 0); end == len(words) {
		return v
	}
	return math.NaN()
}

// amount reads "12", "12.5", "3/4" or "1-3/4" from i on and tells where it
// ends; the amount is NaN when it is none.
func amount(s string, i int) (v float64, end int) {
	whole, i := digits(s, i)
	if i == len(s) {
		return whole, i
	}
	switch s[i] {
	case '.':
		decimals, j := digits(s, i+1)
		return whole + decimals/math.Pow10(j-i-1), j
	case '/':
		return proper(s, whole, i)
	case '-':
		above, j := digits(s, i+1)
		if j < len(s) && s[j] == '/' {
			part, k := proper(s, above, j)
			return whole + part, k
		}
		return math.NaN(), j
	}
	return whole, i
}

// proper reads what stands below the stroke at i of a fraction below 1.
func proper(s string, above float64, i int) (v float64, end int) {
	below, j := digits(s, i+1)
	if above < below {
		return above / below, j
	}
	return math.NaN(), j
}

// digits reads one to six digits; anything else is NaN.
func digits(s string, i int) (v float64, end int) {
	n, from := 0, i
	for ; i < len(s) && s[i] >= '0' && s[i] <= '9' && i-from < 7; i++ {
		n = 10*n + int(s[i]-'0')
	}
	if i == from || i-from > 6 {
		return math.NaN(), i
	}
	return float64(n), i
}
