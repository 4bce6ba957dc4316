package coupling_test

import (
	"fmt"

	"example.org/driveline/marinecalc/coupling"
	"example.org/driveline/marinecalc/hub"
	q "example.org/driveline/marinecalc/quantity"
)

// Singer and Pytel, Strength of Materials, flanged bolt couplings: ten bolts
// of 20 mm on a circle of 400 mm, sheared at 40 MPa, pass 25.13 kN·m (π/4 ·
// 20² · 40 · 10 · 200 N·mm).
func ExampleGrip() {
	out, err := coupling.Grip(coupling.GripInput{
		BoltCount: 10, BoltCircle: 400 * q.Millimetre, Preload: 100 * q.Kilonewton, FaceFriction: 0.15,
		ShaftTorque: 1 * q.KilonewtonMetre, NominalDiameter: 20 * q.Millimetre,
		ShearPlane: coupling.Shank, BearingShare: 1, PermittedShear: 40 * q.Megapascal,
	})
	fmt.Printf("%.2f kN·m in shear, %.0f kN·m by friction, %v\n", float64(out.ShearTorque/q.KilonewtonMetre), float64(out.FrictionCapacity/q.KilonewtonMetre), err)
	// Output: 25.13 kN·m in shear, 30 kN·m by friction, <nil>
}

// A steel flange of 80 mm pressed on a shaft of 50 mm over 40 mm with four
// hundredths of interference, friction 0.12: 51.2 MPa, 965 N·m.
func ExampleBore() {
	out, err := coupling.Bore(coupling.BoreInput{
		HoldMethod: coupling.Interference, ShaftDiameter: 50 * q.Millimetre, HubDiameter: 80 * q.Millimetre, EngagedLength: 40 * q.Millimetre,
		Interference: 0.04 * q.Millimetre, BoreFriction: 0.12, ShaftTorque: 500,
		HubModulus: 210e9, ElasticModulus: 210e9, HubPoisson: 0.3, ShaftPoisson: 0.3, Keyed: hub.NoKey,
	})
	fmt.Printf("%.1f MPa, %.0f N·m, held by %s, %v\n", float64(out.BorePressure/q.Megapascal), float64(out.SlipTorque), out.HeldBy, err)
	// Output: 51.2 MPa, 965 N·m, held by friction, <nil>
}
