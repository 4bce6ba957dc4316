package browser

import (
	"fmt"
	"os"
	"path/filepath"
	"testing"

	"example.org/driveline/cmd/page/assemble"
	"example.org/driveline/marinecalc"
)

// At 360 px nothing scrolls sideways, letters are 16 px or more, and what is
// pressed is 44 px high: the page is used on deck with wet hands.
func TestNarrow(t *testing.T) {
	t.Parallel()
	b := newTab(t, 360)
	b.open("")
	b.keepExample()
	check := func(name, hash, ready string) {
		b.turn(hash)
		b.until(fmt.Sprintf("document.querySelector(%q)", ready))
		eval[any](b, "for (const d of document.querySelectorAll('details')) d.open = true")
		if wide := eval[int](b, "document.documentElement.scrollWidth"); wide > 360 {
			t.Errorf("%s: %d px wide: %s", name, wide, eval[string](b, `[...document.querySelectorAll('main *')]
				.filter((e) => e.getBoundingClientRect().right > 360).map((e) => e.outerHTML.slice(0, 120)).slice(0, 3).join('\n')`))
		}
		if empty := eval[float64](b, `document.documentElement.scrollHeight - Math.max(innerHeight, document.querySelector("body > footer").getBoundingClientRect().bottom + scrollY)`); empty > 40 {
			t.Errorf("%s: %.0f px of nothing below its end", name, empty)
		}
		if small := eval[[]string](b, `[...document.querySelectorAll('button, input, select, summary, nav a')]
			.filter((e) => e.checkVisibility() && e.getBoundingClientRect().height < 43.9).map((e) => e.outerHTML.slice(0, 120))`); len(small) > 0 {
			t.Errorf("%s: less than 44 px high: %q", name, small)
		}
		if small := eval[[]string](b, `[...document.querySelectorAll('body *:not(svg *, script, style)')]
			.filter((e) => e.checkVisibility() && parseFloat(getComputedStyle(e).fontSize) < 16).map((e) => e.outerHTML.slice(0, 120))`); len(small) > 0 {
			t.Errorf("%s: letters under 16 px: %q", name, small)
		}
	}
	for _, v := range views {
		check(v.name, v.hash, v.ready)
	}
	b.keepDemonstration()
	check("two states", "#/compare", ".paper li")
	for _, c := range marinecalc.Calculations() {
		check(c.ID, "#/sheet/"+c.ID, ".sheet > *")
	}
}

// At 1280 px nothing scrolls sideways or leaves the paper either.
func TestWide(t *testing.T) {
	t.Parallel()
	b := newTab(t, 1280)
	b.keepDemonstration()
	for _, c := range marinecalc.Calculations() {
		b.turn("#/sheet/" + c.ID)
		b.until(`document.querySelector(".sheet > *")`)
		eval[any](b, "for (const d of document.querySelectorAll('details')) d.open = true")
		if out := eval[[]string](b, `[...document.querySelectorAll('.sheet')].flatMap((sheet) => {
			const edge = sheet.getBoundingClientRect().right + 1;
			return [...sheet.querySelectorAll('*:not(thead, thead *)')]
				.filter((e) => e.getBoundingClientRect().right > edge).map((e) => e.outerHTML.slice(0, 120)).slice(0, 3);
		})`); len(out) > 0 {
			t.Errorf("%s: beyond the edge of the paper: %q", c.ID, out)
		}
	}
}

// axe-core finds nothing against WCAG 2.2 AA, in any view and any light.
func TestAxe(t *testing.T) {
	root, err := assemble.Root()
	if err != nil {
		t.Fatal(err)
	}
	axe, err := os.ReadFile(filepath.Join(root, "site", "node_modules", "axe-core", "axe.min.js"))
	if err != nil {
		if os.Getenv("CI") == "true" {
			t.Fatal("axe-core is missing, and CI is set: npm ci --prefix site")
		}
		t.Skip("SKIPPED: axe-core is not installed, accessibility was not checked (npm ci --prefix site)")
	}
	for _, width := range []int64{360, 1280} {
		for _, light := range []string{"day", "dusk", "night"} {
			t.Run(fmt.Sprintf("%s at %d", light, width), func(t *testing.T) {
				t.Parallel()
				b := newTab(t, width)
				b.open("")
				b.choose("#light", light)
				check := func(name, hash, ready string) {
					b.turn(hash)
					b.until(fmt.Sprintf("document.querySelector(%q)", ready))
					eval[any](b, "for (const d of document.querySelectorAll('details')) d.open = true")
					if !eval[bool](b, "!!window.axe") {
						eval[any](b, string(axe)+"; undefined")
					}
					for _, v := range eval[[]struct {
						ID, Help string
						Nodes    []string
					}](b, `axe.run(document, { runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'] }).then((r) => {
						if (r.passes.length < 10) throw new Error('axe ran only ' + r.passes.length + ' rules');
						return r.violations.map(({ id, help, nodes }) => ({ ID: id, Help: help, Nodes: nodes.slice(0, 3).map((n) => n.html.slice(0, 200) + ' ' + n.failureSummary) }));
					})`) {
						t.Errorf("%s: %s: %s\n%q", name, v.ID, v.Help, v.Nodes)
					}
				}
				check("an empty form", "#/sheet/bolt-preload", ".summary")
				check("an empty boat", "#/boat", ".form")
				b.keepExample()
				for _, v := range views {
					check(v.name, v.hash, v.ready)
				}
				b.open("#/sheet/coupling-alignment")
				b.write("#in-couplingDiameter", "wide")
				check("a bad input", "#/sheet/coupling-alignment", "[aria-invalid]")
				if light != "day" {
					return // the rest is made of the same parts
				}
				b.keepDemonstration()
				check("a survey", "#/survey", ".paper")
				check("two states", "#/compare", ".paper li")
				check("a boat", "#/boat", ".form")
				for _, c := range marinecalc.Calculations() {
					check(c.ID, "#/sheet/"+c.ID, ".sheet > *")
				}
			})
		}
	}
}
