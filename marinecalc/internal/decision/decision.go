// Package decision weighs repairing, replacing and leaving a part. The
// arithmetic is package cost below it; this one binds it to the sheet and
// draws it.
package decision

import (
	"math"

	"example.org/driveline/marinecalc/internal/calc"
	"example.org/driveline/marinecalc/internal/decision/cost"
	"example.org/driveline/marinecalc/quantity"
)

// Weigh weighs the ways out. A break-even that is no chance, at the estimates
// themselves, is left off the sheet, where words say so instead; in the trials
// it stays left off, and the others stay chances.
func Weigh(*calc.Session) calc.PerRun[cost.Input, cost.Result] {
	var known, failsNever, missesNever bool // no chance meets the break-even
	return calc.PerRun[cost.Input, cost.Result]{Compute: func(in cost.Input) (cost.Result, error) {
		out, err := cost.Weigh(in)
		if err != nil {
			return out, err
		}
		if !known {
			known, failsNever, missesNever = true, out.BreakEvenFails < 0 || out.BreakEvenFails > 1, out.MissAnswer != ""
		}
		out.BreakEvenFails = asChance(out.BreakEvenFails, failsNever)
		out.BreakEvenNotCured = asChance(out.BreakEvenNotCured, missesNever)
		return out, nil
	}, Draw: drawBreakEven}
}

// asChance keeps a drawn break-even between never and always.
func asChance(p quantity.Ratio, leftOff bool) quantity.Ratio {
	if leftOff {
		return quantity.Ratio(math.NaN())
	}
	return min(max(p, 0), 1)
}
