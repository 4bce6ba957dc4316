package rules

import "testing"

// No id in the rows of the job leads nowhere.
func TestNothingInTheJobDangles(t *testing.T) {
	for _, p := range Standard().DanglingIDs() {
		t.Error(p.Where, p.What)
	}
}
