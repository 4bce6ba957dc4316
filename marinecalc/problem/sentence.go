package problem

import (
	"unicode"
	"unicode/utf8"
)

// MidSentence writes a title or sentence as it stands inside another one: its
// first letter small, unless the first word is a letter by itself, a size or
// an abbreviation ("K factor", "M10 bolt", "SAE grade", "O-ring").
func MidSentence(title string) string {
	first, n := utf8.DecodeRuneInString(title)
	second, _ := utf8.DecodeRuneInString(title[n:])
	article := first == 'A' && second == ' '
	if !article && !unicode.IsLower(second) || !unicode.IsUpper(first) {
		return title
	}
	return string(unicode.ToLower(first)) + title[n:]
}

// Capital writes what stands inside a sentence as it begins one: its first
// letter large, the rest as it is.
func Capital(text string) string {
	first, n := utf8.DecodeRuneInString(text)
	if !unicode.IsLower(first) {
		return text
	}
	return string(unicode.ToUpper(first)) + text[n:]
}
