package catalogue

import (
	"example.org/driveline/marinecalc/coupling"
	"example.org/driveline/marinecalc/internal/calc"
	"example.org/driveline/marinecalc/internal/drawing/joints"
	"example.org/driveline/marinecalc/quantity"
)

// couplingGrip gives no margin of a clamp that stretches its bolt, by the clamp
// as it stands. In the trials it scatters round that, and one that meets a
// stretched bolt there is no trial without a margin. Threads of which no turn bears
// hold next to nothing, which is not the same as threads of which nothing is known.
func couplingGrip(*calc.Session) calc.PerRun[coupling.GripInput, coupling.GripResult] {
	told, stretched := false, false
	return calc.PerRun[coupling.GripInput, coupling.GripResult]{Compute: func(in coupling.GripInput) (coupling.GripResult, error) {
		if in.StrippingLoad == 0 {
			in.StrippingLoad = strippedAlready
		}
		if told {
			return coupling.GripAt(in, stretched)
		}
		out, err := coupling.Grip(in)
		if err == nil {
			told, stretched = true, out.ClampProofUse > 1
		}
		return out, err
	}, Draw: joints.CouplingGrip}
}

// strippedAlready is what a thread clamps of which no turn bears.
const strippedAlready quantity.Force = 1e-6
