package catalogue

import (
	"math"

	"example.org/driveline/marinecalc/internal/calc"
	"example.org/driveline/marinecalc/internal/drawing/wholeline"
	"example.org/driveline/marinecalc/line"
	"example.org/driveline/marinecalc/quantity"
)

// lineJoints asks for what a joint holds, rather than name the weakest of none. A
// margin that the estimates tell is told in every trial: left out where a trial has
// it at 1 or more and an unknown joint could be weaker, its range would end at 1
// while its probability goes on.
func lineJoints(*calc.Session) calc.PerRun[line.JointsInput, line.JointsResult] {
	first := true
	var told, toldOfKnown [3]bool
	return calc.PerRun[line.JointsInput, line.JointsResult]{Compute: func(in line.JointsInput) (line.JointsResult, error) {
		out, err := line.Joints(in)
		for i, at := range [...]struct{ least, known *quantity.Ratio }{{&out.LeastAhead, &out.LeastKnownAhead}, {&out.LeastAstern, &out.LeastKnownAstern}, {&out.LeastShock, &out.LeastKnownShock}} {
			if first {
				told[i], toldOfKnown[i] = !math.IsNaN(float64(*at.least)), !math.IsNaN(float64(*at.known))
				continue
			}
			if told[i] && math.IsNaN(float64(*at.least)) {
				*at.least = weakest(&out, i)
			}
			if *at.known = quantity.Ratio(math.NaN()); toldOfKnown[i] {
				*at.known = weakest(&out, i)
			}
		}
		first = false
		if err == nil && out.SureAhead == line.NothingKnown && out.SureAstern == line.NothingKnown {
			return line.JointsResult{}, calc.Lacking{Input: "facesAhead", What: "of no joint is known what it holds", Hint: "coupling bolts, coupling bore, propeller taper or output flange"}
		}
		return out, err
	}, Draw: wholeline.LineJoints}
}

// weakest is the margin of the weakest joint known: ahead, astern or in a shock.
func weakest(out *line.JointsResult, which int) quantity.Ratio {
	for i := range out.Joints {
		j := &out.Joints[i]
		if [...]string{j.StandAhead, j.StandAstern, j.StandShock}[which] == line.Weakest {
			return [...]quantity.Ratio{j.Ahead, j.Astern, j.Shock}[which]
		}
	}
	return quantity.Ratio(math.NaN())
}
