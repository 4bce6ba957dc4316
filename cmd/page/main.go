// Command page makes the calculator into one HTML file that needs nothing
// else: no network, no server, no installation.
//
//	go run ./cmd/page [-out file] [-open=false] [-language file]
//	go run ./cmd/page -module file
//	go run ./cmd/page -package dir
//	go run ./cmd/page -release dir
//	go run ./cmd/page -site dir
//
// It builds the WebAssembly module with the Go toolchain, bundles the page
// from site/, packs both with the demonstration boats into the file, prints
// its path and size, and opens it when there is a desktop. With -module it
// writes the module alone, as the page holds it, which the tests run in other
// hosts; with -package the files of the npm package, with -release a folder with
// all that is given to others, with -site what a static host serves as a page
// that can be installed. The same sources and toolchain give the same bytes.
package main

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"

	"example.org/driveline/cmd/page/assemble"
	"example.org/driveline/cmd/page/offline"
	"example.org/driveline/cmd/page/release"
)

func main() {
	out := flag.String("out", "", "the file to write (default build/marinecalc.html in the module)")
	open := flag.Bool("open", true, "open the page when there is a desktop")
	module := flag.String("module", "", "write the WebAssembly module alone to this file, and no page")
	npm := flag.String("package", "", "write the files of the npm package into this folder, and no page")
	all := flag.String("release", "", "write module, checksums, page, npm package and schemas into this new folder")
	site := flag.String("site", "", "write an installable page into this folder, for any static host: page, manifest, icons and service worker")
	language := flag.String("language", "", "build the page with other words: a file with \"lang\" and \"texts\", each by the text of site/texts.json that it stands for")
	flag.Parse()
	if flag.NArg() > 0 {
		fmt.Fprintf(os.Stderr, "page: nothing is expected after the flags, got %q\n", flag.Args())
		os.Exit(2)
	}
	work := func(root string) error { return run(root, *language, *out, *open) }
	switch {
	case *module != "":
		work = func(root string) error { return writeModule(root, *module) }
	case *npm != "":
		work = func(root string) error { return release.Package(root, *npm) }
	case *site != "":
		work = func(root string) error { return writeSite(root, *site) }
	case *all != "":
		work = func(root string) error { return release.All(root, *all, tell) }
	}
	root, err := assemble.Root()
	if err == nil {
		err = work(root)
	}
	if err != nil {
		fmt.Fprintln(os.Stderr, "page:", err)
		os.Exit(1)
	}
}

func tell(step string) { fmt.Fprintln(os.Stderr, step) }

// writeSite writes the files of an installable page.
func writeSite(root, folder string) error {
	page, err := assemble.Page(root, tell)
	if err != nil {
		return err
	}
	worker, err := os.ReadFile(filepath.Join(root, "site", "keep.js"))
	if err != nil {
		return err
	}
	if err := offline.Write(folder, page, string(worker)); err != nil {
		return err
	}
	return release.Checks(folder)
}

func writeModule(root, file string) error {
	module, err := assemble.Module(root)
	if err != nil {
		return err
	}
	return os.WriteFile(file, module, 0o644)
}

func run(root, language, out string, open bool) error {
	if out == "" {
		out = filepath.Join(root, "build", "marinecalc.html")
	}
	out, err := filepath.Abs(out)
	if err != nil {
		return err
	}
	var in *assemble.Language
	if language != "" {
		if in, err = assemble.ReadLanguage(root, language); err != nil {
			return err
		}
	}
	tell("building the WebAssembly module (a minute the first time)")
	module, err := assemble.Module(root)
	if err != nil {
		return err
	}
	page, err := assemble.PageIn(in, root, module, tell)
	if err != nil {
		return err
	}
	if err := os.MkdirAll(filepath.Dir(out), 0o755); err != nil {
		return err
	}
	if err := os.WriteFile(out, page, 0o644); err != nil {
		return err
	}
	fmt.Printf("%s  %.2f MB\n", out, float64(len(page))/1e6)
	if open && hasDesktop() {
		if err := openFile(out); err != nil {
			fmt.Fprintln(os.Stderr, "page: written, but it could not be opened:", err)
		}
	}
	return nil
}
