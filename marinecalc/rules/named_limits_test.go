package rules

import (
	"slices"
	"strings"
	"testing"
)

// A limit on a reading that another sheet judges by name is named there: one that is
// added and not named leaves the reading unjudged, without a word.
func TestLimitsOfAReadingAreNamedWhereItIsJudged(t *testing.T) {
	book, tried := Standard(), 0
	for _, row := range book.Table("trial-checks").Rows.All() {
		named := strings.Fields(row.Values.Of("limits").Text)
		for _, l := range book.AllLimits().All() {
			of := slices.ContainsFunc(named, func(n string) bool { return strings.HasPrefix(n, l.Calculation+"/") })
			if !of || l.On != row.Values.Of("reading").Text {
				continue
			}
			tried++
			if at := l.Calculation + "/" + l.ID; !slices.Contains(named, at) {
				t.Errorf("trial check %s does not name %s", row.ID, at)
			}
		}
	}
	floors := strings.Fields(book.Table("trend-readings").Named("dripRate", nil).Values.Of("floor").Text)
	for _, l := range book.Limits("gland-heat").All() {
		if l.On == "dripRate" && l.Min.Given() {
			tried++
			if !slices.Contains(floors, l.ID) {
				t.Errorf("the trend of drips does not name %s", l.ID)
			}
		}
	}
	if tried < 8 {
		t.Errorf("only %d limits were tried", tried)
	}
}
