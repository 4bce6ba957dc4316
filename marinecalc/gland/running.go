// What is known of a running gland, and its checks.

package gland

import (
	"math"

	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/quantity"
)

// HeatInput is a gland under way. All figures are in the coherent SI unit; the
// range that Heat accepts stands beside each.
//
// A rate or temperature that was counted or read may come a little below its
// range when its accuracy is drawn; drip rates down to -0.05/s count as none.
//
// Shaft, box, packing and shaft speed may be 0, not known: then nothing is
// computed, and what was counted and read stands by itself.
type HeatInput struct {
	ShaftDiameter quantity.Length // 10 mm to 200 mm
	BoxBore       quantity.Length // 14 mm to 300 mm, at least 2 mm more than the shaft
	PackedLength  quantity.Length // 3 mm to 600 mm: number of rings times ring section

	ShaftSpeed     quantity.RotationSpeed // 1 to 600 rad/s
	DripRate       quantity.DripRate      `unset:"NaN"` // under way, 0 to 20/s; 0 is none, NaN: not counted
	DripRateAtRest quantity.DripRate      `unset:"NaN"` // 0 to 20/s; NaN: not counted

	WaterTemperature quantity.Temperature // 273.15 to 313.15 K
	Salinity         quantity.Ratio       // mass fraction, 0 to 0.04; 0 is fresh water
	AirTemperature   quantity.Temperature // around the box, 253.15 to 353.15 K; 0: not given, counted as warm as the water

	WantedRise               quantity.TemperatureDifference // 0.5 to 100 K; 0: not asked
	MostDrips                quantity.DripRate              // past which drips are no remedy for a hot gland, 0.02/s to 20/s
	MeasuredGlandTemperature quantity.Temperature           // 263.15 to 423.15 K; 0: not measured

	FrictionCoefficient quantity.Ratio  // packing on shaft and on box, 0.005 to 0.6
	LateralRatio        quantity.Ratio  // radial over axial stress in the packing, 0.1 to 1
	GlandStress         quantity.Stress // axial, at the follower, 2 kPa to 5 MPa

	DropVolume   quantity.Volume       // 1e-8 to 3e-7 m³
	Conductivity quantity.Conductivity // of the shaft, 5 to 420 W/(m·K)
	WaterFilm    quantity.HeatTransfer // metal to water, 20 to 20 000 W/(m²·K)
	AirFilm      quantity.HeatTransfer // metal to air, 1 to 100 W/(m²·K)
	BoxAreaRatio quantity.Ratio        // outside of the box over π·BoxBore·PackedLength, 0 to 30
	BoxWetRatio  quantity.Ratio        // wetted inside of the box over the same, 0 to 10
}

// boiling is where the water in the packing boils, in K: 99.97 °C at
// atmospheric pressure (IAPWS R7-97, region 4; from memory), rounded. Past it the
// heat goes into steam, and what is calculated here does not hold.
const boiling = 373.15

// hottest is the greatest rise above the water that is calculated: to boiling,
// or to what a thermometer found.
func (in *HeatInput) hottest() quantity.TemperatureDifference {
	return quantity.TemperatureDifference(max(boiling, in.MeasuredGlandTemperature) - in.WaterTemperature)
}

// noneBelow is how far under nothing a count of drips may be drawn, in 1/s.
const noneBelow = 0.05

// usable says whether Heat can work with what is given. It allocates nothing
// when it can.
func (in *HeatInput) usable() error {
	var bad problem.List
	known := func(where, what string, value, low, high float64, allowed string) {
		if value != 0 {
			bad.Between(where, what, value, low, high, allowed)
		}
	}
	known("/shaftDiameter", "the shaft diameter", float64(in.ShaftDiameter), 0.01, 0.2, "10 mm to 200 mm")
	known("/boxBore", "the bore of the box", float64(in.BoxBore), 0.014, 0.3, "14 mm to 300 mm")
	known("/packedLength", "the packed length", float64(in.PackedLength), 0.003, 0.6, "3 mm to 600 mm")
	known("/shaftSpeed", "the shaft speed", float64(in.ShaftSpeed), 1, 600, "1 rad/s to 600 rad/s (10 rpm to 5730 rpm)")
	counted := !math.IsNaN(float64(in.DripRate))
	if counted {
		bad.Between("/dripRate", "the drip rate", float64(in.DripRate), -noneBelow, 20, "0 to 20 drips per second (1200 drips/min)")
	} else if math.IsNaN(float64(in.DripRateAtRest)) && in.MeasuredGlandTemperature == 0 {
		bad.Add("/dripRate", "nothing of the gland was counted or read", "drips under way or at rest, or the gland's temperature", "count the drips")
	}
	if !math.IsNaN(float64(in.DripRateAtRest)) {
		bad.Between("/dripRateAtRest", "the drip rate at rest", float64(in.DripRateAtRest), -noneBelow, 20, "0 to 20 drips per second (1200 drips/min)")
	}
	bad.Between("/mostDrips", "the drip rate past which drips are no remedy", float64(in.MostDrips), 0.02, 20, "1.2 to 1200 drips/min")
	bad.Between("/waterTemperature", "the water temperature", float64(in.WaterTemperature), 273.15, 313.15, "0 °C to 40 °C")
	bad.Between("/salinity", "the salinity", float64(in.Salinity), 0, 0.04, "0 % to 4 %")
	if in.AirTemperature != 0 {
		bad.Between("/airTemperature", "the air temperature", float64(in.AirTemperature), 253.15, 353.15, "-20 °C to 80 °C")
	}
	if in.WantedRise != 0 {
		bad.Between("/wantedRise", "the wanted temperature rise", float64(in.WantedRise), 0.5, 100, "0.5 K to 100 K")
	}
	if in.MeasuredGlandTemperature != 0 {
		bad.Between("/measuredGlandTemperature", "the measured gland temperature", float64(in.MeasuredGlandTemperature), 263.15, 423.15, "-10 °C to 150 °C")
	}
	known("/frictionCoefficient", "the friction coefficient", float64(in.FrictionCoefficient), 0.005, 0.6, "0.005 to 0.6")
	known("/lateralRatio", "the lateral pressure ratio", float64(in.LateralRatio), 0.1, 1, "0.1 to 1")
	bad.Between("/glandStress", "the squeeze at the follower", float64(in.GlandStress), 2e3, 5e6, "2 kPa to 5 MPa")
	bad.Between("/dropVolume", "the volume of a drop", float64(in.DropVolume), 1e-8, 3e-7, "0.01 mL to 0.3 mL")
	known("/conductivity", "the heat conductivity of the shaft", float64(in.Conductivity), 5, 420, "5 to 420 W/(m·K)")
	bad.Between("/waterFilm", "the film coefficient in water", float64(in.WaterFilm), 20, 20000, "20 to 20 000 W/(m²·K)")
	bad.Between("/airFilm", "the film coefficient in air", float64(in.AirFilm), 1, 100, "1 to 100 W/(m²·K)")
	bad.Between("/boxAreaRatio", "the outside of the box", float64(in.BoxAreaRatio), 0, 30, "0 to 30 times the packed bore")
	bad.Between("/boxWetRatio", "the wetted inside of the box", float64(in.BoxWetRatio), 0, 10, "0 to 10 times the packed bore")
	if len(bad) > 0 {
		return bad.Err()
	}
	if section := (in.BoxBore - in.ShaftDiameter) / 2; in.BoxBore != 0 && in.ShaftDiameter != 0 && !(section >= 1e-3*(1-1e-9)) {
		bad.Add("/boxBore", "the bore of the box leaves less than 1 mm for the packing", "at least 2 mm more than the shaft diameter", "is the bore the ring's outside diameter, not its section?")
	}
	if in.MeasuredGlandTemperature != 0 {
		// Nothing cools the gland below both the water and the air; 5 K are left to the thermometer.
		coldest := in.WaterTemperature
		if in.AirTemperature != 0 {
			coldest = min(coldest, in.AirTemperature)
		}
		if in.MeasuredGlandTemperature < coldest-5 {
			bad.Add("/measuredGlandTemperature", "the gland cannot be colder than both the water and the air", "from the colder of the two upward", "read all three with the same thermometer")
		}
	}
	return bad.Err()
}

// sized tells whether all is known that friction and cooling are computed from.
func (in *HeatInput) sized() bool {
	return in.ShaftDiameter != 0 && in.BoxBore != 0 && in.PackedLength != 0 && in.ShaftSpeed != 0 &&
		in.FrictionCoefficient != 0 && in.LateralRatio != 0 && in.Conductivity != 0 && !math.IsNaN(float64(in.DripRate))
}
