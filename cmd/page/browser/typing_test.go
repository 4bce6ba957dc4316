package browser

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// What is wrong with what one types is told to the ear at once and to the eye
// when the field is left; the next field stays where the thumb goes.
func TestNothingMovesUnderTheThumb(t *testing.T) {
	for _, width := range []int64{360, 1280} {
		b := newTab(t, width)
		b.open("#/sheet/bolt-preload")
		const wrong = `document.querySelector("#in-torqueUsed-wrong")`
		b.write("#in-torqueUsed", "5")
		top := func() int {
			// As it is painted: what grew above is made good before that.
			return eval[int](b, `new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(() => done(Math.round(document.querySelector("#in-headBearingDiameter").getBoundingClientRect().top)))))`)
		}
		eval[any](b, `document.querySelector("#in-torqueUsed").scrollIntoView({block: "center"})`)
		before := top()
		same := func(when string) {
			t.Helper()
			if now := top(); now < before-1 || now > before+1 {
				t.Errorf("width %d, %s: the next field went from %d to %d", width, when, before, now)
			}
		}
		b.write("#in-torqueUsed", "wide")
		b.until(wrong + `.textContent.includes("wide") && document.querySelector("#spoken").textContent.includes("wide")`)
		if tall := eval[int](b, wrong+`.offsetHeight`); tall > 1 {
			t.Errorf("width %d: while one types the message is %d px tall", width, tall)
		}
		same("typing")
		eval[any](b, `document.querySelector("#in-headBearingDiameter").focus({preventScroll: true})`)
		b.until(wrong + `.offsetHeight > 20`)
		same("the message shown")
		eval[any](b, `document.querySelector("#in-torqueUsed").focus({preventScroll: true})`)
		b.write("#in-torqueUsed", "32 N·m")
		b.until(wrong + `.textContent === ""`)
		same("mended")
		eval[any](b, `document.querySelector("#in-headBearingDiameter").focus({preventScroll: true})`)
		b.until(wrong + `.offsetHeight === 0`)
		same("the message gone")
		b.write("#in-torqueUsed", "wide"+kb.Enter)
		b.until(wrong + `.offsetHeight > 20`)
	}
}

// What is wrong with a gap is told by its place on the face, and the way to it
// leads to that place.
func TestGapIsCalledByItsPlace(t *testing.T) {
	b := newTab(t, 360)
	b.open("#/sheet/coupling-alignment")
	eval[any](b, `document.querySelector(".spot").click()`)
	for _, gap := range []string{"0.42", "0.37", "tight", "0.36"} {
		b.do(chromedp.KeyEvent(gap + kb.Enter))
	}
	b.until(`document.querySelector(".summary .link")?.textContent === "Gap at 6 o'clock"`)
	eval[any](b, `document.querySelector(".summary .link").click()`)
	if at := eval[string](b, `document.activeElement.closest(".hub")?.querySelector("label").textContent + ": " + document.activeElement.value`); at != "Gap, 6 o'clock, mm: tight" {
		t.Errorf("the way to it leads to %q", at)
	}
}

// The line at the foot has figure and verdict whole, also behind the words
// that it is an answer from before.
func TestFootIsReadWhole(t *testing.T) {
	b := newTab(t, 360)
	b.demonstrate("Kittiwake")
	for _, c := range []struct{ sheet, verdict string }{{"shaft-strength", "over the limit"}, {"coupling-grip", "not enough to tell"}, {"mount-moves", "OK"}} {
		b.open("#/sheet/" + c.sheet)
		b.until(`document.querySelector(".peek")?.textContent`)
		seen := eval[string](b, `(() => {
			const foot = document.querySelector(".peek");
			foot.hidden = false;
			foot.textContent = "The answer from before: " + foot.textContent;
			const box = foot.getBoundingClientRect(), range = document.createRange(), text = foot.firstChild;
			return [...text.data].filter((_, i) => {
				range.setStart(text, i);
				range.setEnd(text, i + 1);
				const r = range.getBoundingClientRect();
				return r.bottom <= box.bottom && r.right <= box.right;
			}).join("").replaceAll("\u00a0", " ");
		})()`)
		figure := strings.ReplaceAll(b.text(".first .value"), " ", " ")
		if c.sheet == "mount-moves" && !strings.Contains(seen, "flat") {
			t.Errorf("%s: of the line at the foot %q is seen, and no nut", c.sheet, seen)
		}
		if !strings.Contains(seen, c.verdict) || len(figure) < 15 && !strings.Contains(seen, figure) {
			t.Errorf("%s: of the line at the foot %q is seen, of %q", c.sheet, seen, figure)
		}
	}
}

// A long pick stands whole in its entry, wherever this stands.
func TestLongPicksAreWhole(t *testing.T) {
	b := newTab(t, 360)
	b.open("#/sheet/bolt-preload")
	b.unfold("#in-tighteningMethod")
	for _, id := range []string{"in-tighteningMethod", "in-finish"} {
		eval[any](b, fmt.Sprintf(`(() => {
			const pick = document.getElementById(%q);
			pick.value = [...pick.options].sort((a, b) => b.text.length - a.text.length)[0].value;
			pick.dispatchEvent(new Event("change"));
		})()`, id))
		b.until(fmt.Sprintf(`document.getElementById(%q).matches(".wordier")`, id))
		if cut := eval[string](b, fmt.Sprintf(`(() => {
			const pick = document.getElementById(%q), style = getComputedStyle(pick), pen = document.createElement("canvas").getContext("2d");
			pen.font = style.font;
			const words = pick.selectedOptions[0].text;
			const lines = Math.ceil(pen.measureText(words).width / (pick.clientWidth - parseFloat(style.paddingLeft) - parseFloat(style.paddingRight) - 20));
			return style.whiteSpace === "normal" && lines * 1.17 * parseFloat(style.fontSize) <= pick.clientHeight ? "" : words;
		})()`, id)); cut != "" {
			t.Errorf("%s: %q is cut", id, cut)
		}
	}
}

// Sheet and card say the same of the first pair of nuts: half, then a reading.
func TestCardAndNutsSayHalfFirst(t *testing.T) {
	b := newTab(t, 360)
	b.demonstrate("Kittiwake")
	b.open("#/sheet/mount-moves")
	const said = "an eighth of a flat, or leave it" // half of the quarter flat that these turn by
	b.until(`document.querySelectorAll(".nut").length === 4`)
	if then := b.text(".move-it .then"); !strings.Contains(then, said) {
		t.Errorf("the sheet says %q", then)
	}
	if n := eval[int](b, `[...document.querySelectorAll(".nut")].filter((e) => e.textContent.includes("first an eighth of a flat")).length`); n != 2 {
		t.Errorf("%d nuts say what half is, want the two that are turned", n)
	}
	eval[any](b, `dispatchEvent(new Event("beforeprint"))`)
	if card := b.text(".card"); !strings.Contains(card, said) {
		t.Errorf("the card says %q", card)
	}
}

// A price is read as people type it; a bare one takes the one currency that all
// others have, and that is said, at the field and to the ear.
func TestPricesAsTyped(t *testing.T) {
	b := newTab(t, 360)
	b.open("#/sheet/repair-or-replace")
	b.write("#in-repairParts", "1500"+kb.Tab)
	b.until(`document.querySelector("#in-repairParts-wrong").textContent.includes("needs its currency")`)
	b.write("#in-repairParts", "1,500 usd"+kb.Tab)
	b.until(`document.querySelector("#in-repairParts").value === "1500 USD"`)
	b.write("#in-replaceParts", "200"+kb.Tab)
	const said = "Read as 200 USD"
	b.until(fmt.Sprintf(`document.querySelector("#in-replaceParts-from").textContent.includes(%q)`, said))
	if tall := eval[int](b, `document.querySelector("#in-replaceParts-from").offsetHeight`); tall < 20 {
		t.Errorf("what the bare amount was read as is %d px tall", tall)
	}
	if got := eval[string](b, `document.querySelector("#in-replaceParts").value`); got != "200 USD" {
		t.Errorf("the field shows %q", got)
	}
	b.until(fmt.Sprintf(`document.querySelector("#spoken").textContent.includes(%q)`, said))
}

// What is the same for all mounts is typed once and copied, and taken back.
func TestMountsAlike(t *testing.T) {
	b := newTab(t, 360)
	b.open("#/sheet/mount-load")
	eval[any](b, `(() => {
		for (const fold of document.querySelectorAll(".list details")) {
			fold.open = true;
			fold.dispatchEvent(new Event("toggle"));
		}
	})()`)
	b.write("#in-mounts-0-stiffness", "115"+kb.Tab)
	stiff := func() string {
		return eval[string](b, `[0, 1, 2, 3].map((i) => document.querySelector("#in-mounts-" + i + "-stiffness").value).join()`)
	}
	b.press("Copy to all rows: Stiffness, new 115 N/mm")
	if got := stiff(); got != "115 N/mm,115 N/mm,115 N/mm,115 N/mm" {
		t.Errorf("copied: %s", got)
	}
	b.do(chromedp.KeyEvent(kb.Enter)) // Undo has the focus
	if got := stiff(); got != "115 N/mm,,," {
		t.Errorf("taken back: %s", got)
	}
}

// A pick is found by what people type of it.
func TestPicksAreFoundByAnyWord(t *testing.T) {
	b := newTab(t, 1280)
	b.open("#/sheet/bolt-preload")
	for _, c := range []struct{ typed, want string }{{"grade 8", "SAE J429 grade 8"}, {"8.8", "ISO 898-1 class 8.8"}} {
		eval[any](b, `(document.activeElement.blur(), document.querySelector("#in-grade").focus(), new Promise((done) => setTimeout(done, 1100)))`)
		b.do(chromedp.KeyEvent(c.typed))
		b.until(fmt.Sprintf(`document.querySelector("#in-grade").selectedOptions[0].text === %q`, c.want))
	}
}

// A reading that grows is told right after it is logged, and on the page of its
// part; one that stands still with no limit, and the warmth of the sea, are not.
func TestGrowingReadingIsTold(t *testing.T) {
	b := newTab(t, 360)
	b.open("")
	eval[any](b, `localStorage.setItem('marinecalc.boats', JSON.stringify([{ id: 'wren', boat: { name: 'Wren', readings:
		[['2026-09-01', 5], ['2026-09-20', 8], ['2026-10-20', 14], ['2026-11-01', 14]].map(([date, n]) => ({ date, dripRate: n + ' drips/min',
			glandTemperature: '30 °C', waterTemperature: 2 * n + ' °C' })) } }]))`)
	b.open("#/readings")
	b.write("#day-dripRate", "25")
	b.press("Log these readings")
	const told = "From 5 drips/min to 25 drips/min"
	b.until(fmt.Sprintf(`document.querySelector(".daily [data-lead=dripRate]")?.textContent.replaceAll("\u00a0", " ").includes(%q)`, told))
	b.open("#/part/gland")
	b.until(fmt.Sprintf(`document.querySelector("[data-lead=dripRate]")?.textContent.replaceAll("\u00a0", " ").includes(%q)`, told))
	eval[any](b, `new Promise((done) => setTimeout(done, 3000))`)
	if others := eval[string](b, `[...document.querySelectorAll("[data-lead]:not([data-lead=dripRate])")].map((e) => e.textContent).join()`); others != "" {
		t.Errorf("it tells of %s", others)
	}
}

// What was typed on a sheet goes before what the boat has; where the boat was read
// since, the field says so, and a touch takes that.
func TestNewerReadingIsSaid(t *testing.T) {
	b := newTab(t, 360)
	b.open("")
	eval[any](b, `
		localStorage.setItem('marinecalc.boats', JSON.stringify([{ id: 'wren', boat: { name: 'Wren', readings: [{ date: '2026-03-01', dripRate: '30 drips/min', waterTemperature: '12 °C' }] } }]));
		localStorage.setItem('marinecalc.typed.wren', JSON.stringify({ 'gland-heat': { dripRate: '12 drips/min', waterTemperature: '12 °C', measuredGlandTemperature: '40 °C' } }));
		localStorage.setItem('marinecalc.days.wren', JSON.stringify({ 'gland-heat': '2026-05-01', 'gland-heat/dripRate': '2026-01-05', 'gland-heat/waterTemperature': '2026-01-05' }))`)
	b.open("#/sheet/gland-heat")
	if said := b.text(".newer"); !strings.Contains(strings.NewReplacer("\u00a0", " ", "\u2060", "").Replace(said), "newer reading: 2026-03-01, 30 drips/min") {
		t.Errorf("it says %q", said)
	}
	if n := eval[int](b, `document.querySelectorAll(".newer").length`); n != 1 {
		t.Errorf("%d fields say it, want the one that was read otherwise since", n)
	}
	eval[any](b, `document.querySelector(".newer button").click()`)
	b.until(`document.querySelector("#in-dripRate").value === "" && document.querySelector("#in-dripRate").placeholder.startsWith("30 drips/min") && !document.querySelector(".newer")`)
	b.press("Undo")
	b.until(`document.querySelector("#in-dripRate").value === "12 drips/min"`)
	b.write("#in-dripRate", "14")
	b.until(`!document.querySelector(".newer")`)
}

// Three figures after one point are cents to some and thousands to others: it is asked.
func TestWhichAmountIsAsked(t *testing.T) {
	b := newTab(t, 360)
	b.open("#/sheet/repair-or-replace")
	b.write("#in-repairParts", "1.500 €\r")
	b.until(`document.querySelectorAll(".which button").length === 2`)
	if said := eval[[]string](b, `[...document.querySelectorAll(".which button")].map((e) => e.textContent)`); !slices.Equal(said, []string{"1500 €", "1.50 €"}) {
		t.Errorf("it offers %q", said)
	}
	b.until(`document.querySelector(".answer .summary").textContent.includes("may be cents or thousands")`)
	eval[any](b, `document.querySelector(".which button").click()`)
	b.until(`document.querySelector("#in-repairParts").value === "1500 €" && !document.querySelector(".which button") && !document.querySelector(".answer .summary")?.textContent.includes("may be cents")`)
}

// Amounts of the boat in another currency are told by their titles, each with
// the way to where it stands.
func TestOtherCurrencyIsToldByTitles(t *testing.T) {
	b := newTab(t, 360)
	b.demonstrate("Kittiwake")
	b.open("#/sheet/repair-or-replace")
	b.write("#in-repairParts", "500 USD\r")
	b.until(`document.querySelector(".answer .wrong-list")?.textContent.includes("One failure costs besides")`)
	if said := b.text(".answer .wrong-list"); strings.Contains(said, "/choice") || strings.Contains(said, "/prices") || strings.Count(said, "nothing is converted") != 1 {
		t.Errorf("it says %q", said)
	}
	eval[any](b, `[...document.querySelectorAll(".answer .wrong-list a")].find((a) => a.textContent === "One failure costs besides").click()`)
	b.until(`document.activeElement.id === "boat-choice-failureCost" && document.activeElement.value === "900 EUR"`)
}
