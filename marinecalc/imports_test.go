package marinecalc_test

import (
	"go/parser"
	"go/token"
	"path"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
)

const module = "example.org/driveline/"

// layers is the order of the house, from the ground up. A package imports
// packages of the layers below its own, and none beside it; machine parts know
// each other.
var layers = []struct {
	name     string
	packages []string
}{
	{"ground", []string{"marinecalc/problem", "marinecalc/sheet", "marinecalc/internal/day", "marinecalc/notices", "schemas", "testdata/published"}},
	{"helpers of tests", []string{"marinecalc/internal/parttest"}},
	{"quantities and their spread", []string{"marinecalc/quantity", "marinecalc/internal/spread"}},
	{"machine parts and the engines of the job: physics and arithmetic, nothing of documents", parts},
	{"rule data and contracts", []string{"marinecalc/rules", "marinecalc/internal/contract"}},
	{"cells of tables", []string{"marinecalc/internal/boat/cell"}},
	{"what a run stands on", []string{"marinecalc/internal/binding", "marinecalc/internal/boat", "marinecalc/internal/signalk", "marinecalc/internal/picture", "marinecalc/sample"}},
	{"what drawings share; figures of a boat held against each other", []string{"marinecalc/internal/drawing", "marinecalc/internal/boat/agree"}},
	{"drawings, by part of the line", []string{"marinecalc/internal/drawing/wholeline", "marinecalc/internal/drawing/mounts", "marinecalc/internal/drawing/gearing",
		"marinecalc/internal/drawing/joints", "marinecalc/internal/drawing/shaftline", "marinecalc/internal/drawing/stern"}},
	{"the inputs of one run", []string{"marinecalc/internal/calc/inputs"}},
	{"its results", []string{"marinecalc/internal/calc/results"}},
	{"what does not agree in it", []string{"marinecalc/internal/calc/conflict"}},
	{"its verdicts", []string{"marinecalc/internal/calc/verdict"}},
	{"one run", []string{"marinecalc/internal/calc"}},
	{"the job around the calculations", []string{"marinecalc/internal/diagnosis", "marinecalc/internal/workplan", "marinecalc/internal/trend", "marinecalc/internal/decision", "marinecalc/internal/seatrial", "marinecalc/internal/upkeep"}},
	{"what a joint is set to", []string{"marinecalc/internal/setting"}},
	{"the catalogue", []string{"marinecalc/internal/catalogue"}},
	{"whole boats, and rule files held against all calculations", []string{"marinecalc/internal/survey", "marinecalc/internal/rulefile"}},
	{"work to go by, filled from whole boats", []string{"marinecalc/internal/procedure"}},
	{"the line part by part", []string{"marinecalc/internal/overview"}},
	{"documents and forms for other programs", []string{"marinecalc/internal/export", "marinecalc/internal/host", "marinecalc/internal/book"}},
	{"the face", []string{"marinecalc"}},
	{"what tests of the whole share", []string{"marinecalc/internal/testboat"}},
}

// parts are the packages of one machine part, and the engines of the job
// around them. They know quantities and each other's physics, and nothing of
// JSON, schemas, sheets or pages.
var parts = []string{"marinecalc/torque", "marinecalc/fastener", "marinecalc/shaft", "marinecalc/coupling", "marinecalc/flange", "marinecalc/hub", "marinecalc/line", "marinecalc/propeller", "marinecalc/gland",
	"marinecalc/align", "marinecalc/mount", "marinecalc/bearing", "marinecalc/debris", "marinecalc/fluid", "marinecalc/vibration", "marinecalc/stock",
	"marinecalc/internal/diagnosis/bayes", "marinecalc/internal/workplan/schedule", "marinecalc/internal/trend/series", "marinecalc/internal/decision/cost",
	"marinecalc/internal/seatrial/proof", "marinecalc/internal/upkeep/due"}

// hosts are the packages above the face, with what they may know besides it.
var hosts = map[string][]string{"wasm": nil, "wasm/examples/wazero": nil, "cmd/marinecalc": {"cmd/marinecalc/disk", "cmd/marinecalc/plain", "marinecalc/notices", "marinecalc/problem", "schemas", "testdata/published"}, "cmd/page": {"cmd/page/assemble", "cmd/page/offline", "cmd/page/release"},
	"cmd/page/release":    {"cmd/page/assemble", "marinecalc/notices", "schemas", "testdata/published"},
	"cmd/page/assemble":   {"cmd/page/rewrite", "cmd/page/gzip", "cmd/page/letters", "cmd/page/texts", "marinecalc/notices", "testdata/published"},
	"cmd/marinecalc/disk": {"schemas"}, "cmd/marinecalc/plain": {"marinecalc/problem"},
	"cmd/types":        {"schemas"},
	"cmd/page/offline": {"cmd/page/letters"}, "cmd/page/rewrite": nil, "cmd/page/gzip": nil, "cmd/page/letters": nil, "cmd/page/texts": nil}

func layerOf(pkg string) int {
	for i, l := range layers {
		if slices.Contains(l.packages, pkg) {
			return i
		}
	}
	return -1
}

// mayImport says whether a package may import another of this module, outside
// its tests. A package that no layer has may import nothing.
func mayImport(pkg, to string) bool {
	if besides, host := hosts[pkg]; host {
		return to == "marinecalc" || slices.Contains(besides, to)
	}
	from, at := layerOf(pkg), layerOf(to)
	switch {
	case from < 0 || at < 0:
		return false
	case slices.Contains(parts, pkg):
		return to == "marinecalc/problem" || to == "marinecalc/quantity" || slices.Contains(parts, to)
	}
	return at < from
}

func TestImportsRunOneWay(t *testing.T) {
	seen := 0
	eachSource(t, func(file string) {
		if filepath.Ext(file) != ".go" {
			return
		}
		pkg := path.Dir(filepath.ToSlash(strings.TrimPrefix(file, ".."+string(filepath.Separator))))
		f, err := parser.ParseFile(token.NewFileSet(), file, nil, parser.ImportsOnly)
		if err != nil {
			t.Fatal(err)
		}
		for _, i := range f.Imports {
			to, _ := strconv.Unquote(i.Path.Value)
			own, ok := strings.CutPrefix(to, module)
			if ok && !mayImport(pkg, own) {
				t.Errorf("%s imports %s", file, own)
			}
			if !ok && slices.Contains(parts, pkg) && (strings.HasPrefix(to, "encoding/") || strings.Contains(to, ".")) {
				t.Errorf("%s imports %s: a part knows no documents and no libraries", file, to)
			}
		}
		seen++
	})
	if seen < 20 {
		t.Fatalf("only %d files were read", seen)
	}
}
