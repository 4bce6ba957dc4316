package gland_test

import (
	"fmt"

	"example.org/driveline/marinecalc/gland"
	q "example.org/driveline/marinecalc/quantity"
)

// Mobley, Root Cause Failure Analysis (1999), p. 226: a 2 in shaft in a 4 in
// box takes rings of 1 in, cut 9.42 in long. The depth of the box is ours.
func ExamplePacking() {
	out, err := gland.Packing(gland.PackingInput{
		ShaftDiameter: 2 * q.Inch, BoxBore: 4 * q.Inch, BoxDepth: 6 * q.Inch,
		StockSections: "3/4 in, 7/8 in, 1 in", MostOver: 0.2 * q.Millimetre, MostUnder: 0.2 * q.Millimetre,
	})
	fmt.Printf("%.0f rings of %.0f in, %.2f in long, %v\n", float64(out.RingCount), float64(out.Section/q.Inch), float64(out.RingLength/q.Inch), err)
	// Output: 6 rings of 1 in, 9.42 in long, <nil>
}
