package marinecalc_test

import (
	"context"
	"os"
	"path/filepath"
	"testing"

	"example.org/driveline/marinecalc/internal/book"
)

// readPublished reads the published values by the files that they stand in.
func readPublished(t *testing.T) map[string][]book.Row {
	t.Helper()
	files, err := filepath.Glob("../testdata/published/*.json")
	if err != nil || len(files) == 0 {
		t.Fatalf("no published values: %v", err)
	}
	topics := map[string][]book.Row{}
	for _, name := range files {
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		if topics[filepath.Base(name)], err = book.Read(text); err != nil {
			t.Fatalf("%s: %v", name, err)
		}
	}
	return topics
}

// TestPublished holds the code and its rule data against every published
// value of testdata/published. The same rows run in WASM too (wasm/).
func TestPublished(t *testing.T) {
	rows := 0
	for name, topic := range readPublished(t) {
		seen := map[string]bool{}
		for _, row := range topic {
			rows++
			if row.ID == "" || seen[row.ID] {
				t.Errorf("%s: row %q has no id, or its id twice", name, row.ID)
			}
			seen[row.ID] = true
			t.Run(name+"/"+row.ID, func(t *testing.T) {
				check := book.Compute(context.Background(), row)
				if check.Problem != "" {
					t.Error(check.Problem)
				}
				for _, v := range check.Values {
					if !v.Holds {
						t.Errorf("%s is %s, published %s (off by %s, allowed %s): %s", v.Name, v.Computed, v.Published, v.Difference, v.Allowed, check.Source)
					}
				}
			})
		}
	}
	if rows < 1400 {
		t.Errorf("only %d published values; there were 1400", rows)
	}
}
