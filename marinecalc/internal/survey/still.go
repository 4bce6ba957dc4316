// What the fault finding says of the shaft that must stand.

package survey

import (
	"strings"

	"example.org/driveline/marinecalc/internal/diagnosis"
)

// heldBack is why the shaft must not run, by the fault finding; "" where it
// may.
func (s *Survey) heldBack() string {
	out := s.sheet(diagnosis.FaultFinding)
	if out == nil || out.Result("heldBack") == nil {
		return ""
	}
	_, why, _ := strings.Cut(out.Result("heldBack").Text, ": ")
	return why
}

// lookFirst is the check that the fault finding proposes first while it
// suspects something; "" where it does not.
func (s *Survey) lookFirst() string {
	out := s.sheet(diagnosis.FaultFinding)
	if out == nil || out.Result("probability") == nil {
		return ""
	}
	if first := out.Cell("nextChecks", 0, "question"); first != nil {
		return first.Text
	}
	return ""
}

// runsShaft tells whether a reading is taken with the shaft running.
func (g *gatherer) runsShaft(m *group) bool {
	for _, row := range g.session.Book.Table("trend-readings").Rows.All() {
		if row.Pick == m.of && row.Values.Of("underWay").Text == "yes" {
			return true
		}
	}
	return false
}
