// Package release writes what others install: the npm package, and the folder
// of a release with module, checksums, page, package, schemas and published checks. The same
// sources and toolchain give the same bytes.
package release

import (
	"crypto/sha256"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"example.org/driveline/cmd/page/assemble"
	"example.org/driveline/marinecalc/notices"
	"example.org/driveline/schemas"
	"example.org/driveline/testdata/published"
)

// ours are the files of the npm package that stand in wasm/.
var ours = []string{"package.json", "load.js", "load.d.ts", "marinecalc.js", "marinecalc.d.ts", "wasi.js", "HOSTS.md"}

// Package writes the files of the npm package into dir; those that stand in
// wasm/ are left alone where dir is that folder.
func Package(root, dir string) error {
	module, err := assemble.Module(root)
	if err != nil {
		return err
	}
	return writePackage(root, dir, module)
}

func writePackage(root, dir string, module []byte) error {
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return err
	}
	home := filepath.Join(root, "wasm")
	files := map[string][]byte{"marinecalc.wasm": module, "LICENSE": []byte(notices.Own()), "NOTICES": []byte(notices.Third())}
	if here, err := filepath.Abs(dir); err != nil || here != home {
		for _, name := range ours {
			text, err := os.ReadFile(filepath.Join(home, name))
			if err != nil {
				return err
			}
			files[name] = text
		}
	}
	return write(dir, files)
}

// All writes a release into dir, which must not exist or be empty: nothing
// that is there is written over. tell is told each step as it begins.
func All(root, dir string, tell func(string)) error {
	if there, err := os.ReadDir(dir); err == nil && len(there) > 0 {
		return fmt.Errorf("%s is not empty: name a new folder for the release", dir)
	}
	tell("building the WebAssembly module (a minute the first time)")
	module, err := assemble.Module(root)
	if err != nil {
		return err
	}
	page, err := assemble.PageWith(root, module, tell)
	if err != nil {
		return err
	}
	tell("writing the release")
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return err
	}
	if err := writePackage(root, filepath.Join(dir, "npm"), module); err != nil {
		return err
	}
	files := map[string][]byte{
		"marinecalc.wasm": module, "marinecalc.html": page,
		"LICENSE": []byte(notices.Own()), "NOTICES": []byte(notices.Third()),
	}
	if files[checksFile], err = checks(); err != nil {
		return err
	}
	for _, of := range []struct {
		names []string
		read  func(string) ([]byte, error)
	}{{schemas.Names(), schemas.Read}, {schemas.ReplyNames(), schemas.ReadReply}} {
		for _, name := range of.names {
			text, err := of.read(name)
			if err != nil {
				return err
			}
			files[filepath.Join("schemas", name+".schema.json")] = text
		}
	}
	files["SHA256SUMS"] = sums(files)
	return write(dir, files)
}

const checksFile = "checks.json"

// Checks writes the published values beside the page, which opens them.
func Checks(dir string) error {
	text, err := checks()
	if err != nil {
		return err
	}
	return write(dir, map[string][]byte{checksFile: text})
}

// checks is every published value in one file.
func checks() ([]byte, error) {
	rows, err := published.Rows()
	if err != nil {
		return nil, err
	}
	return published.File(rows)
}

// sums is a list of checksums as sha256sum -c reads it.
func sums(files map[string][]byte) []byte {
	var lines []string
	for name, text := range files {
		lines = append(lines, fmt.Sprintf("%x  %s\n", sha256.Sum256(text), filepath.ToSlash(name)))
	}
	slices.SortFunc(lines, func(a, b string) int { return strings.Compare(a[64:], b[64:]) })
	return []byte(strings.Join(lines, ""))
}

func write(dir string, files map[string][]byte) error {
	for name, text := range files {
		path := filepath.Join(dir, name)
		if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
			return err
		}
		if err := os.WriteFile(path, text, 0o644); err != nil {
			return err
		}
	}
	return nil
}
