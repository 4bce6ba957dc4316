package torque_test

import (
	"fmt"

	q "example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/torque"
)

// Shigley, Mechanical Engineering Design, example 7-6 (value from memory,
// recomputed): 40 hp at 600 rpm are 4200 lbf·in.
func ExampleShaft() {
	out, err := torque.Shaft(torque.ShaftInput{
		EnginePower: 40 * q.Horsepower, EngineSpeed: 600 * q.RevolutionPerMinute,
		GearRatioAhead: 1, GearboxEfficiency: 1, ShockFactor: 1,
	})
	fmt.Printf("%.0f lbf·in, %v\n", float64(out.ShaftTorque/q.PoundForceInch), err)
	// Output: 4202 lbf·in, <nil>
}
