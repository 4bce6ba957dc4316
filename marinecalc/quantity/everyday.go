// Ways of writing that people have beside number and unit.

package quantity

import (
	"strconv"
	"strings"
)

// places are directions as they are called on board, in degrees clockwise from
// the top as one looks forward.
var places = map[string]string{
	"top": "0", "up": "0", "starboard": "90", "stbd": "90", "stb": "90",
	"bottom": "180", "down": "180", "port": "270",
}

// everyday gives the text with number and unit for what is written otherwise
// and can mean one thing only: two apostrophes for an inch mark, "in." for
// "in", "port" and "12:30" for a direction, "€180" for an amount.
func (k *Kind) everyday(s string) string {
	if n := len(s); s[n-1] == '.' && n > 1 && !isDigit(s[n-2]) {
		s = s[:n-1] // of an abbreviation
	}
	switch {
	case k.Name == "length":
		return strings.ReplaceAll(s, "''", `"`)
	case k.isMoney():
		for _, sign := range [...][2]string{{"€", "EUR"}, {"£", "GBP"}} {
			if amount, has := strings.CutPrefix(s, sign[0]); has {
				return trimLeft(amount) + " " + sign[1]
			}
			if amount, has := strings.CutSuffix(s, sign[0]); has {
				return amount + " " + sign[1]
			}
		}
	case k.Name == "direction":
		if at, known := places[strings.ToLower(s)]; known {
			return at + " °"
		}
		if hour, has := strings.CutSuffix(s, "h"); has {
			return hour + " o'clock"
		}
		fallthrough
	case k.Name == "angle":
		if hour, minutes, ok := clockTime(s); ok && hour <= 12 {
			return strconv.FormatFloat(float64(hour)+float64(minutes)/60, 'g', -1, 64) + " o'clock"
		}
	}
	return s
}

// clockTime reads "12:30"; ok is false for anything else.
func clockTime(s string) (hour, minutes int, ok bool) {
	h, m, has := strings.Cut(strings.TrimSuffix(strings.TrimSuffix(s, "o'clock"), " "), ":")
	if !has || len(m) != 2 {
		return 0, 0, false
	}
	x, okHour := smallWhole(h)
	y, okMinutes := smallWhole(m)
	return int(x), int(y), okHour && okMinutes && x <= 24 && y < 60
}

// asked is what to ask where a way of writing can mean several things, or asks
// for more than one number can hold; nil for everything else.
func (k *Kind) asked(s string) error {
	if amount, has := strings.CutPrefix(s, "$"); has && k.isMoney() {
		amount = trimLeft(amount)
		return refusal("$ is the sign of several currencies", k.accepted(), `write "`+amount+` USD", "`+amount+` CAD" or "`+amount+` AUD"`)
	}
	if hour, minutes, ok := clockTime(s); ok && hour > 12 && (k.Name == "direction" || k.Name == "angle") {
		at := strconv.FormatFloat(float64(hour-12)+float64(minutes)/60, 'g', -1, 64)
		return refusal(quote(s)+" is on no clock face", "clock positions from 0 to 12 o'clock", `write "`+at+` o'clock"`)
	}
	for _, about := range [...]string{"<", ">", "~", "≈", "ca. ", "ca ", "about ", "approx. ", "approx ", "under ", "over "} {
		if rest, has := strings.CutPrefix(strings.ToLower(s), about); has && rest != "" {
			rest = trimLeft(s[len(about):])
			return refusal(quote(strings.TrimSpace(s[:len(about)]))+" is no part of a figure", "one number with its unit, and behind ± how far off it can be",
				`write "`+rest+`" and ± how far off it can be`)
		}
	}
	return k.askedRange(s)
}

// askedRange asks for the middle where both ends of a range are written.
func (k *Kind) askedRange(s string) error {
	first, rest := cutDecimal(s)
	after := trimLeft(rest)
	low, err := decimal(first)
	if first == "" || err != nil {
		return nil
	}
	for _, between := range [...]string{"-", "to "} {
		tail, has := strings.CutPrefix(after, between)
		if !has {
			continue
		}
		second, name := cutDecimal(trimLeft(tail))
		high, err := decimal(second)
		if second == "" || err != nil || high <= low || startsFraction(trimLeft(name)) {
			return nil
		}
		if name = trimLeft(name); name == "" {
			name = k.metric
		}
		if u, known := k.find(name); known && u.style == workshop && strings.HasPrefix(rest, "-") && !strings.ContainsAny(first+second, ".,") {
			return nil // 1-11 in lacks a fraction's stroke
		}
		number := func(x float64) string { return strconv.FormatFloat(x, 'g', 6, 64) + " " + name }
		return refusal(quote(s)+" is a range, where one number is read", "one number with its unit, and behind ± how far off it can be",
			`write the middle of the two and half their distance: "`+number((low+high)/2)+" ± "+number((high-low)/2)+`"`)
	}
	return nil
}

// Fraction tells whether a number is written as a fraction, as inches are:
// "1-1/4", "7/16".
func Fraction(text string) bool {
	body, _ := cutSign(clean(text))
	_, rest := cutDecimal(body)
	if after, mixed := strings.CutPrefix(rest, "-"); mixed {
		rest = after
	}
	_, after := cutDecimal(trimLeft(rest))
	return startsFraction(trimLeft(rest)) || rest != "" && startsFraction(trimLeft(after))
}
