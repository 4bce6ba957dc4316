package browser

import (
	"fmt"
	"net/http"
	"net/http/httptest"
	"net/url"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
)

// journey is one errand of a person at the page, counted as it is walked.
type journey struct {
	*tab
	touches, screens int
}

// walk is what is walked: from home with the demonstration boat in hand, or
// without a boat, to what the person wanted.
type walk struct {
	name    string
	boat    bool
	touches int // at most; 0 where only counted
	go1     func(j *journey)
}

// touch is one touch of a thing, which must be there and be seen or be scrolled
// to: each height of the screen between counts as one more screen.
func (j *journey) touch(script string) {
	j.t.Helper()
	j.until(script)
	far := eval[float64](j.tab, fmt.Sprintf(`(() => {
		const e = %s;
		for (let d = e.closest('details'); d; d = d.parentElement.closest('details')) if (!d.open && !(d.querySelector('summary') ?? d).contains(e)) d.open = true;
		const box = e.getBoundingClientRect();
		const far = box.bottom > innerHeight ? box.bottom - innerHeight : Math.max(0, -box.top);
		e.scrollIntoView({ block: 'nearest' });
		return far / innerHeight;
	})()`, script))
	if far > 0.01 {
		j.screens += 1 + int(far)
	}
	j.touches++
	eval[any](j.tab, `{ const e = `+script+`; e.focus?.(); if (e.tagName !== 'SELECT' && e.tagName !== 'INPUT') e.click(); }`)
}

// button is the button or summary with that label.
func button(label string) string {
	return fmt.Sprintf(`[...document.querySelectorAll("main button, main summary, main a")].find((e) => e.textContent.trim().startsWith(%q) && e.checkVisibility())`, label)
}

// typeIn touches a field and types: one touch, as the keys are another hand's.
func (j *journey) typeIn(selector, text string) {
	j.t.Helper()
	j.touch(fmt.Sprintf("document.querySelector(%q)", selector))
	j.write(selector, text)
}

// pick touches a list and one line of it.
func (j *journey) pick(selector, value string) {
	j.t.Helper()
	j.touch(fmt.Sprintf("document.querySelector(%q)", selector))
	j.touches++
	j.choose(selector, value)
}

// TestJourneys walks every journey on a telephone and a laptop, from a file and
// over http, and writes how many touches, screens and seconds each took into
// the file that MARINECALC_JOURNEYS names.
func TestJourneys(t *testing.T) {
	out := os.Getenv("MARINECALC_JOURNEYS")
	if out == "" {
		t.Skip("set MARINECALC_JOURNEYS to a file, such as testdata/journeys.md, to walk the journeys and have their table")
	}
	newTab(t, 360) // skips where there is no browser
	host := httptest.NewServer(http.FileServer(http.Dir(filepath.Dir(pageFile))))
	defer host.Close()
	at, err := url.Parse(host.URL)
	if err != nil {
		t.Fatal(err)
	}
	var rows []string
	for _, w := range slices.Concat(walks, troubles) {
		for _, screen := range []struct {
			name          string
			width, height int64
		}{{"telephone", 360, 740}, {"laptop", 1280, 800}} {
			for _, from := range []struct{ name, address string }{{"file", "file://" + pageFile}, {"http", host.URL + "/" + filepath.Base(pageFile)}} {
				ok := t.Run(fmt.Sprintf("%s, %s, %s", w.name, screen.name, from.name), func(t *testing.T) {
					j := &journey{tab: newTab(t, screen.width), screens: 1}
					j.host = at.Host
					j.size(screen.width, screen.height)
					visit := func(hash string) {
						j.do(chromedp.Navigate("about:blank"), chromedp.Navigate(from.address+hash))
						j.until(`document.querySelector("h1[tabindex]")`)
					}
					if w.boat {
						visit("#/boat")
						j.press("Demonstration: Kittiwake")
						j.untilKept(`boats.length === 1`)
					}
					visit("#/")
					began := time.Now()
					w.go1(j)
					took := time.Since(began)
					rows = append(rows, fmt.Sprintf("| %s | %s | %s | %d | %d | %.1f |", w.name, screen.name, from.name, j.touches, j.screens, took.Seconds()))
					if w.touches > 0 && j.touches > w.touches {
						t.Errorf("%d touches, at most %d were meant", j.touches, w.touches)
					}
				})
				if !ok {
					rows = append(rows, fmt.Sprintf("| %s | %s | %s | not walked to its end | | |", w.name, screen.name, from.name))
				}
			}
		}
	}
	commit, _ := exec.Command("git", "rev-parse", "--short", "HEAD").Output()
	loop := newTab(t, 360)
	loop.open("")
	plain := eval[float64](loop, plainLoop)
	text := fmt.Sprintf(`# Journeys

Walked by go test -run Journeys with MARINECALC_JOURNEYS, at commit %s on %s; a plain loop of 50 million rounds, each on the one before, took %.0f ms. A touch is a touch of the screen, a list and its line are two, typing into a field is one. A screen is one height of it that had to be scrolled. Seconds are the machine's, without a person's.

| journey | on | from | touches | screens | seconds |
|---|---|---|---|---|---|
%s
`, strings.TrimSpace(string(commit)), time.Now().Format(time.DateOnly), plain, strings.Join(rows, "\n"))
	if err := os.WriteFile(out, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
}
