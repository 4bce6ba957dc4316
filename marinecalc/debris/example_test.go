package debris_test

import (
	"fmt"

	"example.org/driveline/marinecalc/debris"
	q "example.org/driveline/marinecalc/quantity"
)

// Derived, plain geometry: twelve teeth worn 0.15 mm deep over 40 mm by 8 mm
// gave 576 mm³ of steel to the oil.
func ExampleWear() {
	out, err := debris.Wear(debris.WearInput{
		WearDepth: 0.15 * q.Millimetre, WearLength: 40 * q.Millimetre, WearWidth: 8 * q.Millimetre,
		WearFullness: 1, WornPlaces: 12, MetalDensity: 7850, WornSides: 1, StrengthPower: 2,
	})
	fmt.Printf("%.0f mm³, %.2f g, %v\n", float64(out.WornVolume/q.CubicMillimetre), float64(out.WornMass/q.Gram), err)
	// Output: 576 mm³, 4.52 g, <nil>
}
