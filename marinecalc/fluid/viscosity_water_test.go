package fluid

import (
	"math"
	"testing"

	"example.org/driveline/marinecalc/internal/parttest"
	"example.org/driveline/marinecalc/quantity"
)

// The viscosity of water in handbooks (CRC Handbook, viscosity of liquid
// water; ISO/TR 3666 has 1.0016 at 20 °C; all from memory), in mPa·s.
func TestWaterViscosityInHandbooks(t *testing.T) {
	for celsius, want := range map[float64]float64{0: 1.7916, 5: 1.5182, 10: 1.3059, 15: 1.1375, 20: 1.0016, 25: 0.8900, 30: 0.7972, 40: 0.6527, 60: 0.4660, 80: 0.3540, 100: 0.2816} {
		parttest.Within(t, "handbook", 1000*float64(WaterViscosity(quantity.Temperature(celsius+zeroCelsius))), want, 3e-4)
	}
}

// viscosityR1208 is the formulation that the short equation was fitted to: all
// water and steam, of temperature and density (IAPWS R12-08, equations 10 to
// 12, tables 1 and 2; from memory, held against a value of its table 4 below).
func viscosityR1208(kelvin, density float64) float64 {
	h := [6][7]float64{
		{5.20094e-1, 2.22531e-1, -2.81378e-1, 1.61913e-1, -3.25372e-2},
		{8.50895e-2, 9.99115e-1, -9.06851e-1, 2.57399e-1},
		{-1.08374, 1.88797, -7.72479e-1},
		{-2.89555e-1, 1.26613, -4.89837e-1, 0, 6.98452e-2, 0, -4.35673e-3},
		{0, 0, -2.57040e-1, 0, 0, 8.72102e-3},
		{0, 1.20573e-1, 0, 0, 0, 0, -5.93264e-4},
	}
	warm, dense := kelvin/647.096, density/322
	thin := 100 * math.Sqrt(warm) / (1.67752 + 2.20462/warm + 0.6366564/(warm*warm) - 0.241605/(warm*warm*warm))
	sum := 0.0
	for i, row := range h {
		for j, c := range row {
			sum += c * math.Pow(1/warm-1, float64(i)) * math.Pow(dense-1, float64(j))
		}
	}
	return 1e-6 * thin * math.Exp(dense*sum)
}

func TestWaterViscosityAgainstTheWholeFormulation(t *testing.T) {
	parttest.Within(t, "table 4, 298.15 K and 998 kg/m³", viscosityR1208(298.15, 998), 889.735100e-6, 1e-9)
	for celsius := 0.25; celsius < 100; celsius += 5 {
		at := quantity.Temperature(celsius + zeroCelsius)
		parttest.Within(t, "R12-08", WaterViscosity(at), viscosityR1208(float64(at), float64(fresh(t, float64(at), 1e5).Density)), 2e-4)
	}
}

// Outside its range it is not known.
func TestWaterViscosityOutsideItsRange(t *testing.T) {
	for _, kelvin := range []float64{0, 250, 390, math.NaN(), math.Inf(1)} {
		if v := float64(WaterViscosity(quantity.Temperature(kelvin))); !math.IsNaN(v) {
			t.Errorf("%g K: %g", kelvin, v)
		}
	}
}

// salted is how much thicker sea water is (Sharqawy, Lienhard and Zubair,
// Desalination and Water Treatment 16 (2010), equation 22, 1.5 %).
func salted(celsius, salt float64) float64 {
	return 1 + (1.541+1.998e-2*celsius-9.52e-5*celsius*celsius)*salt + (7.974-7.561e-2*celsius+4.724e-4*celsius*celsius)*salt*salt
}

// How much more leaks where the water is warmer hardly depends on its salt.
func TestSaltHardlyChangesTheRatio(t *testing.T) {
	parttest.Within(t, "sea water of 15 °C (ITTC 7.5-02-01-03: 1.220 mPa·s, from memory)", 1000*float64(WaterViscosity(15+zeroCelsius))*salted(15, 0.0352), 1.220, 1e-3)
	for cold := 0.0; cold <= 40; cold += 5 {
		for warm := cold; warm <= 40; warm += 5 {
			parttest.Within(t, "ratio", salted(cold, 0.038)/salted(warm, 0.038), 1, 0.02)
		}
	}
}
