package browser

import (
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
)

// Home is one screen of a telephone, with a boat and without: the header in one
// row, the line with a target of 44 px for each part, what is due, what was used
// last.
func TestHomeFitsAScreen(t *testing.T) {
	b := newTab(t, 360)
	b.do(chromedp.EmulateViewport(360, 740))
	fits := func(what string) {
		b.until(`document.querySelectorAll(".tile .sign").length === 8`)
		size := eval[[]float64](b, `[document.querySelector(".top").getBoundingClientRect().height, document.querySelector(".home").getBoundingClientRect().bottom + scrollY, document.documentElement.scrollWidth,
			...[...document.querySelectorAll(".tile")].map((e) => Math.min(e.clientWidth, e.clientHeight))]`)
		t.Logf("%s: header %.0f px, home ends at %.0f px", what, size[0], size[1])
		if size[0] > 56 || size[1] > 740 || size[2] > 360 {
			t.Errorf("%s: header %.0f px, home ends at %.0f px, %.0f px wide", what, size[0], size[1], size[2])
		}
		for _, tile := range size[3:] {
			if tile < 44 {
				t.Errorf("%s: a part is %.0f px", what, tile)
			}
		}
		if n := eval[int](b, `document.querySelectorAll(".line-drawing svg [id*=part-]").length`); n != 8 {
			t.Errorf("%s: %d parts are drawn", what, n)
		}
		if out := eval[[]string](b, `[...document.querySelectorAll(".tile")].flatMap((tile) => [...tile.children].filter((e) => e.scrollWidth > tile.clientWidth - 4).map((e) => e.textContent))`); len(out) > 0 {
			t.Errorf("%s: at the edges of its column: %q", what, out)
		}
		eval[any](b, `document.documentElement.style.fontSize = "200%"`)
		if tile := eval[[]float64](b, `[document.querySelector(".tile").getBoundingClientRect().width, document.documentElement.scrollWidth]`); tile[0] < 130 || tile[1] > 360 {
			t.Errorf("%s: with letters twice as large a part is %.0f px wide, the page %.0f px", what, tile[0], tile[1])
		}
	}
	b.open("")
	fits("no boat")
	for _, name := range []string{"Kittiwake", "Juniper"} {
		b.open("#/boat")
		b.press("Demonstration: " + name)
		b.open("#/")
		fits(name)
	}
	if eval[string](b, `document.querySelector("#settings").className.includes("open") + ""`) != "false" || eval[bool](b, `document.querySelector("#units").checkVisibility()`) {
		t.Error("units and light stand open")
	}
	eval[any](b, `document.querySelector("#how").click()`)
	if !eval[bool](b, `document.querySelector("#units").checkVisibility() && document.querySelector("#light").checkVisibility()`) {
		t.Error("units and light do not open")
	}
}

// What is typed leads on: a sign of trouble to the fault finding with that
// answered, a size to the sheet with it picked, a part to its own view; by the
// keyboard too.
func TestFindLeadsOn(t *testing.T) {
	b := newTab(t, 360)
	b.keepDemonstration()
	go1 := func(typed, hit string) {
		b.open("#/")
		b.write("#find", typed)
		b.until(`document.querySelector('[data-hit="` + hit + `"]')`)
		eval[any](b, `document.querySelector('[data-hit="`+hit+`"]').click()`)
	}
	go1("clunk", "sign/knock-into-gear")
	b.until(`location.hash === "#/sheet/fault-finding" && document.querySelector(".asking")`)
	b.untilKept(`JSON.stringify(boats.at(-1).typed["fault-finding"] ?? {}).includes('"evidence":"knock-into-gear","answer":"yes"')`)
	go1("3/8-24", "row/3/8-24 UNF")
	b.until(`location.hash === "#/sheet/bolt-preload" && document.querySelector(".answer.sheet")`)
	b.untilKept(`boats.at(-1).typed["bolt-preload"]?.thread === "3/8-24 UNF"`)
	go1("cutlas", "part/bearing")
	b.until(`location.hash === "#/part/bearing" && document.querySelector(".sheets")`)
	b.open("#/")
	if used := b.text(".used"); !strings.Contains(used, "Used last") {
		t.Errorf("what was used last is not told: %s", used)
	}
	b.write("#find", "alignmnet\r")
	b.until(`location.hash === "#/sheet/coupling-alignment"`)
}
