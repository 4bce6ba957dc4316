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
// "in", "port" and "12:30" for a direction, "€180" and "$180" for an amount,
// "12-15 thou" for 13.5 ± 1.5 thou.
func (k *Kind) everyday(s string) string {
	if n := len(s); s[n-1] == '.' && n > 1 && !isDigit(s[n-2]) {
		s = s[:n-1] // of an abbreviation
	}
	if k.isMoney() {
		s = k.withCode(s)
	}
	if middle, ok := k.rangeOf(s); ok {
		return middle
	}
	switch {
	case k.Name == "length":
		return strings.ReplaceAll(s, "''", `"`)
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

// signs of money, with the code that each is read as. A $ alone is that of the
// United States, which the code that is printed says; others write theirs.
var moneySigns = [...][2]string{{"€", "EUR"}, {"£", "GBP"}, {"US$", "USD"}, {"A$", "AUD"}, {"AU$", "AUD"}, {"C$", "CAD"}, {"CA$", "CAD"}, {"NZ$", "NZD"}, {"$", "USD"}}

// withCode writes the code of a currency behind an amount that has its sign.
func (k *Kind) withCode(s string) string {
	for _, sign := range moneySigns {
		if amount, has := strings.CutPrefix(s, sign[0]); has {
			return trimLeft(amount) + " " + sign[1]
		}
		value, tail, accuracy := cutAccuracy(s)
		if amount, has := strings.CutSuffix(value, sign[0]); has && amount != "" && (isDigit(amount[len(amount)-1]) || amount[len(amount)-1] == ' ') {
			if s = amount + " " + sign[1]; accuracy {
				s += " ± " + tail
			}
			return s
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
	if hour, minutes, ok := clockTime(s); ok && hour > 12 && (k.Name == "direction" || k.Name == "angle") {
		at := strconv.FormatFloat(float64(hour-12)+float64(minutes)/60, 'g', -1, 64)
		return refusal(quote(s)+" is on no clock face", "clock positions from 0 to 12 o'clock", `write "`+at+` o'clock"`)
	}
	lower := ""
	if !isDigit(s[0]) {
		lower = strings.ToLower(s)
	}
	for _, about := range [...]string{"<", ">", "~", "≈", "ca. ", "ca ", "about ", "approx. ", "approx ", "under ", "over "} {
		if rest, has := strings.CutPrefix(lower, about); has && rest != "" {
			rest = trimLeft(s[len(about):])
			return refusal(quote(strings.TrimSpace(s[:len(about)]))+" is no part of a figure", "one number with its unit, and behind ± how far off it can be",
				`write "`+rest+`" and ± how far off it can be`)
		}
	}
	return k.askedRange(s)
}

// askedRange asks for the unit of a range that has none.
func (k *Kind) askedRange(s string) error {
	middle, half, name, ok := k.ends(s)
	if !ok || name != "" || k.Name == "ratio" {
		return nil
	}
	if name = k.metric; k.isMoney() {
		name = "EUR"
	}
	what := k.noun + " needs its unit"
	if k.isMoney() {
		what = k.noun + " needs its currency"
	}
	return refusal(what, k.accepted(), `write "`+s+" "+name+`", which is read as "`+middle+" ± "+half+" "+name+`"`)
}

// rangeOf gives the middle of a range and half its width behind ±, for all
// between its ends is as likely; ok is false for anything else.
func (k *Kind) rangeOf(s string) (text string, ok bool) {
	middle, half, name, ok := k.ends(s)
	if !ok || name == "" && k.Name != "ratio" {
		return "", false
	}
	if name != "" {
		name = " " + name
	}
	return middle + name + " ± " + half + name, true
}

// ends takes "12-15 thou" or "12 thou to 15 thou" apart.
func (k *Kind) ends(s string) (middle, half, name string, ok bool) {
	first, rest := cutDecimal(s)
	if first == "" || !strings.Contains(rest, "-") && !strings.Contains(rest, "to ") {
		return "", "", "", false
	}
	low, err := decimal(first)
	if err != nil {
		return "", "", "", false
	}
	for _, between := range [...]string{"-", "to "} {
		before, tail, has := strings.Cut(rest, between)
		if !has {
			continue
		}
		before = strings.TrimSpace(before)
		second, after := cutDecimal(trimLeft(tail))
		high, err := decimal(second)
		name = trimLeft(after)
		if second == "" || err != nil || high <= low || startsFraction(name) || strings.ContainsAny(name, "±+") || before != "" && before != name {
			return "", "", "", false
		}
		if u, known := k.find(name); name != "" && !known || known && u.style == workshop && strings.HasPrefix(rest, "-") && !strings.ContainsAny(first+second, ".,") {
			return "", "", "", false // 1-11 in lacks a fraction's stroke
		}
		number := func(x float64) string { return strconv.FormatFloat(x, 'g', 12, 64) }
		return number((low + high) / 2), number((high - low) / 2), name, true
	}
	return "", "", "", false
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
