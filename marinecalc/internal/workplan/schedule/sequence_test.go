package schedule_test

import (
	"slices"
	"testing"

	"example.org/driveline/marinecalc/internal/workplan/schedule"
)

func TestSequence(t *testing.T) {
	tasks := []schedule.Task{{Name: "close", After: []int{2}}, {Name: "read as found"}, {Name: "work", After: []int{1}}, {Name: "more work"}, {Name: "late read", After: []int{0}}}
	order, under, err := schedule.Sequence(tasks, []int{3, 0, 2, 2, 0})
	if err != nil || !slices.Equal(order, []int{1, 2, 3, 0, 4}) || !slices.Equal(under, []int{3, 0, 2, 2, 3}) {
		t.Errorf("order %v under %v: %v", order, under, err)
	}
	// She is moved once, not three times.
	order, _, err = schedule.Sequence([]schedule.Task{{Place: schedule.Ashore}, {Place: schedule.Afloat}, {Place: schedule.Ashore}, {Place: schedule.Anywhere}}, []int{0, 0, 0, 0})
	if err != nil || !slices.Equal(order, []int{0, 2, 3, 1}) {
		t.Errorf("order %v: %v", order, err)
	}
	if _, _, err := schedule.Sequence([]schedule.Task{{Name: "a", After: []int{1}}, {Name: "b", After: []int{0}}}, []int{0, 0}); err == nil {
		t.Error("a circle has an order")
	}
}
