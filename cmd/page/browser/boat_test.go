package browser

import (
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"

	"example.org/driveline/marinecalc"
)

func TestReloadKeepsTheBoat(t *testing.T) {
	b := newTab(t, 1280)
	b.open("#/boat")
	b.write("#boat-name", "Ternlet")
	b.write("#boat-engine-power", "24 kW")
	b.open("#/boat")
	if got := b.text("h1"); got != "Boat: Ternlet" {
		t.Errorf("title after reload: %q", got)
	}
	if got := eval[string](b, `document.querySelector("#boat-engine-power").value`); got != "24 kW" {
		t.Errorf("engine power after reload: %q", got)
	}
	b.open("#/sheet/shaft-torque")
	if got := b.text("#in-enginePower-from"); !strings.Contains(got, "24 kW") || !strings.Contains(got, "boat") {
		t.Errorf("the form does not say that the power comes from the boat: %q", got)
	}
}

func TestBoatAsAFile(t *testing.T) {
	b := newTab(t, 1280)
	b.open("#/boat")
	file := filepath.Join(t.TempDir(), "hostile.json")
	const name = `<img src=x onerror=alert(1)><script>alert(2)</script>`
	text, _ := json.Marshal(map[string]any{"name": name, "engine": map[string]string{"power": "30 kW"}})
	if err := os.WriteFile(file, text, 0o600); err != nil {
		t.Fatal(err)
	}
	b.do(chromedp.SetUploadFiles(chromedp.CSS("input[type=file]"), []string{file}))
	b.until(`document.querySelector("h1").textContent.includes("onerror")`)
	for _, hash := range []string{"#/boat", "#/", "#/survey", "#/sheet/shaft-torque"} {
		b.open(hash)
		if !strings.Contains(eval[string](b, "document.body.textContent"), name) {
			t.Errorf("%s: the name is not shown as it is written", hash)
		}
		if n := eval[int](b, "document.querySelectorAll('main img, main script').length"); n != 0 {
			t.Errorf("%s: text from a boat file became markup", hash)
		}
	}

	b.open("#/boat")
	saved := eval[string](b, `new Promise((done) => {
		const real = URL.createObjectURL;
		URL.createObjectURL = (blob) => { blob.text().then(done); return real(blob); };
		HTMLAnchorElement.prototype.click = () => {};
		[...document.querySelectorAll('button')].find((b) => b.textContent === 'Save to a file').click();
	})`)
	var back map[string]any
	if err := json.Unmarshal([]byte(saved), &back); err != nil || back["name"] != name {
		t.Errorf("the saved file is not the boat: %v\n%s", err, saved)
	}
}

// What a boat file holds by a name that is not known is told wherever the boat
// is used, and on paper.
func TestMisspeltMemberIsTold(t *testing.T) {
	b := newTab(t, 360)
	b.open("#/boat")
	file := filepath.Join(t.TempDir(), "misspelt.json")
	const boat = `{"name":"Tern","engine":{"power":"24 kW","speed":"2800 rpm"},"gearbox":{"ratioAhead":"2.15"},"shaft":{"diamter":"30 mm"},` +
		`"readings":[{"date":"2026-05-01","dripRate":"6 drips/min"},{"date":"2026-06-01","dripRate":"9 drips/min"}]}`
	if err := os.WriteFile(file, []byte(boat), 0o600); err != nil {
		t.Fatal(err)
	}
	const list = "[aria-labelledby=unused-title]"
	if n := eval[int](b, fmt.Sprintf("document.querySelectorAll(%q).length", list)); n != 0 {
		t.Errorf("%d lists with nothing to tell", n)
	}
	b.do(chromedp.SetUploadFiles(chromedp.CSS("input[type=file]"), []string{file}))
	b.until(`document.querySelector("h1").textContent === "Boat: Tern"`)
	for _, hash := range []string{"#/boat", "#/sheet/shaft-torque", "#/sheet/gland-heat", "#/survey", "#/compare"} {
		b.open(hash)
		said := b.text(list)
		for _, want := range []string{"Names to check in the boat file", "/shaft/diamter: ", `"diamter" is not a name known here`, `"diameter"`} {
			if !strings.Contains(said, want) {
				t.Errorf("%s: %q is not told: %s", hash, want, said)
			}
		}
		b.print()
		if !eval[bool](b, fmt.Sprintf("document.querySelector(%q).checkVisibility()", list)) {
			t.Errorf("%s: not on paper", hash)
		}
	}
}

func TestShelfHoldsSeveralBoats(t *testing.T) {
	b := newTab(t, 1280)
	b.open("#/boat")
	b.press("Demonstration: ")
	demo := b.text("h1")
	b.press("New boat")
	b.write("#boat-name", "Ternlet")
	if n := eval[int](b, "document.querySelector('#shelf').options.length"); n != 2 {
		t.Errorf("%d boats on the shelf, want 2", n)
	}
	b.press("Remove this boat")
	b.press("Yes, remove Ternlet")
	if got := b.text("h1"); got != demo {
		t.Errorf("in hand after removing: %q, want %q", got, demo)
	}
}

func TestBeforeAndAfter(t *testing.T) {
	b := newTab(t, 360)
	b.keepDemonstration()
	b.open("#/compare")
	b.until(`document.querySelector(".paper li")`)
	said := b.text(".paper")
	for _, want := range []string{"Verdicts that turned", "→", "times what the gauges explain"} {
		if !strings.Contains(said, want) {
			t.Errorf("%q is not said: %.600s", want, said)
		}
	}
}

func TestReadingsAsCSV(t *testing.T) {
	b := newTab(t, 360)
	b.keepDemonstration()
	b.open("#/boat")
	before := kept[int](b, `boats.at(-1).boat.readings.length`)
	b.give("csv", "readings.csv", "date,dripRate\n2026-11-01,6 kg\n")
	b.until(`document.querySelector('[role=alert] .wrong')`)
	if said := b.text("[aria-labelledby=readings-title] [role=alert]"); !strings.Contains(said, "/csv/2/dripRate") {
		t.Errorf("the place is not told: %q", said)
	}
	b.give("csv", "readings.csv", "date,dripRate\n2026-11-01,6 drips/min\n")
	b.untilKept(fmt.Sprintf(`boats.at(-1).boat.readings.length === %d`, before+1))
}

func TestKeepWithTheBoat(t *testing.T) {
	b := newTab(t, 1280)
	b.open("")
	b.keepExample()
	b.open("#/boat")
	if said := b.text(".shelf"); !strings.Contains(said, "not in the file: ") || !strings.Contains(said, "Coupling alignment") {
		t.Errorf("the boat's view does not say what is on sheets only: %s", said)
	}
	b.open("#/sheet/coupling-alignment")
	before := b.text(value("gapDifference"))
	b.until(`[...document.querySelectorAll("button")].some((e) => e.textContent === "Keep with Ternlet")`)
	b.press("Keep with Ternlet")
	b.until(`document.querySelector("#in-couplingDiameter").value === ""`)
	if after := b.text(value("gapDifference")); after != before {
		t.Errorf("gap difference %q typed, %q from the boat", before, after)
	}
	b.open("#/sheet/mount-moves")
	b.until(`[...document.querySelectorAll(".from")].some((e) => e.textContent.includes("from the boat: 102 mm"))`)
	readings := kept[string](b, "JSON.stringify(boats[0].boat.readings)")
	if !strings.Contains(readings, `"couplingGaps"`) || !strings.Contains(readings, `"date"`) {
		t.Errorf("readings of the boat: %s", readings)
	}
}

// What the boat's file does not take, though the calculation does, is told
// and kept on the sheet: the boat stays sound.
func TestKeepWithTheBoatIsRefusedInWords(t *testing.T) {
	const input = `{"shaftDiameter":"250 mm","keyWidth":"63 mm","keyHeight":"32 mm","keySeat":"16 mm","keyLength":"300 mm",
		"shaftTorque":"5000 N·m","keyYieldStrength":"200 MPa","hubYieldStrength":"170 MPa","shaftAlloy":"s31600-annealed"}`
	native(t, "key-strength", input, "steadySafety") // there is a sheet
	var reply struct{ OK bool }
	raw := marinecalc.Call([]byte(`{"ask":"keep","calculation":"key-strength","date":"2026-06-01","boat":{"name":"Tern"},"input":` + input + `}`))
	if err := json.Unmarshal(raw, &reply); err != nil {
		t.Fatal(err)
	}
	if reply.OK {
		t.Skip("the boat's file takes a shaft of 250 mm")
	}
	b := newTab(t, 1280)
	b.open("")
	const sound = `{"name":"Tern"}`
	eval[any](b, fmt.Sprintf(`
		localStorage.setItem('marinecalc.boats', JSON.stringify([{ id: 'tern', boat: %s }]));
		localStorage.setItem('marinecalc.typed.tern', JSON.stringify({ 'key-strength': %s }));`, sound, input))
	b.open("#/sheet/key-strength")
	b.text(".answers")
	b.until(`[...document.querySelectorAll("button")].some((e) => e.textContent === "Keep with Tern")`)
	b.press("Keep with Tern")
	b.until(`document.querySelector("#in-shaftDiameter-wrong").textContent.includes("allowed")`)
	if said := b.text(".known"); !strings.Contains(said, "nothing was kept") {
		t.Errorf("it is not said that nothing was kept: %s", said)
	}
	if now := kept[string](b, "JSON.stringify(boats[0].boat)"); now != sound {
		t.Errorf("the boat is now %s", now)
	}
	b.text(".answers")
}
