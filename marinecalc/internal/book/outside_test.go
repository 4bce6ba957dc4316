package book_test

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"example.org/driveline/marinecalc/internal/book"
)

// Of both ends of the shaft each published row says what it rests on, and sixty
// at least come from outside: a table or a worked example in print, or another
// method. What is from memory, or worked by hand, is none of these.
func TestBothEndsOfTheShaftAreHeldFromOutside(t *testing.T) {
	const wanted = 60
	ends := []string{"output-flange", "coupling-bore", "propeller-taper", "thread-engagement"}
	files, err := filepath.Glob("../../../testdata/published/*.json")
	if err != nil || len(files) == 0 {
		t.Fatal(files, err)
	}
	outside := map[string]int{}
	sum := 0
	for _, file := range files {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		rows, err := book.Read(text)
		if err != nil {
			t.Fatal(file, err)
		}
		for _, r := range rows {
			if !slices.Contains(ends, r.Calculation) {
				continue
			}
			memory := strings.Contains(r.Source+r.Note, "from memory")
			switch r.By {
			case "table", "example", "method":
				if memory || strings.Contains(r.Note, "Arithmetic") {
					t.Errorf("%s: said to be from outside (%s), and %s %s", r.ID, r.By, r.Source, r.Note)
				}
				if strings.Contains(r.Source, "nothing published") != (r.By == "method") {
					t.Errorf("%s: is it in print, or another method? %s", r.ID, r.Source)
				}
				outside[r.Calculation]++
				sum++
			case "hand", "memory":
			default:
				t.Errorf("%s does not say what it rests on: %q", r.ID, r.By)
			}
		}
	}
	if sum < wanted {
		t.Errorf("%d rows from outside, want %d: %v", sum, wanted, outside)
	}
	t.Logf("%d rows from outside: %v", sum, outside)
}
