package rewrite

import (
	"bytes"
	"context"
	"math/rand/v2"
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
	withoutRace(t)
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

// Nearly every function that Go's compiler writes has the form that is
// rewritten; with another toolchain this would be the first to tell.
func TestMostFunctionsAreRewritten(t *testing.T) {
	module, _ := ways(t)
	functions := functionsOf(t, module)
	rewritten := 0
	for _, f := range functions {
		if f.blocks != nil {
			rewritten++
		}
	}
	if part := float64(rewritten) / float64(len(functions)); part < 0.9 {
		t.Errorf("%d of %d functions are rows of basic blocks", rewritten, len(functions))
	}
}

func functionsOf(t *testing.T, module []byte) (functions []function) {
	t.Helper()
	_, err := mapSections(module, func(kind byte, body []byte) (_ []byte, err error) {
		if kind == 10 {
			functions, err = readFunctions(body)
		}
		return body, err
	})
	if err != nil {
		t.Fatal(err)
	}
	return functions
}

// moduleOfCode is a module of one function, which is all that Jumps looks at.
func moduleOfCode(code []byte) []byte {
	body := appendSized([]byte{1}, code)
	return append([]byte("\x00asm\x01\x00\x00\x00\x0a"), appendSized(nil, body)...)
}

// Functions that are cut off or spoilt are refused or left as they are: they
// stop neither by a panic nor never.
func TestJumpsBearSpoiltFunctions(t *testing.T) {
	module, _ := ways(t)
	random := rand.New(rand.NewPCG(7, 8))
	for i, f := range functionsOf(t, module) {
		if i%40 != 0 {
			continue
		}
		for range 20 {
			spoilt := bytes.Clone(f.code)
			if random.IntN(2) == 0 {
				spoilt = spoilt[:random.IntN(len(spoilt))]
			}
			for range random.IntN(4) {
				if n := min(len(spoilt), 200); n > 0 {
					spoilt[random.IntN(n)] = byte(random.Uint32())
				}
			}
			_, _ = Jumps(moduleOfCode(spoilt))
		}
	}
	head := "\x01\x01\x7f\x23\x00\x21\x01\x02\x40\x20\x00\x0e"
	for _, rest := range []string{
		"\x05",
		"\xff\xff\xff\xff\xff\xff\xff\xff\xff\x01\x00\x0b\x0b",
		"\x00\xff\xff\xff\xff\xff\xff\xff\xff\xff\x01\x0b\x0b\x0b",
		"\x01\x80\x80\x80\x80\x80\x80\x80\x80\x80\x01\x00\x0b\x41\x00\x0b",
	} {
		_, _ = Jumps(moduleOfCode([]byte(head + rest)))
	}
	if _, err := Jumps(moduleOfCode([]byte("\x80\x80\x80\x80\x80\x80\x80\x80\x40"))); err == nil {
		t.Error("a function of 2^62 kinds of locals was taken")
	}
}

func TestJumpsRefuseUnknownInstructions(t *testing.T) {
	if _, err := Jumps(moduleOfCode([]byte{0, 0xfe, end})); err == nil { // no locals, an instruction of another proposal
		t.Error("instruction 0xfe was taken")
	}
}
