package problem

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// MidSentence writes a title or sentence as it stands inside another one: its
// first letter small, unless the first word is a letter by itself, a size, an
// abbreviation ("K factor", "M10 bolt", "SAE grade", "O-ring") or a proper name
// ("Poisson's ratio", "Signal K").
func MidSentence(title string) string {
	first, n := utf8.DecodeRuneInString(title)
	second, _ := utf8.DecodeRuneInString(title[n:])
	article := first == 'A' && second == ' '
	if !article && !unicode.IsLower(second) || !unicode.IsUpper(first) {
		return title
	}
	for _, name := range properNames {
		if rest, is := strings.CutPrefix(title, name); is {
			if next, _ := utf8.DecodeRuneInString(rest); !unicode.IsLetter(next) {
				return title
			}
		}
	}
	return string(unicode.ToLower(first)) + title[n:]
}

// properNames keep their capital wherever they stand: of the trade, of the books and
// of the calendar.
var properNames = [...]string{"Army", "Bickford", "Canada", "Canadian", "Celsius", "Coulomb", "Fahrenheit", "Kelvin", "Lamé", "Machinery's", "Poisson", "Reynolds",
	"Shigley", "Signal K", "Young", "January", "February", "March", "April", "June", "July", "August", "September", "October", "November", "December",
	"Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday"}

// Capital writes what stands inside a sentence as it begins one: its first
// letter large, the rest as it is.
func Capital(text string) string {
	first, n := utf8.DecodeRuneInString(text)
	if !unicode.IsLower(first) {
		return text
	}
	return string(unicode.ToUpper(first)) + text[n:]
}
