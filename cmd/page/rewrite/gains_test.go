package rewrite_test

import (
	"context"
	"encoding/json"
	"fmt"
	"os"
	"testing"
	"time"

	"github.com/tetratelabs/wazero"
	"github.com/tetratelabs/wazero/api"
	"github.com/tetratelabs/wazero/imports/wasi_snapshot_preview1"

	"example.org/driveline/cmd/page/assemble"
	"example.org/driveline/cmd/page/gzip"
	"example.org/driveline/cmd/page/rewrite"
	"example.org/driveline/marinecalc/sample"
)

// variant is the module with some of the rewriting left out.
type variant struct {
	name   string
	module []byte
	guest  api.Module
	least  map[string]time.Duration // of a request
}

// TestGains tells what each part of the rewriting gains: it builds the module
// in full, with each improvement left out for itself, and with less and less
// of the rewriting, and prints for each its size, its size packed, and the
// least time of requests in wazero, as parts of what it is in full. What is
// said of the module in full once more is the noise. It takes some ten
// minutes.
func TestGains(t *testing.T) {
	if os.Getenv("MARINECALC_GAINS") == "" {
		t.Skip("set MARINECALC_GAINS=1 to measure what each part of the rewriting gains, with nothing else running")
	}
	variants := makeVariants(t)
	ctx := context.Background()
	runtime := wazero.NewRuntime(ctx)
	defer runtime.Close(ctx)
	wasi_snapshot_preview1.MustInstantiate(ctx, runtime)
	for _, v := range variants {
		began := time.Now()
		var err error
		config := wazero.NewModuleConfig().WithName("").WithStartFunctions("_initialize").WithSysWalltime().WithSysNanotime()
		if v.guest, err = runtime.InstantiateWithConfig(ctx, v.module, config); err != nil {
			t.Fatalf("%s: %v", v.name, err)
		}
		v.least["start"] = time.Since(began)
	}
	requests := []string{"bolt-preload", "bolt-preload, no trials", "gland-heat", "coupling-alignment"}
	const rounds = 60
	for round := range rounds { // by turns, so that a slow spell of the machine meets all
		for _, name := range requests {
			request := requestOf(t, name, round+2)
			for i := range variants {
				v := variants[(i+round)%len(variants)]
				v.call(t, request) // warms the processor's caches up
				began := time.Now()
				v.call(t, request)
				if took := time.Since(began); v.least[name] == 0 || took < v.least[name] {
					v.least[name] = took
				}
			}
		}
	}
	full := variants[0]
	packed := len(gzip.Pack(full.module))
	t.Logf("%-32s %9d bytes, %9d packed, %v", full.name, len(full.module), packed, full.least)
	for _, v := range variants[1:] {
		line := fmt.Sprintf("%-32s %+9d bytes, %+9d packed", v.name, len(v.module)-len(full.module), len(gzip.Pack(v.module))-packed)
		for _, name := range append(requests, "start") {
			line += fmt.Sprintf(", %s %.3f", name, float64(v.least[name])/float64(full.least[name]))
		}
		t.Log(line)
	}
}

func makeVariants(t *testing.T) (variants []*variant) {
	t.Helper()
	root, err := assemble.Root()
	if err != nil {
		t.Fatal(err)
	}
	compiled, err := assemble.Compile(root)
	if err != nil {
		t.Fatal(err)
	}
	add := func(name string, module []byte, err error) {
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		variants = append(variants, &variant{name: name, module: module, least: map[string]time.Duration{}})
	}
	without := func(left ...string) ([]byte, error) {
		module, err := rewrite.JumpsWithout(compiled, left...)
		if err != nil {
			return nil, err
		}
		if module, err = rewrite.Segments(module); err != nil {
			return nil, err
		}
		return rewrite.Traces(module)
	}
	module, err := without()
	add("in full", module, err)
	add("in full, once more", module, err)
	for _, name := range rewrite.Improvements() {
		module, err = without(name)
		add("without "+name, module, err)
	}
	module, err = without(rewrite.Improvements()...)
	add("without any improvement", module, err)
	if module, err = rewrite.Segments(compiled); err == nil {
		module, err = rewrite.Traces(module)
	}
	add("without Jumps", module, err)
	straight, err := rewrite.Jumps(compiled)
	add("without Segments and Traces", straight, err)
	module, err = rewrite.Segments(straight)
	add("without Traces", module, err)
	add("as compiled", compiled, nil)
	return variants
}

// requestOf is a run of a calculation with what its schema gives as examples.
func requestOf(t *testing.T, name string, seed int) []byte {
	t.Helper()
	id, more := name, ""
	if name == "bolt-preload, no trials" {
		id, more = "bolt-preload", `,"noRanges":true`
	}
	values, err := sample.Typed(id)
	if err != nil {
		t.Fatal(err)
	}
	input, err := json.Marshal(values)
	if err != nil {
		t.Fatal(err)
	}
	return fmt.Appendf(nil, `{"seed":%d,"ask":"run","calculation":%q,"input":%s%s}`, seed, id, input, more)
}

// call hands a request over, as wasm/main.go says.
func (v *variant) call(t *testing.T, request []byte) {
	ctx := context.Background()
	export := func(name string, args ...uint64) uint64 {
		result, err := v.guest.ExportedFunction(name).Call(ctx, args...)
		if err != nil {
			t.Fatalf("%s: %s: %v", v.name, name, err)
		}
		if len(result) == 0 {
			return 0
		}
		return result[0]
	}
	at := export("alloc", uint64(len(request)))
	v.guest.Memory().Write(uint32(at), request)
	packed := export("call", at, uint64(len(request)))
	const ok = `{"ok":true`
	if reply, _ := v.guest.Memory().Read(uint32(packed>>32), uint32(len(ok))); string(reply) != ok {
		t.Fatalf("%s: refused %s", v.name, request)
	}
	export("release", packed>>32)
	export("release", at)
}
