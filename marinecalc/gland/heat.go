// How warm a packed gland runs: Heat.

package gland

import (
	"math"

	"example.org/driveline/marinecalc/fluid"
	"example.org/driveline/marinecalc/quantity"
)

// HeatResult is what Heat finds. A figure that was not asked for, or for which a
// reading or a size is missing, is NaN; a text then is empty.
type HeatResult struct {
	MeasuredRise     quantity.TemperatureDifference // thermometer less water; NaN when not measured
	TemperatureRise  quantity.TemperatureDifference // computed, under way at DripRate
	RiseRatio        quantity.Ratio                 // MeasuredRise over TemperatureRise; NaN when not measured, or none is computed
	GlandTemperature quantity.Temperature           // computed, under way
	RiseWithoutDrips quantity.TemperatureDifference // at HeatHeld, no drips
	RiseAtRest       quantity.TemperatureDifference // no friction, no drips: warm air alone

	DripShare       quantity.Ratio    // of the cooling, done by the drips
	DripRateForRise quantity.DripRate // that holds WantedRise, 0 when none is needed; NaN when not asked
	WhatHoldsIt     string            // the same in words

	DripState    string // how the gland drips under way
	LeakUnderWay quantity.VolumeFlow
	LeakAtRest   quantity.VolumeFlow // NaN when the drips at rest were not counted

	FrictionTorque quantity.Torque
	FrictionPower  quantity.Power
	ImpliedPower   quantity.Power  // friction heat that MeasuredRise implies; NaN when not measured
	HeatHeld       quantity.Power  // that DripRateForRise and RiseWithoutDrips use: ImpliedPower when measured, at least 0, otherwise FrictionPower
	DecayLength    quantity.Length // over which the axial stress falls to 1/e
	EndStressRatio quantity.Ratio  // axial stress at the last ring over that at the follower

	DripConductance       quantity.Conductance // W/K, heat per kelvin of gland above water
	ShaftWaterConductance quantity.Conductance // shaft aft of the packing, in water
	ShaftAirConductance   quantity.Conductance // shaft forward of the packing, in air
	BoxAirConductance     quantity.Conductance // outside of the box
	BoxWaterConductance   quantity.Conductance // wetted inside of the box
	DryConductance        quantity.Conductance // all but the drips

	AirDifference     quantity.TemperatureDifference // air less water; 0 when the air was not given
	WaterDensity      quantity.Density
	WaterSpecificHeat quantity.SpecificHeat
}

// The codes of DripState, for which the schema of gland-heat has the words.
const (
	DripsNone   = "none" // fewer than one a minute
	DripsSteady = "steady"
	DripsLeak   = "leak" // more than MostDrips
)

// leastDrips is what a dripping gland shows, in 1/s: common practice, no source.
const leastDrips = 1.0 / 60

// The codes of WhatHoldsIt, for which the schema of gland-heat has the words.
const (
	HeldByDrips = "drips"
	HeldByMetal = "metal"
	HeldByNone  = "none"
)

// Heat finds how warm a packed gland runs.
//
// Friction is the integral of the axial stress σ(x) = σ0·exp(-x/λ), with
// λ = (D - d)/(4·μ·K), over the shaft: T = (d/2)·π·d·μ·K·σ0·λ·(1 - exp(-L/λ))
// (Denny, BHRA report 550, 1957; Ochonski, Tribology International 21(1)
// 31-38, 1988; formula from memory, re-derived from ring equilibrium with the
// same μ and K on both walls). Rig tests found much less torque than this
// (H. Azibert, Fluid Sealing Association, 2015), so a computed rise is a
// starting value; a thermometer decides: with MeasuredGlandTemperature the
// drip rate for the wanted rise, and the rise without drips, rest on the heat
// it implies.
//
// The heat leaves with the drips (ρ·c·V·n per kelvin, drips at gland
// temperature), along the shaft both ways (each a fin of infinite length,
// √(h·π·d·k·A): Incropera and DeWitt, Fundamentals of Heat and Mass Transfer,
// formula from memory; right where the shaft runs on for 2.65·√(k·d/(4·h)) or
// more), and off the box outside and inside (h·A). Gland, box and shaft under
// the packing are taken as one temperature, in steady state. Water properties
// are taken at water temperature: fluid.AtSurface. No computed temperature goes
// above 100 °C, where the water in the packing boils and the balance ends.
//
// The error is a *problem.Error of everything outside the ranges of HeatInput.
// Heat allocates nothing when it succeeds.
func Heat(in HeatInput) (HeatResult, error) {
	if err := in.usable(); err != nil {
		return HeatResult{}, err
	}
	water, err := fluid.AtSurface(in.WaterTemperature, in.Salinity)
	if err != nil {
		return HeatResult{}, err
	}
	out := HeatResult{WaterDensity: water.Density, WaterSpecificHeat: water.SpecificHeat}
	out.read(&in)
	if !in.sized() {
		out.computeNothing()
		return out, nil
	}
	out.rub(&in)
	out.conduct(&in)
	out.balance(&in)
	return out, nil
}

// read takes what was counted and read, for which no size is needed.
func (out *HeatResult) read(in *HeatInput) {
	switch {
	case math.IsNaN(float64(in.DripRate)):
	case in.DripRate < leastDrips*(1-1e-9):
		out.DripState = DripsNone
	case in.DripRate > in.MostDrips*(1+1e-9):
		out.DripState = DripsLeak
	default:
		out.DripState = DripsSteady
	}
	out.LeakUnderWay = quantity.VolumeFlow(float64(in.DropVolume) * max(0, float64(in.DripRate)))
	out.LeakAtRest = quantity.VolumeFlow(float64(in.DropVolume) * max(0, float64(in.DripRateAtRest)))
	if in.AirTemperature != 0 {
		out.AirDifference = quantity.TemperatureDifference(in.AirTemperature - in.WaterTemperature)
	}
	out.MeasuredRise = quantity.TemperatureDifference(math.NaN())
	if in.MeasuredGlandTemperature != 0 {
		out.MeasuredRise = quantity.TemperatureDifference(in.MeasuredGlandTemperature - in.WaterTemperature)
	}
}

// computeNothing leaves what wants shaft, box and packing unknown.
func (out *HeatResult) computeNothing() {
	nan := math.NaN()
	for _, rise := range []*quantity.TemperatureDifference{&out.TemperatureRise, &out.RiseWithoutDrips, &out.RiseAtRest} {
		*rise = quantity.TemperatureDifference(nan)
	}
	for _, ratio := range []*quantity.Ratio{&out.RiseRatio, &out.DripShare, &out.EndStressRatio} {
		*ratio = quantity.Ratio(nan)
	}
	for _, power := range []*quantity.Power{&out.FrictionPower, &out.ImpliedPower, &out.HeatHeld} {
		*power = quantity.Power(nan)
	}
	for _, way := range []*quantity.Conductance{&out.DripConductance, &out.ShaftWaterConductance, &out.ShaftAirConductance, &out.BoxAirConductance, &out.BoxWaterConductance, &out.DryConductance} {
		*way = quantity.Conductance(nan)
	}
	out.GlandTemperature, out.DripRateForRise = quantity.Temperature(nan), quantity.DripRate(nan)
	out.FrictionTorque, out.DecayLength = quantity.Torque(nan), quantity.Length(nan)
}

// rub finds the friction of the packing on the shaft.
func (out *HeatResult) rub(in *HeatInput) {
	d := float64(in.ShaftDiameter)
	muK := float64(in.FrictionCoefficient * in.LateralRatio)
	decay := float64(in.BoxBore-in.ShaftDiameter) / (4 * muK)
	along := float64(in.PackedLength) / decay
	torque := d / 2 * math.Pi * d * muK * float64(in.GlandStress) * decay * -math.Expm1(-along)
	out.DecayLength = quantity.Length(decay)
	out.EndStressRatio = quantity.Ratio(math.Exp(-along))
	out.FrictionTorque = quantity.Torque(torque)
	out.FrictionPower = quantity.Power(torque * float64(in.ShaftSpeed))
}

// conduct finds what each way out carries for a kelvin.
func (out *HeatResult) conduct(in *HeatInput) {
	d := float64(in.ShaftDiameter)
	fin := func(film quantity.HeatTransfer) quantity.Conductance {
		perimeter, section := math.Pi*d, math.Pi*d*d/4
		return quantity.Conductance(math.Sqrt(float64(film) * perimeter * float64(in.Conductivity) * section))
	}
	wall := func(film quantity.HeatTransfer, ratio quantity.Ratio) quantity.Conductance {
		return quantity.Conductance(float64(film) * float64(ratio) * math.Pi * float64(in.BoxBore) * float64(in.PackedLength))
	}
	out.DripConductance = quantity.Conductance(out.perDripFlow() * float64(out.LeakUnderWay))
	out.ShaftWaterConductance = fin(in.WaterFilm)
	out.ShaftAirConductance = fin(in.AirFilm)
	out.BoxAirConductance = wall(in.AirFilm, in.BoxAreaRatio)
	out.BoxWaterConductance = wall(in.WaterFilm, in.BoxWetRatio)
	out.DryConductance = out.ShaftWaterConductance + out.ShaftAirConductance + out.BoxAirConductance + out.BoxWaterConductance
}

// perDripFlow is ρ·c in J/(m³·K).
func (out *HeatResult) perDripFlow() float64 {
	return float64(out.WaterDensity) * float64(out.WaterSpecificHeat)
}

// balance finds the temperatures at which what comes in goes out.
func (out *HeatResult) balance(in *HeatInput) {
	fromAir := float64(out.ShaftAirConductance+out.BoxAirConductance) * float64(out.AirDifference)
	heat := float64(out.FrictionPower) + fromAir
	hottest := boiling - in.WaterTemperature
	dry, all := float64(out.DryConductance), float64(out.DryConductance+out.DripConductance)

	out.TemperatureRise = quantity.TemperatureDifference(min(heat/all, float64(hottest)))
	out.GlandTemperature = in.WaterTemperature + quantity.Temperature(out.TemperatureRise)
	out.RiseAtRest = quantity.TemperatureDifference(fromAir / dry)
	out.DripShare = quantity.Ratio(float64(out.DripConductance) / all)

	nan := math.NaN()
	out.DripRateForRise = quantity.DripRate(nan)
	out.ImpliedPower, out.RiseRatio = quantity.Power(nan), quantity.Ratio(nan)
	out.HeatHeld = out.FrictionPower
	if in.MeasuredGlandTemperature != 0 {
		out.ImpliedPower = quantity.Power(float64(out.MeasuredRise)*all - fromAir)
		out.HeatHeld = max(0, out.ImpliedPower)
		if out.TemperatureRise > 0 {
			out.RiseRatio = quantity.Ratio(out.MeasuredRise / out.TemperatureRise)
		}
	}
	held := float64(out.HeatHeld) + fromAir
	out.RiseWithoutDrips = quantity.TemperatureDifference(min(held/dry, float64(in.hottest())))
	if in.WantedRise != 0 {
		rate := (held/float64(in.WantedRise) - dry) / (out.perDripFlow() * float64(in.DropVolume))
		out.DripRateForRise, out.WhatHoldsIt = quantity.DripRate(rate), HeldByDrips
		switch {
		case rate <= 0:
			out.DripRateForRise, out.WhatHoldsIt = 0, HeldByMetal
		case rate > float64(in.MostDrips):
			out.WhatHoldsIt = HeldByNone
		}
	}
}
