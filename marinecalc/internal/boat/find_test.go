package boat_test

import (
	"strings"
	"testing"

	"example.org/driveline/marinecalc/internal/boat"
	"example.org/driveline/marinecalc/internal/testboat"
)

// What was read of a joint counts until the joint is apart or closed again, which a
// newer reading of its face's wear shows, or an event that renews it: then it is told
// and not found. A reading of the same time, one by one's own hand afterwards, and one
// of another joint stand; so does everything in the boat as of the day before.
func TestReadingsOfAJointThatWasClosedAgainCountNoMore(t *testing.T) {
	const nut, flange, gears, propeller = "outputNutLoosened", "backlashFlange", "backlashOutputShaft", "backlashPropeller"
	const loose = `{"date": "2026-03-01", "time": "10:00", "outputNutLoosened": "25 N·m", "backlashFlange": "2.8°", "backlashShaft": "2.9°", "backlashPropeller": "3°", "backlashOutputShaft": "0.3°"}`
	for _, c := range []struct {
		what, readings, events string
		gone, stand            []string
	}{
		{"nothing since", loose, "", nil, []string{nut, flange, gears, propeller}},
		{"the face read with them", strings.Replace(loose, `"time"`, `"outputFaceWear": "0.02 mm", "time"`, 1), "", nil, []string{nut, flange, propeller}},
		{"the face read before", loose + `, {"date": "2026-02-01", "outputFaceWear": "0 mm"}`, "", nil, []string{nut, flange}},
		{"the face read later that day", loose + `, {"date": "2026-03-01", "time": "16:00", "outputFaceWear": "0 mm"}`, "", []string{nut, flange, "backlashShaft", propeller}, []string{gears}},
		{"the face read a week later", loose + `, {"date": "2026-03-08", "outputFaceWear": "0 mm"}`, "", []string{nut, flange, "backlashShaft", propeller}, []string{gears}},
		{"and play after that", loose + `, {"date": "2026-03-08", "outputFaceWear": "0 mm"}, {"date": "2026-03-09", "backlashFlange": "0.3°"}`, "", []string{nut, "backlashShaft", propeller}, []string{flange, gears}},
		{"the propeller fitted again", loose, `{"date": "2026-03-02", "what": "propeller fitted", "renews": "backlashPropeller"}`, []string{propeller}, []string{nut, flange, gears}},
		{"fitted before it was read", loose, `{"date": "2026-02-02", "what": "propeller fitted", "renews": "backlashPropeller"}`, nil, []string{propeller}},
		{"fitted on that day", loose, `{"date": "2026-03-01", "what": "propeller fitted", "renews": "backlashPropeller"}`, nil, []string{propeller}},
		{"the gland packed", loose, `{"date": "2026-03-02", "what": "packed", "renews": "dripRate"}`, nil, []string{nut, flange, propeller}},
	} {
		b := testboat.Read(t, `{"name": "Twite", "readings": [`+c.readings+`], "events": [`+c.events+`]}`)
		told := b.Outdated()
		if len(told) != len(c.gone) {
			t.Errorf("%s: told %v", c.what, told)
		}
		for _, name := range c.gone {
			if v, _, date, ok := b.Find(boat.LatestReading + name); ok {
				t.Errorf("%s: %s of %s still counts, %v", c.what, name, date, v)
			}
			if !strings.Contains(told.Err().Error(), "/"+name) {
				t.Errorf("%s: %s is not told: %v", c.what, name, told)
			}
			if _, _, _, ok := b.AsOf("2026-03-01").Find(boat.LatestReading + name); !ok && !strings.Contains(c.what, "that day") {
				t.Errorf("%s: %s did not count on its own day", c.what, name)
			}
		}
		for _, name := range c.stand {
			if _, _, _, ok := b.Find(boat.LatestReading + name); !ok {
				t.Errorf("%s: %s counts no more", c.what, name)
			}
		}
	}
}

// The day that stands for today where nobody typed one is that of the newest reading, or
// of care that was taken later.
func TestTheNewestDayCountsCare(t *testing.T) {
	for text, want := range map[string]string{
		`{"name": "X", "readings": [{"date": "2026-05-01", "dripRate": "5 drips/min"}]}`:                                                                                                                       "2026-05-01",
		`{"name": "X", "readings": [{"date": "2026-05-01", "dripRate": "5 drips/min"}], "service": {"done": [{"item": "gland-packing", "date": "2026-05-04"}, {"item": "gland-read", "date": "2026-05-02"}]}}`: "2026-05-04",
		`{"name": "X", "readings": [{"date": "2026-05-01", "dripRate": "5 drips/min"}], "service": {"done": [{"item": "gland-packing", "date": "2026-04-04"}]}}`:                                               "2026-05-01",
		`{"name": "X", "service": {"done": [{"item": "gland-packing", "date": "2026-04-04"}]}}`:                                                                                                                "2026-04-04",
		`{"name": "X"}`: "",
	} {
		b, err := boat.Read([]byte(text))
		if err != nil {
			t.Fatal(err)
		}
		v, where, day, ok := b.Find(boat.LatestReading + "date")
		if got, _ := v.(string); got != want || day != want || ok != (want != "") || ok == (where == "") {
			t.Errorf("%s: %q at %q of %q", text, got, where, day)
		}
	}
}
