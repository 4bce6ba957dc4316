package joints

import (
	"slices"
	"testing"
)

// An order that is too long for the picture goes on in the next line, none of
// its bolts lost.
func TestInLines(t *testing.T) {
	for _, c := range []struct {
		order []int
		want  []string
	}{
		{[]int{1, 3, 2}, []string{"1 - 3 - 2"}},
		{[]int{1, 3, 2, 4}, []string{"1 - 3 - 2 -", "4"}},
		{[]int{1, 8, 4, 11, 7}, []string{"1 - 8 - 4 -", "11 - 7"}},
		{[]int{10, 11, 12}, []string{"10 - 11 -", "12"}},
		{[]int{1, 2, 3, 4, 5, 6}, []string{"1 - 2 - 3 -", "4 - 5 - 6"}},
	} {
		if got := inLines(c.order, 9); !slices.Equal(got, c.want) {
			t.Errorf("%v: %q", c.order, got)
		}
	}
}
