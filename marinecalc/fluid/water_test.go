package fluid

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"example.org/driveline/marinecalc/internal/parttest"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/quantity"
)

// Source: UNESCO Technical Papers in Marine Science 44 (1983), check values of
// the equation of state at p = 0.
func TestSeaDensityUNESCO44(t *testing.T) {
	for _, c := range []struct{ s, t68, rho float64 }{
		{0, 0, 999.8426}, {40, 0, 1032.1471}, {0, 40, 992.2204}, {40, 40, 1021.6788}, {30, 30, 1017.9854},
	} {
		parttest.Near(t, "density", seaDensity(c.t68, c.s), c.rho, 5e-5)
		if c.s > 0 {
			parttest.Near(t, "Sea density", float64(sea(t, zeroCelsius+c.t68/1.00024, c.s/1000).Density), c.rho, 5.1e-5)
		}
	}
}

// Source: Gill, Atmosphere-Ocean Dynamics (1982), appendix 3, and UNESCO 38:
// values from memory, reproduced by calculation.
func TestSeaDensityGill(t *testing.T) {
	for _, c := range []struct{ s, t68, rho float64 }{
		{35, 5, 1027.67547}, {35, 25, 1023.34306}, {0, 5, 999.96675},
	} {
		parttest.Near(t, "density", seaDensity(c.t68, c.s), c.rho, 5e-6)
	}
}

// Source: UNESCO 44 (1983), specific heat at (25, 0, 0), as in the check of
// its coefficients in open test code.
func TestSeaSpecificHeatUNESCO44(t *testing.T) {
	parttest.Near(t, "specific heat", seaSpecificHeat(0, 25), 4048.440412, 5e-7)
	parttest.Near(t, "Sea specific heat", float64(sea(t, zeroCelsius, 0.025).SpecificHeat), 4048.440412, 5e-7)
}

// Source: Tupper, Introduction to Naval Architecture, table 5.1: handbook
// water of 3.5 % salinity, and fresh, one decimal.
func TestWaterTupper(t *testing.T) {
	for _, c := range []struct{ celsius, fresh, salt float64 }{
		{0, 999.8, 1028.0}, {10, 999.6, 1026.9}, {20, 998.1, 1024.7}, {30, 995.6, 1021.7},
	} {
		k := quantity.Temperature(zeroCelsius + c.celsius)
		parttest.Near(t, "sea", float64(sea(t, float64(k), 0.035).Density), c.salt, 0.2)
		parttest.Near(t, "fresh", float64(fresh(t, float64(k), Atmosphere).Density), c.fresh, 0.2)
	}
}

// Derived: a grid worked out independently of this code from the same
// formulations (temperatures ITS-90; fresh water at 0.101325 MPa).
func TestWaterGridDerived(t *testing.T) {
	for _, c := range []struct{ celsius, rhoFresh, cpFresh, rhoSea, cpSea float64 }{
		{10, 999.7015, 4195.45, 1026.9520, 3986.34},
		{15, 999.1011, 4189.09, 1025.9720, 3989.78},
		{20, 998.2061, 4184.79, 1024.7617, 3993.86},
		{25, 997.0480, 4181.90, 1023.3412, 3997.69},
		{40, 992.2243, 4178.55, 1017.9692, 4003.46},
	} {
		f, s := fresh(t, zeroCelsius+c.celsius, Atmosphere), sea(t, zeroCelsius+c.celsius, 0.035)
		parttest.Near(t, "fresh density", float64(f.Density), c.rhoFresh, 1e-4)
		parttest.Near(t, "fresh specific heat", float64(f.SpecificHeat), c.cpFresh, 0.006)
		parttest.Near(t, "sea density", float64(s.Density), c.rhoSea, 1e-4)
		parttest.Near(t, "sea specific heat", float64(s.SpecificHeat), c.cpSea, 0.006)
	}
}

// Source: IAPWS R7-97(2012), table 5, all digits printed.
func TestFreshIF97Table5(t *testing.T) {
	for _, c := range []struct{ kelvin, pascal, volume, cp float64 }{
		{300, 3e6, 0.100215168e-2, 4.17301218e3},
		{300, 80e6, 0.971180894e-3, 4.01008987e3},
		{500, 3e6, 0.120241800e-2, 4.65580682e3},
	} {
		w := fresh(t, c.kelvin, quantity.Pressure(c.pascal))
		parttest.Near(t, "specific volume", 1/float64(w.Density), c.volume, 6e-12)
		parttest.Near(t, "specific heat", float64(w.SpecificHeat), c.cp, 6e-6)
	}
}

// Source: IAPWS R7-97(2012), table 35: value from memory.
func TestSaturationIF97Table35(t *testing.T) {
	for _, c := range []struct{ kelvin, pascal float64 }{
		{300, 0.353658941e4}, {500, 0.263889776e7}, {600, 0.123443146e8},
	} {
		parttest.Near(t, "saturation pressure", saturation(c.kelvin), c.pascal, c.pascal*2e-9)
	}
}

func TestWaterRefuses(t *testing.T) {
	nan := math.NaN()
	for _, c := range []struct {
		name      string
		kelvin, s float64
		places    int
	}{
		{"ice", 272, 0.035, 1}, {"hot", 314, 0.035, 1}, {"brine", 290, 0.2, 1}, {"less than no salt", 290, -0.01, 1},
		{"both", 400, 1, 2}, {"NaN", nan, nan, 2}, {"fresh ice", 273, 0, 1}, {"steam", 400, 0, 1}, {"plasma", 4000, 0, 1},
	} {
		_, err := AtSurface(quantity.Temperature(c.kelvin), quantity.Ratio(c.s))
		list := problem.Of(err)
		if len(list) != c.places {
			t.Errorf("%s: %v, want %d problems", c.name, err, c.places)
		}
		for _, p := range list {
			if p.Allowed == "" || p.Where == "" {
				t.Errorf("%s: %+v does not say where or what is allowed", c.name, p)
			}
		}
	}
}

// Property: salt makes water heavier and less able to hold heat; the surface
// function is Fresh without salt and Sea with it, and the two meet closely.
func TestWaterSaltProperty(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 7))
	for range 2000 {
		k := zeroCelsius + 40*r.Float64()
		s := 0.039 * r.Float64()
		less, more := sea(t, k, s), sea(t, k, s+0.001)
		if more.Density <= less.Density || more.SpecificHeat >= less.SpecificHeat {
			t.Fatalf("at %g K and %g: %+v then %+v", k, s, less, more)
		}
		f, e := fresh(t, k, Atmosphere), sea(t, k, 0)
		parttest.Near(t, "densities meet", float64(f.Density), float64(e.Density), 0.008)
		parttest.Near(t, "specific heats meet", float64(f.SpecificHeat), float64(e.SpecificHeat), 4)
	}
}

// The chain of powers is the plain formula of table 4.
func TestRegion1AgainstPow(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 9))
	for range 500 {
		pi, tau := 6*r.Float64(), 2.3+2.7*r.Float64()
		var gp, gtt, scale float64
		for _, c := range region1Terms {
			i, j := float64(c.i), float64(c.j)
			gp -= c.n * i * math.Pow(7.1-pi, i-1) * math.Pow(tau-1.222, j)
			d := c.n * math.Pow(7.1-pi, i) * j * (j - 1) * math.Pow(tau-1.222, j-2)
			gtt += d
			scale += math.Abs(d)
		}
		a, b := region1(pi, tau)
		parttest.Near(t, "γ_π", a, gp, 1e-12*math.Abs(gp))
		parttest.Near(t, "γ_ττ", b, gtt, 1e-12*scale)
	}
}

func sea(t *testing.T, kelvin, salinity float64) Water {
	t.Helper()
	w, err := Sea(quantity.Temperature(kelvin), quantity.Ratio(salinity))
	if err != nil {
		t.Fatal(err)
	}
	return w
}

func fresh(t *testing.T, kelvin float64, p quantity.Pressure) Water {
	t.Helper()
	w, err := Fresh(quantity.Temperature(kelvin), p)
	if err != nil {
		t.Fatal(err)
	}
	return w
}

func BenchmarkAtSurface(b *testing.B) {
	for name, s := range map[string]quantity.Ratio{"sea": 0.035, "fresh": 0} {
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := AtSurface(291.15, s); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

// Infinity is no temperature and no salinity.
func TestWaterRefusesInfinity(t *testing.T) {
	for _, bad := range []float64{math.Inf(1), math.Inf(-1), math.NaN()} {
		for _, salinity := range []float64{0, 0.035} {
			if _, err := AtSurface(quantity.Temperature(bad), quantity.Ratio(salinity)); err == nil {
				t.Errorf("water at %g K", bad)
			}
		}
		if _, err := Sea(288, quantity.Ratio(bad)); err == nil {
			t.Errorf("salinity %g", bad)
		}
	}
}

func TestSaltierThanTheEquations(t *testing.T) {
	_, err := Sea(288.15, 0.05)
	if err == nil || !strings.Contains(err.Error(), "a salinity of 5 %") {
		t.Error(err)
	}
}
