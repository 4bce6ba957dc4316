package browser

import (
	"net/http"
	"net/http/httptest"
	"net/url"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp"

	"example.org/driveline/cmd/page/assemble"
	"example.org/driveline/cmd/page/letters"
	"example.org/driveline/cmd/page/offline"
)

// An installed page, from a folder of a static host, opens again when the host
// is gone, with what was typed; a new version is told of and waits until it is
// taken. Nothing is asked of any other host.
func TestInstalledPage(t *testing.T) {
	b := newTab(t, 360)
	root, err := assemble.Root()
	if err != nil {
		t.Fatal(err)
	}
	page, err := os.ReadFile(pageFile)
	if err != nil {
		t.Fatal(err)
	}
	worker, err := os.ReadFile(filepath.Join(root, "site", "keep.js"))
	if err != nil {
		t.Fatal(err)
	}
	served := t.TempDir()
	folder := filepath.Join(served, "below", "another")
	put := func(page []byte) {
		if err := offline.Write(folder, page, string(worker)); err != nil {
			t.Fatal(err)
		}
	}
	put(page)
	host := httptest.NewUnstartedServer(http.FileServer(http.Dir(served)))
	host.Start()
	defer host.Close()
	at, err := url.Parse(host.URL)
	if err != nil {
		t.Fatal(err)
	}
	b.host = at.Host
	address := host.URL + "/below/another/"
	visit := func(hash string) {
		b.do(chromedp.Navigate("about:blank"), chromedp.Navigate(address+hash))
		b.until(`document.querySelector("h1[tabindex]")`)
	}
	visit("")
	b.until(`navigator.serviceWorker.controller`)
	visit("#/boat")
	b.unfold("#boat-name")
	b.write("#boat-name", "Petrel")
	b.untilKept(`boats[0]?.boat.name === "Petrel"`)

	text, err := letters.Page(page)
	if err != nil {
		t.Fatal(err)
	}
	put(letters.File(strings.Replace(text, "</body>", "<!-- newer --></body>", 1)))
	visit("#/boat")
	b.until(`document.querySelector("#keeping").textContent.includes("new version")`)
	if eval[bool](b, `document.documentElement.innerHTML.includes("<!-- newer -->")`) {
		t.Error("the new version was taken unasked")
	}
	eval[any](b, `[...document.querySelectorAll("#keeping button")].find((e) => e.textContent === "Use the new version").click()`)
	for began := time.Now(); ; time.Sleep(100 * time.Millisecond) { // it loads anew meanwhile, where nothing can be asked
		taken, err := chromedp.Run(b.ctx, chromedp.Evaluate[bool](`document.documentElement.innerHTML.includes("<!-- newer -->") && !!document.querySelector("h1[tabindex]")`))
		if err == nil && taken {
			break
		}
		if time.Since(began) > 30*time.Second {
			t.Fatalf("the new version is not taken (%v)", err)
		}
	}

	host.Close()
	b.forgive = true // the browser looks for a newer service worker, and there is no host
	visit("#/boat")
	if title := b.text("h1"); title != "Boat: Petrel" {
		t.Errorf("without its host: %q", title)
	}
}
