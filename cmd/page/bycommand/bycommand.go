// Package bycommand runs the page's command for tests: in their own process
// packing would take ten times as long under the race detector.
package bycommand

import (
	"fmt"
	"io/fs"
	"os/exec"
	"path/filepath"
)

// Run runs go run ./cmd/page with these flags. It looks through the folders of
// the sources first, so that go test knows what its result depends on.
func Run(root string, flags ...string) error {
	for _, folder := range []string{"cmd/page", "marinecalc", "schemas", "site", "testdata/boats", "wasm"} {
		err := filepath.WalkDir(filepath.Join(root, folder), func(_ string, d fs.DirEntry, err error) error {
			if err == nil && d.IsDir() && d.Name() == "node_modules" {
				return filepath.SkipDir
			}
			return err
		})
		if err != nil {
			return err
		}
	}
	command := exec.Command("go", append([]string{"run", "./cmd/page"}, flags...)...)
	command.Dir = root
	if said, err := command.CombinedOutput(); err != nil {
		return fmt.Errorf("%w\n%s", err, said)
	}
	return nil
}
