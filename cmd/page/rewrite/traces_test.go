package rewrite

import (
	"bytes"
	"compress/gzip"
	"context"
	"encoding/binary"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/tetratelabs/wazero"
	"github.com/tetratelabs/wazero/imports/wasi_snapshot_preview1"
)

// joined is a module as Traces takes it.
func joined(t *testing.T, module []byte) []byte {
	t.Helper()
	module, err := Segments(module)
	if err != nil {
		t.Fatal(err)
	}
	return module
}

// A command that panics, recovers, grows its stack and collects, for all of
// which the runtime reads the table of functions, says the same without what traces read.
func TestModuleWithoutTracesGoesTheSameWays(t *testing.T) {
	withoutRace(t)
	module, native := ways(t)
	want, err := exec.Command(native).Output()
	if err != nil {
		t.Fatal(err)
	}
	module = joined(t, module)
	bare, err := Traces(module)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(string(want), says(t, bare)); diff != "" {
		t.Errorf("otherwise than natively (-want +got):\n%s", diff)
	}
	if before, after := gzipped(t, module), gzipped(t, bare); after > before*97/100 {
		t.Errorf("packed %d bytes of %d", after, before)
	}
	again, err := Traces(module)
	if err != nil || !bytes.Equal(again, bare) {
		t.Errorf("the same module came out otherwise (%v)", err)
	}
}

func gzipped(t *testing.T, data []byte) int {
	t.Helper()
	var small bytes.Buffer
	w := gzip.NewWriter(&small)
	if _, err := w.Write(data); err != nil {
		t.Fatal(err)
	}
	if err := w.Close(); err != nil {
		t.Fatal(err)
	}
	return small.Len()
}

// The trace of a crash names the functions, without files and lines.
func TestCrashStillNamesFunctions(t *testing.T) {
	out := filepath.Join(t.TempDir(), "crash.wasm")
	cmd := exec.Command("go", "build", "-o", out, "./testdata/crash")
	cmd.Env = append(os.Environ(), "GOOS=wasip1", "GOARCH=wasm")
	if said, err := cmd.CombinedOutput(); err != nil {
		t.Fatalf("go build: %v\n%s", err, said)
	}
	module, err := os.ReadFile(out)
	if err != nil {
		t.Fatal(err)
	}
	module = joined(t, module)
	bare, err := Traces(module)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		module []byte
		lines  bool
	}{{module, true}, {bare, false}} {
		trace := crashOf(t, c.module)
		if strings.Count(trace, "main.loosen(") < 4 || !strings.Contains(trace, "main.strip[...](") || !strings.Contains(trace, "off the thread") {
			t.Errorf("the trace does not name its functions:\n%s", trace)
		}
		if strings.Contains(trace, "main.go:") != c.lines || strings.Contains(trace, "?:0") == c.lines {
			t.Errorf("lines: want %v in\n%s", c.lines, trace)
		}
	}
}

func crashOf(t *testing.T, module []byte) string {
	t.Helper()
	ctx := context.Background()
	runtime := wazero.NewRuntime(ctx)
	defer runtime.Close(ctx)
	wasi_snapshot_preview1.MustInstantiate(ctx, runtime)
	var faults bytes.Buffer
	config := wazero.NewModuleConfig().WithStderr(&faults).WithSysNanotime().WithSysWalltime()
	if _, err := runtime.InstantiateWithConfig(ctx, module, config); err == nil {
		t.Fatal("it did not crash")
	}
	return faults.String()
}

// A table that is cut off or spoilt is refused or read as it stands: no panic.
func TestTracesBearSpoiltTables(t *testing.T) {
	module, _ := ways(t)
	module = joined(t, module)
	var table []byte
	_, err := mapSections(module, func(kind byte, body []byte) ([]byte, error) {
		if kind == 11 {
			segments, err := readSegments(body)
			for _, s := range segments {
				if at := bytes.Index(s.data, functionTable); at >= 0 {
					table = s.data[at:]
				}
			}
			return body, err
		}
		return body, nil
	})
	if err != nil || table == nil {
		t.Fatalf("no table of functions (%v)", err)
	}
	random := rand.New(rand.NewPCG(9, 10))
	for n := range 100 {
		spoilt := bytes.Clone(table)
		if n%2 == 0 {
			spoilt = spoilt[:random.IntN(min(len(spoilt), 1<<(4+n%18)))]
		}
		for range 1 + random.IntN(4) {
			if len(spoilt) > 0 {
				spoilt[random.IntN(min(len(spoilt), 72+n*1000))] = byte(random.Uint32())
			}
		}
		_ = dropTraces(spoilt, bytes.Clone(table[:random.IntN(len(table))]))
	}
	if err := dropTraces(bytes.Clone(table[:len(table)/4]), nil); err == nil {
		t.Error("a quarter of a table was taken")
	}
	if _, err := Traces(moduleOf([]segment{{0, []byte("gland")}})); err == nil {
		t.Error("a module without a table of functions was taken")
	}
}

// The runtime's data may begin with a zero that lies in no segment: the address
// of the table of functions with nothing in its last byte.
func TestTableIsFoundThroughGaps(t *testing.T) {
	memory := make([]byte, 400)
	const table, from, to = 0x2100, 0x3000, 0x3080
	binary.LittleEndian.PutUint64(memory, table)
	binary.LittleEndian.PutUint64(memory[8*40:], from)
	binary.LittleEndian.PutUint64(memory[8*19:], to)
	segments := []segment{{address: 0x5001, data: memory[1:200]}, {address: 0x5000 + 8*40 + 1, data: memory[8*40+1:]}}
	gotFrom, gotTo, err := besideFunctions(segments, table)
	if err != nil || gotFrom != from || gotTo != to {
		t.Errorf("%#x to %#x (%v)", gotFrom, gotTo, err)
	}
	if _, _, err := besideFunctions(segments, table+1); err == nil {
		t.Error("found what is not there")
	}
}
