package workplan_test

import (
	"strings"
	"testing"

	"example.org/driveline/marinecalc/internal/testboat"
)

func TestScheduleIsDrawn(t *testing.T) {
	s := planned(t, testboat.SpringWork)
	if len(s.Drawings) != 1 {
		t.Fatalf("%d drawings", len(s.Drawings))
	}
	svg := s.Drawings[0].SVG
	if problem := testboat.WellFormed(svg); problem != "" {
		t.Error(problem)
	}
	if strings.Count(svg, "● ") < 2 || !strings.Contains(svg, "no work") || !strings.Contains(svg, "lifted out") || strings.Contains(svg, "style=") {
		t.Error("critical steps or windows are not told apart by marks and words")
	}
}
