package main

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"

	"example.org/driveline/cmd/page/rewrite"
)

// buildModule compiles ./wasm as a WASI reactor, with the flags that
// wasm/build.flags lists, rewrites it, and gives its bytes. No version control
// stamp goes in, so that the same sources give the same bytes.
func buildModule(root string) ([]byte, error) {
	flags, err := os.ReadFile(filepath.Join(root, "wasm", "build.flags"))
	if err != nil {
		return nil, err
	}
	dir, err := os.MkdirTemp("", "marinecalc-page")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(dir)
	out := filepath.Join(dir, "marinecalc.wasm")
	args := []string{"build", "-o", out}
	for line := range strings.Lines(string(flags)) {
		if line = strings.TrimSpace(line); line != "" && line[0] != '#' {
			args = append(args, line)
		}
	}
	cmd := exec.Command("go", append(args, "./wasm")...)
	cmd.Dir = root
	cmd.Env = append(os.Environ(), "GOOS=wasip1", "GOARCH=wasm", "CGO_ENABLED=0")
	if said, err := cmd.CombinedOutput(); err != nil {
		return nil, fmt.Errorf("building the WebAssembly module: %w\n%s", err, said)
	}
	module, err := os.ReadFile(out)
	if err != nil {
		return nil, err
	}
	if module, err = rewrite.Jumps(module); err != nil {
		return nil, err
	}
	return rewrite.Segments(module)
}
