// Command crash ends with a trace.
package main

func main() { loosen(3) }

//go:noinline
func loosen(turns int) {
	if turns == 0 {
		panic("off the thread")
	}
	loosen(turns - 1)
}
