package assemble

import (
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// The formats that the module's schema library is built without are asked for by no
// schema: an unknown format would let everything through.
func TestNoSchemaAsksForAFormatThatIsLeftOut(t *testing.T) {
	files, err := filepath.Glob(filepath.Join(mustRoot(t), "schemas", "*.json"))
	if err != nil {
		t.Fatal(err)
	}
	asked := 0
	for _, file := range files {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		if !strings.Contains(string(text), `"$schema": "https://json-schema.org/draft/2020-12/schema"`) {
			t.Errorf("%s is not written in the draft of 2020-12", file)
		}
		for _, m := range regexp.MustCompile(`"format":\s*"([^"]*)"`).FindAllStringSubmatch(string(text), -1) {
			if asked++; m[1] != "date" { // what the library without them is known to have
				t.Errorf("%s asks for the format %s", file, m[1])
			}
		}
	}
	if asked == 0 {
		t.Error("no schema asks for any format")
	}
}

// What is left out goes, with what it alone needs, and the rest of the file stays.
func TestFormatsAreDroppedWithWhatTheyNeed(t *testing.T) {
	library := filepath.Join(mustRoot(t), filepath.FromSlash(smallLibrary))
	modfile, err := withoutFormats(mustRoot(t), t.TempDir())
	if err != nil {
		t.Fatal(err)
	}
	text, err := os.ReadFile(filepath.Join(library, "format.go"))
	if err != nil {
		t.Fatal(err)
	}
	for _, gone := range slices.Concat([]string{`"email"`, `"ipv6"`, `"uuid"`}, unneeded, unasked) {
		if strings.Contains(string(text), gone) {
			t.Errorf("%s is still there", gone)
		}
	}
	for _, stays := range []string{`"date":`, "func isDate(", "func isURI(", "func isRegex("} {
		if !strings.Contains(string(text), stays) {
			t.Errorf("%s is gone", stays)
		}
	}
	if mod, err := os.ReadFile(modfile); err != nil || !strings.Contains(string(mod), "replace "+schemaLibrary+" => ./"+smallLibrary) {
		t.Errorf("%s, %v", mod, err)
	}
	if again, err := withoutFormats(mustRoot(t), t.TempDir()); err != nil {
		t.Errorf("a second time: %s, %v", again, err)
	}
	if err := dropFormats(filepath.Join(library, "format.go")); err == nil {
		t.Error("a file without them is taken")
	}
	if text, err = os.ReadFile(filepath.Join(library, "draft.go")); err != nil || strings.Count(string(text), ".loadMeta(") != 1 || !strings.Contains(string(text), "Draft2020.loadMeta(") {
		t.Errorf("the drafts left are not that of 2020-12 alone: %v", err)
	}
	if err := dropDrafts(filepath.Join(library, "draft.go")); err == nil {
		t.Error("a file without the other drafts is taken")
	}
}

func mustRoot(t *testing.T) string {
	t.Helper()
	root, err := Root()
	if err != nil {
		t.Fatal(err)
	}
	return root
}
