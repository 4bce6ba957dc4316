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
	if strings.Count(svg, "● ") < 2 || !strings.Contains(svg, "lifted out") || strings.Contains(svg, "style=") {
		t.Error("critical steps or windows are not told apart by marks and words")
	}
	if !strings.Contains(svg, "open, ") || !strings.Contains(svg, "← today, 2026-03-02") || !strings.Contains(s.Drawings[0].Description, s.Result("open").Text) {
		t.Error("neither the days on which she lies open nor today is drawn")
	}
	near := planned(t, strings.Replace(testboat.SpringWork, `"2026-03-02", `, `"2026-04-01", `, 1)).Drawings[0].SVG
	if !strings.Contains(near, ">today<") || !strings.Contains(near, "no work") {
		t.Error("today and the days without work are not drawn among the days of the plan")
	}
}
