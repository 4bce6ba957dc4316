package marinecalc_test

import (
	"bytes"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// A file is read in a sitting, and a package is a room: so long, and so many files,
// tests and what is generated left aside.
const (
	mostLines = 400
	mostFiles = 18
)

func TestFilesAndPackagesStaySmall(t *testing.T) {
	files := map[string]int{}
	seen := 0
	eachSource(t, func(file string) {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		seen++
		if n := bytes.Count(text, []byte("\n")); n > mostLines {
			t.Errorf("%s has %d lines, at most %d: part it by what it does", file, n, mostLines)
		}
		if filepath.Ext(file) == ".go" {
			files[filepath.Dir(file)]++
		}
	})
	for dir, n := range files {
		if n > mostFiles {
			t.Errorf("%s has %d files, at most %d: part it by its reasons to exist", dir, n, mostFiles)
		}
	}
	if seen < 300 {
		t.Errorf("only %d files were seen", seen)
	}
}

// eachSource visits every source file of the project but tests.
func eachSource(t *testing.T, visit func(file string)) {
	t.Helper()
	err := filepath.WalkDir("..", func(file string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if d.IsDir() && (d.Name() == "node_modules" || d.Name() == ".git" || d.Name() == "build") {
			return filepath.SkipDir
		}
		switch ext := filepath.Ext(file); {
		case strings.HasSuffix(file, "_test.go") || strings.Contains(file, ".test."):
		case ext == ".go" || ext == ".js" || ext == ".css":
			visit(file)
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
}
