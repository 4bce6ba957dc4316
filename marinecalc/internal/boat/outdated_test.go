package boat_test

import (
	"reflect"
	"strings"
	"testing"

	"example.org/driveline/marinecalc/internal/boat"
	"example.org/driveline/marinecalc/rules"
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

// Care that renews sets aside what the event of that renewal does, in the same words, and
// once where both stand; care that tightens bolts sets their measured stretch aside, and
// is no event. Of the same day or before nothing is set aside.
func TestCareSetsAsideWhatItsEventDoes(t *testing.T) {
	const packed, bolts = `"dripRate": "0 drips/min", "glandTemperature": "66 °C"`, `"coupling": {"bolts": {"stretch": "0.01 mm", "grip": "24 mm"}}`
	const events = `{"date": "2026-05-03", "what": "Gland packing: renewed", "renews": "dripRate"}, {"date": "2026-05-03", "what": "Gland packing: renewed", "renews": "dripRateAtRest"}, {"date": "2026-05-03", "what": "Gland packing: renewed", "renews": "glandTemperature"}`
	under := func(readings, rest string) *boat.Boat {
		b, err := boat.Read([]byte(`{"name": "Tern", "readings": [{"date": "2026-05-01", ` + readings + `}]` + rest + `}`))
		if err != nil {
			t.Fatal(err)
		}
		return b.Under(rules.Standard())
	}
	done := func(item, day string) string {
		return `, "service": {"done": [{"item": "` + item + `", "date": "` + day + `"}]}`
	}
	all := func(b *boat.Boat) (list []boat.Event) {
		for e := range b.Events() {
			list = append(list, e)
		}
		return list
	}
	care, event, both := under(packed, done("gland-packing", "2026-05-03")), under(packed, `, "events": [`+events+`]`), under(packed, `, "events": [`+events+`]`+done("gland-packing", "2026-05-03"))
	if told := care.Outdated(); len(told) != 2 || !reflect.DeepEqual(told, event.Outdated()) || !reflect.DeepEqual(all(care), all(event)) || !reflect.DeepEqual(all(both), all(event)) {
		t.Errorf("care %v %v, event %v %v, both %v", told, all(care), event.Outdated(), all(event), all(both))
	}
	for _, name := range []string{"dripRate", "glandTemperature"} {
		if _, _, _, has := care.Find(boat.LatestReading + name); has {
			t.Errorf("%s counts", name)
		}
	}
	if then := care.AsOf("2026-05-02"); len(then.Outdated()) > 0 {
		t.Errorf("the day before: %v", then.Outdated())
	}
	for _, c := range []struct {
		rest   string
		stands bool
	}{
		{done("coupling-bolts", "2026-05-03"), false},
		{`, "events": [{"date": "2026-05-03", "what": "tightened", "renews": "coupling/bolts/stretch"}]`, false},
		{done("coupling-bolts", "2026-05-01"), true},
		{done("gland-packing", "2026-05-03"), true},
		{``, true},
	} {
		b := under(bolts, c.rest)
		_, _, _, stretch := b.Find("/coupling/bolts/stretch")
		_, _, _, grip := b.Find("/coupling/bolts/grip")
		if told := b.Outdated(); stretch != c.stands || !grip || (len(told) == 0) != c.stands || len(told) > 0 && told[0].Where != "/readings/0/coupling/bolts/stretch" {
			t.Errorf("%s: stretch %v, grip %v, told %v", c.rest, stretch, grip, told)
		}
	}
	if n := len(all(under(bolts, done("coupling-bolts", "2026-05-03")))); n > 0 {
		t.Errorf("bolts tightened: %d events", n)
	}
}

// Every reading that care sets aside is one that the boat file can have.
func TestCareSetsAsideReadings(t *testing.T) {
	b, err := boat.Read([]byte(`{"name": "Tern"}`))
	if err != nil {
		t.Fatal(err)
	}
	n := 0
	for _, row := range rules.Standard().Table("service-intervals").Rows.All() {
		_, readings := boat.RenewedBy(row)
		for _, name := range readings {
			n++
			if _, known := b.Describe(name); !known && name != "mountHeights" { // a list, read as a whole
				t.Errorf("%s: %s", row.ID, name)
			}
		}
	}
	if n == 0 {
		t.Error("none")
	}
}
