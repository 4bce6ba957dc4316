package workplan

import (
	"fmt"

	"example.org/driveline/marinecalc/internal/calc"
	"example.org/driveline/marinecalc/rules"
)

// KeptStill is why the fault finding keeps the shaft still; "" where it may run.
func KeptStill(s *calc.Session) string {
	if out := s.Earlier("fault-finding"); out != nil {
		if r := out.Sheet.Result("heldBack"); r != nil {
			return r.Text
		}
	}
	return ""
}

// RunsAsFound tells whether a step runs the shaft before anything is cured.
func RunsAsFound(s rules.Step) bool {
	return s.Phase == "as-found" && rules.Contains(s.Hazards, "turning-shaft")
}

// leaveOut says, once, that a step is not planned because the shaft is to stay
// still.
func (p *planner) leaveOut(s rules.Step) {
	words := fmt.Sprintf("“%s” is left out: the fault finding keeps the shaft still. What the log has of her last run stands in its place.", s.Title)
	for _, has := range p.left {
		if has == words {
			return
		}
	}
	p.left = append(p.left, words)
}
