package marinecalc

import (
	"math"

	"example.org/driveline/marinecalc/internal/decision/cost"
	"example.org/driveline/marinecalc/quantity"
)

// beyondChance is which break-even chances of a choice no chance can meet.
type beyondChance struct{ fails, misses bool }

// weigh weighs the ways out. A break-even that is no chance, at the estimates
// themselves, is left off the sheet, where words say so instead; in the trials
// it stays left off, and the others stay chances.
func weigh(s *session, in cost.Choice) (cost.Weighed, error) {
	out, err := cost.Weigh(in)
	if err != nil {
		return out, err
	}
	none, known := s.kept.(beyondChance)
	if !known {
		none.fails = out.BreakEvenFails < 0 || out.BreakEvenFails > 1
		none.misses = out.MissAnswer != ""
		s.kept = none
	}
	out.BreakEvenFails = asChance(out.BreakEvenFails, none.fails)
	out.BreakEvenNotCured = asChance(out.BreakEvenNotCured, none.misses)
	return out, nil
}

// asChance keeps a drawn break-even between never and always.
func asChance(p quantity.Ratio, leftOff bool) quantity.Ratio {
	if leftOff {
		return quantity.Ratio(math.NaN())
	}
	return min(max(p, 0), 1)
}
