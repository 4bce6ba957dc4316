package browser

import (
	"context"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"

	"example.org/driveline/cmd/page/assemble"
	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/sample"
)

// The benchmarks below put the same requests to the library and to the page's
// own instance of the module in Chromium, by turns in one run, and report how
// they stand to each other; asked is at most 2.5.

// BenchmarkInChromium: one calculation with the default trials.
func BenchmarkInChromium(b *testing.B) {
	t := newGuestTab(b)
	for _, entry := range marinecalc.Calculations() {
		b.Run(entry.ID, func(b *testing.B) {
			values, err := sample.Typed(entry.ID)
			if err != nil {
				b.Fatal(err)
			}
			input, err := json.Marshal(values)
			if err != nil {
				b.Fatal(err)
			}
			t.ratio(b, fmt.Sprintf(`{"ask":"run","calculation":%q,"input":%s}`, entry.ID, input), 10)
		})
	}
}

// BenchmarkBoatInChromium: the whole demonstration boat.
func BenchmarkBoatInChromium(b *testing.B) {
	root, err := assemble.Root()
	if err != nil {
		b.Fatal(err)
	}
	boat, err := os.ReadFile(filepath.Join(root, "testdata", "boats", "kittiwake.json"))
	if err != nil {
		b.Fatal(err)
	}
	newGuestTab(b).ratio(b, fmt.Sprintf(`{"ask":"survey","boat":%s}`, boat), 1)
}

// newGuestTab opens the page and keeps hold of the module's exports.
func newGuestTab(b *testing.B) *tab {
	t := newTab(b, 1280)
	t.do(func(ctx context.Context, target *chromedp.Target) (none chromedp.Void, err error) {
		_, err = cdp.Call(ctx, target, page.AddScriptToEvaluateOnNewDocument, page.AddScriptToEvaluateOnNewDocumentParams{Source: `
			const instantiate = WebAssembly.instantiate;
			WebAssembly.instantiate = async (...given) => {
				const made = await instantiate(...given);
				window.guest = made.exports;
				return made;
			};`})
		return none, err
	})
	t.open("")
	eval[any](t, `window.ask = (text) => {
		const bytes = new TextEncoder().encode(text);
		const from = guest.alloc(bytes.length) >>> 0;
		new Uint8Array(guest.memory.buffer).set(bytes, from);
		const packed = guest.call(from, bytes.length);
		const at = Number(packed >> 32n) >>> 0;
		const reply = new TextDecoder().decode(new Uint8Array(guest.memory.buffer, at, Number(packed & 0xffffffffn)));
		guest.release(at);
		guest.release(from);
		if (!reply.startsWith('{"ok":true')) throw new Error(reply);
	}; undefined`)
	return t
}

// ratio reports the least time of one call in each, over b.N rounds of that
// many calls. The seed changes with every call, so that the processor does not
// learn the trials by heart.
func (t *tab) ratio(b *testing.B, request string, calls int) {
	b.Helper()
	for range 3 { // warms both up, so that Chromium compiles the hot parts anew
		marinecalc.Call([]byte(request))
		eval[any](t, fmt.Sprintf(`for (let i = 0; i < 20; i++) ask(%q); undefined`, request))
	}
	native, chromium := time.Duration(0), 0.0
	b.ResetTimer()
	for round := range b.N {
		first := round*calls + 2
		start := time.Now()
		for i := range calls {
			marinecalc.Call(fmt.Appendf(nil, `{"seed":%d,%s`, first+i, request[1:]))
		}
		if took := time.Since(start) / time.Duration(calls); native == 0 || took < native {
			native = took
		}
		took := eval[float64](t, fmt.Sprintf(`(() => {
			const began = performance.now();
			for (let i = 0; i < %d; i++) ask('{"seed":' + (%d + i) + ',' + %q);
			return (performance.now() - began) / %d;
		})()`, calls, first, request[1:], calls))
		if chromium == 0 || took < chromium {
			chromium = took
		}
	}
	b.ReportMetric(float64(native.Microseconds()), "native-µs")
	b.ReportMetric(1000*chromium, "chromium-µs")
	b.ReportMetric(1000*chromium/float64(native.Microseconds()), "ratio")
}
