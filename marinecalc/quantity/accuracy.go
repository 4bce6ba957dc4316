// Accuracies behind a ± sign.

package quantity

import (
	"math"
	"strings"
)

// ParseAccuracy reads an accuracy such as "± 0.02 mm" or "±5 %" (the sign may
// be left out or written +/-) of a reading whose SI value is of. It gives the
// absolute half-width in SI, not negative. A percentage is of the reading,
// for ratios too. The error is a [problem.Problem].
func (k *Kind) ParseAccuracy(text string, of float64) (float64, error) {
	if !k.defined() {
		return 0, errNoKind
	}
	s, err := k.admit(text)
	if err != nil {
		return 0, err
	}
	before, tail, has := cutAccuracy(s)
	switch {
	case !has:
		tail = s
	case before != "":
		return 0, refusal(quote(text)+" holds a value and an accuracy", `an accuracy alone, as "± 5 %"`, "leave out what stands before the ±")
	}
	half, name, err := k.scanHalf(tail)
	if err != nil {
		return 0, err
	}
	return k.halfWidth(tail, half, name, of, nil, "")
}

// signs are the ways in which ± is written, each with the byte it begins with.
var signs = [...]string{"±", "+/-", "+-", "+ / -", "+ -", "+or-", "+ or -", "plus/minus", "plus or minus", "plus minus"}

// cutAccuracy splits a text at its ± sign. Brackets round the accuracy are left
// out: "60 N·m (± 10 %)".
func cutAccuracy(s string) (value, accuracy string, has bool) {
	for i := range len(s) {
		if s[i] != '+' && s[i] != 0xc2 && s[i] != 'p' {
			continue
		}
		for _, sign := range signs {
			tail, found := strings.CutPrefix(s[i:], sign)
			if !found {
				continue
			}
			value, tail = strings.TrimRight(s[:i], " \t"), trimLeft(tail)
			if before, open := strings.CutSuffix(value, "("); open {
				value, tail = strings.TrimRight(before, " \t"), strings.TrimSuffix(tail, ")")
			}
			return value, tail, true
		}
	}
	return s, "", false
}

// WithUnit gives the text of a bare number with a unit behind the number. An
// accuracy in per cent stays behind it: "60 ± 10 %" in N·m is "60 N·m ± 10 %".
func WithUnit(text, unit string) string {
	s := strings.TrimSpace(text)
	value, tail, has := cutAccuracy(clean(s))
	if !has || !isPercent(strings.TrimLeft(tail, "0123456789.,/- \t")) {
		return s + " " + unit
	}
	return value + " " + unit + " ± " + tail
}

// HasAccuracy tells whether a text has a ± of its own, if only "± 0".
func HasAccuracy(text string) bool {
	_, _, has := cutAccuracy(text)
	return has
}

// scanHalf reads the number after a ± sign and the text of its unit.
func (k *Kind) scanHalf(tail string) (float64, string, error) {
	if _, _, again := cutAccuracy(tail); again {
		return 0, "", refusal(quote(tail)+" has a second ±", "one accuracy after the value", `write "± 5 %" once`)
	}
	if tail == "" {
		return 0, "", refusal("nothing stands after the ±", "an accuracy with its unit, or in %", `write "± 5 %"`)
	}
	half, name, err := scanNumber(tail)
	if err != nil {
		return 0, "", k.explain(err)
	}
	if half < 0 || tail[0] == '-' || tail[0] == '+' {
		return 0, "", refusal("the accuracy "+quote(tail)+" has a sign of its own", "a number from 0 up after the ±", `write "± 5 %"`)
	}
	return half, name, nil
}

// halfWidth gives the SI half-width of an accuracy. The unit of the reading
// itself, if known, is u, written as reading.
func (k *Kind) halfWidth(tail string, half float64, name string, of float64, u *unit, reading string) (float64, error) {
	points := u != nil && u.name == "%" // "75 % ± 5 %" is in points
	if isPercent(name) && !points {
		switch {
		case k.Name == "temperature":
			return 0, refusal("a percentage of a temperature means nothing", "an accuracy in °C, °F or K", `write "± 2 °C" or "± 4 °F"`)
		case math.IsNaN(of) || math.IsInf(of, 0):
			return 0, refusal("an accuracy in % needs the reading it belongs to", "a reading, or an accuracy with a unit", "give the reading first")
		}
		return math.Abs(of) * half / 100, nil
	}
	if k.isMoney() && reading != "" && name != "" && name != reading {
		return 0, refusal("the amount is in "+quote(reading)+" and its accuracy in "+quote(name), "one currency", "write both in "+quote(reading))
	}
	v, ok := k.find(name)
	if name == "" && u != nil && reading != "" {
		v, ok = u, true // "0.25 mm ± 0.02": in the unit of the reading
	}
	if !ok {
		return 0, k.refuseUnit(tail, name)
	}
	return v.width(half), nil
}

func isPercent(name string) bool { return name == "%" || name == "percent" }

// HalfDigit is half of the last digit that was typed, in SI: 0.05 mm of
// "0.3 mm", half a millimetre of "12 mm". It is 0 for fractions and for what
// cannot be read.
func (k *Kind) HalfDigit(text string) float64 {
	value, _, _ := cutAccuracy(strings.TrimSpace(text))
	body, _ := cutSign(value)
	token, rest := cutDecimal(body)
	if token == "" || strings.ContainsAny(token, "eE") || strings.ContainsRune(rest, '/') && startsFraction(trimLeft(rest)) {
		return 0
	}
	if _, after, found := strings.Cut(rest, "-"); found && after != "" && isDigit(after[0]) {
		return 0 // a whole and a fraction
	}
	at, step := strings.IndexAny(token, ".,"), "0.5"
	if at >= 0 && at < len(token)-1 {
		step = "0." + strings.Repeat("0", len(token)-1-at) + "5"
	}
	half, err := k.ParseAccuracy(step+" "+trimLeft(rest), 0)
	if err != nil {
		return 0
	}
	return half
}
