package quantity

import (
	"math"
	"math/big"
	"strings"
	"testing"
)

// factorCase is one unit with its factor built anew from exact definitions, as
// decimal texts multiplied and divided in rational arithmetic, and the factor
// as NIST SP 811 prints it ("" where Appendix B.8 has no such line).
type factorCase struct {
	kind, unit, up, down, printed string
}

// Source: NIST SP 811 (2008 ed.), Appendix B.8, printed factors, value from
// memory. The factors up/down are from the exact definitions: in, lb, g_n,
// US gallon 231 in³, UK gallon 4.54609 L, nautical mile 1852 m, Btu (IT) by
// 1 Btu/(lb·°F) = 4186.8 J/(kg·K). Flats, clock positions, slopes and drips
// follow from their meaning.
var factorCases = []factorCase{
	{"length", "m", "1", "", ""},
	{"length", "mm", "0.001", "", ""},
	{"length", "cm", "0.01", "", ""},
	{"length", "µm", "0.000001", "", "1.0 E-06"},
	{"length", "km", "1000", "", ""},
	{"length", "in", "0.0254", "", "2.54 E-02"},
	{"length", "thou", "0.0000254", "", "2.54 E-05"},
	{"length", "ft", "0.3048", "", "3.048 E-01"},
	{"length", "yd", "0.9144", "", "9.144 E-01"},
	{"length", "nmi", "1852", "", "1.852 E+03"},
	{"area", "m²", "1", "", ""},
	{"area", "mm²", "0.001 0.001", "", ""},
	{"area", "cm²", "0.01 0.01", "", ""},
	{"area", "in²", "0.0254 0.0254", "", "6.4516 E-04"},
	{"area", "ft²", "0.3048 0.3048", "", "9.290304 E-02"},
	{"volume", "m³", "1", "", ""},
	{"volume", "L", "0.001", "", "1.0 E-03"},
	{"volume", "mL", "0.000001", "", ""},
	{"volume", "cm³", "0.01 0.01 0.01", "", ""},
	{"volume", "mm³", "0.001 0.001 0.001", "", ""},
	{"volume", "in³", "0.0254 0.0254 0.0254", "", "1.638706 E-05"},
	{"volume", "ft³", "0.3048 0.3048 0.3048", "", "2.831685 E-02"},
	{"volume", "US gal", "231 0.0254 0.0254 0.0254", "", "3.785412 E-03"},
	{"volume", "US qt", "231 0.0254 0.0254 0.0254", "4", "9.463529 E-04"},
	{"volume", "US pt", "231 0.0254 0.0254 0.0254", "8", "4.731765 E-04"},
	{"volume", "US fl oz", "231 0.0254 0.0254 0.0254", "128", "2.957353 E-05"},
	{"volume", "imp gal", "4.54609 0.001", "", "4.54609 E-03"},
	{"angle", "rad", "1", "", ""},
	{"angle", "mrad", "0.001", "", ""},
	{"angle", "°", "π", "180", "1.745329 E-02"},
	{"direction", "rad", "1", "", ""},
	{"direction", "°", "π", "180", "1.745329 E-02"},
	{"direction", "o'clock", "2 π", "12", ""},
	{"angle", "arcmin", "π", "10800", "2.908882 E-04"},
	{"angle", "turn", "2 π", "", "6.283185 E+00"},
	{"angle", "flat", "2 π", "6", ""},
	{"angle", "o'clock", "2 π", "12", ""},
	{"angle", "mm/m", "0.001", "1", ""},
	{"angle", "µm/m", "0.000001", "1", ""},
	{"angle", "thou/in", "0.0000254", "0.0254", ""},
	{"mass", "kg", "1", "", ""},
	{"mass", "g", "0.001", "", ""},
	{"mass", "mg", "0.000001", "", ""},
	{"mass", "t", "1000", "", "1.0 E+03"},
	{"mass", "lb", "0.45359237", "", "4.535924 E-01"},
	{"mass", "oz", "0.45359237", "16", "2.834952 E-02"},
	{"force", "N", "1", "", ""},
	{"force", "kN", "1000", "", ""},
	{"force", "MN", "1000000", "", ""},
	{"force", "lbf", "0.45359237 9.80665", "", "4.448222 E+00"},
	{"force", "kip", "1000 0.45359237 9.80665", "", "4.448222 E+03"},
	{"force", "kgf", "9.80665", "", "9.80665 E+00"},
	{"torque", "N·m", "1", "", ""},
	{"torque", "kN·m", "1000", "", ""},
	{"torque", "N·mm", "0.001", "", ""},
	{"torque", "lbf·ft", "0.45359237 9.80665 0.3048", "", "1.355818 E+00"},
	{"torque", "lbf·in", "0.45359237 9.80665 0.0254", "", "1.129848 E-01"},
	{"torque", "kgf·m", "9.80665", "", "9.80665 E+00"},
	{"energy", "J", "1", "", ""},
	{"energy", "kJ", "1000", "", ""},
	{"energy", "MJ", "1000000", "", ""},
	{"energy", "W·h", "3600", "", "3.6 E+03"},
	{"energy", "kW·h", "3600000", "", "3.6 E+06"},
	{"energy", "ft·lbf", "0.45359237 9.80665 0.3048", "", "1.355818 E+00"},
	{"energy", "Btu", "4186.8 0.45359237 5", "9", "1.055056 E+03"},
	{"power", "W", "1", "", ""},
	{"power", "kW", "1000", "", ""},
	{"power", "MW", "1000000", "", ""},
	{"power", "hp", "550 0.45359237 9.80665 0.3048", "", "7.456999 E+02"},
	{"power", "PS", "75 9.80665", "", "7.354988 E+02"},
	{"power", "Btu/h", "4186.8 0.45359237 5", "9 3600", "2.930711 E-01"},
	{"pressure", "Pa", "1", "", ""},
	{"pressure", "kPa", "1000", "", ""},
	{"pressure", "MPa", "1000000", "", ""},
	{"pressure", "bar", "100000", "", "1.0 E+05"},
	{"pressure", "mbar", "100", "", "1.0 E+02"},
	{"pressure", "psi", "0.45359237 9.80665", "0.0254 0.0254", "6.894757 E+03"},
	{"pressure", "ksi", "1000 0.45359237 9.80665", "0.0254 0.0254", "6.894757 E+06"},
	{"pressure", "atm", "101325", "", "1.01325 E+05"},
	{"pressure", "kgf/cm²", "9.80665", "0.01 0.01", "9.80665 E+04"},
	{"stress", "Pa", "1", "", ""},
	{"stress", "kPa", "1000", "", ""},
	{"stress", "MPa", "1000000", "", ""},
	{"stress", "GPa", "1000000000", "", ""},
	{"stress", "N/mm²", "1", "0.001 0.001", ""},
	{"stress", "bar", "100000", "", "1.0 E+05"},
	{"stress", "psi", "0.45359237 9.80665", "0.0254 0.0254", "6.894757 E+03"},
	{"stress", "ksi", "1000 0.45359237 9.80665", "0.0254 0.0254", "6.894757 E+06"},
	{"stress", "kgf/mm²", "9.80665", "0.001 0.001", "9.80665 E+06"},
	{"stiffness", "N/m", "1", "", ""},
	{"stiffness", "N/mm", "1", "0.001", ""},
	{"stiffness", "kN/m", "1000", "", ""},
	{"stiffness", "kN/mm", "1000", "0.001", ""},
	{"stiffness", "MN/m", "1000000", "", ""},
	{"stiffness", "lbf/in", "0.45359237 9.80665", "0.0254", "1.751268 E+02"},
	{"stiffness", "lbf/ft", "0.45359237 9.80665", "0.3048", "1.459390 E+01"},
	{"angular-stiffness", "N·m/rad", "1", "", ""},
	{"angular-stiffness", "kN·m/rad", "1000", "", ""},
	{"angular-stiffness", "N·m/deg", "180", "π", ""},
	{"angular-stiffness", "lbf·ft/rad", "0.45359237 9.80665 0.3048", "", ""},
	{"angular-stiffness", "lbf·ft/deg", "0.45359237 9.80665 0.3048 180", "π", ""},
	{"angular-stiffness", "lbf·in/rad", "0.45359237 9.80665 0.0254", "", ""},
	{"time", "s", "1", "", ""},
	{"time", "ms", "0.001", "", ""},
	{"time", "min", "60", "", "6.0 E+01"},
	{"time", "h", "3600", "", "3.6 E+03"},
	{"time", "day", "86400", "", "8.64 E+04"},
	{"time", "week", "7 86400", "", ""},
	{"time", "month", "365 7200", "", ""},
	{"time", "year", "365 86400", "", "3.1536 E+07"},
	{"frequency", "Hz", "1", "", ""},
	{"frequency", "kHz", "1000", "", ""},
	{"frequency", "cpm", "1", "60", ""},
	{"rotation-speed", "rad/s", "1", "", ""},
	{"rotation-speed", "rpm", "2 π", "60", "1.047198 E-01"},
	{"rotation-speed", "rev/s", "2 π", "", ""},
	{"rotation-speed", "deg/s", "π", "180", ""},
	{"velocity", "m/s", "1", "", ""},
	{"velocity", "mm/s", "0.001", "", ""},
	{"velocity", "km/h", "1000", "3600", "2.777778 E-01"},
	{"velocity", "kn", "1852", "3600", "5.144444 E-01"},
	{"velocity", "ft/s", "0.3048", "", "3.048 E-01"},
	{"velocity", "ft/min", "0.3048", "60", "5.08 E-03"},
	{"velocity", "in/s", "0.0254", "", "2.54 E-02"},
	{"velocity", "mph", "5280 0.3048", "3600", "4.4704 E-01"},
	{"inertia", "kg·m²", "1", "", ""},
	{"inertia", "kg·cm²", "0.01 0.01", "", ""},
	{"inertia", "lb·ft²", "0.45359237 0.3048 0.3048", "", "4.214011 E-02"},
	{"inertia", "lb·in²", "0.45359237 0.0254 0.0254", "", "2.926397 E-04"},
	{"volume-flow", "m³/s", "1", "", ""},
	{"volume-flow", "m³/h", "1", "3600", ""},
	{"volume-flow", "L/s", "0.001", "", ""},
	{"volume-flow", "L/min", "0.001", "60", ""},
	{"volume-flow", "L/h", "0.001", "3600", ""},
	{"volume-flow", "L/day", "0.001", "86400", ""},
	{"volume-flow", "mL/s", "0.000001", "", ""},
	{"volume-flow", "mL/min", "0.000001", "60", ""},
	{"volume-flow", "mL/h", "0.000001", "3600", ""},
	{"volume-flow", "US gal/min", "231 0.0254 0.0254 0.0254", "60", "6.309020 E-05"},
	{"volume-flow", "US gal/h", "231 0.0254 0.0254 0.0254", "3600", ""},
	{"volume-flow", "US gal/day", "231 0.0254 0.0254 0.0254", "86400", "4.381264 E-08"},
	{"drip-rate", "drips/s", "1", "", ""},
	{"drip-rate", "drips/min", "1", "60", ""},
	{"drip-rate", "drips/h", "1", "3600", ""},
	{"temperature", "K", "1", "", ""},
	{"temperature", "°C", "1", "", ""},
	{"temperature", "°F", "5", "9", ""},
	{"temperature-difference", "K", "1", "", ""},
	{"temperature-difference", "°C", "1", "", "1.0 E+00"},
	{"temperature-difference", "°F", "5", "9", "5.555556 E-01"},
	{"specific-heat", "J/(kg·K)", "1", "", ""},
	{"specific-heat", "kJ/(kg·K)", "1000", "", ""},
	{"specific-heat", "Btu/(lb·°F)", "4186.8", "", "4.1868 E+03"},
	{"conductance", "W/K", "1", "", ""},
	{"conductance", "kW/K", "1000", "", ""},
	{"conductance", "Btu/(h·°F)", "4186.8 0.45359237", "3600", ""},
	{"conductivity", "W/(m·K)", "1", "", ""},
	{"conductivity", "Btu/(h·ft·°F)", "4186.8 0.45359237", "3600 0.3048", "1.730735 E+00"},
	{"conductivity", "Btu·in/(h·ft²·°F)", "4186.8 0.45359237 0.0254", "3600 0.3048 0.3048", "1.442279 E-01"},
	{"heat-transfer", "W/(m²·K)", "1", "", ""},
	{"heat-transfer", "kW/(m²·K)", "1000", "", ""},
	{"heat-transfer", "Btu/(h·ft²·°F)", "4186.8 0.45359237", "3600 0.3048 0.3048", "5.678263 E+00"},
	{"ratio", "", "1", "", ""},
	{"ratio", "%", "0.01", "", ""},
	{"ratio", "ppm", "0.000001", "", ""},
	{"density", "kg/m³", "1", "", ""},
	{"density", "kg/L", "1000", "", ""},
	{"density", "g/cm³", "1000", "", "1.0 E+03"},
	{"density", "g/L", "1", "", ""},
	{"density", "lb/ft³", "0.45359237", "0.3048 0.3048 0.3048", "1.601846 E+01"},
	{"density", "lb/in³", "0.45359237", "0.0254 0.0254 0.0254", "2.767990 E+04"},
	{"density", "lb/US gal", "0.45359237", "231 0.0254 0.0254 0.0254", "1.198264 E+02"},
	{"dynamic-viscosity", "Pa·s", "1", "", ""},
	{"dynamic-viscosity", "mPa·s", "0.001", "", ""},
	{"dynamic-viscosity", "cP", "0.001", "", "1.0 E-03"},
	{"dynamic-viscosity", "P", "0.1", "", "1.0 E-01"},
	{"dynamic-viscosity", "lbf·s/in²", "0.45359237 9.80665", "0.0254 0.0254", "6.894757 E+03"},
	{"dynamic-viscosity", "lbf·s/ft²", "0.45359237 9.80665", "0.3048 0.3048", "4.788026 E+01"},
	{"kinematic-viscosity", "m²/s", "1", "", ""},
	{"kinematic-viscosity", "mm²/s", "0.001 0.001", "", ""},
	{"kinematic-viscosity", "cSt", "0.000001", "", "1.0 E-06"},
	{"kinematic-viscosity", "St", "0.0001", "", "1.0 E-04"},
	{"kinematic-viscosity", "ft²/s", "0.3048 0.3048", "", "9.290304 E-02"},
}

// pi to 50 decimals, by Machin's formula in every table of constants.
const piText = "3.14159265358979323846264338327950288419716939937511"

func product(t *testing.T, texts string) *big.Rat {
	p := big.NewRat(1, 1)
	for _, s := range strings.Fields(texts) {
		if s == "π" {
			s = piText
		}
		r, ok := new(big.Rat).SetString(s)
		if !ok {
			t.Fatalf("bad number %q in the test table", s)
		}
		p.Mul(p, r)
	}
	return p
}

func TestFactorsAgainstDefinitionsAndNISTSP811(t *testing.T) {
	seen := map[string]bool{}
	printed := 0
	for _, c := range factorCases {
		seen[c.kind+" "+c.unit] = true
		k, ok := Lookup(c.kind)
		if !ok {
			t.Fatalf("no kind %q", c.kind)
		}
		u, ok := k.find(c.unit)
		if !ok || u.name != c.unit {
			t.Errorf("%s: unit %q not found", c.kind, c.unit)
			continue
		}
		want := product(t, c.up)
		want.Quo(want, product(t, c.down))
		wantFloat, _ := want.Float64()
		if got := u.mul / u.div; math.Abs(got-wantFloat) > 2.3e-16*wantFloat {
			t.Errorf("%s: 1 %s = %.17g, the definitions give %.17g", c.kind, c.unit, got, wantFloat)
		}
		if c.printed == "" {
			continue
		}
		printed++
		nist, ok := new(big.Rat).SetString(strings.ReplaceAll(c.printed, " E", "e"))
		if !ok {
			t.Fatalf("bad printed factor %q", c.printed)
		}
		// Seven significant digits: half a unit of the seventh, the printed
		// value being at least 1 unit of its decade.
		decade, _ := new(big.Rat).SetString("1e" + c.printed[strings.Index(c.printed, "E")+1:])
		half := new(big.Rat).Mul(decade, big.NewRat(1, 2_000_000))
		if diff := new(big.Rat).Sub(want, nist); diff.Abs(diff).Cmp(half) > 0 {
			t.Errorf("%s: 1 %s: NIST SP 811 prints %s, the definitions give %s", c.kind, c.unit, c.printed, want.FloatString(12))
		}
	}
	for _, k := range Kinds() {
		for _, u := range k.Units() {
			if !seen[k.Name+" "+u] {
				t.Errorf("%s: unit %q has no line in the factor table", k.Name, u)
			}
		}
	}
	if printed < 70 {
		t.Errorf("only %d factors compared with print", printed)
	}
}

// Source: NIST SP 811 (2008 ed.), Appendix B.8, temperature: T/K = t/°C +
// 273.15, T/K = (t/°F + 459.67)/1.8. Value from memory.
func TestTemperatureFixedPoints(t *testing.T) {
	for _, c := range []struct {
		text string
		k    float64
	}{
		{"0 K", 0}, {"0 °C", 273.15}, {"100 °C", 373.15}, {"-273.15 °C", 0},
		{"32 °F", 273.15}, {"212 °F", 373.15}, {"-459.67 °F", 0}, {"-40 °F", 233.15}, {"-40 °C", 233.15},
		{"86 °F", 303.15}, {"30 C", 303.15}, {"5 K", 5},
	} {
		near(t, "temperature", c.text, c.k, 1e-13)
	}
}
