package cost

import (
	"fmt"
	"math"
	"testing"

	"gonum.org/v1/gonum/mat"

	"example.org/driveline/marinecalc/internal/parttest"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/quantity"
)

func choice() Input {
	return Input{
		Seasons: 8, YardHourCost: 85, OwnHourValue: 20, DayValue: 60, FailureCost: 450, FailureDays: 5 * day,
		RepairParts: 180, RepairYardTime: 4 * hour, RepairOwnTime: 6 * hour, RepairDays: day, RepairNotCured: 0.15, RepairFailsAgain: 0.08,
		RepairWarranty: 1, RepairWarrantyShare: 0.5,
		ReplaceParts: 640, ReplaceYardTime: 5 * hour, ReplaceOwnTime: 4 * hour, ReplaceDays: 2 * day, ReplaceNotCured: 0.08, ReplaceFails: 0.02,
		ReplaceWarranty: 2, ReplaceWarrantyShare: 0.6,
		LeaveFails: 0.35,
	}
}

func weigh(t *testing.T, c Input) Result {
	t.Helper()
	return parttest.Must(t, Weigh, c)
}

func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance*math.Max(1, math.Abs(want))) {
		t.Errorf("%s is %.12g, want %.12g", what, got, want)
	}
}

// The expected number of failures is that of the same story told as an
// absorbing Markov chain, whose expected visits are the inverse of I - Q
// (Kemeny and Snell, Finite Markov Chains: fundamental matrix, from memory),
// solved by gonum.
func TestFailuresAreTheVisitsOfAMarkovChain(t *testing.T) {
	for _, c := range []struct {
		seasons     int
		miss, fails float64
	}{{1, 0, 0.5}, {8, 0.15, 0.08}, {30, 0.4, 0.25}, {5, 0.9, 1}} {
		n := c.seasons
		// State 0 is the first job, 2k-1 the start of season k, 2k a failure in it.
		size := 2*n + 1
		q := mat.NewDense(size, size, nil)
		q.Set(0, 0, c.miss)
		q.Set(0, 1, 1-c.miss)
		for k := 1; k <= n; k++ {
			start, failed := 2*k-1, 2*k
			q.Set(start, failed, c.fails)
			q.Set(failed, failed, c.miss)
			if k < n {
				q.Set(start, start+2, 1-c.fails)
				q.Set(failed, start+2, 1-c.miss)
			}
		}
		var left, visits mat.Dense
		unit := mat.NewDiagDense(size, nil)
		for i := range size {
			unit.SetDiag(i, 1)
		}
		left.Sub(unit, q)
		if err := visits.Inverse(&left); err != nil {
			t.Fatal(err)
		}
		want := visits.At(0, 0) - 1
		for k := 1; k <= n; k++ {
			want += visits.At(0, 2*k)
		}
		in := choice()
		in.Seasons, in.RepairNotCured, in.RepairFailsAgain = n, quantity.Ratio(c.miss), quantity.Ratio(c.fails)
		near(t, "failures", float64(weigh(t, in).RepairFailures), want, 1e-10)
	}
}

// Leaving it, told outcome by outcome: the season of the first failure, and
// what replacing costs for the seasons that are left.
func TestLeavingIsTheSumOfItsOutcomes(t *testing.T) {
	for _, interest := range []float64{0, 0.05} {
		in := choice()
		in.Interest = quantity.Ratio(interest)
		const q, miss, fails = 0.35, 0.08, 0.02
		loss, job, covered := 750.0, 640+5*85+4*20+2*60.0, 0.6*(640+5*85.0)
		want := 0.0
		for k := 1; k <= in.Seasons; k++ {
			chanceThen := math.Pow(1-q, float64(k-1)) * q
			after, warranted := miss/(1-miss), miss/(1-miss)
			for m := 1; m <= in.Seasons-k; m++ {
				f := fails / (1 - miss) * math.Pow(1+interest, -float64(m))
				after += f
				if m <= 2 {
					warranted += f
				}
			}
			want += chanceThen * math.Pow(1+interest, -float64(k)) * (loss + job + after*(loss+job) - warranted*covered)
		}
		near(t, "leaving", float64(weigh(t, in).LeaveExpected), want, 1e-12)
	}
}

// By hand: repair 180 + 4·85 + 6·20 + 60 = 700, replace 640 + 425 + 80 + 120
// = 1265, a failure loses 450 + 5·60 = 750. F_r = (0.15 + 0.64)/0.85,
// F_p = (0.08 + 0.16)/0.92. Warranties: half of 520 over the first season,
// six tenths of 1065 over the first two.
func TestByHand(t *testing.T) {
	out := weigh(t, choice())
	near(t, "repairing", float64(out.RepairExpected), 700+0.79/0.85*1450-260*0.23/0.85, 1e-12)
	near(t, "replacing", float64(out.ReplaceExpected), 1265+0.24/0.92*2015-639*0.12/0.92, 1e-12)
}

// At each break-even both cost alike.
func TestBothCostAlikeAtTheBreakEven(t *testing.T) {
	for _, interest := range []float64{0, 0.04} {
		in := choice()
		in.Interest = quantity.Ratio(interest)
		out := weigh(t, in)
		at := in
		at.RepairFailsAgain = out.BreakEvenFails
		near(t, "saving at the even chance to fail", float64(weigh(t, at).Saving), 0, 1e-9)
		at = in
		at.RepairNotCured = out.BreakEvenNotCured
		near(t, "saving at the even chance to miss", float64(weigh(t, at).Saving), 0, 1e-9)
	}
	in := choice()
	even := EvenSeasons(in)
	if even < 2 {
		t.Fatalf("even at %d seasons", even)
	}
	in.Seasons = even
	if s := weigh(t, in).Saving; s < 0 {
		t.Errorf("at %d seasons replacing still costs %g more", even, -s)
	}
	in.Seasons--
	if s := weigh(t, in).Saving; s >= 0 {
		t.Errorf("at %d seasons replacing already saves %g", in.Seasons, s)
	}
}

// The change that is named does turn the answer, and half of it does not.
func TestTheNamedChangeTurnsTheAnswer(t *testing.T) {
	in := choice()
	in.RepairFailsAgain = 0.02
	in.ReplaceParts = 700
	out := weigh(t, in)
	if out.Cheapest != RepairIt || out.TurningInput == NothingTurns || out.TurningWords == "" {
		t.Fatalf("%+v", out)
	}
	knobs := map[string]func(*Input, float64){
		byReplaceParts: func(c *Input, f float64) { c.ReplaceParts *= quantity.Money(f) },
		byMiss:         func(c *Input, f float64) { c.RepairNotCured *= quantity.Ratio(f) },
		byYardRate:     func(c *Input, f float64) { c.YardHourCost *= quantity.Money(f) },
		byRepeat:       func(c *Input, f float64) { c.RepairFailsAgain *= quantity.Ratio(f) },
	}
	knob := knobs[out.TurningInput]
	if knob == nil {
		t.Fatalf("%q turns it; give the test a knob for it", out.TurningInput)
	}
	turned := func(percent float64) bool {
		c := in
		knob(&c, 1+percent/100)
		return weigh(t, c).Saving >= 0
	}
	var p float64
	var side string
	if _, err := fmt.Sscanf(out.TurningWords, "%g %% %s", &p, &side); err != nil {
		t.Fatal(err)
	}
	if side == "less" {
		p = -p
	}
	if turned(p/2) || !turned(p+math.Copysign(1, p)) {
		t.Errorf("%s by %g %% does not turn it", out.TurningInput, p)
	}
}

func TestProperties(t *testing.T) {
	base := weigh(t, choice())
	worse := func(what string, change func(*Input), of func(Result) quantity.Money) {
		c := choice()
		change(&c)
		if got := of(weigh(t, c)); !(got > of(base)) {
			t.Errorf("%s: %g is not over %g", what, got, of(base))
		}
	}
	repair := func(w Result) quantity.Money { return w.RepairExpected }
	replace := func(w Result) quantity.Money { return w.ReplaceExpected }
	worse("more seasons", func(c *Input) { c.Seasons++ }, repair)
	worse("fails more often", func(c *Input) { c.RepairFailsAgain += 0.01 }, repair)
	worse("misses more often", func(c *Input) { c.RepairNotCured += 0.01 }, repair)
	worse("no warranty", func(c *Input) { c.ReplaceWarranty = 0 }, replace)
	worse("a dearer failure", func(c *Input) { c.FailureCost++ }, replace)
	worse("lost days", func(c *Input) { c.ReplaceDays += day }, replace)
	same := weigh(t, Input{Seasons: 5, RepairParts: 100, ReplaceParts: 100, RepairFailsAgain: 0.1, ReplaceFails: 0.1})
	near(t, "the saving between equals", float64(same.Saving), 0, 0)
	// All money doubled doubles all money and turns nothing.
	c := choice()
	for _, m := range []*quantity.Money{&c.YardHourCost, &c.OwnHourValue, &c.DayValue, &c.FailureCost, &c.RepairParts, &c.ReplaceParts} {
		*m *= 2
	}
	twice := weigh(t, c)
	near(t, "twice the saving", float64(twice.Saving), 2*float64(base.Saving), 1e-12)
	if twice.Cheapest != base.Cheapest || twice.TurningInput != base.TurningInput || twice.TurningWords != base.TurningWords {
		t.Error("a currency of half the worth changes the answer")
	}
}

func TestCurveEndsAtTheResult(t *testing.T) {
	in := choice()
	out := weigh(t, in)
	costs := make([]Costs, in.Seasons)
	if err := Curve(in, costs); err != nil {
		t.Fatal(err)
	}
	last := costs[in.Seasons-1]
	near(t, "repairing", float64(last.Repair), float64(out.RepairExpected), 1e-12)
	near(t, "replacing", float64(last.Replace), float64(out.ReplaceExpected), 1e-12)
	near(t, "leaving", float64(last.Leave), float64(out.LeaveExpected), 1e-12)
}

func TestNeverAndAlways(t *testing.T) {
	in := choice()
	in.RepairParts = 5000
	if out := weigh(t, in); out.RepeatAnswer != NeverRepair || out.MissAnswer != NeverMiss || out.BreakEvenSeasons != fromSeasons[1] {
		t.Errorf("%q, %q", out.RepeatAnswer, out.BreakEvenSeasons)
	}
	in = choice()
	in.ReplaceParts = 1e6
	if out := weigh(t, in); out.RepeatAnswer != AlwaysRepair || out.BreakEvenSeasons != fromSeasons[0] {
		t.Errorf("%q, %q", out.RepeatAnswer, out.BreakEvenSeasons)
	}
}

func TestRefusals(t *testing.T) {
	for where, change := range map[string]func(*Input){
		"/seasons":              func(c *Input) { c.Seasons = 0 },
		"/replaceParts":         func(c *Input) { c.ReplaceParts = -1 },
		"/repairNotCured":       func(c *Input) { c.RepairNotCured = 1.3 },
		"/repairFailsAgain":     func(c *Input) { c.RepairFailsAgain = 8 },
		"/failureCost":          func(c *Input) { c.FailureCost = quantity.Money(math.NaN()) },
		"/engineHoursPerSeason": func(c *Input) { c.RepairLife = 900 * hour },
		"/interest":             func(c *Input) { c.Interest = 5 },
		"/repairWarranty":       func(c *Input) { c.RepairWarranty = -1 },
	} {
		c := choice()
		change(&c)
		_, err := Weigh(c)
		list := problem.Of(err)
		if len(list) != 1 || list[0].Where != where {
			t.Errorf("%s: %v", where, err)
		}
	}
}

func TestNoAllocation(t *testing.T) {
	in := choice()
	parttest.NoAllocations(t, func() { _, _ = Weigh(in) })
}

func BenchmarkWeigh(b *testing.B) {
	in := choice()
	for b.Loop() {
		_, _ = Weigh(in)
	}
}

func TestCodesHaveTheirWords(t *testing.T) {
	parttest.SameCodes(t, "repair-or-replace", "cheapest", RepairIt, ReplaceIt, LeaveIt, TooClose, RepairIfFree, LeaveIfFree)
	parttest.SameCodes(t, "repair-or-replace", "repeatAnswer", RepeatDecides, NeverRepair, AlwaysRepair)
	parttest.SameCodes(t, "repair-or-replace", "missAnswer", NeverMiss, AlwaysMiss)
	parttest.SameCodes(t, "repair-or-replace", "turningInput", NothingTurns, byReplaceParts, byRepairParts, byYardRate, byReplaceYard, byRepairYard, byOwnHour, byDay, byFailure, byRepeat, byNew, byMiss)
}

// From the break-even on replacing costs less, and by more than is too close to
// tell, over every number of seasons; over one season fewer it does not.
func TestReplacingPaysFromTheBreakEvenOn(t *testing.T) {
	tried := 0
	for _, parts := range []float64{200, 300, 500, 640, 900} {
		for _, alike := range []float64{0.01, 0.1, 0.3} {
			in := choice()
			in.ReplaceParts, in.AlikeWithin = quantity.Money(parts), quantity.Ratio(alike)
			from := EvenSeasons(in)
			pays := func(n int) bool {
				at := in
				at.Seasons = n
				out := weigh(t, at)
				return out.Saving >= 0 && !at.alike(float64(out.RepairExpected), float64(out.ReplaceExpected), math.NaN())
			}
			if from > 1 && pays(from-1) {
				t.Errorf("%g, %g: it pays before %d seasons", parts, alike, from)
			}
			for n := from; from > 0 && n <= MostSeasons; n++ {
				if tried++; !pays(n) {
					t.Errorf("%g, %g: from %d seasons on, and not over %d", parts, alike, from, n)
				}
			}
		}
	}
	if tried < 100 {
		t.Errorf("%d tried", tried)
	}
}

// Repairing is always the cheaper where it is even though the repair surely fails
// again, and never where it is the dearer though it surely does not; else it hangs on that.
func TestRepeatAnswerByItsEnds(t *testing.T) {
	seen := map[string]int{}
	for n := range 130 {
		in, parts := choice(), quantity.Money(100*math.Pow(1.1, float64(n/2)))
		if in.ReplaceParts = parts; n%2 == 1 {
			in.RepairParts = 5000
		}
		answer := weigh(t, in).RepeatAnswer
		in.RepairFailsAgain = 1
		fails := weigh(t, in)
		in.RepairFailsAgain = 0
		holds := weigh(t, in)
		want := RepeatDecides
		switch {
		case fails.RepairExpected < fails.ReplaceExpected:
			want = AlwaysRepair
		case holds.RepairExpected > holds.ReplaceExpected:
			want = NeverRepair
		}
		if seen[want]++; answer != want {
			t.Errorf("parts for %g: %s, want %s", float64(parts), answer, want)
		}
	}
	if len(seen) != 3 {
		t.Errorf("%v", seen)
	}
}
