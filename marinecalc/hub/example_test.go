package hub_test

import (
	"fmt"

	"example.org/driveline/marinecalc/hub"
	q "example.org/driveline/marinecalc/quantity"
)

// A steel hub of twice the diameter pressed on a solid steel shaft. For one metal
// and a solid shaft Lamé's equations shrink to p = E·δ/(2·d)·(1 − (d/D)²) and, at
// the bore, a hoop tension of (1 + (d/D)²)/(1 − (d/D)²) times that: 5/3 where the
// hub is twice as wide (Shigley, Mechanical Engineering Design, sec. 3-16, press
// and shrink fits; equation from memory).
func ExampleFit() {
	const interference = 0.02 * q.Millimetre
	f := hub.Fit{
		Diameter: 30 * q.Millimetre, Outside: 60 * q.Millimetre,
		HubModulus: 207000 * q.Megapascal, ShaftModulus: 207000 * q.Megapascal, HubPoisson: 0.292, ShaftPoisson: 0.292,
	}
	pressure := float64(interference) / f.Give()
	short := float64(f.HubModulus) * float64(interference) / (2 * float64(f.Diameter)) * (1 - 0.25)
	hoop := hub.Hoop(f.Diameter, f.Outside)
	fmt.Printf("%.2f MPa, by the equation for one metal %.2f MPa; hoop tension %.4f of it\n", pressure/1e6, short/1e6, hoop)
	// Output: 51.75 MPa, by the equation for one metal 51.75 MPa; hoop tension 1.6667 of it
}
