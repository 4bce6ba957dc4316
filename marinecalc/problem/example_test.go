package problem_test

import (
	"errors"
	"fmt"

	"example.org/driveline/marinecalc/problem"
)

// A function gathers all that is wrong with its input, and returns it at once.
func check(diameter, share float64) error {
	var bad problem.List
	bad.Above("/diameter", "diameter", diameter)
	bad.Share("/share", "share of the power", share)
	return bad.Err()
}

func ExampleList() {
	err := check(-0.03, 50)
	fmt.Println(err)
	fmt.Println(check(0.03, 0.5))
	// Output:
	// /diameter: the diameter is missing, negative or not a number; allowed: above 0
	// /share: the share of the power is not a share; allowed: above 0, up to 1; half is 0.5 or 50 %
	// <nil>
}

func ExampleError() {
	var e *problem.Error
	if errors.As(check(-0.03, 0.5), &e) {
		for _, p := range e.Problems {
			fmt.Println(p.Where, "wants", p.Allowed)
		}
	}
	// Output:
	// /diameter wants above 0
}
