//go:build !wasip1

// Command wasm is the calculator as one WebAssembly reactor; see main.go.
// Built for any other system it only says how to build it.
package main

import (
	"fmt"
	"os"
)

func main() {
	fmt.Fprintln(os.Stderr, "build this for WebAssembly:\n  GOOS=wasip1 GOARCH=wasm go build -buildmode=c-shared -o marinecalc.wasm ./wasm")
	os.Exit(2)
}
