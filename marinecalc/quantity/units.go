// Units and their factors.
package quantity

import (
	"math"
)

// unit is one unit of a kind: SI value = (x + shift) · mul / div. Where mul and
// div are whole numbers a short decimal converts with a single rounding, so
// that "32 mm" is 0.032 to the last bit.
type unit struct {
	name     string
	mul, div float64
	also     string  // other spellings, comma-separated
	shift    float64 // added before scaling; temperatures only
	style    style
	smaller  step    // the unit that takes over where this one gives too small a number
	larger   step    // and where it gives too large a one
	least    float64 // the accuracy to whose second digit it is printed at the most
}

// step leads from a unit to the next of its kind, for printing a value in a
// unit of its own size. The zero step leads nowhere.
type step struct {
	at   float64 // number of this unit below which, or from which on, the next is printed
	unit string
}

// style is how a unit departs from plain scaling and four digits.
type style uint8

const (
	plain    style = iota
	workshop       // inches: binary fractions where they are exact
	coarse         // thou: no digits below a tenth
	degrees        // temperatures: no digits below a hundredth
	clock          // positions on the clock face, 12 at the top
	currency       // money: two decimals, whole units kept
)

// toSI gives the SI value of x of this unit.
func (u *unit) toSI(x float64) float64 {
	if u.style == clock && x >= 12 {
		x -= 12
	}
	return (x + u.shift) * u.mul / u.div
}

// fromSI gives an SI value in this unit.
func (u *unit) fromSI(si float64) float64 {
	x := si*u.div/u.mul - u.shift
	if u.style == clock {
		if x = math.Mod(x, 12); x < 0 {
			x += 12
		}
	}
	return x
}

// width gives the SI width of a span of x units, leaving any shift aside.
func (u *unit) width(x float64) float64 { return x * u.mul / u.div }

// The exact definitions that every factor is a product of. As untyped
// constants they are multiplied exactly and rounded once.
//
// Source: NIST SP 811 (2008), Appendix B, and SI Brochure, 9th ed.; values
// from memory, checked against each other in the tests.
const (
	inch         = 0.0254      // m, international inch
	foot         = 12 * inch   // m
	yard         = 3 * foot    // m
	nauticalMile = 1852        // m
	mile         = 1760 * yard // m, international mile

	pound    = 0.45359237 // kg, avoirdupois
	ounce    = pound / 16 // kg
	gravity  = 9.80665    // m/s², standard acceleration of free fall
	lbf      = pound * gravity
	kgf      = 1 * gravity
	lbfFoot  = lbf * foot
	lbfInch  = lbf * inch
	usGallon = 231 * inch * inch * inch // m³
	ukGallon = 0.00454609               // m³

	minute = 60
	hour   = 60 * minute
	day    = 24 * hour
	year   = 365 * day // the 365 d year of NIST SP 811

	fahrenheit = 5.0 / 9                     // K, one degree Fahrenheit
	btu        = 4186.8 * pound * fahrenheit // J, International Table British thermal unit
)

var forceKinds = []*Kind{
	{Name: "mass", metric: "kg", us: "lb", units: []unit{
		{name: "kg", mul: 1, div: 1, also: "kilogram,kilograms"},
		{name: "g", mul: 1, div: 1e3, also: "gram,grams"},
		{name: "mg", mul: 1, div: 1e6},
		{name: "t", mul: 1e3, div: 1, also: "tonne,tonnes"},
		{name: "lb", mul: pound * 1e8, div: 1e8, also: "lbs,lbm,pound,pounds"},
		{name: "oz", mul: ounce * 16e8, div: 16e8, also: "ounce,ounces"},
	}},
	{Name: "force", metric: "kN", us: "lbf", units: []unit{
		{name: "N", mul: 1, div: 1, also: "newton,newtons"},
		{name: "kN", mul: 1e3, div: 1},
		{name: "MN", mul: 1e6, div: 1},
		{name: "lbf", mul: lbf * 1e13, div: 1e13},
		{name: "kip", mul: lbf * 1e13, div: 1e10, also: "kips,klbf"},
		{name: "kgf", mul: kgf * 1e5, div: 1e5, also: "kp"},
	}},
	{Name: "torque", metric: "N·m", us: "lbf·ft", units: []unit{
		{name: "N·m", mul: 1, div: 1},
		{name: "kN·m", mul: 1e3, div: 1},
		{name: "N·mm", mul: 1, div: 1e3},
		{name: "lbf·ft", mul: lbfFoot, div: 1, also: "ft·lbf,lb·ft,ft·lb,lbs·ft,ft·lbs,foot·pounds,pound·feet"},
		{name: "lbf·in", mul: lbfInch, div: 1, also: "in·lbf,lb·in,in·lb,lbs·in,in·lbs,inch·pounds,pound·inches"},
		{name: "kgf·m", mul: kgf * 1e5, div: 1e5, also: "kp·m,mkp,kg·m,m·kg"},
	}},
	{Name: "energy", metric: "kJ", us: "Btu", units: []unit{
		{name: "J", mul: 1, div: 1},
		{name: "kJ", mul: 1e3, div: 1},
		{name: "MJ", mul: 1e6, div: 1},
		{name: "W·h", mul: 3600, div: 1},
		{name: "kW·h", mul: 3.6e6, div: 1},
		{name: "ft·lbf", mul: lbfFoot, div: 1, also: "ft·lb"},
		{name: "Btu", mul: btu, div: 1},
	}},
	{Name: "power", metric: "kW", us: "hp", units: []unit{
		{name: "W", mul: 1, div: 1, also: "watt,watts"},
		{name: "kW", mul: 1e3, div: 1},
		{name: "MW", mul: 1e6, div: 1},
		{name: "hp", mul: 550 * lbfFoot, div: 1, also: "hp(mechanical),hp(US),hp(UK),bhp"},
		{name: "PS", mul: 75 * kgf * 1e5, div: 1e5, also: "hp(metric),metric hp,cv,ch"},
		{name: "Btu/h", mul: btu, div: 3600, also: "Btu/hr"},
	}},
	{Name: "pressure", metric: "bar", us: "psi", units: []unit{
		{name: "Pa", mul: 1, div: 1},
		{name: "kPa", mul: 1e3, div: 1},
		{name: "MPa", mul: 1e6, div: 1},
		{name: "bar", mul: 1e5, div: 1, also: "bars"},
		{name: "mbar", mul: 1e2, div: 1, also: "hPa"},
		{name: "psi", mul: lbf * 1e13, div: inch * inch * 1e13, also: "lbf/in²,lb/in²"},
		{name: "ksi", mul: lbf * 1e13, div: inch * inch * 1e10},
		{name: "atm", mul: 101325, div: 1},
		{name: "kgf/cm²", mul: kgf * 1e5, div: 10, also: "kp/cm²"},
	}},
	{Name: "stress", metric: "MPa", us: "psi", units: []unit{
		{name: "Pa", mul: 1, div: 1},
		{name: "kPa", mul: 1e3, div: 1},
		{name: "MPa", mul: 1e6, div: 1},
		{name: "GPa", mul: 1e9, div: 1},
		{name: "N/mm²", mul: 1e6, div: 1},
		{name: "bar", mul: 1e5, div: 1},
		{name: "psi", mul: lbf * 1e13, div: inch * inch * 1e13, also: "lbf/in²,lb/in²"},
		{name: "ksi", mul: lbf * 1e13, div: inch * inch * 1e10},
		{name: "kgf/mm²", mul: kgf * 1e6, div: 1, also: "kp/mm²"},
	}},
	{Name: "stiffness", metric: "N/mm", us: "lbf/in", units: []unit{
		{name: "N/m", mul: 1, div: 1},
		{name: "N/mm", mul: 1e3, div: 1},
		{name: "kN/m", mul: 1e3, div: 1},
		{name: "kN/mm", mul: 1e6, div: 1},
		{name: "MN/m", mul: 1e6, div: 1},
		{name: "lbf/in", mul: lbf * 1e13, div: inch * 1e13, also: "lb/in,lbs/in,lbf/inch"},
		{name: "lbf/ft", mul: lbf * 1e13, div: foot * 1e13, also: "lb/ft,lbs/ft"},
	}},
	{Name: "angular-stiffness", metric: "N·m/deg", us: "lbf·ft/deg", units: []unit{
		{name: "N·m/rad", mul: 1, div: 1},
		{name: "kN·m/rad", mul: 1e3, div: 1},
		{name: "N·m/deg", mul: 180, div: math.Pi, also: "N·m/°"},
		{name: "lbf·ft/rad", mul: lbfFoot, div: 1, also: "ft·lbf/rad,lb·ft/rad,ft·lb/rad"},
		{name: "lbf·ft/deg", mul: 180 * lbfFoot, div: math.Pi, also: "lbf·ft/°,ft·lbf/deg,lb·ft/deg,ft·lb/deg"},
		{name: "lbf·in/rad", mul: lbfInch, div: 1, also: "in·lbf/rad,lb·in/rad,in·lb/rad"},
	}},
}

var geometryKinds = []*Kind{
	{Name: "length", metric: "mm", us: "in", units: []unit{
		{name: "m", mul: 1, div: 1, also: "metre,metres,meter,meters"},
		{name: "mm", mul: 1, div: 1e3, also: "MM,millimetre,millimetres,millimeter,millimeters", smaller: step{0.001, "µm"}, least: 0.01},
		{name: "cm", mul: 1, div: 1e2},
		{name: "µm", mul: 1, div: 1e6, also: "micron,microns", larger: step{1000, "mm"}},
		{name: "km", mul: 1e3, div: 1},
		{name: "in", mul: inch * 1e4, div: 1e4, also: `",inch,inches`, style: workshop, least: 0.001},
		{name: "thou", mul: inch * 1e4, div: 1e7, also: "mil,mils,thous,thousandths", style: coarse, least: 1},
		{name: "ft", mul: foot * 1e4, div: 1e4, also: "',foot,feet"},
		{name: "yd", mul: yard * 1e4, div: 1e4, also: "yard,yards"},
		{name: "nmi", mul: nauticalMile, div: 1, also: "nautical mile,nautical miles"},
	}},
	{Name: "area", metric: "mm²", us: "in²", units: []unit{
		{name: "m²", mul: 1, div: 1, also: "sq m"},
		{name: "mm²", mul: 1, div: 1e6, also: "sq mm"},
		{name: "cm²", mul: 1, div: 1e4, also: "sq cm"},
		{name: "in²", mul: inch * inch * 1e8, div: 1e8, also: "sq in"},
		{name: "ft²", mul: foot * foot * 1e8, div: 1e8, also: "sq ft"},
	}},
	{Name: "volume", metric: "L", us: "US gal", units: []unit{
		{name: "m³", mul: 1, div: 1, also: "cubic m,cu m"},
		{name: "L", mul: 1, div: 1e3, also: "litre,litres,liter,liters,dm³"},
		{name: "mL", mul: 1, div: 1e6, also: "millilitre,millilitres,milliliter,milliliters"},
		{name: "cm³", mul: 1, div: 1e6, also: "cc"},
		{name: "mm³", mul: 1, div: 1e9, also: "cubic mm,cu mm"},
		{name: "in³", mul: inch * inch * inch * 1e12, div: 1e12, also: "cubic in,cu in,cubic inch,cubic inches"},
		{name: "ft³", mul: foot * foot * foot * 1e12, div: 1e12, also: "cubic ft,cu ft,cubic foot,cubic feet"},
		{name: "US gal", mul: usGallon * 1e12, div: 1e12, also: "gal (US),gal US,US gallon,US gallons"},
		{name: "US qt", mul: usGallon * 1e12, div: 4e12, also: "qt (US),qt US,US quart,US quarts"},
		{name: "US pt", mul: usGallon * 1e12, div: 8e12, also: "pt (US),pt US,US pint,US pints"},
		{name: "US fl oz", mul: usGallon * 1e12, div: 128e12, also: "fl oz (US),fl oz US"},
		{name: "imp gal", mul: ukGallon * 1e8, div: 1e8, also: "gal (imp),gal (UK),UK gal,imperial gallon,imperial gallons"},
	}},
	// Slopes are read as small angles, tangent = angle: 1 mm/m is 1/1000 rad,
	// off by less than 0.01 % up to 17 mm/m.
	{Name: "angle", metric: "°", us: "°", units: []unit{
		{name: "rad", mul: 1, div: 1, also: "radian,radians"},
		{name: "mrad", mul: 1, div: 1e3},
		{name: "°", mul: math.Pi, div: 180, also: "deg,degree,degrees"},
		{name: "arcmin", mul: math.Pi, div: 180 * 60},
		{name: "turn", mul: 2 * math.Pi, div: 1, also: "turns,rev,revolution,revolutions"},
		{name: "flat", mul: math.Pi, div: 3, also: "flats"}, // of a hexagon nut
		{name: "o'clock", mul: math.Pi, div: 6, also: "oclock", style: clock},
		{name: "mm/m", mul: 1, div: 1e3},
		{name: "µm/m", mul: 1, div: 1e6},
		{name: "thou/in", mul: 1, div: 1e3, also: "mil/in,mils/in,thou/inch"},
	}},
	// A direction across the line, clockwise from the top as one looks forward.
	// Unlike an angle it has no beginning and no end.
	{Name: "direction", metric: "°", us: "°", units: []unit{
		{name: "rad", mul: 1, div: 1, also: "radian,radians"},
		{name: "°", mul: math.Pi, div: 180, also: "deg,degree,degrees"},
		{name: "o'clock", mul: math.Pi, div: 6, also: "oclock", style: clock},
	}},
}

var heatKinds = []*Kind{
	{Name: "temperature", metric: "°C", us: "°F", units: []unit{
		{name: "K", mul: 1, div: 1, also: "kelvin"},
		{name: "°C", mul: 1, div: 1, shift: 273.15, also: "C,deg C,degC,celsius,degrees C", style: degrees},
		{name: "°F", mul: 5, div: 9, shift: 459.67, also: "F,deg F,degF,fahrenheit,degrees F", style: degrees},
	}},
	{Name: "temperature-difference", metric: "°C", us: "°F", units: []unit{
		{name: "K", mul: 1, div: 1, also: "kelvin"},
		{name: "°C", mul: 1, div: 1, also: "C,deg C"},
		{name: "°F", mul: 5, div: 9, also: "F,deg F"},
	}},
	{Name: "specific-heat", metric: "kJ/(kg·K)", us: "Btu/(lb·°F)", units: []unit{
		{name: "J/(kg·K)", mul: 1, div: 1, also: "J/(kg·°C),J/kg/K"},
		{name: "kJ/(kg·K)", mul: 1e3, div: 1, also: "kJ/(kg·°C),kJ/kg/K"},
		{name: "Btu/(lb·°F)", mul: 41868, div: 10, also: "Btu/(lb·F),Btu/lb/°F"},
	}},
	{Name: "conductance", metric: "W/K", us: "Btu/(h·°F)", units: []unit{
		{name: "W/K", mul: 1, div: 1, also: "W/°C"},
		{name: "kW/K", mul: 1e3, div: 1, also: "kW/°C"},
		{name: "Btu/(h·°F)", mul: btu, div: hour * fahrenheit, also: "Btu/(h·F),Btu/h/°F"},
	}},
	{Name: "conductivity", metric: "W/(m·K)", us: "Btu/(h·ft·°F)", units: []unit{
		{name: "W/(m·K)", mul: 1, div: 1, also: "W/(m·°C),W/m/K"},
		{name: "Btu/(h·ft·°F)", mul: btu, div: hour * foot * fahrenheit, also: "Btu/(h·ft·F),Btu/h/ft/°F"},
		{name: "Btu·in/(h·ft²·°F)", mul: btu * inch, div: hour * foot * foot * fahrenheit, also: "Btu·in/(h·ft²·F)"},
	}},
	{Name: "heat-transfer", metric: "W/(m²·K)", us: "Btu/(h·ft²·°F)", units: []unit{
		{name: "W/(m²·K)", mul: 1, div: 1, also: "W/(m²·°C),W/m²/K"},
		{name: "kW/(m²·K)", mul: 1e3, div: 1, also: "kW/(m²·°C)"},
		{name: "Btu/(h·ft²·°F)", mul: btu, div: hour * foot * foot * fahrenheit, also: "Btu/(h·ft²·F),Btu/h/ft²/°F"},
	}},
}

var motionKinds = []*Kind{
	{Name: "time", metric: "h", us: "h", units: []unit{
		{name: "s", mul: 1, div: 1, also: "sec,second,seconds", larger: step{1000, "min"}},
		{name: "ms", mul: 1, div: 1e3},
		{name: "min", mul: minute, div: 1, also: "Min,MIN,mins,minute,minutes", smaller: step{0.1, "s"}, larger: step{300, "h"}},
		{name: "h", mul: hour, div: 1, also: "hr,hrs,hour,hours", smaller: step{0.1, "min"}},
		{name: "day", mul: day, div: 1, also: "d,days", smaller: step{0.1, "h"}, larger: step{1000, "year"}},
		{name: "week", mul: 7 * day, div: 1, also: "weeks"},
		{name: "month", mul: year, div: 12, also: "months"}, // a twelfth of that year
		{name: "year", mul: year, div: 1, also: "yr,yrs,years", smaller: step{0.1, "day"}},
	}},
	{Name: "frequency", metric: "Hz", us: "Hz", units: []unit{
		{name: "Hz", mul: 1, div: 1},
		{name: "kHz", mul: 1e3, div: 1},
		{name: "cpm", mul: 1, div: minute, also: "cycles/min,cycle/min"},
	}},
	{Name: "rotation-speed", metric: "rpm", us: "rpm", units: []unit{
		{name: "rad/s", mul: 1, div: 1},
		{name: "rpm", mul: math.Pi, div: 30, also: "r/min,rev/min,revs/min,turns/min,tr/min,U/min,revs,min-1"},
		{name: "rev/s", mul: 2 * math.Pi, div: 1, also: "r/s,turns/s,Hz"},
		{name: "deg/s", mul: math.Pi, div: 180, also: "°/s"},
	}},
	{Name: "velocity", metric: "m/s", us: "ft/s", units: []unit{
		{name: "m/s", mul: 1, div: 1},
		{name: "mm/s", mul: 1, div: 1e3},
		{name: "km/h", mul: 1e3, div: hour, also: "kph,kmh,km/hr"},
		{name: "kn", mul: nauticalMile, div: hour, also: "kt,kts,knot,knots"},
		{name: "ft/s", mul: foot * 1e4, div: 1e4},
		{name: "ft/min", mul: foot * 1e4, div: minute * 1e4},
		{name: "in/s", mul: inch * 1e4, div: 1e4},
		{name: "mph", mul: mile * 1e3, div: hour * 1e3},
	}},
	{Name: "inertia", metric: "kg·m²", us: "lb·ft²", units: []unit{
		{name: "kg·m²", mul: 1, div: 1},
		{name: "kg·cm²", mul: 1, div: 1e4},
		{name: "lb·ft²", mul: pound * foot * foot, div: 1},
		{name: "lb·in²", mul: pound * inch * inch, div: 1},
	}},
	{Name: "volume-flow", metric: "L/h", us: "US gal/h", units: []unit{
		{name: "m³/s", mul: 1, div: 1},
		{name: "m³/h", mul: 1, div: hour, also: "m³/hr"},
		{name: "L/s", mul: 1, div: 1e3},
		{name: "L/min", mul: 1, div: 1e3 * minute},
		{name: "L/h", mul: 1, div: 1e3 * hour, also: "L/hr"},
		{name: "L/day", mul: 1, div: 1e3 * day, also: "L/d"},
		{name: "mL/s", mul: 1, div: 1e6},
		{name: "mL/min", mul: 1, div: 1e6 * minute, also: "cm³/min,cc/min"},
		{name: "mL/h", mul: 1, div: 1e6 * hour, also: "mL/hr"},
		{name: "US gal/min", mul: usGallon * 1e12, div: minute * 1e12, also: "gal (US)/min"},
		{name: "US gal/h", mul: usGallon * 1e12, div: hour * 1e12, also: "US gal/hr,gal (US)/h"},
		{name: "US gal/day", mul: usGallon * 1e12, div: day * 1e12, also: "US gal/d,gal (US)/day"},
	}},
	{Name: "drip-rate", metric: "drips/min", us: "drips/min", units: []unit{
		{name: "drips/s", mul: 1, div: 1, also: "drip/s,drops/s,drop/s"},
		{name: "drips/min", mul: 1, div: minute, also: "drip/min,drops/min,drop/min,drips per minute,drops per minute,drips a minute,drops a minute,per minute,a minute,per min,/min"},
		{name: "drips/h", mul: 1, div: hour, also: "drip/h,drops/h,drop/h,drips/hr"},
	}},
}

var otherKinds = []*Kind{
	{Name: "ratio", units: []unit{
		{name: "", mul: 1, div: 1, also: ":1,: 1"}, // "2.5:1" is how a gearbox is marked
		{name: "%", mul: 1, div: 1e2, also: "percent"},
		{name: "ppm", mul: 1, div: 1e6, also: "mg/kg"},
	}},
	{Name: "density", metric: "kg/m³", us: "lb/ft³", units: []unit{
		{name: "kg/m³", mul: 1, div: 1},
		{name: "kg/L", mul: 1e3, div: 1},
		{name: "g/cm³", mul: 1e3, div: 1, also: "g/cc,g/mL"},
		{name: "g/L", mul: 1, div: 1},
		{name: "lb/ft³", mul: pound, div: foot * foot * foot, also: "lb/cu ft"},
		{name: "lb/in³", mul: pound, div: inch * inch * inch, also: "lb/cu in"},
		{name: "lb/US gal", mul: pound, div: usGallon},
	}},
	{Name: "dynamic-viscosity", metric: "mPa·s", us: "cP", units: []unit{
		{name: "Pa·s", mul: 1, div: 1},
		{name: "mPa·s", mul: 1, div: 1e3},
		{name: "cP", mul: 1, div: 1e3, also: "centipoise"},
		{name: "P", mul: 1, div: 10, also: "poise"},
		{name: "lbf·s/in²", mul: lbf, div: inch * inch, also: "psi·s,reyn"},
		{name: "lbf·s/ft²", mul: lbf, div: foot * foot},
	}},
	{Name: "kinematic-viscosity", metric: "mm²/s", us: "cSt", units: []unit{
		{name: "m²/s", mul: 1, div: 1},
		{name: "mm²/s", mul: 1, div: 1e6},
		{name: "cSt", mul: 1, div: 1e6, also: "centistokes"},
		{name: "St", mul: 1, div: 1e4, also: "stokes"},
		{name: "ft²/s", mul: foot * foot * 1e8, div: 1e8},
	}},
	{Name: "money"}, // its units are currency codes: see money.go
}
