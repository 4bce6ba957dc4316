package joints

import (
	"slices"
	"testing"
)

// An order that is too long for the picture goes on in the next line, none of
// its bolts lost.
func TestInLines(t *testing.T) {
	for order, want := range map[string][]string{
		"1 - 3 - 2":             {"1 - 3 - 2"},
		"1 - 3 - 2 - 4":         {"1 - 3 - 2 -", "4"},
		"1 - 8 - 4 - 11 - 7":    {"1 - 8 - 4 -", "11 - 7"},
		"10 - 11 - 12":          {"10 - 11 -", "12"},
		"1 - 2 - 3 - 4 - 5 - 6": {"1 - 2 - 3 -", "4 - 5 - 6"},
	} {
		if got := inLines(order, 9); !slices.Equal(got, want) {
			t.Errorf("%s: %q", order, got)
		}
	}
}
