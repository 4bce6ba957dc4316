package signalk

import (
	"fmt"
	"math"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
)

func take(t *testing.T, text string, c Choice) ([]Entry, *Report) {
	t.Helper()
	entries, report, err := Take([]byte(text), c)
	if err != nil {
		t.Fatal(err)
	}
	return entries, report
}

func at(clock string) time.Time {
	t, err := time.Parse(time.RFC3339, "2026-06-01T"+clock+"Z")
	if err != nil {
		panic(err)
	}
	return t
}

// Units by the Signal K specification, groups/propulsion.json: revolutions in
// Hz are "x60 for RPM", runTime are "Engine Hours in seconds", temperatures K.
func TestWholeDocument(t *testing.T) {
	whole := `{"version": "1.7.0", "self": "vessels.urn:mrn:imo:mmsi:200000001", "vessels": {
		"urn:mrn:imo:mmsi:200000001": {"name": "Tern", "propulsion": {"main": {
			"revolutions": {"value": 30, "timestamp": "2026-06-01T10:20:30Z", "$source": "n2k.1", "meta": {"units": "Hz"}},
			"runTime": {"value": 4500000, "timestamp": "2026-06-01T10:20:31Z"},
			"transmission": {"oilTemperature": {"value": 343.15, "timestamp": "2026-06-01T10:20:29Z"}, "gear": {"value": "Forward", "timestamp": "2026-06-01T10:20:29Z"}}}},
			"navigation": {"position": {"value": {"latitude": 1, "longitude": 2}, "timestamp": "2026-06-01T10:20:30Z"}, "courseOverGroundTrue": {"value": 1.2, "timestamp": "2026-06-01T10:20:30Z"}},
			"environment": {"water": {"temperature": {"value": 288.15, "timestamp": "2026-06-01T10:20:30Z"}}, "depth": {"belowKeel": {"value": 3}}}},
		"urn:mrn:imo:mmsi:200000002": {"propulsion": {"main": {"revolutions": {"value": 99, "timestamp": "2026-06-01T10:20:30Z"}}}}}}`
	entries, report := take(t, whole, Choice{})
	want := []Entry{{at("10:20:30"), map[string]float64{"engineSpeed": 1800 * 2 * math.Pi / 60, "engineHours": 1250 * 3600, "gearboxTemperature": 343.15, "waterTemperature": 288.15}}}
	if diff := cmp.Diff(want, entries, cmp.Comparer(func(a, b float64) bool { return math.Abs(a-b) < 1e-9 })); diff != "" {
		t.Error(diff)
	}
	if len(report.Unknown) != 1 || report.Unknown[0].Path != "navigation.courseOverGroundTrue" || report.Others != 1 || report.Timeless != 1 || len(report.Taken) != 4 {
		t.Errorf("%+v", report)
	}
}

func delta(clock, path string, value float64) string {
	return fmt.Sprintf(`{"context": "vessels.self", "updates": [{"$source": "log", "timestamp": "2026-06-01T%sZ", "values": [{"path": %q, "value": %v}]}]}`, clock, path, value)
}

// An hour is one entry, at the highest engine speed; what was read more than a
// minute off it is not of that moment.
func TestAnHourIsItsHighestSpeed(t *testing.T) {
	const turns, oil, water = "propulsion.0.revolutions", "propulsion.0.transmission.oilTemperature", "environment.water.temperature"
	log := strings.Join([]string{
		`{"name": "recorder", "version": "1.7.0", "self": "vessels.urn:mrn:x"}`,
		delta("10:00:00", turns, 20), delta("10:30:00", turns, 40), delta("10:45:00", turns, 35), delta("10:59:00", turns, 0),
		delta("10:30:40", oil, 350), delta("10:30:20", oil, 349), delta("10:59:30", oil, 355), delta("10:28:59", water, 289),
		"",
		delta("11:10:00", turns, 0), delta("11:10:10", oil, 330),
		delta("12:10:00", oil, 320), delta("12:20:00", water, 288),
	}, "\r\n")
	entries, report := take(t, log, Choice{})
	want := []Entry{
		{at("10:30:00"), map[string]float64{"engineSpeed": 80 * math.Pi, "gearboxTemperature": 349}},
		{at("11:10:10"), map[string]float64{"fluidTemperature": 330}},
		{at("12:20:00"), map[string]float64{"waterTemperature": 288}},
	}
	if diff := cmp.Diff(want, entries, cmp.Comparer(func(a, b float64) bool { return math.Abs(a-b) < 1e-9 })); diff != "" {
		t.Error(diff)
	}
	if report.Entries != 3 || report.Others != 0 {
		t.Errorf("%+v", report)
	}
	if entries, _ := take(t, log, Choice{Every: 24 * time.Hour}); len(entries) != 1 || !entries[0].Time.Equal(at("10:30:00")) {
		t.Errorf("a day: %+v", entries)
	}
	list := "[" + strings.Join(strings.FieldsFunc(log, func(r rune) bool { return r == '\r' || r == '\n' }), ",") + "]"
	if same, _ := take(t, list, Choice{}); cmp.Diff(entries, same) != "" {
		t.Error("a list of deltas gives something else than a line each")
	}
}

func TestEnginesAndOwnReadings(t *testing.T) {
	two := "[" + delta("10:00:00", "propulsion.port.revolutions", 20) + "," + delta("10:00:00", "propulsion.starboard.revolutions", 30) + "," + delta("10:00:10", "propulsion.starboard.oilPressure", 3e5) + "]"
	if _, _, err := Take([]byte(two), Choice{}); err == nil || !strings.Contains(err.Error(), "port, starboard") {
		t.Errorf("two engines, and none named: %v", err)
	}
	if _, _, err := Take([]byte(two), Choice{Engine: "starbord"}); err == nil || !strings.Contains(err.Error(), `did you mean "starboard"`) {
		t.Error(err)
	}
	entries, report := take(t, two, Choice{Engine: "starboard", Own: map[string]string{"propulsion.*.oilPressure": "oilPressure"}})
	if len(entries) != 1 || entries[0].Values["own/oilPressure"] != 3e5 || math.Abs(entries[0].Values["engineSpeed"]-60*math.Pi) > 1e-9 {
		t.Errorf("%+v", entries)
	}
	if len(report.Unknown) != 1 || report.Unknown[0].Path != "propulsion.port.revolutions" {
		t.Errorf("%+v", report)
	}
	var many []string
	for i := range 60 {
		many = append(many, delta("10:00:00", fmt.Sprintf("tanks.fuel.%d.currentLevel", i), 0.5))
	}
	if _, report := take(t, strings.Join(many, "\n"), Choice{}); len(report.Unknown) != 50 || report.More != 10 {
		t.Errorf("%d unknown paths and %d more", len(report.Unknown), report.More)
	}
}

func TestWhatIsNoSignalK(t *testing.T) {
	for text, want := range map[string]string{
		"":                                   "/signalK",
		`{"name": "Tern"}`:                   "this is no Signal K",
		`[1]`:                                "/signalK/0",
		delta("10:00:00", "a", 1) + "\n{":    "/signalK/2",
		delta("10:00:00", "a", 1) + "\n[{}]": "/signalK/2/0",
		`{"vessels": {"a": {}, "b": {}}}`:    "which vessel",
	} {
		if _, _, err := Take([]byte(text), Choice{}); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%.40q: %v, want %q in it", text, err, want)
		}
	}
	for _, every := range []time.Duration{time.Second, 25 * time.Hour, -time.Hour} {
		if _, _, err := Take([]byte(delta("10:00:00", "a", 1)), Choice{Every: every}); err == nil {
			t.Errorf("an entry for each %v", every)
		}
	}
	others := delta("10:00:00", "propulsion.0.revolutions", 1)
	others = `{"self": "vessels.urn:mrn:x"}` + "\n" + strings.Replace(others, "vessels.self", "vessels.urn:mrn:y", 1)
	if entries, report := take(t, others, Choice{}); len(entries) != 0 || report.Others != 1 {
		t.Errorf("another vessel's: %+v", report)
	}
}

func FuzzTake(f *testing.F) {
	f.Add([]byte(delta("10:00:00", "propulsion.0.revolutions", 20)))
	f.Add([]byte(`{"self":"a","vessels":{"a":{"propulsion":{"m":{"runTime":{"value":1,"timestamp":"2026-06-01T10:00:00Z"}}}}}}`))
	f.Fuzz(func(t *testing.T, text []byte) {
		entries, _, err := Take(text, Choice{})
		if err == nil {
			for _, e := range entries {
				if len(e.Values) == 0 {
					t.Error("an entry of nothing")
				}
			}
		}
	})
}
