// Package cost weighs whether to repair a part, to replace it or to leave
// it, by what each is expected to cost over the time it must serve.
package cost

import (
	"math"

	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/quantity"
)

// Input is what is known of the ways out. All money is of one currency; no
// money and no time may be under 0. A chance drawn a hair under 0 counts as 0.
type Input struct {
	Seasons              int           // it must serve, 1 to MostSeasons
	EngineHoursPerSeason quantity.Time // 0: not known; needed beside a life in engine hours
	YardHourCost         quantity.Money
	OwnHourValue         quantity.Money
	DayValue             quantity.Money // of a day in the season on which the boat can be used
	FailureCost          quantity.Money // of one failure, over and above mending it: a tow, a lift, what it breaks
	FailureTold          bool           `readOf:"failureCost"` // 0 is told too
	FailureDays          quantity.Time  // of the season lost by one failure
	Interest             quantity.Ratio // a year; 0 counts every season alike
	AlikeWithin          quantity.Ratio // of the lower cost: ways that differ by less cost alike; 0 to 1

	RepairParts         quantity.Money
	RepairYardTime      quantity.Time
	RepairOwnTime       quantity.Time
	RepairDays          quantity.Time  // of the season lost by the work
	RepairNotCured      quantity.Ratio // chance that the work misses the cause, 0 to MostNotCured
	RepairFailsAgain    quantity.Ratio // chance a season, 0 to 1; not looked at where RepairLife is given
	RepairLife          quantity.Time  // mean engine hours to the next failure; 0: not known
	RepairWarranty      int            // seasons; 0: none
	RepairWarrantyShare quantity.Ratio // of parts and yard work that the warranty pays, 0 to 1

	ReplaceParts         quantity.Money
	ReplaceYardTime      quantity.Time
	ReplaceOwnTime       quantity.Time
	ReplaceDays          quantity.Time
	ReplaceNotCured      quantity.Ratio
	ReplaceFails         quantity.Ratio
	ReplaceLife          quantity.Time
	ReplaceWarranty      int
	ReplaceWarrantyShare quantity.Ratio

	LeaveFails quantity.Ratio // chance a season that it fails when left as it is; 0: leaving it is not weighed

	CauseAtWork  quantity.Ratio // chance that what the work cures is at work at all; 0: a look first is not weighed
	LookTime     quantity.Time  // work of the look that would settle it; 0: not known
	LookMisses   quantity.Ratio // chance that it is not seen though it is there
	LookMistakes quantity.Ratio // chance that it is seen though it is not there

	// What is weighed and decided, by words that this arithmetic does not read.
	RepairWork, ReplaceWork, Decided string
}

// MostSeasons is the longest time that is looked ahead.
const MostSeasons = 60

// MostNotCured is the highest chance of missing the cause that is taken: past
// it one would work on without end.
const MostNotCured = 0.9

const (
	hour = 3600.0  // s
	day  = 86400.0 // s
)

// way is one way out, in money and chances alone.
type way struct {
	first    float64 // cost of doing it once
	covered  float64 // part of it that a warranty pays
	miss     float64 // chance that it misses the cause
	fails    float64 // chance a season that it fails
	warranty int     // seasons
}

func (in *Input) repair() way {
	yard := float64(in.YardHourCost) * float64(in.RepairYardTime) / hour
	return way{
		first: float64(in.RepairParts) + yard + float64(in.OwnHourValue)*float64(in.RepairOwnTime)/hour +
			float64(in.DayValue)*float64(in.RepairDays)/day,
		covered:  float64(in.RepairWarrantyShare) * (float64(in.RepairParts) + yard),
		miss:     chance(in.RepairNotCured),
		fails:    in.aSeason(in.RepairFailsAgain, in.RepairLife),
		warranty: in.RepairWarranty,
	}
}

func (in *Input) replace() way {
	yard := float64(in.YardHourCost) * float64(in.ReplaceYardTime) / hour
	return way{
		first: float64(in.ReplaceParts) + yard + float64(in.OwnHourValue)*float64(in.ReplaceOwnTime)/hour +
			float64(in.DayValue)*float64(in.ReplaceDays)/day,
		covered:  float64(in.ReplaceWarrantyShare) * (float64(in.ReplaceParts) + yard),
		miss:     chance(in.ReplaceNotCured),
		fails:    in.aSeason(in.ReplaceFails, in.ReplaceLife),
		warranty: in.ReplaceWarranty,
	}
}

// aSeason is the chance a season: of a mean life in engine hours, the chance
// that a season's hours end it (exponential life), or else as given.
func (in *Input) aSeason(given quantity.Ratio, life quantity.Time) float64 {
	if life > 0 {
		return -math.Expm1(-float64(in.EngineHoursPerSeason) / float64(life))
	}
	return chance(given)
}

func chance(p quantity.Ratio) float64 { return min(max(float64(p), 0), 1) }

// validate collects what cannot be.
func (in *Input) validate() problem.List {
	var bad problem.List
	whole := func(where string, n, low, high int, allowed string) {
		if n < low || n > high {
			bad.Add(where, "that many seasons cannot be calculated", allowed, "")
		}
	}
	whole("/seasons", in.Seasons, 1, MostSeasons, "1 to 60")
	whole("/repairWarranty", in.RepairWarranty, 0, MostSeasons, "0 to 60")
	whole("/replaceWarranty", in.ReplaceWarranty, 0, MostSeasons, "0 to 60")
	for _, v := range [...]struct {
		where     string
		value     float64
		low, high float64
	}{
		{"/engineHoursPerSeason", float64(in.EngineHoursPerSeason), 0, 10000 * hour},
		{"/yardHourCost", float64(in.YardHourCost), 0, dearest}, {"/ownHourValue", float64(in.OwnHourValue), 0, dearest},
		{"/dayValue", float64(in.DayValue), 0, dearest}, {"/failureCost", float64(in.FailureCost), 0, dearest},
		{"/repairParts", float64(in.RepairParts), 0, dearest}, {"/replaceParts", float64(in.ReplaceParts), 0, dearest},
		{"/failureDays", float64(in.FailureDays), 0, longest}, {"/repairDays", float64(in.RepairDays), 0, longest},
		{"/replaceDays", float64(in.ReplaceDays), 0, longest},
		{"/repairYardTime", float64(in.RepairYardTime), 0, longest}, {"/repairOwnTime", float64(in.RepairOwnTime), 0, longest},
		{"/replaceYardTime", float64(in.ReplaceYardTime), 0, longest}, {"/replaceOwnTime", float64(in.ReplaceOwnTime), 0, longest},
		{"/repairLife", float64(in.RepairLife), 0, math.MaxFloat64}, {"/replaceLife", float64(in.ReplaceLife), 0, math.MaxFloat64},
		{"/interest", float64(in.Interest), -0.5, 1},
		{"/alikeWithin", float64(in.AlikeWithin), 0, 1},
		{"/repairNotCured", float64(in.RepairNotCured), -hair, MostNotCured + hair}, {"/replaceNotCured", float64(in.ReplaceNotCured), -hair, MostNotCured + hair},
		{"/repairFailsAgain", float64(in.RepairFailsAgain), -hair, 1 + hair}, {"/replaceFails", float64(in.ReplaceFails), -hair, 1 + hair},
		{"/leaveFails", float64(in.LeaveFails), -hair, 1 + hair},
		{"/causeAtWork", float64(in.CauseAtWork), -hair, 1 + hair}, {"/lookTime", float64(in.LookTime), 0, longest},
		{"/lookMisses", float64(in.LookMisses), -hair, 1 + hair}, {"/lookMistakes", float64(in.LookMistakes), -hair, 1 + hair},
		{"/repairWarrantyShare", float64(in.RepairWarrantyShare), -hair, 1 + hair}, {"/replaceWarrantyShare", float64(in.ReplaceWarrantyShare), -hair, 1 + hair},
	} {
		if !(v.low <= v.value && v.value <= v.high) {
			bad.Add(v.where, "that figure cannot be", "see the range of this input", "look for a slip of the unit or the sign")
		}
	}
	if (in.RepairLife > 0 || in.ReplaceLife > 0) && in.EngineHoursPerSeason == 0 {
		bad.Add("/engineHoursPerSeason", "a life in engine hours says nothing without the engine hours of a season", "engine hours a season", `write about how many, such as "120 h"`)
	}
	return bad
}

const (
	dearest = 1e9        // of any currency
	longest = 1000 * day // of any one job
	hair    = 0.2        // by which a drawn chance may lie outside
)
