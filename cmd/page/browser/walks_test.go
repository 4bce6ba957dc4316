package browser

import (
	"fmt"
	"strings"
	"time"
)

// What the journeys are: each from home to what a person came for.
var walks = []walk{
	{"wrench setting of a 3/8-24 grade 8 bolt with its lock nut", false, 6, func(j *journey) {
		j.typeIn("#find", "3/8-24")
		j.touch(`[...document.querySelectorAll('[data-hit="row/ne-3/8-24"]')].find((e) => e.textContent.includes("preload"))`)
		j.pick("#in-grade", "j429-8")
		j.pick("#in-finish", "oiled")
		j.until(`document.querySelector(".first .value")`)
	}},
	{"a knock, to the look that settles it", true, 0, func(j *journey) {
		j.typeIn("#find", "clunk")
		j.touch(`document.querySelector('[data-hit="sign/knock-into-gear"]')`)
		for range 12 {
			j.until(`document.querySelector(".settling, .one-question, main h2")`)
			if eval[bool](j.tab, `!!document.querySelector(".settling button")`) {
				return
			}
			j.touch(button("No"))
		}
	}},
	{"five drips by taps, to a verdict", true, 0, func(j *journey) {
		j.typeIn("#find", "drips")
		j.touch(`document.querySelector('[data-hit="calculation/gland-drip"], [data-hit^="calculation/gland"]')`)
		j.touch(`document.querySelector(".counter > summary")`)
		for range 5 {
			j.touch(`document.querySelector(".drop")`)
			time.Sleep(300 * time.Millisecond)
		}
		j.until(`document.querySelector(".counter .verdict, .counter .badge, .answers .verdict")`)
	}},
	{"today's drip rate logged, and its trend opened", true, 0, func(j *journey) {
		j.touch(`document.querySelector('[data-part="gland"]')`)
		j.touch(button("Log a reading"))
		j.typeIn("#day-dripRate", "7")
		j.touch(button("Log these readings"))
		j.touch(`document.querySelector('[data-series="dripRate"] summary')`)
		j.until(`document.querySelector('[data-series="dripRate"] .sheet svg')`)
	}},
	{"what is wrong with the boat, and what to measure next", true, 0, func(j *journey) {
		j.touch(button("Survey"))
		j.until(`document.querySelector(".in-short dd")`)
	}},
	{"the coupling's gaps, to the turns of the mounts' nuts", true, 6, func(j *journey) {
		j.typeIn("#find", "alignment")
		j.touch(`document.querySelector('[data-hit="calculation/coupling-alignment"]')`)
		j.touch(`[...document.querySelectorAll('.answer a.action')].find((e) => e.textContent.startsWith('Mount moves'))`)
		j.until(`document.querySelector(".mounts .nut, .nuts, [data-mount]")`)
	}},
	{"a mount turned, the gap typed again, what is left planned anew", true, 8, func(j *journey) {
		j.typeIn("#find", "alignment")
		j.touch(`document.querySelector('[data-hit="calculation/coupling-alignment"]')`)
		j.touch(`[...document.querySelectorAll('.answer a.action')].find((e) => e.textContent.startsWith('Mount moves'))`)
		j.until(`document.querySelector(".nut.now")`)
		before := j.text(".mounts")
		for range 2 { // both of the pair, or it asks for the other
			j.touch(`document.querySelector(".nut.now")`)
		}
		j.until(`document.querySelectorAll(".nut[aria-pressed=true]").length === 2`)
		j.touch(button("Read again"))
		j.typeIn(".again input", "0.2")
		j.touch(button("Plan anew"))
		j.until(fmt.Sprintf(`document.querySelector(".mounts") && document.querySelector(".mounts").textContent.trim() !== %q && !document.querySelector(".nut[aria-pressed=true]")`, before))
	}},
	{"a worn face, to what is decided and the plan of it", true, 10, func(j *journey) {
		j.typeIn("#find", "worn face")
		j.touch(`document.querySelector('[data-hit="calculation/wear-debris"]')`)
		j.typeIn("#in-wearDepth", "0.3 mm")
		j.until(`document.querySelector(".answers .verdict")`)
		j.touch(button("Repair or replace"))
		j.until(`location.hash === "#/sheet/repair-or-replace" && document.querySelector(".answers .value")`)
		j.touch(button("Work plan"))
		j.until(`location.hash === "#/sheet/work-plan" && document.querySelector(".answers")`)
		j.touch(button("Change here: What is to be done"))
		j.pick("#in-remedies-0-remedy", "replace-output-flange")
		j.until(`document.querySelector(".agenda button")`)
	}},
	{"a plan of tightening the mounts, its dates to the calendar", true, 7, func(j *journey) {
		eval[any](j.tab, `{ const make = URL.createObjectURL; URL.createObjectURL = (blob) => { if (blob.type.startsWith("text/calendar")) blob.text().then((text) => (window.calendar = text)); return make(blob); }; }`)
		j.typeIn("#find", "calendar")
		j.touch(`document.querySelector('[data-hit="calculation/work-plan"]')`)
		j.touch(button("Change here: What is to be done"))
		j.pick("#in-remedies-0-remedy", "tighten-mounts")
		j.until(`document.querySelector(".agenda button")`)
		j.touch(button("Save the dates for a calendar"))
		j.until(`window.calendar?.includes("BEGIN:VEVENT") && window.calendar.includes("DANGER")`)
	}},
	{"a boat file of an older version opened, to how its mounts stand", false, 5, func(j *journey) {
		j.touch(`document.querySelector("#boat-now")`)
		j.touch(button("Open a file"))
		j.give("json", "tern.boat.json", `{"name":"Tern","mounts":[{"name":"fore","forward":"800 mm","starboard":"0 mm","sagNew":"3 mm","sagNow":"4 mm"},{"name":"aft","forward":"200 mm","starboard":"0 mm"}],"readings":[{"date":"2026-05-01","mountSag":"4 mm"}]}`)
		j.until(`document.querySelector("h1").textContent.includes("Tern") && [...document.querySelectorAll("main")].some((e) => e.innerText.includes("older name"))`)
		j.untilKept(`boats.some((k) => k.boat.name === "Tern" && k.boat.mounts[0].sagNow === "4 mm")`)
		j.touch(`document.querySelector('header a[href="#/"]')`)
		j.touch(`document.querySelector('[data-part="mounts"]')`)
		j.until(`document.querySelector(".part-state") && document.querySelector("main").innerText.includes("4 mm")`)
	}},
	{"a job card of the coupling's bolts, printed on one page", true, 4, func(j *journey) {
		eval[any](j.tab, `window.print = () => { window.asked = true; }`)
		j.typeIn("#find", "preload")
		j.touch(`document.querySelector('[data-hit="calculation/bolt-preload"]')`)
		setting := j.text(value("wrenchSetting"))
		j.touch(button("Print a card"))
		j.until(`window.asked`)
		eval[any](j.tab, `dispatchEvent(new Event("beforeprint"))`)
		card := j.text(".card")
		if n := len(pageObject.FindAll(j.printed(), -1)); n != 1 {
			j.t.Errorf("the card is printed on %d pages", n)
		}
		for _, want := range []string{setting, "Kittiwake", "DANGER"} {
			if !strings.Contains(card, want) {
				j.t.Errorf("the card lacks %q: %s", want, card)
			}
		}
	}},
	{"the gland repacked by the steps, the first ticked off", true, 6, func(j *journey) {
		j.typeIn("#find", "repack")
		j.touch(`document.querySelector('[data-hit="work/repack-gland"]')`)
		j.touch(button("Done: tick off step 1"))
		j.until(`document.querySelector(".progress").textContent.includes("1 of ")`)
	}},
	{"how the gland stands", true, 1, func(j *journey) {
		j.touch(`document.querySelector('[data-part="gland"]')`)
		j.until(`document.querySelector(".part-state .badge")`)
	}},
}
