package marinecalc

import (
	"go/parser"
	"go/token"
	"io/fs"
	"path"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
)

const module = "example.org/driveline/"

// parts are the packages of one machine part, or of the job around them.
// They know quantities and each other's physics, and nothing of JSON,
// schemas, sheets or pages.
var parts = []string{"torque", "fastener", "shaft", "coupling", "gland", "align", "mount", "bearing",
	"debris", "fluid", "vibration", "stock",
	"internal/diagnosis/bayes", "internal/workplan/schedule", "internal/trend/series", "internal/decision/cost"}

// mayImport says which packages of this module a package may import, outside
// its tests.
func mayImport(pkg string) func(string) bool {
	name := strings.TrimPrefix(pkg, "marinecalc/")
	only := func(allowed ...string) func(string) bool {
		return func(to string) bool { return slices.Contains(allowed, strings.TrimPrefix(to, "marinecalc/")) }
	}
	switch {
	case name == "problem" || name == "internal/spread" || name == "sheet" || name == "schemas":
		return only()
	case name == "quantity":
		return only("problem")
	case name == "internal/contract":
		return only("problem", "quantity", "schemas")
	case name == "internal/parttest":
		return only("problem", "schemas")
	case name == "rules":
		return only("problem", "quantity", "schemas")
	case name == "sample":
		return only("internal/contract", "rules")
	case slices.Contains(parts, name):
		return only(append([]string{"problem", "quantity"}, parts...)...)
	case name == "marinecalc":
		return func(to string) bool { return strings.HasPrefix(to, "marinecalc/") || to == "schemas" }
	case name == "cmd/page":
		return only("cmd/page/rewrite")
	case name == "cmd/page/rewrite":
		return only()
	default: // wasm, cmd, site
		return only("marinecalc")
	}
}

func TestImportsRunOneWay(t *testing.T) {
	seen := 0
	err := filepath.WalkDir("..", func(file string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if d.IsDir() && (d.Name() == "node_modules" || d.Name() == ".git" || d.Name() == "build") {
			return filepath.SkipDir
		}
		if !strings.HasSuffix(file, ".go") || strings.HasSuffix(file, "_test.go") {
			return nil
		}
		pkg := path.Dir(filepath.ToSlash(strings.TrimPrefix(file, ".."+string(filepath.Separator))))
		allowed := mayImport(pkg)
		f, err := parser.ParseFile(token.NewFileSet(), file, nil, parser.ImportsOnly)
		if err != nil {
			return err
		}
		for _, i := range f.Imports {
			to, _ := strconv.Unquote(i.Path.Value)
			own, ok := strings.CutPrefix(to, module)
			if ok && !allowed(own) {
				t.Errorf("%s imports %s", file, own)
			}
			if !ok && slices.Contains(parts, strings.TrimPrefix(pkg, "marinecalc/")) && (strings.HasPrefix(to, "encoding/") || strings.Contains(to, ".")) {
				t.Errorf("%s imports %s: a part knows no documents and no libraries", file, to)
			}
		}
		seen++
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	if seen < 20 {
		t.Fatalf("only %d files were read", seen)
	}
}
