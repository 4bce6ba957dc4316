package browser

import (
	"context"
	"os"
	"slices"
	"strconv"
	"testing"
	"time"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// alone skips a test of speed unless it is asked for, since whatever runs
// beside it would be measured too.
func alone(t *testing.T) {
	t.Helper()
	if os.Getenv("MARINECALC_SPEED") == "" {
		t.Skip("set MARINECALC_SPEED=1 to measure the page's speed, with nothing else running")
	}
}

// From opening the file to the first sheet on the screen: under a second.
func TestOpensFast(t *testing.T) {
	alone(t)
	const limit = 1000.0 // ms
	b := newTab(t, 1280)
	b.open("")
	b.keepExample()
	b.do(func(ctx context.Context, t *chromedp.Target) (none chromedp.Void, err error) {
		_, err = cdp.Call(ctx, t, page.AddScriptToEvaluateOnNewDocument, page.AddScriptToEvaluateOnNewDocumentParams{Source: `
			new MutationObserver((_, watch) => {
				if (!document.querySelector('.answers')) return;
				watch.disconnect();
				requestAnimationFrame(() => setTimeout(() => (window.firstSheet = performance.now())));
			}).observe(document, { childList: true, subtree: true });`})
		return none, err
	})
	var took []float64
	for range 5 {
		b.open("#/sheet/bolt-preload")
		b.until("window.firstSheet")
		took = append(took, eval[float64](b, "window.firstSheet"))
	}
	slices.Sort(took)
	t.Logf("opening to first sheet: least %.0f ms, median %.0f ms, worst %.0f ms of 5", took[0], took[2], took[4])
	if took[2] > limit {
		t.Errorf("median %.0f ms, want less than %.0f", took[2], limit)
	}
}

// From a key to the sheet drawn anew, 4096 trials and layout included: under
// 50 ms.
func TestRedrawsFast(t *testing.T) {
	alone(t)
	const limit = 50.0 // ms
	for _, on := range []struct{ calculation, field string }{
		{"bolt-preload", "#in-torqueUsed"},
		{"gland-heat", "#in-dripRate"},
		{"coupling-alignment", "#in-couplingDiameter"},
		{"shaft-torque", "#in-boatSpeed"},
	} {
		b := newTab(t, 1280)
		b.open("")
		b.keepExample()
		b.open("#/sheet/" + on.calculation)
		b.text(".answers")
		b.unfold(on.field)
		eval[any](b, `
			window.took = [];
			let began = 0;
			addEventListener('input', (e) => (began = e.timeStamp), true);
			new MutationObserver(() => {
				document.querySelector('.sheet').getBoundingClientRect();
				window.took.push(performance.now() - began);
			}).observe(document.querySelector('.sheet'), { childList: true });
			undefined`)
		b.do(chromedp.Focus(chromedp.CSS(on.field)), chromedp.Sleep(time.Second)) // as a person takes to find the field
		keys := 0
		for range 12 {
			for _, key := range []string{"2", "5", kb.Backspace, kb.Backspace} {
				b.do(chromedp.KeyEvent(key))
				keys++
				b.until("window.took.length >= " + strconv.Itoa(keys))
			}
		}
		took := eval[[]float64](b, "window.took")
		first := took[0]
		slices.Sort(took)
		median, ninth := took[len(took)/2], took[len(took)*9/10]
		t.Logf("%s: key to sheet: median %.1f ms, nine of ten within %.1f ms, first %.1f ms", on.calculation, median, ninth, first)
		if median > limit {
			t.Errorf("%s: median %.1f ms, want less than %.0f", on.calculation, median, limit)
		}
	}
}
