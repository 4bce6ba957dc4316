package browser

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"time"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// What goes wrong on the way, as journeys: from the trouble to where a person
// knows of it and is at work again. They are walked after the others.
var troubles = []walk{
	{"two tabs on one boat, a note in one and a name in the other: both kept", true, 6, func(j *journey) {
		other := &journey{tab: j.beside(), screens: 1}
		address := eval[string](j.tab, `location.href`)
		for _, tab := range []*journey{j, other} {
			tab.do(chromedp.Navigate("about:blank"), chromedp.Navigate(address))
			tab.until(`document.querySelector("h1[tabindex]")`)
			tab.touch(`document.querySelector("#boat-now")`)
			tab.until(`document.querySelector('[data-holds~="name"]')`)
		}
		j.unfold("#boat-note")
		j.typeIn("#boat-note", "from the first tab")
		j.untilKept(`boats[0].boat.note === "from the first tab"`)
		other.unfold("#boat-name")
		other.typeIn("#boat-name", "Renamed")
		j.untilKept(`boats[0].boat.name === "Renamed" && boats[0].boat.note === "from the first tab"`)
		j.until(`document.querySelector("h1").textContent.includes("Renamed") || document.querySelector("#keeping").textContent.includes("another tab")`)
		j.touches, j.screens = j.touches+other.touches, max(j.screens, other.screens)
	}},
	{"the store is full: what is typed is told as not kept, and saved to a file", true, 4, func(j *journey) {
		j.anew(`IDBObjectStore.prototype.put = () => { throw new DOMException("full", "QuotaExceededError"); };
			const set = Storage.prototype.setItem; Storage.prototype.setItem = function () { throw new DOMException("full", "QuotaExceededError"); };`)
		j.touch(`document.querySelector("#boat-now")`)
		j.unfold("#boat-note")
		j.typeIn("#boat-note", "typed while the store is full")
		j.until(`document.querySelector("#keeping").textContent.trim() !== ""`)
		eval[any](j.tab, `{ const make = URL.createObjectURL; URL.createObjectURL = (blob) => { blob.text().then((text) => (window.saved = text)); return make(blob); }; }`)
		j.touch(`[...document.querySelectorAll("#keeping button, main button")].find((e) => e.textContent.trim().startsWith("Save") && e.checkVisibility())`)
		j.until(`window.saved?.includes("typed while the store is full")`)
	}},
	{"a browser that keeps nothing: told on home, the boat looked at all the same", false, 3, func(j *journey) {
		j.anew(`for (const name of ["indexedDB", "localStorage"]) Object.defineProperty(window, name, { get() { throw new DOMException("denied", "SecurityError"); } });`)
		j.until(`document.querySelector("#keeping").textContent.includes("keeps nothing")`)
		j.touch(`document.querySelector("#boat-now")`)
		j.touch(button("Saved boats"))
		j.touch(button("Demonstration: Kittiwake"))
		j.until(`document.querySelector("h1").textContent.startsWith("Boat: ")`)
	}},
	{"a damaged entry in the store: set aside and offered, the other boat there", true, 2, func(j *journey) {
		eval[any](j.tab, `new Promise((done, fail) => {
			const asked = indexedDB.open("marinecalc");
			asked.onerror = fail;
			asked.onsuccess = () => {
				const act = asked.result.transaction("boats", "readwrite");
				act.objectStore("boats").put({ id: "spoilt", boat: 7 });
				act.oncomplete = () => { asked.result.close(); done(); };
			};
		})`)
		j.anew("")
		j.touch(`document.querySelector("#boat-now")`)
		j.until(`document.querySelector("#damaged-title") && document.querySelector("h1").textContent.includes("Kittiwake")`)
	}},
	{"files that are no boat: cut short, a list, hostile, then a sound one", false, 8, func(j *journey) {
		j.touch(`document.querySelector("#boat-now")`)
		j.touch(button("Saved boats"))
		for _, c := range []struct{ text, says string }{
			{`{"name":"A","readings"`, "no JSON"},
			{`[1,2]`, "one JSON object"},
			{`{"__proto__":{"polluted":1},"name":"A","shaft":7}`, "/boat/shaft"},
		} {
			j.touch(button("Open a file"))
			j.give("json", "found.json", c.text)
			j.until(fmt.Sprintf(`document.querySelector('.shelf [role=alert]')?.textContent.includes(%q)`, c.says))
		}
		if eval[bool](j.tab, `"polluted" in {}`) {
			j.t.Error("a member of the file reached the page's own objects")
		}
		j.touch(button("Open a file"))
		j.give("json", "sound.json", `{"name":"<img src=x onerror=\"window.ran=1\">","units":"metric"}`)
		j.until(`document.querySelector("h1").textContent.includes("<img")`)
		if eval[bool](j.tab, `"ran" in window`) {
			j.t.Error("a boat's name ran as a script")
		}
	}},
	{"a file of forty megabytes: refused in words", false, 3, func(j *journey) {
		j.touch(`document.querySelector("#boat-now")`)
		j.touch(button("Saved boats"))
		j.touch(button("Open a file"))
		j.giveFile("huge.json", `{"name":"Huge","note":"`+strings.Repeat("x", 40<<20)+`"}`)
		j.until(`document.querySelector(".shelf [role=alert]")?.textContent.trim()`)
	}},
	{"a log of five thousand days, from its file to the charts", false, 5, func(j *journey) {
		var rows []string
		for i := range 5000 {
			rows = append(rows, fmt.Sprintf(`{"date":"%s","dripRate":"%d drips/min"}`, time.Date(2012, 1, 1, 0, 0, 0, 0, time.UTC).AddDate(0, 0, i).Format(time.DateOnly), 5+i%3))
		}
		j.touch(`document.querySelector("#boat-now")`)
		j.touch(button("Saved boats"))
		j.touch(button("Open a file"))
		j.giveFile("logged.json", `{"name":"Tern","readings":[`+strings.Join(rows, ",")+`]}`)
		j.until(`document.querySelector("h1").textContent === "Boat: Tern"`)
		j.touch(`document.querySelector('header a[href="#/"]')`)
		j.touch(`document.querySelector('[data-part="gland"]')`)
		j.until(`document.querySelector("main").innerText.includes("5000 readings")`)
	}},
	{"by the keyboard alone, from home to a wrench setting", false, 0, func(j *journey) {
		tabTo := func(id string) {
			for range 150 {
				j.do(chromedp.KeyEvent(kb.Tab))
				if eval[bool](j.tab, fmt.Sprintf(`document.activeElement.id === %[1]q || document.activeElement.dataset.hit === %[1]q`, id)) {
					return
				}
			}
			j.t.Fatalf("Tab never reaches %s", id)
		}
		tabTo("find")
		j.do(chromedp.KeyEvent("preload"))
		j.until(`document.querySelector('[data-hit="calculation/bolt-preload"]')`)
		tabTo("calculation/bolt-preload")
		j.do(chromedp.KeyEvent(kb.Enter))
		j.until(`document.querySelector("#in-thread")`)
		for _, field := range [][2]string{{"in-thread", "M10 × 1.5"}, {"in-grade", "ISO 898-1 class 8.8"}, {"in-finish", "Zinc plated, dry (S"}} {
			tabTo(field[0])
			j.do(chromedp.KeyEvent(field[1]))
		}
		j.until(`document.querySelector(".first .value")`)
	}},
	{"the browser killed two seconds after the last key, and opened again", false, 2, func(j *journey) {
		profile := filepath.Join(j.t.TempDir(), "profile")
		first, stop := ownBrowser(j.t, profile)
		own := &journey{tab: first, screens: 1}
		own.open("")
		own.touch(`document.querySelector("#boat-now")`)
		own.unfold("#boat-name")
		own.typeIn("#boat-name", "Petrel")
		time.Sleep(2 * time.Second)
		kill(j.t, first, stop)
		again, stop := ownBrowser(j.t, profile)
		defer stop()
		again.open("#/boat")
		if title := again.text("h1"); title != "Boat: Petrel" {
			j.t.Errorf("after the kill: %q", title)
		}
		j.touches, j.screens = own.touches, own.screens
	}},
}

// anew opens the page again where it is, with a script run before its own.
func (j *journey) anew(before string) {
	j.t.Helper()
	if before != "" {
		j.beforePage(before)
	}
	address := eval[string](j.tab, `location.href`)
	j.do(chromedp.Navigate("about:blank"), chromedp.Navigate(address))
	j.until(`document.querySelector("h1[tabindex]")`)
}

// giveFile chooses a file from the disk.
func (j *journey) giveFile(name, text string) {
	j.t.Helper()
	file := filepath.Join(j.t.TempDir(), name)
	if err := os.WriteFile(file, []byte(text), 0o600); err != nil {
		j.t.Fatal(err)
	}
	j.do(chromedp.SetUploadFiles(chromedp.CSS("input[type=file][accept*=json]"), []string{file}))
}
