package calc

import (
	"example.org/driveline/marinecalc/internal/boat"
	"example.org/driveline/marinecalc/rules"
)

// What a boat is, as the fault finding's rows have it: the one place that says which
// looks, causes and work cannot be hers.

// Told is what the boat file says of a question of the fault finding, "yes" or "no": the
// newest answer that is no hearsay, else what she has; "" where it says nothing.
func Told(book *rules.Book, b *boat.Boat, id string) string {
	if word := b.Said(id, rules.Hearsay); word != "" {
		return word
	}
	answer, _ := byHerKind(book, b, id)
	return answer
}

// BookFor is a book as it reads on the boat's kind.
func BookFor(book *rules.Book, b *boat.Boat) *rules.Book {
	return book.For(func(question string) string { return b.Said(question, rules.Hearsay) })
}

// byHerKind is ByWhatSheHas of the question with an id.
func byHerKind(book *rules.Book, b *boat.Boat, id string) (answer, has string) {
	for _, e := range book.Evidence().All() {
		if e.ID == id {
			return ByWhatSheHas(b, e, func(other string) string { return Told(book, b, other) })
		}
	}
	return "", ""
}

// ByWhatSheHas is what the boat file answers to a question by what she has, with what it
// says of that, and else what it follows from the answer to another; "" for nothing.
func ByWhatSheHas(b *boat.Boat, e rules.Evidence, told func(question string) string) (answer, has string) {
	for _, by := range e.Boat.All() {
		word := ""
		if by.Question != "" {
			word = told(by.Question)
		} else if raw, _, _, known := b.Find(by.At); known {
			word, _ = raw.(string)
		}
		if word != "" && rules.Contains(by.Words, word) {
			return by.Answer, by.Has
		}
	}
	return "", ""
}

// NotHers tells whether a cause cannot be on a boat by what she has, which it names where
// the row does, and nobody says that it is there.
func NotHers(book *rules.Book, b *boat.Boat, c rules.Cause) (has string, is bool) {
	if b == nil || b.Said(c.Confirm, rules.Hearsay) == "yes" {
		return "", false
	}
	answer, has := byHerKind(book, b, c.Confirm)
	return has, answer == "no"
}

// CannotBe says why a piece of work is none of a boat: she has none of what can be wrong
// for it. "" where she may have, and where what she has is not named.
func CannotBe(book *rules.Book, b *boat.Boat, r rules.Remedy) (why string) {
	for _, c := range book.Causes().All() {
		if !rules.Contains(r.Cures, c.ID) {
			continue
		}
		has, is := NotHers(book, b, c)
		if !is {
			return ""
		}
		why = has
	}
	return why
}
