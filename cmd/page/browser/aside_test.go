package browser

import (
	"fmt"
	"strings"
	"testing"
)

// turns opens the shaft torque and types what it asks, with that gear ratio.
func (b *tab) turns(ratio string) {
	b.t.Helper()
	b.open("#/sheet/shaft-torque")
	b.write("#in-enginePower", "30 kW")
	b.write("#in-engineSpeed", "3000")
	b.write("#in-gearRatioAhead", ratio)
}

// turned is the torque that the library gives for the same.
func turned(t *testing.T, ratio float64) string {
	t.Helper()
	return native(t, "shaft-torque", fmt.Sprintf(`{"enginePower":"30 kW","engineSpeed":"3000 rpm","gearRatioAhead":%g}`, ratio), "shaftTorque")
}

// Keys are answered by the worker once it is up, in the order in which they
// were typed, and the last of them stands.
func TestKeysAreAnsweredAside(t *testing.T) {
	b := newTab(t, 360)
	b.beforePage(`
		window.aside = [];
		const post = Worker.prototype.postMessage;
		Worker.prototype.postMessage = function (message, ...rest) {
			if (message?.request) window.aside.push(message.request);
			return post.call(this, message, ...rest);
		};`)
	b.turns("2")
	b.until(`document.querySelector(".answers .value")`)
	b.until(`!document.querySelector(".answer").ariaBusy && window.aside.length > 0`)
	eval[any](b, "window.aside.length = 0")
	b.write("#in-gearRatioAhead", "2.6")
	want := turned(t, 2.6)
	b.until(`document.querySelector(".answers .value").textContent.includes("` + want + `")`)
	b.until(`!document.querySelector(".answer").ariaBusy`)
	if said := b.text(".answers .value"); !strings.Contains(said, want) {
		t.Errorf("the answer is %q, by the library %q", said, want)
	}
	if asked := eval[int](b, `window.aside.filter((r) => r.ask === "run").length`); asked == 0 {
		t.Error("no key was answered by the worker")
	}
}

// Where the browser gives no worker the page's own calculator answers, at the
// opening of a sheet and at each key.
func TestSheetWithoutAWorker(t *testing.T) {
	b := newTab(t, 360)
	b.beforePage("delete window.Worker")
	b.turns("2.6")
	want := turned(t, 2.6)
	b.until(`document.querySelector(".answers .value")?.textContent.includes("` + want + `")`)
	if eval[bool](b, `"Worker" in window`) {
		t.Error("the browser still gives a worker")
	}
}

// A worker that never answers does not keep the page from opening.
func TestSheetWithASilentWorker(t *testing.T) {
	b := newTab(t, 360)
	b.beforePage("Worker.prototype.postMessage = () => {}")
	b.turns("2.6")
	b.until(`document.querySelector(".answers .value")`)
}

// What is kept for the next opening was made from what is typed then, also
// where one goes on typing while the answer is on its way.
func TestAnswerKeptIsOfWhatIsTyped(t *testing.T) {
	b := newTab(t, 360)
	b.turns("2")
	for _, ratio := range []string{"2.1", "2.15", "2.6"} {
		b.write("#in-gearRatioAhead", ratio)
	}
	want := turned(t, 2.6)
	b.until(`document.querySelector(".answers .value")?.textContent.includes("` + want + `")`)
	b.until(`localStorage.getItem("marinecalc.answer.shaft-torque")?.includes("` + want + `")`)
}

// What a view asks at its first drawing is answered by the worker: the page's
// own calculator, whose first requests take longest, is not asked.
func TestFirstViewsAreAskedAside(t *testing.T) {
	b := newTab(t, 360)
	b.demonstrate("Kittiwake")
	b.beforePage(`
		window.own = [];
		const timeout = setTimeout; // on a loaded machine the worker may take longer than the page's patience
		window.setTimeout = (act, ms, ...rest) => timeout(act, ms === 5000 ? 60_000 : ms, ...rest);
		const instantiate = WebAssembly.instantiate;
		WebAssembly.instantiate = async (...given) => {
			const made = await instantiate(...given);
			const whole = made.instance ?? made;
			const call = (at, size) => {
				const asked = new TextDecoder().decode(new Uint8Array(whole.exports.memory.buffer, at, size)).slice(0, 80);
				if (!asked.startsWith('{"ask":"blank","calculation":"bolt-preload","units"')) window.own.push(asked); // at rest, for later
				return whole.exports.call(at, size);
			};
			const watched = { exports: { ...whole.exports, call } };
			return made.instance ? { ...made, instance: watched } : watched;
		};`)
	for _, hash := range []string{"", "#/calculations", "#/sheet/bolt-preload", "#/sheet/fault-finding", "#/sheet/work-plan", "#/part/gland", "#/readings", "#/procedure", "#/procedure/repack-gland", "#/boat"} {
		b.open(hash)
		if own := eval[[]string](b, "window.own"); len(own) > 0 {
			t.Errorf("%s: the page's own calculator was asked %q", hash, own)
		}
	}
	// Seen to watch: a form that reads a quantity asks the page's own.
	b.open("#/sheet/mount-moves")
	if own := eval[[]string](b, "window.own"); len(own) == 0 {
		t.Error("nothing is watched")
	}
}

// A worker that answered and then answers no more is given up, and the page's
// own calculator goes on: the answer is of what is typed.
func TestWorkerFallsSilent(t *testing.T) {
	b := newTab(t, 360)
	b.beforePage(`
		const timeout = setTimeout;
		window.setTimeout = (act, ms, ...rest) => timeout(act, ms === 10000 ? 200 : ms, ...rest);
		const post = Worker.prototype.postMessage;
		Worker.prototype.postMessage = function (...given) { if (!window.silent) post.apply(this, given); };`)
	b.turns("2")
	b.until(`document.querySelector(".answers .value") && !document.querySelector(".answer").ariaBusy`)
	eval[any](b, "window.silent = true")
	b.write("#in-gearRatioAhead", "2.6")
	want := turned(t, 2.6)
	b.until(`document.querySelector(".answers .value").textContent.includes("` + want + `") && !document.querySelector(".answer").ariaBusy`)
}

// What a key changes nothing of stays what it is on the screen, the boat is
// handed to the worker once, and what stands behind the answer follows.
func TestKeyTouchesWhatChanges(t *testing.T) {
	b := newTab(t, 360)
	b.beforePage(`
		window.aside = [];
		const post = Worker.prototype.postMessage;
		Worker.prototype.postMessage = function (message, ...rest) {
			if (message?.request) window.aside.push({ ask: message.request.ask, ofBoat: message.ofBoat, handed: "boat" in message });
			return post.call(this, message, ...rest);
		};`)
	b.demonstrate("Kittiwake")
	b.open("#/sheet/gland-heat")
	b.text(".answers")
	b.unfold("#in-dripRate")
	behind := func() string { return b.text(".paper .sheet") }
	b.write("#in-dripRate", "25")
	b.until(`document.querySelector(".answers") && !document.querySelector(".answer").ariaBusy && window.aside.some((r) => r.ask === "fits")`)
	before, was := behind(), b.text(".answers")
	eval[any](b, `
		for (const stays of document.querySelectorAll(".answer > .cautions, .known .from, .rest-of .from > *")) stays.here = true;
		window.changed = new Set();
		new MutationObserver((all) => all.forEach(({ target }) => window.changed.add(target))).observe(document.querySelector(".job"), { childList: true, attributes: true, subtree: true });
		window.aside.length = 0`)
	b.write("#in-dripRate", "26")
	b.until(`document.querySelector(".answers").textContent !== ` + fmt.Sprintf("%q", was) + ` && !document.querySelector(".answer").ariaBusy`)
	if !eval[bool](b, `document.querySelector(".answer > .cautions").here === true`) {
		t.Error("the cautions were made anew though they are the same")
	}
	if touched := eval[[]string](b, `[...document.querySelectorAll(".form .field")].filter((f) => [...window.changed].some((c) => f.contains(c) && !f.querySelector("#in-dripRate"))).map((f) => f.textContent)`); len(touched) > 0 {
		t.Errorf("fields that nothing changes of were drawn anew: %q", touched)
	}
	if handed := eval[int](b, `window.aside.filter((r) => r.handed).length`); handed > 0 {
		t.Errorf("the boat was handed to the worker again %d times", handed)
	}
	if of := eval[int](b, `window.aside.filter((r) => r.ask === "run" && r.ofBoat).length`); of == 0 {
		t.Error("no run of the boat was asked aside")
	}
	b.until(`document.querySelector(".paper .sheet").textContent !== ` + fmt.Sprintf("%q", before))
}
