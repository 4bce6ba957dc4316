// Package offline makes of the page one that can be installed from any static
// host, in a folder of its own or below another: the page, a manifest, icons,
// and a service worker that keeps all of them, so that it opens without a
// network. Nothing is asked of any other host.
package offline

import (
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"example.org/driveline/cmd/page/letters"
)

// Write writes the files into a folder, which is made where it is not there.
// page is what assemble.Page gives, worker the text of site/keep.js.
func Write(folder string, page []byte, worker string) error {
	files, err := Files(page, worker)
	if err != nil {
		return err
	}
	if err := os.MkdirAll(folder, 0o755); err != nil {
		return err
	}
	for name, data := range files {
		if err := os.WriteFile(filepath.Join(folder, name), data, 0o644); err != nil {
			return err
		}
	}
	return nil
}

// Files gives the files by their names.
func Files(page []byte, worker string) (map[string][]byte, error) {
	index, err := installable(page)
	if err != nil {
		return nil, err
	}
	manifest, err := manifest()
	if err != nil {
		return nil, err
	}
	files := map[string][]byte{"index.html": index, "manifest.webmanifest": manifest, "icon.svg": icon(), "icon-192.png": raster(192), "icon-512.png": raster(512)}
	files["keep.js"], err = keeper(worker, files)
	return files, err
}

// installable gives the page leave to load what lies beside it, and no more.
func installable(file []byte) ([]byte, error) {
	page, err := letters.Page(file)
	if err != nil {
		return nil, err
	}
	for _, put := range []struct{ old, new string }{
		{"worker-src blob:;", "worker-src 'self' blob:; manifest-src 'self';"},
		{"img-src data: blob:;", "img-src 'self' data: blob:;"},
		{`<link rel="icon" href="data:,">`, `<link rel="icon" href="icon.svg"><link rel="apple-touch-icon" href="icon-192.png"><link rel="manifest" href="manifest.webmanifest">`},
	} {
		if n := strings.Count(page, put.old); n != 1 {
			return nil, fmt.Errorf("the page holds %s %d times, and should once", put.old, n)
		}
		page = strings.Replace(page, put.old, put.new, 1)
	}
	return letters.File(page), nil
}

// manifest is a Web Application Manifest (W3C). Its addresses are relative, so
// that it may lie in any folder.
func manifest() ([]byte, error) {
	type image struct {
		Src     string `json:"src"`
		Sizes   string `json:"sizes"`
		Type    string `json:"type"`
		Purpose string `json:"purpose"`
	}
	return json.MarshalIndent(struct {
		Name        string  `json:"name"`
		ShortName   string  `json:"short_name"`
		Description string  `json:"description"`
		Lang        string  `json:"lang"`
		ID          string  `json:"id"`
		StartURL    string  `json:"start_url"`
		Scope       string  `json:"scope"`
		Display     string  `json:"display"`
		Background  string  `json:"background_color"`
		Theme       string  `json:"theme_color"`
		Icons       []image `json:"icons"`
	}{
		"marinecalc", "marinecalc", "Calculations for the line from engine to propeller, at the dock, without a network.", "en",
		"./", "./", "./", "standalone", ground, ground,
		[]image{
			{"icon.svg", "any", "image/svg+xml", "any"},
			{"icon-192.png", "192x192", "image/png", "any maskable"},
			{"icon-512.png", "512x512", "image/png", "any maskable"},
		},
	}, "", "  ")
}

// keeper writes version and files into the service worker. The version is of
// all files together: any other byte is another version.
func keeper(worker string, files map[string][]byte) ([]byte, error) {
	sum := sha256.New()
	listed := []string{"./"}
	for _, name := range slices.Sorted(maps.Keys(files)) {
		fmt.Fprintf(sum, "%s %d\n", name, len(files[name]))
		sum.Write(files[name])
		if name != "index.html" { // which is ./
			listed = append(listed, name)
		}
	}
	list, err := json.Marshal(listed)
	if err != nil {
		return nil, err
	}
	for _, put := range [][2]string{
		{"const VERSION = '';", fmt.Sprintf("const VERSION = '%s';", hex.EncodeToString(sum.Sum(nil))[:16])},
		{"const FILES = [''];", "const FILES = " + string(list) + ";"},
	} {
		if strings.Count(worker, put[0]) != 1 {
			return nil, fmt.Errorf("the service worker must hold %q once", put[0])
		}
		worker = strings.Replace(worker, put[0], put[1], 1)
	}
	return []byte(worker), nil
}
