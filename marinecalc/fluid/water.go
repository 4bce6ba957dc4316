// Sea water, by UNESCO 44, and the choice between sea and fresh.

package fluid

import (
	"fmt"
	"math"

	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/quantity"
)

// Water is what a stream of water needs to carry heat.
type Water struct {
	Density      quantity.Density      // kg/m³
	SpecificHeat quantity.SpecificHeat // J/(kg·K), at constant pressure
}

// Atmosphere is the standard atmosphere, 101 325 Pa (ISO 2533:1975, value
// from memory).
const Atmosphere quantity.Pressure = 101325

const zeroCelsius = 273.15 // K

// AtSurface gives the water a boat floats in, at atmospheric pressure:
// Fresh where the salinity is 0, Sea otherwise. The two formulations differ
// by less than 4 J/(kg·K) and 0.008 kg/m³ where they meet.
func AtSurface(t quantity.Temperature, salinity quantity.Ratio) (Water, error) {
	if salinity == 0 {
		return Fresh(t, Atmosphere)
	}
	return Sea(t, salinity)
}

// Sea gives seawater at atmospheric pressure by the equations of UNESCO
// Technical Papers in Marine Science 44 (Fofonoff and Millard, 1983): density
// by the one-atmosphere equation of state EOS-80 (equations 13 and 14),
// specific heat at zero pressure (equation 26).
//
// The temperature is in K on ITS-90 and is taken to IPTS-68, for which the
// equations were fitted, by t68 = 1.00024 t90. The salinity is a mass
// fraction and counts as practical salinity / 1000.
//
// Valid from 0 to 40 °C and from 0 to 0.04 (practical salinity 40), the range
// that the density and the specific heat share and that the paper's check
// values span; outside it the error is a *problem.Error with the places
// "/waterTemperature" and "/salinity".
func Sea(t quantity.Temperature, salinity quantity.Ratio) (Water, error) {
	const tMin, tMax, sMax = zeroCelsius, zeroCelsius + 40, 0.04
	if !problem.Within(float64(t), tMin, tMax) || !problem.Within(float64(salinity), 0, sMax) {
		var bad problem.List
		if !problem.Within(float64(t), tMin, tMax) {
			bad.Add("/waterTemperature", fmt.Sprintf("%.4g °C is outside the range of the seawater equations", float64(t)-zeroCelsius), "0 °C to 40 °C", "")
		}
		if !problem.Within(float64(salinity), 0, sMax) {
			bad.Add("/salinity", fmt.Sprintf("a salinity of %.4g %% is outside the range of the seawater equations", 100*float64(salinity)), "0 % to 4 %", "the open sea has 3.5 %")
		}
		return Water{}, bad.Err()
	}
	t68 := 1.00024 * (float64(t) - zeroCelsius)
	s := 1000 * float64(salinity)
	return Water{
		Density:      quantity.Density(seaDensity(t68, s)),
		SpecificHeat: quantity.SpecificHeat(seaSpecificHeat(t68, s)),
	}, nil
}

// seaDensity is EOS-80 at one atmosphere in kg/m³: UNESCO 44, equations 13
// and 14; t in °C of IPTS-68, s practical salinity.
func seaDensity(t, s float64) float64 {
	pure := 999.842594 + t*(6.793952e-2+t*(-9.095290e-3+t*(1.001685e-4+t*(-1.120083e-6+t*6.536332e-9))))
	b := 8.24493e-1 + t*(-4.0899e-3+t*(7.6438e-5+t*(-8.2467e-7+t*5.3875e-9)))
	c := -5.72466e-3 + t*(1.0227e-4+t*-1.6546e-6)
	const d = 4.8314e-4
	return pure + s*(b+c*math.Sqrt(s)+d*s)
}

// seaSpecificHeat is the specific heat at zero pressure in J/(kg·K): UNESCO
// 44, equation 26, after Millero, Perron and Desnoyers (1973).
func seaSpecificHeat(t, s float64) float64 {
	pure := 4217.4 + t*(-3.720283+t*(0.1412855+t*(-2.654387e-3+t*2.093236e-5)))
	a := -7.643575 + t*(0.1072763+t*-1.38385e-3)
	b := 0.1770383 + t*(-4.07718e-3+t*5.148e-5)
	return pure + s*(a+b*math.Sqrt(s))
}
