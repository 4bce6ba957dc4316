package marinecalc_test

import (
	"errors"
	"io/fs"
	"os"
	"regexp"
	"strings"
	"testing"

	"example.org/driveline/marinecalc/internal/testboat"
)

// What the long checks said stands in a file that names the commit they ran
// on, and nothing in it failed.
func TestLongChecksNameTheirCommit(t *testing.T) {
	text, err := os.ReadFile(testboat.Root("testdata", "long-checks.md"))
	if errors.Is(err, fs.ErrNotExist) {
		t.Skip("they did not run yet: .ci/long")
	}
	if err != nil {
		t.Fatal(err)
	}
	if !regexp.MustCompile(`on commit [0-9a-f]{40}: \d+ cores of \S.*, go1\.`).Match(text) {
		t.Error("it does not name the commit, whole and without changes, and the machine")
	}
	rows := regexp.MustCompile(`(?m)^\| .* \| (\S.*) \| \d{4}-\d\d-\d\d \d\d:\d\d \| \d+ s \|$`).FindAllStringSubmatch(string(text), -1)
	if len(rows) == 0 {
		t.Error("it has no check")
	}
	for _, row := range rows {
		if row[1] != "held" {
			t.Errorf("%s", row[0])
		}
		if name, _, _ := strings.Cut(row[0][2:], " |"); !strings.Contains(string(text), "\n## "+name+"\n") {
			t.Errorf("what %q printed is not there", name)
		}
	}
}
