// Power through the gearbox: Shaft.

package torque

import (
	"math"

	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/quantity"
)

// ShaftInput is what is known of engine, gearbox and boat at one working point.
// A field marked optional is not given when it is zero.
type ShaftInput struct {
	EnginePower          quantity.Power         // at the crankshaft, above 0
	EngineSpeed          quantity.RotationSpeed // at that power, above 0
	GearRatioAhead       quantity.Ratio         // engine turns for one shaft turn ahead, above 0
	GearRatioAstern      quantity.Ratio         // the same astern; optional
	BoatSpeed            quantity.Velocity      // through the water at that power; optional
	PropellerDiameter    quantity.Length        // optional
	GearboxEfficiency    quantity.Ratio         // shaft power over engine power, above 0 up to 1
	ShockFactor          quantity.Ratio         // peak over steady torque, 1 or more
	AsternPowerShare     quantity.Ratio         // power used astern over EnginePower, above 0 up to 1; needed with GearRatioAstern
	PropulsiveEfficiency quantity.Ratio         // power that moves the boat over shaft power, above 0 up to 1; needed with BoatSpeed
	ThrustDeduction      quantity.Ratio         // share of the thrust that the suction on the stern takes away, 0 to below 1
	WaterDensity         quantity.Density       // needed with PropellerDiameter
}

// ShaftResult is what the drive does to the propeller shaft. NaN marks a figure
// for which the optional input is missing.
type ShaftResult struct {
	ShaftTorque      quantity.Torque        // steady, ahead
	PeakTorque       quantity.Torque        // shock on the greater of ahead and astern
	ShaftSpeed       quantity.RotationSpeed // ahead
	ShaftPower       quantity.Power         // ahead, behind the gearbox
	Thrust           quantity.Force         // under way; NaN without boat speed
	AsternTorque     quantity.Torque        // NaN without the ratio astern, as are the next two
	ShaftSpeedAstern quantity.RotationSpeed
	AsternPower      quantity.Power
	EngineTorque     quantity.Torque // at the crankshaft
	GearboxHeat      quantity.Power  // lost in the gearbox
	StandstillThrust quantity.Force  // of an ideal propeller, boat held still; NaN without propeller diameter
}

// Shaft works out the load on the propeller shaft.
//
// Torque and speed follow from P = T·ω on both sides of the gearbox (Shigley,
// Mechanical Engineering Design, 9th ed., eq. 3-42; Hibbeler, Mechanics of
// Materials, power transmission). The thrust under way is η_p·P/v, which moves
// the boat, over 1 - t, as the propeller's suction on the stern holds back the
// share t (Harvald, Resistance and Propulsion of Ships, from memory). The
// greatest thrust at standstill is that of an ideal actuator disc,
// (2·ρ·A·P²)^(1/3), from the momentum theory of Rankine and Froude (from
// memory); no open propeller reaches it.
//
// The error is a *problem.Error of everything in the drive that cannot be.
func Shaft(in ShaftInput) (out ShaftResult, err error) {
	if err = validate(&in); err != nil {
		return ShaftResult{}, err
	}
	ahead, eta := float64(in.GearRatioAhead), float64(in.GearboxEfficiency)
	engine := float64(in.EnginePower) / float64(in.EngineSpeed)
	out.EngineTorque = quantity.Torque(engine)
	out.ShaftTorque = quantity.Torque(eta * engine * ahead)
	out.ShaftSpeed = in.EngineSpeed / quantity.RotationSpeed(ahead)
	out.ShaftPower = in.EnginePower * quantity.Power(eta)
	out.GearboxHeat = in.EnginePower - out.ShaftPower
	out.AsternTorque, out.ShaftSpeedAstern, out.AsternPower = astern(&in, engine)
	sternward := float64(in.AsternPowerShare*in.GearRatioAstern) / ahead
	out.PeakTorque = quantity.Torque(in.ShockFactor) * out.ShaftTorque * quantity.Torque(max(1, sternward))
	out.Thrust = underWay(&in, out.ShaftPower)
	out.StandstillThrust = atStandstill(&in, out.ShaftPower)
	return out, nil
}

// astern gives torque, speed and power of the shaft going astern at the same
// engine speed.
func astern(in *ShaftInput, engineTorque float64) (quantity.Torque, quantity.RotationSpeed, quantity.Power) {
	ratio := float64(in.GearRatioAstern)
	if ratio == 0 {
		nan := math.NaN()
		return quantity.Torque(nan), quantity.RotationSpeed(nan), quantity.Power(nan)
	}
	share := float64(in.AsternPowerShare * in.GearboxEfficiency)
	return quantity.Torque(share * engineTorque * ratio),
		in.EngineSpeed / quantity.RotationSpeed(ratio),
		in.EnginePower * quantity.Power(share)
}

// underWay is the thrust at the boat's speed.
func underWay(in *ShaftInput, shaftPower quantity.Power) quantity.Force {
	if in.BoatSpeed == 0 {
		return quantity.Force(math.NaN())
	}
	return quantity.Force(float64(in.PropulsiveEfficiency) * float64(shaftPower) / float64(in.BoatSpeed) / float64(1-in.ThrustDeduction))
}

// atStandstill is the thrust of an ideal actuator disc in still water.
func atStandstill(in *ShaftInput, shaftPower quantity.Power) quantity.Force {
	if in.PropellerDiameter == 0 {
		return quantity.Force(math.NaN())
	}
	disc := math.Pi / 4 * float64(in.PropellerDiameter) * float64(in.PropellerDiameter)
	p := float64(shaftPower)
	return quantity.Force(math.Cbrt(2 * float64(in.WaterDensity) * disc * p * p))
}

// validate lists everything in the drive that cannot be.
func validate(in *ShaftInput) error {
	var faults problem.List
	faults.Above("/enginePower", "engine power", float64(in.EnginePower))
	faults.Above("/engineSpeed", "engine speed", float64(in.EngineSpeed))
	faults.Above("/gearRatioAhead", "gear ratio ahead", float64(in.GearRatioAhead))
	faults.NotNegative("/gearRatioAstern", "gear ratio astern", float64(in.GearRatioAstern))
	faults.NotNegative("/boatSpeed", "boat speed", float64(in.BoatSpeed))
	faults.NotNegative("/propellerDiameter", "propeller diameter", float64(in.PropellerDiameter))
	faults.Share("/gearboxEfficiency", "gearbox efficiency", float64(in.GearboxEfficiency))
	if k := float64(in.ShockFactor); !(k >= 1) || math.IsInf(k, 1) {
		faults.Add("/shockFactor", "the shock factor is below 1 or not a number", "1 or more", "a shock never makes the torque smaller; 1 means none")
	}
	if in.GearRatioAstern != 0 {
		faults.Share("/asternPowerShare", "share of the power used astern", float64(in.AsternPowerShare))
	} else {
		faults.NotNegative("/asternPowerShare", "share of the power used astern", float64(in.AsternPowerShare))
	}
	if in.BoatSpeed != 0 {
		faults.Share("/propulsiveEfficiency", "propulsive efficiency", float64(in.PropulsiveEfficiency))
	}
	if t := in.ThrustDeduction; !(t >= 0 && t < 1) {
		faults.Add("/thrustDeduction", "the thrust deduction is not a share below 1", "0 to below 1", "0.05 to 0.2 are usual")
	}
	if in.PropellerDiameter != 0 {
		faults.Above("/waterDensity", "density of the water", float64(in.WaterDensity))
	}
	return faults.Err()
}
