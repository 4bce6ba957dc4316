package fluid

import (
	"math"
	"testing"

	"example.org/driveline/marinecalc/internal/parttest"
	"example.org/driveline/marinecalc/quantity"
)

// The equations of appendix X2 against table 1 of ASTM D2270, through all
// their pieces, to 0.3 % of the table.
func TestReferenceOilsAgainstTheTable(t *testing.T) {
	for _, c := range [][3]float64{
		{2, 7.994, 6.394}, {3, 15.49, 12.15}, {3.8, 23.13, 17.97}, {4, 25.32, 19.56}, {4.4, 30.48, 22.92}, {4.7, 35.13, 25.63}, {5, 40.23, 28.49}, {5.7, 52.64, 35.29},
		{6.4, 65.18, 42.14}, {6.7, 71.29, 45.33}, {7, 78, 48.57}, {7.4, 86.66, 52.88}, {8, 100, 59.6}, {9, 123.3, 71.1}, {10, 147.7, 82.87}, {12, 201.9, 108}, {13.5, 247.4, 128.4},
		{15, 296.5, 149.7}, {17, 369.4, 180.2}, {20, 493.2, 229.5}, {25, 736.5, 320.9}, {30, 1023, 421.7}, {35, 1356, 532.5}, {40, 1730, 651.8}, {50, 2618, 919.6}, {55, 3126, 1066}, {60, 3676, 1222}, {70, 4905, 1558},
	} {
		l, h := referenceOils(c[0])
		parttest.Near(t, "L", l, c[1], 0.003*c[1])
		parttest.Near(t, "H", h, c[2], 0.003*c[2])
	}
}

// Past the table the standard gives the equations themselves, 0.8353·Y² +
// 14.67·Y - 216 and 0.1684·Y² + 11.85·Y - 97 (ASTM D2270, 6.2; from memory): at
// 200 mm²/s 36 130 and 9009.
func TestReferenceOilsPastTheTable(t *testing.T) {
	l, h := referenceOils(200)
	parttest.Within(t, "L", l, 36130, 2e-4)
	parttest.Within(t, "H", h, 9009, 2e-4)
}

// Where one line of the equations ends and the next begins, both say the same to 0.2 %:
// they were fitted to one table without steps.
func TestReferenceOilsHaveNoSteps(t *testing.T) {
	for i := range indexEquations[1:] {
		y := indexEquations[i+1].from
		l, h := referenceOils(y)
		lower, higher := referenceOils(y - 1e-9)
		parttest.Within(t, "L", lower, l, 0.002)
		parttest.Within(t, "H", higher, h, 0.002)
	}
}

// The examples of ASTM D2270: 92 by procedure A, 156, 111 and 145 by B.
func TestViscosityIndex(t *testing.T) {
	for _, c := range [][3]float64{{73.30, 8.86, 92}, {22.83, 5.05, 156}, {53.47, 7.80, 111}, {138.9, 18.1, 145}} {
		if got := float64(ViscosityIndex(quantity.KinematicViscosity(c[0]*1e-6), quantity.KinematicViscosity(c[1]*1e-6))); math.Round(got) != c[2] {
			t.Errorf("%g, %g: %g, published %g", c[0], c[1], got, c[2])
		}
	}
	for _, c := range [][2]float64{{3, 1.5}, {5, 6}, {math.NaN(), 5}} {
		if got := float64(ViscosityIndex(quantity.KinematicViscosity(c[0]*1e-6), quantity.KinematicViscosity(c[1]*1e-6))); !math.IsNaN(got) {
			t.Errorf("%g, %g: %g", c[0], c[1], got)
		}
	}
}

// A mineral oil swells by 0.0006 to 0.0008 of itself a kelvin (handbooks of
// lubrication, from memory), and shrinks back to what it was.
func TestSwollen(t *testing.T) {
	for rho := quantity.Density(840); rho < 920; rho += 10 {
		warm := Swollen(rho, 288.15, 338.15)
		if per := (1 - float64(warm/rho)) / 50; per < 0.0006 || per > 0.0008 {
			t.Errorf("%g kg/m³: %g a kelvin", rho, per)
		}
		parttest.Near(t, "there and back", float64(Swollen(warm, 338.15, 288.15)), float64(rho), 0.003*float64(rho))
	}
}
