package setting

import (
	"slices"
	"strings"

	"example.org/driveline/marinecalc/internal/boat"
	"example.org/driveline/marinecalc/internal/calc"
	"example.org/driveline/marinecalc/rules"
)

// Absent tells whether a boat has no such joint, of a row of the table torque-joints, by
// what she says of herself. One that is rare stands on the card only where she says that
// she has it.
func Absent(book *rules.Book, b *boat.Boat, row rules.Row) bool {
	word := ""
	if question := row.Values.Of("question").Text; question != "" {
		word = calc.Told(book, b, question)
	} else if raw, _, _, known := b.Find(row.Values.Of("at").Text); known {
		word, _ = raw.(string)
	}
	with := strings.Fields(row.Values.Of("with").Text)
	switch {
	case len(with) == 0:
		return false
	case word == "":
		return row.Values.Of("rare").Text != ""
	}
	return !slices.Contains(with, word)
}
