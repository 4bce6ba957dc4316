package main

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
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

// The host in C answers as the native build does, and goes on after a request
// that cannot be used. A long check: it fetches a runtime.
func TestExampleHostInC(t *testing.T) {
	if os.Getenv("MARINECALC_C") == "" {
		t.Skip("a long check: MARINECALC_C=1")
	}
	file := filepath.Join(t.TempDir(), "marinecalc.wasm")
	if err := os.WriteFile(file, binary, 0o644); err != nil {
		t.Fatal(err)
	}
	requests := []string{
		`{"ask":"run","calculation":"bolt-preload","trials":256,"input":{"thread":"M10x1.5","grade":"iso-8.8","finish":"oiled","nut":"plain-nut"}}`,
		`{"ask":"run","calculation":"shaft-torque","input":{"engineSpeed":"fast"}}`,
		`not JSON`,
		`{"ask":"convert","text":"45 lbf·ft ± 5 %","to":"N·m"}`,
	}
	run := exec.Command("examples/c/run", file, "-")
	run.Stdin = strings.NewReader(strings.Join(requests, "\n") + "\n")
	said, err := run.Output()
	if run.ProcessState != nil && run.ProcessState.ExitCode() == 3 {
		t.Skip("there is no runtime for it here")
	}
	lines := strings.Split(strings.TrimSpace(string(said)), "\n")
	if err != nil || len(lines) != len(requests) {
		t.Fatalf("%v, %d lines: %.2000s", err, len(lines), said)
	}
	for i, line := range lines {
		if err := same(marinecalc.Call([]byte(requests[i])), []byte(line)); err != nil {
			t.Errorf("%s\n%v", requests[i], err)
		}
	}
}
