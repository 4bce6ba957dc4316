// Command wazero is a whole host in Go: it compiles the module once, keeps the
// compiled code on disk, serves requests from a pool of instances, and gives
// each call a deadline.
//
//	go run ./cmd/page -module marinecalc.wasm
//	go run ./wasm/examples/wazero marinecalc.wasm
package main

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"sync"
	"time"

	"github.com/tetratelabs/wazero"
	"github.com/tetratelabs/wazero/api"
	"github.com/tetratelabs/wazero/imports/wasi_snapshot_preview1"
)

// Pool is the calculator for many goroutines: an instance serves one call at a
// time, and one that trapped or ran past its deadline is thrown away.
type Pool struct {
	runtime wazero.Runtime
	module  wazero.CompiledModule
	idle    chan api.Module
}

// Open compiles the module. What was compiled is kept in the folder cache, so
// that the next start takes a fraction of the time.
func Open(ctx context.Context, binary []byte, cache string, size int) (*Pool, error) {
	kept, err := wazero.NewCompilationCacheWithDir(cache)
	if err != nil {
		return nil, err
	}
	p := &Pool{idle: make(chan api.Module, size)}
	p.runtime = wazero.NewRuntimeWithConfig(ctx, wazero.NewRuntimeConfig().
		WithCompilationCache(kept).
		WithMemoryLimitPages(4096).   // 256 MiB an instance
		WithCloseOnContextDone(true)) // a deadline ends the call, and the instance with it
	wasi_snapshot_preview1.MustInstantiate(ctx, p.runtime)
	if p.module, err = p.runtime.CompileModule(ctx, binary); err != nil {
		p.runtime.Close(ctx)
		return nil, fmt.Errorf("compiling the module: %w", err)
	}
	return p, nil
}

// Close ends every instance.
func (p *Pool) Close(ctx context.Context) error { return p.runtime.Close(ctx) }

func (p *Pool) enter(ctx context.Context) (api.Module, error) {
	select {
	case m := <-p.idle:
		return m, nil
	default:
	}
	return p.runtime.InstantiateModule(ctx, p.module, wazero.NewModuleConfig().
		WithName("").                      // many instances of one module
		WithStartFunctions("_initialize")) // a reactor has no _start
}

// Call sends one request, JSON in UTF-8, and copies the reply.
func (p *Pool) Call(ctx context.Context, request []byte) ([]byte, error) {
	m, err := p.enter(context.WithoutCancel(ctx)) // the deadline is the call's, not the instance's
	if err != nil {
		return nil, err
	}
	reply, err := ask(ctx, m, request)
	if err != nil && !errors.Is(err, errTooLong) {
		m.Close(context.WithoutCancel(ctx)) // its memory can no longer be trusted
		return nil, err
	}
	select {
	case p.idle <- m:
	default:
		m.Close(ctx)
	}
	return reply, err
}

var errTooLong = errors.New("the request is empty or longer than the module takes")

func ask(ctx context.Context, m api.Module, request []byte) ([]byte, error) {
	at, err := m.ExportedFunction("alloc").Call(ctx, uint64(len(request)))
	if err != nil {
		return nil, err
	}
	if at[0] == 0 {
		return nil, errTooLong
	}
	if !m.Memory().Write(uint32(at[0]), request) {
		return nil, errors.New("alloc gave an address outside the memory")
	}
	packed, err := m.ExportedFunction("call").Call(ctx, at[0], uint64(len(request)))
	if err != nil {
		return nil, err
	}
	reply, ok := m.Memory().Read(uint32(packed[0]>>32), uint32(packed[0]))
	if !ok {
		return nil, errors.New("call gave an address outside the memory")
	}
	reply = bytes.Clone(reply) // the view dies when the memory grows
	for _, lent := range []uint64{packed[0] >> 32, at[0]} {
		if _, err := m.ExportedFunction("release").Call(ctx, lent); err != nil {
			return nil, err
		}
	}
	return reply, nil
}

func main() {
	if err := run(os.Args[1:]); err != nil {
		fmt.Fprintln(os.Stderr, "wazero:", err)
		os.Exit(1)
	}
}

func run(args []string) error {
	if len(args) != 1 {
		return errors.New("name the module: wazero marinecalc.wasm")
	}
	binary, err := os.ReadFile(args[0])
	if err != nil {
		return err
	}
	ctx := context.Background()
	pool, err := Open(ctx, binary, filepath.Join(os.TempDir(), "marinecalc-compiled"), 4)
	if err != nil {
		return err
	}
	defer pool.Close(ctx)

	requests := []string{
		`{"ask":"run","calculation":"shaft-torque","brief":true,"input":{"enginePower":"21 kW","engineSpeed":"2800 rpm","gearRatioAhead":2.15}}`,
		`{"ask":"run","calculation":"bolt-preload","brief":true,"input":{"thread":"M10x1.5","grade":"iso-8.8","finish":"oiled","nut":"plain-nut"}}`,
	}
	replies := make([]string, len(requests))
	var all sync.WaitGroup
	for i, request := range requests {
		all.Go(func() {
			ctx, cancel := context.WithTimeout(ctx, 20*time.Second)
			defer cancel()
			reply, err := pool.Call(ctx, []byte(request))
			if err != nil {
				reply = []byte(err.Error())
			}
			replies[i] = string(reply)
		})
	}
	all.Wait()
	for _, reply := range replies {
		fmt.Println(reply)
	}
	return nil
}
