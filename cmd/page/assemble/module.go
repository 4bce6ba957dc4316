package assemble

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"

	"example.org/driveline/cmd/page/rewrite"
)

// Module gives the WebAssembly module as the page and the tests of other hosts
// have it: compiled, then rewritten. root is the folder that Root gives.
func Module(root string) ([]byte, error) {
	module, err := Compile(root)
	if err != nil {
		return nil, err
	}
	if module, err = rewrite.Jumps(module); err != nil {
		return nil, err
	}
	if module, err = rewrite.Segments(module); err != nil {
		return nil, err
	}
	return rewrite.Traces(module)
}

// Compile gives the module as the Go toolchain builds it from ./wasm: a WASI
// reactor, with the flags that wasm/build.flags lists. No version control
// stamp goes in, so that the same sources give the same bytes.
func Compile(root string) ([]byte, error) {
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
	overlay, err := compactData(root, dir)
	if err != nil {
		return nil, err
	}
	modfile, err := withoutFormats(root, dir)
	if err != nil {
		return nil, err
	}
	args := []string{"build", "-o", out, "-overlay", overlay, "-modfile", modfile}
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
	return os.ReadFile(out)
}
