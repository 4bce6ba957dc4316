package diagnosis

import "example.org/driveline/marinecalc/rules"

// Settler is the look that settles a cause: its question, and how long it takes.
func Settler(book *rules.Book, cause string) (question string, minutes float64, ok bool) {
	for _, c := range book.Causes().All() {
		if c.ID != cause {
			continue
		}
		for _, e := range book.Evidence().All() {
			if e.ID == c.Confirm && e.Kind == check {
				return e.Title, e.Minutes, true
			}
		}
	}
	return "", 0, false
}
