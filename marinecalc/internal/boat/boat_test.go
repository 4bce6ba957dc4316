package boat_test

import (
	"encoding/json"
	"fmt"
	"testing"

	"example.org/driveline/marinecalc/internal/testboat"
)

func TestNewestReadingIsTaken(t *testing.T) {
	b := testboat.Read(t, `{"name": "X", "readings": [
		{"date": "2026-03-01", "dripRate": "5 drips/min"}, {"date": "2026-05-01", "dripRate": "9 drips/min"}, {"date": "2026-04-01", "dripRate": "7 drips/min", "waterTemperature": "12 °C"}]}`)
	if v, where, date, _ := b.Find("/readings/latest/dripRate"); v != "9 drips/min" || where != "/boat/readings/1/dripRate" || date != "2026-05-01" {
		t.Errorf("got %v %s %s", v, where, date)
	}
	if v, _, date, _ := b.Find("/readings/latest/waterTemperature"); v != "12 °C" || date != "2026-04-01" {
		t.Errorf("got %v %s", v, date)
	}
}

// A reading of a day to come is told; tomorrow's is not, since elsewhere it is
// tomorrow already.
func TestReadingsOfDaysToCome(t *testing.T) {
	b := testboat.Read(t, `{"name": "X", "readings": [
		{"date": "2026-05-02", "engineHours": "1 h"}, {"date": "2062-05-01", "engineHours": "2 h"}, {"date": "2026-05-03", "engineHours": "3 h"}]}`)
	if list := b.Ahead("2026-05-01"); len(list) != 2 || list[0].Where != "/readings/1/date" || list[1].Where != "/readings/2/date" {
		t.Errorf("got %v", list)
	}
	if list := b.Ahead("2062-05-01"); len(list) != 0 {
		t.Errorf("on its day: %v", list)
	}
	if list := b.Ahead(""); len(list) != 0 {
		t.Errorf("with no day known: %v", list)
	}
}

// A run of readings begins with the part that is in: with an entry marked as
// changed, or on the day of an event that renewed it.
func TestRunOfAReading(t *testing.T) {
	const readings = `"readings": [
		{"date": "2025-05-01", "engineHours": "100 h", "bearingClearance": "0.5 mm"},
		{"date": "2026-05-01", "engineHours": "200 h", "bearingClearance": "0.1 mm"%s},
		{"date": "2026-06-01", "engineHours": "230 h", "bearingClearance": "0.12 mm"},
		{"date": "2026-07-01", "engineHours": "260 h", "bearingClearance": "0.14 mm"}]}`
	const event = `"events": [{"date": "2026-04-20", "what": "new bearing", "renews": "bearingClearance"}], `
	for name, c := range map[string]struct {
		text, day string
		value     any
		hours     string
	}{
		"one run":                {`{"name": "X", ` + fmt.Sprintf(readings, ""), "2026-07-01", "0.5 mm", "576000"},
		"changed":                {`{"name": "X", ` + fmt.Sprintf(readings, `, "changed": true`), "2026-07-01", "0.1 mm", "216000"},
		"an event":               {`{"name": "X", ` + event + fmt.Sprintf(readings, ""), "2026-07-01", "0.1 mm", "216000"},
		"the first of its run":   {`{"name": "X", ` + event + fmt.Sprintf(readings, ""), "2026-05-20", nil, ""},
		"before the event":       {`{"name": "X", ` + event + fmt.Sprintf(readings, ""), "2026-04-01", nil, ""},
		"no running between":     {`{"name": "X", "readings": [{"date": "2026-05-01", "engineHours": "200 h", "bearingClearance": "0.1 mm"}, {"date": "2026-06-01", "engineHours": "200 h", "bearingClearance": "0.1 mm"}]}`, "2026-07-01", nil, ""},
		"no hours known":         {`{"name": "X", "readings": [{"date": "2026-05-01", "bearingClearance": "0.1 mm"}, {"date": "2026-06-01", "bearingClearance": "0.1 mm"}]}`, "2026-07-01", nil, ""},
		"the meter was replaced": {`{"name": "X", "readings": [{"date": "2026-05-01", "engineHours": "900 h", "bearingClearance": "0.1 mm"}, {"date": "2026-06-01", "engineHours": "5 h", "bearingClearance": "0.1 mm"}]}`, "2026-07-01", nil, ""},
	} {
		b := testboat.Read(t, c.text)
		b = b.AsOf(c.day)
		v, _, _, found := b.Find("/readings/first-of-run/bearingClearance")
		h, _, _, timed := b.Find("/readings/hours-of-run/bearingClearance")
		if v != c.value || found != (c.value != nil) || timed != found || timed && h.(json.Number).String() != c.hours {
			t.Errorf("%s: %v, %v", name, v, h)
		}
	}
}
