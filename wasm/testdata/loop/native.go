//go:build !wasip1

package main

import (
	"fmt"
	"os"
	"strconv"
	"time"
)

// main runs the loop of as many trials as the first argument says, as often as
// the second says, each time from another seed, and prints the least time in
// nanoseconds and the last result.
func main() {
	trials, _ := strconv.Atoi(os.Args[1])
	runs, _ := strconv.Atoi(os.Args[2])
	least, result := time.Duration(0), 0.0
	for seed := range runs {
		start := time.Now()
		result = plain(seed, trials)
		if d := time.Since(start); least == 0 || d < least {
			least = d
		}
	}
	fmt.Println(least.Nanoseconds(), result)
}
