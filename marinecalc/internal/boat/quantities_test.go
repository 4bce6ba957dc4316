package boat_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/boat"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/problem"
	"github.com/google/go-cmp/cmp"
)

const logged = `{"name": "Tern",
	"ownReadings": [{"name": "oilPressure", "title": "Oil pressure at idle, hot", "kind": "pressure", "unit": "bar", "side": "least"}, {"name": "knocks", "title": "Knocks counted", "kind": "number"}],
	"readings": [
	{"date": "2026-05-02", "time": "18:30", "source": "own reading", "gauges": [{"reading": "dripRate", "gauge": "drip-count-long"}], "dripRate": "6 drips/min", "baseline": true,
	 "couplingGaps": [{"clock": "12 o'clock", "gap": "0.30 mm"}, {"clock": "3 o'clock", "gap": "0.20 mm"}, {"clock": "6 o'clock", "gap": "0.30 mm"}, {"clock": "9 o'clock", "gap": "0.30 mm"},
	  {"clock": "0°", "gap": "0.40 mm", "turn": "90°"}]},
	{"date": "2026-05-02", "time": "07:40", "dripRate": "9 drips/min", "mounts": [{"name": "front port", "forward": "800 mm", "starboard": "-200 mm", "deflectionNow": "4.2 mm"}, {"name": "aft", "forward": "0 mm", "starboard": "0 mm"}]},
	{"date": "2026-06-01", "source": "laboratory report 12", "wearIron": "32 mg/kg", "count14": 2900, "sampleVolume": "100 mL", "code14": 12, "gland": {"followerDepth": "9 mm"},
	 "mountHeights": [{"mount": "front port", "height": "62.4 mm"}], "own": [{"reading": "oilPressure", "value": "2.1 bar"}, {"reading": "knocks", "value": "3"}]}
]}`

func TestEveryNumberOfTheBoatIsASeries(t *testing.T) {
	b := testboat.Read(t, logged)
	if w := b.Warnings(); len(w) > 0 {
		t.Errorf("warnings %v", w)
	}
	for name, want := range map[string]float64{
		"dripRate": 0.15, "wearIron": 32e-6, "count14": 29, "code14": 12, "gland/followerDepth": 0.009, "mountHeights/front port": 0.0624, "mounts/front port/deflectionNow": 0.0042,
		"couplingGaps/0°": 0.35e-3, "couplingGaps/90°": 0.2e-3, "own/oilPressure": 2.1e5, "own/knocks": 3,
	} {
		series := b.Series(name)
		if name == "dripRate" {
			if len(series) != 2 || math.Abs(series[0].SI-0.1) > 1e-12 || series[0].Gauge(name) != "drip-count-long" || series[0].Time != "18:30" || series[0].Source() != "own reading" || !series[0].Baseline() || series[1].Baseline() {
				t.Errorf("drips: %+v", series)
			}
			continue
		}
		if len(series) != 1 || math.Abs(series[0].SI-want) > 1e-9*want {
			t.Errorf("%s: %+v, want %g", name, series, want)
		}
	}
	var names []string
	for _, f := range b.Followable() {
		names = append(names, f.Name)
		if f.Name == "dripRate" && (f.Readings != 2 || f.Newest.Time != "18:30" || !f.Baseline) {
			t.Errorf("%+v", f)
		}
		if f.Aside() != (f.Name == "couplingGaps/0°/turn") {
			t.Errorf("%s is aside: %v", f.Name, f.Aside())
		}
	}
	if want := []string{"couplingGaps/0°", "couplingGaps/90°", "couplingGaps/180°", "couplingGaps/270°", "couplingGaps/0°/turn", "dripRate"}; !cmp.Equal(names[:6], want) {
		t.Errorf("followed are %v", names)
	}
	if q, ok := b.Describe("own/oilPressure"); !ok || q.Side != "least" || q.Title != "Oil pressure at idle, hot" || q.Units[0] != "bar" {
		t.Errorf("%+v", q)
	}
	if _, ok := b.Describe("gearboxTemperature"); !ok {
		t.Error("what was not read yet is not described")
	}
	for _, none := range []string{"dripsRate", "note", "own/oilpressure", "gland", "mounts/front port"} {
		if _, ok := b.Describe(none); ok {
			t.Errorf("%s is described", none)
		}
	}
}

// Of two readings of one day the later one is the newest, wherever it stands.
func TestTheLaterOfOneDayCounts(t *testing.T) {
	b := testboat.Read(t, logged)
	if v, _, _, _ := b.Find("/readings/latest/dripRate"); v != "6 drips/min" {
		t.Errorf("newest is %v", v)
	}
	b = testboat.Read(t, strings.ReplaceAll(logged, "18:30", "06:30"))
	if v, _, _, _ := b.Find("/readings/latest/dripRate"); v != "9 drips/min" {
		t.Errorf("newest is %v", v)
	}
	if _, err := marinecalc.ReadBoat([]byte(`{"name": "Tern", "readings": [{"date": "2026-05-02", "time": "25:00"}]}`)); err == nil || !strings.HasPrefix(problem.Of(err)[0].Where, "/readings/0/time") {
		t.Errorf("an hour that is none: %v", err)
	}
}

// Names that name nothing are told, with the closest that do.
func TestNamesInsideReadingsAreHeldAgainstTheBoat(t *testing.T) {
	for _, c := range []struct{ entry, where, hint string }{
		{`"dripRate": "6 drips/min", "gauges": [{"reading": "dripsRate", "gauge": "drip-count"}]`, "/readings/0/gauges/0/reading", "dripRate"},
		{`"own": [{"reading": "oilPresure", "value": "2 bar"}]`, "/readings/0/own/0/reading", "oilPressure"},
		{`"own": [{"reading": "oilPressure", "value": "2 mm"}]`, "/readings/0/own/0/value", ""},
		{`"own": [{"reading": "oilPressure", "value": "2 bar"}]`, "", ""},
		{`"couplingGaps": [{"clock": "0°", "gap": "1 mm"}, {"clock": "90°", "gap": "1 mm"}, {"clock": "180°", "gap": "1 mm"}, {"clock": "270°", "gap": "1 mm"}], "gauges": [{"reading": "couplingGaps", "gauge": "feeler-gauge"}]`, "", ""},
	} {
		b := testboat.Read(t, `{"name": "Tern", "ownReadings": [{"name": "oilPressure", "title": "Oil pressure", "kind": "pressure"}], "readings": [{"date": "2026-05-02", `+c.entry+`}]}`)
		w := b.Warnings()
		if len(w) > 1 || (len(w) == 1) != (c.where != "") || len(w) == 1 && (w[0].Where != c.where || !strings.Contains(w[0].Hint, c.hint)) {
			t.Errorf("%s: %v", c.entry, w)
		}
	}
}

// The table carries time, source, gauges and lists, and brings them back.
func TestTheTableCarriesTimeSourceAndGauge(t *testing.T) {
	b := testboat.Read(t, logged)
	table := string(marinecalc.ReadingsCSV(b))
	for _, want := range []string{"18:30", "laboratory report 12", "dripRate: drip-count-long", "front port: 62.4 mm", "oilPressure: 2.1 bar; knocks: 3", "12 o'clock: 0.30 mm", "(turn 90°)", "32 mg/kg"} {
		if !strings.Contains(table, want) {
			t.Errorf("%q is not in the table:\n%s", want, table)
		}
	}
	empty := testboat.Read(t, `{"name": "Tern", "ownReadings": [{"name": "oilPressure", "title": "Oil pressure at idle, hot", "kind": "pressure", "unit": "bar"}, {"name": "knocks", "title": "Knocks counted", "kind": "number"}]}`)
	back, err := marinecalc.AddReadingsCSV(empty, []byte(table))
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(table, string(marinecalc.ReadingsCSV(back))); diff != "" {
		t.Errorf("(-out +back):\n%s", diff)
	}
	for _, name := range []string{"dripRate", "couplingGaps/0°", "mountHeights/front port", "own/knocks", "count14"} {
		want, got := b.Series(name), back.Series(name)
		if len(want) != len(got) || len(got) == 0 || math.Abs(want[0].SI-got[0].SI) > 1e-12 || want[0].Gauge(name) != got[0].Gauge(name) {
			t.Errorf("%s came back as %+v, was %+v", name, got, want)
		}
	}
	_, err = marinecalc.AddReadingsCSV(empty, []byte("date,mountHeights\n2026-05-02,62 mm\n"))
	if p := problem.Of(err); len(p) != 1 || p[0].Where != "/csv/2/mountHeights" || !strings.Contains(p[0].Allowed, "front port: …") {
		t.Errorf("a list that is none: %v", err)
	}
	if !slices.ContainsFunc(slices.Collect(back.Readings()), func(e *boat.Entry) bool { return e.Source() == "laboratory report 12" }) {
		t.Error("the source is lost")
	}
}
