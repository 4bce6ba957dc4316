// What would turn the answer.

package cost

import (
	"math"
	"strconv"

	"example.org/driveline/marinecalc/quantity"
)

// breakEven finds where repairing and replacing cost alike.
func (out *Result) breakEven(in *Input, r, p *way, s, sr, sp, loss float64) {
	ep := p.cost(s, sp, loss)
	out.BreakEvenFails = quantity.Ratio(r.evenFails(s, sr, loss, ep))
	out.BreakEvenNotCured = quantity.Ratio(r.evenMiss(s, sr, loss, ep))
	switch {
	case out.BreakEvenFails < 0:
		out.RepeatAnswer = NeverRepair
	case out.BreakEvenFails > 1:
		out.RepeatAnswer = AlwaysRepair
	default:
		out.RepeatAnswer = RepeatDecides
	}
	sure, mostly := *r, *r
	sure.miss, mostly.miss = 0, MostNotCured
	switch {
	case sure.cost(s, sr, loss) > ep:
		out.MissAnswer = NeverMiss
	case mostly.cost(s, sr, loss) < ep:
		out.MissAnswer = AlwaysMiss
	}
	out.BreakEvenSeasons = fromSeasons[even(in, r, p, loss)]
	out.turn(in, s, sr, sp)
}

// evenTooClose is said where both ways cost about the same.
const evenTooClose = "too close to tell over these seasons"

// fromSeasons says each break-even; the first is for none.
var fromSeasons = func() (texts [MostSeasons + 1]string) {
	texts[0] = "not within " + strconv.Itoa(MostSeasons) + " seasons"
	texts[1] = "from the first season on"
	for n := 2; n <= MostSeasons; n++ {
		texts[n] = "from " + strconv.Itoa(n) + " seasons on"
	}
	return texts
}()

// byPercent says each change of an input, from a hundred percent less on.
var byPercent = func() (texts [201]string) {
	for n := 1; n <= 100; n++ {
		texts[100-n] = strconv.Itoa(n) + " % less"
		texts[100+n] = strconv.Itoa(n) + " % more"
	}
	texts[100] = "less than 1 % another"
	return texts
}()

// EvenSeasons is the number of seasons from which on replacing costs no more
// than repairing: after the last over which repairing costs less, or both cost too
// nearly the same to tell; 0 when there is none up to MostSeasons.
func EvenSeasons(in Input) int {
	r, p := in.repair(), in.replace()
	return even(&in, &r, &p, in.loss())
}

func even(in *Input, r, p *way, loss float64) int {
	t := in.years()
	from := 1
	for n := range MostSeasons {
		sr, sp, s := t.next(r, p)
		if er, ep := r.cost(s, sr, loss), p.cost(s, sp, loss); er < ep || in.alike(er, ep, math.NaN()) {
			from = n + 2
		}
	}
	if from > MostSeasons {
		return 0
	}
	return from
}

// evenFails is the chance a season at which the way costs as much as other:
// its cost is linear in that chance.
func (w *way) evenFails(s, sw, loss, other float64) float64 {
	job := loss + w.first
	perChance := (s*job - w.paid()*sw) / (1 - w.miss)
	never := *w
	never.fails = 0
	return (other - never.cost(s, sw, loss)) / perChance
}

// evenMiss is the chance of missing the cause at which the way costs as much
// as other: first + (u·a + b)/(1-u) = other.
func (w *way) evenMiss(s, sw, loss, other float64) float64 {
	job := loss + w.first
	a := job - w.paid()
	b := w.fails * (s*job - w.paid()*sw)
	return (other - w.first - b) / (a + other - w.first)
}

// paid is what a warranty pays of one job.
func (w *way) paid() float64 {
	if w.warranty == 0 {
		return 0
	}
	return w.covered
}

// turn finds the input whose smallest share of change makes both cost alike.
// The difference is linear in each of those tried, so that doubling one tells
// its slope.
func (out *Result) turn(in *Input, s, sr, sp float64) {
	gap := func(c *Input) float64 {
		r, p, b := c.repair(), c.replace(), c.loss()
		return r.cost(s, sr, b) - p.cost(s, sp, b)
	}
	now := gap(in)
	out.TurningInput = NothingTurns
	least := 1.0
	try := func(name string, change float64) {
		if math.Abs(change) < least {
			least = math.Abs(change)
			out.TurningInput, out.TurningWords = name, byPercent[100+int(math.Round(100*change))]
		}
	}
	c := *in
	money := func(name string, x *quantity.Money) {
		was := *x
		*x *= 2
		try(name, -now/(gap(&c)-now))
		*x = was
	}
	money(byReplaceParts, &c.ReplaceParts)
	money(byRepairParts, &c.RepairParts)
	money(byYardRate, &c.YardHourCost)
	money(byOwnHour, &c.OwnHourValue)
	money(byDay, &c.DayValue)
	money(byFailure, &c.FailureCost)
	hours := func(name string, x *quantity.Time) {
		was := *x
		*x *= 2
		try(name, -now/(gap(&c)-now))
		*x = was
	}
	hours(byReplaceYard, &c.ReplaceYardTime)
	hours(byRepairYard, &c.RepairYardTime)
	p := in.replace()
	try(byNew, p.evenFails(s, sp, in.loss(), float64(out.RepairExpected))/p.fails-1)
	try(byRepeat, float64(out.BreakEvenFails)/float64(out.RepairSeason)-1)
	if out.BreakEvenNotCured <= MostNotCured {
		try(byMiss, float64(out.BreakEvenNotCured)/chance(in.RepairNotCured)-1)
	}
}
