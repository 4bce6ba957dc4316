// Package assemble makes the page: one HTML file that holds the WebAssembly
// module, the script and style bundled from site/, and the demonstration
// boats. The same sources and toolchain give the same bytes.
package assemble

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
)

// Page builds everything and gives the finished HTML. root is the folder that
// Root gives; tell is told each step as it begins.
func Page(root string, tell func(string)) ([]byte, error) {
	tell("building the WebAssembly module (a minute the first time)")
	module, err := Module(root)
	if err != nil {
		return nil, err
	}
	return PageWith(root, module, tell)
}

// PageWith is Page around a module that was built before.
func PageWith(root string, module []byte, tell func(string)) ([]byte, error) {
	return PageIn(nil, root, module, tell)
}

// PageIn is PageWith in another language, where there is one.
func PageIn(in *Language, root string, module []byte, tell func(string)) ([]byte, error) {
	tell("bundling the page")
	site := filepath.Join(root, "site")
	style, err := bundle(filepath.Join(site, "main.css"), nil)
	if err != nil {
		return nil, err
	}
	first, err := bundle(filepath.Join(site, "first.css"), nil)
	if err != nil {
		return nil, err
	}
	script, err := bundle(filepath.Join(site, "boot.js"), in)
	if err != nil {
		return nil, err
	}
	program, err := bundle(filepath.Join(site, "main.js"), in)
	if err != nil {
		return nil, err
	}
	aside, err := bundle(filepath.Join(site, "aside.js"), in)
	if err != nil {
		return nil, err
	}
	shell, err := os.ReadFile(filepath.Join(site, "index.html"))
	if err != nil {
		return nil, err
	}
	if in != nil {
		shell = in.shell(shell)
	}
	boats, err := readBoats(filepath.Join(root, "testdata", "boats"))
	if err != nil {
		return nil, err
	}
	checks, err := digest()
	if err != nil {
		return nil, err
	}
	line, err := readLine(root)
	if err != nil {
		return nil, err
	}
	worker, err := encode(aside) // packed with the program, half of which it is made of
	if err != nil {
		return nil, err
	}
	tell("packing one file")
	return pack(parts{Shell: string(shell), First: withOwnTokens(first), Style: style, Script: script, Program: "globalThis.partsOfLine=" + line + ";globalThis.asideProgram=" + string(worker) + ";\n" + program, Module: module, Boats: boats, Checks: checks})
}

// Root is the folder of the go.mod that the working folder belongs to.
func Root() (string, error) {
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
