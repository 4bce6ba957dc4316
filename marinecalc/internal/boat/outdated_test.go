package boat_test

import (
	"strings"
	"testing"

	"example.org/driveline/marinecalc/internal/boat"
)

// A reading of what was renewed or set since is kept and not used, by whatever gauge
// it was taken, and that is told; one of the day of the work or later stands.
func TestAReadingOfWhatWasRenewedDoesNotCount(t *testing.T) {
	const file = `{"name": "Tern", "readings": [{"date": "2026-06-01", "dripRate": "5 drips/min", "bearingLift": "0.3 mm", "bearingLiftPull": "200 N"}],
		"events": [{"date": "%d", "what": "work", "renews": "%r"}]}`
	for _, c := range []struct {
		renews, date string
		gone         []string
	}{
		{"bearingClearance", "2026-08-01", []string{"bearingLift", "bearingLiftPull"}},
		{"bearingLift", "2026-08-01", []string{"bearingLift", "bearingLiftPull"}},
		{"dripRate", "2026-06-02", []string{"dripRate"}},
		{"dripRate", "2026-06-01", nil},
		{"dripRate", "2026-05-01", nil},
		{"couplingGaps", "2026-08-01", nil},
	} {
		b, err := boat.Read([]byte(strings.NewReplacer("%d", c.date, "%r", c.renews).Replace(file)))
		if err != nil {
			t.Fatal(err)
		}
		told := b.Outdated()
		for _, name := range []string{"dripRate", "bearingLift", "bearingLiftPull"} {
			gone := false
			for _, g := range c.gone {
				gone = gone || g == name
			}
			if _, _, _, has := b.Find(boat.LatestReading + name); has == gone {
				t.Errorf("%s renewed %s: %s counts: %v", c.renews, c.date, name, has)
			}
		}
		if (len(told) > 0) != (len(c.gone) > 0) || len(told) > 0 && !strings.Contains(told[0].What, "renewed or set on "+c.date) {
			t.Errorf("%s renewed %s: told %v", c.renews, c.date, told)
		}
		if then := b.AsOf("2026-06-01"); len(then.Outdated()) > 0 {
			t.Errorf("as of the reading it was gone: %v", then.Outdated())
		}
	}
}
