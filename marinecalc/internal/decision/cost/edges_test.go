package cost

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/quantity"
)

// Every figure is taken up to its bound and refused past it.
func TestBoundsOfEveryFigure(t *testing.T) {
	type bound struct {
		where     string
		set       func(*Input, float64)
		low, high float64
	}
	var bounds []bound
	add := func(low, high float64, places map[string]func(*Input, float64)) {
		for where, set := range places {
			bounds = append(bounds, bound{where, set, low, high})
		}
	}
	const dear, jobHours = 1e9, 1000 * 86400 // any currency; s of any one job
	add(0, dear, map[string]func(*Input, float64){
		"/yardHourCost": func(c *Input, x float64) { c.YardHourCost = quantity.Money(x) },
		"/ownHourValue": func(c *Input, x float64) { c.OwnHourValue = quantity.Money(x) },
		"/dayValue":     func(c *Input, x float64) { c.DayValue = quantity.Money(x) },
		"/failureCost":  func(c *Input, x float64) { c.FailureCost = quantity.Money(x) },
		"/repairParts":  func(c *Input, x float64) { c.RepairParts = quantity.Money(x) },
		"/replaceParts": func(c *Input, x float64) { c.ReplaceParts = quantity.Money(x) },
	})
	add(0, jobHours, map[string]func(*Input, float64){
		"/failureDays":     func(c *Input, x float64) { c.FailureDays = quantity.Time(x) },
		"/repairDays":      func(c *Input, x float64) { c.RepairDays = quantity.Time(x) },
		"/replaceDays":     func(c *Input, x float64) { c.ReplaceDays = quantity.Time(x) },
		"/repairYardTime":  func(c *Input, x float64) { c.RepairYardTime = quantity.Time(x) },
		"/repairOwnTime":   func(c *Input, x float64) { c.RepairOwnTime = quantity.Time(x) },
		"/replaceYardTime": func(c *Input, x float64) { c.ReplaceYardTime = quantity.Time(x) },
		"/replaceOwnTime":  func(c *Input, x float64) { c.ReplaceOwnTime = quantity.Time(x) },
		"/lookTime":        func(c *Input, x float64) { c.LookTime = quantity.Time(x) },
	})
	add(0, 10000*3600, map[string]func(*Input, float64){
		"/engineHoursPerSeason": func(c *Input, x float64) { c.EngineHoursPerSeason = quantity.Time(x) },
	})
	add(-0.5, 1, map[string]func(*Input, float64){"/interest": func(c *Input, x float64) { c.Interest = quantity.Ratio(x) }})
	add(0, 1, map[string]func(*Input, float64){"/alikeWithin": func(c *Input, x float64) { c.AlikeWithin = quantity.Ratio(x) }})
	// Drawn chances may lie a fifth outside.
	add(-0.2, 1.1, map[string]func(*Input, float64){
		"/repairNotCured":  func(c *Input, x float64) { c.RepairNotCured = quantity.Ratio(x) },
		"/replaceNotCured": func(c *Input, x float64) { c.ReplaceNotCured = quantity.Ratio(x) },
	})
	add(-0.2, 1.2, map[string]func(*Input, float64){
		"/repairFailsAgain":     func(c *Input, x float64) { c.RepairFailsAgain = quantity.Ratio(x) },
		"/replaceFails":         func(c *Input, x float64) { c.ReplaceFails = quantity.Ratio(x) },
		"/leaveFails":           func(c *Input, x float64) { c.LeaveFails = quantity.Ratio(x) },
		"/causeAtWork":          func(c *Input, x float64) { c.CauseAtWork = quantity.Ratio(x) },
		"/lookMisses":           func(c *Input, x float64) { c.LookMisses = quantity.Ratio(x) },
		"/lookMistakes":         func(c *Input, x float64) { c.LookMistakes = quantity.Ratio(x) },
		"/repairWarrantyShare":  func(c *Input, x float64) { c.RepairWarrantyShare = quantity.Ratio(x) },
		"/replaceWarrantyShare": func(c *Input, x float64) { c.ReplaceWarrantyShare = quantity.Ratio(x) },
	})
	refused := func(where string, set func(*Input, float64), x float64) bool {
		c := choice()
		set(&c, x)
		_, err := Weigh(c)
		return slices.ContainsFunc(problem.Of(err), func(p problem.Problem) bool { return p.Where == where })
	}
	for _, b := range bounds {
		step := 1e-3 * max(1, b.high)
		for x, want := range map[float64]bool{b.low: false, b.high: false, b.low - 1e-3: true, b.high + step: true} {
			if got := refused(b.where, b.set, x); got != want {
				t.Errorf("%s %g: refused %v", b.where, x, got)
			}
		}
	}
	for where, set := range map[string]func(*Input, int){
		"/seasons":         func(c *Input, n int) { c.Seasons = n },
		"/repairWarranty":  func(c *Input, n int) { c.RepairWarranty = n },
		"/replaceWarranty": func(c *Input, n int) { c.ReplaceWarranty = n },
	} {
		for n, want := range map[int]bool{1: false, 60: false, 61: true} {
			if got := refused(where, func(c *Input, x float64) { set(c, int(x)) }, float64(n)); got != want {
				t.Errorf("%s %d: refused %v", where, n, got)
			}
		}
	}
}

// Each figure that a sheet shows by itself, by hand from choice: yard 85 and own
// work 20 an hour, a day 60, half and six tenths of parts and yard work under
// warranty. A mean life of 500 h in seasons of 100 h: 1 - e^(-1/5), reliability of
// an exponential life (general textbooks).
func TestFiguresByHand(t *testing.T) {
	in := choice()
	out := weigh(t, in)
	for _, c := range []struct {
		what      string
		got, want float64
	}{
		{"labour of repairing", float64(out.RepairLabour), 4*85 + 6*20}, {"of replacing", float64(out.ReplaceLabour), 5*85 + 4*20},
		{"days lost by repairing", float64(out.RepairLoss), 60}, {"by replacing", float64(out.ReplaceLoss), 120},
		{"warranty of the repair", float64(out.RepairWarrantyPays), 260 * 0.23 / 0.85}, {"of the new part", float64(out.ReplaceWarrantyPays), 639 * 0.12 / 0.92},
	} {
		near(t, c.what, c.got, c.want, 1e-12)
	}
	in.RepairDays = 2 * 86400 // s
	near(t, "two days", float64(weigh(t, in).RepairLoss), 120, 1e-12)
	in.RepairLife, in.EngineHoursPerSeason = 500*3600, 100*3600
	near(t, "chance by a mean life", float64(weigh(t, in).RepairSeason), 1-math.Exp(-0.2), 1e-12)
	in = choice()
	in.RepairFailsAgain = 1.1 // drawn
	near(t, "a chance drawn over one", float64(weigh(t, in).RepairSeason), 1, 0)
	in.LeaveFails = 1
	if out = weigh(t, in); math.IsNaN(float64(out.LeaveExpected)) {
		t.Error("left to a sure failure is not weighed")
	}
	costs := make([]Costs, 2)
	if err := Curve(in, costs); err != nil || math.IsNaN(float64(costs[1].Leave)) {
		t.Errorf("nor in the curve: %v", err)
	}
	in.Seasons = 0
	if err := Curve(in, costs); err == nil {
		t.Error("a curve of no seasons is drawn")
	}
}

// Nearly the same is a share of the lower cost, of the two cheapest ways.
func TestAlikeIsOfTheTwoCheapest(t *testing.T) {
	in := Input{AlikeWithin: 0.1}
	nan := math.NaN()
	for _, c := range []struct {
		repair, replace, leave float64
		want                   bool
	}{
		{100, 109, nan, true}, {109, 100, nan, true}, {100, 110, nan, false}, {111, 100, nan, false},
		{100, 200, 105, true}, {100, 105, 50, false},
	} {
		if got := in.alike(c.repair, c.replace, c.leave); got != c.want {
			t.Errorf("%g, %g, %g: %v", c.repair, c.replace, c.leave, got)
		}
	}
}

// Leaving is cheapest only under both others; and what nobody priced is said to
// be free.
func TestWhichIsCheapest(t *testing.T) {
	in := choice()
	in.LeaveFails = 0
	base := weigh(t, in)
	between := (float64(base.RepairExpected) + float64(base.ReplaceExpected)) / 2
	low, high := 0.0, 1.0
	for range 60 { // the chance at which leaving costs as much as the mean of both
		mid := (low + high) / 2
		if c := in; func() bool { c.LeaveFails = quantity.Ratio(mid); return float64(weigh(t, c).LeaveExpected) < between }() {
			low = mid
		} else {
			high = mid
		}
	}
	in.LeaveFails = quantity.Ratio(low)
	if out := weigh(t, in); out.Cheapest != base.Cheapest || base.Cheapest == LeaveIt {
		t.Errorf("leaving at %g, others at %g and %g: %s", out.LeaveExpected, out.RepairExpected, out.ReplaceExpected, out.Cheapest)
	}
	if base.Cheapest != ReplaceIt || base.ReplacingCheaperChance != 1 {
		t.Errorf("%s, by a chance of %g", base.Cheapest, base.ReplacingCheaperChance)
	}
	same := Input{Seasons: 3, RepairParts: 10, ReplaceParts: 10, FailureTold: true}
	if out := weigh(t, same); out.Cheapest != RepairIt || out.ReplacingCheaperChance != 0 {
		t.Errorf("of equals %s, by a chance of %g", out.Cheapest, out.ReplacingCheaperChance)
	}
	cheap := Input{Seasons: 3, RepairParts: 10, ReplaceParts: 100, RepairFailsAgain: 0.1, ReplaceFails: 0.1}
	for _, c := range []struct {
		told bool
		loss quantity.Money
		want string
	}{{false, 0, RepairIfFree}, {true, 0, RepairIt}, {false, 1, RepairIt}} {
		in := cheap
		in.FailureTold, in.FailureCost = c.told, c.loss
		if out := weigh(t, in); out.Cheapest != c.want {
			t.Errorf("told %v, %g: %s", c.told, c.loss, out.Cheapest)
		}
	}
	if got := (Result{Repairs: "pack"}).Procedures(); len(got) != 1 || got[0] != "pack" {
		t.Errorf("procedures %q", got)
	}
}

func TestWordsOfBreakEvens(t *testing.T) {
	for n, want := range map[int]string{0: "not within 60 seasons", 1: "from the first season on", 2: "from 2 seasons on", 60: "from 60 seasons on"} {
		if fromSeasons[n] != want {
			t.Errorf("%d: %q", n, fromSeasons[n])
		}
	}
	for n, want := range map[int]string{0: "100 % less", 99: "1 % less", 100: "less than 1 % another", 101: "1 % more", 200: "100 % more"} {
		if byPercent[n] != want {
			t.Errorf("%d: %q", n, byPercent[n])
		}
	}
	in := choice()
	in.ReplaceParts = 1e6
	if out := weigh(t, in); out.MissAnswer != AlwaysMiss {
		t.Errorf("at any chance of missing, repairing: %q", out.MissAnswer)
	}
	in = choice()
	if out := weigh(t, in); out.MissAnswer != "" || out.RepeatAnswer != RepeatDecides {
		t.Errorf("%q, %q", out.MissAnswer, out.RepeatAnswer)
	}
}

// Whatever input is named, its change by that many percent brings both ways to one
// cost, and no other input does so by a smaller change: found by trying each.
func TestTheNamedChangeIsTheLeast(t *testing.T) {
	knobs := map[string]func(*Input, float64){
		byReplaceParts: func(c *Input, f float64) { c.ReplaceParts *= quantity.Money(f) },
		byRepairParts:  func(c *Input, f float64) { c.RepairParts *= quantity.Money(f) },
		byYardRate:     func(c *Input, f float64) { c.YardHourCost *= quantity.Money(f) },
		byOwnHour:      func(c *Input, f float64) { c.OwnHourValue *= quantity.Money(f) },
		byDay:          func(c *Input, f float64) { c.DayValue *= quantity.Money(f) },
		byFailure:      func(c *Input, f float64) { c.FailureCost *= quantity.Money(f) },
		byReplaceYard:  func(c *Input, f float64) { c.ReplaceYardTime *= quantity.Time(f) },
		byRepairYard:   func(c *Input, f float64) { c.RepairYardTime *= quantity.Time(f) },
		byRepeat:       func(c *Input, f float64) { c.RepairFailsAgain *= quantity.Ratio(f) },
		byNew:          func(c *Input, f float64) { c.ReplaceFails *= quantity.Ratio(f) },
		byMiss:         func(c *Input, f float64) { c.RepairNotCured *= quantity.Ratio(f) },
	}
	named := map[string]bool{}
	for name, change := range map[string]func(*Input){
		"as it is":          func(*Input) {},
		"a dear new part":   func(c *Input) { c.ReplaceParts = 1500 },
		"much yard work":    func(c *Input) { c.RepairYardTime, c.ReplaceYardTime, c.ReplaceParts = 30*hour, 31*hour, 200 },
		"a repair by yards": func(c *Input) { c.RepairYardTime, c.ReplaceYardTime, c.RepairParts = 40*hour, 39*hour, 20 },
		"a poor new part":   func(c *Input) { c.ReplaceFails, c.RepairFailsAgain, c.ReplaceNotCured = 0.3, 0.2, 0 },
		"a poor repair":     func(c *Input) { c.RepairFailsAgain, c.RepairNotCured, c.ReplaceParts = 0.3, 0.02, 1900 },
		"a repair that misses": func(c *Input) {
			c.RepairNotCured, c.RepairFailsAgain, c.ReplaceParts, c.ReplaceYardTime = 0.5, 0.01, 900, 8*hour
		},
		"dear failures": func(c *Input) { c.FailureCost, c.ReplaceParts = 9000, 4000 },
		"dear days":     func(c *Input) { c.DayValue, c.ReplaceDays, c.RepairDays = 400, 9*day, 2*day },
		"own work":      func(c *Input) { c.OwnHourValue, c.RepairOwnTime, c.ReplaceOwnTime = 90, 60*hour, 10*hour },
	} {
		in := choice()
		change(&in)
		out := weigh(t, in)
		if out.TurningInput == NothingTurns {
			continue
		}
		named[out.TurningInput] = true
		said := 0.0
		if out.TurningWords != "less than 1 % another" {
			var side string
			if _, err := fmt.Sscanf(out.TurningWords, "%g %% %s", &said, &side); err != nil {
				t.Fatal(err)
			}
			if side == "less" {
				said = -said
			}
		}
		turns := func(knob func(*Input, float64), percent float64) bool {
			at := in
			knob(&at, 1+percent/100)
			r, err := Weigh(at)
			return err == nil && (r.Saving >= 0) != (out.Saving >= 0)
		}
		if knob := knobs[out.TurningInput]; !turns(knob, said+math.Copysign(1, said)) || math.Abs(said) > 1 && turns(knob, said-math.Copysign(1, said)) {
			t.Errorf("%s: %s by %g %% does not turn it there", name, out.TurningInput, said)
		}
		for other, knob := range knobs {
			for _, by := range []float64{-1, 1} {
				if less := by * (math.Abs(said) - 2); math.Abs(said) > 3 && turns(knob, less) {
					t.Errorf("%s: %s is named with %g %%, and %s turns it by %g %%", name, out.TurningInput, said, other, less)
				}
			}
		}
	}
	if len(named) < 5 {
		t.Errorf("only %v were named: give the test other cases", named)
	}
}
