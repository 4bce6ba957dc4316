package marinecalc_test

import (
	"bytes"
	"encoding/json"
	"errors"
	"flag"
	"io/fs"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/sample"
)

// The golden sheets hold every word and number that a host is told of both
// demonstration boats and of every schema's example, so that a change of
// either shows as a diff. After a change that is meant:
//
//	go test ./marinecalc -run Golden -update
//	git diff testdata/golden
var update = flag.Bool("update", false, "write the golden sheets anew")

const goldenDir = "../testdata/golden"

// goldenBoats are the demonstration boats, each with two days to compare.
var goldenBoats = []struct{ name, before, after string }{
	{"kittiwake", "2025-10-04", "2026-06-20"},
	{"juniper", "2025-04-19", "2026-10-10"},
}

func TestGoldenBoats(t *testing.T) {
	alone(t)
	for _, b := range goldenBoats {
		t.Run(b.name, func(t *testing.T) {
			text, err := os.ReadFile("../testdata/boats/" + b.name + ".json")
			if err != nil {
				t.Fatal(err)
			}
			ask := func(members map[string]any) map[string]any {
				members["boat"] = json.RawMessage(text)
				return answered(t, members)
			}
			book := newGoldenBook(t, b.name)

			survey := ask(map[string]any{"ask": "survey", "trials": 1024})["survey"].(map[string]any)
			for _, s := range survey["sheets"].([]any) {
				s := s.(map[string]any)
				id := s["calculation"].(string)
				book.json(id, s)
				tables, _ := s["tables"].([]any)
				for _, table := range tables {
					name := table.(map[string]any)["name"].(string)
					out := ask(map[string]any{"ask": "csv", "calculation": id, "table": name, "trials": 1024})
					book.reply(id+"."+name+".csv", out, "csv")
				}
			}
			delete(survey, "sheets")
			book.json("survey", survey)
			book.json("compare", ask(map[string]any{"ask": "compare", "before": b.before, "after": b.after, "trials": 1024})["comparison"])
			book.reply("jobsheet.html", ask(map[string]any{"ask": "jobsheet", "trials": 1024}), "page")
			// No clock is read, and neither boat has its work chosen: both are typed.
			work := map[string]any{"today": b.before, "remedies": []any{
				map[string]any{"remedy": "repack-gland"}, map[string]any{"remedy": "align-coupling"}}}
			book.json("work-plan.chosen", ask(map[string]any{"ask": "run", "calculation": "work-plan", "input": work, "trials": 1024})["sheet"])
			book.reply("work-plan.chosen.ics", ask(map[string]any{"ask": "calendar", "input": work}), "calendar")
			book.json("procedure", ask(map[string]any{"ask": "procedure", "remedies": []any{"repack-gland", "align-coupling"}, "trials": 1024})["procedure"])
			book.json("torques", ask(map[string]any{"ask": "torque-card", "trials": 1024})["torqueCard"])
			book.reply("readings.csv", ask(map[string]any{"ask": "readings"}), "csv")
			book.nothingElse()
		})
	}
}

// TestGoldenExamples runs each calculation on its schema's own examples: those
// of the inputs that stand in the open on the form, and those of every input.
// An example that the calculation does not take is kept with its problems.
func TestGoldenExamples(t *testing.T) {
	alone(t)
	book := newGoldenBook(t, "examples")
	for _, e := range marinecalc.Calculations() {
		for name, examples := range map[string]func(string) (map[string]any, error){"": sample.Typed, ".every": sample.Every} {
			input, err := examples(e.ID)
			if err != nil {
				t.Fatal(err)
			}
			book.json(e.ID+name, answered(t, map[string]any{
				"ask": "run", "calculation": e.ID, "input": input, "units": "both", "trials": 1024}))
		}
	}
	book.nothingElse()
}

// answered puts a request through the entry point for JSON.
func answered(t *testing.T, members map[string]any) map[string]any {
	t.Helper()
	request, err := json.Marshal(members)
	if err != nil {
		t.Fatal(err)
	}
	d := json.NewDecoder(bytes.NewReader(marinecalc.Call(request)))
	d.UseNumber()
	var reply map[string]any
	if err := d.Decode(&reply); err != nil {
		t.Fatal(err)
	}
	return reply
}

// goldenBook is a folder of golden sheets.
type goldenBook struct {
	t    *testing.T
	dir  string
	seen map[string]bool
}

func newGoldenBook(t *testing.T, name string) *goldenBook {
	return &goldenBook{t, filepath.Join(goldenDir, name), map[string]bool{}}
}

func (g *goldenBook) json(name string, v any) {
	g.t.Helper()
	var out bytes.Buffer
	e := json.NewEncoder(&out)
	e.SetEscapeHTML(false)
	e.SetIndent("", " ")
	if err := e.Encode(readable(v)); err != nil {
		g.t.Fatal(err)
	}
	g.text(name+".json", out.String())
}

// reply keeps a text that a reply carries.
func (g *goldenBook) reply(name string, reply map[string]any, member string) {
	g.t.Helper()
	text, ok := reply[member].(string)
	if !ok {
		g.t.Fatalf("%s: %v", name, reply["problems"])
	}
	g.text(name, text)
}

func (g *goldenBook) text(name, got string) {
	g.t.Helper()
	g.seen[name] = true
	file := filepath.Join(g.dir, name)
	if *update {
		if err := os.MkdirAll(g.dir, 0o777); err != nil {
			g.t.Fatal(err)
		}
		if err := os.WriteFile(file, []byte(got), 0o666); err != nil {
			g.t.Fatal(err)
		}
		return
	}
	want, err := os.ReadFile(file)
	if err != nil {
		g.t.Errorf("%v: run this test with -update where the sheet is meant to be new", err)
		return
	}
	if got != string(want) {
		diff := strings.SplitAfterN(cmp.Diff(strings.Split(string(want), "\n"), strings.Split(got, "\n")), "\n", 30)
		g.t.Errorf("%s is not as it was (-was +is; the whole diff: -update, then git diff):\n%s", file, strings.Join(diff[:len(diff)-1], ""))
	}
}

// nothingElse holds that no sheet has gone without a word.
func (g *goldenBook) nothingElse() {
	g.t.Helper()
	files, err := os.ReadDir(g.dir)
	if err != nil && !errors.Is(err, fs.ErrNotExist) {
		g.t.Fatal(err)
	}
	for _, f := range files {
		if g.seen[f.Name()] {
			continue
		}
		if *update {
			if err := os.Remove(filepath.Join(g.dir, f.Name())); err != nil {
				g.t.Fatal(err)
			}
			continue
		}
		g.t.Errorf("%s is not made any more", filepath.Join(g.dir, f.Name()))
	}
}

// readable makes a reply one that a person reads in a diff: a drawing is a
// list of its elements, and numbers have ten digits, since the last ones
// differ from processor to processor.
func readable(v any) any {
	switch v := v.(type) {
	case map[string]any:
		for name, member := range v {
			v[name] = readable(member)
		}
	case []any:
		for i := range v {
			v[i] = readable(v[i])
		}
	case string:
		if strings.HasPrefix(v, "<svg") {
			return strings.SplitAfter(strings.ReplaceAll(v, "><", ">\n<"), "\n")
		}
	case json.Number:
		f, err := v.Float64()
		if err == nil {
			return json.Number(strconv.FormatFloat(f, 'g', 10, 64))
		}
	}
	return v
}
