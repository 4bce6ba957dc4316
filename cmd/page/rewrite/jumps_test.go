package rewrite

import (
	"bytes"
	"context"
	"os"
	"os/exec"
	"path/filepath"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/tetratelabs/wazero"
	"github.com/tetratelabs/wazero/imports/wasi_snapshot_preview1"
)

// ways builds the command that goes every way, as a module and natively.
func ways(t *testing.T) (module []byte, native string) {
	t.Helper()
	dir := t.TempDir()
	build := func(out string, env ...string) string {
		out = filepath.Join(dir, out)
		cmd := exec.Command("go", "build", "-o", out, "./testdata/ways")
		cmd.Env = append(os.Environ(), env...)
		if said, err := cmd.CombinedOutput(); err != nil {
			t.Fatalf("go build: %v\n%s", err, said)
		}
		return out
	}
	module, err := os.ReadFile(build("ways.wasm", "GOOS=wasip1", "GOARCH=wasm"))
	if err != nil {
		t.Fatal(err)
	}
	return module, build("ways")
}

// says is what a command in a module prints.
func says(t *testing.T, module []byte) string {
	t.Helper()
	ctx := context.Background()
	runtime := wazero.NewRuntime(ctx)
	defer runtime.Close(ctx)
	wasi_snapshot_preview1.MustInstantiate(ctx, runtime)
	var out, faults bytes.Buffer
	_, err := runtime.InstantiateWithConfig(ctx, module, wazero.NewModuleConfig().WithStdout(&out).WithStderr(&faults).WithSysNanotime().WithSysWalltime())
	if err != nil {
		t.Fatalf("%v\n%s%s", err, &out, &faults)
	}
	return out.String()
}

// A command that loops, branches, panics, recovers, grows its stack, collects
// and waits says the same natively, in the module that Go built, and in the
// rewritten one.
func TestRewrittenModuleGoesTheSameWays(t *testing.T) {
	module, native := ways(t)
	want, err := exec.Command(native).Output()
	if err != nil {
		t.Fatal(err)
	}
	straight, err := Jumps(module)
	if err != nil {
		t.Fatal(err)
	}
	for name, m := range map[string][]byte{"as built": module, "with direct jumps": straight} {
		if diff := cmp.Diff(string(want), says(t, m)); diff != "" {
			t.Errorf("%s, otherwise than natively (-want +got):\n%s", name, diff)
		}
	}
	if len(straight) >= len(module) {
		t.Errorf("direct jumps made %d bytes of %d", len(straight), len(module))
	}
}

// What is rewritten is a row of basic blocks behind one table no more.
func TestJumpsAreMadeDirectOnce(t *testing.T) {
	module, _ := ways(t)
	once, err := Jumps(module)
	if err != nil {
		t.Fatal(err)
	}
	twice, err := Jumps(once)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(once, twice) {
		t.Error("rewriting again changed the module")
	}
}

// A module that is cut off anywhere is refused, or left as it is.
func TestJumpsRefuseWhatIsCutOff(t *testing.T) {
	module, _ := ways(t)
	whole, err := Jumps(module)
	if err != nil {
		t.Fatal(err)
	}
	for n := 0; n < len(module); n += 1 + n/4 {
		if cut, err := Jumps(module[:n]); err == nil && len(cut) > n+len(whole) {
			t.Errorf("the first %d bytes were rewritten to %d", n, len(cut))
		}
	}
}

func TestJumpsRefuseUnknownInstructions(t *testing.T) {
	body := []byte{0, 0xfe, end} // no locals, an instruction of another proposal
	module := append([]byte("\x00asm\x01\x00\x00\x00"), 10, byte(2+len(body)), 1, byte(len(body)))
	if _, err := Jumps(append(module, body...)); err == nil {
		t.Error("instruction 0xfe was taken")
	}
}
