package main

import (
	"context"
	"encoding/json"
	"fmt"
	"math"
	"os"
	"os/exec"
	"testing"
	"time"

	"github.com/tetratelabs/wazero"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/sample"
)

// The benchmarks below time the same request natively and in wazero in one
// run and report the ratio, asked to be at most 4.

// BenchmarkRangesInTheGuest: one calculation with the default trials.
func BenchmarkRangesInTheGuest(b *testing.B) {
	for _, entry := range marinecalc.Calculations() {
		b.Run(entry.ID, func(b *testing.B) { ratio(b, typed(b, entry.ID, "")) })
	}
}

// typed is a request with an input as a person types it, from the schema's
// examples, and other members of the request behind it.
func typed(b *testing.B, id, more string) []byte {
	b.Helper()
	values, err := sample.Typed(id)
	if err != nil {
		b.Fatal(err)
	}
	input, err := json.Marshal(values)
	if err != nil {
		b.Fatal(err)
	}
	return fmt.Appendf(nil, `{"ask":"run","calculation":%q,"input":%s%s}`, id, input, more)
}

// BenchmarkPlainInTheGuest: one calculation without ranges.
func BenchmarkPlainInTheGuest(b *testing.B) {
	for _, entry := range marinecalc.Calculations() {
		b.Run(entry.ID, func(b *testing.B) { ratio(b, typed(b, entry.ID, `,"noRanges":true`)) })
	}
}

// BenchmarkBoatInTheGuest: the whole demo boat, the default trials a calculation.
func BenchmarkBoatInTheGuest(b *testing.B) {
	text, err := os.ReadFile("../testdata/boats/kittiwake.json")
	if err != nil {
		b.Fatal(err)
	}
	ratio(b, fmt.Appendf(nil, `{"ask":"survey","boat":%s}`, text))
}

// BenchmarkPlainLoopInTheGuest is the yardstick for the others: a plain Monte
// Carlo loop, which is not in the shipped module, in both.
func BenchmarkPlainLoopInTheGuest(b *testing.B) {
	const trials, runs = 4096, 200
	dir := b.TempDir()
	for env, args := range map[string][]string{
		"wasm":   {"-buildmode=c-shared", "-o", dir + "/loop.wasm"},
		"native": {"-o", dir + "/loop"},
	} {
		cmd := exec.Command("go", append(append([]string{"build"}, args...), "./testdata/loop")...)
		cmd.Env = os.Environ()
		if env == "wasm" {
			cmd.Env = append(cmd.Env, "GOOS=wasip1", "GOARCH=wasm")
		}
		if said, err := cmd.CombinedOutput(); err != nil {
			b.Fatalf("go build: %v\n%s", err, said)
		}
	}
	binary, err := os.ReadFile(dir + "/loop.wasm")
	if err != nil {
		b.Fatal(err)
	}
	ctx := context.Background()
	instance, err := runtime.InstantiateWithConfig(ctx, binary, wazero.NewModuleConfig().WithName("").WithStartFunctions("_initialize"))
	if err != nil {
		b.Fatal(err)
	}
	defer instance.Close(ctx)
	loop := instance.ExportedFunction("loop")
	for b.Loop() {
		said, err := exec.Command(dir+"/loop", fmt.Sprint(trials), fmt.Sprint(runs)).Output()
		if err != nil {
			b.Fatal(err)
		}
		var native, guest times
		var ns int64
		var want float64
		if _, err := fmt.Sscan(string(said), &ns, &want); err != nil {
			b.Fatal(err)
		}
		native.add(time.Duration(ns))
		var got []uint64
		for seed := range uint64(runs) {
			start := time.Now()
			got, err = loop.Call(ctx, seed, trials)
			guest.add(time.Since(start))
			if err != nil {
				b.Fatal(err)
			}
		}
		if got := math.Float64frombits(got[0]); got != want {
			b.Fatalf("the guest's loop gives %v, the native one %v", got, want)
		}
		b.ReportMetric(float64(native.least.Nanoseconds())/trials, "native-ns/trial")
		b.ReportMetric(float64(guest.least.Nanoseconds())/trials, "wazero-ns/trial")
		b.ReportMetric(float64(guest.least)/float64(native.least), "ratio")
	}
}

// ratio runs a request in both by turns, each time with another seed, so that
// the processor does not learn the trials by heart. It reports the quickest of
// each and how they stand to each other, which a busy machine disturbs least,
// and beside it the ratio of the means.
func ratio(b *testing.B, request []byte) {
	b.Helper()
	g := newGuest(b)
	if _, reply := g.mustCall(request); !reply.OK { // warms both up
		b.Fatalf("refused: %s", request)
	}
	marinecalc.Call(request)
	var native, guest times
	b.ResetTimer()
	for i := range b.N {
		request := fmt.Appendf(nil, `{"seed":%d,%s`, i+2, request[1:])
		start := time.Now()
		marinecalc.Call(request)
		middle := time.Now()
		if _, err := g.call(request); err != nil {
			b.Fatal(err)
		}
		native.add(middle.Sub(start))
		guest.add(time.Since(middle))
	}
	b.ReportMetric(float64(native.least.Microseconds()), "native-µs")
	b.ReportMetric(float64(guest.least.Microseconds()), "wazero-µs")
	b.ReportMetric(float64(guest.least)/float64(native.least), "ratio")
	b.ReportMetric(float64(guest.sum)/float64(native.sum), "ratio-of-means")
}

// times of one kind of run.
type times struct{ least, sum time.Duration }

func (t *times) add(d time.Duration) {
	if t.least == 0 || d < t.least {
		t.least = d
	}
	t.sum += d
}
