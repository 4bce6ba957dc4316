package catalogue

import "testing"

// Every calculation stands in one group, and a group names no other.
func TestEveryCalculationIsInOneGroup(t *testing.T) {
	times := map[string]int{}
	for _, g := range Groups() {
		for _, id := range g.Calculations {
			times[id]++
		}
	}
	for _, c := range Calculations {
		if times[c.ID] != 1 {
			t.Errorf("%s stands in %d groups", c.ID, times[c.ID])
		}
		delete(times, c.ID)
	}
	for id := range times {
		t.Errorf("a group names %s, which is no calculation", id)
	}
}
