// Package decision weighs repairing, replacing and leaving a part. The
// arithmetic is package cost below it; this one binds it to the sheet and
// draws it.
package decision

import (
	"math"

	"example.org/driveline/marinecalc/internal/calc"
	"example.org/driveline/marinecalc/internal/decision/cost"
	"example.org/driveline/marinecalc/internal/picture"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/sheet"
)

// Weigh weighs the ways out. What is expected is the mean over the ranges of
// the chances, which lean; the trials are each with a draw of them. A
// break-even that is no chance is left off the sheet, where words say so
// instead; in the trials it stays left off, and the others stay chances.
func Weigh(s *calc.Session, settler Settler) calc.PerRun[cost.Input, cost.Result] {
	var known, failsNever, missesNever bool // no chance meets the break-even
	var estimates, means cost.Input
	var m matter
	return calc.PerRun[cost.Input, cost.Result]{Compute: func(in cost.Input) (cost.Result, error) {
		if !known {
			estimates, m = in, about(s, in, settler)
			if out, why := m.withoutMoney(s, in); why != nil {
				return out, why
			} else if m.noMoney {
				return out, nil
			}
			means = m.look(expected(s, in))
		}
		given := in
		in = m.look(in)
		if given == estimates {
			in = means
		}
		out, err := cost.Weigh(in)
		if err != nil {
			return out, err
		}
		if !known {
			m.decide(s, in, &out)
			known, failsNever, missesNever = true, out.BreakEvenFails < 0 || out.BreakEvenFails > 1, out.MissAnswer != ""
		}
		out.Engineering, out.InMoney = m.engineering, m.inMoney
		out.Look, out.Weighs, out.Takes, out.Taken, out.Repairs, out.Replaces = m.question, m.weighs, m.takes, m.taken, m.repairs.ID, m.replaces.ID
		out.BreakEvenFails = asChance(out.BreakEvenFails, failsNever)
		out.BreakEvenNotCured = asChance(out.BreakEvenNotCured, missesNever)
		return out, nil
	}, Draw: func(_ cost.Input, out cost.Result, b picture.Brush) []sheet.Drawing {
		return drawBreakEven(means, out, b)
	}}
}

// expected gives every chance the value that stands for its range, so that
// the cost at these values is the mean cost over the ranges, which are
// independent: the cost is linear in a chance to fail, and goes with
// 1/(1-u) of a chance u to miss the cause.
func expected(s *calc.Session, in cost.Input) cost.Input {
	mean := func(input string, v *quantity.Ratio, of, back func(float64) float64) {
		if f, ok := s.Spread(input); ok {
			*v = quantity.Ratio(back(f.Mean(of)))
		}
	}
	within := func(most float64) func(float64) float64 {
		return func(p float64) float64 { return min(max(p, 0), most) }
	}
	same := func(v float64) float64 { return v }
	jobs := func(u float64) float64 { return 1 / (1 - within(cost.MostNotCured)(u)) }
	missed := func(jobs float64) float64 { return 1 - 1/jobs }
	mean("repairNotCured", &in.RepairNotCured, jobs, missed)
	mean("replaceNotCured", &in.ReplaceNotCured, jobs, missed)
	mean("repairFailsAgain", &in.RepairFailsAgain, within(1), same)
	mean("replaceFails", &in.ReplaceFails, within(1), same)
	mean("leaveFails", &in.LeaveFails, within(1), same)
	hours, _ := s.Spread("engineHoursPerSeason")
	worn := func(input string, life *quantity.Time, fails *quantity.Ratio) {
		f, ok := s.Spread(input)
		if *life <= 0 || !ok || in.EngineHoursPerSeason <= 0 {
			return
		}
		*fails = quantity.Ratio(f.Mean(func(l float64) float64 {
			return hours.Mean(func(h float64) float64 { return -math.Expm1(-max(h, 0) / max(l, 1)) })
		}))
		*life = 0
	}
	worn("repairLife", &in.RepairLife, &in.RepairFailsAgain)
	worn("replaceLife", &in.ReplaceLife, &in.ReplaceFails)
	return in
}

// asChance keeps a drawn break-even between never and always.
func asChance(p quantity.Ratio, leftOff bool) quantity.Ratio {
	if leftOff {
		return quantity.Ratio(math.NaN())
	}
	return min(max(p, 0), 1)
}
