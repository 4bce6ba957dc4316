package browser

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp"

	"example.org/driveline/marinecalc"
)

func (b *tab) size(width, height int64) {
	b.t.Helper()
	b.do(chromedp.EmulateViewport(width, height))
}

// demonstrate puts the demonstration boat of that name in hand.
func (b *tab) demonstrate(name string) {
	b.t.Helper()
	b.open("#/boat")
	b.press("Demonstration: " + name)
	b.untilKept(fmt.Sprintf("boats.some((b) => b.boat.name === %q)", name))
}

// On a telephone no sheet has more than one screen between its first field and
// its answer with the verdict's word, and no letter of the figure stands on a
// line of its own when letters are twice as large.
func TestAnswerWithinAScreenOfTheFirstField(t *testing.T) {
	for _, boat := range []string{"Kittiwake", "Juniper"} {
		t.Run(boat, func(t *testing.T) { answerWithinAScreen(t, boat) })
	}
}

func answerWithinAScreen(t *testing.T, boat string) {
	t.Parallel()
	b := newTab(t, 360)
	b.size(360, 740)
	b.demonstrate(boat)
	answered := 0
	for _, c := range marinecalc.Calculations() {
		if c.ID == "fault-finding" {
			continue // one question a screen
		}
		eval[any](b, `document.documentElement.style.fontSize = ""`)
		b.turn("#/sheet/" + c.ID)
		b.until(`document.querySelector(".answers, .summary")`)
		if n := eval[int](b, `document.querySelectorAll(".asked > *").length`); n < 1 || n > 6 {
			t.Errorf("%s asks for %d things at once", c.ID, n)
		}
		if !eval[bool](b, `!!document.querySelector(".answers")`) {
			continue
		}
		answered++
		far := eval[float64](b, `(() => {
			const field = [...document.querySelectorAll("main :is(input, select, button)")].find((e) => e.checkVisibility());
			const answer = document.querySelector(".answers > .verdict .word") ?? document.querySelector(".first .value");
			return answer.getBoundingClientRect().bottom - field.getBoundingClientRect().top;
		})()`)
		if far > 740 {
			t.Errorf("%s, %s: %.0f px from the first field to the answer", boat, c.ID, far)
		}
		eval[any](b, `document.documentElement.style.fontSize = "200%"`)
		if n := eval[int](b, `document.querySelector(".first .one-piece")?.getClientRects().length ?? 1`); n != 1 {
			t.Errorf("%s, %s: at 200 %% the figure is broken into %d pieces", boat, c.ID, n)
		}
		if wide := eval[int](b, "document.documentElement.scrollWidth"); wide > 360 {
			t.Errorf("%s, %s: %d px wide at 200 %%", boat, c.ID, wide)
		}
	}
	if answered < 30 {
		t.Errorf("%s: only %d sheets had an answer", boat, answered)
	}
}

// A change of any kind can be taken back: what was typed, what was cleared,
// what was kept with the boat.
func TestUndo(t *testing.T) {
	b := newTab(t, 1280)
	b.demonstrate("Juniper")
	b.open("#/sheet/shaft-torque")
	before := b.text(value("shaftTorque"))
	b.write("#in-enginePower", "20 kW")
	b.until(fmt.Sprintf("document.querySelector(%q).textContent !== %q", value("shaftTorque"), before))
	b.press("Undo")
	b.until(fmt.Sprintf("document.querySelector(%q).textContent === %q", value("shaftTorque"), before))

	b.write("#in-enginePower", "20 kW")
	b.until(fmt.Sprintf("document.querySelector(%q).textContent !== %q", value("shaftTorque"), before))
	b.press("Clear what was typed")
	b.until(`document.querySelector("#in-enginePower").value === ""`)
	b.press("Undo")
	b.until(`document.querySelector("#in-enginePower").value === "20 kW"`)

	b.until(`[...document.querySelectorAll("button")].some((b) => b.textContent.startsWith("Keep with Juniper"))`)
	power := kept[string](b, "boats[0].boat.engine.power")
	b.press("Keep with Juniper")
	b.untilKept(`boats[0].boat.engine.power === "20 kW"`)
	b.press("Undo")
	b.untilKept(fmt.Sprintf("boats[0].boat.engine.power === %q", power))
	b.until(`document.querySelector("#in-enginePower").value === "20 kW"`)
}

// The job card is one page, also of Letter, which is 18 mm shorter than A4 (ISO 216).
func TestJobCardIsOnePage(t *testing.T) {
	t.Parallel()
	for _, boat := range []string{"Juniper", "Kittiwake"} {
		b := newTab(t, 1280)
		b.demonstrate(boat)
		for _, c := range marinecalc.Calculations() {
			b.turn("#/sheet/" + c.ID)
			b.until(`document.querySelector(".answers, .summary")`)
			if !eval[bool](b, `!!document.querySelector(".answers")`) {
				continue
			}
			if n := len(pageObject.FindAll(b.printedOn(8.5, 11), -1)); n != 1 {
				t.Errorf("%s, %s: the card has %d pages", boat, c.ID, n)
			}
		}
	}
}

// Drips counted by taps fill the rate and how long was counted, and the rate alone has a
// verdict with its source, on a boat of which nothing is known.
func TestDripsByTaps(t *testing.T) {
	b := newTab(t, 360)
	b.open("#/sheet/gland-heat")
	b.unfold(".drop")
	for range 6 {
		b.press("Drip")
		time.Sleep(300 * time.Millisecond)
	}
	b.until(`document.querySelector(".counter .verdict")`)
	if said := b.text(".drip-rate"); !strings.Contains(said, "drips/min") || !strings.Contains(said, "likely") || !strings.Contains(said, "5 drips in") {
		t.Errorf("after six taps it says %q", said)
	}
	if said := b.text(".counter"); !strings.Contains(said, "Drips under way") {
		t.Errorf("the rate alone has no verdict: %q", said)
	}
	b.press("Use it")
	if got := eval[string](b, `document.querySelector("#in-dripRate").value`); strings.Contains(got, "±") || !strings.HasSuffix(got, " drips/min") {
		t.Errorf("the field holds %q", got)
	}
	if got := eval[string](b, `document.querySelector("#in-dripGauge").value`); got != "drip-count-short" {
		t.Errorf("a count of two seconds was read with %q", got)
	}
}

// Drips typed alone have a sheet at once, under way and at rest, that says what it
// hangs on; with both temperatures it says how warm the gland is. Where the sheet asks
// for more, as that of the bilge, it leads to the one that takes them.
func TestDripsAlone(t *testing.T) {
	b := newTab(t, 360)
	b.open("#/sheet/gland-heat")
	b.write("#in-dripRate", "5")
	b.until(`document.querySelector(".answers .verdict")`)
	for _, want := range []string{"Drips under way, packing or face seal not named", "inside the guide", "Take the gland's temperature"} {
		if said := b.text(".answer"); !strings.Contains(said, want) {
			t.Errorf("five drips say nothing of %q: %q", want, said)
		}
	}
	b.write("#in-measuredGlandTemperature", "30")
	b.write("#in-waterTemperature", "18")
	b.until(`document.querySelector(".answers").textContent.includes("measured")`)
	if said := b.text(".answer"); strings.Contains(said, "Take the gland's temperature") {
		t.Errorf("a gland that was measured is still to be measured: %q", said)
	}
	b.press("Clear what was typed")
	b.until(`!document.querySelector(".answers .verdict")`)
	b.write("#in-dripRateAtRest", "30")
	b.until(`document.querySelector(".answers .verdict")`)
	if said := b.text(".answer"); !strings.Contains(said, "outside the guide") || !strings.Contains(said, "Drips at rest") || strings.Contains(said, "Drips under way") {
		t.Errorf("thirty drips at rest: %q", said)
	}
	b.open("#/sheet/gland-drip") // what is typed today is handed on
	b.until(`document.querySelector("main").textContent.includes("With what is typed on Gland: drips and heat") && document.querySelector("main").textContent.includes("30 drips/min")`)
	b.open("#/sheet/gland-heat")
	b.press("Clear what was typed")
	b.until(`!document.querySelector(".answers .verdict")`)
	b.open("#/sheet/gland-drip")
	b.write("#in-dripRate", "5")
	b.until(`document.querySelector(".answer .summary")`)
	eval[any](b, `[...document.querySelectorAll(".answer a.action")].find((a) => a.textContent.startsWith("Gland: drips and heat")).click()`)
	b.until(`location.hash === "#/sheet/gland-heat" && document.querySelector("main").textContent.includes("Drips under way, packing or face seal not named: 5")`)
}

// The answer of last time stands there before the calculator is up, says so,
// and is the one that comes; where anything changed that it was made from, it
// is not shown.
func TestAnswerBeforeTheCalculator(t *testing.T) {
	b := newTab(t, 360)
	b.keepDemonstration()
	b.open("#/sheet/bolt-preload")
	b.until(`localStorage.getItem('marinecalc.answer.bolt-preload')`)
	b.beforePage(`new MutationObserver((_, watch) => {
		const main = document.querySelector('main');
		if (!main?.querySelector('.answers')) return;
		watch.disconnect();
		window.early = { said: main.querySelector('.answer > .from')?.textContent ?? '', value: main.querySelector('.answers .value').textContent };
	}).observe(document, { childList: true, subtree: true });`)
	b.open("#/sheet/bolt-preload")
	if said := eval[string](b, "early.said"); said != "As last calculated; nothing has changed since." {
		t.Errorf("the answer of before says %q", said)
	}
	if !eval[bool](b, "early.value === document.querySelector('.answers .value').textContent && !document.querySelector('.answer > .from')") {
		t.Errorf("before the calculator: %s, by it: %s", eval[string](b, "early.value"), b.text(".answers .value"))
	}
	b.beforePage(`if (location.protocol === 'file:') localStorage.setItem('marinecalc.units', '"both"')`) // by the page's own process: another's may come too late
	b.open("#/sheet/bolt-preload")
	if said := eval[string](b, "early.said"); said != "" {
		t.Errorf("in other units: %q", said)
	}
}
