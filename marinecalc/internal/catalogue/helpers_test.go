package catalogue_test

import (
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/sheet"
)

// advised tells whether the sheet's advice has that text in it.
func advised(s *marinecalc.Sheet, text string) bool {
	for _, n := range s.Next {
		if strings.Contains(n.Text, text) {
			return true
		}
	}
	return false
}

// advises holds a sheet's advice against what it must say and must not say.
func advises(t *testing.T, what string, s *marinecalc.Sheet, wanted, unwanted []string) {
	t.Helper()
	for _, text := range wanted {
		if !advised(s, text) {
			t.Errorf("%s: nothing says %q", what, text)
		}
	}
	for _, text := range unwanted {
		if advised(s, text) {
			t.Errorf("%s: it says %q", what, text)
		}
	}
}

// runInput runs a calculation without a boat and without ranges.
func runInput(t *testing.T, id, input, units string) *marinecalc.Sheet {
	t.Helper()
	return testboat.Run(t, id, input, marinecalc.Options{Units: units, NoRanges: true})
}

// The verdicts of a sheet by the id of their limit.
func verdictsOf(s *marinecalc.Sheet) map[string]sheet.Verdict {
	byLimit := map[string]sheet.Verdict{}
	for _, v := range s.Verdicts {
		byLimit[v.Limit] = v
	}
	return byLimit
}
