package browser

import (
	"fmt"
	"strings"
	"testing"
)

// misaligned opens the alignment sheet on a boat of which nothing is known, with
// gaps that are far apart typed.
func (b *tab) misaligned() {
	b.open("#/sheet/coupling-alignment")
	b.write("#in-couplingDiameter", "100")
	b.choose("#in-couplingKind", "rigid")
	for i, gap := range []string{"0.9", "0.5", "0.1", "0.5"} {
		b.write(fmt.Sprintf("#in-readings-%d-gap", i), gap)
	}
	b.until(`document.querySelector(".answer .verdict.beyond")`)
}

// From a sheet past its limit there is a way to its work, and from there to a
// plan of it, in which a haul-out can be added at once.
func TestFromLimitToWorkToPlan(t *testing.T) {
	b := newTab(t, 360)
	b.misaligned()
	b.until(`document.querySelector('.answer .to-work a[href="#/procedure/align-coupling"]')`)
	eval[any](b, `document.querySelector('.answer .to-work a[href="#/procedure/align-coupling"]').click()`)
	b.until(`document.querySelector(".procedure")`)
	b.press("Plan its days")
	b.until(`document.querySelector("#in-remedies-0-remedy")`)
	if got := eval[string](b, `document.querySelector("#in-remedies-0-remedy").value`); got != "align-coupling" {
		t.Errorf("the plan is of %q", got)
	}
	if !eval[bool](b, `[...document.querySelectorAll(".known button")].some((e) => e.textContent.includes("Haul-out"))`) {
		t.Error("a haul-out cannot be added where the plan is asked for")
	}
	b.demonstrate("Juniper")
	b.turn("#/part/gland")
	b.until(`document.querySelector(".part-state .badge")`)
	past := eval[bool](b, `!!document.querySelector(".part-state .badge.beyond, .part-state .badge.outside")`)
	if way := eval[bool](b, `!!document.querySelector(".part-state button")`); past != way {
		t.Errorf("past its limit: %v, and a way to its work: %v", past, way)
	}
}

// What is typed on a sheet counts on the one that it leads to, kept or not: opened
// from it, and on that day also by another way. What was typed on another day may
// be out of date.
func TestTypedIsHandedOn(t *testing.T) {
	b := newTab(t, 360)
	b.misaligned()
	eval[any](b, `document.querySelector('.answer a[href="#/sheet/mount-moves"]').click()`)
	b.until(`document.querySelector("#in-gapVertical")`)
	if got := eval[string](b, `document.querySelector("#in-gapVertical").placeholder`); !strings.Contains(got, "0.8 mm") {
		t.Errorf("mount moves says of the gap %q", got)
	}
	if said := b.text(".handed"); !strings.Contains(said, "Coupling alignment") || !strings.Contains(said, "not kept") {
		t.Errorf("where that is from: %q", said)
	}
	b.open("#/sheet/mount-moves")
	b.until(`document.querySelector(".handed")`)
	eval[any](b, `for (const key of Object.keys(localStorage)) if (key.includes("days.")) localStorage.setItem(key, '{"coupling-alignment":"2020-01-01"}')`)
	b.open("#/sheet/mount-moves")
	b.until(`document.querySelector("#in-gapVertical")`)
	if eval[bool](b, `!!document.querySelector(".handed")`) {
		t.Error("it has figures that were typed elsewhere on another day")
	}
}

// What is decided is touched at the answer, and the plan goes by it, kept or not.
func TestDecisionLeadsToThePlan(t *testing.T) {
	b := newTab(t, 360)
	b.open("#/sheet/repair-or-replace")
	for _, f := range [][2]string{{"seasons", "8"}, {"repairParts", "900 USD"}, {"replaceParts", "3200 USD"}, {"failureCost", "1500 USD"}, {"ownHourValue", "20 USD"}} {
		b.write("#in-"+f[0], f[1])
	}
	b.unfold("#in-repairWork")
	b.choose("#in-repairWork", "overhaul-gearbox")
	b.choose("#in-replaceWork", "replace-gearbox")
	b.until(`document.querySelector(".answer [data-decide=replace]")`)
	eval[any](b, `document.querySelector(".answer [data-decide=replace]").click()`)
	b.until(`document.querySelector(".answer [data-decide=replace]")?.getAttribute("aria-pressed") === "true"`)
	if got := eval[string](b, `document.querySelector("#in-decided").value`); got != "replace" {
		t.Errorf("decided is %q", got)
	}
	eval[any](b, `document.querySelector('.answer a[href="#/sheet/work-plan"]').click()`)
	b.until(`document.querySelector(".handed")?.textContent.includes("Repair or replace")`)
	b.until(`document.querySelector(".answers")?.textContent.includes("Done on")`)
	if said := b.text("main"); !strings.Contains(said, "Fit the gearbox") || !strings.Contains(said, "Compare the new gearbox") {
		t.Errorf("the plan is %.600q", said)
	}
}

// The nuts that go with the thread stand first, the others under what they are not
// for; one chosen before that no longer goes stays, and is told.
func TestNutsOfTheThreadStandFirst(t *testing.T) {
	b := newTab(t, 360)
	b.open("#/sheet/bolt-preload")
	b.choose("#in-grade", "j429-5")
	b.choose("#in-finish", "oiled")
	first := func() string {
		return eval[string](b, `[...document.querySelectorAll("#in-nut > option")].map((o) => o.value).join(" ")`)
	}
	for _, c := range []struct{ thread, goes, others string }{
		{"3/8-16 UNC", " plain-nut ne-3/8-16", "Others, not for 3/8-16 UNC"},
		{"3/8-24 UNF", " plain-nut ne-3/8-24", "Others, not for 3/8-24 UNF"},
	} {
		b.choose("#in-thread", c.thread)
		b.until(fmt.Sprintf(`document.querySelector("#in-nut optgroup")?.label === %q`, c.others))
		if got := first(); got != c.goes {
			t.Errorf("%s: first come %q", c.thread, got)
		}
		if n := eval[int](b, `document.querySelectorAll("#in-nut option").length`); n < 30 {
			t.Errorf("%s: only %d nuts can be chosen", c.thread, n)
		}
		if c.thread == "3/8-16 UNC" {
			b.choose("#in-nut", "ne-3/8-16")
		}
	}
	if got := eval[string](b, `document.querySelector("#in-nut").value`); got != "ne-3/8-16" {
		t.Errorf("the nut chosen before is %q now", got)
	}
	b.until(`document.querySelector("#in-nut-wrong").textContent.includes("does not go with the rest")`)
	without := native(t, "bolt-preload", `{"thread": "3/8-24 UNF", "grade": "j429-5", "finish": "oiled"}`, "wrenchSetting")
	if got := b.text(".answer.stale " + value("wrenchSetting")); got != without {
		t.Errorf("without the nut it answers %q, want %q of the new thread", got, without)
	}
	b.choose("#in-nut", "ne-3/8-24")
	b.until(`document.querySelector("#in-nut-wrong").textContent === "" && document.querySelector(".answers")`)
}

// A look that was found opens fault finding at that question, and the log is
// found.
func TestFindLeadsThere(t *testing.T) {
	b := newTab(t, 360)
	b.open("#/")
	b.write("#find", "red dust")
	b.until(`document.querySelector('[data-hit="look/red-dust"]')`)
	eval[any](b, `document.querySelector('[data-hit="look/red-dust"]').click()`)
	b.until(`document.querySelector(".asking h2")`)
	if said := b.text(".asking h2"); !strings.Contains(said, "red dust") {
		t.Errorf("fault finding opens at %q", said)
	}
	b.turn("#/")
	b.write("#find", "log")
	b.until(`document.querySelector('[data-hit="view/readings"]')`)
	eval[any](b, `document.querySelector('[data-hit="view/readings"]').click()`)
	b.until(`document.querySelector("#day-dripRate, [data-series], .readings, h1")`)
	if got := eval[string](b, `location.hash`); got != "#/readings" {
		t.Errorf("the log is at %q", got)
	}
}

// Answers of a fault before are told when a new one begins, and can be left out,
// with a way back.
func TestAnotherFaultStartsAnew(t *testing.T) {
	b := newTab(t, 360)
	b.open("#/")
	noticed := func(words, sign string) {
		b.turn("#/")
		b.write("#find", words)
		b.until(fmt.Sprintf(`document.querySelector('[data-hit="sign/%s"]')`, sign))
		eval[any](b, fmt.Sprintf(`document.querySelector('[data-hit="sign/%s"]').click()`, sign))
		b.until(`document.querySelector(".asking h2")`)
	}
	answered := func() int {
		return eval[int](b, `Number(/Answers given \((\d+)\)/.exec(document.querySelector(".stands").textContent)?.[1] ?? 0)`)
	}
	noticed("clunk", "knock-into-gear")
	b.press("No")
	noticed("dripping", "gland-drips-much")
	if said := b.text(".asking"); !strings.Contains(said, "2 answers from before") || answered() != 3 {
		t.Errorf("of the answers before it says %q", said)
	}
	b.press("Another fault: start anew")
	if answered() != 1 {
		t.Errorf("%d answers are left", answered())
	}
	b.press("Back")
	if answered() != 3 {
		t.Errorf("taken back there are %d", answered())
	}
}

// What is found is weighed, and not the work that the boat's file had a choice
// about.
func TestFoundIsWeighed(t *testing.T) {
	b := newTab(t, 360)
	b.demonstrate("Kittiwake")
	b.open("#/")
	b.write("#find", "can the shaft be lifted in the stern bearing")
	b.until(`document.querySelector('[data-hit="look/bearing-play"]')`)
	eval[any](b, `document.querySelector('[data-hit="look/bearing-play"]').click()`)
	b.until(`document.querySelector(".asking h2")?.textContent.startsWith("Can the shaft be lifted")`)
	b.press("Yes")
	b.until(`document.querySelector(".found")`)
	b.open("#/sheet/repair-or-replace")
	b.until(`document.querySelector(".handed")`)
	if said := b.text("main"); !strings.Contains(said, "is of other work and left out") || !strings.Contains(said, "Change the stern bearing") || strings.Contains(said, "Tighten the mounts, or") {
		t.Errorf("a worn bearing is found, and weighed is %q", b.text(".answer"))
	}
}
