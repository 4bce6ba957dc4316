// The viscosity of water over its temperature, by IAPWS.

package fluid

import (
	"math"

	"example.org/driveline/marinecalc/quantity"
)

// WaterViscosity is the dynamic viscosity of fresh water at 0.1 MPa (IAPWS
// SR6-08(2011), equation 3 with table 1, fitted to R12-08; from memory, a test
// holds it against R12-08 and published figures). It is NaN outside -20 °C to
// 110 °C, where the equation is not valid. Salt makes sea water 6 to 8 %
// thicker, and the ratio of two temperatures the same to 2 %.
func WaterViscosity(t quantity.Temperature) quantity.DynamicViscosity {
	if !(t >= 253.15 && t <= 383.15) {
		return quantity.DynamicViscosity(math.NaN())
	}
	x, sum := math.Log(float64(t)/300), 0.0
	for _, term := range [...]struct{ a, b float64 }{{280.68, -1.9}, {511.45, -7.7}, {61.131, -19.6}, {0.45903, -40}} {
		sum += term.a * math.Exp(term.b*x)
	}
	return quantity.DynamicViscosity(1e-6 * sum)
}
