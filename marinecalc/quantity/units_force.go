// Units of mass, force, torque, energy, power, pressure and stiffness.

package quantity

import "math"

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
		{name: "kgf·m", mul: kgf * 1e5, div: 1e5, also: "kp·m,mkp"},
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
		{name: "hp", mul: 550 * lbfFoot, div: 1, also: "hp(mechanical),hp(US),hp(UK)"},
		{name: "PS", mul: 75 * kgf * 1e5, div: 1e5, also: "hp(metric),metric hp"},
		{name: "Btu/h", mul: btu, div: 3600, also: "Btu/hr"},
	}},
	{Name: "pressure", metric: "bar", us: "psi", units: []unit{
		{name: "Pa", mul: 1, div: 1},
		{name: "kPa", mul: 1e3, div: 1},
		{name: "MPa", mul: 1e6, div: 1},
		{name: "bar", mul: 1e5, div: 1},
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
