package release_test

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.org/driveline/cmd/page/assemble"
	"example.org/driveline/cmd/page/bycommand"
	"example.org/driveline/cmd/page/release"
)

// written are the files of a release.
func written(t *testing.T, root string) map[string][]byte {
	t.Helper()
	dir := filepath.Join(t.TempDir(), "release")
	if err := bycommand.Run(root, "-release", dir); err != nil {
		t.Fatal(err)
	}
	files := map[string][]byte{}
	err := filepath.WalkDir(dir, func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		name, _ := filepath.Rel(dir, path)
		files[filepath.ToSlash(name)], err = os.ReadFile(path)
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return files
}

// The same sources give the same bytes, file by file, and the checksums are
// those of the files.
func TestReleaseIsReproducible(t *testing.T) {
	if testing.Short() {
		t.Skip("builds the page twice")
	}
	root, err := assemble.Root()
	if err != nil {
		t.Fatal(err)
	}
	first, second := written(t, root), written(t, root)
	if len(first) != len(second) {
		t.Errorf("%d files, then %d", len(first), len(second))
	}
	for name, text := range first {
		if !bytes.Equal(text, second[name]) {
			t.Errorf("%s differs: %d and %d bytes", name, len(text), len(second[name]))
		}
	}
	for _, name := range []string{"marinecalc.wasm", "marinecalc.html", "LICENSE", "NOTICES", "schemas/boat.schema.json", "schemas/sheet.schema.json",
		"npm/package.json", "npm/load.js", "npm/load.d.ts", "npm/marinecalc.js", "npm/marinecalc.d.ts", "npm/wasi.js", "npm/marinecalc.wasm", "npm/HOSTS.md", "npm/LICENSE", "npm/NOTICES"} {
		if len(first[name]) == 0 {
			t.Errorf("there is no %s", name)
		}
	}
	lines := strings.Split(strings.TrimSpace(string(first["SHA256SUMS"])), "\n")
	if len(lines) < 10 {
		t.Errorf("%d checksums", len(lines))
	}
	for _, line := range lines {
		sum, name, _ := strings.Cut(line, "  ")
		if got := sha256.Sum256(first[name]); hex.EncodeToString(got[:]) != sum {
			t.Errorf("the checksum of %s is not that of the file", name)
		}
	}
}

func TestReleaseWritesOverNothing(t *testing.T) {
	dir := t.TempDir()
	if err := os.WriteFile(filepath.Join(dir, "mine"), nil, 0o644); err != nil {
		t.Fatal(err)
	}
	if err := release.All(".", dir, func(string) {}); err == nil || !strings.Contains(err.Error(), "not empty") {
		t.Errorf("a folder with files: %v", err)
	}
}
