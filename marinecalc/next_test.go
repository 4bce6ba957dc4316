package marinecalc_test

import (
	"encoding/json"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// No two things to do next on a sheet begin alike: a reader who sees the second
// takes it for the first and skips it.
func TestNextStepsBeginApart(t *testing.T) {
	const words = 3
	sheets := 0
	var look func(file string, v any)
	look = func(file string, v any) {
		switch v := v.(type) {
		case []any:
			for _, e := range v {
				look(file, e)
			}
		case map[string]any:
			for _, e := range v {
				look(file, e)
			}
			list, _ := v["next"].([]any)
			begun := map[string]string{}
			for _, e := range list {
				step, _ := e.(map[string]any)
				text, _ := step["text"].(string)
				if text == "" {
					continue
				}
				sheets++
				fields := strings.Fields(text)
				begins := strings.Join(fields[:min(words, len(fields))], " ")
				if other, twice := begun[begins]; twice {
					t.Errorf("%s: two steps begin with %q:\n%s\n%s", file, begins, other, text)
				}
				begun[begins] = text
			}
		}
	}
	err := filepath.WalkDir("../testdata/golden", func(path string, d fs.DirEntry, err error) error {
		if err != nil || !strings.HasSuffix(path, ".json") {
			return err
		}
		text, err := os.ReadFile(path)
		if err != nil {
			return err
		}
		var v any
		if err := json.Unmarshal(text, &v); err != nil {
			return err
		}
		look(path, v)
		return nil
	})
	if err != nil || sheets < 100 {
		t.Fatalf("%d steps, %v", sheets, err)
	}
}
