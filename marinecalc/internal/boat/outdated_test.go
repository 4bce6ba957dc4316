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

// What is to be done about it is of the reading: free play is read with the line at
// rest, drips under way, and a nut's torque when it is next loosened.
func TestWhatToDoAboutAnOldReadingIsOfTheReading(t *testing.T) {
	b, err := boat.Read([]byte(`{"name": "Tern", "readings": [{"date": "2026-06-01", "dripRate": "5 drips/min", "backlashFlange": "2°", "outputNutLoosened": "120 N·m"}, {"date": "2026-06-03", "outputFaceWear": "0.01 mm"}],
		"events": [{"date": "2026-06-02", "what": "packed", "renews": "dripRate"}]}`))
	if err != nil {
		t.Fatal(err)
	}
	want := map[string]string{"dripRate": "read it anew, as it was read before", "backlashFlange": "read it again before she runs under power", "outputNutLoosened": "it is read when the nut is next loosened"}
	for _, p := range b.Outdated() {
		name := p.Where[strings.LastIndex(p.Where, "/")+1:]
		if p.Hint != want[name] {
			t.Errorf("%s: %s", name, p.Hint)
		}
		delete(want, name)
	}
	if len(want) > 0 {
		t.Errorf("not told: %v", want)
	}
}
