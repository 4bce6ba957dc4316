package assemble

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.org/driveline/cmd/page/bycommand"
	"example.org/driveline/cmd/page/letters"
)

// build makes the page from the sources as they are now.
func build(t *testing.T) []byte {
	t.Helper()
	root, err := Root()
	if err != nil {
		t.Fatal(err)
	}
	file := filepath.Join(t.TempDir(), "page.html")
	if err := bycommand.Run(root, "-open=false", "-out", file); err != nil {
		t.Fatal(err)
	}
	page, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	return page
}

// The file names no address that a browser could load anything from, and
// keeps to its budget.
func TestFileIsSelfContained(t *testing.T) {
	page := build(t)
	text, err := letters.Page(page)
	if err != nil {
		t.Fatal(err)
	}
	head, _, ok := strings.Cut(text, "<style>")
	if !ok || !strings.Contains(head, "Content-Security-Policy") {
		t.Error("the policy must stand before the first style and script")
	}
	for _, way := range []string{` src="`, `src='`, `@import`, `url(http`, `<link rel="stylesheet"`, `<iframe`, `importScripts`, `XMLHttpRequest`, `WebSocket`, `sendBeacon`} {
		if strings.Contains(text, way) {
			t.Errorf("the page holds %q", way)
		}
	}
	const budget = 3_000_000 // 2.95 MB on 2026-11-28
	t.Logf("the page is %.3f MB, %.3f MB below the budget", float64(len(page))/1e6, float64(budget-len(page))/1e6)
	if len(page) > budget {
		t.Errorf("the page is %d bytes, above the budget of %d", len(page), budget)
	}
}

func TestPackRefusesWhatWouldBreakOut(t *testing.T) {
	const shell = "<!-- policy --><!-- style --><!-- boats --><!-- checks --><!-- module --><!-- program --><!-- script -->"
	file, err := pack(parts{Shell: shell, Script: "a", Style: "b", Boats: `["</script>"]`})
	if err != nil {
		t.Fatal(err)
	}
	page, err := letters.Page(file)
	if err != nil {
		t.Fatal(err)
	}
	if n := strings.Count(page, "</script>"); n != 6 {
		t.Errorf("%d ends of script elements, want those of style, boats, checks, module, program and script", n)
	}
	for name, p := range map[string]parts{
		"script": {Shell: shell, Script: "'</SCRIPT>'"},
		"style":  {Shell: shell, First: "</style>"},
		"shell":  {Shell: strings.Replace(shell, "<!-- policy -->", "", 1)},
		"twice":  {Shell: shell + "<!-- script -->"},
	} {
		if _, err := pack(p); err == nil {
			t.Errorf("%s: packed without complaint", name)
		}
	}
}
