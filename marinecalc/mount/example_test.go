package mount_test

import (
	"fmt"
	"math"

	"example.org/driveline/marinecalc/mount"
	q "example.org/driveline/marinecalc/quantity"
)

// Bloch and Geitner, Machinery Component Maintenance and Repair, pp. 198-199,
// fig. 5-17 (the lengths 4 in, 9 in and 39 in inferred from the printed
// products): inboard feet 0.0212 in, outboard feet 0.0738 in down.
func ExampleMoves() {
	no := q.Length(math.NaN()) // not measured
	foot := func(name string, forward q.Length) mount.Mount {
		return mount.Mount{Name: name, Forward: forward, TravelUp: no, TravelDown: no, SidewaysSlack: no, FootGap: no}
	}
	out, err := mount.Moves(mount.MovesInput{
		Mounts:           []mount.Mount{foot("inboard", 9*q.Inch), foot("outboard", 39*q.Inch)},
		CouplingDiameter: 4 * q.Inch, GapVertical: -7 * q.Thou, OffsetVertical: 5.5 * q.Thou,
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, m := range out.Moves[:2] {
		fmt.Printf("%s: %.3f in\n", m.Name, float64(m.Raise/q.Inch))
	}
	// Output:
	// inboard: -0.021 in
	// outboard: -0.074 in
}
