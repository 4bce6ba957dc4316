// The viscosity of water, fresh and salt.

package fluid

import (
	"math"

	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/quantity"
)

// WaterViscosity is the dynamic viscosity of liquid water at atmospheric
// pressure: of fresh water Σ a·(T/300 K)^b (IAPWS SR6-08, eq. 7, from memory),
// times 1 + A·S + B·S² for a mass fraction S of salt (Sharqawy, Lienhard and
// Zubair, Desalination and Water Treatment 16 (2010) 354-380, eq. 22, from
// memory). It holds from 0 to 100 °C and up to 0.12 of salt; outside it the
// error is a *problem.Error with the places "/waterTemperature" and
// "/salinity".
func WaterViscosity(t quantity.Temperature, salinity quantity.Ratio) (quantity.DynamicViscosity, error) {
	var bad problem.List
	if !problem.Within(float64(t), zeroCelsius, zeroCelsius+100) {
		bad.Add("/waterTemperature", "water of this temperature is outside the range of the viscosity equations", "0 °C to 100 °C", "")
	}
	if !problem.Within(float64(salinity), 0, 0.12) {
		bad.Add("/salinity", "so much salt is outside the range of the viscosity equations", "0 % to 12 %", "the open sea has 3.5 %")
	}
	if bad != nil {
		return 0, bad.Err()
	}
	over := float64(t) / 300
	fresh := 280.68*math.Pow(over, -1.9) + 511.45*math.Pow(over, -7.7) + 61.131*math.Pow(over, -19.6) + 0.45903*math.Pow(over, -40)
	c, s := float64(t)-zeroCelsius, float64(salinity)
	a := 1.541 + c*(1.998e-2-c*9.52e-5)
	b := 7.974 - c*(7.561e-2-c*4.724e-4)
	return quantity.DynamicViscosity(1e-6 * fresh * (1 + a*s + b*s*s)), nil
}
