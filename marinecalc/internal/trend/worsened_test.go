package trend_test

import (
	"fmt"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
)

// Too few readings for a line, and the newest worse than the first by more than
// the gauge explains: it is said. Counts of a minute lie within about twice their
// root (Poisson), two of them within the root of both: 8 and 25 differ, 8 and 12
// do not.
func TestFewReadingsThatGrowWorseAreTold(t *testing.T) {
	for _, c := range []struct {
		reading, from, to, side string
		told                    bool
	}{
		{"dripRate", "8 drips/min", "25 drips/min", "most", true},
		{"dripRate", "8 drips/min", "12 drips/min", "most", false},
		{"dripRate", "25 drips/min", "8 drips/min", "most", false},
		{"bearingClearance", "0.4 mm", "0.9 mm", "most", true},
		{"fluidLevel", "0 mm", "-20 mm", "least", true},
	} {
		boat := fmt.Sprintf(`{"name": "Dabchick", "readings": [{"date": "2026-05-01", "engineHours": "100 h", %[1]q: %[2]q}, {"date": "2026-05-15", "engineHours": "110 h", %[1]q: %[2]q}, {"date": "2026-05-29", "engineHours": "120 h", %[1]q: %[3]q}]}`, c.reading, c.from, c.to)
		s := testboat.Run(t, "reading-trend", fmt.Sprintf(`{"reading": %q}`, c.reading), marinecalc.Options{Boat: testboat.Read(t, boat)})
		says, _, _ := s.Result("says").Stands()
		if told := strings.Contains(says, "in 28 days, which is more than the gauge explains"); told != c.told {
			t.Errorf("%s from %s to %s: %s", c.reading, c.from, c.to, says)
		}
	}
	boat := testboat.Read(t, `{"name": "Dabchick", "readings": [{"date": "2026-05-01", "dripRate": "8 drips/min"}, {"date": "2026-05-02", "dripRate": "8 drips/min"}, {"date": "2026-05-03", "dripRate": "8 drips/min"}]}`)
	if _, err := marinecalc.Run("reading-trend", []byte(`{"reading": "dripRate", "limit": "60"}`), marinecalc.Options{Boat: boat}); err == nil || !strings.Contains(err.Error(), `write "60 drips/min"`) || strings.Contains(err.Error(), "bare number") {
		t.Errorf("a limit without its unit: %v", err)
	}
}
