// Units of ratio, density and viscosity.

package quantity

var otherKinds = []*Kind{
	{Name: "ratio", units: []unit{
		{name: "", mul: 1, div: 1, also: ":1,: 1"}, // "2.5:1" is how a gearbox is marked
		{name: "%", mul: 1, div: 1e2, also: "percent"},
		{name: "ppm", mul: 1, div: 1e6},
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
