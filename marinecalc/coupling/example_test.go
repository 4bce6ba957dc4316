package coupling_test

import (
	"fmt"

	"example.org/driveline/marinecalc/coupling"
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
