package problem

import (
	"strconv"
	"strings"
)

// Closest returns the candidate with the fewest single-letter changes from
// the word, when it is near enough to have been meant; before one that is more
// than a slip away the only one that has the whole word in it, as "gripLength"
// has "grip".
func Closest(word string, candidates []string) (string, bool) {
	const longest = 64 // no name is longer, and the work grows with the length
	if len(word) > longest {
		return "", false
	}
	const slip, part = 2, 4 // letters; a shorter part says nothing
	best, least := "", len(word)/3+2
	whole, holders := "", 0
	for _, c := range candidates {
		lower := strings.ToLower(c)
		if d := Distance(strings.ToLower(word), lower); d < least {
			best, least = c, d
		}
		if len(word) >= part && strings.Contains(lower, strings.ToLower(word)) {
			whole, holders = c, holders+1
		}
	}
	if holders == 1 && (best == "" || least > slip) {
		return whole, true
	}
	return best, best != ""
}

// DidYouMean is the question whether the closest candidate was meant, "" where
// none is near.
func DidYouMean(word string, candidates []string) string {
	if best, ok := Closest(word, candidates); ok {
		return "did you mean " + strconv.Quote(best) + "?"
	}
	return ""
}

// Distance counts the letters to insert, drop or change (Levenshtein 1966).
func Distance(a, b string) int {
	row := make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i := range len(a) {
		diagonal := row[0]
		row[0] = i + 1
		for j := range len(b) {
			change := diagonal
			if a[i] != b[j] {
				change++
			}
			diagonal = row[j+1]
			row[j+1] = min(change, row[j]+1, row[j+1]+1)
		}
	}
	return row[len(b)]
}
