package shaft_test

import (
	"fmt"

	q "example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/shaft"
)

// Shigley, Mechanical Engineering Design, example 7-6 (printed to three
// figures; values from memory, recomputed): a square key of 3/8 in in a shaft
// of 1-7/16 in under 4200 lbf·in, yield strength 65 ksi, safety factor 2.8.
// The book has 5850 lbf, 1.16 in for shear and 1.34 in for crushing.
func ExampleKeyStrength() {
	out, err := shaft.KeyStrength(shaft.KeyStrengthInput{
		ShaftDiameter: (1 + 7./16) * q.Inch, ShaftTorque: 4200 * q.PoundForceInch,
		KeyWidth: 0.375 * q.Inch, KeyHeight: 0.375 * q.Inch, KeyLength: 1.5 * q.Inch,
		KeyYieldStrength: 65 * q.KilopoundPerSquareInch, WantedSafety: 2.8,
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("force %.0f lbf\n", float64(out.KeyForce/q.PoundForce))
	fmt.Printf("length %.2f in for shear, %.2f in for crushing\n", float64(out.ShearLength/q.Inch), float64(out.BearingLength/q.Inch))
	// Output:
	// force 5843 lbf
	// length 1.16 in for shear, 1.34 in for crushing
}
