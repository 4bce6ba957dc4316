package browser

import (
	"context"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"

	"example.org/driveline/cmd/page/assemble"
)

// plainLoop gives the least of three times of 50 million rounds in ms: the
// measure of the machine beside the page's own times. Each round needs the one
// before, and the sum is kept, so that nothing of it can be left out.
const plainLoop = `(() => {
	let sum = 1;
	let least = Infinity;
	for (let k = 0; k < 3; k++) {
		const began = performance.now();
		for (let i = 0; i < 5e7; i++) sum = (Math.imul(sum, 1664525) + 1013904223) | 0;
		least = Math.min(least, performance.now() - began);
	}
	window.plainSum = sum;
	return least;
})()`

// firstAnswer notes in a page when its first sheet was on the screen.
const firstAnswer = `
	new MutationObserver((_, watch) => {
		if (!document.querySelector('.answers')) return;
		watch.disconnect();
		requestAnimationFrame(() => setTimeout(() => (window.firstSheet = performance.now())));
	}).observe(document, { childList: true, subtree: true });`

// throttle makes the page's own thread so many times slower.
func (b *tab) throttle(times float64) {
	b.t.Helper()
	b.do(func(ctx context.Context, t *chromedp.Target) (none chromedp.Void, err error) {
		_, err = cdp.Call(ctx, t, emulation.SetCPUThrottlingRate, emulation.SetCPUThrottlingRateParams{Rate: times})
		return none, err
	})
}

// TestSpeed measures the page with the demonstration boat and writes the table
// testdata/page-speed.md. The least of several runs must keep to what is asked.
func TestSpeed(t *testing.T) {
	if os.Getenv("MARINECALC_SPEED") == "" {
		t.Skip("set MARINECALC_SPEED=1 to measure the page's speed, with nothing else running")
	}
	root, err := assemble.Root()
	if err != nil {
		t.Fatal(err)
	}
	var rows []string
	commit, _ := exec.Command("git", "rev-parse", "--short", "HEAD").Output()
	for _, at := range []struct{ throttle, open, key, survey float64 }{{1, 800, 50, 500}, {6, 3000, 100, 500}} {
		b := newTab(t, 360)
		b.open("#/boat")
		b.press("Demonstration: Kittiwake")
		b.untilKept(`boats.length === 1`)
		b.beforePage(firstAnswer)
		b.throttle(at.throttle)
		loop := eval[float64](b, plainLoop)
		row := func(what string, took []float64, asked float64) {
			slices.Sort(took)
			rows = append(rows, fmt.Sprintf("| %s | %.0f | %.0f | %.0f | %.0f | %.0f |", what, at.throttle, took[0], took[len(took)/2], asked, loop))
			writeSpeeds(t, root, strings.TrimSpace(string(commit)), rows)
			if asked > 0 && took[0] > asked {
				t.Errorf("%s at throttle %.0f: least %.0f ms of %d, asked is %.0f", what, at.throttle, took[0], len(took), asked)
			}
		}
		row("opening to the first answer, a sheet opened before", b.opens(4, ""), at.open)
		row("opening to the first answer, a sheet not opened before", b.opens(3, "bolt-preload"), at.open)
		for _, on := range []struct{ calculation, field string }{
			{"bolt-preload", "#in-torqueUsed"},
			{"gland-heat", "#in-dripRate"},
			{"coupling-alignment", "#in-couplingDiameter"},
			{"shaft-torque", "#in-boatSpeed"},
		} {
			row("key to the sheet drawn anew, "+on.calculation, b.keys(on.calculation, on.field), at.key)
		}
		row("home at rest to the survey", b.surveys(2, 10*time.Second), at.survey)
		row("home to the survey at once", b.surveys(2, 0), 0)
	}
}

// writeSpeeds writes the table as far as it is measured, so that a run that is
// stopped leaves what it found.
func writeSpeeds(t *testing.T, root, commit string, rows []string) {
	t.Helper()
	load := "unknown"
	if text, err := os.ReadFile("/proc/loadavg"); err == nil {
		load, _, _ = strings.Cut(string(text), " ")
	}
	text := fmt.Sprintf(`# The page's speed

Measured by MARINECALC_SPEED=1 go test -run TestSpeed ./cmd/page/browser, at commit %s on %s, from a file, 360 px wide, with the demonstration boat Kittiwake; load of the machine at the end %s. Times in ms, least and median of several runs. Throttle is Chromium's, of the page's own thread; the worker that runs a survey is not slowed by it. The plain loop is 50 million rounds of a linear congruential generator in the same tab, each round on the one before. At rest is 10 s after home was opened.

| what | throttle | least | median | asked | plain loop |
|---|---|---|---|---|---|
%s
`, commit, time.Now().Format(time.DateOnly), load, strings.Join(rows, "\n"))
	text = strings.ReplaceAll(text, "| 0 |", "| – |")
	if err := os.WriteFile(filepath.Join(root, "testdata", "page-speed.md"), []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
}

// opens measures from opening the file to the first sheet on the screen, each
// time without what was kept of the answer that is to be forgotten.
func (b *tab) opens(runs int, forget string) (took []float64) {
	for range runs {
		eval[any](b, fmt.Sprintf(`localStorage.removeItem('marinecalc.answer.' + %q)`, forget))
		b.open("#/sheet/bolt-preload")
		b.until("window.firstSheet && localStorage.getItem('marinecalc.answer.bolt-preload')")
		took = append(took, eval[float64](b, "window.firstSheet"))
	}
	return took
}

// keys measures from a key to the sheet drawn anew, the default trials and layout
// included.
func (b *tab) keys(calculation, field string) []float64 {
	b.open("#/sheet/" + calculation)
	b.text(".answers")
	b.unfold(field)
	eval[any](b, `
		window.took = [];
		let began = 0;
		addEventListener('input', (e) => (began = e.timeStamp), true);
		new MutationObserver(() => {
			if (!began) return;
			document.querySelector('.answer.sheet').getBoundingClientRect();
			window.took.push(performance.now() - began);
			began = 0;
		}).observe(document.querySelector('.answer.sheet'), { childList: true, subtree: true, characterData: true });
		undefined`)
	b.do(chromedp.Focus(chromedp.CSS(field)), chromedp.Sleep(time.Second)) // as a person takes to find the field
	keys := 0
	for range 3 {
		for _, key := range []string{"2", "5", kb.Backspace, kb.Backspace} {
			b.do(chromedp.KeyEvent(key))
			keys++
			b.until("window.took.length >= " + strconv.Itoa(keys))
		}
	}
	return eval[[]float64](b, "window.took")
}

// surveys measures from home to the survey on the screen.
func (b *tab) surveys(runs int, rest time.Duration) (took []float64) {
	for range runs {
		b.open("#/")
		b.do(chromedp.Sleep(rest))
		took = append(took, eval[float64](b, `new Promise((done) => {
			const began = performance.now();
			location.hash = '#/survey';
			new MutationObserver((_, watch) => {
				if (!document.querySelector('.in-short dd')) return;
				watch.disconnect();
				requestAnimationFrame(() => setTimeout(() => done(performance.now() - began)));
			}).observe(document, { childList: true, subtree: true });
		})`))
	}
	return took
}
