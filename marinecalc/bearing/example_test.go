package bearing_test

import (
	"fmt"
	"math"

	"example.org/driveline/marinecalc/bearing"
	q "example.org/driveline/marinecalc/quantity"
)

// Shigley, Mechanical Engineering Design, example 11-1 (value from memory,
// recomputed): 400 lbf for 5000 h at 1725 rpm want a dynamic rating of
// 3211 lbf, which the book also gives as 14.3 kN.
func ExampleLife() {
	unknown := math.NaN()
	out, err := bearing.Life(bearing.LifeInput{
		Offset: q.Length(unknown), Angle: q.Angle(unknown), StaticRadialFactor: q.Ratio(unknown), StaticAxialFactor: q.Ratio(unknown),
		RollingKind: bearing.Ball, DynamicRating: 16 * q.Kilonewton, RadialLoad: 400 * q.PoundForce,
		RadialFactor: 0.56, AxialFactor: 1, LoadLimit: 0.4, LoadFactor: 1,
		ShaftSpeed: 1725 * q.RevolutionPerMinute, ReliabilityFactor: 1, WantedLife: 5000 * q.Hour,
	})
	fmt.Printf("%.0f lbf, %.1f kN, %v\n", float64(out.RatingNeeded/q.PoundForce), float64(out.RatingNeeded/q.Kilonewton), err)
	// Output: 3211 lbf, 14.3 kN, <nil>
}

// 46 CFR 61.20-23(a), as an examination item has it (rule from memory): a
// 15 in tail shaft, machinery amidships, worn 1/4 in of the 3/8 in allowed.
func ExampleClearance() {
	unread := q.Length(math.NaN())
	out, err := bearing.Clearance(bearing.ClearanceInput{
		BearingKind: bearing.Other, ShaftDiameter: 15 * q.Inch, BearingClearance: q.Inch / 4, WornLimit: 3 * q.Inch / 8,
		NewClearance: unread, EarlierClearance: unread, GrooveDepth: unread,
		LiftTravel: unread, SecondTravel: unread, WireIn: unread, MarkClearance: unread,
	})
	fmt.Printf("%.0f %% of the limit, %v\n", float64(out.ClearanceUse/q.Percent), err)
	// Output: 67 % of the limit, <nil>
}
