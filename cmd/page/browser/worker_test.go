package browser

import (
	"net/http"
	"net/http/httptest"
	"net/url"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"

	"example.org/driveline/cmd/page/assemble"
	"example.org/driveline/cmd/page/bycommand"
)

// The example host in a worker, as HOSTS.md tells to set it up, shows the
// wrench setting.
func TestExampleWorker(t *testing.T) {
	b := newTab(t, 360)
	root, err := assemble.Root()
	if err != nil {
		t.Fatal(err)
	}
	folder := t.TempDir()
	if err := bycommand.Run(root, "-package", folder); err != nil {
		t.Fatal(err)
	}
	if err := os.CopyFS(filepath.Join(folder, "examples"), os.DirFS(filepath.Join(root, "wasm", "examples"))); err != nil {
		t.Fatal(err)
	}
	host := httptest.NewServer(http.FileServer(http.Dir(folder)))
	defer host.Close()
	at, err := url.Parse(host.URL)
	if err != nil {
		t.Fatal(err)
	}
	b.host = at.Host
	b.do(chromedp.Navigate(host.URL + "/examples/worker/"))
	b.until(`document.querySelector("#answer").textContent !== "Working…"`)
	if said := b.text("#answer"); !strings.HasSuffix(said, "N·m") {
		t.Errorf("the worker says %q", said)
	}
}
