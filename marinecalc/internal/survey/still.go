// What looks first while the shaft must stand, and which readings wait.

package survey

import (
	"example.org/driveline/marinecalc/internal/diagnosis"
)

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
