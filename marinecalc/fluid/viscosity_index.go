// How much an oil thins as it warms, by ASTM D2270; how much it swells.

package fluid

import (
	"math"

	"example.org/driveline/marinecalc/quantity"
)

// ViscosityIndex is the viscosity index of a petroleum fluid by ASTM D2270
// (ISO 2909): procedure A, 100·(L − U)/(L − H), up to 100; above it procedure
// B, 100 + (10^N − 1)/0.00715 with N = (log H − log U)/log Y. U is the
// viscosity at 40 °C, Y that at 100 °C, L and H those at 40 °C of oils of
// index 0 and 100 with the same Y. It is NaN below 2 mm²/s at 100 °C, where it
// is not defined.
func ViscosityIndex(at40, at100 quantity.KinematicViscosity) quantity.Ratio {
	u, y := float64(at40)*1e6, float64(at100)*1e6
	if !(y >= 2-1e-9) || !(u > y) {
		return quantity.Ratio(math.NaN())
	}
	l, h := referenceOils(y)
	if u >= h {
		return quantity.Ratio(100 * (l - u) / (l - h))
	}
	n := (math.Log(h) - math.Log(u)) / math.Log(y)
	return quantity.Ratio(100 + (math.Pow(10, n)-1)/0.00715)
}

// referenceOils gives L and H of ASTM D2270 in mm²/s by the equations of its
// appendix X2 (table X2.1; from memory, its first, second and last line seen
// in print; a test holds them against table 1).
func referenceOils(y float64) (l, h float64) {
	for i := len(indexEquations) - 1; ; i-- {
		if e := &indexEquations[i]; y >= e.from || i == 0 {
			return (e.l2*y+e.l1)*y + e.l0, (e.h2*y+e.h1)*y + e.h0
		}
	}
}

var indexEquations = [...]struct{ from, l2, l1, l0, h2, h1, h0 float64 }{
	{2.0, 1.14673, 1.7576, -0.109, 0.84155, 1.5521, -0.077},
	{3.8, 3.38095, -15.4952, 33.196, 0.78571, 1.7929, -0.183},
	{4.4, 2.5000, -7.2143, 13.812, 0.82143, 1.5679, 0.119},
	{5.0, 0.10100, 16.6350, -45.469, 0.04985, 9.1613, -18.557},
	{6.4, 3.35714, -23.5643, 78.466, 0.22619, 7.7369, -16.656},
	{7.0, 0.01191, 21.4750, -72.870, 0.79762, -0.7321, 14.610},
	{7.7, 0.41858, 16.1558, -56.040, 0.05794, 10.5156, -28.240},
	{9.0, 0.88779, 7.5527, -16.600, 0.26665, 6.7015, -10.810},
	{12, 0.76720, 10.7972, -38.180, 0.20073, 8.4658, -22.490},
	{15, 0.97305, 5.3135, -2.200, 0.28889, 5.9741, -4.930},
	{18, 0.97256, 5.2500, -0.980, 0.24504, 7.4160, -16.730},
	{22, 0.91413, 7.4759, -21.820, 0.20323, 9.1267, -34.230},
	{28, 0.87031, 9.7157, -50.770, 0.18411, 10.1015, -46.750},
	{40, 0.84703, 12.6752, -133.310, 0.17029, 11.4866, -80.620},
	{55, 0.85921, 11.1009, -83.190, 0.17130, 11.3680, -76.940},
	{70, 0.83531, 14.6731, -216.246, 0.16841, 11.8493, -96.947},
}

// Swollen is the density of a lubricating oil at a temperature, from that at
// another: ρ·exp(−α·Δ·(1 + 0.8·α·Δ)) with α = 0.6278/ρ (API MPMS 11.1 of 1980,
// ASTM D1250 table 54D, lubricating oils; from memory). The equation counts
// from 15 °C; from elsewhere between 0 and 40 °C it is off by less than 0.1 %.
func Swollen(density quantity.Density, from, to quantity.Temperature) quantity.Density {
	a := 0.6278 / float64(density) * float64(to-from)
	return quantity.Density(float64(density) * math.Exp(-a*(1+0.8*a)))
}
