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
	if got := slices.Compact(within); !slices.Equal(got, []string{"example.org/driveline", "github.com/santhosh-tekuri/jsonschema/v5"}) {
		t.Errorf("built in are %v: each needs its notice", got)
	}
	for _, folder := range []string{output("go", "env", "GOROOT"), output("go", "list", "-m", "-f", "{{.Dir}}", "github.com/santhosh-tekuri/jsonschema/v5")} {
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
