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
	"os/exec"
	"path/filepath"
	"strings"
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
	root, err := moduleRoot()
	if err != nil {
		return err
	}
	module, err := buildModule(root)
	if err != nil {
		return err
	}
	return os.WriteFile(file, module, 0o644)
}

func run(out string, open bool) error {
	root, err := moduleRoot()
	if err != nil {
		return err
	}
	if out == "" {
		out = filepath.Join(root, "build", "marinecalc.html")
	}
	if out, err = filepath.Abs(out); err != nil {
		return err
	}
	page, err := makePage(root, func(step string) { fmt.Fprintln(os.Stderr, step) })
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

// makePage builds everything and gives the finished HTML. It tells each step.
func makePage(root string, tell func(string)) ([]byte, error) {
	tell("building the WebAssembly module (a minute the first time)")
	module, err := buildModule(root)
	if err != nil {
		return nil, err
	}
	tell("bundling the page")
	site := filepath.Join(root, "site")
	style, err := bundle(filepath.Join(site, "main.css"))
	if err != nil {
		return nil, err
	}
	script, err := bundle(filepath.Join(site, "main.js"))
	if err != nil {
		return nil, err
	}
	shell, err := os.ReadFile(filepath.Join(site, "index.html"))
	if err != nil {
		return nil, err
	}
	boats, err := readBoats(filepath.Join(root, "testdata", "boats"))
	if err != nil {
		return nil, err
	}
	tell("packing one file")
	return pack(parts{Shell: string(shell), Style: style, Script: script, Module: module, Boats: boats})
}

// moduleRoot is the folder of the go.mod that this command belongs to.
func moduleRoot() (string, error) {
	said, err := exec.Command("go", "env", "GOMOD").Output()
	if err != nil {
		return "", fmt.Errorf("asking the Go toolchain for the module: %w", err)
	}
	file := strings.TrimSpace(string(said))
	if filepath.Base(file) != "go.mod" {
		return "", fmt.Errorf("run it inside the module's folder: there is no go.mod here or above")
	}
	return filepath.Dir(file), nil
}
