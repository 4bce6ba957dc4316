package browser

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// Gaps typed on the clock face, place after place by Enter alone, give the
// answer that the list gives; the face tells which places are still empty.
func TestGapsOnTheFace(t *testing.T) {
	b := newTab(t, 360)
	b.open("#/sheet/coupling-alignment")
	if n := eval[int](b, `document.querySelector(".face").querySelectorAll(".spot:not(.read)").length`); n != 4 {
		t.Errorf("%d places are empty at first, want 4", n)
	}
	eval[any](b, `document.querySelector(".spot").click()`)
	for _, gap := range []string{"0.42", "0.37", "0.30", "0.36"} {
		b.do(chromedp.KeyEvent(gap + kb.Enter))
	}
	b.write("#in-couplingDiameter", "102")
	b.choose("#in-couplingKind", "rigid")
	want := native(t, "coupling-alignment", example["coupling-alignment"], "angle")
	b.until(fmt.Sprintf("document.querySelector(%q)?.textContent === %q", value("angle"), want))
	if got := eval[string](b, `[...document.querySelector(".face").querySelectorAll(".spot")].map((s) => s.textContent).join("; ")`); !strings.HasPrefix(got, "Gap at 12 o'clock: 0.42 mm; Gap at 3 o'clock: 0.37 mm") {
		t.Errorf("the face says %q", got)
	}
	if got := eval[string](b, `document.querySelector("#in-readings-2-gap").value`); got != "0.30 mm" {
		t.Errorf("the list has %q at 6 o'clock", got)
	}
	if small := eval[string](b, `[...document.querySelectorAll(".face :is(button, input, select)")].filter((e) => e.checkVisibility() && e.getBoundingClientRect().height < 43.5).map((e) => e.textContent).join()`); small != "" {
		t.Errorf("too small for a thumb: %s", small)
	}
}

// Mounts are ticked off one by one, gaps typed again make a new plan, and its
// ticks begin anew.
func TestNutsFromAbove(t *testing.T) {
	b := newTab(t, 360)
	b.demonstrate("Kittiwake")
	b.open("#/sheet/mount-moves")
	b.until(`document.querySelectorAll(".nut").length === 4`)
	eval[any](b, `document.querySelector(".nut").click()`)
	b.until(`document.querySelector(".nut").getAttribute("aria-pressed") === "true"`)
	b.open("#/sheet/mount-moves")
	b.until(`document.querySelector(".nut")?.getAttribute("aria-pressed") === "true"`)
	first := b.text(".nut")
	b.unfold(".again input")
	// Gaps are typed as they are read, beside what was read last.
	if was := eval[[]string](b, `[...document.querySelectorAll(".again input")].slice(0, 4).map((i) => i.placeholder)`); !slices.Equal(was, []string{"5.30 mm", "5.30 mm", "5.30 mm", "5.30 mm"}) {
		t.Errorf("as read last it has %q", was)
	}
	eval[any](b, `document.querySelector(".again input").focus()`)
	b.do(chromedp.KeyEvent("5,6"))
	b.press("Plan anew")
	if said := b.text(".move-it .wrong"); !strings.HasPrefix(said, "Type both gaps") {
		t.Errorf("with one gap of two it says %q", said)
	}
	eval[any](b, `document.querySelectorAll(".again input")[1].focus()`)
	b.do(chromedp.KeyEvent("5.3"))
	b.press("Plan anew")
	if said := b.text(".move-it .wrong"); !strings.Contains(said, "Not turned: ") {
		t.Errorf("with one of a pair turned it says %q", said)
	}
	if got := b.text(".nut"); got != first {
		t.Errorf("with one of a pair turned it plans anew: %q", got)
	}
	eval[any](b, `document.querySelectorAll(".nut")[1].click()`)
	b.press("Plan anew")
	b.until(fmt.Sprintf(`document.querySelector("#in-gapVertical").value === "0.3 mm" && document.querySelector(".nut").textContent !== %q`, first))
	if eval[bool](b, `!!document.querySelector(".nut[aria-pressed=true]")`) {
		t.Error("a tick of the old plan stands in the new one")
	}
}

// The pattern of the bolts goes on by one button; what if moves an input and
// types nothing until it is used.
func TestBoltsAndWhatIf(t *testing.T) {
	b := newTab(t, 360)
	b.demonstrate("Kittiwake")
	b.open("#/sheet/bolt-preload")
	b.until(`document.querySelector(".passes .go")`)
	for range 5 {
		eval[any](b, `document.querySelector(".passes .go").click()`)
	}
	if said := b.text(".passes .then"); !strings.HasPrefix(said, "Pass 2 of 4") || !strings.HasSuffix(said, "Next: bolt 3.") {
		t.Errorf("after five bolts of four it says %q", said)
	}
	before := b.text(value("wrenchSetting"))
	b.unfold(".what-if select")
	b.until(`document.querySelector(".what-if option")`)
	eval[any](b, `(() => {
		const pick = document.querySelector(".what-if select");
		pick.value = "nutFactor";
		pick.dispatchEvent(new Event("change"));
		const slide = document.querySelector(".what-if input");
		slide.value = "90";
		slide.dispatchEvent(new Event("input"));
	})()`)
	b.until(fmt.Sprintf(`document.querySelector(".what-if [role=status]").textContent.includes(%q + " → ")`, before))
	if got := b.text(value("wrenchSetting")); got != before {
		t.Errorf("trying changed the sheet to %q", got)
	}
	b.press("Use it")
	b.until(fmt.Sprintf(`document.querySelector(%q).textContent !== %q`, value("wrenchSetting"), before))
	b.press("Undo")
	b.until(fmt.Sprintf(`document.querySelector(%q).textContent === %q`, value("wrenchSetting"), before))
}

// A plan is a strip of days with its open block; a step leads to its figures
// and its tick, and what is to buy stands as a text.
func TestPlanByDays(t *testing.T) {
	b := newTab(t, 360)
	b.demonstrate("Kittiwake")
	b.open("#/sheet/work-plan")
	b.until(`document.querySelector(".answers")`)
	eval[any](b, `(() => {
		const today = document.querySelector("#in-today");
		today.value = "2026-10-01";
		today.dispatchEvent(new Event("input"));
	})()`)
	b.press("Change here: What is to be done")
	b.choose("#in-remedies-0-remedy", "replace-mounts")
	b.until(`document.querySelector(".strip .open-block") && document.querySelector(".agenda .open-day")`)
	if n := eval[int](b, `document.querySelectorAll(".strip .kind-ashore").length`); n == 0 {
		t.Error("the days ashore are not on the strip")
	}
	if list := eval[string](b, `document.querySelector(".errands textarea").value`); !strings.Contains(list, "Kittiwake") || !strings.Contains(list, "☐ 4 × piece Engine mount; order by 2026-") {
		t.Errorf("the list to send: %q", list)
	}
	eval[any](b, `[...document.querySelectorAll(".agenda button")].find((e) => e.textContent === "Set the mounts").click()`)
	b.until(`location.hash === "#/procedure/replace-mounts" && document.querySelector("details.step[open] > summary")?.textContent.includes("Set the mounts")`)
}

// The needle of the rev counter goes by keys, and says which bands it is in;
// a joint opens its sheet.
func TestSpeedsAndJoints(t *testing.T) {
	b := newTab(t, 360)
	b.demonstrate("Kittiwake")
	b.open("#/sheet/shaft-whirl")
	b.until(`document.querySelector(".revs input")`)
	eval[any](b, `document.querySelector(".revs input").focus()`)
	b.do(chromedp.KeyEvent(kb.Home))
	if said := b.text(".revs .then"); said != "0 rpm, below idle: clear of the bands." {
		t.Errorf("at rest it says %q", said)
	}
	b.do(chromedp.KeyEvent(kb.End))
	if said := b.text(".revs .then"); !strings.Contains(said, "over full speed") {
		t.Errorf("at the end of the scale it says %q", said)
	}
	b.open("#/sheet/line-joints")
	b.until(`document.querySelectorAll(".joints a").length === 4`)
	eval[any](b, `document.querySelector('.drawing .opens[id$="row-1"]').dispatchEvent(new Event("click"))`)
	b.until(`location.hash === "#/sheet/coupling-grip"`)
}

// What may be negative is typed with all keys, since the digits of some
// telephones have no minus; what cannot be has the digits.
func TestKeypadOfWhatMayBeNegative(t *testing.T) {
	b := newTab(t, 360)
	b.demonstrate("Kittiwake")
	b.open("#/sheet/mount-moves")
	b.until(`document.querySelector("#in-gapVertical")`)
	if mode := eval[string](b, `document.querySelector("#in-gapVertical").inputMode`); mode != "" {
		t.Errorf("a gap of -0.2 mm is asked for with the keypad %q", mode)
	}
	b.open("#/sheet/coupling-alignment")
	b.until(`document.querySelector("#in-couplingDiameter")`)
	if mode := eval[string](b, `document.querySelector("#in-couplingDiameter").inputMode`); mode != "decimal" {
		t.Errorf("a diameter is asked for with the keypad %q", mode)
	}
}
