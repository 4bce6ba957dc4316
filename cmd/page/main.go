// Command page makes the calculator into one HTML file that needs nothing
// else: no network, no server, no installation.
//
//	go run ./cmd/page [-out file] [-open=false]
//	go run ./cmd/page -module file
//
// It builds the WebAssembly module with the Go toolchain, bundles the page
// from site/, packs both with the demonstration boats into the file, prints
// its path and size, and opens it when there is a desktop. With -module it
// writes the module alone, as the page holds it, which the tests run in other
// hosts. The same sources and toolchain give the same bytes.
package main

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"

	"example.org/driveline/cmd/page/assemble"
)

func main() {
	out := flag.String("out", "", "the file to write (default build/marinecalc.html in the module)")
	open := flag.Bool("open", true, "open the page when there is a desktop")
	module := flag.String("module", "", "write the WebAssembly module alone to this file, and no page")
	flag.Parse()
	if flag.NArg() > 0 {
		fmt.Fprintf(os.Stderr, "page: nothing is expected after the flags, got %q\n", flag.Args())
		os.Exit(2)
	}
	work := func() error { return run(*out, *open) }
	if *module != "" {
		work = func() error { return writeModule(*module) }
	}
	if err := work(); err != nil {
		fmt.Fprintln(os.Stderr, "page:", err)
		os.Exit(1)
	}
}

func writeModule(file string) error {
	root, err := assemble.Root()
	if err != nil {
		return err
	}
	module, err := assemble.Module(root)
	if err != nil {
		return err
	}
	return os.WriteFile(file, module, 0o644)
}

func run(out string, open bool) error {
	root, err := assemble.Root()
	if err != nil {
		return err
	}
	if out == "" {
		out = filepath.Join(root, "build", "marinecalc.html")
	}
	if out, err = filepath.Abs(out); err != nil {
		return err
	}
	page, err := assemble.Page(root, func(step string) { fmt.Fprintln(os.Stderr, step) })
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
