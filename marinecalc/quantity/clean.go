// Signs that mean the same.

package quantity

import (
	"strings"
	"unicode/utf8"
)

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
