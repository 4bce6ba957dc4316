package marinecalc_test

import (
	"bytes"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// Whoever opens a public package finds an example that runs. notices is text.
func TestEveryPublicPackageHasAnExample(t *testing.T) {
	packages := map[string]bool{}
	err := filepath.WalkDir(".", func(file string, d fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return err
		case d.IsDir() && slices.Contains([]string{"internal", "data", "notices"}, d.Name()):
			return filepath.SkipDir
		case !strings.HasSuffix(file, ".go"):
			return nil
		case strings.HasSuffix(file, "_test.go"):
			text, err := os.ReadFile(file)
			if bytes.Contains(text, []byte("\nfunc Example")) && bytes.Contains(text, []byte("// Output:")) {
				packages[filepath.Dir(file)] = true
			}
			return err
		}
		packages[filepath.Dir(file)] = packages[filepath.Dir(file)]
		return nil
	})
	if err != nil || len(packages) < 15 {
		t.Fatal(len(packages), err)
	}
	for pkg, has := range packages {
		if !has {
			t.Errorf("marinecalc/%s has no example that runs", pkg)
		}
	}
}
