package quantity

import (
	"math"
	"testing"
)

const (
	testInch  = 0.0254
	testLbfFt = 1.3558179483314004 // 0.45359237 · 9.80665 · 0.3048
)

func TestParseForms(t *testing.T) {
	for _, c := range []struct {
		kind, text string
		si         float64
	}{
		{"length", "32 mm", 0.032},
		{"length", "32mm", 0.032},
		{"length", " 32\tmm ", 0.032},
		{"length", "32\u00a0mm", 0.032},
		{"length", "32\u202fmm", 0.032},
		{"length", "32 MM", 0.032},
		{"length", "0,05 mm", 0.00005},
		{"length", "12,5 mm", 0.0125},
		{"length", "0,125 in", 0.125 * testInch},
		{"length", "1,2345 m", 1.2345},
		{"length", ",5 mm", 0.0005},
		{"length", ".5 mm", 0.0005},
		{"length", "5. mm", 0.005},
		{"length", "+5 mm", 0.005},
		{"length", "-5 mm", -0.005},
		{"length", "\u22125 mm", -0.005},
		{"length", "- 5 mm", -0.005},
		{"length", "5e-3 m", 0.005},
		{"length", "5E+0mm", 0.005},
		{"length", "1-11/16 in", 27.0 / 16 * testInch},
		{"length", "1 11/16 in", 27.0 / 16 * testInch},
		{"length", "1\u201311/16 in", 27.0 / 16 * testInch},
		{"length", "1 11\u204416 in", 27.0 / 16 * testInch},
		{"length", "-1-1/4 in", -1.25 * testInch},
		{"length", "1½ in", 1.5 * testInch},
		{"length", `⅜"`, 0.375 * testInch},
		{"length", `7/16"`, 7.0 / 16 * testInch},
		{"length", "7/16″", 7.0 / 16 * testInch},
		{"length", "7 / 16 in", 7.0 / 16 * testInch},
		{"length", "17/16 in", 17.0 / 16 * testInch},
		{"length", "24 thou", 0.0006096},
		{"length", "24 mil", 0.0006096},
		{"length", "6'", 1.8288},
		{"length", "6 Feet", 1.8288},
		{"length", "20 µm", 20e-6},
		{"length", "20 μm", 20e-6},
		{"length", "20 um", 20e-6},
		{"torque", "45 lbf·ft", 45 * testLbfFt},
		{"torque", "45 lbf ft", 45 * testLbfFt},
		{"torque", "45 ft·lbf", 45 * testLbfFt},
		{"torque", "45 lb-ft", 45 * testLbfFt},
		{"torque", "45 ft-lb", 45 * testLbfFt},
		{"torque", "45 ft lbs", 45 * testLbfFt},
		{"torque", "45 lbf⋅ft", 45 * testLbfFt},
		{"torque", "45 LBF*FT", 45 * testLbfFt},
		{"torque", "61 N·m", 61},
		{"torque", "61 Nm", 61},
		{"torque", "61 N m", 61},
		{"torque", "61 nm", 61},
		{"rotation-speed", "2400 rpm", 80 * math.Pi},
		{"rotation-speed", "2400 RPM", 80 * math.Pi},
		{"rotation-speed", "2400 r/min", 80 * math.Pi},
		{"power", "40 hp", 40 * 550 * testLbfFt},
		{"power", "40 PS", 40 * 735.49875},
		{"power", "40 hp(metric)", 40 * 735.49875},
		{"power", "40 hp (metric)", 40 * 735.49875},
		{"power", "40 KW", 40000},
		{"temperature-difference", "5 °C", 5},
		{"temperature-difference", "9 °F", 5},
		{"temperature-difference", "9 F", 5},
		{"temperature", "30 ℃", 303.15},
		{"temperature", "30 ºC", 303.15},
		{"drip-rate", "10 drips/min", 1.0 / 6},
		{"drip-rate", "1 drip/min", 1.0 / 60},
		{"drip-rate", "0", 0}, // none is none in every unit
		{"length", "0 ± 0.02 mm", 0},
		{"ratio", "75 %", 0.75},
		{"ratio", "75%", 0.75},
		{"ratio", "0.75", 0.75},
		{"ratio", "3/4", 0.75},
		{"ratio", "2.5:1", 2.5},
		{"ratio", "30 ppm", 30e-6},
		{"angle", "90 deg", math.Pi / 2},
		{"angle", "90°", math.Pi / 2},
		{"angle", "3 o'clock", math.Pi / 2},
		{"angle", "3 o’clock", math.Pi / 2},
		{"angle", "12 o'clock", 0},
		{"angle", "12.5 o'clock", math.Pi / 12},
		{"angle", "1/2 turn", math.Pi},
		{"angle", "2 flats", 2 * math.Pi / 3},
		{"angle", "0.5 mm/m", 0.0005},
		{"angle", "1 thou/in", 0.001},
		{"time", "3 h", 10800},
		{"time", "3 hours", 10800},
		{"time", "10 min", 600},
		{"time", "2 days", 172800},
		{"time", "1 year", 31536000},
		{"velocity", "6 knots", 6 * 1852.0 / 3600},
		{"velocity", "6 kn", 6 * 1852.0 / 3600},
		{"volume", "250 mL", 0.00025},
		{"volume", "3 l", 0.003},
		{"volume", "1 US gal", 0.003785411784},
		{"volume", "1 US qt", 0.000946352946},
		{"volume", "2 in3", 2 * testInch * testInch * testInch},
		{"volume", "2 in^3", 2 * testInch * testInch * testInch},
		{"volume", "1 cubic ft", 0.3048 * 0.3048 * 0.3048},
		{"area", "68.6 mm2", 68.6e-6},
		{"volume-flow", "60 L/h", 0.001 / 60},
		{"volume-flow", "86.4 L/day", 1e-6},
		{"volume-flow", "60 mL/min", 1e-6},
		{"volume-flow", "1 US gal/h", 0.003785411784 / 3600},
		{"stiffness", "150 N/mm", 150e3},
		{"stiffness", "150 kN/m", 150e3},
		{"stiffness", "100 lbf/in", 100 * 4.4482216152605 / testInch},
		{"dynamic-viscosity", "30 mPa·s", 0.03},
		{"dynamic-viscosity", "30 mPas", 0.03},
		{"dynamic-viscosity", "30 cP", 0.03},
		{"kinematic-viscosity", "46 mm²/s", 46e-6},
		{"kinematic-viscosity", "46 mm2/s", 46e-6},
		{"kinematic-viscosity", "46 cSt", 46e-6},
		{"stress", "586 MPa", 586e6},
		{"stress", "586 N/mm2", 586e6},
		{"stress", "85 ksi", 85e3 * 4.4482216152605 / (testInch * testInch)},
		{"pressure", "2 bar", 2e5},
		{"pressure", "200 kpa", 2e5},
		{"conductivity", "0.6 W/(m·K)", 0.6},
		{"conductivity", "0.6 W/m·K", 0.6},
		{"conductivity", "0.6 W/mK", 0.6},
		{"conductivity", "0.6 W/m/K", 0.6},
		{"conductivity", "0.6 W / (m K)", 0.6},
		{"heat-transfer", "500 W/m2K", 500},
		{"specific-heat", "4.18 kJ/(kg K)", 4180},
		{"density", "1.025 g/cm3", 1025},
		{"inertia", "2 kg m2", 2},
		{"money", "120 EUR", 120},
		{"money", "99.95USD", 99.95},
	} {
		near(t, c.kind, c.text, c.si, 4e-16)
	}
}

// A short decimal in a metric unit is the float64 that Go itself would read.
func TestMetricDecimalsAreExact(t *testing.T) {
	for text, want := range map[string]float64{"32 mm": 0.032, "0.05 mm": 0.00005, "11.1125 mm": 0.0111125, "24 thou": 0.0006096, "7/16 in": 0.0111125} {
		if r := near(t, "length", text, want, 0); r.SI != want {
			t.Errorf("%q = %b, want %b", text, r.SI, want)
		}
	}
}

func TestParseWithAccuracy(t *testing.T) {
	for _, c := range []struct {
		kind, text   string
		si, accuracy float64
		unit         string
	}{
		{"length", "0.05 mm ± 0.02 mm", 0.00005, 0.00002, "mm"},
		{"length", "0.05 ± 0.02 mm", 0.00005, 0.00002, "mm"},
		{"length", "0.05 mm±0.02mm", 0.00005, 0.00002, "mm"},
		{"length", "12 mm +/- 5 %", 0.012, 0.0006, "mm"},
		{"length", "-12 mm +- 5%", -0.012, 0.0006, "mm"},
		{"length", "12 mm +/\u2212 5 %", 0.012, 0.0006, "mm"},
		{"length", "12 mm", 0.012, 0, "mm"},
		{"length", "1-11/16 in ± 1/64 in", 27.0 / 16 * testInch, testInch / 64, "in"},
		{"length", `1/2" ± 2 thou`, 0.5 * testInch, 0.002 * testInch, `"`},
		{"torque", "45 lbf·ft ± 5 %", 45 * testLbfFt, 2.25 * testLbfFt, "lbf·ft"},
		{"torque", "60 N·m ± 10 %", 60, 6, "N·m"},
		{"torque", "60 Nm ± 10 %", 60, 6, "Nm"},
		{"torque", "60 Nm +/- 10%", 60, 6, "Nm"},
		{"torque", "60Nm±10%", 60, 6, "Nm"},
		{"torque", "60 N·m (±10%)", 60, 6, "N·m"},
		{"torque", "60 N·m plus or minus 10 percent", 60, 6, "N·m"},
		{"torque", "60 N·m + or - 10 %", 60, 6, "N·m"},
		{"length", "3/8 in ± 2 %", 0.375 * testInch, 0.0075 * testInch, "in"},
		{"power", "30 kW ± 5 %", 30000, 1500, "kW"},
		{"stress", "210 MPa +- 10 %", 210e6, 21e6, "MPa"},
		{"ratio", "2.5 ± 1 %", 2.5, 0.025, ""},
		{"temperature", "30 °C ± 2 °C", 303.15, 2, "°C"},
		{"temperature", "30 °C ± 9 °F", 303.15, 5, "°C"},
		{"temperature", "86 ± 9 °F", 303.15, 5, "°F"},
		{"ratio", "0.15 ± 10 %", 0.15, 0.015, ""},
		{"ratio", "0.15 ± 0.02", 0.15, 0.02, ""},
		{"ratio", "75 % ± 5 %", 0.75, 0.05, "%"},
		{"angle", "3 o'clock ± 5 deg", math.Pi / 2, 5 * math.Pi / 180, "o'clock"},
		{"money", "120 EUR ± 10 %", 120, 12, "EUR"},
		{"money", "120 EUR ± 15 EUR", 120, 15, "EUR"},
		{"money", "120 ± 15 EUR", 120, 15, "EUR"},
	} {
		r := near(t, c.kind, c.text, c.si, 4e-16)
		if math.Abs(r.Accuracy-c.accuracy) > 1e-15*c.accuracy || r.Unit != c.unit {
			t.Errorf("%s %q: ± %.17g in %q, want ± %.17g in %q", c.kind, c.text, r.Accuracy, r.Unit, c.accuracy, c.unit)
		}
	}
}

func TestParseAccuracy(t *testing.T) {
	for _, c := range []struct {
		kind, text string
		of, want   float64
	}{
		{"length", "± 0.02 mm", 1, 0.00002},
		{"length", "0.02 mm", 1, 0.00002},
		{"length", "±5 %", 0.2, 0.01},
		{"length", "+/- 5%", -0.2, 0.01},
		{"length", "5 percent", 0.2, 0.01},
		{"temperature", "± 2 °C", 303.15, 2},
		{"temperature", "± 9 °F", 303.15, 5},
		{"ratio", "± 5 %", 0.2, 0.01},
		{"ratio", "± 0.05", 0.2, 0.05},
		{"length", "± 0.02 mm", math.NaN(), 0.00002},
	} {
		got, err := kind(t, c.kind).ParseAccuracy(c.text, c.of)
		if err != nil || math.Abs(got-c.want) > 1e-15*c.want {
			t.Errorf("%s %q of %v: %v, %v; want %v", c.kind, c.text, c.of, got, err, c.want)
		}
	}
}

// A bare number gets the unit of its field, and keeps what is behind its ±.
func TestWithUnit(t *testing.T) {
	for _, c := range [][3]string{
		{"60", "N·m", "60 N·m"},
		{"60 ± 10 %", "N·m", "60 N·m ± 10 %"},
		{"60 +/- 10%", "lbf·ft", "60 lbf·ft ± 10%"},
		{"3/8 ± 2 percent", "in", "3/8 in ± 2 percent"},
		{"60 ± 5", "N·m", "60 ± 5 N·m"},
		{" 75 ± 5 % ", "%", "75 % ± 5 %"},
	} {
		if got := WithUnit(c[0], c[1]); got != c[2] {
			t.Errorf("%q in %s: %q, want %q", c[0], c[1], got, c[2])
		}
	}
}
