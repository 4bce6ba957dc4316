// Types writes the TypeScript types of requests, replies and the sheet from
// their schemas:
//
//	go run ./cmd/types
//
// Start it in the root of the repository: it writes wasm/marinecalc.d.ts. The
// loader's own functions stand in head.d.ts, which is copied to the front.
package main

import (
	"fmt"
	"os"
)

func main() {
	text, err := declarations()
	if err == nil {
		err = os.WriteFile("wasm/marinecalc.d.ts", text, 0o666)
	}
	if err != nil {
		fmt.Fprintln(os.Stderr, "types:", err)
		os.Exit(1)
	}
}
