package fluid

import (
	"math"
	"testing"

	"example.org/driveline/marinecalc/internal/parttest"
	"example.org/driveline/marinecalc/quantity"
)

func TestWaterViscosityRefuses(t *testing.T) {
	for where, in := range map[string][2]float64{"/waterTemperature": {380, 0}, "/salinity": {300, 0.2}} {
		_, err := WaterViscosity(quantity.Temperature(in[0]), quantity.Ratio(in[1]))
		parttest.RefusedAt(t, err, where)
	}
	_, err := WaterViscosity(260, -1)
	parttest.RefusedAt(t, err, "/waterTemperature", "/salinity")
}

// Sea water against an older law, of other measurements: Millero 1974 as in
// Landolt-Boernstein V/3a, by the chlorinity in a volume, over the viscosity of
// fresh water beside it. The two agree to within 1 %.
func TestSeaWaterAgainstAnOlderLaw(t *testing.T) {
	for _, celsius := range []float64{5, 10, 15, 20, 25, 30} {
		for _, salinity := range []float64{0, 0.010, 0.020, 0.035} {
			water := parttest.Must(t, func(q quantity.Temperature) (Water, error) { return AtSurface(q, quantity.Ratio(salinity)) }, quantity.Temperature(celsius+zeroCelsius))
			chlorinity := float64(water.Density) * 1000 * salinity / 1806.55
			fresh := 1.002e-3 * math.Pow(10, (1.1709*(20-celsius)-1.827e-3*(celsius-20)*(celsius-20))/(celsius+89.93))
			want := fresh * (1 + (5.185e-5*celsius+1.0675e-4)*math.Sqrt(chlorinity) + (3.3e-5*celsius+2.591e-3)*chlorinity)
			got := parttest.Must(t, func(q quantity.Temperature) (quantity.DynamicViscosity, error) {
				return WaterViscosity(q, quantity.Ratio(salinity))
			}, quantity.Temperature(celsius+zeroCelsius))
			parttest.Within(t, "viscosity", got, want, 0.01)
		}
	}
}
