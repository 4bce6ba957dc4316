package main

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"testing"

	"github.com/tetratelabs/wazero"
	"github.com/tetratelabs/wazero/api"
	"github.com/tetratelabs/wazero/imports/wasi_snapshot_preview1"
)

// pages of 64 KiB a guest may have: 256 MiB.
const mostPages = 4096

// The host: one runtime and one compiled module for the whole test binary,
// since compiling takes seconds and instances take milliseconds.
var (
	runtime wazero.Runtime
	module  wazero.CompiledModule
	binary  []byte // what module was compiled from
)

func TestMain(m *testing.M) { os.Exit(withHost(m.Run)) }

// withHost builds and compiles the module, runs the tests and clears up.
func withHost(run func() int) int {
	ctx := context.Background()
	var err error
	if binary, err = build(); err != nil {
		fmt.Fprintln(os.Stderr, err)
		return 1
	}
	runtime = wazero.NewRuntimeWithConfig(ctx, wazero.NewRuntimeConfig().WithMemoryLimitPages(mostPages))
	defer runtime.Close(ctx)
	wasi_snapshot_preview1.MustInstantiate(ctx, runtime)
	if module, err = runtime.CompileModule(ctx, binary); err != nil {
		fmt.Fprintln(os.Stderr, "compile:", err)
		return 1
	}
	return run()
}

// build makes the module as the page holds it.
func build() ([]byte, error) {
	dir, err := os.MkdirTemp("", "marinecalc")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(dir)
	file := filepath.Join(dir, "marinecalc.wasm")
	if said, err := exec.Command("go", "run", "../cmd/page", "-module", file).CombinedOutput(); err != nil {
		return nil, fmt.Errorf("go run ../cmd/page -module: %w\n%s", err, said)
	}
	return os.ReadFile(file)
}

// guest is one instance of the module. It belongs to one goroutine. After a
// trap it must not be used again: call makes a new instance by itself.
type guest struct {
	t        testing.TB
	instance api.Module
	stderr   bytes.Buffer
}

// newGuest starts an instance that lives until the test ends.
func newGuest(t testing.TB) *guest {
	t.Helper()
	g := &guest{t: t}
	g.enter()
	t.Cleanup(func() { g.instance.Close(context.Background()) })
	return g
}

func (g *guest) enter() {
	g.t.Helper()
	g.stderr.Reset()
	config := wazero.NewModuleConfig().
		WithName("").
		WithStartFunctions("_initialize"). // a Go reactor has no _start, and wazero looks for no other
		WithStderr(&g.stderr).
		WithSysWalltime().WithSysNanotime()
	instance, err := runtime.InstantiateModule(context.Background(), module, config)
	if err != nil {
		g.t.Fatalf("instantiate: %v\n%s", err, &g.stderr)
	}
	g.instance = instance
}

// call hands request over and copies the reply. An error means a trap: the
// instance was dropped and a new one made.
func (g *guest) call(request []byte) (reply []byte, err error) {
	g.t.Helper()
	reply, err = g.try(request)
	if err != nil {
		err = fmt.Errorf("%w\n%s", err, &g.stderr)
		g.instance.Close(context.Background())
		g.enter()
	}
	return reply, err
}

func (g *guest) try(request []byte) ([]byte, error) {
	at, err := g.export("alloc", uint64(max(len(request), 1)))
	if err != nil {
		return nil, err
	}
	if at == 0 {
		return nil, errTooLong
	}
	if !g.instance.Memory().Write(uint32(at), request) {
		return nil, fmt.Errorf("alloc gave %#x, outside the memory", at)
	}
	packed, err := g.export("call", at, uint64(len(request)))
	if err != nil {
		return nil, err
	}
	view, ok := g.instance.Memory().Read(uint32(packed>>32), uint32(packed))
	if !ok {
		return nil, fmt.Errorf("call gave %#x, outside the memory", packed)
	}
	reply := bytes.Clone(view) // the view dies when the memory grows
	if _, err := g.export("release", packed>>32); err != nil {
		return nil, err
	}
	_, err = g.export("release", at)
	return reply, err
}

// errTooLong tells that alloc refused; the instance is as good as before.
var errTooLong = fmt.Errorf("alloc refused the length")

func (g *guest) export(name string, args ...uint64) (uint64, error) {
	result, err := g.instance.ExportedFunction(name).Call(context.Background(), args...)
	if err != nil {
		return 0, fmt.Errorf("%s trapped: %w", name, err)
	}
	if len(result) == 0 {
		return 0, nil
	}
	return result[0], nil
}

// reply is the part of every reply these tests look at.
type reply struct {
	OK       bool
	Problems []struct{ Where, What, Allowed, Hint string }
}

// mustCall is call for requests that may be wrong but must never trap.
func (g *guest) mustCall(request []byte) (raw []byte, r reply) {
	g.t.Helper()
	raw, err := g.call(request)
	if err != nil {
		g.t.Fatal(err)
	}
	if err := json.Unmarshal(raw, &r); err != nil {
		g.t.Fatalf("reply is not JSON: %v\n%.200s", err, raw)
	}
	return raw, r
}
