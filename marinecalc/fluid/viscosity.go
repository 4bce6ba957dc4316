// The viscosity of an oil over its temperature, by ASTM D341.

package fluid

import (
	"math"

	"example.org/driveline/marinecalc/quantity"
)

// Walther is the line of ASTM D341 on which the viscosity of a petroleum
// fluid lies: log10 log10(ν + 0.7) = A − B·log10(T), ν in mm²/s, T in K
// (equation of Walther in the form of ASTM D341 for viscosities above
// 2 mm²/s; formula from memory).
type Walther struct{ A, B float64 }

// Through lays the line through two measured points. The viscosities are
// 2 mm²/s or more, the temperatures differ; what breaks this gives NaN.
func Through(cool quantity.KinematicViscosity, coolAt quantity.Temperature, hot quantity.KinematicViscosity, hotAt quantity.Temperature) Walther {
	w1, w2 := walther(float64(cool)), walther(float64(hot))
	t1, t2 := math.Log10(float64(coolAt)), math.Log10(float64(hotAt))
	b := (w1 - w2) / (t2 - t1)
	return Walther{A: w1 + b*t1, B: b}
}

// At gives the viscosity at a temperature. It is meant for -20 °C to 150 °C;
// below the pour point, and under 2 mm²/s, the line does not hold.
func (w Walther) At(t quantity.Temperature) quantity.KinematicViscosity {
	return quantity.KinematicViscosity((math.Exp(math.Ln10*math.Exp(math.Ln10*(w.A-w.B*math.Log10(float64(t))))) - 0.7) / 1e6)
}

// walther is log10 log10(ν + 0.7), ν given in m²/s.
func walther(nu float64) float64 { return math.Log10(math.Log10(nu*1e6 + 0.7)) }
