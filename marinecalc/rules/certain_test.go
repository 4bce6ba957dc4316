package rules

import (
	"regexp"
	"strings"
	"testing"
)

// Past a limit something can happen, and what the sheets go by is the least strength
// of a grade or a metal: no limit says that the part in hand breaks, shears or burns
// by it. At 125 % of its proof load a bolt may be whole and is scrap all the same.
func TestLimitsPromiseNoBreakage(t *testing.T) {
	says := regexp.MustCompile(`\b(breaks?|shears|splits|cracks|strips|bursts|fails|snaps|seizes|burns?|lets go|will)\b`)
	holds := regexp.MustCompile(`\b(can|may|weakest|mostly|often)\b`)
	not := map[string]bool{ // of the grade as a whole, or of paint and oil
		"bearing-life-wanted": true, "bore-heat": true}
	met := 0
	hold := func(id, text string) {
		for _, s := range strings.FieldsFunc(text, func(r rune) bool { return strings.ContainsRune(".;:", r) }) {
			if says.MatchString(s) {
				met++
				if !holds.MatchString(s) && !not[id] {
					t.Errorf("%s: %q promises it; say that it can", id, s)
				}
			}
		}
	}
	for _, l := range Standard().AllLimits().All() {
		hold(l.ID, l.Why)
		for _, s := range l.Meanings.All() {
			hold(l.ID, s.Text)
		}
		for _, s := range l.States.All() {
			hold(l.ID, s.Text)
		}
	}
	for _, c := range Standard().AllCautions().All() {
		if strings.Contains(c.Text, "breaks it") || strings.Contains(c.Text, "breaks a ") {
			t.Errorf("%s: %q promises it; say that it can", c.ID, c.Text)
		}
	}
	if met < 10 {
		t.Errorf("only %d sentences say what breaks", met)
	}
}
