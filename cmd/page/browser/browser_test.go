// Package browser holds the tests of the finished page in Chromium; it has no
// code of its own. Without Chromium they are skipped.
package browser

import (
	"context"
	"fmt"
	"net/url"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/log"
	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"

	"example.org/driveline/cmd/page/assemble"
	"example.org/driveline/cmd/page/bycommand"
)

// The page under test and the browser, made once for all tests.
var (
	pageFile string          // absolute path of the finished HTML
	browser  context.Context // nil when there is no Chromium
)

func TestMain(m *testing.M) { os.Exit(withPage(m.Run)) }

func withPage(run func() int) int {
	dir, err := os.MkdirTemp("", "marinecalc-page-test")
	if err != nil {
		return complain(err)
	}
	defer os.RemoveAll(dir)
	if program := findChromium(); program != "" {
		root, err := assemble.Root()
		if err != nil {
			return complain(err)
		}
		pageFile = filepath.Join(dir, "marinecalc.html")
		if err := bycommand.Run(root, "-open=false", "-out", pageFile); err != nil {
			return complain(err)
		}
		options := []chromedp.ExecAllocatorOption{
			chromedp.ExecPath(program),
			chromedp.UserDataDir(filepath.Join(dir, "profile")),
			chromedp.Headless,
			chromedp.NoSandbox,
			chromedp.DisableGPU,
			chromedp.NoFirstRun,
			chromedp.NoDefaultBrowserCheck,
		}
		for _, flag := range []string{"disable-quic", "disable-background-networking", "disable-component-update", "disable-sync", "disable-dev-shm-usage", "disable-default-apps", "disable-extensions"} {
			options = append(options, chromedp.Flag(flag, true))
		}
		allocator, stop := chromedp.NewExecAllocator(context.Background(), options...)
		defer stop()
		ctx, end := chromedp.NewContext(allocator)
		defer end()
		if err := chromedp.Do(ctx); err != nil {
			return complain(fmt.Errorf("starting %s: %w", program, err))
		}
		browser = ctx
	}
	return run()
}

func complain(err error) int {
	fmt.Fprintln(os.Stderr, err)
	return 1
}

func findChromium() string {
	for _, name := range []string{"chromium", "chromium-browser", "google-chrome"} {
		if path, err := exec.LookPath(name); err == nil {
			return path
		}
	}
	return ""
}

// tab is one browser tab with storage of its own.
type tab struct {
	t   testing.TB
	ctx context.Context

	mu   sync.Mutex
	sins []string // requests to a network, exceptions, refusals by the policy

	host    string // that may be asked too
	forgive bool   // the test itself tries what must not work
}

// newTab opens a tab of the given width. When the test ends, any request to a
// network, uncaught exception or breach of the page's policy fails it.
func newTab(t testing.TB, width int64) *tab {
	t.Helper()
	if browser == nil {
		if os.Getenv("CI") == "true" {
			t.Fatal("no Chromium found, and CI is set: install chromium")
		}
		t.Skip("SKIPPED: no Chromium found, the page was not tried in a browser (install chromium to do so)")
	}
	b := &tab{t: t}
	ctx, stop := chromedp.NewContext(browser, chromedp.WithNewBrowserContext(), chromedp.WithListener(b.watch))
	if err := chromedp.Do(ctx); err != nil { // opens the tab, which must not be under the time limit
		t.Fatal(err)
	}
	var cancel context.CancelFunc
	b.ctx, cancel = context.WithTimeout(ctx, 10*time.Minute)
	b.do(
		func(ctx context.Context, t *chromedp.Target) (none chromedp.Void, err error) {
			_, err = cdp.Call(ctx, t, network.Enable, network.EnableParams{})
			return none, err
		},
		chromedp.EmulateViewport(width, 900),
	)
	t.Cleanup(func() {
		b.mu.Lock()
		defer b.mu.Unlock()
		for _, sin := range b.sins {
			if !b.forgive {
				t.Error(sin)
			}
		}
		cancel()
		stop()
	})
	return b
}

func (b *tab) watch(event any) {
	sin := ""
	switch e := event.(type) {
	case *network.EventRequestWillBeSent:
		if u, err := url.Parse(e.Request.URL); err != nil || (b.host == "" || u.Host != b.host) && !slices.Contains([]string{"file", "data", "blob", "about"}, u.Scheme) {
			sin = "request to " + e.Request.URL
		}
	case *page.EventJavascriptDialogOpening: // something is not kept yet, and the test goes on as a person would not
		go func() {
			_ = chromedp.Do(b.ctx, func(ctx context.Context, t *chromedp.Target) (none chromedp.Void, err error) {
				_, err = cdp.Call(ctx, t, page.HandleJavaScriptDialog, page.HandleJavaScriptDialogParams{Accept: true})
				return none, err
			})
		}()
	case *network.EventWebSocketCreated:
		sin = "web socket to " + e.URL
	case *runtime.EventExceptionThrown:
		sin = "exception: " + describe(e.ExceptionDetails)
	case *log.EventEntryAdded:
		if e.Entry.Level == log.EntryLevelError {
			sin = "log: " + e.Entry.Text
		}
	}
	if sin != "" {
		b.mu.Lock()
		b.sins = append(b.sins, sin)
		b.mu.Unlock()
	}
}

// do runs actions and ends the test when one fails.
func (b *tab) do(steps ...chromedp.Action[chromedp.Void]) {
	b.t.Helper()
	if err := chromedp.Do(b.ctx, steps...); err != nil {
		b.t.Fatal(err)
	}
}

// open loads the page from the file, at a view such as "#/boat".
func (b *tab) open(hash string) {
	b.t.Helper()
	b.do(chromedp.Navigate("about:blank"), chromedp.Navigate("file://"+pageFile+hash), chromedp.WaitReady(chromedp.CSS("h1")))
	b.until(`document.querySelector("h1[tabindex]")`)
}

// turn goes to another view of the page that is open, as a link does; where the
// view is the same it loads the page anew.
func (b *tab) turn(hash string) {
	b.t.Helper()
	if !eval[bool](b, fmt.Sprintf(`(() => {
		if (!document.querySelector("h1[tabindex]") || location.hash === %[1]q) return false;
		window.left = document.querySelector("h1");
		location.hash = %[1]q;
		return true;
	})()`, hash)) {
		b.open(hash)
		return
	}
	b.until(`document.querySelector("h1[tabindex]") && document.querySelector("h1") !== window.left`)
}

// beforePage runs a script in every page that is opened from now on, before
// the page's own.
func (b *tab) beforePage(script string) {
	b.t.Helper()
	b.do(func(ctx context.Context, t *chromedp.Target) (none chromedp.Void, err error) {
		_, err = cdp.Call(ctx, t, page.AddScriptToEvaluateOnNewDocument, page.AddScriptToEvaluateOnNewDocumentParams{Source: script})
		return none, err
	})
}

// eval runs a script that may be a promise and gives its value.
func eval[T any](b *tab, script string) T {
	b.t.Helper()
	value, err := chromedp.Run(b.ctx, chromedp.Evaluate[T](script, chromedp.EvalAwaitPromise))
	if err != nil {
		b.t.Fatalf("%v\nin %s", err, script)
	}
	return value
}

// choose picks an option of a select as a person would.
func (b *tab) choose(selector, value string) {
	b.t.Helper()
	ok := eval[bool](b, fmt.Sprintf(`(() => {
		const s = document.querySelector(%q);
		if (!s || ![...s.options].some((o) => o.value === %q)) return false;
		s.value = %q;
		s.dispatchEvent(new Event('change', { bubbles: true }));
		return true;
	})()`, selector, value, value))
	if !ok {
		b.t.Fatalf("%s has no option %q", selector, value)
	}
}

// write types into a field, key by key, over what stands there.
func (b *tab) write(selector, text string) {
	b.t.Helper()
	b.unfold(selector)
	eval[any](b, fmt.Sprintf("document.querySelector(%q).select()", selector))
	b.do(chromedp.KeyEvent(text))
}

// unfold waits until an element is there, and opens the folds around it.
func (b *tab) unfold(selector string) {
	b.t.Helper()
	for tries := 0; !b.unfolded(selector); tries++ {
		if tries == 100 {
			b.t.Fatalf("there is no %s", selector)
		}
		time.Sleep(50 * time.Millisecond)
	}
}

// unfolded opens the folds around an element, where it is there.
func (b *tab) unfolded(selector string) bool {
	b.t.Helper()
	return eval[bool](b, fmt.Sprintf(`(() => {
		const section = /^#boat-([a-zA-Z]+)/.exec(%[1]q)?.[1]; // its card has no fields before it is opened
		const card = section && document.querySelector('[data-holds~="' + section + '"]');
		if (card && !card.open) {
			card.open = true;
			card.dispatchEvent(new Event('toggle'));
		}
		const e = document.querySelector(%[1]q);
		for (let d = e?.closest('details'); d; d = d.parentElement.closest('details')) d.open = true;
		return !!e;
	})()`, selector))
}

// text waits until an element is there and gives its text.
func (b *tab) text(selector string) string {
	b.t.Helper()
	b.do(chromedp.WaitReady(chromedp.CSS(selector)))
	return strings.TrimSpace(eval[string](b, fmt.Sprintf("document.querySelector(%q).textContent", selector)))
}

// until waits for a condition in the page.
func (b *tab) until(condition string) {
	b.t.Helper()
	wait := chromedp.Poll[bool]("!!("+condition+")", chromedp.WithPollingInterval(20*time.Millisecond), chromedp.WithPollingTimeout(30*time.Second))
	_, err := chromedp.Run(b.ctx, wait)
	for try := 0; try < 3 && err != nil && strings.Contains(err.Error(), "context with specified id"); try++ {
		_, err = chromedp.Run(b.ctx, wait) // the page was only just opened
	}
	if err != nil {
		b.t.Fatalf("waiting for %s: %v\n%s", condition, err, eval[string](b, "document.querySelector('main').innerText.slice(0, 3000)"))
	}
}

// keptBoats is a promise of what the browser has on its disk: boats with what
// was typed for them, in the order in which they came.
const keptBoats = `new Promise((done, fail) => {
	const db = indexedDB.open('marinecalc', 1);
	db.onerror = () => fail(db.error);
	db.onsuccess = () => {
		const all = db.result.transaction('boats').objectStore('boats').getAll();
		all.onsuccess = () => { db.result.close(); done(all.result); };
	};
})`

// kept gives what a script makes of the boats that are kept.
func kept[T any](b *tab, script string) T {
	b.t.Helper()
	return eval[T](b, keptBoats+`.then((boats) => (`+script+`))`)
}

// untilKept waits for what is kept to be so.
func (b *tab) untilKept(condition string) {
	b.t.Helper()
	for began := time.Now(); !kept[bool](b, "!!("+condition+")"); time.Sleep(20 * time.Millisecond) {
		if time.Since(began) > 10*time.Second {
			b.t.Fatalf("waiting for what is kept: %s: %s", condition, kept[string](b, "JSON.stringify(boats).slice(0, 2000)"))
		}
	}
}

// print shows the page as it goes to a printer.
func (b *tab) print() {
	b.t.Helper()
	b.do(func(ctx context.Context, t *chromedp.Target) (none chromedp.Void, err error) {
		_, err = cdp.Call(ctx, t, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Media: "print"})
		return none, err
	})
}

func describe(e *runtime.ExceptionDetails) string {
	if e.Exception != nil {
		return e.Text + " " + e.Exception.Description
	}
	return e.Text
}
