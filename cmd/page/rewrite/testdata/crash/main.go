// Command crash ends with a trace.
package main

func main() { loosen(3) }

//go:noinline
func loosen(turns int) {
	if turns == 0 {
		strip(thread{})
	}
	loosen(turns - 1)
}

type thread struct{ pitch float64 }

// strip is made for a type, of which a trace prints three dots.
//
//go:noinline
func strip[T any](of T) {
	panic("off the thread")
}
