package main

import (
	"bytes"
	"os"
	"strings"
	"testing"
)

// The page's policy really holds in a browser: script that is not the page's
// own does not run, and nothing can be fetched.
func TestPolicyHolds(t *testing.T) {
	b := newTab(t, 1280)
	b.open("")
	b.forgive = true // each attempt below is logged as refused, which is the point
	breaches := eval[map[string]string](b, `(async () => {
		const refused = {};
		addEventListener('securitypolicyviolation', (e) => (refused[e.effectiveDirective] = e.blockedURI));
		await fetch('https://driveline.example.org/').then(() => (refused.fetched = 'yes'), () => {});
		const script = document.createElement('script');
		script.textContent = 'window.broken = true';
		document.body.append(script);
		const image = new Image();
		image.src = 'https://driveline.example.org/x.png';
		document.body.append(image);
		const style = document.createElement('div');
		style.setAttribute('style', 'color: red');
		await new Promise((done) => setTimeout(done, 100));
		if (window.broken) refused.broken = 'yes';
		return refused;
	})()`)
	for _, directive := range []string{"connect-src", "script-src-elem", "img-src", "style-src-attr"} {
		if _, ok := breaches[directive]; !ok {
			t.Errorf("nothing was refused under %s: %v", directive, breaches)
		}
	}
	if breaches["fetched"] != "" || breaches["broken"] != "" {
		t.Errorf("the policy let something through: %v", breaches)
	}
}

// The file names no address that a browser could load anything from.
func TestFileIsSelfContained(t *testing.T) {
	page, err := os.ReadFile(pageFile)
	if err != nil {
		t.Fatal(err)
	}
	text := string(page)
	head, _, ok := strings.Cut(text, "<style>")
	if !ok || !strings.Contains(head, "Content-Security-Policy") {
		t.Error("the policy must stand before the first style and script")
	}
	for _, way := range []string{` src="`, `src='`, `@import`, `url(http`, `<link rel="stylesheet"`, `<iframe`, `importScripts`, `XMLHttpRequest`, `WebSocket`, `sendBeacon`} {
		if strings.Contains(text, way) {
			t.Errorf("the page holds %q", way)
		}
	}
	const budget = 2_600_000
	t.Logf("the page is %.3f MB, %.3f MB below the budget", float64(len(page))/1e6, float64(budget-len(page))/1e6)
	if len(page) > budget {
		t.Errorf("the page is %d bytes, above the budget of %d", len(page), budget)
	}
}

// The same sources give the same bytes.
func TestReproducible(t *testing.T) {
	if testing.Short() {
		t.Skip("builds the page twice")
	}
	root, err := moduleRoot()
	if err != nil {
		t.Fatal(err)
	}
	var pages [2][]byte
	for i := range pages { // both now: the sources may have changed since the tests began
		if pages[i], err = makePage(root, func(string) {}); err != nil {
			t.Fatal(err)
		}
	}
	if !bytes.Equal(pages[0], pages[1]) {
		t.Errorf("two builds differ: %d and %d bytes", len(pages[0]), len(pages[1]))
	}
}

func TestPackRefusesWhatWouldBreakOut(t *testing.T) {
	const shell = "<!-- policy --><!-- style --><!-- boats --><!-- module --><!-- script -->"
	page, err := pack(parts{Shell: shell, Script: "a", Style: "b", Boats: `["</script>"]`})
	if err != nil {
		t.Fatal(err)
	}
	if n := strings.Count(string(page), "</script>"); n != 3 {
		t.Errorf("%d ends of script elements, want those of boats, module and script", n)
	}
	for name, p := range map[string]parts{
		"script": {Shell: shell, Script: "'</SCRIPT>'"},
		"style":  {Shell: shell, Style: "</style>"},
		"shell":  {Shell: strings.Replace(shell, "<!-- policy -->", "", 1)},
		"twice":  {Shell: shell + "<!-- script -->"},
	} {
		if _, err := pack(p); err == nil {
			t.Errorf("%s: packed without complaint", name)
		}
	}
}
