package vibration_test

import (
	"fmt"

	"example.org/driveline/marinecalc/vibration"
)

// The multipliers that the Case Western Reserve University bearing data centre
// prints for its drive-end bearing, a 6205 with nine balls of 0.3126 in on a
// pitch circle of 1.537 in: 3.5848, 5.4152, 0.39828 and 4.7135.
func ExampleBearing() {
	o := vibration.Bearing(9, 0.3126, 1.537, 0)
	fmt.Printf("outer %.2f, inner %.2f, cage %.3f, ball %.2f\n", o.Outer, o.Inner, o.Cage, o.Ball)
	// Output: outer 3.58, inner 5.42, cage 0.398, ball 4.71
}
