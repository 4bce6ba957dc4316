//go:build !reactor

package quantity

import (
	"encoding"
	"encoding/json"
	"fmt"
	"math"
	"testing"
)

// value is what every unit type can do.
type value interface {
	fmt.Stringer
	encoding.TextMarshaler
	json.Marshaler
}

// target is what a pointer to every unit type can do.
type target interface {
	encoding.TextUnmarshaler
	json.Unmarshaler
}

// every has each unit type once, with its value and a place to read it into.
func every(si float64) map[string]struct {
	v value
	p target
} {
	m := map[string]struct {
		v value
		p target
	}{}
	add := func(kind string, v value, p target) {
		m[kind] = struct {
			v value
			p target
		}{v, p}
	}
	add("length", Length(si), new(Length))
	add("area", Area(si), new(Area))
	add("volume", Volume(si), new(Volume))
	add("mass", Mass(si), new(Mass))
	add("force", Force(si), new(Force))
	add("torque", Torque(si), new(Torque))
	add("power", Power(si), new(Power))
	add("energy", Energy(si), new(Energy))
	add("pressure", Pressure(si), new(Pressure))
	add("stress", Stress(si), new(Stress))
	add("rotation-speed", RotationSpeed(si), new(RotationSpeed))
	add("temperature", Temperature(si), new(Temperature))
	add("temperature-difference", TemperatureDifference(si), new(TemperatureDifference))
	add("volume-flow", VolumeFlow(si), new(VolumeFlow))
	add("drip-rate", DripRate(si), new(DripRate))
	add("stiffness", Stiffness(si), new(Stiffness))
	add("angular-stiffness", AngularStiffness(si), new(AngularStiffness))
	add("time", Time(si), new(Time))
	add("angle", Angle(si), new(Angle))
	add("direction", Direction(si), new(Direction))
	add("ratio", Ratio(si), new(Ratio))
	add("density", Density(si), new(Density))
	add("specific-heat", SpecificHeat(si), new(SpecificHeat))
	add("conductance", Conductance(si), new(Conductance))
	add("conductivity", Conductivity(si), new(Conductivity))
	add("heat-transfer", HeatTransfer(si), new(HeatTransfer))
	add("dynamic-viscosity", DynamicViscosity(si), new(DynamicViscosity))
	add("kinematic-viscosity", KinematicViscosity(si), new(KinematicViscosity))
	add("frequency", Frequency(si), new(Frequency))
	add("velocity", Velocity(si), new(Velocity))
	add("inertia", Inertia(si), new(Inertia))
	add("money", Money(si), new(Money))
	return m
}

// Every unit type is printed by the kind of its own name, and comes back from
// its text and its JSON.
func TestUnitTypesAsTextAndJSON(t *testing.T) {
	for _, si := range []float64{0, 1, 0.0254, 300.15, 12345.678} {
		all := every(si)
		if len(all) != len(Kinds()) {
			t.Fatalf("%d unit types, %d kinds", len(all), len(Kinds()))
		}
		for name, c := range all {
			if got, want := c.v.String(), kind(t, name).Print(si, Metric, "", ""); got != want {
				t.Errorf("%s is printed %q, want %q", name, got, want)
			}
			text, err := c.v.MarshalText()
			if err == nil {
				err = c.p.UnmarshalText(text)
			}
			if back := readBack(t, c.p); err != nil || math.Abs(back-si) > 1e-12*si {
				t.Errorf("%s: %g is written %q and comes back as %g, %v", name, si, text, back, err)
			}
			text, err = json.Marshal(c.v)
			if plain, _ := json.Marshal(si); err != nil || string(text) != string(plain) {
				t.Errorf("%s in JSON: %s, %v", name, text, err)
			}
			if err := json.Unmarshal(text, c.p); err != nil || readBack(t, c.p) != si {
				t.Errorf("%s: %s comes back as %v, %v", name, text, readBack(t, c.p), err)
			}
		}
	}
}

func readBack(t *testing.T, p target) float64 {
	t.Helper()
	var si float64
	text, err := json.Marshal(p)
	if err == nil {
		err = json.Unmarshal(text, &si)
	}
	if err != nil {
		t.Fatal(err)
	}
	return si
}

func TestNotAskedForIsNullInJSON(t *testing.T) {
	type result struct {
		Clamp Force
		Use   Ratio
	}
	text, err := json.Marshal(result{Clamp: Force(math.NaN()), Use: 0.5})
	if err != nil || string(text) != `{"Clamp":null,"Use":0.5}` {
		t.Errorf("%s, %v", text, err)
	}
	var back result
	if err := json.Unmarshal(text, &back); err != nil || !math.IsNaN(float64(back.Clamp)) || back.Use != 0.5 {
		t.Errorf("%+v, %v", back, err)
	}
	if err := json.Unmarshal([]byte(`{"Clamp":"25 kN","Use":"50 %"}`), &back); err != nil || back != (result{25e3, 0.5}) {
		t.Errorf("%+v, %v", back, err)
	}
	for _, bad := range []string{`{"Clamp":"25 mm"}`, `{"Clamp":"25 kN ± 5 %"}`, `{"Clamp":true}`, `{"Clamp":{}}`} {
		if err := json.Unmarshal([]byte(bad), &back); err == nil {
			t.Errorf("%s is taken as %v", bad, back)
		}
	}
	if _, err := json.Marshal(Force(math.Inf(1))); err == nil {
		t.Error("an infinite force is written")
	}
	if _, err := Force(math.Inf(1)).MarshalText(); err == nil {
		t.Error("an infinite force is written as text")
	}
	var m Money
	if err := m.UnmarshalText([]byte("120 EUR")); err == nil {
		t.Error("an amount loses its currency without a word")
	}
}

// A constant is what the parser reads for one of its unit.
func TestConstants(t *testing.T) {
	seen := 0
	check := func(name string, units map[string]float64) {
		for unit, si := range units {
			want, err := kind(t, name).Parse("1 " + unit)
			if err != nil || ulps(si, want.SI) > 1 {
				t.Errorf("1 %s is %.17g, the parser has %.17g, %v", unit, si, want.SI, err)
			}
			seen++
		}
	}
	check("length", map[string]float64{"m": float64(Metre), "mm": float64(Millimetre), "cm": float64(Centimetre), "µm": float64(Micrometre), "km": float64(Kilometre),
		"in": float64(Inch), "thou": float64(Thou), "ft": float64(Foot), "yd": float64(Yard), "nmi": float64(NauticalMile)})
	check("area", map[string]float64{"m²": float64(SquareMetre), "mm²": float64(SquareMillimetre), "cm²": float64(SquareCentimetre), "in²": float64(SquareInch), "ft²": float64(SquareFoot)})
	check("volume", map[string]float64{"m³": float64(CubicMetre), "L": float64(Litre), "mL": float64(Millilitre), "mm³": float64(CubicMillimetre), "in³": float64(CubicInch),
		"ft³": float64(CubicFoot), "US gal": float64(USGallon), "imp gal": float64(ImperialGallon)})
	check("mass", map[string]float64{"kg": float64(Kilogram), "g": float64(Gram), "t": float64(Tonne), "lb": float64(Pound), "oz": float64(Ounce)})
	check("force", map[string]float64{"N": float64(Newton), "kN": float64(Kilonewton), "lbf": float64(PoundForce), "kgf": float64(KilogramForce)})
	check("torque", map[string]float64{"N·m": float64(NewtonMetre), "kN·m": float64(KilonewtonMetre), "lbf·ft": float64(PoundForceFoot), "lbf·in": float64(PoundForceInch), "kgf·m": float64(KilogramForceMetre)})
	check("power", map[string]float64{"W": float64(Watt), "kW": float64(Kilowatt), "hp": float64(Horsepower), "PS": float64(MetricHorsepower)})
	check("energy", map[string]float64{"J": float64(Joule), "kJ": float64(Kilojoule), "MJ": float64(Megajoule), "W·h": float64(WattHour), "kW·h": float64(KilowattHour), "Btu": float64(Btu)})
	check("pressure", map[string]float64{"Pa": float64(Pascal), "kPa": float64(Kilopascal), "bar": float64(Bar), "mbar": float64(Millibar), "psi": float64(PoundPerSquareInch), "atm": float64(Atmosphere)})
	check("stress", map[string]float64{"Pa": float64(StressPascal), "MPa": float64(Megapascal), "GPa": float64(Gigapascal), "psi": float64(StressPoundPerSquareInch), "ksi": float64(KilopoundPerSquareInch)})
	check("rotation-speed", map[string]float64{"rad/s": float64(RadianPerSecond), "rpm": float64(RevolutionPerMinute), "rev/s": float64(RevolutionPerSecond)})
	check("temperature", map[string]float64{"K": float64(Kelvin), "°C": float64(Celsius(1)), "°F": float64(Fahrenheit(1))})
	check("temperature-difference", map[string]float64{"K": float64(KelvinDifference), "°F": float64(FahrenheitDifference)})
	check("volume-flow", map[string]float64{"m³/s": float64(CubicMetrePerSecond), "L/min": float64(LitrePerMinute), "L/h": float64(LitrePerHour), "L/day": float64(LitrePerDay), "US gal/h": float64(USGallonPerHour)})
	check("drip-rate", map[string]float64{"drips/s": float64(DripPerSecond), "drips/min": float64(DripPerMinute)})
	check("stiffness", map[string]float64{"N/m": float64(NewtonPerMetre), "N/mm": float64(NewtonPerMillimetre), "lbf/in": float64(PoundForcePerInch)})
	check("angular-stiffness", map[string]float64{"N·m/rad": float64(NewtonMetrePerRadian), "N·m/deg": float64(NewtonMetrePerDegree), "lbf·ft/deg": float64(PoundForceFootPerDegree)})
	check("time", map[string]float64{"s": float64(Second), "ms": float64(Millisecond), "min": float64(Minute), "h": float64(Hour), "day": float64(Day), "week": float64(Week), "month": float64(Month), "year": float64(Year)})
	check("angle", map[string]float64{"rad": float64(Radian), "mrad": float64(Milliradian), "°": float64(Degree), "turn": float64(Turn), "mm/m": float64(MillimetrePerMetre)})
	check("direction", map[string]float64{"rad": float64(DirectionRadian), "°": float64(DirectionDegree), "o'clock": float64(OClock)})
	check("ratio", map[string]float64{"": float64(One), "%": float64(Percent), "ppm": float64(PartsPerMillion)})
	check("density", map[string]float64{"kg/m³": float64(KilogramPerCubicMetre), "kg/L": float64(KilogramPerLitre), "lb/ft³": float64(PoundPerCubicFoot)})
	check("specific-heat", map[string]float64{"J/(kg·K)": float64(JoulePerKilogramKelvin), "kJ/(kg·K)": float64(KilojoulePerKilogramKelvin), "Btu/(lb·°F)": float64(BtuPerPoundFahrenheit)})
	check("conductance", map[string]float64{"W/K": float64(WattPerKelvin), "Btu/(h·°F)": float64(BtuPerHourFahrenheit)})
	check("conductivity", map[string]float64{"W/(m·K)": float64(WattPerMetreKelvin), "Btu/(h·ft·°F)": float64(BtuPerHourFootFahrenheit)})
	check("heat-transfer", map[string]float64{"W/(m²·K)": float64(WattPerSquareMetreKelvin), "Btu/(h·ft²·°F)": float64(BtuPerHourSquareFootFahrenheit)})
	check("dynamic-viscosity", map[string]float64{"Pa·s": float64(PascalSecond), "mPa·s": float64(MillipascalSecond), "cP": float64(Centipoise)})
	check("kinematic-viscosity", map[string]float64{"m²/s": float64(SquareMetrePerSecond), "mm²/s": float64(SquareMillimetrePerSecond), "cSt": float64(Centistokes)})
	check("frequency", map[string]float64{"Hz": float64(Hertz), "kHz": float64(Kilohertz), "cpm": float64(CyclePerMinute)})
	check("velocity", map[string]float64{"m/s": float64(MetrePerSecond), "mm/s": float64(MillimetrePerSecond), "km/h": float64(KilometrePerHour), "kn": float64(Knot), "ft/s": float64(FootPerSecond), "in/s": float64(InchPerSecond)})
	check("inertia", map[string]float64{"kg·m²": float64(KilogramSquareMetre), "lb·ft²": float64(PoundSquareFoot)})
	if got := 10 * Millimetre; ulps(float64(got), 0.01) > 1 {
		t.Errorf("10 mm is %v", float64(got))
	}
	if seen < 120 {
		t.Errorf("only %d constants were checked", seen)
	}
}

// A nil or zero Kind reads nothing, and prints plain numbers.
func TestNoKindDoesNotPanic(t *testing.T) {
	for _, k := range []*Kind{nil, {}} {
		if _, err := k.Parse("32 mm"); err == nil {
			t.Error("a text is read without a kind")
		}
		if _, err := k.ParseAccuracy("± 1 mm", 1); err == nil {
			t.Error("an accuracy is read without a kind")
		}
		if _, ok := k.Convert(1, "mm"); ok || k.Units() != nil || k.Usual(Metric) != "" {
			t.Error("no kind has units")
		}
		for _, got := range []string{k.Print(0.25, Both, "mm", "in"), k.Exact(0.25, "mm"), k.Format(0.25, "mm"), k.In("mm", "in").Print(0.25, US), Shown{}.Print(0.25, Metric)} {
			if got != "0.25" {
				t.Errorf("0.25 is printed %q", got)
			}
		}
		if got := k.In("", "").PrintSpan(1, 2, Metric); got != "1 to 2" {
			t.Errorf("a span is printed %q", got)
		}
	}
}
