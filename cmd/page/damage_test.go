package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
)

// A file in which one letter of the module has changed says so, and computes
// nothing.
func TestDamagedFileSaysSo(t *testing.T) {
	page, err := os.ReadFile(pageFile)
	if err != nil {
		t.Fatal(err)
	}
	middle := bytes.Index(page, []byte(`id="module"`)) + 100_000
	at := middle + bytes.IndexByte(page[middle:], 'a')
	page[at] = 'b'
	file := filepath.Join(t.TempDir(), "damaged.html")
	if err := os.WriteFile(file, page, 0o644); err != nil {
		t.Fatal(err)
	}
	b := newTab(t, 1280)
	b.do(chromedp.Navigate("file://" + file))
	b.until(`document.querySelector("main").textContent.includes("could not start")`)
	if said := b.text("main"); !strings.Contains(said, "This file is damaged") {
		t.Errorf("the page says %q", said)
	}
}
