package flange_test

import (
	"fmt"
	"math"

	"example.org/driveline/marinecalc/fastener"
	"example.org/driveline/marinecalc/flange"
	q "example.org/driveline/marinecalc/quantity"
)

// VDI 2230 (2003), fine threads of grade 8.8: an M20 × 1.5 with a friction of
// 0.12 in thread and face is tightened with 454 N·m to 148 kN. In a stack of
// 60 mm the whole clamp hangs on hundredths of a millimetre.
func ExampleOutput() {
	out, err := flange.Output(flange.OutputInput{
		NominalDiameter: 20 * q.Millimetre, Pitch: 1.5 * q.Millimetre, ThreadForm: fastener.Metric,
		NutTorque: 454 * q.NewtonMetre, ThreadFriction: 0.12, NutFriction: 0.12, NutFaceDiameter: 28.19 * q.Millimetre,
		SeatDiameter: 22 * q.Millimetre, HubLength: 60 * q.Millimetre, HubDiameter: 36 * q.Millimetre,
		ShaftModulus: 207000 * q.Megapascal, StackModulus: 207000 * q.Megapascal, TorqueScatter: 1, TurnScatter: 1,
		FaceWear: 0.05 * q.Millimetre, EarlierWear: q.Length(math.NaN()), PullAstern: q.Force(math.NaN()), BendingMoment: q.Torque(math.NaN()),
		Drive: flange.Spline, TeethBearing: 1,
	})
	fmt.Printf("clamp %.0f kN, gone at %.3f mm of wear, with 0.05 mm %.0f %% left, %v\n", float64(out.FittedClamp/q.Kilonewton), float64(out.WearToLoss/q.Millimetre), 100*float64(out.ShareLeft), err)
	// Output: clamp 148 kN, gone at 0.226 mm of wear, with 0.05 mm 78 % left, <nil>
}
