package browser

import (
	"encoding/json"
	"fmt"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"

	"example.org/driveline/marinecalc"
)

// views are all views of the page, each with what is there once it is drawn.
var views = []struct{ name, hash, ready string }{
	{"home", "#/", ".tile .sign"},
	{"part", "#/part/coupling", ".sheets"},
	{"list", "#/calculations", ".cards"},
	{"boat", "#/boat", ".form"},
	{"survey", "#/survey", ".paper"},
	{"compare", "#/compare", "h1[tabindex]"},
	{"readings", "#/readings", "[aria-labelledby=series-title]"},
	{"checks", "#/checks", "#view details"},
	{"shaft-torque", "#/sheet/shaft-torque", ".answers"},
	{"bolt-preload", "#/sheet/bolt-preload", ".answers"},
	{"gland-heat", "#/sheet/gland-heat", ".answers"},
	{"coupling-alignment", "#/sheet/coupling-alignment", ".answers"},
}

// The scenario of these tests, our own: a 24 kW diesel at 2.15:1, a 30 mm
// shaft with a packed gland, M10 class 8.8 coupling bolts, and a coupling
// that stands open at the top.
var example = map[string]string{
	"shaft-torque": `{"enginePower":"24 kW","engineSpeed":"2800 rpm","gearRatioAhead":"2.15"}`,
	"bolt-preload": `{"thread":"M10x1.5","grade":"iso-8.8","finish":"zinc-shigley"}`,
	"gland-heat": `{"shaftDiameter":"30 mm","boxBore":"46 mm","packedLength":"32 mm","packing":"flax","shaftSpeed":"1300 rpm",
		"dripRate":"6 drips/min","waterTemperature":"18 °C","wantedRise":"10 K","water":"sea","shaftAlloy":"s31600-annealed"}`,
	"coupling-alignment": `{"couplingDiameter":"102 mm","couplingKind":"rigid","readings":[{"clock":"0°","gap":"0.42 mm"},
		{"clock":"90°","gap":"0.37 mm"},{"clock":"180°","gap":"0.30 mm"},{"clock":"270°","gap":"0.36 mm"}]}`,
}

// keepExample puts a boat in hand and what the example types for it where the
// page keeps them between visits.
func (b *tab) keepExample() {
	b.t.Helper()
	typed := map[string]json.RawMessage{}
	for id, input := range example {
		typed[id] = json.RawMessage(input)
	}
	text, err := json.Marshal(typed)
	if err != nil {
		b.t.Fatal(err)
	}
	eval[any](b, fmt.Sprintf(`
		localStorage.setItem('marinecalc.boats', JSON.stringify([{ id: 'example', boat: { name: 'Ternlet',
			engine: { power: '24 kW', speed: '2800 rpm' }, gearbox: { ratioAhead: '2.15' } } }]));
		localStorage.setItem('marinecalc.typed.example', JSON.stringify(%s));`, text))
	b.open("")
}

// keepDemonstration puts a demonstration boat in hand, with which most
// calculations have a sheet.
func (b *tab) keepDemonstration() {
	b.t.Helper()
	b.open("#/boat")
	b.press("Demonstration: ")
}

// press presses the button whose label begins so.
func (b *tab) press(label string) {
	b.t.Helper()
	if !eval[bool](b, fmt.Sprintf(`(() => {
		const found = [...document.querySelectorAll('button')].find((b) => b.textContent.startsWith(%q));
		found?.click();
		return !!found;
	})()`, label)) {
		b.t.Fatalf("no button %q", label)
	}
}

// native gives the text of a result as the Go library has it, for the same
// input: the page must show that and nothing else.
func native(t *testing.T, calculation, input, result string) string {
	t.Helper()
	request := fmt.Sprintf(`{"ask":"run","calculation":%q,"units":"metric","input":%s}`, calculation, input)
	var reply struct {
		Sheet struct {
			Results []struct{ Name, Text string }
		}
	}
	raw := marinecalc.Call([]byte(request))
	if err := json.Unmarshal(raw, &reply); err != nil {
		t.Fatal(err)
	}
	for _, r := range reply.Sheet.Results {
		if r.Name == result {
			return r.Text
		}
	}
	t.Fatalf("no result %q in %s", result, raw)
	return ""
}

func value(result string) string { return fmt.Sprintf("[data-result=%s] .value", result) }

func TestTypeABoltReadTheTorque(t *testing.T) {
	b := newTab(t, 1280)
	b.open("#/sheet/bolt-preload")
	if missing := b.text(".summary"); !strings.Contains(missing, "Thread") || !strings.Contains(missing, "Grade") {
		t.Errorf("an empty form does not say that thread and grade are needed: %s", missing)
	}
	b.choose("#in-thread", "M10x1.5")
	b.choose("#in-grade", "iso-8.8")
	b.choose("#in-finish", "zinc-shigley")
	want := native(t, "bolt-preload", example["bolt-preload"], "wrenchSetting")
	if got := b.text(value("wrenchSetting")); got != want {
		t.Errorf("wrench setting %q, the library says %q", got, want)
	}
	b.write("#in-nominalDiameter", "9.8") // a bare number is read in the unit beside the field
	want = native(t, "bolt-preload", strings.Replace(example["bolt-preload"], "{", `{"nominalDiameter":"9.8 mm",`, 1), "wrenchSetting")
	b.until(fmt.Sprintf("document.querySelector(%q)?.textContent === %q", value("wrenchSetting"), want))
	b.do(chromedp.KeyEvent(kb.Tab))
	if got := eval[string](b, "document.querySelector('#in-nominalDiameter').value"); got != "9.8 mm" {
		t.Errorf("after leaving the field it shows %q, want the unit spelled out", got)
	}
}

func TestTypeGapsReadTheAngle(t *testing.T) {
	b := newTab(t, 1280)
	b.open("#/sheet/coupling-alignment")
	for i, gap := range []string{"0.42", "0.37", "0.30", "0.36"} {
		b.write(fmt.Sprintf("#in-readings-%d-gap", i), gap)
	}
	b.write("#in-couplingDiameter", "102")
	b.choose("#in-couplingKind", "rigid")
	want := native(t, "coupling-alignment", example["coupling-alignment"], "angle")
	b.until(fmt.Sprintf("document.querySelector(%q)?.textContent === %q", value("angle"), want))
	if n := eval[int](b, "document.querySelectorAll('.drawing svg circle').length"); n == 0 {
		t.Error("the coupling face is not drawn")
	}
}

func TestBadInputShowsAtItsFieldAndIsKept(t *testing.T) {
	b := newTab(t, 1280)
	b.open("")
	b.keepExample()
	b.open("#/sheet/bolt-preload")
	b.text(".answers")
	const field = "#in-nominalDiameter"
	b.write(field, "wide")
	// The sheet follows every key: wait for the last one.
	b.until(`document.getElementById("in-nominalDiameter-wrong").textContent.includes("wide")`)
	if !eval[bool](b, `document.querySelector("#in-nominalDiameter").getAttribute("aria-invalid") === "true"`) {
		t.Error("the field is not marked")
	}
	about := eval[[]string](b, `document.querySelector("#in-nominalDiameter").getAttribute("aria-describedby").split(" ")`)
	var said strings.Builder
	for _, id := range about {
		said.WriteString(eval[string](b, fmt.Sprintf("document.getElementById(%q).textContent", id)))
	}
	if !strings.Contains(said.String(), "wide") {
		t.Errorf("what describes the field does not name the problem: %s", &said)
	}
	if said := b.text(".answer.stale .left-out"); !strings.Contains(said, "Thread diameter") {
		t.Errorf("the answer from before does not say what it goes without: %q", said)
	}
	b.open("#/sheet/bolt-preload")
	if got := eval[string](b, `document.querySelector("#in-nominalDiameter").value`); got != "wide" {
		t.Errorf("after a reload the field holds %q, want what was typed", got)
	}
	b.write(field, "10 mm")
	b.until(`document.querySelector("#in-nominalDiameter").value === "10 mm" && document.querySelector(".answers")
		&& !document.querySelector("#in-nominalDiameter").hasAttribute("aria-invalid")`)
}

func TestBackWorks(t *testing.T) {
	b := newTab(t, 1280)
	b.open("#/calculations")
	b.do(chromedp.Click(chromedp.CSS(`.cards a[href="#/sheet/bolt-preload"]`)))
	b.until(`document.querySelector("h1").textContent === "Bolt preload" && document.activeElement === document.querySelector("h1")`)
	b.do(chromedp.NavigateBack())
	b.until(`document.querySelector(".cards")`)
}

func TestUnitsChangeTheSheet(t *testing.T) {
	b := newTab(t, 1280)
	b.open("")
	b.keepExample()
	b.open("#/sheet/bolt-preload")
	for units, sign := range map[string]string{"us": "lbf", "both": "(", "metric": "N·m"} {
		b.choose("#units", units)
		if got := b.text(value("wrenchSetting")); !strings.Contains(got, sign) {
			t.Errorf("units %s: %q has no %q", units, got, sign)
		}
	}
}

func TestVerdictsAreSpoken(t *testing.T) {
	b := newTab(t, 1280)
	b.open("")
	b.keepExample()
	b.open("#/sheet/coupling-alignment")
	if live := eval[string](b, `document.querySelector("#spoken").getAttribute("aria-live")`); live != "polite" {
		t.Errorf("aria-live is %q", live)
	}
	b.until(`document.querySelector("#spoken").textContent !== ""`)
	before := b.text("#spoken")
	for i, gap := range []string{"0.60 mm", "0.30 mm", "0.05 mm", "0.30 mm"} { // a plane: readings that do not fit one tell nothing
		b.write(fmt.Sprintf("#in-readings-%d-gap", i), gap)
	}
	b.until(fmt.Sprintf(`(said => said !== %q && said.includes("over the limit"))(document.querySelector("#spoken").textContent.trim())`, before))
	if said := b.text("#spoken"); !strings.Contains(said, "over the limit") {
		t.Errorf("the changed verdict is not spoken: %q", said)
	}
}

// A problem at a field whose value came from a table is told in full, not as
// something still needed.
func TestProblemAtAnEmptyFieldIsTold(t *testing.T) {
	b := newTab(t, 1280)
	b.open("")
	b.keepExample()
	b.open("#/sheet/bolt-preload")
	b.write("#in-nominalDiameter", "12 mm") // thicker than the hole that the table gives for M10
	if said := b.text("#in-holeDiameter-wrong"); !strings.Contains(said, "hole") {
		b.until(`document.querySelector("#in-holeDiameter-wrong").textContent.includes("hole")`)
	}
	if said := b.text(".summary"); strings.Contains(said, "Still needed") {
		t.Errorf("the mistake counts as something missing: %s", said)
	}
}

// A person with a keyboard alone opens a calculation, fills it in and reads
// the result; the focus can be seen at every stop.
func TestKeyboardAlone(t *testing.T) {
	b := newTab(t, 1280)
	b.open("")
	focus := func() string {
		return eval[string](b, `(() => {
			const e = document.activeElement, s = getComputedStyle(e);
			if (e === document.body) return 'body';
			if (s.outlineStyle === 'none' || parseFloat(s.outlineWidth) < 2) return 'unseen focus: ' + e.outerHTML.slice(0, 200);
			const r = e.getBoundingClientRect();
			if (r.bottom < 0 || r.top > innerHeight) return 'focus out of sight: ' + e.outerHTML.slice(0, 200);
			return e.id || e.getAttribute('href') || e.textContent;
		})()`)
	}
	tabTo := func(want string) {
		t.Helper()
		var seen []string
		for range 120 {
			b.do(chromedp.KeyEvent(kb.Tab))
			at := focus()
			if strings.HasPrefix(at, "unseen") || strings.HasPrefix(at, "focus out") {
				t.Error(at)
			}
			if at == want {
				return
			}
			seen = append(seen, at)
		}
		t.Fatalf("Tab never reaches %q, only %q", want, seen)
	}
	b.do(chromedp.KeyEvent(kb.Tab))
	if at := focus(); at != "#view" {
		t.Errorf("the first stop is %q, want the skip link", at)
	}
	b.do(chromedp.KeyEvent(kb.Enter))
	if id := eval[string](b, "document.activeElement.id"); id != "view" {
		t.Errorf("the skip link leads to %q", id)
	}
	tabTo("#/sheet/bolt-preload")
	b.do(chromedp.KeyEvent(kb.Enter))
	b.until(`document.querySelector("#in-thread")`)
	tabTo("in-thread")
	b.do(chromedp.KeyEvent("M10 × 1.5"))
	tabTo("in-grade")
	b.do(chromedp.KeyEvent("ISO 898-1 class 8.8"))
	tabTo("in-finish")
	b.do(chromedp.KeyEvent("Zinc plated, dry (S"))
	want := native(t, "bolt-preload", example["bolt-preload"], "wrenchSetting")
	if got := b.text(value("wrenchSetting")); got != want {
		t.Errorf("wrench setting %q, want %q", got, want)
	}
	tabTo("Why: numbers, working, sources")
	b.do(chromedp.KeyEvent(" "))
	tabTo("How it was calculated")
	b.do(chromedp.KeyEvent(" "))
	b.until(`document.activeElement.parentElement.open`)
}

func TestPrintShowsTheSheetAlone(t *testing.T) {
	b := newTab(t, 1280)
	b.open("")
	b.keepExample()
	b.open("#/sheet/bolt-preload")
	b.text(".answers")
	b.print()
	shows := func(what string, all map[string]bool) {
		t.Helper()
		for selector, want := range all {
			if got := eval[bool](b, fmt.Sprintf("!!document.querySelector(%q)?.checkVisibility()", selector)); got != want {
				t.Errorf("%s: %s shown in print: %t, want %t", what, selector, got, want)
			}
		}
	}
	eval[any](b, `dispatchEvent(new Event('beforeprint'))`)
	shows("a card", map[string]bool{".known": false, ".top": false, ".card .hazard": true, ".card .value": true, ".boxes": true, ".work": false})
	eval[any](b, `dispatchEvent(new Event('afterprint')); window.print = () => dispatchEvent(new Event('beforeprint'))`)
	b.press("Print with working")
	shows("with working", map[string]bool{".known": false, ".top": false, ".answer .hazard": true, ".answers": true, ".work": true, ".of-boat": true, ".card": false})
}

// On a boat of which nothing is known, no figure stands in any form: what a
// list begins with tells its rows apart and is no reading.
func TestNoFigureStandsThatNobodyTyped(t *testing.T) {
	b := newTab(t, 1280)
	b.open("")
	for _, c := range marinecalc.Calculations() {
		b.turn("#/sheet/" + c.ID)
		b.until(`document.querySelector(".sheet > *")`)
		if stands := eval[[]string](b, `[...document.querySelectorAll('.form input:not([type=date])')]
			.filter((e) => /\d/.test(e.value) && !e.id.endsWith('-clock')).map((e) => e.id + ' ' + e.value)`); len(stands) > 0 {
			t.Errorf("%s: %q", c.ID, stands)
		}
	}
}

// What was typed on a sheet is kept with the boat: the sheet takes it from
// there, other sheets have it, and the boat's view says what is on sheets only.
