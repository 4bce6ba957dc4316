// How many changes take the debris out of a fluid: Flush.

package fluid

import (
	"math"

	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/quantity"
)

// MostChanges is how many changes are written out.
const MostChanges = 8

// FlushInput is a plan to bring down what floats in a fluid by changing it. A
// field marked optional is not given when it is 0.
type FlushInput struct {
	FluidVolume    quantity.Volume // of the full system, with cooler and hoses
	LeftVolume     quantity.Volume // that never drains, below FluidVolume; 0: all of it drains
	FilterVolume   quantity.Volume // of LeftVolume, what goes with the old filter; optional
	FilterCatch    quantity.Ratio  // of what is left, that a fresh filter catches before the next change, 0 to below 1; optional
	WantedShare    quantity.Ratio  // of today's debris, at most; above 0, below 1
	PlannedChanges int             // 1 to 50; optional
	DebrisShare    quantity.Ratio  // mass of debris over mass of fluid now; optional
}

// FlushResult is what a flush comes to. NaN marks a figure for which an optional
// input is missing.
type FlushResult struct {
	LeftPerChange   quantity.Ratio  // of the debris, after one change
	ChangesExact    quantity.Ratio  // changes that bring it to WantedShare; no whole number
	ChangesNeeded   int             // the same, rounded up
	FluidNeeded     quantity.Volume // for them
	ShareAfterPlan  quantity.Ratio  // of today's debris, after the planned changes
	FluidPlanned    quantity.Volume
	DebrisAfterPlan quantity.Ratio // mass share
	VolumePerChange quantity.Volume
	Changes         [MostChanges]Change
}

// Change is one change of the plan.
type Change struct {
	Name   string // "1st" …
	Left   quantity.Ratio
	Debris quantity.Ratio  // mass share; NaN when not known
	Fluid  quantity.Volume // used up to here
}

var ordinals = [MostChanges]string{"1st", "2nd", "3rd", "4th", "5th", "6th", "7th", "8th"}

// Flush works a flush out.
//
// Each change leaves the fluid that never drains, and with it that share of
// the debris, which the new fluid then takes up: after n changes r^n is left,
// r = LeftVolume/FluidVolume (mixing; the algebra of repeated dilution). It
// holds for debris that is mixed in, not for sludge. A fresh filter takes its
// own volume of old fluid away, and catches a share of what is left before
// the next change.
//
// The error is a *problem.Error. Flush does not allocate unless it refuses.
func Flush(in FlushInput) (FlushResult, error) {
	if err := in.validate(); err != nil {
		return FlushResult{}, err
	}
	whole := float64(in.FluidVolume)
	left := max(0, float64(in.LeftVolume)-float64(in.FilterVolume))
	r := left / whole * (1 - float64(in.FilterCatch))
	fill := whole - left
	debris := quantity.OrNaN(float64(in.DebrisShare))
	n, exact := 1, math.NaN()
	if r > 0 {
		exact = math.Log(float64(in.WantedShare)) / math.Log(r)
		n = int(math.Ceil(exact - 1e-9))
		n = max(n, 1)
	}
	planned := quantity.OrNaN(float64(in.PlannedChanges))
	after := math.Pow(r, planned)
	out := FlushResult{
		LeftPerChange: quantity.Ratio(r), ChangesExact: quantity.Ratio(exact), ChangesNeeded: n,
		FluidNeeded:     quantity.Volume(float64(n) * fill),
		ShareAfterPlan:  quantity.Ratio(after),
		FluidPlanned:    quantity.Volume(planned * fill),
		DebrisAfterPlan: quantity.Ratio(debris * after),
		VolumePerChange: quantity.Volume(fill),
	}
	share := 1.0
	for i := range min(max(n, in.PlannedChanges), MostChanges) {
		share *= r
		out.Changes[i] = Change{Name: ordinals[i], Left: quantity.Ratio(share), Debris: quantity.Ratio(debris * share), Fluid: quantity.Volume(float64(i+1) * fill)}
	}
	return out, nil
}

func (in *FlushInput) validate() error {
	var bad problem.List
	for _, b := range [...]bound{
		{"/fluidVolume", "fluid in the system", float64(in.FluidVolume), 1e-6, 100, "above 0, up to 100 m³", false},
		{"/leftVolume", "fluid that never drains", float64(in.LeftVolume), -1e-3, 100, "0 or more", true},
		{"/filterVolume", "fluid in the filter", float64(in.FilterVolume), -1e-3, 100, "0 or more", true},
		{"/filterCatch", "share that the filter catches", float64(in.FilterCatch), -0.01, 0.999, "0 to below 1", true},
		{"/wantedShare", "share that may be left", float64(in.WantedShare), 1e-9, 0.999, "above 0, below 1", false},
		{"/plannedChanges", "number of changes", float64(in.PlannedChanges), 1, 50, "1 to 50", true},
		{"/debrisShare", "share of debris now", float64(in.DebrisShare), 0, 1, "0 to 1", true},
	} {
		b.add(&bad)
	}
	if bad == nil && in.LeftVolume >= in.FluidVolume {
		bad.Add("/leftVolume", "more stays in than the system holds", "below the fluid in the system", "it is what does not come out when you drain")
	}
	if bad == nil && in.FilterVolume > in.LeftVolume+1e-6 {
		bad.Add("/filterVolume", "the filter holds more than what never drains", "up to the fluid that never drains", "count the filter's fluid among what does not drain by the plug")
	}
	return bad.Err()
}
