package line_test

import (
	"fmt"
	"math"

	"example.org/driveline/marinecalc/line"
	q "example.org/driveline/marinecalc/quantity"
)

// An invented line: a chain is as strong as its weakest link, which is the
// propeller on its taper here, and what is not known of another is said.
func ExampleJoints() {
	unknown := q.Torque(math.NaN())
	out, err := line.Joints(line.JointsInput{
		ShaftTorque: 150, AsternTorque: 130, PeakTorque: 240,
		HubFriction: unknown, HubFlanks: unknown, HubPullMargin: q.Ratio(math.NaN()),
		FacesAhead: 600, FacesAstern: 580, BoreAhead: 500, BoreAstern: 480, TaperAhead: 300, TaperAstern: 290,
		BoreByFriction: unknown, TaperByFriction: unknown, CouplingKey: unknown, PropellerKey: unknown,
	})
	fmt.Printf("%s holds %.1f times the torque ahead (%s), %v\n", out.WeakestAhead, out.LeastKnownAhead, out.SureAhead, err)
	for _, j := range out.Joints {
		if j.Wanted != line.WantsNothing {
			fmt.Printf("%s: not known, wants %s\n", j.Joint, j.Wanted)
		}
	}
	// Output:
	// propeller-taper holds 2.0 times the torque ahead (of-known), <nil>
	// output-flange: not known, wants friction
}
