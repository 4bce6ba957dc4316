package marinecalc_test

import (
	"bytes"
	"context"
	"encoding/json"
	"os"
	"runtime"
	"strconv"
	"strings"
	"sync"
	"testing"
	"time"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/sample"
)

// mostReply is what a reply to at most 1 MiB may hold.
const mostReply = 2 << 20

// soon ends what a fuzzed text might keep going for long.
func soon(t testing.TB) context.Context {
	ctx, cancel := context.WithTimeout(context.Background(), 2*time.Second)
	t.Cleanup(cancel)
	return ctx
}

// FuzzBoat: whatever text is a boat is written and read again as the same one,
// and can be surveyed where it is short.
func FuzzBoat(f *testing.F) {
	text, err := os.ReadFile("../testdata/boats/kittiwake.json")
	if err != nil {
		f.Fatal(err)
	}
	f.Add(text)
	f.Add([]byte(`{"name": "Tern", "shaft": {"diameter": "40 mm"}, "readings": [{"date": "2026-06-01", "bearingClearance": "2 mm"}]}`))
	f.Fuzz(func(t *testing.T, text []byte) {
		b, err := marinecalc.ReadBoat(text)
		if err != nil {
			return
		}
		once, err := json.Marshal(b)
		if err != nil {
			t.Fatal(err)
		}
		again, err := marinecalc.ReadBoat(once)
		if err != nil {
			t.Fatalf("its own text is refused: %v", err)
		}
		if twice, err := json.Marshal(again); err != nil || !bytes.Equal(once, twice) {
			t.Fatalf("%s became %s, %v", once, twice, err)
		}
		if len(text) < 2000 { // a survey of more takes too long to try many
			_, _ = new(marinecalc.Engine).Check(soon(t), b, marinecalc.Options{NoRanges: true})
		}
	})
}

// FuzzOverlay: a rule file is applied or refused.
func FuzzOverlay(f *testing.F) {
	f.Add([]byte(`{"limits": [{"id": "tried", "calculation": "shaft-torque", "on": "shaftTorque", "title": "Tried", "why": "It would break.", "max": "500 N·m", "source": {"document": "Test"}, "basis": "maker"}]}`))
	f.Add([]byte(`{"tables": [{"id": "gauges", "rows": []}]}`))
	f.Fuzz(func(t *testing.T, text []byte) {
		book, err := marinecalc.Overlay(text)
		if err != nil {
			return
		}
		_, _ = marinecalc.Run("shaft-torque", []byte(`{"enginePower": "20 kW", "engineSpeed": "2400 rpm", "gearRatioAhead": 2}`), marinecalc.Options{Rules: book, NoRanges: true})
	})
}

// FuzzReadingsCSV: a table of readings is added or refused, and what was added
// is written and adds nothing more.
func FuzzReadingsCSV(f *testing.F) {
	b := testboat.Demo(f, "kittiwake")
	f.Add(marinecalc.ReadingsCSV(b))
	f.Add([]byte("date,engineHours\n2026-06-01,120 h\n"))
	f.Fuzz(func(t *testing.T, text []byte) {
		after, err := marinecalc.AddReadingsCSV(b, text)
		if err != nil {
			return
		}
		if again, err := marinecalc.AddReadingsCSV(after, marinecalc.ReadingsCSV(after)); err != nil || again == nil {
			t.Errorf("its own table is refused: %v", err)
		}
	})
}

// FuzzCall: every request has a reply that is JSON, is not long, and comes soon.
func FuzzCall(f *testing.F) {
	for _, entry := range marinecalc.Calculations() {
		if values, err := sample.Typed(entry.ID); err == nil {
			if input, err := json.Marshal(values); err == nil {
				f.Add([]byte(`{"ask":"run","calculation":"` + entry.ID + `","noRanges":true,"input":` + string(input) + `}`))
			}
		}
	}
	for _, ask := range []string{"index", "blank", "survey", "compare", "parts", "line", "convert", "rules", "schemas", "nothing"} {
		f.Add([]byte(`{"ask":"` + ask + `","boat":{"name":"Tern"},"calculation":"shaft-torque"}`))
	}
	engine := new(marinecalc.Engine)
	f.Fuzz(func(t *testing.T, text []byte) {
		out := engine.Call(soon(t), text)
		if !json.Valid(out) || len(out) > mostReply {
			t.Errorf("a reply of %d bytes, valid %v", len(out), json.Valid(out))
		}
	})
}

// FuzzJobSheet: whatever stands in a boat's name and notes, the job sheet is
// text for people, with no control characters.
func FuzzJobSheet(f *testing.F) {
	f.Add("Tern", "hums", "2026-06-01")
	f.Add("Tern\x1b[2J", "=cmd()", "yesterday")
	f.Add("\rern", "a\r\nb", "2026-06-01")
	f.Fuzz(func(t *testing.T, name, note, day string) {
		text, err := json.Marshal(map[string]any{"name": name, "shaft": map[string]any{"diameter": "40 mm"}, "readings": []any{map[string]any{"date": day, "notes": note, "bearingClearance": "2 mm"}}})
		if err != nil {
			return
		}
		b, err := marinecalc.ReadBoat(text)
		if err != nil {
			return
		}
		s, err := new(marinecalc.Engine).Check(soon(t), b, marinecalc.Options{NoRanges: true})
		if err != nil {
			return
		}
		if sheet := marinecalc.JobSheet(s); sheet == "" || strings.ContainsFunc(sheet, func(r rune) bool { return r < ' ' && r != '\n' && r != '\t' }) {
			t.Errorf("the job sheet of %q, %q: %q", name, note, sheet)
		}
	})
}

// TestManyCalls makes as many calls as asked for in one engine, four side by
// side, and holds what lives after them to what lived after the first tenth.
func TestManyCalls(t *testing.T) {
	calls, err := strconv.Atoi(os.Getenv("MARINECALC_CALLS"))
	if err != nil || calls < 1000 {
		t.Skip("set MARINECALC_CALLS=1000000 to call as often")
	}
	var requests [][]byte
	for _, entry := range marinecalc.Calculations() {
		if input := testboat.Typed(t, entry.ID); !strings.Contains(entry.ID, "fault-finding") {
			requests = append(requests, []byte(`{"ask":"run","calculation":"`+entry.ID+`","noRanges":true,"input":`+input+`}`))
		}
	}
	engine := new(marinecalc.Engine)
	first := make([][]byte, len(requests))
	for i, r := range requests {
		first[i] = engine.Call(context.Background(), r)
	}
	round := func(from, to int) {
		const workers = 4
		var wait sync.WaitGroup
		for w := range workers {
			wait.Go(func() {
				for i := from + w; i < to; i += workers {
					if out := engine.Call(context.Background(), requests[i%len(requests)]); !bytes.Equal(out, first[i%len(requests)]) {
						t.Errorf("call %d has another answer", i)
						return
					}
				}
			})
		}
		wait.Wait()
	}
	lives := func() uint64 {
		runtime.GC()
		runtime.GC()
		var m runtime.MemStats
		runtime.ReadMemStats(&m)
		return m.HeapAlloc
	}
	round(0, calls/10)
	before := lives()
	round(calls/10, calls)
	after := lives()
	t.Logf("%d calls: %d kB live after a tenth of them, %d kB at the end", calls, before>>10, after>>10)
	if after > before+before/10+1<<20 {
		t.Errorf("memory grew from %d to %d kB", before>>10, after>>10)
	}
}
