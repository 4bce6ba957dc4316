package notices_test

import (
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"example.org/driveline/marinecalc/notices"
)

// The licences are those of the toolchain and of the modules that really go
// into the module and the command line, and no other module does.
func TestNoticesAreOfWhatIsBuiltIn(t *testing.T) {
	output := func(name string, args ...string) string {
		said, err := exec.Command(name, args...).Output()
		if err != nil {
			t.Fatal(name, args, err)
		}
		return strings.TrimSpace(string(said))
	}
	within := strings.Fields(output("go", "list", "-deps", "-f", "{{with .Module}}{{.Path}}{{end}}", "../../wasm", "../../cmd/marinecalc"))
	slices.Sort(within)
	folders := []string{output("go", "env", "GOROOT")}
	for _, module := range slices.Compact(within) {
		if module == "example.org/driveline" {
			continue
		}
		if !strings.Contains(notices.Third(), module) {
			t.Errorf("%s is built in and has no notice", module)
		}
		folders = append(folders, output("go", "list", "-m", "-f", "{{.Dir}}", module))
	}
	for _, folder := range folders {
		text, err := os.ReadFile(filepath.Join(folder, "LICENSE"))
		if err != nil {
			t.Fatal(err)
		}
		if !strings.Contains(notices.Third(), string(text)) {
			t.Errorf("the licence in %s is not told", folder)
		}
	}
	if !strings.Contains(notices.Own(), "the marinecalc authors") {
		t.Error("the own licence names nobody")
	}
}
