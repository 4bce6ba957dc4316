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

// The vertical part of the worked example of Bloch and Geitner, Machinery
// Component Maintenance and Repair, pp. 198-199: bottom gap wide by 0.007 in,
// rim reading 0.011 in in all, read by dials on the shaft flange.
func ExampleDial() {
	var readings []align.DialReading
	for i, at := range [4]struct{ face, rim q.Length }{{0, 0}, {-3.5, -5.5}, {-7, -11}, {-3.5, -5.5}} {
		readings = append(readings, align.DialReading{Clock: q.Direction(i) * math.Pi / 2, Face: at.face * q.Thou, Rim: at.rim * q.Thou})
	}
	out, err := align.Dial(align.DialInput{
		CouplingKind: align.Rigid, CouplingDiameter: 4 * q.Inch, DialRadius: 2 * q.Inch, Swept: align.SweptTogether, DialReadings: readings,
	})
	fmt.Printf("gap %.1f thou, engine flange high by %.1f thou, %v\n", float64(out.GapVertical/q.Thou), float64(out.OffsetVertical/q.Thou), err)
	// Output: gap -7.0 thou, engine flange high by 5.5 thou, <nil>
}
