package align_test

import (
	"fmt"
	"math"

	"example.org/driveline/marinecalc/align"
	q "example.org/driveline/marinecalc/quantity"
)

// The limit that marine diesel makers' operator manuals print for a rigid
// coupling: 0.003 in on 3 in of diameter, 0.001 in for each inch.
func ExampleCoupling() {
	var readings []align.Reading
	for i, gap := range []q.Length{10 * q.Thou, 11.5 * q.Thou, 13 * q.Thou, 11.5 * q.Thou} {
		readings = append(readings, align.Reading{Clock: q.Direction(i) * math.Pi / 2, Gap: gap})
	}
	out, err := align.Coupling(align.CouplingInput{
		CouplingKind: align.Rigid, CouplingDiameter: 3 * q.Inch, Turned: align.BothFlanges, Readings: readings,
	})
	fmt.Printf("gap difference %.1f thou, %.4f of the diameter, %v\n", float64(out.GapDifference/q.Thou), float64(out.GapPerDiameter), err)
	// Output: gap difference 3.0 thou, 0.0010 of the diameter, <nil>
}
