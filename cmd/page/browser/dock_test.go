package browser

import (
	"fmt"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
)

// A boat from nothing is asked first for what most calculations ask for, on
// the first screen; what is known of it by then is asked no more.
func TestBoatBeginsWithFewFigures(t *testing.T) {
	b := newTab(t, 360)
	b.size(360, 740)
	b.open("#/boat")
	const titles = `[...document.querySelectorAll('[data-card="begin"] label')].map((l) => l.firstChild.textContent)`
	if got := strings.Join(eval[[]string](b, titles), "; "); !strings.HasPrefix(got, "Boat; Shaft diameter; ") || strings.Count(got, ";") > 5 {
		t.Errorf("it begins with %q", got)
	}
	if bottom := eval[float64](b, `document.querySelector("#begin-shaft-diameter").getBoundingClientRect().bottom`); bottom > 740 {
		t.Errorf("the shaft's diameter stands at %.0f px, below the first screen", bottom)
	}
	b.write("#begin-name", "Merle")
	b.write("#begin-shaft-diameter", "30")
	b.untilKept(`boats[0].boat.name === "Merle" && boats[0].boat.shaft.diameter === "30 mm"`)
	b.unfold("#boat-shaft-alloy")
	if eval[bool](b, `!!document.querySelector("#boat-shaft-diameter") && !document.querySelector("#boat-shaft-diameter").value`) {
		t.Error("on its own card the diameter stands empty")
	}
	b.open("#/boat")
	if got := strings.Join(eval[[]string](b, titles), "; "); strings.Contains(got, "Shaft diameter") || strings.HasPrefix(got, "Boat") {
		t.Errorf("what is known is asked again: %q", got)
	}
	b.demonstrate("Juniper")
	b.open("#/boat")
	if eval[bool](b, `!!document.querySelector('[data-card="begin"]')`) {
		t.Error("a boat that has it all is asked for it")
	}
}

// The hazard of a question stands clear of the answers at the thumb, also
// where answers from before are told.
func TestHazardStandsClearOfTheAnswers(t *testing.T) {
	b := newTab(t, 360)
	b.size(360, 740)
	b.demonstrate("Juniper")
	b.turn("#/")
	b.write("#find", "knock")
	b.until(`document.querySelector('[data-hit="sign/knock-into-gear"]')`)
	eval[any](b, `document.querySelector('[data-hit="sign/knock-into-gear"]').click()`)
	b.until(`document.querySelector(".asking h2")`)
	seen := 0
	for range 6 {
		at := eval[[]float64](b, `[...document.querySelectorAll(".asking > .hazard, .thumb")].map((e) => e.getBoundingClientRect()[e.matches(".thumb") ? "top" : "bottom"])`)
		if len(at) == 2 {
			seen++
			if at[0] > at[1]+1 {
				t.Errorf("%q: its hazard ends at %.0f px, the answers begin at %.0f", b.text(".asking h2"), at[0], at[1])
			}
		}
		asked := b.text(".asking h2")
		b.press("No")
		b.until(fmt.Sprintf(`document.querySelector(".asking h2").textContent !== %q`, asked))
	}
	if seen == 0 {
		t.Error("no question had a hazard")
	}
}

// Gaps of another day are not mixed with those that are typed over them.
func TestGapsOfAnotherDayAreNotMixed(t *testing.T) {
	b := newTab(t, 360)
	b.demonstrate("Juniper")
	b.open("#/sheet/coupling-alignment")
	b.unfold(".face input")
	eval[any](b, `document.querySelector(".spot").click()`)
	b.do(chromedp.KeyEvent("0.35"))
	if got := eval[string](b, `[...document.querySelector(".face").querySelectorAll(".spot")].map((s) => s.querySelector(":scope > span").textContent[0]).join("")`); got != "0+++" {
		t.Errorf("with one gap typed over the boat's the places have %q", got)
	}
	b.until(`[...document.querySelectorAll("main button")].some((e) => e.textContent === "Undo")`)
	b.press("Undo")
	b.until(`document.querySelector(".face.given .spot.read")`)
}

// What the days show is not listed below them a second time.
func TestPlanIsNotListedTwice(t *testing.T) {
	b := newTab(t, 360)
	b.demonstrate("Juniper")
	b.open("#/sheet/work-plan")
	b.press("Change here: What is to be done")
	b.choose("#in-remedies-0-remedy", "repack-gland")
	b.until(`document.querySelector(".agenda") && [...document.querySelectorAll(".paper summary")].some((e) => e.textContent === "Schedule")`)
	if tall := eval[float64](b, `document.documentElement.scrollHeight`); tall > 9250 {
		t.Errorf("the plan of one piece of work is %.0f px long, over twelve screens", tall)
	}
}
