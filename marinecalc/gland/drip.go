// What the drips cost bilge pump and battery: Drip.

package gland

import (
	"fmt"
	"math"

	"example.org/driveline/marinecalc/fluid"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/quantity"
)

// DripInput is what drips into the boat and what throws it out again. A field
// marked optional is not given when it is zero.
type DripInput struct {
	DripRate       quantity.DripRate // under way, 0 to 20/s; 0 is none
	DripRateAtRest quantity.DripRate // 0 to 20/s; 0 is none
	DropVolume     quantity.Volume   // 1e-8 to 3e-7 m³
	TimeUnderWay   quantity.Time     // in a week, 0 to 604 800 s

	OtherInflow  quantity.VolumeFlow // rain, other leaks; 0 is none
	SwitchVolume quantity.Volume     // that brings the empty bilge up to the pump's switch; optional
	CycleVolume  quantity.Volume     // thrown out each time; optional
	FloodVolume  quantity.Volume     // that brings the empty bilge up to where harm begins; optional
	PumpFlow     quantity.VolumeFlow // as it is fitted, with its hose and lift; optional

	PumpPower     quantity.Power  // volts times amperes; optional
	StandingPower quantity.Power  // of all else that stays switched on; 0 is none
	BatteryEnergy quantity.Energy // volts times ampere-hours; optional
	UsableShare   quantity.Ratio  // of BatteryEnergy, above 0 up to 1
	TimeAway      quantity.Time   // that the boat is left alone; optional

	WaterTemperature quantity.Temperature // that the drips were counted in, 273.15 to 313.15 K; optional
	WarmestWater     quantity.Temperature // that the boat lies in while it is left alone, likewise; optional
}

// DripResult is what the drips cost. A figure for which an optional input is
// missing is NaN. A time of Never means that it does not come to it.
type DripResult struct {
	DayAtRest    quantity.Volume // from the gland alone, a day and night of it
	DayUnderWay  quantity.Volume
	WeekVolume   quantity.Volume // under way and at rest as the week has it
	LeakUnderWay quantity.VolumeFlow
	LeakAtRest   quantity.VolumeFlow
	LeakAway     quantity.VolumeFlow // at rest, in the warmest water
	Inflow       quantity.VolumeFlow // of a boat left alone, from the gland and all else
	GlandShare   quantity.Ratio      // of Inflow, by the gland; NaN when nothing comes in

	TimeToSwitch   quantity.Time   // from the empty bilge, boat at rest
	CyclesPerDay   quantity.Ratio  // of the pump, at rest
	PumpTime       quantity.Time   // that it runs in a day, at rest
	EnergyPerDay   quantity.Energy // out of the battery, at rest
	PumpShare      quantity.Ratio  // of EnergyPerDay, by the pump; NaN when none is taken
	TimeToFlat     quantity.Time   // until the usable part is gone
	TimeToFlood    quantity.Time   // from the empty bilge with a dead pump
	TimeUnattended quantity.Time   // with nobody there and nothing charging, until harm begins
	PumpLoad       quantity.Ratio  // greatest inflow over the pump's flow; above 1 the pump does not keep up
}

const (
	day  = 86400.0
	week = 7 * day
	// Never stands for what does not come in ten years, in seconds.
	Never = 10 * 365 * day
)

// Drip finds what the drips of a gland cost in water, pump and battery.
//
// Drips times drop volume is a flow; a volume over a flow is a time. In the
// long run a pump runs the part of the day that inflow is of its flow, and
// takes power times that time out of the battery (conservation of mass and of
// energy). The figures at rest are those of a boat left alone. When the battery
// is down the bilge may be full up to the switch, the worst that the pump
// leaves, and fills on from there; where the battery is down before the pump
// first starts, or the pump does not keep up, the bilge fills as with no pump.
// The fine gaps of a packing let through the more the thinner the water is
// (Darcy's law), so that a count is taken to the warmest water the boat lies in;
// a temperature that is not given changes nothing, nor does colder water.
//
// The error is a *problem.Error of everything that cannot be. Drip allocates
// nothing when it succeeds.
func Drip(in DripInput) (out DripResult, err error) {
	if err = in.usable(); err != nil {
		return DripResult{}, err
	}
	way := float64(in.DropVolume) * max(0, float64(in.DripRate))
	rest := float64(in.DropVolume) * max(0, float64(in.DripRateAtRest))
	away := rest * in.thinner()
	inflow := away + float64(in.OtherInflow)
	out.LeakUnderWay, out.LeakAtRest, out.LeakAway, out.Inflow = quantity.VolumeFlow(way), quantity.VolumeFlow(rest), quantity.VolumeFlow(away), quantity.VolumeFlow(inflow)
	out.DayAtRest, out.DayUnderWay = quantity.Volume(rest*day), quantity.Volume(way*day)
	under := float64(in.TimeUnderWay)
	out.WeekVolume = quantity.Volume(way*under + rest*(week-under))

	out.TimeToSwitch = until(float64(in.SwitchVolume), inflow)
	out.CyclesPerDay = quantity.Ratio(inflow * day / given(float64(in.CycleVolume)))
	running := min(day, day*inflow/given(float64(in.PumpFlow)))
	out.PumpTime = quantity.Time(running)
	pumping := given(float64(in.PumpPower)) * running
	energy := pumping + float64(in.StandingPower)*day
	out.EnergyPerDay = quantity.Energy(energy)
	out.GlandShare = quantity.Ratio(away / given(inflow))
	out.PumpShare = quantity.Ratio(pumping / given(energy))
	out.TimeToFlat = until(float64(in.BatteryEnergy)*float64(in.UsableShare), energy/day)
	out.TimeToFlood = until(float64(in.FloodVolume), inflow)
	out.TimeUnattended = out.unattended(&in, inflow)
	worst := max(way, away) + float64(in.OtherInflow)
	out.PumpLoad = quantity.Ratio(worst / given(float64(in.PumpFlow)))
	return out, nil
}

// unattended is how long it takes until harm begins, battery and bilge together.
func (out *DripResult) unattended(in *DripInput, inflow float64) quantity.Time {
	switch {
	case !(out.TimeToFlat+out.TimeToSwitch+out.TimeToFlood >= 0):
		return quantity.Time(math.NaN())
	case out.TimeToFlat < out.TimeToSwitch, inflow >= float64(in.PumpFlow):
		return out.TimeToFlood
	case inflow == 0:
		return Never
	}
	return min(Never, out.TimeToFlat+quantity.Time(float64(in.FloodVolume-in.SwitchVolume)/inflow))
}

// thinner is how much thinner the warmest water is than that of the count.
func (in *DripInput) thinner() float64 {
	if in.WaterTemperature == 0 || in.WarmestWater <= in.WaterTemperature {
		return 1
	}
	return float64(fluid.WaterViscosity(in.WaterTemperature) / fluid.WaterViscosity(in.WarmestWater))
}

// until is how long an amount lasts, up to Never; NaN where it is not given.
func until(amount, flow float64) quantity.Time {
	return quantity.Time(min(given(amount)/flow, Never))
}

// given turns "not given" into NaN, which then marks all that rests on it.
func given(v float64) float64 {
	if v == 0 {
		return math.NaN()
	}
	return v
}

// usable says whether Drip can work with what is given.
func (in *DripInput) usable() error {
	var bad problem.List
	bad.Between("/dripRate", "the drip rate", float64(in.DripRate), -noneBelow, 20+noneBelow, "0 to 20 drips per second (1200 drips/min)")
	bad.Between("/dripRateAtRest", "the drip rate at rest", float64(in.DripRateAtRest), -noneBelow, 20+noneBelow, "0 to 20 drips per second (1200 drips/min)")
	bad.Between("/dropVolume", "the volume of a drop", float64(in.DropVolume), 1e-8, 3e-7, "0.01 mL to 0.3 mL")
	bad.Between("/timeUnderWay", "the time under way in a week", float64(in.TimeUnderWay), 0, week, "0 to 168 h")
	bad.Between("/otherInflow", "the other inflow", float64(in.OtherInflow), 0, 0.01, "0 to 36 m³/h")
	bad.Between("/switchVolume", "the volume up to the switch", float64(in.SwitchVolume), 0, 100, "0 for not given, up to 100 m³")
	bad.Between("/cycleVolume", "the volume thrown out each time", float64(in.CycleVolume), 0, 100, "0 for not given, up to 100 m³")
	bad.Between("/floodVolume", "the volume up to where harm begins", float64(in.FloodVolume), 0, 1000, "0 for not given, up to 1000 m³")
	bad.Between("/pumpFlow", "the flow of the pump", float64(in.PumpFlow), 0, 0.1, "0 for not given, up to 360 m³/h")
	bad.Between("/pumpPower", "the power of the pump", float64(in.PumpPower), 0, 10000, "0 for not given, up to 10 kW")
	bad.Between("/standingPower", "the power of what stays switched on", float64(in.StandingPower), 0, 10000, "0 to 10 kW")
	bad.Between("/batteryEnergy", "the energy of the battery", float64(in.BatteryEnergy), 0, 1e10, "0 for not given, up to 2700 kW·h")
	bad.Between("/usableShare", "the usable part of the battery", float64(in.UsableShare), 1e-3, 1, "above 0 up to 1")
	bad.Between("/timeAway", "the time the boat is left alone", float64(in.TimeAway), 0, 1e9, "0 for not given, up to 30 years")
	for _, water := range [...]struct {
		where, what string
		is          quantity.Temperature
	}{{"/waterTemperature", "the water temperature", in.WaterTemperature}, {"/warmestWater", "the warmest water", in.WarmestWater}} {
		if water.is != 0 {
			bad.Between(water.where, water.what, float64(water.is), 273.15, 313.15, "0 °C to 40 °C")
		}
	}
	if in.SwitchVolume > 0 && in.FloodVolume > 0 && in.FloodVolume < in.SwitchVolume {
		bad.Add("/floodVolume", fmt.Sprintf("harm begins at %.4g L, before the pump starts at %.4g L", 1000*in.FloodVolume, 1000*in.SwitchVolume), "from the switch's volume upward", "set the switch lower, or measure both again from the empty bilge")
	}
	return bad.Err()
}
