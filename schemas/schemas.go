// Package schemas holds marinecalc's JSON Schema documents: one for each
// calculation, one for the boat file, one for rule files, those of
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

//go:embed *-*.schema.json annotations.schema.json backlash.schema.json boat.schema.json rules.schema.json
var files embed.FS

// The forms of requests and replies stand apart, since no run reads them: a
// program that does not either is built without them.
//
//go:embed comparison.schema.json line.schema.json problem.schema.json procedure.schema.json reply.schema.json request.schema.json sheet.schema.json survey.schema.json
var replies embed.FS

// Read returns the schema document of that name, such as "bolt-preload"; those
// of requests and replies come from [ReadReply].
func Read(name string) ([]byte, error) { return files.ReadFile(name + suffix) }

// Names lists the schema documents that Read has, in alphabetical order.
func Names() []string { return names(files) }

// ReadReply returns the schema document of a request, a reply or something
// that one holds, such as "sheet".
func ReadReply(name string) ([]byte, error) { return replies.ReadFile(name + suffix) }

// ReplyNames lists the schema documents that ReadReply has, in alphabetical
// order.
func ReplyNames() []string { return names(replies) }

func names(of embed.FS) []string {
	paths, _ := fs.Glob(of, "*"+suffix) // the pattern is well formed
	names := make([]string, len(paths))
	for i, p := range paths {
		names[i] = strings.TrimSuffix(p, suffix)
	}
	return names
}
