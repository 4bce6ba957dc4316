package main

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

// The host in Go that HOSTS.md speaks of answers both of its requests.
func TestExampleHost(t *testing.T) {
	file := filepath.Join(t.TempDir(), "marinecalc.wasm")
	if err := os.WriteFile(file, binary, 0o644); err != nil {
		t.Fatal(err)
	}
	said, err := exec.Command("go", "run", "./examples/wazero", file).CombinedOutput()
	if err != nil {
		t.Fatalf("%v\n%s", err, said)
	}
	lines := strings.Split(strings.TrimSpace(string(said)), "\n")
	if len(lines) != 2 || !strings.Contains(lines[0], `"ok":true`) || !strings.Contains(lines[1], `"name":"wrenchSetting"`) {
		t.Errorf("%d lines:\n%.2000s", len(lines), said)
	}
}
