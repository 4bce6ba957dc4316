package main

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
)

// said is what one run of the command said.
type said struct {
	code      int
	out, errs string
}

func say(stdin string, args ...string) said {
	var out, errs bytes.Buffer
	code := run(args, strings.NewReader(stdin), &out, &errs)
	return said{code, out.String(), errs.String()}
}

func file(t *testing.T, name, text string) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), name)
	if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
	return path
}

var bolt = []string{"fill", "bolt-preload", "--thread", "M10x1.5", "--grade", "iso-8.8", "--finish", "oiled"}

const crooked = `[{"clock":"0°","gap":"0.60 mm"},{"clock":"90°","gap":"0.40 mm"},{"clock":"180°","gap":"0.20 mm"},{"clock":"270°","gap":"0.40 mm"}]`

func TestExitCodes(t *testing.T) {
	cases := []struct {
		name string
		args []string
		code int
	}{
		{"done", bolt, exitDone},
		{"a limit is beyond", []string{"fill", "coupling-alignment", "--coupling-kind", "rigid", "--coupling-diameter", "100 mm", "--readings", crooked}, exitBeyond},
		{"a boat with a limit beyond", []string{"survey", "../../testdata/boats/kittiwake.json"}, exitBeyond},
		{"no command", nil, exitBad},
		{"an unknown command", []string{"calculate"}, exitBad},
		{"an unknown calculation", []string{"fill", "bolt-preloat"}, exitBad},
		{"a missing input", []string{"fill", "shaft-torque", "--engine-power", "20 kW"}, exitBad},
		{"an unknown flag", []string{"fill", "shaft-torque", "--engine-powr", "20 kW"}, exitBad},
		{"no such boat file", []string{"survey", "nowhere.json"}, exitFile},
		{"no such rules", append(bolt, "--rules", "nowhere.json"), exitFile},
		{"help", []string{"help"}, exitDone},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			s := say("", c.args...)
			if s.code != c.code {
				t.Errorf("exit code %d, want %d\n%s%s", s.code, c.code, s.out, s.errs)
			}
			if (s.errs != "") != (c.code >= exitBad) {
				t.Errorf("standard error: %q", s.errs)
			}
		})
	}
}

func TestProblemsNameTheirFlag(t *testing.T) {
	s := say("", "fill", "gland-heat", "--shaft-diameter", "32", "--box-bore", "41 kg", "--packing", "flaks")
	for _, want := range []string{"--shaft-diameter: ", "--box-bore: ", `"32 mm"`} {
		if !strings.Contains(s.errs, want) {
			t.Errorf("%q is not in\n%s", want, s.errs)
		}
	}
}

func TestFlagsFileAndStandardInputAgree(t *testing.T) {
	const input = `{"thread": "M10x1.5", "grade": "iso-8.8", "finish": "oiled"}`
	flags := say("", append(bolt, "--json")...)
	fromFile := say("", "fill", "bolt-preload", "--json", "--input", file(t, "in.json", input))
	fromStdin := say(input, "fill", "bolt-preload", "--json", "--input", "-")
	mixed := say(`{"thread": "M8x1.25", "grade": "iso-8.8", "finish": "oiled"}`, "fill", "bolt-preload", "--json", "--input", "-", "--thread", "M10x1.5")
	for name, s := range map[string]said{"file": fromFile, "standard input": fromStdin, "flag over file": mixed} {
		if s.code != exitDone || s.out != flags.out {
			t.Errorf("%s differs from flags: %s", name, s.errs)
		}
	}
}

// The command line shows the numbers of the Go API.
func TestSameNumbersAsTheLibrary(t *testing.T) {
	s := say("", append(bolt, "--json", "--units", "us")...)
	var got marinecalc.Sheet
	if err := json.Unmarshal([]byte(s.out), &got); err != nil {
		t.Fatal(err)
	}
	want, err := marinecalc.Run("bolt-preload", []byte(`{"thread": "M10x1.5", "grade": "iso-8.8", "finish": "oiled"}`), marinecalc.Options{Units: "us"})
	if err != nil {
		t.Fatal(err)
	}
	for i, r := range want.Results {
		g := got.Results[i]
		if g.Name != r.Name || g.Text != r.Text || !reflect.DeepEqual(g.Spread, r.Spread) || *g.SI != *r.SI {
			t.Errorf("%s: %s %v, library %s %v", r.Name, g.Text, g.Spread, r.Text, r.Spread)
		}
	}
}

func TestTheSheetAsText(t *testing.T) {
	s := say("", append(bolt, "--work")...)
	for _, want := range []string{"Wrench setting", "95 %:", "WARNING", "What went in", "Worked lines", "T_S = K · F · d", "handbook row"} {
		if !strings.Contains(s.out, want) {
			t.Errorf("%q is not on the sheet", want)
		}
	}
	if short := say("", bolt...); strings.Contains(short.out, "Worked lines") {
		t.Error("the worked lines are shown without being asked for")
	}
}

func TestRulesLaidOver(t *testing.T) {
	rules := file(t, "yard.json", `{"table": "bolt-grades", "title": "Yard", "rows": [{"id": "yard", "name": "Yard steel", "values": {"proofStrength": "500 MPa", "yieldStrength": "600 MPa"}, "source": {"document": "Certificate 7"}, "basis": "maker"}]}`)
	s := say("", "fill", "bolt-preload", "--thread", "M10x1.5", "--grade", "yard", "--finish", "oiled", "--rules", rules, "--work")
	if s.code != exitDone || !strings.Contains(s.out, "Certificate 7") {
		t.Errorf("%s%s", s.out, s.errs)
	}
}

func TestFindLeadsOn(t *testing.T) {
	for words, want := range map[string]string{"clunk": "question knock-into-gear", "3/8-24": `fill bolt-preload --thread "3/8-24 UNF"`, "repack": "procedure repack-gland", "xyzzy": "Nothing by these words"} {
		if got := say("", "find", words); !strings.Contains(got.out, want) {
			t.Errorf("find %s: %s", words, got.out)
		}
	}
	if got := say("", "find"); got.code == 0 || !strings.Contains(got.errs, "not told what to find") {
		t.Errorf("find of nothing: %+v", got)
	}
}

func TestIndexAndBlankNameEverything(t *testing.T) {
	index := say("", "index")
	for _, c := range marinecalc.Calculations() {
		if !strings.Contains(index.out, c.ID) {
			t.Errorf("the index lacks %s", c.ID)
		}
		form, err := marinecalc.Open(c.ID)
		if err != nil {
			t.Fatal(err)
		}
		blank := say("", "blank", c.ID)
		for _, in := range form.Inputs {
			if !strings.Contains(blank.out, "--"+flagName(in.Name)+": ") {
				t.Errorf("the blank of %s lacks --%s", c.ID, flagName(in.Name))
			}
		}
	}
}

func TestSurveySaysWhatIsMissing(t *testing.T) {
	bare := file(t, "boat.json", `{"name": "Bare", "engine": {"power": "20 kW"}}`)
	if s := say("", "survey", bare); s.code != exitDone || strings.Contains(s.out, "still needs") || !strings.Contains(s.out, "Measure: ") || !strings.Contains(s.out, "sheets lack inputs") {
		t.Errorf("in short: %s%s", s.out, s.errs)
	}
	s := say("", "survey", bare, "--all")
	if s.code != exitDone || !strings.Contains(s.out, "Shaft torque still needs:") {
		t.Errorf("%s%s", s.out, s.errs)
	}
}

// One reading at a time, any number of the boat; a slip is told by its flag.
func TestLogOfAReading(t *testing.T) {
	boat := file(t, "tern.json", `{"name": "Tern", "readings": [{"date": "2026-05-02", "dripRate": "6 drips/min"}]}`)
	s := say("", "log", boat, "--reading", "wearIron", "--value", "32 ppm", "--date", "2026-06-01", "--time", "10:30", "--source", "laboratory 7", "--gauge", "laboratory-metals")
	if s.code != exitDone {
		t.Fatal(s.errs)
	}
	logged := file(t, "logged.json", s.out)
	if s := say("", "readings", logged, "--list"); s.code != exitDone || !strings.Contains(s.out, "Iron in the fluid: 1, newest 32 ppm on 2026-06-01, 10:30,") || !strings.Contains(s.out, "gearboxTemperature") {
		t.Errorf("%s%s", s.out, s.errs)
	}
	for _, c := range [][]string{{"--reading", "wearIorn", "--value", "32 ppm", "--date", "2026-06-01"}, {"--value", "32 mm", "--reading", "wearIron", "--date", "2026-06-01"}, {"--date", "June", "--reading", "wearIron", "--value", "3 ppm"}, {"--time", "25:00", "--reading", "wearIron", "--value", "3 ppm", "--date", "2026-06-01"}} {
		if s := say("", append([]string{"log", boat}, c...)...); s.code != exitBad || !strings.Contains(s.errs, c[0]) {
			t.Errorf("%v: %d, %s", c, s.code, s.errs)
		}
	}
}

func TestReadingsGoOutAndIn(t *testing.T) {
	boat := file(t, "tern.json", `{"name": "Tern", "readings": [{"date": "2026-05-02", "dripRate": "6 drips/min"}]}`)
	if s := say("", "readings", boat); s.code != exitDone || s.out != "date,dripRate\r\n2026-05-02,6 drips/min\r\n" {
		t.Errorf("%+v", s)
	}
	table := file(t, "log.csv", "date,dripRate,count6\n2026-06-01,7 drips/min,40000\n")
	out := filepath.Join(t.TempDir(), "new.json")
	if s := say("", "readings", boat, "--add", table, "--out", out); s.code != exitDone || s.out != "" {
		t.Fatalf("%+v", s)
	}
	if s := say("", "readings", out); !strings.Contains(s.out, "2026-06-01,7 drips/min,40000") {
		t.Errorf("%+v", s)
	}
	for name, args := range map[string][]string{
		"no boat":            {"readings"},
		"no such table":      {"readings", boat, "--add", "nowhere.csv"},
		"no unit":            {"readings", boat, "--add", file(t, "bad.csv", "date,dripRate\n2026-06-01,7\n")},
		"nowhere to write":   {"readings", boat, "--out", filepath.Join(out, "x.csv")},
		"an unknown flag":    {"readings", boat, "--ad", table},
		"a boat that is bad": {"readings", file(t, "bad.json", `{"nam": "Tern"}`)},
	} {
		want := exitBad
		if name == "no such table" || name == "nowhere to write" {
			want = exitFile
		}
		if s := say("", args...); s.code != want || s.errs == "" || s.out != "" {
			t.Errorf("%s: %+v", name, s)
		}
	}
	if s := say("", "readings", boat, "--add", file(t, "slip.csv", "date,dripRate\n2026-06-01,7\n")); !strings.Contains(s.errs, "slip.csv/2/dripRate") {
		t.Errorf("the place is not named: %s", s.errs)
	}
}

func TestBlankListsWhatAnEntryCanBe(t *testing.T) {
	for calculation, pick := range map[string]string{"work-plan": "repack-gland", "fault-finding": "knock-into-gear"} {
		if s := say("", "blank", calculation); !strings.Contains(s.out, "\n      "+pick+" ") {
			t.Errorf("%s does not list %s", calculation, pick)
		}
	}
}

// What goes with what is given stands first, the rest under what it is not for.
func TestBlankPutsFirstWhatGoesWithTheRest(t *testing.T) {
	s := say("", "blank", "bolt-preload", "--thread", "3/8-24 UNF")
	_, nuts, _ := strings.Cut(s.out, "\n--nut: ")
	mine, others, head := strings.Index(nuts, "\n      ne-3/8-24 "), strings.Index(nuts, "\n      ne-3/8-16 "), strings.Index(nuts, "\n    Not for 3/8-24 UNF:\n")
	if s.code != 0 || mine < 0 || mine > head || head > others {
		t.Errorf("%d: %d, %d, %d", s.code, mine, head, others)
	}
	if s := say("", "blank", "bolt-preload", "--tread", "3/8"); s.code != exitBad || !strings.Contains(s.errs, "--thread") {
		t.Errorf("a slip in a flag: %+v", s)
	}
}

// What the boat file holds beyond its schema is named, and stands in no way.
func TestUnknownMembersAreWarnedOf(t *testing.T) {
	boat := file(t, "boat.json", `{"name": "Tern", "shaft": {"diametre": "30 mm"}}`)
	if s := say("", "survey", boat, "--no-ranges"); s.code == exitBad || !strings.Contains(s.errs, `warning: `+boat+`/shaft/diametre`) || !strings.Contains(s.errs, `did you mean "diameter"`) {
		t.Errorf("exit code %d, %s", s.code, s.errs)
	}
}

// A rule file is checked by itself and wherever it is applied: the fault with
// file and line, what it replaces and adds with what was in force.
func TestRules(t *testing.T) {
	const backing = `"source": {"document": "Yard sheet 7"}, "basis": "maker"`
	good := file(t, "yard.json", `{"title": "Yard", "limits": [
 {"id": "worn-share", "calculation": "bearing-clearance", "on": "clearanceRatio", "title": "Ours", "max": 0.02, `+backing+`},
 {"id": "ours", "calculation": "gland-heat", "on": "measuredRise", "title": "Ours", "max": 15, `+backing+`}]}`)
	s := say("", "rules", good)
	for _, want := range []string{"line 2: replaces limits worn-share, Ours: at most 0.02, in place of at most 0.025 [", "line 3: adds limits ours, Ours: at most 15"} {
		if s.code != exitDone || !strings.Contains(s.out, want) {
			t.Errorf("%+v, want %q", s, want)
		}
	}
	const warning = "warning: "
	if !strings.HasPrefix(s.errs, warning+good+":3: /limits/1/max: 15 is read as 15 K") {
		t.Error(s.errs)
	}
	if s := say("", append(bolt, "--rules", good)...); s.code != exitDone || !strings.HasPrefix(s.errs, warning) {
		t.Errorf("%+v", s)
	}
	bad := file(t, "yard.json", "{\"title\": \"Yard\",\n \"limit\": []}")
	for _, args := range [][]string{{"rules", bad}, append(bolt, "--rules", bad), {"survey", "../../testdata/boats/kittiwake.json", "--rules", bad}} {
		if s := say("", args...); s.code != exitBad || !strings.HasPrefix(s.errs, bad+`:2: /limit: "limit" is not a name known here; allowed: `) || !strings.Contains(s.errs, `did you mean "limits"?`) {
			t.Errorf("%v: %+v", args, s)
		}
	}
	var reports []marinecalc.RulesReport
	if s := say("", "rules", "--json", good); json.Unmarshal([]byte(s.out), &reports) != nil || len(reports) != 1 || reports[0].Replaces[0].WasSource == "" {
		t.Errorf("%+v", s)
	}
	if s := say("", "rules"); s.code != exitBad {
		t.Errorf("%+v", s)
	}
}

// Flags stand before, between or after the file, and say the same.
func TestFlagsStandAnywhere(t *testing.T) {
	boat := file(t, "boat.json", `{"name": "Bare", "engine": {"power": "20 kW", "speed": "3000 rpm"}, "readings": [{"date": "2026-05-02", "dripRate": "6 drips/min"}, {"date": "2026-06-02", "dripRate": "7 drips/min"}]}`)
	overlay := file(t, "yard.json", `{"title": "Yard"}`)
	out := filepath.Join(t.TempDir(), "out.csv")
	for _, same := range [][][]string{
		{{"survey", boat, "--json", "--no-ranges", "--units", "us"}, {"survey", "--json", boat, "--no-ranges", "--units", "us"}, {"survey", "--units", "us", "--json", "--no-ranges", boat}, {"survey", "--units=us", "--json", "--no-ranges", "--", boat}},
		{{"compare", boat, "--before", "2026-05-02", "--after", "2026-06-02"}, {"compare", "--before", "2026-05-02", boat, "--after", "2026-06-02"}},
		{{"readings", boat, "--out", out}, {"readings", "--out", out, boat}},
		{{"rules", overlay, overlay, "--json"}, {"rules", "--json", overlay, overlay}, {"rules", overlay, "--json", overlay}},
		{{"fill", "bearing-clearance", "--shaft-diameter", "30 mm", "--bearing-clearance", "0.4 mm", "--json"}, {"fill", "--json", "--shaft-diameter", "30 mm", "bearing-clearance", "--bearing-clearance", "0.4 mm"}},
	} {
		want := say("", same[0]...)
		if want.code == exitBad || want.out == "" && same[0][0] != "readings" {
			t.Fatalf("%q: %+v", same[0], want)
		}
		for _, args := range same[1:] {
			if got := say("", args...); got.code != want.code || got.out != want.out {
				t.Errorf("%q: exit code %d, %s; %q: %d, %s", args, got.code, got.errs, same[0], want.code, want.errs)
			}
		}
	}
	for _, args := range [][]string{{"survey", "--json"}, {"readings", "--out", out}, {"rules", "--json"}, {"fill", "--json"}, {"fill", "--json", "nothing"}, {"survey", "--jsn", boat}} {
		if got := say("", args...); got.code != exitBad || got.errs == "" {
			t.Errorf("%q: %+v", args, got)
		}
	}
}
