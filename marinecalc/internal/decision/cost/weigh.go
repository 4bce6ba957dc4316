// Expected cost of repairing, replacing and leaving: Weigh.

package cost

import (
	"math"
	"slices"

	"example.org/driveline/marinecalc/quantity"
)

// Result is what each way out is expected to cost. A figure that cannot be
// given is NaN.
type Result struct {
	Cheapest               string         // RepairIt, ReplaceIt or LeaveIt, the first and last also IfFree; TooClose where the two cheapest are alike
	ReplacingCheaperChance quantity.Ratio // 1 where replacing costs less than repairing, else 0; over the trials of a range it is the probability
	RepairExpected         quantity.Money
	ReplaceExpected        quantity.Money
	LeaveExpected          quantity.Money // NaN where leaving it is not weighed
	Saving                 quantity.Money // of replacing beside repairing; minus where repairing costs less

	RepeatAnswer      string         // what the chance of a repeat does to the answer
	BreakEvenFails    quantity.Ratio // RepairFailsAgain at which both cost alike; under 0 or over 1 where no chance does that
	BreakEvenNotCured quantity.Ratio // RepairNotCured at which both cost alike, likewise
	BreakEvenSeasons  string         // from how many seasons on replacing costs no more
	TurningInput      string         // the input whose change turns the answer soonest
	TurningWords      string         // by how many percent of itself it must change; "" where none can
	MissAnswer        string         // what the chance of missing the cause does to the answer; "" where its break-even can be met

	LookFirst      string         // whether to look first; "" where it is not weighed
	LookWorth      quantity.Money // of the look, before its own cost
	LookCosts      quantity.Money
	ActNowCosts    quantity.Money // expected loss by acting without a look
	LookFirstCosts quantity.Money // the same after the look, with its own cost

	Look, Weighs, Takes, Taken, Repairs, Replaces, InMoney string // filled in by the package that knows the work
	Engineering                                            [MostAsked]Asked

	RepairFailures      quantity.Ratio // expected over the seasons, later ones counted by the interest
	ReplaceFailures     quantity.Ratio
	RepairLabour        quantity.Money // yard and own
	ReplaceLabour       quantity.Money
	RepairLoss          quantity.Money // of use while it is done
	ReplaceLoss         quantity.Money
	RepairFirstCost     quantity.Money
	ReplaceFirstCost    quantity.Money
	FailureLoss         quantity.Money // of one failure, over and above mending it
	RepairSeason        quantity.Ratio // chance a season
	ReplaceSeason       quantity.Ratio
	RepairMisses        quantity.Ratio // the cause, chance
	ReplaceMisses       quantity.Ratio
	SeasonsCounted      quantity.Ratio // seasons, later ones counted by the interest
	RepairCovered       quantity.Ratio // the same under the repair's warranty
	ReplaceCovered      quantity.Ratio
	RepairWarrantyPays  quantity.Money // expected
	ReplaceWarrantyPays quantity.Money
}

// Procedures are the ids of the work that is weighed.
func (r Result) Procedures() (ids []string) {
	for _, id := range []string{r.Repairs, r.Replaces} {
		if id != "" {
			ids = append(ids, id)
		}
	}
	return ids
}

// Asked is what the engineering asks for when one cause is cured, whatever it
// costs.
type Asked struct{ Cause, Known, Renew, Keep, When string }

// MostAsked is of how many causes that is told.
const MostAsked = 6

// Unknown is the result while no money is known: every figure is NaN.
func Unknown() Result {
	nan, none := quantity.Money(math.NaN()), quantity.Ratio(math.NaN())
	return Result{
		ReplacingCheaperChance: none, RepairExpected: nan, ReplaceExpected: nan, LeaveExpected: nan, Saving: nan,
		BreakEvenFails: none, BreakEvenNotCured: none, LookWorth: nan, LookCosts: nan, ActNowCosts: nan, LookFirstCosts: nan,
		RepairFailures: none, ReplaceFailures: none, RepairLabour: nan, ReplaceLabour: nan, RepairLoss: nan, ReplaceLoss: nan,
		RepairFirstCost: nan, ReplaceFirstCost: nan, FailureLoss: nan, RepairSeason: none, ReplaceSeason: none,
		RepairMisses: none, ReplaceMisses: none, SeasonsCounted: none, RepairCovered: none, ReplaceCovered: none,
		RepairWarrantyPays: nan, ReplaceWarrantyPays: nan,
	}
}

// The codes of Cheapest, for which the schema of repair-or-replace has the words.
const (
	RepairIt  = "repair"
	ReplaceIt = "replace"
	LeaveIt   = "leave"
	TooClose  = "too-close"

	RepairIfFree = "repair-if-free" // RepairIt, while nobody said what a failure costs
	LeaveIfFree  = "leave-if-free"
)

// Way is the way out behind a code of Cheapest.
func Way(code string) string {
	switch code {
	case RepairIfFree:
		return RepairIt
	case LeaveIfFree:
		return LeaveIt
	}
	return code
}

// The codes of RepeatAnswer, for which the schema of repair-or-replace has the words.
const (
	RepeatDecides = "break-even"
	NeverRepair   = "replace-anyway"
	AlwaysRepair  = "repair-anyway"
)

// The codes of MissAnswer, for which the schema of repair-or-replace has the words.
const (
	NeverMiss  = "replace-anyway"
	AlwaysMiss = "repair-anyway"
)

// The codes of TurningInput, for which the schema of repair-or-replace has the words.
const (
	NothingTurns   = "none"
	byReplaceParts = "replace-parts"
	byRepairParts  = "repair-parts"
	byYardRate     = "yard-rate"
	byReplaceYard  = "replace-yard-hours"
	byRepairYard   = "repair-yard-hours"
	byOwnHour      = "own-hour"
	byDay          = "day-of-use"
	byFailure      = "failure-cost"
	byRepeat       = "repair-fails-again"
	byNew          = "new-fails"
	byMiss         = "repair-misses"
)

// Weigh calculates what repairing, replacing and leaving are expected to cost.
//
// Doing it once costs parts, yard hours, own hours and lost days of use. It
// misses the cause with chance u, shows that in the same season and is done
// again, with the same chance: u + u² + … = u/(1-u) repeats, the sum of a
// geometric series. In each season it fails with chance q, which takes
// 1/(1-u) jobs to mend. The expected number of failures is therefore
// F = (u + q·S)/(1-u), where S is the number of seasons or, with interest i,
// their present worth (1-(1+i)^-N)/i: the uniform-series present-worth factor
// of engineering economy. Each failure costs its own loss and the job again;
// the warranty of the first job pays its share of parts and yard work for
// failures in its seasons. The expected value of a choice is the sum of its
// outcomes weighed by their chances (decision theory; general textbooks).
//
// Left as it is, the part fails with its chance a season, costs the loss and
// is then replaced, with what replacing costs for the seasons that are left.
//
// The error is a *problem.Error: money, times or chances out of range, seasons
// under 1 or over MostSeasons, a life in engine hours without engine hours.
func Weigh(in Input) (Result, error) {
	if bad := in.validate(); len(bad) > 0 {
		return Result{}, bad.Err()
	}
	r, p := in.repair(), in.replace()
	b := in.loss()
	out := Result{
		RepairLabour:     labour(&in, in.RepairYardTime, in.RepairOwnTime),
		ReplaceLabour:    labour(&in, in.ReplaceYardTime, in.ReplaceOwnTime),
		RepairLoss:       quantity.Money(float64(in.DayValue) * float64(in.RepairDays) / day),
		ReplaceLoss:      quantity.Money(float64(in.DayValue) * float64(in.ReplaceDays) / day),
		RepairFirstCost:  quantity.Money(r.first),
		ReplaceFirstCost: quantity.Money(p.first),
		FailureLoss:      quantity.Money(b),
		RepairSeason:     quantity.Ratio(r.fails),
		ReplaceSeason:    quantity.Ratio(p.fails),
		RepairMisses:     quantity.Ratio(r.miss),
		ReplaceMisses:    quantity.Ratio(p.miss),
		LeaveExpected:    quantity.Money(math.NaN()),
	}
	var sr, sp, s float64
	t := in.years()
	for range in.Seasons {
		sr, sp, s = t.next(&r, &p)
	}
	out.SeasonsCounted, out.RepairCovered, out.ReplaceCovered = quantity.Ratio(s), quantity.Ratio(sr), quantity.Ratio(sp)
	out.RepairFailures, out.ReplaceFailures = quantity.Ratio(r.failures(s)), quantity.Ratio(p.failures(s))
	out.RepairWarrantyPays = quantity.Money(r.covered * r.underWarranty(sr))
	out.ReplaceWarrantyPays = quantity.Money(p.covered * p.underWarranty(sp))
	er, ep := r.cost(s, sr, b), p.cost(s, sp, b)
	out.RepairExpected, out.ReplaceExpected, out.Saving = quantity.Money(er), quantity.Money(ep), quantity.Money(er-ep)
	out.Cheapest = RepairIt
	if ep < er {
		out.Cheapest, out.ReplacingCheaperChance = ReplaceIt, 1
	}
	if in.LeaveFails != 0 {
		l := in.leave(&p, b)
		out.LeaveExpected = quantity.Money(l)
		if l < min(er, ep) {
			out.Cheapest = LeaveIt
		}
	}
	if in.alike(er, ep, float64(out.LeaveExpected)) {
		out.Cheapest = TooClose
	}
	out.breakEven(&in, &r, &p, s, sr, sp, b)
	if in.alike(er, ep, math.NaN()) {
		out.BreakEvenSeasons = evenTooClose
	}
	in.look(&out)
	if !in.FailureTold && out.FailureLoss == 0 { // a dearer failure makes replacing the cheaper way, never the others
		switch out.Cheapest {
		case RepairIt:
			out.Cheapest = RepairIfFree
		case LeaveIt:
			out.Cheapest = LeaveIfFree
		}
	}
	return out, nil
}

// alike tells whether the two cheapest ways cost nearly the same. leave is NaN
// where leaving is not weighed.
func (in *Input) alike(repair, replace, leave float64) bool {
	costs := []float64{repair, replace, leave}
	if math.IsNaN(leave) {
		costs = costs[:2]
	}
	slices.Sort(costs)
	return costs[1]-costs[0] < float64(in.AlikeWithin)*costs[0]
}

func labour(in *Input, yard, own quantity.Time) quantity.Money {
	return quantity.Money((float64(in.YardHourCost)*float64(yard) + float64(in.OwnHourValue)*float64(own)) / hour)
}

// loss is what one failure costs over and above mending it.
func (in *Input) loss() float64 {
	return float64(in.FailureCost) + float64(in.DayValue)*float64(in.FailureDays)/day
}

// failures is the expected number over s seasons.
func (w *way) failures(s float64) float64 { return (w.miss + w.fails*s) / (1 - w.miss) }

// underWarranty is the expected number of those that the warranty meets.
func (w *way) underWarranty(s float64) float64 {
	if w.warranty == 0 {
		return 0
	}
	return w.failures(s)
}

// cost is the expected cost over s seasons, of which the warranty covers sw.
func (w *way) cost(s, sw, loss float64) float64 {
	return w.first + w.failures(s)*(loss+w.first) - w.covered*w.underWarranty(sw)
}

// years counts seasons one after the other, each at its present worth.
type years struct {
	n               int
	worth, discount float64
	all, sr, sp     float64
}

func (in *Input) years() years { return years{worth: 1, discount: 1 / (1 + float64(in.Interest))} }

// next adds a season and gives the seasons so far: those under the repair's
// warranty, under the replacement's, and all.
func (y *years) next(r, p *way) (sr, sp, all float64) {
	y.n++
	y.worth *= y.discount
	y.all += y.worth
	if y.n <= r.warranty {
		y.sr = y.all
	}
	if y.n <= p.warranty {
		y.sp = y.all
	}
	return y.sr, y.sp, y.all
}

// leave is the expected cost of leaving it, calculated from the last season
// backwards: in a season it fails, costs the loss and is replaced for the
// seasons that are left, or it goes on.
func (in *Input) leave(p *way, loss float64) float64 {
	t, q, l := in.years(), chance(in.LeaveFails), 0.0
	replaced := p.cost(0, 0, loss)
	for range in.Seasons {
		l = t.discount * (q*(loss+replaced) + (1-q)*l)
		_, sp, s := t.next(p, p)
		replaced = p.cost(s, sp, loss)
	}
	return l
}

// Costs are the expected costs for one length of service.
type Costs struct{ Repair, Replace, Leave quantity.Money }

// Curve fills to with the costs for 1, 2, 3 … seasons. Leave is NaN where it
// is not weighed. The error is that of Weigh.
func Curve(in Input, to []Costs) error {
	if bad := in.validate(); len(bad) > 0 {
		return bad.Err()
	}
	r, p, b := in.repair(), in.replace(), in.loss()
	t := in.years()
	for i := range to {
		sr, sp, s := t.next(&r, &p)
		to[i] = Costs{quantity.Money(r.cost(s, sr, b)), quantity.Money(p.cost(s, sp, b)), quantity.Money(math.NaN())}
		if in.LeaveFails != 0 {
			in.Seasons = i + 1
			to[i].Leave = quantity.Money(in.leave(&p, b))
		}
	}
	return nil
}
