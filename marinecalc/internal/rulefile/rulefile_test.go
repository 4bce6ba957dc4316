package rulefile_test

import (
	"io/fs"
	"os"
	"path/filepath"
	"testing"

	"example.org/driveline/marinecalc/internal/rulefile"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/rules"
)

// Every file that marinecalc brings passes the check of a yard's file, and
// replaces nothing but itself.
func TestOwnFilesPass(t *testing.T) {
	held := 0
	err := filepath.WalkDir(testboat.Root("marinecalc", "rules", "data"), func(file string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		text, err := os.ReadFile(file)
		if err != nil {
			return err
		}
		_, report := rulefile.Check(rules.Standard(), text, d.Name())
		for _, p := range append(report.Problems, report.Warnings...) {
			t.Error(p)
		}
		if len(report.Adds) > 0 || len(report.Replaces) == 0 {
			t.Errorf("%s adds %v and replaces %d rows", d.Name(), report.Adds, len(report.Replaces))
		}
		held += len(report.Replaces)
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	if held < 800 {
		t.Errorf("only %d rows", held)
	}
}
