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
	go1("nylon lock nut 3/8-24", "row/ne-3/8-24") // the words name nut and thread
	b.untilKept(`boats.at(-1).typed["bolt-fit"]?.nut === "ne-3/8-24" && boats.at(-1).typed["bolt-fit"]?.thread === "3/8-24 UNF"`)
	go1("cutlas", "part/bearing")
	b.until(`location.hash === "#/part/bearing" && document.querySelector(".sheets")`)
	b.open("#/")
	if used := b.text(".used"); !strings.Contains(used, "Used last") {
		t.Errorf("what was used last is not told: %s", used)
	}
	b.write("#find", "alignmnet\r")
	b.until(`location.hash === "#/sheet/coupling-alignment"`)
}

// A part's page begins with what is known without the calculator, opened by its
// own address as from home; the rest comes when it is worked out.
func TestPartHeadAtOnce(t *testing.T) {
	b := newTab(t, 360)
	b.demonstrate("Kittiwake")
	b.beforePage(`
		const post = Worker.prototype.postMessage;
		Worker.prototype.postMessage = function (message, ...rest) {
			if (message?.request?.ask === "part" && !window.letGo) window.letGo = () => post.call(this, message, ...rest);
			else post.call(this, message, ...rest);
		};`)
	b.open("#/part/bearing")
	b.until(`window.letGo`)
	if title, state := b.text("h1"), b.text(".part-state"); title != "Stern bearing" || !strings.Contains(state, "Being worked out") {
		t.Errorf("before it is worked out it says %q, %q", title, state)
	}
	if about := b.text(".lead"); about == "" {
		t.Error("it does not say what the part is for")
	}
	eval[any](b, "window.letGo()")
	b.until(`document.querySelector(".sheets") && !document.querySelector(".part-state").textContent.includes("Being worked out")`)
	b.turn("#/part/nothing")
	if title := b.text("h1"); title != "No such part" {
		t.Errorf("of no part it says %q", title)
	}
}

// Readings that come to their limit stand on home among what is due, those that
// do not are not told, and the line does not wait for it.
func TestHomeTellsWhatComesToItsLimit(t *testing.T) {
	b := newTab(t, 360)
	b.open("")
	eval[any](b, `localStorage.setItem('marinecalc.boats', JSON.stringify([{ id: 'wren', boat: { name: 'Wren', follow: { reading: 'dripRate', limit: '30 drips/min' }, readings:
		[5, 8, 11, 14, 17, 20].map((n, i) => ({ date: new Date(Date.now() - (100 - 20 * i) * 86_400_000).toISOString().slice(0, 10), dripRate: n + ' drips/min',
			glandTemperature: '30 °C' })) } }]))`)
	b.open("#/")
	b.until(`document.querySelector(".line")`)
	b.until(`document.querySelector(".due .grows")`)
	if said := eval[[]string](b, `[...document.querySelectorAll(".due .grows a")].map((a) => a.getAttribute("href") + " " + a.textContent)`); len(said) != 1 || !strings.Contains(said[0], "#/readings/dripRate") || !strings.Contains(said[0], "at its limit about 20") {
		t.Errorf("home says %q", said)
	}
	b.open("#/") // as it was kept
	b.until(`document.querySelector(".due .grows") && document.querySelector(".line")`)
}
