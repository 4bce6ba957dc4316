package browser

import (
	"context"
	"fmt"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
)

// beside opens a second tab that keeps things where the first does.
func (b *tab) beside() *tab {
	b.t.Helper()
	other := &tab{t: b.t}
	ctx, stop := chromedp.NewContext(b.ctx, chromedp.WithListener(other.watch))
	b.t.Cleanup(stop)
	if err := chromedp.Do(ctx); err != nil {
		b.t.Fatal(err)
	}
	other.ctx = ctx
	return other
}

// Two tabs on one boat: what is typed in either is kept, each is told of the
// other, and a tab with another boat in hand writes to that one.
func TestTwoTabsLoseNothing(t *testing.T) {
	a := newTab(t, 1280)
	a.keepDemonstration()
	a.untilKept(`boats.length === 1`)
	b := a.beside()
	b.open("#/boat")
	a.unfold("#boat-note")
	a.write("#boat-note", "from the first tab")
	a.untilKept(`boats[0].boat.note === 'from the first tab'`)
	b.unfold("#boat-name")
	b.write("#boat-name", "Renamed in the second")
	b.untilKept(`boats[0].boat.name === 'Renamed in the second' && boats[0].boat.note === 'from the first tab'`)
	a.until(`document.querySelector('#keeping').textContent.includes('another tab') || document.querySelector('h1').textContent.includes('Renamed')`)

	b.press("New boat")
	b.unfold("#boat-name")
	b.write("#boat-name", "Wren")
	b.untilKept(`boats.length === 2 && boats[1].boat.name === 'Wren'`)
	a.open("#/boat")
	a.unfold("#boat-note")
	a.write("#boat-note", "once more")
	a.untilKept(`boats.some((k) => k.boat.note === 'once more') && boats.some((k) => k.boat.name === 'Wren')`)
}

// give chooses a file as a person would.
func (b *tab) give(kind, name, text string) {
	b.t.Helper()
	eval[any](b, fmt.Sprintf(`(() => {
		const input = document.querySelector('input[type=file][accept*=%s]');
		const files = new DataTransfer();
		files.items.add(new File([%q], %q));
		input.files = files.files;
		input.dispatchEvent(new Event('change'));
	})()`, kind, text, name))
}

// Files that are no boats are refused with the place and what is allowed, and
// one that is opened all the same hides no other boat.
func TestBrokenBoatFiles(t *testing.T) {
	b := newTab(t, 360)
	b.keepDemonstration()
	for _, c := range []struct{ text, says string }{
		{`{"name":"A","readings"`, "no JSON"},
		{`[1,2]`, "one JSON object"},
		{`null`, "one JSON object"},
		{`{"name":"A","readings":"no"}`, "/boat/readings"},
		{`{"name":"A","mounts":{"0":1}}`, "/boat/mounts"},
		{`{"name":"A","shaft":7}`, "/boat/shaft"},
	} {
		b.give("json", "found.json", c.text)
		b.until(fmt.Sprintf(`document.querySelector('.shelf [role=alert]').textContent.includes(%q)`, c.says))
		if n := kept[int](b, "boats.length"); n != 1 {
			t.Fatalf("%s: %d boats are kept", c.text, n)
		}
	}
	b.give("json", "found.json", `{"name":"Brick","readings":"no","mounts":"m"}`)
	b.until(`document.querySelector('.shelf [role=alert] button')`)
	b.press("Open it all the same")
	b.untilKept(`boats.length === 2`)
	for _, hash := range []string{"#/boat", "#/", "#/survey", "#/readings", "#/sheet/gland-drip", "#/procedure", "#/compare"} {
		b.open(hash)
		if said := b.text("main"); strings.Contains(said, "could not start") {
			t.Errorf("%s: %.300s", hash, said)
		}
	}
	b.open("#/boat")
	there := eval[bool](b, `!!document.querySelector('#shelf') || [...document.querySelectorAll('main button')].some((e) => e.textContent.startsWith('Go to '))`)
	if !there {
		t.Errorf("no way to the other boat: %s", b.text("main"))
	}
	b.open("#/sheet/%")
	if said := b.text("main"); !strings.Contains(said, "No such calculation") {
		t.Errorf("a lone per cent sign: %.300s", said)
	}
}

// Where the browser keeps nothing, every view says so, and the page works.
func TestNothingIsKept(t *testing.T) {
	b := newTab(t, 360)
	const deny = `
		Object.defineProperty(window, 'indexedDB', { get() { throw new DOMException('denied', 'SecurityError'); } });
		Object.defineProperty(window, 'localStorage', { get() { throw new DOMException('denied', 'SecurityError'); } });`
	b.beforePage(deny)
	for _, hash := range []string{"#/", "#/boat", "#/sheet/shaft-torque", "#/survey"} {
		b.open(hash)
		if said := b.text("#keeping"); !strings.Contains(said, "keeps nothing") {
			t.Errorf("%s does not say that nothing is kept: %q", hash, said)
		}
	}
	b.open("#/boat")
	b.press("Demonstration: ")
	b.until(`document.querySelector('h1').textContent.startsWith('Boat: ')`)
	eval[any](b, `location.hash = '#/survey'`)
	b.until(`document.querySelector('.in-short')`)
}

// ownBrowser starts a browser that keeps things in the folder, and a tab of it.
func ownBrowser(t testing.TB, profile string) (*tab, func()) {
	t.Helper()
	allocator, stop := chromedp.NewExecAllocator(context.Background(), chromedp.ExecPath(findChromium()), chromedp.UserDataDir(profile),
		chromedp.Headless, chromedp.NoSandbox, chromedp.DisableGPU, chromedp.NoFirstRun, chromedp.NoDefaultBrowserCheck,
		chromedp.Flag("disable-dev-shm-usage", true), chromedp.Flag("disable-background-networking", true))
	ctx, end := chromedp.NewContext(allocator)
	if err := chromedp.Do(ctx); err != nil {
		t.Fatal(err)
	}
	return &tab{t: t, ctx: ctx}, func() { end(); stop() }
}

// kill ends a browser as a flat battery does.
func kill(t testing.TB, b *tab, stop func()) {
	t.Helper()
	if err := chromedp.FromContext(b.ctx).Browser.Process().Kill(); err != nil {
		t.Fatal(err)
	}
	stop()
}

// What was typed two seconds before the browser dies is there when it comes
// again, or the page has said that it may not be.
func TestBrowserIsKilled(t *testing.T) {
	if browser == nil {
		t.Skip("SKIPPED: no Chromium found")
	}
	profile := filepath.Join(t.TempDir(), "profile")
	b, stop := ownBrowser(t, profile)
	b.open("#/boat")
	b.unfold("#boat-name")
	b.write("#boat-name", "Petrel")
	time.Sleep(2 * time.Second)
	if said := eval[string](b, `document.querySelector('#keeping').textContent`); said != "" {
		t.Logf("the page says: %s", said)
	}
	kill(t, b, stop)
	b, stop = ownBrowser(t, profile)
	defer stop()
	b.open("#/boat")
	if title := b.text("h1"); title != "Boat: Petrel" {
		t.Errorf("after the kill: %q", title)
	}
}
