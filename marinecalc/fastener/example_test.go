package fastener_test

import (
	"fmt"

	"example.org/driveline/marinecalc/fastener"
	q "example.org/driveline/marinecalc/quantity"
)

// Shigley, Mechanical Engineering Design, example 8-3 (values from memory,
// recomputed): a 3/4-16 UNF bolt of SAE grade 5 aimed at a clamp of 25 kip
// wants 3750 lbf·in by the nut factor 0.2. The book rounds the stress area to
// 0.373 in² and finds 67.0 ksi.
func ExamplePreload() {
	out, err := fastener.Preload(fastener.PreloadInput{
		NominalDiameter: 0.75 * q.Inch, Pitch: q.Inch / 16, ThreadForm: fastener.Inch,
		ProofStrength: 85 * q.KilopoundPerSquareInch, YieldStrength: 92 * q.KilopoundPerSquareInch,
		Target: fastener.Proof, ProofFraction: 0.78852, Method: fastener.Short, NutFactor: 0.2,
		PrevailingRule: fastener.Always, Control: fastener.ByTorque, TorqueScatter: 1,
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("area %.3f in²\n", float64(out.StressArea/q.SquareInch))
	fmt.Printf("clamp load %.3g kip\n", float64(out.Preload/q.PoundForce)/1000)
	fmt.Printf("torque %.3g lbf·in\n", float64(out.ShortTorque/q.PoundForceInch))
	// Output:
	// area 0.373 in²
	// clamp load 25 kip
	// torque 3.75e+03 lbf·in
}

// An M10 bolt of grade 8.8 in ductile iron of 448 MPa: the tapped thread wants
// 11.1 mm so that the bolt breaks first.
func ExampleEngagement() {
	out, err := fastener.Engagement(fastener.EngagementInput{
		NominalDiameter: 10 * q.Millimetre, Pitch: 1.5 * q.Millimetre, ThreadForm: fastener.Metric, EngagementLength: 10 * q.Millimetre,
		LostThreads: 1, ThreadShare: 1, TensileStrength: 800 * q.Megapascal, TappedTensileStrength: 448 * q.Megapascal, ShearShare: 0.5, Insert: fastener.NoInsert,
	})
	fmt.Printf("%s, %.1f mm wanted, %v\n", out.StripsFirst, float64(out.EngagementWanted/q.Millimetre), err)
	// Output: tapped-strips, 11.1 mm wanted, <nil>
}
