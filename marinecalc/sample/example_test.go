package sample_test

import (
	"fmt"
	"log"

	"example.org/driveline/marinecalc/sample"
)

// The tests of a host run what a person would type.
func ExampleTyped() {
	input, err := sample.Typed("shaft-torque")
	if err != nil {
		log.Fatal(err)
	}
	fmt.Println(input["enginePower"], "at", input["engineSpeed"])
	// Output: 24 kW at 2800 rpm
}
