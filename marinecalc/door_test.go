package marinecalc

import (
	"encoding/json"
	"fmt"
	"math"
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.org/driveline/marinecalc/rules"
	"example.org/driveline/marinecalc/sheet"
)

func mustRun(t *testing.T, id, input string, o Options) *Sheet {
	t.Helper()
	s, err := Run(id, []byte(input), o)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func demoBoat(t testing.TB, name string) *Boat {
	t.Helper()
	text, err := os.ReadFile("../testdata/boats/" + name + ".json")
	if err != nil {
		t.Fatal(err)
	}
	b, err := ReadBoat(text)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

func TestOriginsWinInTheirOrder(t *testing.T) {
	const boat = `{"name": "Test", "engine": {"power": "20 kW", "speed": "2400 rpm"}, "gearbox": {"ratioAhead": 2}`
	cases := []struct {
		name, boat, input string
		origin            sheet.Origin
		kilowatts         float64
	}{
		{"boat", boat + `}`, `{}`, sheet.FromBoat, 20},
		{"maker over boat", boat + `, "makersFigures": [{"of": "shaft-torque/enginePower", "value": "22 kW", "source": {"document": "Plate"}}]}`, `{}`, sheet.MakersFigure, 22},
		{"typed over all", boat + `, "makersFigures": [{"of": "shaft-torque/enginePower", "value": "22 kW", "source": {"document": "Plate"}}]}`, `{"enginePower": "25 kW"}`, sheet.Typed, 25},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			b, err := ReadBoat([]byte(c.boat))
			if err != nil {
				t.Fatal(err)
			}
			in := mustRun(t, "shaft-torque", c.input, Options{Boat: b, Trials: -1}).Input("enginePower")
			if in.Origin != c.origin || *in.SI != c.kilowatts*1000 {
				t.Errorf("got %s %g W", in.Origin, *in.SI)
			}
		})
	}
	s := mustRun(t, "shaft-torque", `{"enginePower": "20 kW", "engineSpeed": "2400 rpm", "gearRatioAhead": 2}`, Options{Trials: -1})
	if in := s.Input("gearboxEfficiency"); in.Origin != sheet.UsualValue || in.Source == "" {
		t.Errorf("the efficiency is %+v", in)
	}
}

func TestEarlierResultsAreTakenWithTheirRange(t *testing.T) {
	b := demoBoat(t, "kittiwake")
	s := mustRun(t, "gland-heat", `{}`, Options{Boat: b})
	in := s.Input("shaftSpeed")
	if in == nil || in.Origin != sheet.Earlier || in.Source != "Shaft torque" {
		t.Fatalf("the shaft speed is %+v", in)
	}
	torque := mustRun(t, "shaft-torque", `{}`, Options{Boat: b})
	if *in.SI != *torque.Result("shaftSpeed").SI {
		t.Errorf("%g here, %g there", *in.SI, *torque.Result("shaftSpeed").SI)
	}
}

// A maker's figure for a limit, once in the boat file, is what the verdict
// goes by, and the verdict says so.
func TestMakersLimitWins(t *testing.T) {
	gaps := `"couplingKind": "rigid", "couplingDiameter": "100 mm", "readings": [{"clock": "0°", "gap": "0.40 mm ± 0.001 mm"}, {"clock": "90°", "gap": "0.30 mm ± 0.001 mm"}, {"clock": "180°", "gap": "0.20 mm ± 0.001 mm"}, {"clock": "270°", "gap": "0.30 mm ± 0.001 mm"}]`
	limit := rigidLimit(t)
	plain := mustRun(t, "coupling-alignment", `{`+gaps+`}`, Options{}).Verdict(limit)
	if plain.Word != "beyond" || plain.Authority != "published" {
		t.Fatalf("without the maker: %+v", plain)
	}
	b, err := ReadBoat([]byte(`{"name": "Test", "makersFigures": [{"of": "` + limit + `", "value": 0.01, "source": {"document": "Coupling sheet", "clause": "p. 3"}}]}`))
	if err != nil {
		t.Fatal(err)
	}
	made := mustRun(t, "coupling-alignment", `{`+gaps+`}`, Options{Boat: b}).Verdict(limit)
	if made.Word != "within" || made.Authority != "maker's figure" || made.Source != "Coupling sheet, p. 3" {
		t.Errorf("with the maker: %+v", made)
	}
}

func rigidLimit(t *testing.T) string {
	t.Helper()
	for _, l := range rules.Standard().Limits("coupling-alignment") {
		if l.Max != nil && l.Max.SI == 0.001 && l.On == "gapPerDiameter" {
			return l.ID
		}
	}
	t.Fatal("there is no limit of a thousandth per diameter")
	return ""
}

func TestMakersResultStandsBesideOurs(t *testing.T) {
	s := mustRun(t, "bolt-preload", `{}`, Options{Boat: demoBoat(t, "juniper"), Trials: -1})
	m := s.Result("wrenchSetting").Maker
	if m == nil || m.Text != "30 lbf·ft" || !strings.Contains(m.Source, "p. 2") {
		t.Errorf("got %+v", m)
	}
}

// With a feeler gauge the reading is too near the limit to tell; the sheet
// names what would settle it.
func TestAGaugeTooCoarseIsNamed(t *testing.T) {
	s := mustRun(t, "coupling-alignment", `{"couplingKind": "rigid", "couplingDiameter": "102 mm", "readings": [{"clock": "0°", "gap": "0.385 mm"}, {"clock": "90°", "gap": "0.35 mm"}, {"clock": "180°", "gap": "0.30 mm"}, {"clock": "270°", "gap": "0.35 mm"}]}`, Options{})
	v := s.Verdict(rigidLimit(t))
	if v.Word != "cannot tell" || !strings.Contains(v.Settle, "dial") && !strings.Contains(v.Settle, "mean of") {
		t.Errorf("got %+v", v)
	}
}

// What rests on figures that no source confirms is never judged.
func TestUnsureFiguresAreNotJudged(t *testing.T) {
	overlay, err := Overlay([]byte(`{"limits": [{"id": "test-rise", "calculation": "gland-heat", "on": "temperatureRise", "title": "Computed rise", "max": "1 K", "source": {"document": "Test"}, "basis": "maker"}]}`))
	if err != nil {
		t.Fatal(err)
	}
	v := mustRun(t, "gland-heat", `{}`, Options{Boat: demoBoat(t, "kittiwake"), Rules: overlay}).Verdict("test-rise")
	if v == nil || v.Word != "cannot tell" || !strings.Contains(v.Sentence, "friction") {
		t.Errorf("got %+v", v)
	}
}

func TestOverlayReplacesAndAdds(t *testing.T) {
	book, err := Overlay([]byte(`{"table": "bolt-grades", "title": "Yard steel", "rows": [
		{"id": "yard-special", "name": "Yard special", "values": {"proofStrength": "600 MPa", "yieldStrength": "700 MPa"}, "source": {"document": "Yard certificate 12"}, "basis": "maker"}]}`))
	if err != nil {
		t.Fatal(err)
	}
	s := mustRun(t, "bolt-preload", `{"thread": "M10x1.5", "grade": "yard-special", "finish": "oiled"}`, Options{Rules: book, Trials: -1})
	if in := s.Input("proofStrength"); math.Abs(*in.SI-600e6) > 1 || in.Source != "Yard certificate 12" {
		t.Errorf("got %+v", in)
	}
	if rules.Standard().Table("bolt-grades").Find("yard-special", func(string) (float64, string, bool) { return 0, "", false }) != nil {
		t.Error("the standard rules were changed")
	}
	if !strings.Contains(strings.Join(s.Notes, " "), "Yard steel") {
		t.Errorf("the notes do not name the overlay: %v", s.Notes)
	}
}

// A row without a source does not load, and each fault is named.
func TestRowsWithoutSourceDoNotLoad(t *testing.T) {
	cases := []struct{ name, file, what string }{
		{"no source", `{"table": "bolt-grades", "rows": [{"id": "x", "values": {}, "basis": "maker"}]}`, "no source"},
		{"no basis", `{"table": "bolt-grades", "rows": [{"id": "x", "values": {}, "source": {"document": "D"}}]}`, "basis"},
		{"a column too many", `{"table": "bolt-grades", "rows": [{"id": "x", "values": {"colour": "red"}, "source": {"document": "D"}, "basis": "maker"}]}`, "columns"},
		{"a unit of another kind", `{"table": "bolt-grades", "rows": [{"id": "x", "values": {"proofStrength": "5 kg"}, "source": {"document": "D"}, "basis": "maker"}]}`, "proofStrength"},
		{"limits the wrong way round", `{"table": "thread-finishes", "rows": [{"id": "x", "values": {"nutFactor": {"low": 0.3, "typical": 0.2, "high": 0.4, "shape": "triangular"}}, "source": {"document": "D"}, "basis": "maker"}]}`, "order"},
		{"no side", `{"limits": [{"id": "x", "calculation": "gland-heat", "on": "measuredRise", "source": {"document": "D"}, "basis": "maker"}]}`, "max or min"},
		{"no table", `{"rows": [{"id": "x", "values": {}, "source": {"document": "D"}, "basis": "maker"}]}`, "no table"},
		{"no JSON", `{`, "cannot be read"},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			_, err := Overlay([]byte(c.file))
			if err == nil || !strings.Contains(err.Error(), c.what) {
				t.Errorf("got %v", err)
			}
		})
	}
}

// Problems of the boat file point into the boat file, also when a
// calculation finds them.
func TestProblemsOfTheBoatPointIntoTheBoat(t *testing.T) {
	_, err := ReadBoat([]byte(`{"name": "X", "shaft": {"diametre": "25 mm", "diameter": "25 kg"}, "readings": [{"date": "yesterday"}]}`))
	var places []string
	for _, p := range err.(Problems) {
		places = append(places, p.Where)
	}
	if diff := cmp.Diff([]string{"/readings/0/date", "/shaft/diameter"}, places); diff != "" {
		t.Error(diff)
	}
	b, err := ReadBoat([]byte(`{"name": "X", "shaft": {"diameter": "50 mm", "alloy": "c46400-h02"}, "gland": {"boxBore": "41 mm", "packedLength": "32 mm", "packing": "flax", "water": "sea"}, "readings": [{"date": "2026-01-01", "dripRate": "5 drips/min"}]}`))
	if err != nil {
		t.Fatal(err)
	}
	_, err = Run("gland-heat", []byte(`{"shaftSpeed": "1000 rpm"}`), Options{Boat: b})
	if err == nil || err.(Problems)[0].Where != "/boat/gland/boxBore" {
		t.Errorf("got %v", err)
	}
}

func TestNewestReadingIsTaken(t *testing.T) {
	b, err := ReadBoat([]byte(`{"name": "X", "readings": [
		{"date": "2026-03-01", "dripRate": "5 drips/min"}, {"date": "2026-05-01", "dripRate": "9 drips/min"}, {"date": "2026-04-01", "dripRate": "7 drips/min", "waterTemperature": "12 °C"}]}`))
	if err != nil {
		t.Fatal(err)
	}
	if v, where, date, _ := b.find("/readings/latest/dripRate"); v != "9 drips/min" || where != "/boat/readings/1/dripRate" || date != "2026-05-01" {
		t.Errorf("got %v %s %s", v, where, date)
	}
	if v, _, date, _ := b.find("/readings/latest/waterTemperature"); v != "12 °C" || date != "2026-04-01" {
		t.Errorf("got %v %s", v, date)
	}
}

// A section of the boat in a dated reading holds from that day on, member by
// member, and not before it.
func TestDatedSectionsHoldFromTheirDay(t *testing.T) {
	b, err := ReadBoat([]byte(`{"name": "X", "gland": {"packing": "flax", "boxBore": "41 mm"}, "symptoms": [{"evidence": "gland-hot", "answer": "yes"}],
		"readings": [
		{"date": "2026-05-01", "gland": {"packing": "ptfe"}, "symptoms": []},
		{"date": "2026-03-01", "gland": {"boxBore": "42 mm", "packing": "graphite"}},
		{"date": "2026-06-01", "dripRate": "5 drips/min"}]}`))
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		day, pointer string
		value        any
		where, date  string
	}{
		{"2026-06-01", "/gland/packing", "ptfe", "/boat/readings/0/gland/packing", "2026-05-01"},
		{"2026-06-01", "/gland/boxBore", "42 mm", "/boat/readings/1/gland/boxBore", "2026-03-01"},
		{"2026-04-01", "/gland/packing", "graphite", "/boat/readings/0/gland/packing", "2026-03-01"},
		{"2026-02-01", "/gland/packing", "flax", "/boat/gland/packing", ""},
		{"2026-02-01", "/gland/boxBore", "41 mm", "/boat/gland/boxBore", ""},
	} {
		if v, where, date, ok := b.asOf(c.day).find(c.pointer); !ok || v != c.value || where != c.where || date != c.date {
			t.Errorf("%s on %s: %v %s %s", c.pointer, c.day, v, where, date)
		}
	}
	if v, _, _, _ := b.find("/symptoms"); len(v.([]any)) != 0 {
		t.Errorf("an empty list of symptoms is %v", v)
	}
	if v, _, _, _ := b.asOf("2026-04-30").find("/symptoms"); len(v.([]any)) != 1 {
		t.Errorf("before it they are %v", v)
	}
	slip := `{"name":"X","readings":[{"date":"2026-05-01","gland":{"paking":"ptfe"}}]}`
	x, err := ReadBoat([]byte(slip))
	if err != nil {
		t.Fatal(err)
	}
	warnings := x.Warnings()
	if len(warnings) != 1 || warnings[0].Where != "/readings/0/gland/paking" || warnings[0].Hint != `did you mean "packing"?` {
		t.Errorf("a slip in a dated section: %v", warnings)
	}
	if kept, err := json.Marshal(x); err != nil || string(kept) != slip {
		t.Errorf("it is kept as %s (%v)", kept, err)
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
	const event = `"events": [{"date": "2026-04-20", "what": "new bush", "renews": "bearingClearance"}], `
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
		b, err := ReadBoat([]byte(c.text))
		if err != nil {
			t.Fatal(err)
		}
		b = b.asOf(c.day)
		v, _, _, found := b.find("/readings/first-of-run/bearingClearance")
		h, _, _, timed := b.find("/readings/hours-of-run/bearingClearance")
		if v != c.value || found != (c.value != nil) || timed != found || timed && h.(json.Number).String() != c.hours {
			t.Errorf("%s: %v, %v", name, v, h)
		}
	}
}

// A gauge is chosen among those that read the quantity in question.
func TestGaugesFitWhatTheyRead(t *testing.T) {
	for _, c := range []struct{ calculation, input, has, hasNot string }{
		{"gland-heat", "thermometer", "contact-thermometer", "feeler-gauge"},
		{"coupling-alignment", "gapGauge", "feeler-gauge", "torque-wrench"}, // it reads what stands in a list
		{"reading-trend", "readingGauge", "feeler-gauge", "nothing"},        // any kind of reading
	} {
		b, err := Open(c.calculation)
		if err != nil {
			t.Fatal(err)
		}
		blank, _ := json.Marshal(map[string]any{"ask": "blank", "calculation": c.calculation})
		var reply struct{ Choices map[string][]Choice }
		if err := json.Unmarshal(Call(blank), &reply); err != nil {
			t.Fatal(err)
		}
		i := slices.IndexFunc(b.Inputs, func(in BlankInput) bool { return in.Name == c.input })
		for door, list := range map[string][]Choice{"Go": b.Inputs[i].Choices, "the page": reply.Choices["gauges/"+c.input]} {
			picks := map[string]bool{}
			for _, choice := range list {
				picks[choice.Pick] = true
			}
			if !picks[c.has] || picks[c.hasNot] {
				t.Errorf("%s %s in %s: %v", c.calculation, c.input, door, list)
			}
		}
	}
}

func TestSurveySaysWhatIsMissing(t *testing.T) {
	s, err := Check(demoBoat(t, "kittiwake"), Options{Trials: -1})
	if err != nil {
		t.Fatal(err)
	}
	if len(s.Faults) > 0 {
		t.Errorf("the demo boat has faults: %+v", s.Faults)
	}
	bare, err := ReadBoat([]byte(`{"name": "Bare", "engine": {"power": "20 kW"}}`))
	if err != nil {
		t.Fatal(err)
	}
	s, err = Check(bare, Options{Trials: -1})
	if err != nil {
		t.Fatal(err)
	}
	if len(s.Sheets) != 0 || len(s.Missing) != len(catalogue) {
		t.Errorf("%d sheets, %d missing of %d", len(s.Sheets), len(s.Missing), len(catalogue))
	}
	for _, m := range s.Missing {
		if m.Calculation == "shaft-torque" && (len(m.Needs) != 2 || m.Needs[0].How == "") {
			t.Errorf("shaft torque needs %+v", m.Needs)
		}
	}
}

// A verdict that waits for a figure is drawn once the figure is typed, and the
// survey counts what waits.
func TestAwaitedFigureLetsMoreBeTold(t *testing.T) {
	boat := demoBoat(t, "kittiwake")
	s, err := Check(boat, Options{})
	if err != nil {
		t.Fatal(err)
	}
	waiting := 0
	for _, f := range s.Findings {
		if slices.Contains(f.Verdict.Awaits, "Peak torque") {
			waiting++
		}
	}
	if i := slices.IndexFunc(s.Awaited, func(a Awaited) bool { return a.Title == "Peak torque" }); i < 0 || waiting == 0 || s.Awaited[i].Verdicts != waiting || !slices.Contains(s.Awaited[i].Sheets, "key-strength") {
		t.Fatalf("%d verdicts wait for the peak torque, the survey has %+v", waiting, s.Awaited)
	}
	typed := mustRun(t, "key-strength", `{"peakTorque": "250 N·m"}`, Options{Boat: boat})
	for _, v := range typed.Verdicts {
		if len(v.Awaits) > 0 || v.Word == "cannot tell" {
			t.Errorf("with the peak torque typed: %+v", v)
		}
	}
}

// A brief sheet is the whole one but for its worked lines and drawings, and
// the sources that only those name.
func TestBriefSheet(t *testing.T) {
	boat := demoBoat(t, "kittiwake")
	for _, entry := range Calculations() {
		whole, brief := mustRun(t, entry.ID, `{}`, Options{Boat: boat}), mustRun(t, entry.ID, `{}`, Options{Boat: boat, Brief: true})
		if len(whole.Work) == 0 || len(brief.Work) > 0 || len(brief.Drawings) > 0 {
			t.Errorf("%s: whole has %d lines, brief %d and %d drawings", entry.ID, len(whole.Work), len(brief.Work), len(brief.Drawings))
		}
		whole.Work, whole.Drawings, whole.Sources = brief.Work, brief.Drawings, brief.Sources
		if diff := cmp.Diff(whole, brief); diff != "" {
			t.Errorf("%s, brief (-whole +brief):\n%s", entry.ID, diff)
		}
	}
	var reply struct{ OK bool }
	if err := json.Unmarshal(Call([]byte(`{"ask": "run", "calculation": "shaft-torque", "brief": "yes"}`)), &reply); err != nil || reply.OK {
		t.Error("brief as a text was taken")
	}
}

// The same seed gives the same numbers; another seed moves only the ranges,
// and those little.
func TestSeeds(t *testing.T) {
	const input = `{"thread": "M10x1.5", "grade": "iso-8.8", "finish": "oiled"}`
	a, again := mustRun(t, "bolt-preload", input, Options{Seed: 5}), mustRun(t, "bolt-preload", input, Options{Seed: 5})
	if diff := cmp.Diff(a, again); diff != "" {
		t.Error(diff)
	}
	b := mustRun(t, "bolt-preload", input, Options{Seed: 6}).Result("wrenchSetting")
	r := a.Result("wrenchSetting")
	if *r.SI != *b.SI || r.Low == b.Low || math.Abs(r.Low-b.Low) > 0.02**r.SI {
		t.Errorf("%v and %v", r.Low, b.Low)
	}
}

func TestUnitsChangeTheTextsOnly(t *testing.T) {
	const input = `{"thread": "7/16-14 UNC", "grade": "j429-5", "finish": "oiled"}`
	metric, us := mustRun(t, "bolt-preload", input, Options{Trials: -1}), mustRun(t, "bolt-preload", input, Options{Units: "us", Trials: -1})
	for i, r := range metric.Results {
		if *r.SI != *us.Results[i].SI {
			t.Errorf("%s: %g and %g", r.Name, *r.SI, *us.Results[i].SI)
		}
	}
	if !strings.HasSuffix(metric.Result("wrenchSetting").Text, "N·m") || !strings.HasSuffix(us.Result("wrenchSetting").Text, "lbf·ft") {
		t.Errorf("%s, %s", metric.Result("wrenchSetting").Text, us.Result("wrenchSetting").Text)
	}
}

// Every answer that a request can get is JSON with ok, and a refusal says
// where and what.
func TestCallAnswersEverything(t *testing.T) {
	cases := []struct {
		request string
		ok      bool
		has     string
	}{
		{`{"ask": "contents"}`, true, `"gland-heat"`},
		{`{"ask": "blank", "calculation": "bolt-preload"}`, true, `"M10x1.5"`},
		{`{"ask": "run", "calculation": "shaft-torque", "input": {"enginePower": "20 kW", "engineSpeed": "2400 rpm", "gearRatioAhead": 2}}`, true, `"shaftTorque"`},
		{`{"ask": "boat"}`, true, `"makersFigures"`},
		{`{"ask": "survey", "boat": {"name": "X"}}`, true, `"missing"`},
		{`{"ask": "survey"}`, false, `"/boat"`},
		{`{"ask": "run", "calculation": "shaft-tork"}`, false, `shaft-torque\"?`},
		{`{"ask": "run", "calculation": "shaft-torque", "input": 5}`, false, "not an object"},
		{`{"ask": "run", "calculation": "shaft-torque", "trials": 5, "input": {}}`, false, `"/trials"`},
		{`{"ask": "run", "calculation": "shaft-torque", "units": "imperial", "input": {}}`, false, `"/units"`},
		{`{"ask": "run", "calculation": "shaft-torque", "boat": {"name": 5}, "input": {}}`, false, `"/boat/name"`},
		{`{"ask": "run", "calculation": "shaft-torque", "overlays": [{"rows": 5}], "input": {}}`, false, `"/overlays/0`},
		{`{"ask": "run", "calculator": "shaft-torque"}`, false, `"/calculator"`},
		{`{"ask": "sing"}`, false, `"/ask"`},
		{`[]`, false, "not an object"},
		{``, false, "ends too early"},
	}
	for _, c := range cases {
		out := Call([]byte(c.request))
		var r struct {
			OK       bool
			Problems Problems
		}
		if err := json.Unmarshal(out, &r); err != nil {
			t.Errorf("%s: %v", c.request, err)
		}
		if r.OK != c.ok || !strings.Contains(string(out), c.has) || !c.ok && len(r.Problems) == 0 {
			t.Errorf("%s gives %.400s", c.request, out)
		}
	}
}

// Every drawing is well-formed XML with words for those who cannot see it.
func TestDrawingsAreWellFormed(t *testing.T) {
	s, err := Check(demoBoat(t, "kittiwake"), Options{Trials: -1})
	if err != nil {
		t.Fatal(err)
	}
	drawings := 0
	for _, one := range s.Sheets {
		for _, d := range one.Drawings {
			drawings++
			if problem := wellFormed(d.SVG); problem != "" {
				t.Errorf("%s: %s", d.Name, problem)
			}
			if d.Description == "" || !strings.Contains(d.SVG, "<desc>") || strings.Contains(d.SVG, "style=") {
				t.Errorf("%s: no description, or inline style", d.Name)
			}
		}
	}
	if drawings < 2 {
		t.Errorf("only %d drawings", drawings)
	}
}

// What is missing and can be had by choosing is asked for as that choice, once.
func TestMissingIsAskedForByItsChoice(t *testing.T) {
	b, err := ReadBoat([]byte(`{"name": "Ternlet", "coupling": {"bolts": {"thread": "M10x1.5", "grade": "iso-8.8"}}}`))
	if err != nil {
		t.Fatal(err)
	}
	survey, err := Check(b, Options{Trials: -1})
	if err != nil {
		t.Fatal(err)
	}
	i := slices.IndexFunc(survey.Missing, func(m Missing) bool { return m.Calculation == "bolt-preload" })
	if i < 0 || len(survey.Missing[i].Needs) != 1 || survey.Missing[i].Needs[0].Input != "finish" {
		t.Errorf("bolt preload needs %+v", survey.Missing)
	}
}
