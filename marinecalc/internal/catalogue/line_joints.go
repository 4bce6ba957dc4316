package catalogue

import (
	"example.org/driveline/marinecalc/internal/calc"
	"example.org/driveline/marinecalc/internal/drawing/wholeline"
	"example.org/driveline/marinecalc/line"
)

// lineJoints asks for what a joint holds, rather than name the weakest of none.
func lineJoints(*calc.Session) calc.PerRun[line.JointsInput, line.JointsResult] {
	return calc.PerRun[line.JointsInput, line.JointsResult]{Compute: func(in line.JointsInput) (line.JointsResult, error) {
		out, err := line.Joints(in)
		if err == nil && out.SureAhead == line.NothingKnown && out.SureAstern == line.NothingKnown {
			return line.JointsResult{}, calc.Lacking{Input: "facesAhead", What: "of no joint is known what it holds", Hint: "coupling bolts, coupling bore, propeller taper or output flange"}
		}
		return out, err
	}, Draw: wholeline.LineJoints}
}
