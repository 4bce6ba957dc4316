package browser

import (
	"fmt"
	"os"
	"path/filepath"
	"testing"

	"github.com/chromedp/chromedp"

	"example.org/driveline/marinecalc"
)

// TestShots writes a picture of every view at both widths and in every light
// into the folder that MARINECALC_SHOTS names.
func TestShots(t *testing.T) {
	folder := os.Getenv("MARINECALC_SHOTS")
	if folder == "" {
		t.Skip("set MARINECALC_SHOTS to a folder to have pictures of every view")
	}
	if err := os.MkdirAll(folder, 0o755); err != nil {
		t.Fatal(err)
	}
	for _, width := range []int64{360, 1280} {
		for _, light := range []string{"day", "dusk", "night"} {
			b := newTab(t, width)
			b.open("")
			b.choose("#light", light)
			shoot := func(name, hash, ready string) {
				b.open(hash)
				b.until(fmt.Sprintf("document.querySelector(%q)", ready))
				eval[any](b, "if (matchMedia('print').matches) dispatchEvent(new Event('beforeprint'))")
				picture, err := chromedp.Run(b.ctx, chromedp.FullScreenshot(100))
				if err != nil {
					t.Errorf("%s at %d: %v", name, width, err)
					return
				}
				file := filepath.Join(folder, fmt.Sprintf("%s-%d-%s.png", name, width, light))
				if err := os.WriteFile(file, picture, 0o644); err != nil {
					t.Fatal(err)
				}
			}
			shoot("bolt-preload-empty", "#/sheet/bolt-preload", ".summary")
			b.keepExample()
			for _, v := range views {
				shoot(v.name, v.hash, v.ready)
			}
			b.keepDemonstration()
			shoot("boat-demonstration", "#/boat", ".form")
			shoot("survey-demonstration", "#/survey", ".paper")
			shoot("compare-demonstration", "#/compare", ".paper li")
			for _, c := range marinecalc.Calculations() {
				if example[c.ID] == "" && light == "day" {
					shoot(c.ID, "#/sheet/"+c.ID, ".sheet > *")
				}
			}
			if width == 1280 {
				b.print()
				shoot("print", "#/sheet/coupling-alignment", ".answers")
			}
		}
	}
}
