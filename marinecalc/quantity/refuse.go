// What is said of text that cannot be read.

package quantity

import (
	"errors"
	"strconv"
	"strings"
	"unicode"

	"example.org/driveline/marinecalc/problem"
)

func refuse(what, allowed, hint string) error {
	return problem.Problem{What: what, Allowed: allowed, Hint: hint}
}

// show quotes a piece of the person's own text, without signs that do not print.
func show(s string) string {
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
func (k *Kind) examples(number string) string {
	a, b := k.metric, k.us
	switch {
	case k.isMoney():
		a, b = "EUR", "USD"
	case k.Name == "ratio":
		return `"0.75" or "75 %"`
	case k.Name == "direction":
		a, b = "o'clock", "°" // a bare number round a coupling is mostly the clock's
	}
	text := `"` + number + " " + a + `"`
	if a != b {
		text += ` or "` + number + " " + b + `"`
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
	return refuse(k.noun+" is expected, nothing is written", k.accepted(), "write "+k.examples("32"))
}

func (k *Kind) refuseLong(text string) error {
	return refuse("the text is "+strconv.Itoa(len(text))+" bytes long", "at most "+strconv.Itoa(maxText)+" bytes", "write only "+k.noun+", as "+k.examples("32"))
}

func refuseNoNumber(s string) error {
	if s == "" {
		return refuse("no number stands before the ±", "a number, then its unit, then ± and the accuracy", "")
	}
	return refuse(show(s)+" does not begin with a number", "a finite number, then its unit", "")
}

func refuseTwoNumbers(s string) error {
	return refuse(show(s)+" holds two numbers", "one number, written without gaps between its digits", `write thousands as "2400", a whole and a fraction as "1-11/16"`)
}

func refuseMarks(token string) error {
	return refuse(show(token)+" is not a number", "digits with one decimal point or comma", `write "1234.5", without marks between thousands`)
}

func refuseComma(token, whole, part string) error {
	return refuse(show(token)+" can be read in two ways", "a comma that can only be a decimal comma",
		`write "`+whole+"."+part+`" or "`+whole+part+`"`)
}

func refuseTooLarge(token string) error {
	return refuse(show(token)+" is too large a number", "numbers up to 1e100", "check the exponent")
}

func refuseTooSmall(token string) error {
	return refuse(show(token)+" is too small a number", "0, or numbers from 1e-100 up", "check the exponent")
}

func refuseFraction(s, hint string) error {
	if hint == "" {
		hint = `write "7/16" or "1-11/16"`
	}
	return refuse(show(s)+" is not a fraction that can be read", "a fraction as 7/16, or a whole and a fraction as 1-11/16 or 1 11/16, of whole numbers", hint)
}
