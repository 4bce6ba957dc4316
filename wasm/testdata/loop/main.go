//go:build wasip1

// Command loop is a plain Monte Carlo loop in WebAssembly, the yardstick that
// BenchmarkPlainLoopInTheGuest holds against the same loop run natively.
package main

func main() {}

//go:wasmexport loop
func loop(seed, trials uint32) float64 { return plain(int(seed), int(trials)) }
