package marinecalc_test

import (
	"slices"
	"testing"

	"example.org/driveline/marinecalc"
)

// ends are the calculations after whose sheet the work itself comes.
var ends = []string{"work-plan"}

// Every calculation leads on to others, which there are.
func TestContentsLeadOnward(t *testing.T) {
	all := marinecalc.Calculations()
	for _, c := range all {
		if c.Title == "" || c.Answers == "" {
			t.Errorf("%s: no title, or not what it answers", c.ID)
		}
		if (len(c.Onward) == 0) != slices.Contains(ends, c.ID) {
			t.Errorf("%s leads on to %v", c.ID, c.Onward)
		}
		for _, id := range c.Onward {
			if id == c.ID || !slices.ContainsFunc(all, func(e marinecalc.Entry) bool { return e.ID == id }) {
				t.Errorf("%s leads on to %q", c.ID, id)
			}
		}
	}
}
