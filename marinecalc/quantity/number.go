// Numbers as people write them.
package quantity

import (
	"math"
	"strconv"
	"strings"
	"unicode/utf8"
)

// Numbers other than 0 must lie between these, so that no factor can take
// them out of the range of float64.
const (
	smallest = 1e-100
	largest  = 1e100
)

// scanNumber reads the number a text begins with: a decimal, a fraction, or a
// whole and a fraction ("1-11/16", "1 11/16"), with an optional sign. The rest
// of the text, without leading blanks, is the unit.
func scanNumber(s string) (x float64, rest string, err error) {
	body, negative := cutSign(s)
	token, rest := cutDecimal(body)
	if token == "" {
		return 0, "", refuseNoNumber(s)
	}
	after := trimLeft(rest)
	switch {
	case startsFraction(after):
		x, rest, err = fraction(s, "", token, after[1:])
	case strings.HasPrefix(rest, "-") && len(rest) > 1 && (isDigit(rest[1]) || rest[1] == '/'):
		x, rest, err = mixed(s, token, rest[1:])
	case after != "" && isDigit(after[0]):
		if _, next := cutDecimal(after); !strings.HasPrefix(trimLeft(next), "/") {
			return 0, "", refuseTwoNumbers(s)
		}
		x, rest, err = mixed(s, token, after)
	default:
		x, err = decimal(token)
	}
	if err != nil {
		return 0, "", err
	}
	if negative {
		x = -x
	}
	return x, trimLeft(rest), nil
}

func cutSign(s string) (body string, negative bool) {
	if s != "" && (s[0] == '-' || s[0] == '+') {
		return trimLeft(s[1:]), s[0] == '-'
	}
	return s, false
}

// cutDecimal splits off the digits, marks and exponent a text begins with.
func cutDecimal(s string) (token, rest string) {
	i, digits := 0, 0
	for ; i < len(s) && (isDigit(s[i]) || s[i] == '.' || s[i] == ','); i++ {
		if isDigit(s[i]) {
			digits++
		}
	}
	if digits == 0 {
		return "", s
	}
	if i < len(s) && (s[i] == 'e' || s[i] == 'E') {
		j := i + 1
		if j < len(s) && (s[j] == '+' || s[j] == '-') {
			j++
		}
		if j < len(s) && isDigit(s[j]) {
			for i = j; i < len(s) && isDigit(s[i]); i++ {
			}
		}
	}
	return s[:i], s[i:]
}

// decimal reads one decimal number. A single comma is a decimal comma unless
// it could as well part thousands ("1,234").
func decimal(token string) (float64, error) {
	text := token
	if at := strings.IndexByte(token, ','); at >= 0 {
		whole, part := token[:at], token[at+1:]
		if strings.ContainsAny(part, ",.") || strings.Contains(whole, ".") {
			return 0, refuseMarks(token)
		}
		if len(part) == 3 && len(whole) >= 1 && len(whole) <= 3 && whole[0] != '0' {
			return 0, refuseComma(token, whole, part)
		}
		text = whole + "." + part
	}
	x, err := strconv.ParseFloat(text, 64)
	switch {
	case math.IsInf(x, 0) || x > largest:
		return 0, refuseTooLarge(token)
	case err != nil:
		return 0, refuseMarks(token)
	case x < smallest && (x != 0 || hasNonzeroDigit(text)):
		return 0, refuseTooSmall(token)
	}
	return x, nil
}

// mixed reads the fraction after a whole number.
func mixed(all, whole, tail string) (float64, string, error) {
	top, rest := cutDecimal(tail)
	rest = trimLeft(rest)
	if top == "" || !strings.HasPrefix(rest, "/") {
		return 0, "", refuseFraction(all, "")
	}
	return fraction(all, whole, top, rest[1:])
}

// fraction reads the lower number of a fraction and gives its value, plus the
// whole number before it, if any.
func fraction(all, whole, top, tail string) (float64, string, error) {
	bottom, rest := cutDecimal(trimLeft(tail))
	w, okWhole := smallWhole(whole)
	t, okTop := smallWhole(top)
	b, okBottom := smallWhole(bottom)
	switch {
	case !okWhole && whole != "", !okTop, !okBottom, startsFraction(trimLeft(rest)):
		return 0, "", refuseFraction(all, "")
	case b == 0:
		return 0, "", refuseFraction(all, "the lower number of a fraction cannot be 0")
	case whole != "" && t >= b:
		return 0, "", refuseFraction(all, "after a whole number the fraction is less than one")
	}
	if after := trimLeft(rest); after != "" && (isDigit(after[0]) || after[0] == '-' && len(after) > 1 && isDigit(after[1])) {
		return 0, "", refuseTwoNumbers(all)
	}
	return (w*b + t) / b, rest, nil
}

// smallWhole reads a whole number of at most six digits.
func smallWhole(s string) (float64, bool) {
	if s == "" || len(s) > 6 {
		return 0, false
	}
	n := 0
	for i := range len(s) {
		if !isDigit(s[i]) {
			return 0, false
		}
		n = 10*n + int(s[i]-'0')
	}
	return float64(n), true
}

// startsFraction tells whether a text goes on with a fraction's stroke, rather
// than with a unit such as "/min".
func startsFraction(s string) bool {
	if !strings.HasPrefix(s, "/") {
		return false
	}
	next := trimLeft(s[1:])
	return next == "" || isDigit(next[0]) || strings.IndexByte("/-.,+", next[0]) >= 0
}

func hasNonzeroDigit(s string) bool {
	for i := 0; i < len(s) && s[i] != 'e' && s[i] != 'E'; i++ {
		if s[i] >= '1' && s[i] <= '9' {
			return true
		}
	}
	return false
}

func isDigit(c byte) bool { return '0' <= c && c <= '9' }

func trimLeft(s string) string {
	for s != "" && (s[0] == ' ' || s[0] == '\t') {
		s = s[1:]
	}
	return s
}

// sameSign maps signs that look or mean the same onto the one the parser knows.
var sameSign = strings.NewReplacer(
	"\u00a0", " ", "\u2007", " ", "\u2009", " ", "\u202f", " ", // spaces
	"\u2010", "-", "\u2011", "-", "\u2012", "-", "\u2013", "-", "\u2212", "-", // hyphens, en dash, minus
	"\u2044", "/", "\u2215", "/", // fraction strokes
	"\u2033", `"`, "\u201d", `"`, "\u2032", "'", "\u2019", "'", // inch and foot marks
	"\u22c5", "·", "\u2219", "·", "\u00d7", "·", // multiplication
	"\u00ba", "°", "\u2103", "°C", "\u2109", "°F",
	"¼", " 1/4", "½", " 1/2", "¾", " 3/4", "⅛", " 1/8", "⅜", " 3/8", "⅝", " 5/8", "⅞", " 7/8",
)

// clean gives the text without blanks around it and with one sign for each
// meaning. Text of ASCII and of the signs that stand for themselves is returned
// as it is.
func clean(text string) string {
	for _, r := range text {
		if r >= utf8.RuneSelf && !strings.ContainsRune("·°±µ²³", r) {
			return strings.TrimSpace(sameSign.Replace(text))
		}
	}
	return strings.TrimSpace(text)
}

// OrNaN gives v itself, and NaN for 0. In the inputs of the machine parts 0
// stands for a figure that was not given, and NaN then marks every result that
// rests on it as not asked for.
func OrNaN(v float64) float64 {
	if v == 0 {
		return math.NaN()
	}
	return v
}
