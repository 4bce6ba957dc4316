package setting_test

import (
	"strings"
	"testing"

	"example.org/driveline/marinecalc/internal/boat"
	"example.org/driveline/marinecalc/rules"
)

// Every finish that says what is on the thread is of a kind, and a kind names no other;
// its words are written as makers' words are compared.
func TestEveryFinishIsOfAKind(t *testing.T) {
	book := rules.Standard()
	of := map[string]bool{}
	for _, kind := range book.Table("finish-words").Rows.All() {
		for _, finish := range strings.Fields(kind.Values.Of("finishes").Text) {
			of[finish] = true
		}
		for _, word := range strings.Split(kind.Values.Of("words").Text, "|") {
			if len(word) < 3 || word != boat.Folded(word) {
				t.Errorf("%s: %q", kind.ID, word)
			}
		}
	}
	for _, row := range book.Table("thread-finishes").Rows.All() {
		if of[row.ID] == strings.HasPrefix(row.ID, "not-known") {
			t.Errorf("%s is of a kind: %v", row.ID, of[row.ID])
		}
		delete(of, row.ID)
	}
	for finish := range of {
		t.Errorf("no finish %s", finish)
	}
}
