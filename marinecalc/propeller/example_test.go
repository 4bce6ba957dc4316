package propeller_test

import (
	"fmt"

	"example.org/driveline/marinecalc/propeller"
	q "example.org/driveline/marinecalc/quantity"
)

// A shaft of 1 in by SAE J755 has a taper of 1 in 16 over 2.750 in: its small
// end is 0.828 in.
func ExampleTaper() {
	out, err := propeller.Taper(propeller.TaperInput{
		ShaftDiameter: 25.4 * q.Millimetre, TaperRatio: 1. / 16, TaperLength: 2.75 * 25.4 * q.Millimetre, HubDiameter: 50 * q.Millimetre,
		ContactShare: 0.8, BoreFriction: 0.13, NutForce: 20 * q.Kilonewton, ShaftTorque: 150,
		HubModulus: 103e9, ElasticModulus: 193e9, HubPoisson: 0.34, ShaftPoisson: 0.3,
	})
	fmt.Printf("%.3f in, %.0f N·m by friction, %v\n", float64(out.SmallEnd/q.Millimetre)/25.4, float64(out.FrictionTorque), err)
	// Output: 0.828 in, 182 N·m by friction, <nil>
}
