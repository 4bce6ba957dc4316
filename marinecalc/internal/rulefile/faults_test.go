package rulefile_test

import (
	"fmt"
	"strings"
	"testing"

	"example.org/driveline/marinecalc/internal/rulefile"
	"example.org/driveline/marinecalc/rules"
)

// backing is what every row must bring.
const backing = `"source": {"document": "Yard sheet 7"}, "basis": "maker"`

// limit is a limit of a yard, with some of its members in their place.
func limit(members string) string {
	return `{"title": "Yard", "limits": [
  {"id": "yard-own", "calculation": "gland-heat", "title": "Ours", ` + members + `,
   ` + backing + `}]}`
}

func row(table, members string) string {
	return `{"title": "Yard", "table": "` + table + `", "rows": [
  {"id": "yard-own", ` + members + `, ` + backing + `}]}`
}

// What is wrong is told at its place, with line, what is allowed and the
// closest name.
func TestFaultsOfRuleFiles(t *testing.T) {
	for _, c := range []struct{ name, text, where, says string }{
		{"a misspelt member", limit(`"on": "measuredRise", "max": "20 K", "wen": 1`), "/limits/0/wen", `"wen" is not a name known here; allowed: id, calculation, on`},
		{"a misspelt kind of row", `{"limit": [{}]}`, "/limit", `did you mean "limits"?`},
		{"a condition misspelt", limit(`"on": "measuredRise", "max": "20 K", "valid": {"shaftDiameter": {"mim": "20 mm"}}`), "/limits/0/valid/shaftDiameter/mim", `did you mean "min"?`},
		{"a calculation", strings.Replace(limit(`"on": "measuredRise", "max": "20 K"`), "gland-heat", "gland-heet", 1), "/limits/0/calculation", `there is no calculation "gland-heet"; allowed: shaft-torque, `},
		{"a result", limit(`"on": "mesuredRise", "max": "20 K"`), "/limits/0/on", `did you mean "measuredRise"?`},
		{"a length for a rise of temperature", limit(`"on": "measuredRise", "max": "20 mm"`), "/limits/0/max", "is a temperature difference; "},
		{"a temperature for a difference", limit(`"on": "measuredRise", "max": "20 °C"`), "/limits/0/max", `can be read as a temperature too; allowed: a unit of that kind alone; write it as 20 K`},
		{"a bound by a name that is not there", limit(`"on": "measuredRise", "max": {"of": "mostRise"}`), "/limits/0/max/of", `there is no input or result of gland-heat "mostRise"`},
		{"a bound of another kind", limit(`"on": "measuredRise", "max": {"of": "shaftDiameter"}`), "/limits/0/max/of", "is not the kind of quantity"},
		{"a limit on a word", limit(`"on": "packing", "max": 3`), "/limits/0/on", "is no number, and nothing can be over it"},
		{"a limit where no value is", limit(`"on": "shaftDiameter", "max": "25 m"`), "/limits/0/max", "lies where no value is taken; allowed: 10 mm"},
		{"a basis", strings.Replace(limit(`"on": "measuredRise", "max": "20 K"`), `"maker"`, `"makr"`, 1), "/limits/0/basis", `did you mean "maker"?`},
		{"a state", limit(`"on": "measuredRise", "max": "5 K", "states": ["dry"]`), "/limits/0", `"dry" is not one of the states of its file`},
		{"a state without its text", limit(`"on": "measuredRise", "max": "5 K", "states": [{"valid": {"shaftDiameter": {"max": "20 mm"}}}]`), "/limits/0/states/0/text", "is missing"},
		{"no side", limit(`"on": "measuredRise"`), "/limits/0", "a limit has either max or min"},
		{"a share over one", limit(`"on": "measuredRise", "max": "20 K", "near": 90`), "/limits/0/near", "near 90 is above what is allowed"},
		{"a condition on what is not there", limit(`"on": "measuredRise", "max": "20 K", "valid": {"shaftDiamter": {"min": "20 mm"}}`), "/limits/0/valid/shaftDiamter", `did you mean "shaftDiameter"?`},
		{"a state of what is not there", limit(`"on": "measuredRise", "max": "20 K", "states": [{"valid": {"shaftDiamter": {"min": "20 mm"}}, "text": "it does not turn."}]`), "/limits/0/states/0/valid/shaftDiamter", `did you mean "shaftDiameter"?`},
		{"a limit that is no one figure", limit(`"on": "measuredRise", "max": "15 K ± 2 K"`), "/limits/0/max", `has a ±, and a limit is one figure; allowed: one figure with its unit; write "15 K", or the end`},
		{"what it lacks, misspelt", limit(`"on": "measuredRise", "max": "20 K", "lacks": [{"of": "shaftDiamter", "text": "Measure the shaft."}]`), "/limits/0/lacks/0/of", `did you mean "shaftDiameter"?`},
		{"a column of no list", limit(`"on": "measuredRise", "max": "20 K", "each": ["shaftDiameter/bore"]`), "/limits/0/each/0", "is no list"},
		{"a reading made void by no limit", limit(`"on": "measuredRise", "max": "20 K", "void": ["gland-heat/gland-boil"]`), "/limits/0/void/0", `is no limit of gland-heat`},
		{"a limit of another sheet, misspelt", limit(`"on": "measuredRise", "max": "20 K", "while": ["gland-drip/drip-rte"]`), "/limits/0/while/0", `is no limit of gland-drip`},
		{"a condition of another kind", limit(`"on": "measuredRise", "max": "20 K", "valid": {"shaftDiameter": {"min": "20 rpm"}}`), "/limits/0/valid/shaftDiameter/min", "Shaft diameter is a length"},
		{"a condition the wrong way round", limit(`"on": "measuredRise", "max": "20 K", "valid": {"shaftDiameter": {"min": "50 mm", "max": "20 mm"}}`), "/limits/0/valid/shaftDiameter", "never applies"},
		{"a condition beyond what is taken", limit(`"on": "measuredRise", "max": "20 K", "valid": {"shaftDiameter": {"min": "3 m"}}`), "/limits/0/valid/shaftDiameter", "never applies: Shaft diameter is taken from 10 mm"},
		{"numbers asked of a word", limit(`"on": "measuredRise", "max": "20 K", "valid": {"packing": {"min": 2}}`), "/limits/0/valid/packing", "is a word"},
		{"words asked of a number", limit(`"on": "measuredRise", "max": "20 K", "valid": {"shaftDiameter": {"any": ["thick"]}}`), "/limits/0/valid/shaftDiameter", "is a number"},
		{"a word that is no choice", limit(`"on": "measuredRise", "max": "20 K", "valid": {"packing": {"any": ["flaks"]}}`), "/limits/0/valid/packing/any/0", `did you mean "flax"?`},
		{"a word ruled out that is no choice", limit(`"on": "measuredRise", "max": "20 K", "valid": {"packing": {"not": ["flaks"]}}`), "/limits/0/valid/packing/not/0", `did you mean "flax"?`},
		{"a word ruled out beside a bound", limit(`"on": "measuredRise", "max": "20 K", "valid": {"packing": {"not": ["flax"], "min": 2}}`), "/limits/0/valid/packing", "nothing else is asked"},
		{"nothing known of what has a default", strings.Replace(limit(`"on": "clearance", "max": "2 mm", "valid": {"bearingKind": {"known": false}}`), "gland-heat", "bearing-clearance", 1), "/limits/0/valid/bearingKind", "always known"},
		{"an id on another thing", strings.Replace(limit(`"on": "measuredRise", "max": "20 K"`), "yard-own", "worn-limit", 1), "/limits/0/id", "would be lost; allowed: bearing-clearance/clearance"},
		{"the other side", `{"limits": [{"id": "worn-limit", "calculation": "bearing-clearance", "on": "clearance", "title": "T", "min": "1 mm", ` + backing + `}]}`, "/limits/0/id", "has a max, which would be lost"},
		{"a misspelt id", `{"limits": [{"id": "worn-limmit", "calculation": "bearing-clearance", "on": "clearance", "title": "T", "max": "1 mm", ` + backing + `}]}`, "/limits/0/id", `write "worn-limit" to take its place`},
		{"a guide for a limit", `{"limits": [{"id": "new-clearance-most", "calculation": "bearing-clearance", "on": "newClearance", "title": "T", "max": "0.01 in", "source": {"document": "common practice, no source"}, "basis": "common-practice"}]}`, "/limits/0/basis", "a guide cannot take its place"},
		{"a table", row("bolt-grade", `"values": {"proofStrength": "600 MPa"}`), "/table", `did you mean "bolt-grades"?`},
		{"a column", row("bolt-grades", `"values": {"proofStrenght": "600 MPa"}`), "/rows/0", `"proofStrenght" is not one of its columns`},
		{"a column of its own that nothing takes", `{"table": "bolt-grades", "columns": {"proofStrenght": "stress"}, "rows": [{"id": "yard-own", "values": {"proofStrenght": "600 MPa"}, ` + backing + `}]}`, "/columns/proofStrenght", `did you mean "proofStrength"?`},
		{"a column of another kind", `{"table": "bolt-grades", "columns": {"proofStrength": "force"}, "rows": [{"id": "yard-own", "values": {"proofStrength": "600 N"}, ` + backing + `}]}`, "/columns/proofStrength", "is a stress there"},
		{"a hazard that is no caution", row("trial-stages", `"name": "Ours", "values": {"lever": "ahead", "speed": "idle", "minutes": "5 min", "do": "D", "stop": "S", "hazards": "trial-swimmers trial-sharks"}`), "/rows/0/values/hazards", `there is no caution "trial-sharks"`},
		{"a figure that no input takes", row("bolt-grades", `"values": {"proofStrength": "600000 GPa"}`), "/rows/0/values/proofStrength", "lies where no input takes it"},
		{"a usual value that nothing takes", row("usual-values", `"pick": "mount-prelod", "values": {}`), "/rows/0", "there is no input that takes the usual value"},
		{"a row behind another", `{"table": "bolt-grades", "rows": [{"id": "yard-a", "pick": "yard", "values": {"proofStrength": "600 MPa"}, ` + backing + `}, {"id": "yard-b", "pick": "yard", "values": {"proofStrength": "700 MPa"}, ` + backing + `}]}`, "/rows/1", "never applies: row yard-a has the same pick"},
		{"a gauge that reads nothing", row("gauges", `"name": "Ours", "values": {"reads": "lenght", "accuracy": "0.01 mm"}`), "/rows/0/values/reads", "reads no kind of quantity"},
		{"a gauge without accuracy", row("gauges", `"name": "Ours", "values": {"reads": "length", "accuracy": "0.01 bar"}`), "/rows/0/values/accuracy", ""},
		{"advice after no limit", `{"advice": [{"id": "a", "calculation": "gland-heat", "limit": "worn-limit", "words": ["beyond"], "text": "T", ` + backing + `}]}`, "/advice/0/limit", `there is no limit of gland-heat "worn-limit"`},
		{"advice after no verdict", `{"advice": [{"id": "a", "calculation": "bearing-clearance", "limit": "worn-limit", "words": ["beyonnd"], "text": "T", ` + backing + `}]}`, "/advice/0/words/0", `did you mean "beyond"?`},
		{"advice that never follows", `{"advice": [{"id": "a", "calculation": "bearing-clearance", "limit": "worn-limit", "text": "T", ` + backing + `}]}`, "/advice/0", "words"},
		{"a caution of no calculation", `{"cautions": [{"id": "yard", "calculations": ["gland-heat", "gland-drips"], "signal": "WARNING", "text": "T", ` + backing + `}]}`, "/cautions/0/calculations/1", `did you mean "gland-drip"?`},
		{"a caution that nothing shows", `{"cautions": [{"id": "yard", "calculations": [], "signal": "WARNING", "text": "T", ` + backing + `}]}`, "/cautions/0/calculations", `nothing shows this caution; allowed: a calculation, or a step`},
		{"a reading that no boat has", `{"steps": [{"id": "yard-step", "title": "T", "hours": 1, "place": "either", "safe": "S", "record": [{"title": "R", "reading": "glandTemprature"}], ` + backing + `}]}`, "/steps/0/record/0/reading", `did you mean "glandTemperature"?`},
		{"a picture of no calculation", `{"steps": [{"id": "yard-step", "title": "T", "hours": 1, "place": "either", "safe": "S", "drawing": "bolt-fitt", ` + backing + `}]}`, "/steps/0/drawing", `did you mean "bolt-fit"?`},
		{"work bared that is not there", `{"steps": [{"id": "yard-step", "title": "T", "hours": 1, "place": "either", "safe": "S", "bares": ["replace-mount"], ` + backing + `}]}`, "/steps/0/bares/0", `did you mean "replace-mounts"?`},
		{"limits shared with no result", `{"shared": [{"calculation": "shaft-droop", "limitsOf": "coupling-alignment", "on": {"gapPerDiamter": "facePerDiameter"}, "title": "T", "how": "H"}]}`, "/shared/0/on/gapPerDiamter", `did you mean "gapPerDiameter"?`},
		{"a sign by no word", `{"signs": [{"id": "a", "cause": "shaft-bent", "evidence": "gear-seen", "weight": "stron", ` + backing + `}]}`, "/signs/0/weight", `strong`},
		{"a question looked at in no way", `{"evidence": [{"id": "yard-look", "group": "look", "kind": "check", "title": "Q?", "help": "H", "minutes": 1, "access": 1, "place": "either", "hazards": [], "otherwise": 0.5, "ways": ["jars"], ` + backing + `}]}`, "/evidence/0/ways/0", `jar`},
		{"a figure of a word", `{"evidence": [{"id": "yard-look", "group": "look", "kind": "check", "title": "Q?", "help": "H", "minutes": 1, "access": 1, "place": "either", "hazards": [], "otherwise": 0.5, "readings": [{"reading": "fluidLook", "atLeast": 1, "answer": "no"}], ` + backing + `}]}`, "/evidence/0/readings/0/reading", "is no quantity"},
		{"a limit that no cure ends", `{"limits": [{"id": "yard-play", "calculation": "bearing-clearance", "on": "clearanceRatio", "title": "Ours", "max": 0.02, "stops": ["shaft-bend"], "how": "read it", "why": "it knocks", ` + backing + `}]}`, "/limits/0/stops/0", `did you mean "shaft-bent"?`},
		{"advice that no cure ends", `{"advice": [{"id": "a", "calculation": "gland-heat", "stops": ["gland-tigt"], "text": "Stop.", ` + backing + `}]}`, "/advice/0/stops/0", `did you mean "gland-tight"?`},
		{"a sign of no cause", `{"signs": [{"id": "a", "cause": "shaft-bend", "evidence": "gear-seen", "yes": 0.5, ` + backing + `}]}`, "/signs/0/cause", `did you mean "shaft-bent"?`},
		{"a step for an answer to no question", `{"steps": [{"id": "yard-step", "title": "T", "hours": 1, "place": "either", "safe": "S", "unless": {"of": "fault-finding/seal-knd", "not": ["no"]}, "absent": "A.", ` + backing + `}]}`, "/steps/0/unless/of", `did you mean "seal-kind"?`},
		{"a part sized by nothing", `{"parts": [{"id": "yard-part", "title": "P", "unit": "piece", "leadDays": 3, "sizes": ["bolt-preload/thred"], ` + backing + `}]}`, "/parts/0/sizes/0", `there is no input or result of bolt-preload "thred"`},
		{"a step with no such reading", `{"steps": [{"id": "yard-step", "title": "T", "hours": 1, "place": "either", "hazards": ["stop-the-engine"], "record": [{"title": "R", "reading": "dripRat"}], ` + backing + `}]}`, "/steps/0/record/0/reading", `did you mean "dripRate"?`},
		{"a step with no such picture", `{"steps": [{"id": "yard-step", "title": "T", "hours": 1, "place": "either", "hazards": ["stop-the-engine"], "drawing": "bolt-fitt", ` + backing + `}]}`, "/steps/0/drawing", `did you mean "bolt-fit"?`},
		{"an answer by no reading", `{"evidence": [{"id": "yard-look", "group": "look", "kind": "check", "title": "Q?", "help": "H", "minutes": 1, "access": 1, "place": "either", "hazards": [], "otherwise": 0.5, "readings": [{"reading": "fluidLok", "words": ["clear"], "answer": "no"}], ` + backing + `}]}`, "/evidence/0/readings/0/reading", `did you mean "fluidLook"?`},
	} {
		t.Run(c.name, func(t *testing.T) {
			book, report := rulefile.Check(rules.Standard(), []byte(c.text), "yard.json")
			if book != nil {
				t.Fatal("the file was taken")
			}
			for _, p := range report.Problems {
				if p.Where == c.where && strings.Contains(p.String(), c.says) && p.File == "yard.json" && p.Line > 0 {
					return
				}
			}
			t.Errorf("got %v, want %s: … %s", report.Problems, c.where, c.says)
		})
	}
}

// The line is that of the row, or of the member in it.
func TestLinesOfFaults(t *testing.T) {
	text := "{\"title\": \"Yard\",\n \"limits\": [\n  {\"id\": \"yard-a\", \"calculation\": \"gland-heat\",\n   \"on\": \"nothing\", \"max\": 1,\n   \"title\": \"T\"}\n ]}"
	_, report := rulefile.Check(rules.Standard(), []byte(text), "yard.json")
	lines := map[string]int{}
	for _, p := range report.Problems {
		lines[p.Where] = p.Line
	}
	if lines["/limits/0/on"] != 4 || lines["/limits/0/source"] != 3 {
		t.Errorf("lines %v of %v", lines, report.Problems)
	}
	_, report = rulefile.Check(rules.Standard(), []byte("{\n\"limits\": [\n,]}"), "yard.json")
	if p := report.Problems; len(p) != 1 || p[0].Line != 3 || !strings.HasPrefix(p[0].String(), "yard.json:3: ") {
		t.Errorf("got %v", p)
	}
}

// What loads and is probably not what was meant is told as well.
func TestWarningsOfRuleFiles(t *testing.T) {
	for _, c := range []struct{ name, text, says string }{
		{"a bare number", limit(`"on": "measuredRise", "max": 20`), "20 is read as 20 K"},
		{"a thousandth", `{"limits": [{"id": "clearance-none", "calculation": "bearing-clearance", "on": "clearance", "title": "T", "min": "10 mm", ` + backing + `}]}`, "look whether the unit is right"},
		{"half a row", `{"table": "bolt-grades", "rows": [{"id": "j429-1", "name": "1", "values": {}, ` + backing + `}]}`, "row j429-1 leaves out "},
		{"nearly a row", `{"table": "packings", "rows": [{"id": "flaxs", "name": "Flax", "values": {}, ` + backing + `}]}`, `"flaxs" is nearly the id of "flax"`},
		{"nothing in it", `{"title": "Yard"}`, "holds no rows"},
	} {
		_, report := rulefile.Check(rules.Standard(), []byte(c.text), "")
		if !strings.Contains(fmt.Sprint(report.Warnings), c.says) {
			t.Errorf("%s: %v, problems %v", c.name, report.Warnings, report.Problems)
		}
	}
}

// A file says what it replaces, with what was in force, and what it adds.
func TestChangesOfRuleFiles(t *testing.T) {
	book, report := rulefile.Check(rules.Standard(), []byte(`{"title": "Yard", "limits": [
  {"id": "worn-share", "calculation": "bearing-clearance", "on": "clearanceRatio", "title": "Ours", "max": 0.02, `+backing+`},
  {"id": "yard-drip", "calculation": "gland-heat", "on": "measuredRise", "title": "Ours", "max": "15 K", `+backing+`}]}`), "yard.json")
	if book == nil || len(report.Warnings) > 0 {
		t.Fatal(report.Problems, report.Warnings)
	}
	if len(report.Replaces) != 1 || len(report.Adds) != 1 {
		t.Fatalf("got %+v", report)
	}
	if r := report.Replaces[0]; r.ID != "worn-share" || r.Line != 2 || r.Was != "at most 0.025" || r.Now != "at most 0.02" || r.WasSource == "" {
		t.Errorf("replaces %+v", r)
	}
	if a := report.Adds[0]; a.ID != "yard-drip" || a.Line != 3 || a.Now != "at most 15 K" || a.Was != "" {
		t.Errorf("adds %+v", a)
	}
}

// However much is wrong, one reads no more of it than that.
func TestFaultsAreFew(t *testing.T) {
	var signs strings.Builder
	for i := range 2000 {
		fmt.Fprintf(&signs, `{"id": "yard-%d", "cause": "shaft-bend-%d", "evidence": "gear-sean", "yes": 0.5, %s},`, i, i, backing)
	}
	for name, text := range map[string]string{
		"empty rows":   `{"limits": [` + strings.Repeat(`{},`, 1999) + `{}]}`,
		"too many":     `{"limits": [` + strings.Repeat(`{},`, 99999) + `{}]}`,
		"lost leads":   `{"signs": [` + strings.TrimSuffix(signs.String(), ",") + `]}`,
		"long ids":     `{"advice": [{"id": "` + strings.Repeat("a", 1<<20) + `"}]}`,
		"many members": `{"table": "packings", "rows": [{"id": "a", "values": {` + strings.TrimSuffix(strings.Repeat(`"x": 1,`, 50000), ",") + `}}]}`,
	} {
		_, report := rulefile.Check(rules.Standard(), []byte(text), "")
		if text := report.Problems.String(); len(report.Problems) == 0 || len(report.Problems) > 60 || len(text) > 200_000 {
			t.Errorf("%s: %d problems, %d bytes", name, len(report.Problems), len(text))
		}
	}
}
