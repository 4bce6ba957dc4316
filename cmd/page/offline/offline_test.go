package offline

import (
	"bytes"
	"encoding/json"
	"image/png"
	"strings"
	"testing"

	"example.org/driveline/cmd/page/letters"
)

const shell = `<meta content="img-src data: blob:; worker-src blob:; connect-src 'none'"><link rel="icon" href="data:,">`

const worker = "const VERSION = '';\nconst FILES = [''];\n"

// Every address in the files is relative, so that they work in any folder; any
// other byte of the page is another version.
func TestFiles(t *testing.T) {
	files, err := Files(letters.File(shell), worker)
	if err != nil {
		t.Fatal(err)
	}
	for name, data := range files {
		if name == "index.html" {
			page, err := letters.Page(data)
			if err != nil {
				t.Fatal(err)
			}
			data = []byte(page)
		}
		if text := strings.ReplaceAll(string(data), "http://www.w3.org/2000/svg", ""); strings.Contains(text, "http:") || strings.Contains(text, "https:") || strings.Contains(text, `="/`) || strings.Contains(text, `: "/`) {
			t.Errorf("%s holds an address from the root or of another host", name)
		}
		if !strings.Contains(string(files["keep.js"]), name) && name != "keep.js" && name != "index.html" {
			t.Errorf("%s is not kept", name)
		}
	}
	var m struct {
		Icons []struct{ Src string }
	}
	if err := json.Unmarshal(files["manifest.webmanifest"], &m); err != nil {
		t.Fatal(err)
	}
	for _, i := range m.Icons {
		if files[i.Src] == nil {
			t.Errorf("the manifest names %s, which is not there", i.Src)
		}
	}
	for name, size := range map[string]int{"icon-192.png": 192, "icon-512.png": 512} {
		picture, err := png.Decode(bytes.NewReader(files[name]))
		if err != nil || picture.Bounds().Dx() != size {
			t.Errorf("%s: %v", name, err)
			continue
		}
		at := func(x, y float64) uint32 {
			r, _, _, _ := picture.At(int(x*float64(size)), int(y*float64(size))).RGBA()
			return r >> 8
		}
		if at(0.5, 0.3) != 0xfd || at(0.5, 0.5) != 0x0b || at(0.5, 0.8) != 0x0b || at(0.35, 0.6) != 0xfd || at(0.02, 0.02) != 0x0b {
			t.Errorf("%s does not show a blade up, two down and a bore", name)
		}
	}
	other, err := Files(letters.File(shell+" "), worker)
	if err != nil || bytes.Equal(other["keep.js"], files["keep.js"]) {
		t.Errorf("another page has the same version (%v)", err)
	}
	for _, wrong := range [][2]string{{strings.Replace(shell, "worker-src blob:;", "", 1), worker}, {shell + shell, worker}, {shell, "const VERSION = '';"}} {
		if _, err := Files(letters.File(wrong[0]), wrong[1]); err == nil {
			t.Errorf("taken: %.60s and %s", wrong[0], wrong[1])
		}
	}
	if _, err := Files([]byte(shell), worker); err == nil {
		t.Error("a page that is not in its encoding is taken")
	}
}
