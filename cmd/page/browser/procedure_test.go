package browser

import (
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"

	"example.org/driveline/cmd/page/assemble"
)

// mostPages is how much paper work may take, A4, with its cautions, figures and
// lines to write on: two pages for most, three where flange, mounts, shaft or
// gearbox come off or two are done together.
var mostPages = []struct {
	work  string
	pages int
}{
	{"repack-gland", 2}, {"align-coupling", 2}, {"replace-propeller", 2}, {"replace-coupling-bolts", 2}, {"repack-gland,align-coupling", 3},
	{"replace-mounts", 3}, {"replace-output-flange", 3}, {"replace-stern-bearing", 3}, {"replace-gearbox", 3},
}

// keptSteps is what the browser keeps of the steps of the boat in hand.
const keptSteps = `(boats.at(-1).boat.work?.steps ?? [])`

// A piece of work is gone through on a telephone: from the list to the first
// step, its cautions before its tick, ticked off, loaded anew and still ticked,
// taken back, undone; by the keyboard alone too.
func TestProcedureIsTickedOff(t *testing.T) {
	b := newTab(t, 360)
	b.keepDemonstration()
	b.open("#/procedure")
	if !eval[bool](b, `[...document.querySelectorAll('.cards a')].some((a) => a.textContent === 'Bring the coupling into line')`) {
		t.Fatal("the list has no alignment of the coupling")
	}
	b.open("#/procedure/repack-gland,align-coupling")
	first := eval[string](b, `document.querySelector('details.step[open]').dataset.step`)
	if n := eval[int](b, `document.querySelectorAll('details.step[open]').length`); n != 1 {
		t.Errorf("%d steps stand open", n)
	}
	if !eval[bool](b, `(() => {
		const open = document.querySelector('details.step:has(.hazard)');
		open.open = true;
		const hazard = open.querySelector('.hazard'), tick = open.querySelector('button.tick');
		return hazard.checkVisibility() && !!(hazard.compareDocumentPosition(tick) & Node.DOCUMENT_POSITION_FOLLOWING) && tick.getBoundingClientRect().height >= 44;
	})()`) {
		t.Error("the caution does not stand before the tick, or the tick is smaller than a thumb")
	}
	eval[any](b, fmt.Sprintf(`document.querySelector('details[data-step=%q]').open = true`, first))
	b.until(`document.querySelectorAll('details.step[open]').length === 1`)
	if said := b.text(".progress"); !strings.Contains(said, "0 of ") {
		t.Errorf("progress: %s", said)
	}
	canEnd := `[...document.querySelectorAll('button')].some((e) => e.textContent === 'End this work' && e.checkVisibility())`
	if eval[bool](b, canEnd) {
		t.Error("work that is not begun can be ended")
	}
	b.press("Done: tick off step 1")
	b.until(`document.querySelector('.progress').textContent.includes('1 of ')`)
	if !eval[bool](b, canEnd) {
		t.Error("work that is begun cannot be ended")
	}
	if second := eval[string](b, `document.querySelector('details.step[open]').dataset.step`); second == first {
		t.Errorf("%s still stands open", first)
	}
	if !eval[bool](b, `document.activeElement.closest('details.step')?.open === true && document.activeElement.tagName === 'SUMMARY'`) {
		t.Error("the next step is not where the keyboard is")
	}
	b.open("#/procedure/repack-gland,align-coupling")
	if said := b.text(".progress"); !strings.Contains(said, "1 of ") || kept[int](b, keptSteps+`.filter((s) => s.done).length`) != 1 {
		t.Errorf("not ticked after loading anew: %s", said)
	}

	for _, hash := range []string{"#/", "#/survey", "#/procedure"} {
		b.open(hash)
		b.until(`[...document.querySelectorAll('.cards li, .begun')].some((e) => /1 of \d+ (ticked off|done)/.test(e.textContent))`)
	}
	eval[any](b, `new Promise((done) => {
		const db = indexedDB.open('marinecalc', 1);
		db.onsuccess = () => {
			const act = db.result.transaction('boats', 'readwrite');
			const all = act.objectStore('boats').getAll();
			all.onsuccess = () => act.objectStore('boats').put({ ...all.result.at(-1), typed: { 'work-plan': { today: '2026-11-27', remedies: [{ remedy: 'repack-gland' }, { remedy: 'align-coupling' }] } } });
			act.oncomplete = () => { db.result.close(); done(0); };
		};
	})`)
	b.open("#/sheet/work-plan")
	b.until(`document.querySelector('.to-work a[href="#/procedure/align-coupling,repack-gland"], .to-work a[href="#/procedure/repack-gland,align-coupling"]')`)
	b.open("#/procedure/repack-gland,align-coupling")
	b.press("Done: tick off step 2")
	b.until(`document.querySelector('.progress').textContent.includes('2 of ')`)
	b.press("Undo")
	b.until(`document.querySelector('.progress').textContent.includes('1 of ')`)
	eval[any](b, fmt.Sprintf(`document.querySelector('details[data-step=%q]').open = true`, first))
	b.until(`document.querySelectorAll('details.step[open]').length === 1`)
	b.press("Take the tick back")
	b.until(`document.querySelector('.progress').textContent.includes('0 of ')`)

	// The keyboard alone: to the tick of the open step and press it.
	eval[any](b, `document.querySelector('details.step[open] > summary').focus()`)
	for range 60 {
		b.do(chromedp.KeyEvent(kb.Tab))
		if eval[bool](b, `document.activeElement.matches('button.tick')`) {
			break
		}
	}
	b.do(chromedp.KeyEvent(kb.Enter))
	b.until(`document.querySelector('.progress').textContent.includes('1 of ')`)

	b.press("End this work")
	b.until(`document.querySelector('.progress').textContent.includes('0 of ')`)
	if n := kept[int](b, `boats.at(-1).boat.events.filter((e) => e.what.includes('1 of ')).length`); n != 1 {
		t.Errorf("%d events say that the work was done", n)
	}

	b.open("#/procedure/repack-glnd")
	if said := b.text("main"); !strings.Contains(said, "repack-gland") {
		t.Errorf("a slip in the address: %s", said)
	}
}

// What is read at a step becomes a reading of the boat at once, and what the
// boat does not take is said at its field and not kept.
func TestProcedureKeepsReadings(t *testing.T) {
	b := newTab(t, 1280)
	b.keepDemonstration()
	b.open("#/procedure/ease-stern-bearing")
	field := `details.step .record .field:has(.unit) input`
	if !eval[bool](b, fmt.Sprintf(`!!document.querySelector(%q)`, field)) {
		t.Fatal("no step of this work asks for a reading with a unit")
	}
	eval[any](b, fmt.Sprintf(`document.querySelector(%q).closest('details.step').open = true`, field))
	before := kept[string](b, `JSON.stringify(boats.at(-1).boat.readings)`)
	b.write(field, "songs")
	b.until(fmt.Sprintf(`document.querySelector(%q).closest('.record').querySelector(':scope > .wrong').textContent !== ''`, field))
	if after := kept[string](b, `JSON.stringify(boats.at(-1).boat.readings)`); after != before {
		t.Errorf("kept: %s", after)
	}
	b.write(field, "70")
	b.until(fmt.Sprintf(`document.querySelector(%q).closest('.record').querySelector(':scope > .from').textContent === 'Kept.'`, field))
	if after := kept[string](b, `JSON.stringify(boats.at(-1).boat.readings)`); after == before {
		t.Error("nothing was kept")
	}
}

// The views of the work at both widths: nothing sideways, targets of thumb
// size, nothing against WCAG 2.2 AA; and on paper no more than mostPages.
func TestProcedureLayout(t *testing.T) {
	root, err := assemble.Root()
	if err != nil {
		t.Fatal(err)
	}
	axe, axeErr := os.ReadFile(filepath.Join(root, "site", "node_modules", "axe-core", "axe.min.js"))
	shots := os.Getenv("MARINECALC_SHOTS")
	for _, width := range []int64{360, 1280} {
		b := newTab(t, width)
		b.keepDemonstration()
		for _, v := range []struct{ name, hash string }{{"work", "#/procedure"}, {"procedure", "#/procedure/repack-gland,align-coupling"}, {"bearing", "#/procedure/ease-stern-bearing"}} {
			b.open(v.hash)
			eval[any](b, `(() => { const s = document.querySelector('details.step:has(.pictures, .record)'); if (s) s.open = true; })()`)
			if shots != "" {
				picture, err := chromedp.Run(b.ctx, chromedp.FullScreenshot(100))
				if err == nil {
					err = os.WriteFile(filepath.Join(shots, fmt.Sprintf("%s-%d.png", v.name, width)), picture, 0o644)
				}
				if err != nil {
					t.Error(err)
				}
			}
			eval[any](b, "for (const d of document.querySelectorAll('details')) { d.removeAttribute('name'); d.open = true }")
			if wide := eval[int](b, "document.documentElement.scrollWidth"); wide > int(width) {
				t.Errorf("%s at %d: %d px wide: %s", v.name, width, wide, eval[string](b, fmt.Sprintf(`[...document.querySelectorAll('main *')]
					.filter((e) => e.getBoundingClientRect().right > %d).map((e) => e.outerHTML.slice(0, 160)).slice(0, 3).join('\n')`, width)))
			}
			if small := eval[[]string](b, `[...document.querySelectorAll('button, input, select, summary, nav a')]
				.filter((e) => e.checkVisibility() && e.getBoundingClientRect().height < 43.9).map((e) => e.outerHTML.slice(0, 120))`); len(small) > 0 {
				t.Errorf("%s at %d: less than 44 px high: %q", v.name, width, small)
			}
			if axeErr == nil {
				eval[any](b, string(axe)+"; undefined")
				for _, found := range eval[[]struct {
					ID, Help string
					Nodes    []string
				}](b, `axe.run(document, { runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'] }).then((r) =>
					r.violations.map(({ id, help, nodes }) => ({ ID: id, Help: help, Nodes: nodes.slice(0, 3).map((n) => n.html.slice(0, 200) + ' ' + n.failureSummary) })))`) {
					t.Errorf("%s at %d: %s: %s\n%q", v.name, width, found.ID, found.Help, found.Nodes)
				}
			}
		}
	}
	b := newTab(t, 1280)
	b.keepDemonstration()
	var paper []byte
	for _, c := range mostPages {
		b.open("#/procedure/" + c.work)
		if paper, err = chromedp.Run(b.ctx, chromedp.PrintToPDF(chromedp.PDFPreferCSSPageSize())); err != nil {
			t.Fatal(err)
		}
		if pages := len(regexp.MustCompile(`/Type\s*/Page[^s]`).FindAll(paper, -1)); pages < 1 || pages > c.pages {
			t.Errorf("%s: %d pages on paper, want at most %d", c.work, pages, c.pages)
		} else {
			t.Logf("%s: %d pages on paper", c.work, pages)
		}
	}
	if shots != "" {
		b.do(chromedp.EmulateViewport(794, 1123))
		b.print()
		if err := os.WriteFile(filepath.Join(shots, "procedure.pdf"), paper, 0o644); err != nil {
			t.Error(err)
		}
		b.open("#/procedure/repack-gland,align-coupling")
		eval[any](b, "dispatchEvent(new Event('beforeprint'))")
		picture, err := chromedp.Run(b.ctx, chromedp.FullScreenshot(100))
		if err == nil {
			err = os.WriteFile(filepath.Join(shots, "procedure-print.png"), picture, 0o644)
		}
		if err != nil {
			t.Error(err)
		}
	}
}
