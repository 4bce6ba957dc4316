// Package schemas holds marinecalc's JSON Schema documents: one for each
// calculation, one for the boat file, one for each kind of rule data, those of
// requests and replies with the sheet and what else they hold, and one that
// says which annotation keywords of our own a schema may use.
package schemas

import (
	"embed"
	"io/fs"
	"strings"
)

// Base is the address under which every document's $id stands. Nothing is
// ever fetched from it.
const Base = "https://driveline.example.org/schemas/"

const suffix = ".schema.json"

//go:embed *.schema.json
var files embed.FS

// Read returns the schema document of that name, such as "bolt-preload".
func Read(name string) ([]byte, error) { return files.ReadFile(name + suffix) }

// Names lists every schema document, in alphabetical order.
func Names() []string {
	paths, _ := fs.Glob(files, "*"+suffix) // the pattern is well formed
	names := make([]string, len(paths))
	for i, p := range paths {
		names[i] = strings.TrimSuffix(p, suffix)
	}
	return names
}
