// What is said of text that cannot be read.
package quantity

import (
	"errors"
	"strconv"
	"strings"
	"unicode"

	"example.org/driveline/marinecalc/problem"
)

// refusal is the error of a text that cannot be read.
func refusal(what, allowed, hint string) error {
	return problem.Problem{What: what, Allowed: allowed, Hint: hint}
}

// quote quotes a piece of the person's own text, without signs that do not print.
func quote(s string) string {
	s = strings.Map(func(r rune) rune {
		if !unicode.IsPrint(r) || r == unicode.ReplacementChar {
			return '?'
		}
		return r
	}, s)
	if len(s) > maxText {
		s = strings.ToValidUTF8(s[:maxText], "") + "…"
	}
	return "“" + s + "”"
}

// explain adds the kind's examples to a refusal of a number, where it has no
// hint of its own.
func (k *Kind) explain(err error) error {
	var p problem.Problem
	if errors.As(err, &p) && p.Hint == "" {
		p.Hint = "write " + k.examples("32")
		return p
	}
	return err
}

// examples shows a number with the kind's usual units: "32 mm" or "32 in".
func (k *Kind) examples(number string) string { return k.examplesWith(number, "") }

// examplesWith shows them with an accuracy: "32 mm ± 5 %" or "32 in ± 5 %".
func (k *Kind) examplesWith(number, accuracy string) string {
	a, b := k.metric, k.us
	switch {
	case k.isMoney():
		a, b = "EUR", "USD"
	case k.Name == "ratio":
		return `"0.75" or "75 %"`
	case k.Name == "direction":
		a, b = "o'clock", "°" // a bare number round a coupling is mostly the clock's
	case k.Name == "temperature-difference":
		a = "K" // which is no temperature by mistake
	case a == b && k.Name == "rotation-speed":
		b = "rev/s"
	}
	text := `"` + number + " " + a + accuracy + `"`
	if a != b {
		text += ` or "` + number + " " + b + accuracy + `"`
	}
	return text
}

// accepted lists the units in words.
func (k *Kind) accepted() string {
	switch {
	case k.isMoney():
		return "a number and a currency code of three capital letters"
	case k.Name == "ratio":
		return "a plain number, or one in " + strings.Join(k.Units()[1:], ", ")
	}
	return "units " + strings.Join(k.Units(), ", ")
}

func (k *Kind) refuseEmpty() error {
	return refusal(k.noun+" is expected, nothing is written", k.accepted(), "write "+k.examples("32"))
}

func (k *Kind) refuseLong(text string) error {
	return refusal("the text is "+strconv.Itoa(len(text))+" bytes long", "at most "+strconv.Itoa(maxText)+" bytes", "write only "+k.noun+", as "+k.examples("32"))
}

func refuseNoNumber(s string) error {
	if s == "" {
		return refusal("no number stands before the ±", "a number, then its unit, then ± and the accuracy", "")
	}
	return refusal(quote(s)+" does not begin with a number", "a number, then its unit", "")
}

func refuseTwoNumbers(s string) error {
	return refusal(quote(s)+" holds two numbers", "one number, written without gaps between its digits", `write thousands as "2400", a whole and a fraction as "1-11/16"`)
}

func refuseMarks(token string) error {
	if aDate(token) {
		return refuseDate(token)
	}
	return refusal(quote(token)+" is not a number", "digits with one decimal point or comma", `write "1234.5", without marks between thousands`)
}

func refuseComma(token, whole, part string) error {
	return refusal(quote(token)+" can be read in two ways", "a comma that can only be a decimal comma",
		`write "`+whole+"."+part+`" or "`+whole+part+`"`)
}

func refuseTooLarge(token string) error {
	return refusal(quote(token)+" is too large a number", "numbers up to 1e100", "check the exponent")
}

func refuseTooSmall(token string) error {
	return refusal(quote(token)+" is too small a number", "0, or numbers from 1e-100 up", "check the exponent")
}

// aDate tells a day as people write it: three whole numbers, the year's four
// digits first or last.
func aDate(s string) bool {
	parts := strings.FieldsFunc(s, func(r rune) bool { return r == '-' || r == '/' || r == '.' })
	if len(parts) != 3 || strings.Trim(s, "0123456789-/.") != "" {
		return false
	}
	const day, year = 2, 4 // digits
	first, last := len(parts[0]), len(parts[2])
	return len(parts[1]) <= day && (first == year && last <= day || first <= day && last == year)
}

func refuseDate(s string) error {
	return refusal(quote(s)+" is a date", "a number, then its unit", "")
}

func refuseFraction(s, hint string) error {
	if aDate(s) {
		return refuseDate(s)
	}
	if hint == "" {
		hint = `write "7/16" or "1-11/16"`
	}
	return refusal(quote(s)+" is not a fraction that can be read", "a fraction as 7/16, or a whole and a fraction as 1-11/16 or 1 11/16, of whole numbers", hint)
}

// refuseBare is of a number without its unit whose accuracy is in per cent.
func (k *Kind) refuseBare(number, accuracy string) error {
	if k.Name == "temperature" {
		accuracy = "2 K" // a share of it means nothing
	}
	return refusal(k.noun+" needs its unit", k.accepted(), "write "+k.examplesWith(strings.TrimSpace(number), " ± "+accuracy))
}

// share is the number of per cent that stands behind a unit without ±, as in
// "N·m 10 %", "N·m +10 %" and "N·m -5/+10 %", where the larger is taken to come
// last.
func (k *Kind) share(name string) (unit, percent string, ok bool) {
	at := strings.IndexAny(name, " +-(,")
	if at < 0 {
		return "", "", false
	}
	unit, rest := strings.TrimSpace(name[:at]), strings.TrimRight(name[at:], " )")
	rest, ok = strings.CutSuffix(rest, "%")
	if _, known := k.find(unit); !ok || !known {
		return "", "", false
	}
	rest = strings.TrimSpace(rest)
	percent = rest[strings.LastIndexAny(rest, " +-/(")+1:]
	if _, err := decimal(percent); err != nil || percent == "" {
		return "", "", false
	}
	return unit, percent, true
}

// refuseUnit says why the unit of a quantity cannot be taken: it is missing,
// belongs to another kind, is two units, or is not known.
func (k *Kind) refuseUnit(text, name string) error {
	number := strings.TrimSpace(strings.TrimSuffix(text, name))
	if name == "" {
		what := k.noun + " needs its unit"
		if k.isMoney() {
			what = k.noun + " needs its currency"
		}
		hint := "write " + k.examples(number)
		if k.Name == "length" && Fraction(number) {
			hint = `write "` + number + ` in": a fraction is mostly one of an inch`
		}
		return refusal(what, k.accepted(), hint)
	}
	such := k.noun + " is written such as "
	if others := kindsOf(name); others != "" {
		if _, weight := k.find(name + "f"); weight { // as lb for lbf
			return refusal(quote(name)+" is "+others+", "+k.noun+" is expected", k.accepted(), `did you mean "`+number+" "+name+`f"?`)
		}
		return refusal(quote(name)+" is "+others+", "+k.noun+" is expected", k.accepted(), such+k.examples(another(number)))
	}
	if to, upTo := strings.CutPrefix(name, "to "); upTo && to != "" && isDigit(to[0]) {
		return refusal("a range is written where one number is read", "one number with its unit, and behind ± how far off it can be",
			`write the middle of the two and half their distance, such as "55 kW ± 5 kW"`)
	}
	if to, turned := strings.CutPrefix(name, ":"); turned && k.Name == "ratio" && number == "1" && to != "" && isDigit(to[0]) {
		return refusal(quote(text)+" is a ratio the other way round", k.accepted(), `write "`+to+`" or "`+to+`:1", and a slope of 1 in `+to+` as "1/`+to+`"`)
	}
	if unit, percent, has := k.share(name); has {
		return refusal("a share stands behind the unit without ±", "one number with its unit, and behind ± how far off it can be", `write "`+number+" "+unit+" ± "+percent+` %"`)
	}
	if what := twoQuantities(name); what != "" {
		return refusal(what, "one number with one unit", such+k.examples(another(number)))
	}
	hint := such + k.examples(another(number)) // the number was one of a unit that is not known
	if near := k.nearest(name); near != "" {
		hint = `did you mean "` + number + " " + near + `"?`
	}
	if k.isMoney() {
		return refusal(quote(name)+" is not a currency code", k.accepted(), hint)
	}
	return refusal(quote(name)+" is not a known unit of "+strings.TrimPrefix(strings.TrimPrefix(k.noun, "an "), "a "), k.accepted(), hint)
}

// another is a number to show a form with that is not the one written, which
// was of something else.
func another(number string) string {
	if number == "32" {
		return "25"
	}
	return "32"
}

// kindsOf names the kinds that have a unit of that spelling: "a pressure or a
// stress".
func kindsOf(name string) string {
	var nouns []string
	for _, k := range kinds {
		if _, ok := k.find(name); ok && !k.isMoney() {
			nouns = append(nouns, k.noun)
		}
	}
	return strings.Join(nouns, " or ")
}

// twoQuantities tells whether what stands for a unit is two units, or a unit
// and another quantity, and says so.
func twoQuantities(name string) string {
	fields := strings.FieldsFunc(name, func(r rune) bool { return r == ' ' || r == ',' || r == ';' || r == '\t' })
	if len(fields) < 2 || kindsOf(fields[0]) == "" {
		return ""
	}
	for _, f := range fields[1:] {
		if isDigit(f[0]) {
			return "two quantities are written, with " + quote(f) + " after the unit " + quote(fields[0])
		}
		if kindsOf(f) != "" {
			return "two units are written, " + quote(fields[0]) + " and " + quote(f)
		}
	}
	return ""
}

// nearest gives the kind's unit whose spelling is closest to what was written,
// or "" when none is close.
func (k *Kind) nearest(name string) string {
	if k.isMoney() {
		if up := strings.ToUpper(name); isCurrency(up) {
			return up
		}
		return ""
	}
	written := strings.ToLower(name)
	best, bestDistance := "", 10*(1+min(2, (len(written)+1)/2))
	for i := range k.units {
		u := &k.units[i]
		for s := range strings.SplitSeq(u.name+","+u.also, ",") {
			d := 10*distance(written, strings.ToLower(s)) + min(9, abs(len(written)-len(s)))
			if strings.HasSuffix(strings.ToLower(s), " "+written) {
				d = 0 // "gal" of "US gal"
			}
			if d < bestDistance && s != "" {
				best, bestDistance = u.name, d
			}
		}
	}
	return best
}

// distance is the number of letters to add, drop or change to turn a into b
// (Levenshtein).
func distance(a, b string) int {
	x, y := []rune(a), []rune(b)
	row := make([]int, len(y)+1)
	for j := range row {
		row[j] = j
	}
	for i := range x {
		diagonal := row[0]
		row[0] = i + 1
		for j := range y {
			change := diagonal
			if x[i] != y[j] {
				change++
			}
			diagonal = row[j+1]
			row[j+1] = min(change, row[j]+1, diagonal+1)
		}
	}
	return row[len(y)]
}

func abs(n int) int { return max(n, -n) }
