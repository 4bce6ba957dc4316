package browser

import (
	"strings"
	"testing"
)

// A maker's figure of the boat's own bolt is not the answer for another that
// is typed, and stands beside it; it is again once the boat's own is back.
func TestMakersFigureOfAnotherJoint(t *testing.T) {
	b := newTab(t, 360)
	b.demonstrate("Juniper")
	b.open("#/sheet/bolt-preload")
	makers := b.text(".first .value")
	if said := b.text(".first .maker"); !strings.HasPrefix(said, "The maker’s figure.") {
		t.Fatalf("with the boat's own bolt it says %q", said)
	}
	b.choose("#in-finish", "anti-seize-shigley")
	b.until(`document.querySelector(".first .maker")?.textContent.includes("is not for what is typed here: Finish and lubricant. ")`)
	if got := b.text(".first .value"); got == makers {
		t.Errorf("the maker's %s is the answer for another finish", got)
	}
	if card := eval[string](b, `(dispatchEvent(new Event("beforeprint")), document.querySelector(".card").textContent)`); strings.Contains(card, "The maker’s figure.") {
		t.Errorf("the card goes by it: %q", card)
	}
	b.until(`JSON.parse(localStorage.getItem("marinecalc.answer.bolt-preload") ?? "{}").answer?.sheet.results[0].ofAnother`) // what is shown before the calculator is up knows it too
	b.choose("#in-finish", "")
	b.until(`document.querySelector(".first .maker")?.textContent.startsWith("The maker’s figure.")`)
	if got := b.text(".first .value"); got != makers {
		t.Errorf("the boat's own bolt again: %s, before: %s", got, makers)
	}
}

// What a touch opens is seen whole above the foot, as the drop to be tapped.
func TestFoldOpensIntoSight(t *testing.T) {
	b := newTab(t, 360)
	b.size(360, 740)
	b.demonstrate("Juniper")
	b.open("#/sheet/gland-heat")
	eval[any](b, `scrollTo(0, 0)`)
	eval[any](b, `document.querySelector(".counter > summary").click()`)
	b.until(`document.querySelector(".drop").getBoundingClientRect().bottom <= (document.querySelector(".peek:not([hidden])")?.getBoundingClientRect().top ?? innerHeight)`)
}

// On a telephone a day stays in one piece, as do a boat's name and what the
// face of the clock is set to.
func TestNothingIsBrokenOrCut(t *testing.T) {
	b := newTab(t, 360)
	for _, boat := range []string{"Juniper", "Kittiwake"} {
		b.demonstrate(boat)
		b.open("#/sheet/coupling-alignment")
		b.unfold(".face")
		for what, whole := range map[string]string{
			"the day of the reading": `(() => {
				const text = document.querySelector(".list .from, fieldset .from").firstChild, at = text.data.search(/\d{4}-/), range = document.createRange();
				range.setStart(text, at);
				range.setEnd(text, text.data.indexOf(":", at));
				return new Set([...range.getClientRects()].map((r) => r.top)).size === 1;
			})()`,
			"the boat's name": `(() => {
				const range = document.createRange();
				range.selectNodeContents(document.getElementById("boat-now"));
				return new Set([...range.getClientRects()].map((r) => r.top)).size === 1;
			})()`,
			"what the face is set to": `[...document.querySelectorAll(".modes select")].every((pick) => {
				const style = getComputedStyle(pick), pen = document.createElement("canvas").getContext("2d");
				pen.font = style.font;
				return pen.measureText(pick.selectedOptions[0].text).width <= pick.clientWidth - parseFloat(style.paddingLeft) - parseFloat(style.paddingRight) - 8;
			})`,
		} {
			if !eval[bool](b, whole) {
				t.Errorf("%s: %s is broken or cut", boat, what)
			}
		}
	}
}

// The day it is was never read: a plan is not offered the day of the last reading
// as a newer one.
func TestTodayIsNoReading(t *testing.T) {
	b := newTab(t, 360)
	b.demonstrate("Juniper")
	b.open("#/sheet/work-plan")
	b.until(`document.querySelector("#in-today").value !== ""`)
	if n := eval[int](b, `document.querySelectorAll(".newer").length`); n != 0 {
		t.Errorf("%d fields say that the boat was read since: %s", n, b.text(".newer"))
	}
}
